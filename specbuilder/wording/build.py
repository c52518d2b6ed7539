"""How far a build is, in rows and sentences: hold points, parts, deposit, promises, next call."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Owner
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import Record
from specbuilder.model.spec import Spec
from specbuilder.workshop.progress import HoldPoint, PartOfBuild

from .colleague import call_words, promise_words, supply_words
from .dates import day_short, written_day, written_day_short
from .names import option_name
from .plain import ended, lowered

HOLD_POINTS, PARTS, PROMISES, NEXT_CALL = "HOLD POINTS", "PARTS", "PROMISES", "NEXT CALL"
SUPPLIES = ("ordered", "due", "in store", "received")
"""Where a part may be, in the order of their digits."""
FOREMAN = "the foreman"
"""Who passes a hold point while nobody has said otherwise."""


def build_title(spec: Spec) -> str:
    """Over the page."""
    return f"BUILD of job {one_line(spec.number)}, revision {spec.revision}"


def hold_state(point: HoldPoint, following: bool, due: date | None) -> str:
    """``passed Fri 18 Apr 2031``, ``next, due ...``, or when it is planned."""
    if point.passed is not None:
        return f"passed {written_day_short(point.passed.day)}"
    planned = f"about {day_short(due)}" if due is not None else ""
    return ", ".join(filter(None, ("next" if following else "", planned)))


def hold_detail(point: HoldPoint) -> Iterator[str]:
    """What must be read there, what was read, and who passed it."""
    for figure in point.figures:
        yield f"{figure.what}: {figure.must_be}"
    for record in point.readings:
        yield f"Read {written_day(record.day)} by {one_line(record.by)}: {ended(one_line(record.words))}"
    if point.passed is not None:
        remark = f": {one_line(point.passed.words)}" if point.passed.words else ""
        yield ended(f"Passed {written_day(point.passed.day)} by {one_line(point.passed.by)}{remark}")


def part_name(catalogue: Catalogue, part: PartOfBuild) -> str:
    """Its name, with place and number."""
    choice = part.chosen.choice
    return option_name(catalogue, choice.option, choice.place, choice.count)


def part_state(part: PartOfBuild, on: date | None) -> str:
    """``fitted``, ``in store``, ``ordered, expected Fri 9 May 2031``, ``to be ordered, about ...``, ``theirs, ...``."""
    if part.fitted:
        return f"fitted at {part.chosen.option.build_step}" if part.chosen.option is not None else "fitted"
    if part.supply is not None:
        due = f", expected {written_day_short(one_line(part.supply.due))}" if part.supply.due else ""
        return f"{supply_words(part.supply).lower()} {written_day_short(part.supply.day)}{due}"
    if part.chosen.choice.owner is Owner.CUSTOMER:
        own = part.chosen.choice.own_part
        arrives = written_day_short(one_line(own.arrives)) if own is not None else ""
        return f"theirs, arrives {arrives}" if arrives else "theirs, arrival not known yet"
    if part.chosen.option is not None and part.chosen.option.carried:
        return "theirs, brought along"
    return f"to be ordered, about {day_short(on)}" if on is not None else "to be ordered"


def promises(spec_promises: tuple[Record, ...]) -> tuple[str, ...]:
    """Each with who said it."""
    return tuple(promise_words(record) for record in spec_promises)


def calls(spec_calls: tuple[Record, ...]) -> str:
    """The next call that was agreed on."""
    return call_words(spec_calls[-1]) if spec_calls else "none agreed"


def another_promise() -> str:
    """The line that begins one."""
    return "Write a promise down"


def another_call() -> str:
    """The line that begins one."""
    return "Agree on a call"


def hand_over_line(spec: Spec) -> str:
    """The last line of the page."""
    return f"Hand over as built: revision {spec.revision}"


def not_ordered_yet() -> str:
    """Where the build stands before anything is signed."""
    return "Nothing is ordered yet: hold points, parts and deposit come with the signatures."


def changes_first(revision: int) -> str:
    """While a change is drawn up."""
    return f"A change is drawn up: sign it or give it up, then the build goes on. Revision {revision} holds until then."


# -- forms ---------------------------------------------------------------------------------------------------------


def hold_title(point: HoldPoint) -> str:
    """Over the form of a hold point."""
    return f"{point.step.hold_point}: {point.step.hold_text}"


def hold_take(point: HoldPoint) -> str:
    """The line that passes it, or writes more readings down."""
    if point.passed is not None:
        return "Enter writes the readings down; they stay"
    return f"{point.step.hold_point} passed: Enter writes it down; it stays"


def must_be(what: str, figure: str) -> str:
    """Below a reading."""
    return f"{what}: {figure}. Write what was read, not that it was right."


def read(what: str, text: str) -> str:
    """A reading as it is written down."""
    return f"{what}: {text}"


def nothing_read() -> str:
    """Said where a passed hold point gets no reading."""
    return "Nothing was read: there is nothing to write down."


def supply_title(name: str) -> str:
    """Over the form of a part."""
    return f"WHERE IS IT: {lowered(name)}"


def deposit_title() -> str:
    """Over the form of a deposit."""
    return "DEPOSIT received"


def promise_title() -> str:
    """Over the form of a promise."""
    return "A PROMISE: said to the customer and relied on"


def call_title() -> str:
    """Over the form of a call."""
    return "THE NEXT CALL"


def built_title(spec: Spec) -> str:
    """Over the form of the hand-over."""
    return f"HAND OVER as built, revision {spec.revision}"


def built_words() -> tuple[str, ...]:
    """What the hand-over means."""
    return ("Both sign that it is handed over. After that nothing of this revision is changed any more.",)


def take_line() -> str:
    """The line that takes a form."""
    return "Enter writes it down; it stays"


def built_take() -> str:
    """The line that hands over."""
    return "Handed over: Enter writes both names down; they stay"


def written_down(what: str) -> str:
    """Said when it is."""
    return f"Written down: {what}."
