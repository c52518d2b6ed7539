"""The mass budget by part, with what each axle bears, and what the weighbridge should show."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Facts, Heading, Paragraph, Table, Weight
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Basis
from specbuilder.model.ledger import Entry, Reading
from specbuilder.model.span import Span
from specbuilder.wording.names import key_name, listed, option_name
from specbuilder.wording.plain import raised
from specbuilder.wording.quantities import quantity
from specbuilder.wording.readings import is_estimate, reading_line
from specbuilder.wording.workshop import ESTIMATE_FOOT, kg, told

from . import weighing
from .material import Material

_TOTAL, _REAR, _FRONT = LedgerId("total-mass"), LedgerId("rear-axle"), LedgerId("front-axle")
_COLUMNS = (
    Column(head="What", share=4),
    Column(head="Step", share=0.6),
    Column(head="kg", share=1, right=True),
    Column(head="on the rear axle", share=1, right=True),
    Column(head="on the front axle", share=1, right=True),
    Column(head="As weighed", share=1),
)
_WEIGHED = 5


def mass(material: Material) -> tuple[Block, ...]:
    """Budget, what is assumed, margins, and the scales."""
    total = material.view.report.readings.get(_TOTAL)
    blocks: list[Block] = [Heading(text="Mass budget")]
    if total is None or total.value is None:
        blocks.append(Paragraph(text="Not known: the mass of this build cannot be summed yet.", weight=Weight.STRONG))
    else:
        blocks += _budget(material, total)
    blocks += (Heading(text="What the weighbridge should show", level=3), *_scales(material))
    return tuple(blocks)


def _budget(material: Material, total: Reading) -> Iterator[Block]:
    lines = tuple(_line(material, entry) for entry in _ordered(material, total))
    sums = tuple(_sums(material, total))
    strong = frozenset(range(len(lines), len(lines) + len(sums)))
    yield Table(columns=_COLUMNS, rows=(*lines, *sums), strong=strong, blank=frozenset({_WEIGHED}))
    yield Paragraph(
        text=f"{ESTIMATE_FOOT} A minus on an axle: the load lies behind or before both and lifts that one.",
        weight=Weight.SMALL,
    )
    yield Facts(rows=tuple(_grounds(material, total)))


def _ordered(material: Material, total: Reading) -> tuple[Entry, ...]:
    """The van, the parts in build order, then people, luggage, water, fuel and what is not chosen yet."""
    order = {one.choice.option: number for number, one in enumerate(material.chosen)}

    def place(entry: Entry) -> tuple[int, int]:
        if entry.option is None:
            return 2, 0
        return (0, 0) if entry.label else (1, order.get(entry.option, len(order)))

    return tuple(sorted(total.entries, key=place))


def _line(material: Material, entry: Entry) -> tuple[str, ...]:
    option = material.catalogue.options.get(entry.option) if entry.option is not None else None
    estimate = option is None or option.basis is Basis.ESTIMATE
    rear, front = (_share(material, axle, entry) for axle in (_REAR, _FRONT))
    return (
        _name(material, entry, option),
        material.view.build_step(option) if option is not None and not entry.label else "-",
        kg(entry.amount, estimate=estimate),
        "-" if rear is None else kg(rear, estimate=estimate),
        "-" if front is None else kg(front, estimate=estimate),
        "",
    )


def _name(material: Material, entry: Entry, option: Option | None) -> str:
    if option is None or entry.label:
        name = raised(material.view.line_name(entry))
        return f"{name} (assumed)" if entry.assumed else name
    name = option_name(material.catalogue, option.id, count=entry.count)
    water_l = option.water.extra_water_l * entry.count
    return f"{name}, with {quantity(water_l, 'L', '')} of water in it" if water_l else name


def _share(material: Material, axle: LedgerId, entry: Entry) -> Span | None:
    """What of it this axle bears."""
    reading = material.view.report.readings.get(axle)
    if reading is None:
        return None
    same = (e for e in reading.entries if (e.label, e.option, e.group) == (entry.label, entry.option, entry.group))
    return next((one.amount for one in same), None)


def _sums(material: Material, total: Reading) -> Iterator[tuple[str, ...]]:
    """Together, the plates, and what is left: in all and on each axle."""
    readings = [total, *(material.view.report.readings.get(axle) for axle in (_REAR, _FRONT))]
    values = [reading.value if reading else None for reading in readings]
    plates = [reading.bound if reading else None for reading in readings]
    left = [reading.room if reading else None for reading in readings]
    yield ("Loaded van", "-", *(kg(value, estimate=value is not None) for value in values), "")
    yield ("Plate: at most", "-", *(kg(value) for value in plates), "-")
    yield ("Left", "-", *(kg(value, estimate=value is not None) for value in left), "-")


def _grounds(material: Material, total: Reading) -> Iterator[tuple[str, str]]:
    """Who and what is counted beside the parts, and on which assumptions it stands."""
    catalogue = material.catalogue
    for entry in total.entries:
        if entry.option is None and entry.group is None:
            assumed = " (assumed)" if entry.assumed else ""
            yield f"{raised(entry.label)} counted", f"{told(entry.amount, 'kg', estimate=True)}{assumed}"
    if total.assumed:
        yield "Assumed, and not said by the customer", listed(key_name(catalogue, key) for key in total.assumed)
    for key in (_TOTAL, _REAR, _FRONT):
        reading = material.view.report.readings.get(key)
        if reading is not None:
            yield catalogue.ledgers[key].name, reading_line(catalogue, reading)


def _scales(material: Material) -> Iterator[Block]:
    """The band within which the finished van should lie, with room for the ticket."""
    columns = (
        Column(head="What", share=4),
        Column(head="Should show", share=1.6, right=True),
        Column(head="Scales show", share=1.2),
        Column(head="Ticket no., by", share=1.4),
    )
    catalogue = material.catalogue
    found = (weighing.reading(material, ledger) for ledger in (weighing.BAND[-1], *weighing.BAND[:-1]))
    rows = tuple(
        (
            catalogue.ledgers[reading.id].name,
            told(reading.value, "kg", estimate=is_estimate(catalogue, reading)),
            "",
            "",
        )
        for reading in found
        if reading is not None
    )
    yield Paragraph(text=weighing.HOW)
    yield weighing.on_board(material)
    yield Table(columns=columns, rows=rows, blank=frozenset({2, 3}), empty="Cannot be told yet")
    yield Paragraph(
        text="Outside the band: stop, find the part that is not as listed, and tell the counter before the customer "
        "is told.",
        weight=Weight.SMALL,
    )
