"""Where everything sits, by step, what must stay clear of it, and the clearances to be measured."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Paragraph, Table, Weight
from specbuilder.model.catalogue import Option
from specbuilder.model.own_parts import is_theirs
from specbuilder.wording.names import part_name
from specbuilder.wording.workshop import (
    ON_THE_VAN,
    bare,
    counted,
    from_to,
    from_to_across,
    mm,
    part_size,
    x_text,
    y_text,
    z_text,
)
from specbuilder.workshop.boxes import box_of
from specbuilder.workshop.placing import open_about, other_body
from specbuilder.workshop.view import Chosen

from .clearances import clearances
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
_RECKONED = (
    "Reckoned and not drawn (ESTIMATE): half the size to either side of the middle of its mass, a bench from its front "
    "edge back. It says what stands beside what, and nothing is cut or bolted by it. Of a part that is not listed, "
    "size or place is not known here or its hole says both. How high it stands is in the unit's own drawing."
)


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
            text="All in mm on the datum. X, Y and Z are the middle of its mass and no edge of it; an edge that is "
            "named goes first. Long is along the van."
        ),
        Table(columns=_COLUMNS, rows=tuple(rows), blank=frozenset({_AS_BUILT})),
        *_extents(material),
        Heading(text="Clearances to measure", level=3),
        *clearances(material),
    )


def _extents(material: Material) -> Iterator[Block]:
    """From where to where, of what has a size and a place that are both known."""
    columns = (
        Column(head="Item", share=0.5, right=True),
        Column(head="Part", share=3),
        Column(head="X from - to", share=1.4, right=True),
        Column(head="Y from - to", share=2),
        Column(head="High", share=0.7, right=True),
        Column(head="As built X, Y", share=1.6),
    )
    standing = [(one, option) for one, option in material.known if not _is_set_in(option)]
    found = [(one, option, box) for one, option in standing if (box := box_of(material.view, one)) is not None]
    rows = tuple(
        (
            item_number(one),
            part_name(material.catalogue, option.id, one.choice.place),
            from_to(box.from_x_mm, box.to_x_mm),
            from_to_across(box.from_y_mm, box.to_y_mm),
            bare(option.space.height_mm, _LENGTH),
            "",
        )
        for one, option, box in found
    )
    if rows:
        yield Heading(text="From where to where", level=3)
        yield Paragraph(text=_RECKONED, weight=Weight.STRONG)
        yield Table(columns=columns, rows=rows, blank=frozenset({5}))


def _is_set_in(option: Option) -> bool:
    """Set into a hole that is cut in the same step: the hole list says where it is."""
    return any(hole.freeze_step == option.build_step for hole in option.holes)


def _hole_is_measured(material: Material, one: Chosen, option: Option) -> bool:
    """Set into a hole that is measured on the van: no list then gives a figure for the part and none for the hole."""
    here = (hole for hole in one.holes if hole.freeze_step == option.build_step and not hole.measure)
    positions = material.view.positions
    return any(positions.of_cut(hole, one.choice, option) is None for hole in here)


def _row(material: Material, one: Chosen) -> tuple[str, ...] | None:
    """None for what has no place, and for what has none yet and is no part."""
    option, view = one.option, material.view
    if option is None:
        return None
    spot = view.positions.of_choice(one.choice, option)
    is_part = option.mass_kg > 0 or option.labour_h > 0
    if spot is None and (option.position is None or not is_part):
        return None
    if _hole_is_measured(material, one, option):
        spot = None
    open_ = other_body(view, option, spot) if spot is not None else ()
    return (
        item_number(one),
        part_name(material.catalogue, option.id, one.choice.place, one.choice.count),
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
    if _hole_is_measured(material, one, option):
        yield "it stands where its hole is measured"
    front_mm = material.view.front_edge_x_mm(option)
    if front_mm is not None:
        yield f"front edge at X {bare(front_mm, _LENGTH)}"
    if space.swivel_sweep_x_mm is not None:
        yield f"turns back to X {bare(space.swivel_sweep_x_mm, _LENGTH)}"
    if space.swing_mm is not None:
        yield f"door swings {mm(space.swing_mm)}"
    if space.lid_swing_mm is not None:
        yield f"lid lifts {mm(space.lid_swing_mm)}"
    if space.pull_out_mm is not None:
        yield f"pulls out {mm(space.pull_out_mm)} towards the aisle"
    if space.strap_points:
        yield f"{counted(space.strap_points, 'point', 'points')}"
