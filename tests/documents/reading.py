"""A paper read back, the way somebody reads it: texts, tables below their headings, and figures out of their cells."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass

from specbuilder.documents.blocks import Diagram, Heading, Node, Paper, Table


@dataclass(frozen=True, slots=True)
class Found:
    """A table with the headings above it, the nearest last."""

    under: tuple[str, ...]
    table: Table

    @property
    def heads(self) -> tuple[str, ...]:
        """Of its columns."""
        return tuple(column.head for column in self.table.columns)

    def cells(self) -> Iterator[dict[str, str]]:
        """Its rows, by the heads of their columns."""
        return (dict(zip(self.heads, row, strict=True)) for row in self.table.rows)


def texts(value: object) -> Iterator[str]:
    """Every text of a paper or block."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for one in value:
            yield from texts(one)
    elif is_dataclass(value):
        for field in fields(value):
            yield from texts(getattr(value, field.name))


def tables(paper: Paper) -> Iterator[Found]:
    """All tables with the headings they stand under."""
    under: dict[int, str] = {}
    for block in paper.blocks:
        if isinstance(block, Heading):
            under = {level: text for level, text in under.items() if level < block.level} | {block.level: block.text}
        if isinstance(block, Table):
            yield Found(tuple(under[level] for level in sorted(under)), block)


def rows(paper: Paper, *heads: str) -> list[dict[str, str]]:
    """The rows of all tables that have these columns."""
    return [row for found in tables(paper) if set(heads) <= set(found.heads) for row in found.cells()]


def part(paper: Paper, heading: str) -> Paper:
    """The blocks under a heading that begins so, up to the next of its level or above."""
    blocks, level = [], 0
    for block in paper.blocks:
        if isinstance(block, Heading):
            if level and block.level <= level:
                break
            if not level and block.text.startswith(heading):
                level = block.level
        if level:
            blocks.append(block)
    return Paper(name=paper.name, title=paper.title, running=paper.running, blocks=tuple(blocks))


def nodes(paper: Paper) -> Iterator[Node]:
    """Every node of its diagrams."""

    def below(these: tuple[Node, ...]) -> Iterator[Node]:
        for node in these:
            yield node
            yield from below(node.below)

    for block in paper.blocks:
        if isinstance(block, Diagram):
            yield from below(block.roots)


def number(cell: str) -> float:
    """``1,080`` and ``9 e`` as numbers; ``860 left`` counts up to the left, ``860 right`` down."""
    figure, *words = cell.replace("\N{NO-BREAK SPACE}", " ").split(" ")
    value = float(figure.replace(",", ""))
    return -value if "right" in words else value
