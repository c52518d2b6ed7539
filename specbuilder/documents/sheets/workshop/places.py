"""Where everything sits, by step, what must stay clear of it, and the clearances to be measured."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Paragraph, Table, Weight
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import LedgerSpec, Reading
from specbuilder.model.own_parts import is_theirs
from specbuilder.wording.names import option_name
from specbuilder.wording.readings import is_estimate
from specbuilder.wording.workshop import (
    ESTIMATE_FOOT,
    ON_THE_VAN,
    bare,
    mm,
    must_be,
    part_size,
    told,
    x_text,
    y_text,
    z_text,
)
from specbuilder.workshop.placing import open_about, other_body
from specbuilder.workshop.view import Chosen

from .material import Material, item_number

_COLUMNS = (
    Column(head="Step", share=0.5),
    Column(head="Item", share=0.5, right=True),
    Column(head="Part", share=2.8),
    Column(head="X", share=0.75, right=True),
    Column(head="Y", share=0.95, right=True),
    Column(head="Z", share=0.7, right=True),
    Column(head="Long x wide x high", share=1.9),
    Column(head="Keep clear, mind", share=2.2),
    Column(head="As built X, Y, Z", share=1.6),
)
_AS_BUILT = 8
_LENGTH = "mm"
_CLOSED_HEIGHT = LedgerId("closed-height")
_SPARE = "spare_mm"
"""The setting of that figure that holds what a barrier gets."""


def places(material: Material) -> tuple[Block, ...]:
    """Everything that has a place, by the step that needs it, then the clearances."""
    rows = [
        (step or "-", *row)
        for step in (*(step.id for step in material.steps), "")
        for one in material.parts_of(step)
        if (row := _row(material, one)) is not None
    ]
    return (
        Heading(text="Where everything sits"),
        Paragraph(
            text="All in mm on the datum. X, Y and Z are the middle of its mass; an edge that is named goes first, and "
            "the unit's own drawing says where the rest of it lies. Long is along the van."
        ),
        Table(columns=_COLUMNS, rows=tuple(rows), blank=frozenset({_AS_BUILT})),
        Heading(text="Clearances to measure", level=3),
        *_clearances(material),
    )


def _row(material: Material, one: Chosen) -> tuple[str, ...] | None:
    """None for what has no place, and for what has none yet and is no part."""
    option, view = one.option, material.view
    if option is None:
        return None
    spot = view.positions.of_choice(one.choice, option)
    is_part = option.mass_kg > 0 or option.labour_h > 0
    if spot is None and (option.position is None or not is_part):
        return None
    open_ = other_body(view, option, spot) if spot is not None else ()
    return (
        item_number(one),
        option_name(material.catalogue, option.id, one.choice.place, one.choice.count),
        x_text(spot),
        ON_THE_VAN if "width" in open_ else y_text(spot),
        ON_THE_VAN if "height" in open_ else z_text(spot),
        "by its plate" if is_theirs(option, one.choice) else part_size(option),
        "; ".join(_mind(material, one, option)) or "-",
        "",
    )


def _mind(material: Material, one: Chosen, option: Option) -> Iterator[str]:
    """What is open about its place, and the room it needs to work."""
    space = material.as_brought(one, option).space
    yield from filter(None, (open_about(material.view, one),))
    front_mm = material.view.front_edge_x_mm(option)
    if front_mm is not None:
        yield f"front edge at X {bare(front_mm, _LENGTH)}"
    if space.swivel_sweep_x_mm is not None:
        yield f"turns back to X {bare(space.swivel_sweep_x_mm, _LENGTH)}"
    if space.swing_mm is not None:
        yield f"door swings {mm(space.swing_mm)}"
    if space.lid_swing_mm is not None:
        yield f"lid lifts {mm(space.lid_swing_mm)}"


def _clearances(material: Material) -> Iterator[Block]:
    """Every length that is worked out for this build, beside what it must keep."""
    ledgers = material.catalogue.ledgers
    found = [(ledgers[key], reading) for key, reading in material.view.report.readings.items() if key in ledgers]
    rows = [_clearance(material, ledger, reading) for ledger, reading in found if _is_length(ledger, reading)]
    rows += _height(material)
    columns = (
        Column(head="What", share=3),
        Column(head="Planned", right=True),
        Column(head="Must be", right=True, share=1.4),
        Column(head="As built", share=1.2),
        Column(head="Measured by, on", share=1.6),
    )
    yield Table(columns=columns, rows=tuple(rows), blank=frozenset({3, 4}))
    yield Paragraph(text=ESTIMATE_FOOT, weight=Weight.SMALL)


def _height(material: Material) -> Iterator[tuple[str, ...]]:
    """The quoted height, without the spare that only a barrier gets."""
    ledger = material.catalogue.ledgers.get(_CLOSED_HEIGHT)
    reading = material.view.report.readings.get(_CLOSED_HEIGHT)
    if ledger is None or reading is None or reading.value is None or not reading.applies:
        return
    height = told(reading.value - ledger.settings.get(_SPARE, 0), _LENGTH, estimate=True)
    for side in ("left", "right"):
        yield f"Height closed as quoted, empty, on level ground, {side} side", height, f"at most {height}", "", ""


def _is_length(ledger: LedgerSpec, reading: Reading) -> bool:
    return ledger.unit == _LENGTH and reading.applies


def _clearance(material: Material, ledger: LedgerSpec, reading: Reading) -> tuple[str, ...]:
    value = told(reading.value, ledger.unit, estimate=is_estimate(material.catalogue, reading))
    return ledger.name, value, must_be(reading, ledger.unit), "", ""
