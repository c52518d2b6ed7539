"""What is done again before work goes on: a signed change that came after its steps were passed.

It stands right behind what changed, since whoever reads that a hold point is passed looks no further.
"""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Signatures, Table, Weight
from specbuilder.model.catalogue import Option
from specbuilder.model.parts import Hole
from specbuilder.model.plain_text import one_line
from specbuilder.wording.dates import written_day
from specbuilder.wording.plain import ended, raised
from specbuilder.wording.workshop import hole_size
from specbuilder.wording.workshop_changes import piece_change
from specbuilder.wording.workshop_redo import (
    BY_PAPER,
    again_line,
    fit_line,
    hole_words,
    how,
    how_short,
    mind,
)
from specbuilder.workshop.passing import pass_figures
from specbuilder.workshop.pieces import hole_line
from specbuilder.workshop.redo import Closing, Redo
from specbuilder.workshop.view import Chosen

from .holes import cutting, marking, not_yet
from .material import Material

_CLOSE = (
    Column(head="Close, label", share=1.6),
    Column(head="What was cut, where", share=3.2),
    Column(head="How", share=0.8),
    Column(head="Mind", share=2.4),
    Column(head="Closed by, on", share=1.2),
)
_CIRCUITS = (
    Column(head="What", share=1.4),
    Column(head="Label of the cable", share=1.8),
    Column(head="Was", share=3),
    Column(head="Is", share=3),
    Column(head="Done by, on", share=1.2),
)
_FIGURES = (
    Column(head="Read again", share=2),
    Column(head="Must be", share=3),
    Column(head="Read", share=1.6),
    Column(head="By", share=1),
)
_SEATS = "seat"


def redo(material: Material) -> tuple[Block, ...]:
    """Step by step: close, take out, cut, fit, pass again; nothing where no passed step is touched."""
    blocks = [block for one in material.redos for block in _step(material, one)]
    blocks += _owed(material)
    if not blocks:
        return ()
    first = Paragraph(
        text="The change comes after these steps were signed off. What stands here is done, and its hold points are "
        "passed again, before anything else goes on. A hole is closed by its label: look for it on the old pages.",
        weight=Weight.STRONG,
    )
    return (Heading(text="TO DO BEFORE WORK GOES ON"), first, *blocks)


def _step(material: Material, one: Redo) -> Iterator[Block]:
    yield Heading(text=material.view.work_name(one.step.id), level=3)
    yield Paragraph(text=again_line(material.catalogue, one))
    if one.close:
        yield from _close(one.close)
    if one.out:
        yield Paragraph(text="Take out:")
        yield Items(rows=tuple(raised(ended(one_line(words))) for words in one.out), boxes=True)
    if one.cut:
        yield from _cut(material, one)
    if one.fit:
        yield Paragraph(text="Fit now:")
        yield Items(rows=tuple(fit_line(material.catalogue, part) for part in one.fit), boxes=True)
    if one.circuits:
        rows = tuple((*piece_change(piece), "") for piece in one.circuits)
        yield Table(columns=_CIRCUITS, rows=rows, blank=frozenset({4}))
    yield from _pass_again(material, one)


def _close(closings: tuple[Closing, ...]) -> Iterator[Block]:
    rows = tuple((one.hole.id, raised(hole_words(one.hole)), how_short(one.hole), mind(one), "") for one in closings)
    yield Table(columns=_CLOSE, rows=rows, blank=frozenset({4}))
    for text in dict.fromkeys(how(one.hole) for one in closings):
        yield Paragraph(text=text, weight=Weight.SMALL)
    if any(one.hole.what.startswith(("bench", _SEATS)) for one in closings):
        yield Paragraph(text=BY_PAPER, weight=Weight.SMALL)


def _cut(material: Material, one: Redo) -> Iterator[Block]:
    """The new holes as they stand in the hole list, to be cut now."""
    here = tuple(found for found in material.holes() if _is_new(material, one, *found))
    yield Paragraph(text="Mark and cut now:")
    yield marking(material, here)
    yield cutting(material, here)
    yield from not_yet(material, here)


def _is_new(material: Material, redo_: Redo, one: Chosen, option: Option, hole: Hole) -> bool:
    line = hole_line(material.view, one, hole)
    return any((new.id, new.surface, new.y_mm) == (line.id, line.surface, line.y_mm) for new in redo_.cut)


def _pass_again(material: Material, one: Redo) -> Iterator[Block]:
    """The figures of the hold point, to be read once more, and where it is signed."""
    hold = one.hold.hold_point
    rows = tuple((figure.what, figure.must_be, "", "") for figure in pass_figures(material.view, one.hold))
    yield Table(columns=_FIGURES, rows=rows, blank=frozenset({2, 3}))
    if one.again is not None:
        yield Items(rows=(ended(f"{hold} passed again {written_day(one.again.at)} by {one_line(one.again.by)}"),))
    else:
        yield Signatures(roles=(f"{hold} passed again, signed",))


def _owed(material: Material) -> Iterator[Block]:
    """Holes of older changes that nobody signed for yet."""
    rows = tuple(
        f"Change order {one.order}: {ended(one_line(one.words))} {_labels(material, one.labels)}"
        for one in material.owed
    )
    if rows:
        yield Heading(text="Still to be closed, of a change before this one", level=3)
        yield Items(rows=rows, boxes=True)


def _labels(material: Material, labels: tuple[str, ...]) -> str:
    """``window-hole1, side skin, 860 wide x 430 high: its centre stands on the old pages.``"""
    known = {hole.id: hole for option in material.catalogue.options.values() for hole in option.holes}
    said = (f"{label}, {known[label].surface}, {hole_size(known[label])}" for label in labels if label in known)
    strange = (one_line(label) for label in labels if label not in known)
    return ended(f"Close {'; '.join((*said, *strange))}: the centres stand on the old pages")
