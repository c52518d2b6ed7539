"""Hand-over packs of the examples, and what is read off them."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import pytest

from specbuilder.documents.blocks import Block, Facts, Heading, Items, Paper, Paragraph, Signatures, Table
from specbuilder.documents.sheets.handover import handover_pack
from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import JobState
from specbuilder.model.papers import Case
from specbuilder.workshop.view import SpecView, view_of

from .cases import NAMES, case

EVERY = pytest.mark.parametrize("name", NAMES)
"""Every example."""


def pack(name: str, **changes: object) -> tuple[Case, Paper]:
    """An ordered example with its pack; one as it stands is made once for all tests."""
    return _made(name, **changes) if changes else _as_it_stands(name)


@cache
def _as_it_stands(name: str) -> tuple[Case, Paper]:
    return _made(name)


def _made(name: str, **changes: object) -> tuple[Case, Paper]:
    found = case(name, state=JobState.ORDERED, **changes)
    return found, handover_pack(found)


def view(found: Case) -> SpecView:
    return view_of(found.stand.catalogue, found.stand.spec, found.stand.report)


def fitted(found: Case) -> list[Option]:
    return [one.option for one in view(found).taken if one.option is not None]


def texts(blocks: tuple[Block, ...]) -> Iterator[str]:
    """Everything that stands on a paper."""
    for block in blocks:
        match block:
            case Heading(text=text) | Paragraph(text=text):
                yield text
            case Items(rows=rows):
                yield from rows
            case Facts(rows=pairs):
                yield from (cell for pair in pairs for cell in pair)
            case Table(columns=columns, rows=cells):
                yield from (column.head for column in columns)
                yield from (cell for row in cells for cell in row)
            case Signatures(roles=roles):
                yield from roles


def under(paper: Paper, title: str) -> tuple[Block, ...]:
    """The blocks below a heading, up to the next one of its level or above."""
    blocks = iter(paper.blocks)
    level = next((b.level for b in blocks if isinstance(b, Heading) and b.text == title), None)
    found: list[Block] = []
    for block in blocks if level is not None else ():
        if isinstance(block, Heading) and level is not None and block.level <= level:
            break
        found.append(block)
    return tuple(found)


def ticked(paper: Paper, title: str) -> list[str]:
    return [row for block in under(paper, title) if isinstance(block, Items) for row in block.rows]


def table(paper: Paper, head: str) -> Table:
    """The first table whose first column has this head."""
    return next(b for b in paper.blocks if isinstance(b, Table) and b.columns[0].head == head)
