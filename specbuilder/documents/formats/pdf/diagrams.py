"""One-line diagrams: boxes and lines from left to right, each branch with its cable and fuse."""

from __future__ import annotations

from dataclasses import dataclass, replace

from specbuilder.documents.blocks import Diagram, Node

from .diagram_plan import BUS, PADDING, WIRE_WHITE, Columns, DiagramRow, Notes, Stop, columns, parted, rows, shortened
from .fonts import plain, strong
from .pen import Pen
from .rows import baseline, lines_of
from .strips import Draw, Strip, below, kept
from .style import DIAGRAM_NOTE, DIAGRAM_TITLE, FIRM, GAP, LEFT, SMALL, SOFT, THIN, WIDTH

_BOX_PADDING = 3.0
_ROW_GAP = 7.0
_TREE_GAP = 8.0
_WHOLE = 16
"""A tree of up to so many rows stands on one page."""
_SEAM = 0.4
"""Upright lines of two rows overlap by this, so that no printer shows where they meet."""


@dataclass(frozen=True, slots=True)
class _Box:
    """The texts of a thing, in lines."""

    title: tuple[str, ...]
    note: tuple[str, ...]
    wire: tuple[str, ...]

    @property
    def height(self) -> float:
        """Of the box."""
        return len(self.title) * DIAGRAM_TITLE[1] + len(self.note) * DIAGRAM_NOTE[1] + 2 * _BOX_PADDING

    @property
    def half(self) -> float:
        """What box and writing at the line need above and below the middle of the row."""
        return max(self.height / 2, self.above * DIAGRAM_NOTE[1] + 2.0)

    @property
    def above(self) -> int:
        """Lines written above the line that leads to it; the others stand below it."""
        return (len(self.wire) + 1) // 2


def diagram(block: Diagram) -> list[Strip]:
    """The strips of a diagram: its trees, what it shows, and what was too long to stand in it."""
    notes = Notes()
    roots = parted([shortened(root, notes) for root in block.roots])
    strips: list[Strip] = []
    for root in roots:
        strips += below(_tree(root, columns(root)), _TREE_GAP)
    size, leading = SMALL
    texts = [block.alt, *(f"Note {i}: {text}" for i, text in enumerate(notes.texts, start=1))]
    strips = [*strips[:-1], *(replace(strip, bound=True) for strip in strips[-1:])]
    for text in texts:
        strips += below(kept(lines_of(plain().lines(text, size, WIDTH), LEFT, plain(), size, leading, SOFT)), GAP * 0.6)
    return strips


def _tree(root: Node, place: Columns) -> list[Strip]:
    found = rows(root)
    strips = [_row(row, place) for row in found]
    if len(found) <= _WHOLE:
        return [replace(strip, bound=i < len(strips) - 1) for i, strip in enumerate(strips)]
    return kept(strips)


def _row(row: DiagramRow, place: Columns) -> Strip:
    boxes = [(stop, _box(stop, place)) for stop in row.stops]
    height = 2 * max(box.half for _, box in boxes) + _ROW_GAP
    return Strip(height=height, draw=_drawn(row, boxes, place, height), heads=_on_from(row.stops[0].behind))


def _on_from(behind: tuple[str, ...]) -> tuple[Strip, ...]:
    """Where a page goes on with a diagram: what its first row hangs on."""
    if not behind:
        return ()
    size, leading = DIAGRAM_NOTE
    text = f"on from: {', '.join(behind)}"
    return tuple(lines_of(plain().lines(text, size, WIDTH), LEFT, plain(), size, leading, SOFT))


def _box(stop: Stop, place: Columns) -> _Box:
    room = place.widths[stop.level] - 2 * PADDING
    note = plain().lines(stop.node.note, DIAGRAM_NOTE[0], room) if stop.node.note else ()
    wire = (
        plain().lines(stop.node.wire, DIAGRAM_NOTE[0], place.wire_room(stop.level) - WIRE_WHITE + 1.0)
        if stop.node.wire
        else ()
    )
    return _Box(strong().lines(stop.node.title, DIAGRAM_TITLE[0], room), note, wire)


def _drawn(row: DiagramRow, boxes: list[tuple[Stop, _Box]], place: Columns, height: float) -> Draw:
    def draw(pen: Pen, top: float) -> None:
        middle = top - height / 2
        for level in row.passing:
            if level not in {stop.level for stop in row.stops}:
                x = _upright(level, place)
                pen.line(x, top + _SEAM, x, top - height, THIN)
        for stop, box in boxes:
            _draw_way(pen, stop, place, top, height)
            _draw_wire(pen, stop, box, place, middle)
            _draw_box(pen, stop, box, place, middle)

    return draw


def _draw_way(pen: Pen, stop: Stop, place: Columns, top: float, height: float) -> None:
    """The line that leads to a box, and the upright line it branches off from."""
    middle = top - height / 2
    left = LEFT + place.lefts[stop.level]
    if stop.level == 0:
        if stop.node.wire:
            pen.line(LEFT, middle, left, middle, THIN)
        return
    x = _upright(stop.level, place)
    begins = LEFT + place.lefts[stop.level - 1] + place.widths[stop.level - 1] if stop.first else x
    pen.line(begins, middle, left, middle, THIN)
    head = middle if stop.first else top + _SEAM
    foot = middle if stop.last else top - height
    if head > foot:
        pen.line(x, head, x, foot, THIN)


def _draw_wire(pen: Pen, stop: Stop, box: _Box, place: Columns, middle: float) -> None:
    size, leading = DIAGRAM_NOTE
    x = (_upright(stop.level, place) if stop.level else LEFT) + 3.0
    for i, line in enumerate(box.wire):
        y = middle + (box.above - i) * leading + (1.0 if i < box.above else -1.0)
        pen.text(x, baseline(y, size, leading), line, plain(), size)


def _draw_box(pen: Pen, stop: Stop, box: _Box, place: Columns, middle: float) -> None:
    left, width = LEFT + place.lefts[stop.level], place.widths[stop.level]
    top = middle + box.height / 2
    pen.box(left, top - box.height, width, box.height, FIRM * 1.3 if stop.level == 0 else THIN)
    y = top - _BOX_PADDING
    for lines, face, (size, leading) in ((box.title, strong(), DIAGRAM_TITLE), (box.note, plain(), DIAGRAM_NOTE)):
        for line in lines:
            pen.text(left + PADDING, baseline(y, size, leading), line, face, size)
            y -= leading


def _upright(level: int, place: Columns) -> float:
    """Where the upright line stands that leads to boxes of this level."""
    return LEFT + place.lefts[level - 1] + place.widths[level - 1] + BUS
