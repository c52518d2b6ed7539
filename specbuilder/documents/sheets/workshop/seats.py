"""Seats, belts and everything a person's life hangs on: papers, and what is read off them on the day."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Facts, Heading, Items, Paragraph, Table, Weight
from specbuilder.model.catalogue import Option, Paper
from specbuilder.model.kinds import Step
from specbuilder.wording.names import part_name
from specbuilder.wording.plain import raised
from specbuilder.wording.workshop import counted, mm, spot_text
from specbuilder.workshop.placing import other_body
from specbuilder.workshop.view import Chosen

from .material import Material

_FIXINGS = 6
"""Rows to fill in; the report says how many there are."""
_OF_THE_BENCH = "those of the bench: they stand in its table"
_PHOTOS = (
    "Every plate under the floor, with its paint mark",
    "Every belt point, bolt head and label",
    "The label of the seat with its number",
)


def seats(material: Material) -> tuple[Block, ...]:
    """A sheet for every seat, seat base and fixing of the seating that has a hold point."""
    found = [(one, option) for one, option in material.known if _is_fixed(material, option)]
    blocks: list[Block] = [Heading(text="Seats and belts")]
    if not found:
        return (*blocks, Paragraph(text="None: no seat, belt or seat base is fitted."))
    blocks.append(
        Paragraph(
            text="Plates, bolts and torques are those of the seat's own report for this van, never those of another "
            "seat. No report here, no hole.",
            weight=Weight.CAUTION,
        )
    )
    for one, option in found:
        blocks += _one(material, one, option)
    return tuple(blocks)


def _is_fixed(material: Material, option: Option) -> bool:
    group = material.catalogue.groups[option.group]
    return group.step is Step.SEATING and bool(option.hold_points)


def _one(material: Material, one: Chosen, option: Option) -> Iterator[Block]:
    name = part_name(material.catalogue, option.id, one.choice.place, one.choice.count)
    yield Heading(text=name, level=3)
    yield Facts(rows=tuple(_facts(material, one, option)))
    if _is_of_the_bench(option):
        return
    columns = (
        Column(head="Fixing", share=1.4),
        Column(head="Bolt: size, grade"),
        Column(head="Plate"),
        Column(head="Torque by its own paper", share=1.2),
        Column(head="Torque as built", share=1.2),
        Column(head="Marked, photo no.", share=1.2),
    )
    rows = tuple((fixing, "", "", "", "", "") for fixing in _fixings(one, option))
    yield Table(columns=columns, rows=rows, blank=frozenset({1, 2, 3, 4, 5}))
    if option.space.strap_points:
        yield _points(one, option)
    if option.papers or option.space.belts:
        yield Items(rows=_PHOTOS, boxes=True)


def _is_of_the_bench(option: Option) -> bool:
    """A position of a bench has no fixings of its own."""
    return option.space.bench_shift_mm > 0


def _fixings(one: Chosen, option: Option) -> tuple[str, ...]:
    """Rows to fill in: of a top-strap point its own, else so many as there is room for."""
    count = one.choice.count
    if option.space.strap_points:
        return tuple(f"Top-strap point {number}" for number in range(1, option.space.strap_points * count + 1))
    fixings = (f"Seat fixing {number}" for number in range(1, _FIXINGS + 1))
    return (*fixings, *(f"Belt points, place {number}" for number in range(1, option.space.belts * count + 1)))


def _points(one: Chosen, option: Option) -> Table:
    """Where each point is: the report says so, nobody here does."""
    columns = (
        Column(head="Point", share=1.2),
        Column(head="X, Y, Z by the report", share=1.6),
        Column(head="X, Y, Z as built", share=1.6),
        Column(head="Read by, on", share=1.2),
    )
    rows = tuple((point, "", "", "") for point in _fixings(one, option))
    return Table(columns=columns, rows=rows, blank=frozenset({1, 2, 3}))


def _paper(paper: Paper) -> str:
    """``Torque list for seat fixings (by H5, signed by trained fitter)``."""
    return f"{paper.name} (by {paper.at_hold_point}, signed by {paper.signed_by})"


def _facts(material: Material, one: Chosen, option: Option) -> Iterator[tuple[str, str]]:
    spot = material.view.positions.of_choice(one.choice, option)
    front_mm = material.view.front_edge_x_mm(option)
    belts = option.space.belts * one.choice.count
    if belts:
        yield "Belts", counted(belts, "place", "places")
    if spot is not None and option.mass_kg > 0:
        yield "Middle of its mass", spot_text(spot, other_body(material.view, option, spot))
    if front_mm is not None:
        yield "Front edge", f"X {mm(front_mm)}"
    if option.space.bench_shift_mm:
        yield "Stands further back by", mm(option.space.bench_shift_mm)
        yield "Fixings", _OF_THE_BENCH
    if option.space.swivel_sweep_x_mm is not None:
        yield "Turns back to", f"X {mm(option.space.swivel_sweep_x_mm)}"
    yield "Holes", ", ".join(hole.id for hole in one.holes) or "none of its own"
    papers = [material.catalogue.papers[key] for key in option.papers if key in material.catalogue.papers]
    yield "Papers", "; ".join(map(_paper, papers)) or "its maker's, with the torques"
    yield "Hold points", ", ".join(option.hold_points)
    if (papers or belts) and not _is_of_the_bench(option):
        yield "Report number", ""
        yield "Van, floor and position it names", ""
    read = material.as_built(option.id)
    if read:
        yield "Read so far", raised(read)
