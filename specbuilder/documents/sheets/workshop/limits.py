"""How to read a position, and what must not be done."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table, Weight
from specbuilder.model.catalogue import Caution
from specbuilder.model.ids import OptionId
from specbuilder.model.vans import NoDrillBox
from specbuilder.wording.names import group_name, listed, option_name
from specbuilder.wording.plain import ended
from specbuilder.wording.workshop import across_text, bare, caution_words
from specbuilder.workshop.cautions import cautions_of, forbids, is_for_the_floor, said_at
from specbuilder.workshop.cuts import unsettled

from .material import Material

_DATUM = (
    "X: mm back from the rear face of the left door pillar. A minus is forward of it.",
    "Y: mm from the centre line of the van, to the left or to the right, facing forward.",
    "Z: mm up from the bare floor of the van. A minus is below it.",
    "Positions are planned (ESTIMATE) until they are read on the van and written down.",
    "A hole is told by its centre, a part by the middle of its mass: neither is an edge. The tolerance of a hole holds "
    "for X, Y and Z.",
    "On the roof the first size lies across the van and the second along it; on the floor the first lies along it. "
    "On anything upright they are width and height. The template of the part goes before all of this.",
    "Where it says measure, the body decides: measure on the van, write it down, and have it agreed before cutting.",
    "Where a figure and the metal do not agree, stop and ask. Nothing is shifted by eye.",
)


def limits(material: Material) -> tuple[Block, ...]:
    """Datum, then the do-not list."""
    return (
        Heading(text="Datum: how to read a position"),
        Items(rows=_DATUM),
        Heading(text="Do not"),
        *_do_not(material),
    )


def _do_not(material: Material) -> Iterator[Block]:
    van = material.view.van_option.van if material.view.van_option else None
    yield Heading(text="Do not drill", level=3)
    if van is None:
        yield Paragraph(text="Not known: the base van is not decided. Nothing is drilled.", weight=Weight.STRONG)
    else:
        yield Items(rows=van.no_drill_zones or ("No zone is named here: the van maker's drawing decides.",))
        if van.no_drill_boxes:
            yield _boxes(van.no_drill_boxes)
    yield Heading(text="Do not cut yet", level=3)
    yield from _listed(tuple(_not_yet(material)))
    yield Heading(text="Do not order or build", level=3)
    yield from _listed(tuple(_not_to_be_built(material)))
    told = cautions_of(material.view)
    mine = [(caution, about) for caution, about in told if forbids(caution) and is_for_the_floor(caution)]
    theirs = [(caution, about) for caution, about in told if forbids(caution) and not is_for_the_floor(caution)]
    yield Heading(text="Never, while it is built", level=3)
    yield from _cautions(material, mine)
    yield Heading(text="Never, by whoever uses it: fix the labels, say it at the hand-over", level=3)
    yield from _listed(tuple(f"{ended(caution.text)} ({material.view.names(about)})" for caution, about in theirs))


def _boxes(boxes: tuple[NoDrillBox, ...]) -> Table:
    """In figures, to be marked on the floor before anything else."""
    columns = (
        Column(head="Mark on the floor", share=2),
        Column(head="X from", right=True),
        Column(head="X to", right=True),
        Column(head="Y from", right=True),
        Column(head="Y to", right=True),
        Column(head="Marked by"),
    )
    rows = tuple(
        (
            box.what,
            bare(box.from_x_mm, "mm"),
            bare(box.to_x_mm, "mm"),
            across_text(box.from_y_mm),
            across_text(box.to_y_mm),
            "",
        )
        for box in boxes
    )
    return Table(columns=columns, rows=rows, blank=frozenset({5}))


def _not_yet(material: Material) -> Iterator[str]:
    for one, option, hole in material.holes():
        why = unsettled(material.view, one, option, hole)
        if why:
            yield f"{hole.id}, {hole.what}: {ended('; '.join(why))}"


def _not_to_be_built(material: Material) -> Iterator[str]:
    report, catalogue = material.view.report, material.catalogue
    for option in report.strangers:
        yield f"{option_name(catalogue, option)}: nobody knows what it is."
    open_groups = listed(group_name(catalogue, group) for group in report.undecided)
    if open_groups:
        yield f"Not chosen yet: {open_groups}."


def _cautions(material: Material, told: list[tuple[Caution, tuple[OptionId, ...]]]) -> Iterator[Block]:
    """In full with who does it; what stands in full at its step is named here with that."""
    named: list[str] = []
    for caution, about in told:
        said = said_at(material.view, caution, about)
        at = [step.id for step in material.steps if step.id in said]
        if at:
            named.append(f"{ended(caution.text)} In full at {at[0]}.")
        else:
            yield Paragraph(text=caution_words(caution, material.view.names(about)), weight=Weight.CAUTION)
    yield from _listed(tuple(named)) if named or not told else ()


def _listed(rows: tuple[str, ...]) -> Iterator[Block]:
    yield Items(rows=rows) if rows else Paragraph(text="None")
