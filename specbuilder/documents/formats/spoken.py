"""One fact a line and no columns: a paper as it is read aloud, or looked through by a program."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import assert_never

from specbuilder.documents.blocks import (
    Big,
    Block,
    Diagram,
    Facts,
    Heading,
    Items,
    Node,
    Paper,
    Paragraph,
    Signatures,
    Table,
    Weight,
)
from specbuilder.wording.plain import ended, printable, raised

_BLANK = "to be filled in"
_CAUTION = "Caution: "


def set_spoken(paper: Paper) -> bytes:
    """The paper as a file."""
    return ("\n".join(spoken_lines(paper)) + "\n").encode()


def spoken_lines(paper: Paper) -> tuple[str, ...]:
    """The paper line by line, with what stands on every page said once."""
    running = paper.running
    head = (paper.title, running.firm, running.job, running.revision, running.state, running.banner)
    lines = (*(_sentence(raised(text)) for text in head), *spoken_blocks(paper.blocks), _plain(running.foot))
    return tuple(line for line in lines if line)


def spoken_blocks(blocks: Sequence[Block]) -> tuple[str, ...]:
    """Some blocks of a paper alone."""
    return tuple(line for block in blocks for line in _block(block) if line)


def _block(block: Block) -> Iterator[str]:
    match block:
        case Heading():
            yield f"{_plain(block.text).rstrip(':.')}:"
        case Paragraph(text=text, weight=weight):
            yield f"{_CAUTION if weight is Weight.CAUTION else ''}{_plain(text)}"
        case Big():
            yield _sentence(", ".join(filter(None, (f"{block.label}: {block.figure}", block.note))))
        case Facts():
            yield from (_sentence(f"{name}: {value.strip() or _BLANK}") for name, value in block.rows)
        case Items():
            yield from (_item(block, number, text) for number, text in enumerate(block.rows, 1))
        case Table():
            yield from _table(block)
        case Signatures():
            yield from (f"Signature and date of {_plain(role)}: {_BLANK}." for role in block.roles)
        case Diagram():
            yield _sentence(block.alt)
            yield from (line for root in block.roots for line in _node(root, ""))
        case _:
            assert_never(block)


def _item(items: Items, number: int, text: str) -> str:
    """What is to be ticked says so, and what is numbered has its number."""
    start = f"{number} " if items.numbered else ""
    return f"{start}{'To do: ' if items.boxes else ''}{_sentence(text)}"


def _table(table: Table) -> Iterator[str]:
    """A line a row: each cell behind its head."""
    if not table.rows:
        yield _sentence(table.empty)
    for row in table.rows:
        cells = (_cell(table, column, cell) for column, cell in enumerate(row))
        yield _sentence("; ".join(cell for cell in cells if cell))


def _cell(table: Table, column: int, cell: str) -> str:
    text, head = _plain(cell), _plain(table.columns[column].head)
    if not text:
        text = _BLANK if column in table.blank else ""
    return f"{head}: {text}" if head and text else text


def _node(node: Node, above: str) -> Iterator[str]:
    """What it hangs on, by which wire, and what it is."""
    title = _plain(node.title)
    parts = (title, f"from {above}" if above else "", _plain(node.wire), _plain(node.note))
    yield _sentence(", ".join(part for part in parts if part))
    for below in node.below:
        yield from _node(below, title)


def _sentence(text: str) -> str:
    plain = _plain(text)
    return ended(plain) if plain else ""


def _plain(text: str) -> str:
    return " ".join(printable(text).split())
