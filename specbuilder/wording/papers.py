"""Where a job stands, its next step, and the papers of it."""

from __future__ import annotations

from collections.abc import Sequence

from specbuilder.model.kinds import JobState
from specbuilder.model.life import LifeStep
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import RecordKind
from specbuilder.model.report import Pence
from specbuilder.model.spec import Spec

from .dates import NO_DAY, written_day, written_day_brief
from .key_names import pressed
from .names import listed
from .plain import ended, lowered, raised
from .quantities import money, money_range
from .states import job_state_word
from .workshop import counted

CALLED_FOR = "called for"
NOT_CALLED_FOR = "not called for"
MAKING = "The paper is being made."
ALL_FORMATS = "each as PDF and text"


def papers_title(spec: Spec) -> str:
    """Over the list of papers."""
    return f"PAPERS of job {one_line(spec.number)}, revision {spec.revision}"


def stands(spec: Spec, state: JobState, currency: str) -> str:
    """Where the job stands: state, until when or since when it holds, and which revision."""
    match state:
        case JobState.DRAFT if spec.replaces:
            return f"Revision {spec.revision} is a draft; revision {spec.replaces} was quoted and stays as it was."
        case JobState.DRAFT:
            return "A draft: nothing of it has left the house."
        case JobState.QUOTED:
            return f"Quoted on {_day_of(spec, RecordKind.QUOTED)}, {quoted_price(spec, currency)}."
        case JobState.EXPIRED:
            return f"The quote of {_day_of(spec, RecordKind.QUOTED)} has run out: {quoted_price(spec, currency)}."
        case JobState.ORDERED:
            return f"Ordered: revision {spec.revision}, {_signed(spec)}."
        case JobState.CHANGED:
            return f"Changed: revision {spec.revision}, {_signed(spec)}, takes the place of revision {spec.replaces}."
        case JobState.AS_BUILT:
            return f"As built: revision {spec.revision}, handed over on {_day_of(spec, RecordKind.BUILT)}."


def quoted_price(spec: Spec, currency: str) -> str:
    """``£24,300 VAT in, valid until 9 May 2031``."""
    record = spec.recorded(RecordKind.QUOTED)[-1]
    price = money_range(Pence(least=record.pence or 0, most=round(record.figure or 0)), currency)
    return f"{price} VAT in, valid until {written_day(record.due)}"


def change_stands(spec: Spec, base: Spec, number: int) -> tuple[str, str]:
    """A change that is drawn up, and what holds until then."""
    return (
        f"{change_head(base, number)} becomes revision {spec.revision}.",
        f"Until it is signed the workshop builds revision {base.revision}.",
    )


def change_head(base: Spec, number: int) -> str:
    """``Change order 1 to revision 1 (signed 18 April 2031)``."""
    return f"Change order {number} to revision {base.revision} (signed {written_day(base.signed_on)})"


def change_head_short(base: Spec, number: int) -> tuple[str, str]:
    """For the first line of the screens, in full and in short."""
    return (
        f"change order {number} to revision {base.revision} (signed {written_day_brief(base.signed_on)})",
        f"change order {number}",
    )


def looked_at_head(state: JobState) -> tuple[str, str]:
    """The same of a revision that is only looked at."""
    return f"{job_state_word(state)}, only looked at", f"{job_state_word(state)}, looked at"


def replaced(by: int) -> str:
    """Of a revision that another one has replaced."""
    return f"REPLACED by revision {by}: not to be built. Every page says so."


def looked_at() -> str:
    """Of a revision that is only looked at."""
    return "Only looked at, as it was: nothing is changed here."


def price_change(was: Pence, now: Pence, currency: str) -> str:
    """``£20,712 becomes £22,068``."""
    return f"{money_range(was, currency)} becomes {money_range(now, currency)} VAT in"


def quote_line(gross: Pence, currency: str) -> str:
    """The next step of a draft."""
    return f"Quote: {money_range(gross, currency)} VAT in"


def order_line(gross: Pence, currency: str) -> str:
    """The next step of a quote."""
    return f"Sign the order: {money_range(gross, currency)} VAT in"


def change_line(number: int, was: Pence, now: Pence, currency: str) -> str:
    """The next step of a change."""
    return f"Sign change order {number}: {price_change(was, now, currency)}"


def again_line() -> str:
    """The next step of a quote that has run out."""
    return "Quote again, with the prices of today"


def deposit_line(asked: Pence, received: int, currency: str) -> str:
    """What has come in of the deposit."""
    if received:
        return f"Deposit: {money(received, currency)} received"
    return f"Deposit of {money_range(asked, currency)} not received yet"


def build_line(passed: int, holds: int, following: str) -> str:
    """How far the build is."""
    return f"Build: {passed} of {counted(holds, 'hold point', 'hold points')} passed" + (
        f", {following} is next" if following else ""
    )


def give_up_line(spec: Spec) -> str:
    """The way back from a draft."""
    what = "the change" if spec.changes_signed else f"revision {spec.revision}"
    return f"Give {what} up: revision {spec.revision - 1} holds again"


def called(called_for: bool) -> str:
    """Beside a paper."""
    return CALLED_FOR if called_for else NOT_CALLED_FOR


def about(what: str, private: bool) -> str:
    """What a paper is for, in full."""
    house = " For the house only, never for the customer." if private else ""
    return f"{ended(raised(what))}{house}"


def writing() -> str:
    """While papers are written."""
    return "Papers are being written."


def written(count: int, folder: str) -> str:
    """Where they are."""
    return f"{counted(count, 'file', 'files')} written, {ALL_FORMATS}: {folder}"


def paper_title(title: str, first: int, last: int, lines: int) -> str:
    """Over a paper: ``CUSTOMER'S COPY   lines 1 to 17 of 229``."""
    return f"{title.upper()}   lines {first} to {last} of {lines}" if lines else title.upper()


def looking_for(place: int, places: int, text: str) -> str:
    """Behind the title while words are looked for: ``"heater" 2 of 5``."""
    return f'"{text}" {place} of {places}'


def no_place(text: str) -> str:
    """Where no line has the words."""
    return f'"{text}" stands nowhere in this paper.'


def papers_of_job_only() -> str:
    """Said in a what-if."""
    keep, leave = pressed("keep"), pressed("what-if")
    return f"Papers are of the job, not of a what-if: {keep} keeps what is tried, {leave} leaves it."


def papers_later() -> str:
    """Said of a job of which nothing is said yet."""
    return "A job has papers from its first answer on."


def may_line(quote: Sequence[str], sign: Sequence[str], open_points: int, to_accept: int) -> str:
    """``QUOTE yes, with 4 open points and 2 to accept in writing   SIGN no, 3 things stand in the way``.

    A single thing that stands in the way is named at once.
    """
    opened = goes_out_with(open_points, to_accept, "to accept in writing")
    return f"QUOTE {_may(quote)}{'' if quote or not opened else f', with {opened}'}   SIGN {_may(sign)}"


def goes_out_with(open_points: int, to_accept: int, accept: str) -> str:
    """``4 open points and 2 broken at SIGN``: what a quote may go out with; empty where it is all settled."""
    points = counted(open_points, "open point", "open points")
    return listed((*([points] if open_points else []), *([f"{to_accept} {accept}"] if to_accept else [])))


def _may(in_the_way: Sequence[str]) -> str:
    match list(in_the_way):
        case []:
            return "yes"
        case [only]:
            return f"no, {lowered(only).removesuffix('.')}"
        case several:
            return f"no, {len(several)} things stand in the way"


def step_hint(step: LifeStep | None, state: JobState) -> str:
    """What the key of the next step does, for the hint line; empty: nothing."""
    if step is None:
        return ""
    words = {LifeStep.QUOTE: "quote", LifeStep.ORDER: "sign"}
    return "quote again" if state is JobState.EXPIRED else words.get(step, "")


def nothing_to_sign(spec: Spec) -> str:
    """Said when there is no next signature."""
    if spec.state is JobState.AS_BUILT:
        return f"Handed over on {_day_of(spec, RecordKind.BUILT)}: nothing is left to sign."
    return (
        f"Signed on {written_day(spec.signed_on)}. Whatever is changed now begins a change order; "
        f"{pressed('build')} shows the build."
    )


def _day_of(spec: Spec, kind: RecordKind) -> str:
    found = spec.recorded(kind)
    return written_day(found[-1].day) if found else NO_DAY


def _signed(spec: Spec) -> str:
    records = [record for record in spec.recorded(RecordKind.SIGNED) if record.revision == spec.revision]
    if not records:
        return "signed"
    last = records[-1]
    place = f" ({one_line(last.about)})" if last.about else ""
    return f"signed on {written_day(last.day)} by {one_line(last.by)} and {one_line(last.words)}{place}"
