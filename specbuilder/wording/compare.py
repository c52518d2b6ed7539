"""Two stands side by side in words: a row for each line that differs, and all of it one fact a line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.comparison import (
    AnswerChange,
    Change,
    ChangeKind,
    Comparison,
    FigureChange,
    PieceChange,
    VanDataChange,
)
from specbuilder.model.findings import Finding
from specbuilder.model.kinds import Level, Owner, Sense
from specbuilder.model.plain_text import one_line
from specbuilder.model.spec import OwnPart
from specbuilder.model.stand import Stand
from specbuilder.model.ways import Difference

from . import quantities
from .brief import answer_words
from .differences import difference_spoken
from .edits import VAN_FIELDS
from .glance import price_words, state_words, weight_words
from .names import key_name, ledger_name
from .own_parts import said_beyond
from .plain import ended, raised
from .readings import ESTIMATE, is_estimate, reading_amount
from .states import NOT_KNOWN, THEIRS, to_be_said
from .typed import plain
from .workshop_changes import piece_change

NOTHING_THERE = "nothing there"
_LOUD = (Level.STOP, Level.SIGN)
_KILOGRAMS = "_kg"


def change_mark(change: Change) -> str:
    """How the line differs, in a word or two."""
    match change.kind:
        case ChangeKind.ADDED | ChangeKind.REMOVED | ChangeKind.REPLACED | ChangeKind.MOVED | ChangeKind.RENAMED:
            return change.kind.value
        case ChangeKind.GONE | ChangeKind.BACK | ChangeKind.NOTED:
            return change.kind.value
        case ChangeKind.RESIZED:
            return _resized(change)
        case ChangeKind.REPRICED:
            return "dearer" if change.difference.gross_pence > 0 else "cheaper"
        case ChangeKind.REWEIGHED:
            return "heavier" if change.difference.mass_kg > 0 else "lighter"
        case ChangeKind.RETIMED:
            if change.difference.weeks:
                return "longer wait" if change.difference.weeks > 0 else "shorter wait"
            return "more work" if change.difference.hours > 0 else "less work"
        case _:
            assert_never(change.kind)


def side_words(change: Change, *, after: bool) -> str:
    """What stands on one side: ``2 x USB pair``, ``Drawer fridge, theirs``; what differs of it is told in full."""
    choice, other = (change.after, change.before) if after else (change.before, change.after)
    if choice is None:
        return ""
    name = change.name_after if after else change.name_before
    sided = f"{name}, {choice.place.value}" if choice.place else name
    parts = [f"{choice.count} x {sided}" if choice.count > 1 else sided]
    same_option = other is not None and other.option == choice.option
    if choice.owner is Owner.CUSTOMER:
        parts.append(THEIRS)
        if same_option and other is not None and other.own_part != choice.own_part:
            parts.append(_sheet(choice.own_part))
    if same_option and other is not None and other.note != choice.note:
        parts.append(f'note "{one_line(choice.note)}"' if choice.note else "no note")
    return ", ".join(parts)


def change_line(change: Change, currency: str) -> str:
    """``Replaced: Side galley, right; now Pod galley: -£1,392, -51 kg, -14 hours.``, with what the line alone does."""
    was, now = side_words(change, after=False), side_words(change, after=True)
    what = f"{was}; now {now}" if was and now and was != now else now or was
    does = ", ".join((*_does(change.difference, currency), *_waits(change)))
    return ended(f"{raised(change_mark(change))}: {what}{f': {does}' if does else ''}")


def comparison_lines(before: Stand, after: Stand, comparison: Comparison, works: Sequence[str] = ()) -> tuple[str, ...]:
    """All of it for line commands, one fact a line. The first side is A, the second B.

    ``works``: lines of what works elsewhere, which stand behind the figures.
    """
    return tuple(_lines(before, after, comparison, works))


def stand_line(name: str, stand: Stand) -> str:
    """``A: job 0147, revision 2, draft, not quoted, catalogue 2026-11.``"""
    spec = stand.spec
    job = f"job {one_line(spec.number)}" if spec.number else "job without a number"
    state = state_words(spec.state)
    return f"{name}: {job}, revision {spec.revision}, {state}, catalogue {stand.catalogue.firm.catalogue_version}."


def same_words(comparison: Comparison) -> str:
    """``12 choices``."""
    return "1 choice" if comparison.same == 1 else f"{comparison.same} choices"


def answer_line(before: Stand, after: Stand, change: AnswerChange) -> str:
    """``Barrier height: 2,100 mm; was not known yet.``"""
    was, now = answer_side(before.catalogue, change, after=False), answer_side(after.catalogue, change, after=True)
    return ended(f"{raised(key_name(after.catalogue, change.key))}: {now}; was {was}")


def answer_side(catalogue: Catalogue, change: AnswerChange, *, after: bool) -> str:
    """The answer of one side in the words of its catalogue."""
    line, value = catalogue.brief.get(change.key), change.after if after else change.before
    return answer_words(catalogue, line, value) if line is not None else NOT_KNOWN


def van_data_line(change: VanDataChange) -> str:
    """``The real van, year: 2029; was not known yet.``"""
    name = VAN_FIELDS.get(change.field, change.field.replace("_", " "))
    was, now = (_van_value(change.field, value) for value in (change.before, change.after))
    return ended(f"The real van, {name}: {now}; was {was}")


def figure_line(before: Stand, after: Stand, change: FigureChange) -> str:
    """``Weight of the loaded van: 2,801 of 3,000 kg (ESTIMATE); was 2,752 of 3,000 kg (ESTIMATE).``

    Empty where both read the same: what is below what is shown is not told.
    """
    was, now = (figure_words(stand, change) for stand in (before, after))
    known = after.catalogue if change.ledger in after.catalogue.ledgers else before.catalogue
    return "" if was == now else ended(f"{ledger_name(known, change.ledger)}: {now}; was {was}")


def figure_words(stand: Stand, change: FigureChange) -> str:
    """The ledger as it reads on one side."""
    reading = stand.report.readings.get(change.ledger)
    if reading is None or not reading.applies:
        return NOTHING_THERE
    amount = reading_amount(stand.catalogue, reading)
    if not amount:
        return "cannot tell"
    return f"{amount} ({ESTIMATE})" if is_estimate(stand.catalogue, reading) else amount


def figure_told(stand: Stand, change: FigureChange) -> str:
    """The same for paper, where ``229 of 89 kg`` is read as a part of a whole: ``229 kg, at least 89 kg``."""
    reading, ledger = stand.report.readings.get(change.ledger), stand.catalogue.ledgers.get(change.ledger)
    if reading is None or ledger is None or reading.value is None or not reading.applies or reading.bound is None:
        return figure_words(stand, change)
    if reading.sense is Sense.SHOWN:
        return figure_words(stand, change)
    told = f"{quantities.span(reading.value, ledger.unit, '')}, {reading.sense.value} "
    told += quantities.span(reading.bound, ledger.unit, "")
    return f"{told} ({ESTIMATE})" if is_estimate(stand.catalogue, reading) else told


def piece_line(change: PieceChange) -> str:
    """``Hole moved: window, side left, 700 wide x 300 high, at X 1,500, ...; was ...``."""
    kind, _, was, now = piece_change(change)
    if change.before is None or change.after is None:
        return ended(f"{kind}: {was if change.after is None else now}")
    return ended(f"{kind}: {now}; was {was}")


def finding_change_lines(before: Stand, after: Stand, comparison: Comparison) -> tuple[str, ...]:
    """``STOP now broken: ...``, ``SIGN no longer broken: ...``, and what can or cannot be told any more."""
    unsure = {finding.rule for finding in comparison.doubts_came}
    lines = [_finding(after, finding, "now broken") for finding in comparison.came]
    for finding in comparison.went:
        told = "was broken, cannot be told any more" if finding.rule in unsure else "no longer broken"
        lines.append(_finding(before, finding, told))
    moved = {finding.rule for finding in (*comparison.came, *comparison.went)}
    for stand, found, told in (
        (after, comparison.doubts_came, "cannot be told any more"),
        (before, comparison.doubts_went, "can be told now"),
    ):
        lines += (_finding(stand, f, told) for f in found if f.level in _LOUD and f.rule not in moved)
    return tuple(lines)


def _lines(before: Stand, after: Stand, comparison: Comparison, works: Sequence[str]) -> Iterator[str]:
    catalogue, currency = after.catalogue, after.catalogue.firm.currency
    for name, stand in (("A", before), ("B", after)):
        yield stand_line(name, stand)
        yield f"Price of {name}: {price_words(stand.catalogue, stand.report.price)}."
        yield f"Weight of {name}: {weight_words(stand.catalogue, stand.report).removeprefix('weight: ')}."
    if before.catalogue.digest != after.catalogue.digest:
        yield "A and B are not held against the same rules."
    if comparison.empty:
        yield "Nothing that is built, answered or worked out differs."
        return
    yield ended(f"From A to B: {difference_spoken(catalogue, comparison.difference)}")
    yield from (change_line(change, currency) for change in comparison.changes)
    if rest := ", ".join(_does(comparison.rest, currency)):
        yield f"Beside these lines, by who travels, water, open questions or work to be undone: {rest}."
    yield from (answer_line(before, after, change) for change in comparison.answers)
    yield from (van_data_line(change) for change in comparison.van_data)
    yield from (line for change in comparison.figures if (line := figure_line(before, after, change)))
    yield from works
    yield from (piece_line(change) for change in comparison.pieces)
    yield from finding_change_lines(before, after, comparison)
    yield f"The same in both: {same_words(comparison)}."


def _resized(change: Change) -> str:
    was, now = change.before, change.after
    if was is not None and now is not None and was.count != now.count:
        return "more" if now.count > was.count else "fewer"
    if was is not None and now is not None and was.owner is not now.owner:
        return f"now {now.owner.value}"
    return "other sheet"


def _sheet(sheet: OwnPart | None) -> str:
    """What the customer's sheet says, to the last digit; what it leaves open says so."""
    part = sheet or OwnPart()
    mass = f"{plain(part.mass_kg)} kg" if part.mass_kg is not None else f"mass {NOT_KNOWN}"
    watts = f"{plain(part.watts_w)} W" if part.watts_w is not None else f"watts {NOT_KNOWN}"
    cut = f"cut-out {one_line(part.cut_out_mm) or NOT_KNOWN}"
    arrives = f"arrives {one_line(part.arrives) or NOT_KNOWN}"
    return ", ".join((mass, watts, cut, arrives, *said_beyond(part)))


def _does(difference: Difference, currency: str) -> Iterator[str]:
    """``+£936``, ``+21 kg``, ``+14 hours``; nothing for what would be shown as nought."""
    for value, unit in (
        (difference.gross_pence, quantities.PENCE),
        (difference.mass_kg, "kg"),
        (difference.hours, "hours"),
    ):
        if quantities.number_text(value, unit) != "0":
            yield quantities.delta(value, unit, currency)


def _waits(change: Change) -> Iterator[str]:
    """How long its own part takes; what is left out is waited for no more."""
    weeks = change.difference.weeks
    if change.kind is ChangeKind.REMOVED or quantities.number_text(weeks, "weeks") == "0":
        return
    longer = "" if change.kind is ChangeKind.ADDED else " longer" if weeks > 0 else " less"
    yield f"its part takes {quantities.weeks(abs(weeks))}{longer}"


def _van_value(field: str, value: str | float | None) -> str:
    match value:
        case None | "":
            return NOT_KNOWN
        case str():
            return one_line(value)
        case _:
            return f"{plain(value)} kg" if field.endswith(_KILOGRAMS) else plain(value)


def _finding(stand: Stand, finding: Finding, told: str) -> str:
    """A NOTE stops nothing, so it is not called broken."""
    if finding.level is Level.NOTE:
        told = told.replace("broken", to_be_said())
    return f"{finding.level.value} {told}: {ended(stand.catalogue.rules[finding.rule].because)}"
