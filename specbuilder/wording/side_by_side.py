"""Two variants for a customer who looks on: only what differs, and in one line what is the same."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from specbuilder.model.comparison import Change, Comparison
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Level, Pick, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.stand import Stand

from . import quantities
from .compare import same_words, side_words
from .glance import CEILING, WEIGHT, price_words, weight_words
from .names import group_name, ledger_name, listed
from .plain import ended, lowered, raised
from .states import UNDECIDED
from .works_where import WorksWhere

_NONE = "none"
_CANNOT_TELL = "cannot tell"
_COUNTED = "places"
"""A unit that is no word for what is counted: the ledger's own name is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SideCell:
    """What one variant has there."""

    text: str
    verdict: Verdict | None = None
    """Of a figure with a bound: a screen puts its mark before it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SideRow:
    """One line of the table."""

    label: str
    a: SideCell
    b: SideCell
    change: Change | None = None
    """The choice it is about, which can be brought from one side to the other; None: it follows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SideBySide:
    """The table, and what stands below it."""

    rows: tuple[SideRow, ...]
    same: str
    """``The same in both: 4 belts, 4 berths, 6 weeks, 12 choices``."""


@dataclass(frozen=True, slots=True)
class _Fact:
    """A row as it may be told: in the table where it differs, else in few words below it."""

    row: SideRow
    same: str


def side_by_side(
    a: Stand,
    b: Stand,
    comparison: Comparison,
    figures: Iterable[LedgerId],
    works: tuple[Sequence[WorksWhere], Sequence[WorksWhere]] = ((), ()),
) -> SideBySide:
    """Price, ceiling, weight left; what is chosen otherwise; the figures; what works away from a plug; warnings.

    Args:
        a: the one variant.
        b: the other.
        comparison: of the two, in this order.
        figures: ledgers and figures that a customer asks for, in their order.
        works: what works where in each of them.
    """
    first = [_price(a, b), *_ceiling(a, b), _weight(a, b)]
    last = [*(_figure(a, b, ledger) for ledger in figures), *_works(*works), _warnings(a, b)]
    changes = tuple(_change(a, b, change) for change in comparison.changes)
    same = [fact.same for fact in (*first, *last) if not _differs(fact) and fact.same]
    return SideBySide(
        rows=(*_told(first), *changes, *_told(last)),
        same=f"The same in both: {', '.join((*same, same_words(comparison)))}",
    )


def _differs(fact: _Fact) -> bool:
    return fact.row.a.text != fact.row.b.text


def _told(facts: Iterable[_Fact]) -> Iterator[SideRow]:
    return (fact.row for fact in facts if _differs(fact))


def _price(a: Stand, b: Stand) -> _Fact:
    cells = [SideCell(text=price_words(s.catalogue, s.report.price).partition(" VAT in")[0]) for s in (a, b)]
    return _Fact(SideRow(label="price, VAT in", a=cells[0], b=cells[1]), f"price {cells[0].text}")


def _ceiling(a: Stand, b: Stand) -> Iterator[_Fact]:
    """How far under or over the ceiling; nothing where neither has one."""
    readings = [stand.report.readings.get(CEILING) for stand in (a, b)]
    cells = [_under(stand, reading) for stand, reading in zip((a, b), readings, strict=True)]
    if any(reading is not None and reading.bound is not None for reading in readings):
        bounds = {_bound(stand, reading) for stand, reading in zip((a, b), readings, strict=True)}
        label = f"ceiling {bounds.pop()}" if len(bounds) == 1 else "ceiling"
        yield _Fact(SideRow(label=label, a=cells[0], b=cells[1]), f"{label}: {cells[0].text}")


def _bound(stand: Stand, reading: Reading | None) -> str:
    if reading is None or reading.bound is None:
        return _NONE
    return quantities.span(reading.bound, quantities.PENCE, stand.catalogue.firm.currency)


def _under(stand: Stand, reading: Reading | None) -> SideCell:
    """``£480 under``, ``£2,712 over``."""
    if reading is None or reading.bound is None:
        return SideCell(text=_NONE)
    room, currency = reading.room, stand.catalogue.firm.currency
    text = _CANNOT_TELL
    if room is not None and room.least >= 0:
        text = f"{quantities.span(room, quantities.PENCE, currency)} under"
    elif room is not None and room.most < 0:
        text = f"{quantities.span(room * -1, quantities.PENCE, currency)} over"
    return SideCell(text=text, verdict=reading.verdict)


def _weight(a: Stand, b: Stand) -> _Fact:
    cells = [_load(stand) for stand in (a, b)]
    label = "weight you may still load"
    return _Fact(SideRow(label=label, a=cells[0], b=cells[1]), f"{label} {cells[0].text}")


def _load(stand: Stand) -> SideCell:
    reading = stand.report.readings.get(WEIGHT)
    text = weight_words(stand.catalogue, stand.report).removeprefix("weight: ").removesuffix(" left")
    return SideCell(text=text, verdict=reading.verdict if reading is not None else None)


def _change(a: Stand, b: Stand, change: Change) -> SideRow:
    catalogue = b.catalogue if change.group in b.catalogue.groups else a.catalogue
    label = lowered(group_name(catalogue, change.group)) if change.group else "not in the catalogue"
    group = catalogue.groups.get(change.group) if change.group else None
    empty = UNDECIDED if group is not None and group.pick is Pick.ONE else _NONE
    texts = [side_words(change, after=after) or empty for after in (False, True)]
    return SideRow(label=label, a=SideCell(text=texts[0]), b=SideCell(text=texts[1]), change=change)


def _figure(a: Stand, b: Stand, ledger: LedgerId) -> _Fact:
    cells = [_amount(stand, ledger) for stand in (a, b)]
    spec = b.catalogue.ledgers.get(ledger) or a.catalogue.ledgers.get(ledger)
    label = lowered(ledger_name((b if ledger in b.catalogue.ledgers else a).catalogue, ledger))
    row = SideRow(label=label, a=cells[0], b=cells[1])
    if spec is None or cells[0].verdict is None:
        return _Fact(row, "")
    if spec.unit == _COUNTED:
        return _Fact(row, f"{cells[0].text.partition(' ' + _COUNTED.removesuffix('s'))[0]} {lowered(spec.short)}")
    return _Fact(row, cells[0].text if lowered(spec.short) == spec.unit else f"{lowered(spec.short)} {cells[0].text}")


def _amount(stand: Stand, ledger: LedgerId) -> SideCell:
    """The figure without its bound."""
    reading, spec = stand.report.readings.get(ledger), stand.catalogue.ledgers.get(ledger)
    if reading is None or spec is None or not reading.applies:
        return SideCell(text=_NONE)
    if reading.value is None:
        return SideCell(text=_CANNOT_TELL, verdict=reading.verdict)
    text = quantities.span(reading.value, spec.unit, stand.catalogue.firm.currency)
    return SideCell(text=text, verdict=reading.verdict)


def _works(a: Sequence[WorksWhere], b: Sequence[WorksWhere]) -> Iterator[_Fact]:
    """What both have and works away from a plug in one of them only."""
    there = {name: line.away for line in b for name in line.names}
    for name, away in ((name, line.away) for line in a for name in line.names):
        if name in there:
            cells = [SideCell(text=one.value) for one in (away, there[name])]
            yield _Fact(SideRow(label=f"{lowered(name)}, away from a plug", a=cells[0], b=cells[1]), "")


def works_rows(a: Sequence[WorksWhere], b: Sequence[WorksWhere]) -> tuple[SideRow, ...]:
    """The rows of what works away from a plug in one of them only."""
    return tuple(_told(_works(a, b)))


def works_line(row: SideRow) -> str:
    """``Compressor fridge, away from a plug: yes; was no.``"""
    return ended(f"{raised(row.label)}: {row.b.text}; was {row.a.text}")


def _warnings(a: Stand, b: Stand) -> _Fact:
    cells = [_open(stand) for stand in (a, b)]
    label = "open warnings"
    same = f"no {label}" if cells[0].text == _NONE else f"{label}: {cells[0].text}"
    return _Fact(SideRow(label=label, a=cells[0], b=cells[1]), same)


def _open(stand: Stand) -> SideCell:
    """What is broken and not accepted, and what cannot be told yet."""
    levels = (Level.STOP, Level.SIGN)
    broken = len(stand.report.broken(*levels)) + len(stand.report.strangers)
    unsure = len(stand.report.cannot_tell(*levels))
    told = [f"{count} {what}" for count, what in ((broken, "broken"), (unsure, _CANNOT_TELL)) if count]
    verdict = Verdict.BROKEN if broken else Verdict.CANNOT_TELL if unsure else Verdict.HOLDS
    return SideCell(text=listed(told) or _NONE, verdict=verdict)
