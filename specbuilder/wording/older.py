"""Older rules, older prices, earlier revisions: what is said before anything of them is opened."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.comparison import Comparison
from specbuilder.model.kinds import JobState
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import RecordKind
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand

from .compare import change_line, finding_change_lines, same_words
from .dates import written_day
from .differences import difference_spoken
from .papers import stands
from .plain import ended
from .quantities import money_range
from .states import job_state_word


def older_title(spec: Spec, own: Catalogue, today: Catalogue) -> str:
    """``PRICES of 2030-03, those of today are 2031-04: 0098 The lake couple``."""
    name = one_line(spec.customer.name)
    job = f"{one_line(spec.number)} {name}".strip()
    return f"PRICES of {_version(own, today)}, those of today are {today.firm.catalogue_version}: {job}"


def _version(own: Catalogue, today: Catalogue) -> str:
    version = own.firm.catalogue_version
    return f"an earlier state of {version}" if version == today.firm.catalogue_version else version


def older_words(spec: Spec, own: Catalogue, state: JobState) -> tuple[str, ...]:
    """Where the job stands, and that nothing is changed yet."""
    return stands(spec, state, own.firm.currency), "Nothing is changed yet."


def look_line() -> str:
    """The first line."""
    return "look as it was: nothing is changed, and its papers come out as they were"


def take_up_line(spec: Spec) -> str:
    """The first line while a quote holds."""
    return f"go on as it was quoted: it can be signed until {written_day(spec.valid_until)}"


def check_line() -> str:
    """The second line."""
    return "check against today: what is gone, renamed, dearer, and what would be broken now"


def move_line(spec: Spec, state: JobState) -> str:
    """The third line."""
    if state is JobState.DRAFT:
        return "move to today: go on with this draft under the rules and prices of today"
    return f"move to today: begin revision {spec.revision + 1} with the rules and prices of today"


def against_title(own: Catalogue, today: Catalogue) -> str:
    """Over the comparison."""
    return f"AS IT WAS ({_version(own, today)}) against today ({today.firm.catalogue_version})"


def checking_against() -> str:
    """While it is being worked out."""
    return "checking against today"


def against_lines(then: Stand, now: Stand, comparison: Comparison) -> tuple[str, ...]:
    """What it comes to, line by line."""
    return tuple(_against(then, now, comparison))


def _against(then: Stand, now: Stand, comparison: Comparison) -> Iterator[str]:
    currency = now.catalogue.firm.currency
    was, today = (money_range(stand.report.price.gross, currency) for stand in (then, now))
    yield f"{was} then, {today} today: {ended(difference_spoken(now.catalogue, comparison.difference))}"
    if comparison.empty:
        yield "Nothing differs: it stands today as it stood then."
        return
    yield from (change_line(change, currency) for change in comparison.changes)
    yield from finding_change_lines(then, now, comparison)
    yield f"The same as then: {same_words(comparison)}."


def revisions_title(number: str) -> str:
    """Over the list of revisions."""
    return f"REVISIONS of job {number}"


def past_words(spec: Spec, state: JobState, newest: bool) -> tuple[str, str]:
    """State, and since when or until when."""
    told = _past(spec, state)
    return job_state_word(state), f"{told} (the newest)" if newest else told


def _past(spec: Spec, state: JobState) -> str:
    match state:
        case JobState.QUOTED | JobState.EXPIRED:
            return f"quoted until {written_day(spec.valid_until)}"
        case JobState.ORDERED | JobState.CHANGED:
            return f"signed on {written_day(spec.signed_on)}"
        case JobState.AS_BUILT:
            return f"handed over on {written_day(spec.recorded(RecordKind.BUILT)[-1].day)}"
        case JobState.DRAFT:
            return f"takes the place of revision {spec.replaces}" if spec.replaces else "not quoted"


def revisions_hint() -> str:
    """What an earlier one is good for."""
    return "An earlier revision is only looked at. What was replaced is not to be built, and its papers say so."


def one_revision(number: str) -> str:
    """Said where there is no earlier one."""
    return f"Job {number} has one revision only."
