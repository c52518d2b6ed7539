"""The holes, twice: where they are marked at B1, and how each is cut at the step that freezes it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeAlias

from specbuilder.documents.blocks import Block, Column, Heading, Paragraph, Table, Weight
from specbuilder.model.catalogue import Option
from specbuilder.model.parts import Hole
from specbuilder.wording.dates import written_day_short
from specbuilder.wording.plain import ended, raised
from specbuilder.wording.workshop import (
    caution_words,
    hole_radius,
    hole_size,
    near_words,
    tolerance_text,
    x_text,
    y_text,
    z_text,
)
from specbuilder.workshop.cautions import cautions_of, steps_of
from specbuilder.workshop.cuts import nearest_box, surface_of, unsettled
from specbuilder.workshop.view import Chosen

from .material import Material, item_number

_MARKING = (
    Column(head="Label", share=1.8),
    Column(head="What, in which surface", share=2.2),
    Column(head="Item", share=0.4, right=True),
    Column(head="X", share=0.6, right=True),
    Column(head="Y", share=0.8, right=True),
    Column(head="Z", share=0.55, right=True),
    Column(head="+/-", share=0.3, right=True),
    Column(head="Size", share=2.3),
    Column(head="As built X, Y, Z", share=1.2),
)
_CUTTING = (
    Column(head="Label", share=1.5),
    Column(head="Cut from", share=0.9),
    Column(head="Look behind first for, mind", share=2.8),
    Column(head="Edge", share=1.7),
    Column(head="Agreed by", share=1.1),
    Column(head="Cut by, on", share=1.1),
)
_NOT_YET = "NOT YET"
Found: TypeAlias = tuple[Chosen, Option, Hole]


def holes(material: Material) -> tuple[Block, ...]:
    """Both lists, each by the step at whose hold point its holes are frozen."""
    blocks: list[Block] = [Heading(text="Holes")]
    steps = [step.id for step in material.steps]
    found = {step: here for step in (*steps, "") if (here := material.holes_of(step))}
    if not found:
        return (*blocks, Paragraph(text="None: nothing that is chosen is cut into the van."))
    blocks.append(
        Paragraph(
            text="Write the label on the masking tape at its centre. A hole is frozen when the hold point of its step "
            "is passed; after that only a change order moves it. Sizes in mm."
        )
    )
    for step, here in found.items():
        blocks.append(Heading(text=_head(material, step), level=3))
        blocks.append(marking(material, here))
        blocks.append(cutting(material, here))
        blocks += _of_the_van(material, step)
        blocks += not_yet(material, here)
    return tuple(blocks)


def _of_the_van(material: Material, step: str) -> Iterator[Block]:
    """What the van itself asks of whoever cuts at this step: it stands where the saw is in the hand."""
    van = material.view.van_option
    for caution, about in cautions_of(material.view):
        if van is not None and van.id in about and step in steps_of(caution):
            yield Paragraph(text=caution_words(caution, material.view.names(about)), weight=Weight.CAUTION)


def marking(material: Material, here: tuple[Found, ...]) -> Table:
    """Where each is marked, and its size."""
    return Table(columns=_MARKING, rows=tuple(_mark(material, *one) for one in here), blank=frozenset({8}))


def cutting(material: Material, here: tuple[Found, ...]) -> Table:
    """How each is cut."""
    return Table(columns=_CUTTING, rows=tuple(_cut(material, *one) for one in here), blank=frozenset({4, 5}))


def _head(material: Material, step: str) -> str:
    """Of a step that is passed, that its holes are cut; the new ones among them are told before everything else."""
    if not step:
        return "To be cut: of no step"
    name, planned = material.view.work_name(step), material.planned(step)
    if planned is None or not planned.passed:
        return f"To be cut by {name}"
    new = "; new ones: under what is to be done before work goes on" if _new_at(material, step) else ""
    return f"Cut at {name}, passed {written_day_short(planned.passed)}{new}"


def _new_at(material: Material, step: str) -> bool:
    return any(one.step.id == step and one.cut for one in material.redos)


def _mark(material: Material, one: Chosen, option: Option, hole: Hole) -> tuple[str, ...]:
    """Where it is, and for which item of the parts."""
    spot = material.view.positions.of_cut(hole, one.choice, option)
    what, surface = raised(_what(hole)[0]), surface_of(material.view, one, option, hole)
    return (
        hole.id,
        f"{one.choice.count} x {what}, {surface}" if one.choice.count > 1 else f"{what}, {surface}",
        item_number(one),
        x_text(spot),
        y_text(spot),
        z_text(spot),
        tolerance_text(hole),
        f"{hole_size(hole)}{hole_radius(hole)}",
        material.as_built(hole.id),
    )


def _cut(material: Material, one: Chosen, option: Option, hole: Hole) -> tuple[str, ...]:
    """How it is cut; one that may not be cut yet says so where somebody would reach for the saw."""
    waits = f"{_NOT_YET}; then {hole.cut_from}" if unsettled(material.view, one, option, hole) else hole.cut_from
    near = nearest_box(material.view, hole, material.view.positions.of_cut(hole, one.choice, option))
    mind = "; ".join(filter(None, (hole.check_behind, _what(hole)[1], near_words(near))))
    return hole.id, waits, mind, hole.edge_treatment, "", ""


def _what(hole: Hole) -> tuple[str, str]:
    """Its name, and what the catalogue adds behind that."""
    name, _, more = hole.what.partition("; ")
    return name, more


def not_yet(material: Material, here: tuple[Found, ...]) -> Iterator[Block]:
    """Why some of them are not cut yet."""
    for one, option, hole in here:
        why = unsettled(material.view, one, option, hole)
        if why:
            text = f"NOT TO BE CUT YET: {hole.id}, {hole.what}. {raised(ended('; '.join(why)))}"
            yield Paragraph(text=text, weight=Weight.STRONG)
