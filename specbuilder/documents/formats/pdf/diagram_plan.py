"""Where the things of a one-line diagram stand: columns by what they are behind, rows by the branch they end.

A thing stands in the row of the first thing that hangs on it, so a diagram can be parted between any two rows.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from specbuilder.documents.blocks import Node
from specbuilder.documents.formats.wrapping import longest_word

from .fonts import plain, shown, strong
from .style import DIAGRAM_NOTE, DIAGRAM_TITLE, WIDTH

BUS = 9.0
"""From a box to the upright line that branches off behind it."""
PADDING = 4.5
"""Inside a box, at its sides."""
_BOX_LEAST, _BOX_MOST = 56.0, 132.0
_WIRE_LEAST, _WIRE_MOST = 40.0, 104.0
"""Between an upright line and the next box, where cable and fuse are written."""
_WIRE_LINES = 2
WIRE_WHITE = 8.0
"""Beside what is written at a line."""
_TEXT_MOST = 110
"""Longer texts are cut in the diagram and stand in full below it."""


@dataclass(frozen=True, slots=True)
class Stop:
    """A thing where it stands in its row."""

    node: Node
    level: int
    first: bool
    """The first of those that hang on the same thing; it stands in the row of that."""
    last: bool
    behind: tuple[str, ...]
    """What it hangs on, from the source."""


@dataclass(frozen=True, slots=True)
class DiagramRow:
    """What stands in one row: things behind each other, and the upright lines that pass."""

    stops: tuple[Stop, ...]
    passing: frozenset[int]
    """Levels whose upright line runs through the row, for branches further down."""


@dataclass(frozen=True, slots=True)
class Columns:
    """Where the boxes of each level begin, and how wide they are."""

    lefts: tuple[float, ...]
    widths: tuple[float, ...]

    def wire_room(self, level: int) -> float:
        """Room for what is written at the line that leads to a box."""
        if level == 0:
            return self.lefts[0]
        return self.lefts[level] - self.lefts[level - 1] - self.widths[level - 1] - BUS


@dataclass(slots=True)
class Notes:
    """Texts too long for a diagram, to stand below it."""

    texts: list[str] = field(default_factory=list)

    def short(self, text: str) -> str:
        """The text, or its beginning with the number under which it stands in full."""
        told = shown(text)
        if len(told) <= _TEXT_MOST:
            return told
        self.texts.append(told)
        return f"{told[: _TEXT_MOST // 2].rstrip()}… (note {len(self.texts)})"


def shortened(node: Node, notes: Notes) -> Node:
    """The tree with short texts only."""
    return Node(
        title=notes.short(node.title),
        note=notes.short(node.note),
        wire=notes.short(node.wire),
        below=tuple(shortened(below, notes) for below in node.below),
    )


def parted(roots: Sequence[Node]) -> tuple[Node, ...]:
    """The trees in trees that the page is wide enough for. Where one goes on in another, both say so with a number."""
    first = BUS if any(root.wire for root in roots) else _WIRE_LEAST + BUS
    deepest = int((WIDTH + first) // (_BOX_LEAST + _WIRE_LEAST + BUS))
    parts: list[Node] = []
    waiting = list(roots)
    while waiting:
        parts.append(_upper(waiting.pop(0), deepest, waiting, len(parts) - len(roots) + 1))
    return tuple(parts)


def _upper(node: Node, depth: int, waiting: list[Node], done: int) -> Node:
    """The tree down to that depth; what goes on from there is put to those that wait."""
    if node.below and depth == 1:
        mark = f"({done + len(waiting) + 1})"
        waiting.append(replace(node, title=f"{mark} {node.title}", wire=""))
        return replace(node, note="; ".join(text for text in (node.note, f"goes on at {mark}") if text), below=())
    return replace(node, below=tuple(_upper(below, depth - 1, waiting, done) for below in node.below))


def rows(root: Node) -> tuple[DiagramRow, ...]:
    """The rows of a tree, from above."""
    return tuple(_rows(Stop(root, 0, first=True, last=True, behind=()), (), frozenset()))


def _rows(stop: Stop, before: tuple[Stop, ...], passing: frozenset[int]) -> Iterator[DiagramRow]:
    """Rows of a thing and of all that hangs on it.

    Args:
        stop: the thing.
        before: what stands before it in its first row.
        passing: levels whose branches go on further down.
    """
    inner = passing if stop.last else passing | {stop.level}
    below = stop.node.below
    if not below:
        yield DiagramRow((*before, stop), inner)
    behind = (*stop.behind, stop.node.title)
    for i, node in enumerate(below):
        on = Stop(node, stop.level + 1, first=i == 0, last=i == len(below) - 1, behind=behind)
        yield from _rows(on, (*before, stop) if on.first else (), inner)


def columns(root: Node) -> Columns:
    """Boxes and lines of a tree as wide as their texts ask, as far as the page allows."""
    boxes: dict[int, float] = {}
    wires: dict[int, float] = {}
    for node, level in _all(root, 0):
        boxes[level] = max(boxes.get(level, _BOX_LEAST), min(_box_width(node), _BOX_MOST))
        wires[level] = max(wires.get(level, _WIRE_LEAST if level else 0.0), min(_wire_width(node), _WIRE_MOST))
    levels = range(len(boxes))
    # The lines first: what is written at them has no box to be looked for in.
    room = WIDTH - BUS * (len(levels) - 1) - _BOX_LEAST * len(levels)
    wide = _stretched([0.0 if not wires[0] and not level else _WIRE_LEAST for level in levels], wires, room)
    widths = _stretched([_BOX_LEAST for _ in levels], boxes, WIDTH - BUS * (len(levels) - 1) - sum(wide))
    lefts = [sum(wide[: i + 1]) + sum(widths[:i]) + BUS * i for i in levels]
    return Columns(tuple(lefts), tuple(widths))


def _stretched(least: Sequence[float], wanted: Mapping[int, float], room: float) -> list[float]:
    """Each as wide as wanted, or as near to it as the room allows."""
    more = [max(wanted[i] - width, 0.0) for i, width in enumerate(least)]
    spare = max(room - sum(least), 0.0)
    part = min(spare / sum(more), 1.0) if sum(more) > 0 else 0.0
    return [width + more[i] * part for i, width in enumerate(least)]


def _all(node: Node, level: int) -> Iterator[tuple[Node, int]]:
    yield node, level
    for below in node.below:
        yield from _all(below, level + 1)


def _box_width(node: Node) -> float:
    title = strong().width(shown(node.title)) * DIAGRAM_TITLE[0]
    return max(title, plain().width(shown(node.note)) * DIAGRAM_NOTE[0]) + 2 * PADDING + 1.0


def _wire_width(node: Node) -> float:
    """So wide that what is written at a line stands in one line above it and one below, its words whole."""
    size = DIAGRAM_NOTE[0]
    width = plain().width(shown(node.wire)) * size
    room = max(width / 2, longest_word(shown(node.wire), plain().width) * size, 1.0)
    while room < width and len(plain().lines(node.wire, size, room)) > _WIRE_LINES:
        room += size / 2
    return min(room, width) + WIRE_WHITE if width else 0.0
