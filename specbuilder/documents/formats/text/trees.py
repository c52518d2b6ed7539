"""One-line diagrams as trees drawn with lines."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Diagram, Node
from specbuilder.wording.plain import printable

from .cells import broken

_BRANCH, _LAST, _ON, _NOTHING = "├─ ", "└─ ", "│  ", "   "
_WIRE = " ─ "
"""Between what leads to a thing and the thing."""
_NARROWEST = 20
"""Columns left for the words, however deep the tree is."""


def diagram_lines(diagram: Diagram, width: int) -> list[str]:
    """The trees below each other, and what they show."""
    lines = tree_lines(diagram.roots, width)
    return [*lines, *([""] if lines else []), *broken(printable(diagram.alt), width)]


def tree_lines(roots: tuple[Node, ...], width: int) -> list[str]:
    """The trees alone."""
    lines: list[str] = []
    for root in roots:
        lines += [*([""] if lines else []), *_node(root, "", "", width)]
    return lines


def _node(node: Node, first: str, rest: str, width: int) -> Iterator[str]:
    """A thing and what hangs on it.

    Args:
        node: the thing.
        first: stands before its first line.
        rest: stands before its other lines and all that hangs on it.
        width: columns.
    """
    title = printable(node.title).strip()
    wire = printable(node.wire).strip()
    note = printable(node.note).strip()
    named = f"{wire}{_WIRE}{title}" if wire else title
    more = _ON if node.below else _NOTHING
    yield from _hung(first, rest + more, named, width)
    if note:
        yield from _hung(rest + more, rest + more, note, width)
    for i, below in enumerate(node.below):
        last = i == len(node.below) - 1
        yield from _node(below, rest + (_LAST if last else _BRANCH), rest + (_NOTHING if last else _ON), width)


def _hung(first: str, rest: str, text: str, width: int) -> Iterator[str]:
    """A text behind lines of the tree; in a tree deeper than the page is wide the outermost lines give way."""
    most = max(width - _NARROWEST, 0)
    first, rest = (before[-most:] if most else "" for before in (first, rest))
    for i, line in enumerate(broken(text, width - max(len(first), len(rest)))):
        yield f"{rest if i else first}{line}"
