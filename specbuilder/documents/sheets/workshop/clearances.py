"""The clearances to be measured: the lengths that are worked out, and what only moving it can tell."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Paragraph, Table, Weight
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import LedgerSpec, Reading
from specbuilder.model.span import point
from specbuilder.wording.readings import is_estimate
from specbuilder.wording.workshop import ESTIMATE_FOOT, must_be, told
from specbuilder.wording.workshop_clearances import MOVE_IT, gap_words, meeting_words
from specbuilder.workshop.boxes import meetings

from .material import Material

_LENGTH = "mm"
_CLOSED_HEIGHT = LedgerId("closed-height")
_SPARE = "spare_mm"
"""The setting of that figure that holds what a barrier gets."""


def clearances(material: Material) -> Iterator[Block]:
    """Every length that is worked out for this build, beside what it must keep."""
    ledgers = material.catalogue.ledgers
    found = [(ledgers[key], reading) for key, reading in material.view.report.readings.items() if key in ledgers]
    rows = [_clearance(material, ledger, reading) for ledger, reading in found if _is_length(ledger, reading)]
    rows += _height(material)
    rows += _moved(material)
    columns = (
        Column(head="What", share=3),
        Column(head="Planned", right=True),
        Column(head="Must be", right=True, share=1.4),
        Column(head="As built", share=1.2),
        Column(head="Measured by, on", share=1.6),
    )
    yield Table(columns=columns, rows=tuple(rows), blank=frozenset({3, 4}))
    yield Paragraph(text=ESTIMATE_FOOT, weight=Weight.SMALL)
    if any(meetings(material.view)):
        yield Paragraph(text=MOVE_IT, weight=Weight.SMALL)


def _moved(material: Material) -> Iterator[tuple[str, ...]]:
    """What turns, opens or is pulled out beside something else."""
    for found in meetings(material.view):
        yield meeting_words(material.catalogue, found), gap_words(found), "touches nothing", "", ""


def _height(material: Material) -> Iterator[tuple[str, ...]]:
    """The quoted height, without the spare that only a barrier gets."""
    ledger = material.catalogue.ledgers.get(_CLOSED_HEIGHT)
    reading = material.view.report.readings.get(_CLOSED_HEIGHT)
    if ledger is None or reading is None or reading.value is None:
        return
    height = told(reading.value - ledger.settings.get(_SPARE, 0), _LENGTH, estimate=True)
    for side in ("left", "right"):
        yield f"Height closed as quoted, empty, on level ground, {side} side", height, f"at most {height}", "", ""


def _is_length(ledger: LedgerSpec, reading: Reading) -> bool:
    """Something to measure: nothing that stands side by side is no width."""
    return ledger.unit == _LENGTH and reading.applies and reading.value != point(0)


def _clearance(material: Material, ledger: LedgerSpec, reading: Reading) -> tuple[str, ...]:
    value = told(reading.value, ledger.unit, estimate=is_estimate(material.catalogue, reading))
    return ledger.name, value, must_be(reading, ledger.unit), "", ""
