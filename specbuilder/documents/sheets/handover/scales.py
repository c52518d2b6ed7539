"""The weighbridge and the height: what is read, what must be added to it, and what the plate allows."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Paragraph, Table, Weight
from specbuilder.documents.sheets.customer import figures
from specbuilder.documents.sheets.workshop import weighing
from specbuilder.documents.sheets.workshop.material import Material
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Entry
from specbuilder.model.span import Span
from specbuilder.wording.readings import is_estimate
from specbuilder.wording.workshop import ESTIMATE_FOOT, kg, told

_REAR, _FRONT = LedgerId("rear-axle"), LedgerId("front-axle")
_FREE = LedgerId("pay-mass")
_COLUMNS = (
    Column(head="kg", share=3.4),
    Column(head="Front axle", right=True, share=1.2),
    Column(head="Rear axle", right=True, share=1.2),
    Column(head="Total", right=True, share=1.2),
)


def scales(found: Material) -> Iterator[Block]:
    """Mass as built against the plate, then the height."""
    yield Heading(text="Mass as built")
    yield Paragraph(text=weighing.HOW)
    yield weighing.on_board(found)
    table = _mass(found)
    yield table
    yield Paragraph(text=ESTIMATE_FOOT, weight=Weight.SMALL)
    yield from _certificate(found, table.rows[1][-1])
    yield Heading(text="Height as built", level=3)
    yield _height(found)


def _mass(found: Material) -> Table:
    """The band first, for that is what a reading is held against; then what is planned, read, added and allowed."""
    total, rear = (_entries(found, ledger) for ledger in (figures.WEIGHT, _REAR))
    rears = {entry.label: entry.amount for entry in rear if not weighing.is_on_board(found, entry)}
    rows: list[tuple[str, ...]] = [
        ("Band: must lie in it", *_weighed(found, weighing.BAND)),
        ("Planned on the scales", *_weighed(found, weighing.PLANNED)),
        ("Read on the scales", "", "", ""),
    ]
    rows += [
        (f"To add: {entry.label}", *_axles(entry.amount, rears.get(entry.label)))
        for entry in total
        if not weighing.is_on_board(found, entry)
    ]
    rows += [("Read and added", "", "", ""), ("Plate, at most", *_plates(found)), ("Left to the plate", "", "", "")]
    strong = frozenset({0, 2, len(rows) - 3, len(rows) - 1})
    return Table(columns=_COLUMNS, rows=tuple(rows), strong=strong, blank=frozenset({1, 2, 3}))


def _weighed(found: Material, ledgers: tuple[LedgerId, ...]) -> tuple[str, ...]:
    """Front axle, rear axle, total of the van on the scales, as the workshop's pack has them."""
    readings = (weighing.reading(found, ledger) for ledger in ledgers)
    return tuple(kg(reading.value if reading is not None else None, estimate=True) for reading in readings)


def _entries(found: Material, ledger: LedgerId) -> tuple[Entry, ...]:
    reading = found.view.report.readings.get(ledger)
    return reading.entries if reading is not None else ()


def _axles(total: Span | None, rear: Span | None) -> tuple[str, str, str]:
    """Front axle, rear axle, total: what is added is reckoned, and weighed by nobody."""
    front = total - rear if total is not None and rear is not None else None
    return kg(front, estimate=True), kg(rear, estimate=True), kg(total, estimate=True)


def _plates(found: Material) -> tuple[str, str, str]:
    """Of the plate the van has when it is handed over."""
    readings = found.view.report.readings
    bounds = [readings[key].bound if key in readings else None for key in (_FRONT, _REAR, figures.WEIGHT)]
    front, rear, total = (kg(bound) for bound in bounds)
    return front, rear, total


def _certificate(found: Material, planned: str) -> Iterator[Block]:
    """What the customer takes home about weight, in the words of the ledger."""
    ledger, reading = found.catalogue.ledgers.get(_FREE), found.view.report.readings.get(_FREE)
    if ledger is None or reading is None or reading.value is None:
        return
    yield Table(
        columns=(
            Column(head="Mass certificate, kg", share=4.4),
            Column(head="Planned", right=True),
            Column(head="As built", right=True, share=1.6),
        ),
        rows=(
            ("Finished van as it stood on the scales, with what is named above on board", planned, ""),
            (ledger.name, kg(reading.value, estimate=is_estimate(found.catalogue, reading)), ""),
            ("Number and date of the weighbridge ticket", "-", ""),
        ),
        blank=frozenset({2}),
    )


def _height(found: Material) -> Table:
    planned = figures.closed_height_mm(found.case)
    most = "cannot tell yet" if planned is None else told(planned, "mm", estimate=True)
    rows = tuple((side, most, "", "") for side in ("Left side", "Right side"))
    columns = (
        Column(head="Ground to the highest point, all shut", share=3),
        Column(head="Planned, at most", share=2.4),
        Column(head="Read", share=1.2),
        Column(head="By, on", share=1.6),
    )
    return Table(columns=columns, rows=rows, blank=frozenset({2, 3}))
