"""The papers that others sign: which this van needs, who signs them, and whether they are in the pack."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table
from specbuilder.documents.sheets.workshop.material import Material
from specbuilder.model.catalogue import Paper
from specbuilder.wording.plain import raised

_COLUMNS = (
    Column(head="Paper", share=3),
    Column(head="Signed by", share=1.9),
    Column(head="By hold point", share=0.9),
    Column(head="For", share=2.4),
    Column(head="Number, date", share=1.6),
    Column(head="In the pack", share=0.9),
)
_BESIDES = (
    "As-built spec, this revision",
    "This record, filled in",
    "Wiring and fuse map: the circuits above, as fitted",
    "Photos of all four sides and of what the lining hides",
    "Makers' papers of the parts, with their serial numbers",
    "Keys, all of them",
)


def certificates(found: Material) -> Iterator[Block]:
    """One line a paper, then what every pack holds."""
    yield Heading(text="Certificates and papers")
    yield Paragraph(text="Signed by those who may by the code of the country where the van is built and used.")
    rows = tuple(_row(paper, parts) for paper, parts in _needed(found))
    yield Table(columns=_COLUMNS, rows=rows, blank=frozenset({4, 5}))
    yield Heading(text="Goes with them", level=3)
    yield Items(rows=_BESIDES, boxes=True)


def _needed(found: Material) -> list[tuple[Paper, str]]:
    """Papers of what is fitted, by hold point, with the parts they are for."""
    points = {step.hold_point: number for number, step in enumerate(found.steps) if step.hold_point}
    needed = [
        (paper, found.view.names(option.id for _, option in found.known if key in option.papers))
        for key, paper in found.catalogue.papers.items()
    ]
    return sorted((one for one in needed if one[1]), key=lambda one: points.get(one[0].at_hold_point, len(points)))


def _row(paper: Paper, parts: str) -> tuple[str, ...]:
    return paper.name, raised(paper.signed_by), paper.at_hold_point, parts, "", ""
