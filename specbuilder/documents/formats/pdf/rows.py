"""Texts beside each other: the rows of tables, of facts and of lists, and lines of text as rows of one cell."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from .fonts import CAPITAL, Face
from .pen import Pen
from .strips import Draw, Strip, together
from .style import INK, RULE, THIN, WRITING_HEIGHT, Shade

WHOLE = 16
"""What has up to so many lines beside each other is never parted by the end of a page."""
_PIECE = 3
"""Lines of each piece of what is longer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """Lines of text in one place of a row."""

    x: float
    width: float
    lines: tuple[str, ...]
    face: Face
    shade: Shade = INK
    right: bool = False
    blank: bool = False
    """A line to write on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """How the cells of a row are set."""

    size: float
    leading: float
    head: float = 0.0
    """White above the texts."""
    foot: float = 0.0
    """White below."""
    over: float = 0.0
    """Thickness of the rule above; 0: none."""
    under: float = 0.0
    """Thickness of the rule below."""
    under_shade: Shade = RULE


def row(cells: Sequence[Cell], setting: Setting) -> list[Strip]:
    """The strips of a row: one, or several where it is so long that the end of a page may part it."""
    height = max((len(cell.lines) for cell in cells), default=0)
    if height <= WHOLE:
        return [_strip(cells, setting)]
    starts = range(0, height, _PIECE)
    return [
        _strip(
            [
                replace(cell, lines=cell.lines[start : start + _PIECE], blank=cell.blank and start == starts[-1])
                for cell in cells
            ],
            replace(
                setting,
                over=setting.over * (start == 0),
                head=setting.head * (start == 0),
                under=setting.under * (start == starts[-1]),
                foot=setting.foot * (start == starts[-1]),
            ),
        )
        for start in starts
    ]


def lines_of(text: Sequence[str], x: float, face: Face, size: float, leading: float, shade: Shade = INK) -> list[Strip]:
    """Lines of running text, a strip each."""
    setting = Setting(size=size, leading=leading)
    return [_strip([Cell(x=x, width=0.0, lines=(line,), face=face, shade=shade)], setting) for line in text]


def baseline(top: float, size: float, leading: float) -> float:
    """Where the letters of a line stand, so that capitals are in the middle of it."""
    return top - (leading + CAPITAL * size) / 2


def framed(strips: Sequence[Strip], x: float, width: float, line: float, padding: float) -> list[Strip]:
    """The strips in a box, bound together. A box that goes on behind the end of a page stays open there."""
    last = len(strips) - 1
    return together(
        replace(
            strip,
            height=strip.height + padding * ((i == 0) + (i == last)),
            draw=_in_frame(strip, x, width, line, padding, first=i == 0, last=i == last),
        )
        for i, strip in enumerate(strips)
    )


def _in_frame(strip: Strip, x: float, width: float, line: float, padding: float, *, first: bool, last: bool) -> Draw:
    def draw(pen: Pen, top: float) -> None:
        foot = top - strip.height - padding * (first + last)
        # The uprights reach half a line further, so that the corners are sharp.
        head_end, foot_end = top + first * line / 2, foot - last * line / 2
        pen.line(x, head_end, x, foot_end, line)
        pen.line(x + width, head_end, x + width, foot_end, line)
        if first:
            pen.line(x, top, x + width, top, line)
        if last:
            pen.line(x, foot, x + width, foot, line)
        strip.draw(pen, top - padding * first)

    return draw


def _strip(cells: Sequence[Cell], setting: Setting) -> Strip:
    lines = max((len(cell.lines) for cell in cells), default=0)
    needed = lines * setting.leading + setting.head + setting.foot
    height = max(needed, WRITING_HEIGHT) if any(cell.blank for cell in cells) else needed

    def draw(pen: Pen, top: float) -> None:
        _rules(pen, cells, setting, top, top - height)
        for cell in cells:
            # Room to write is above the text, which stands on the line like what is written.
            for line, y in _stood(cell, setting, top - height + needed):
                if cell.right:
                    pen.right(cell.x + cell.width, y, line, cell.face, setting.size, cell.shade)
                else:
                    pen.text(cell.x, y, line, cell.face, setting.size, cell.shade)

    return Strip(height=height, draw=draw)


def _stood(cell: Cell, setting: Setting, top: float) -> Iterator[tuple[str, float]]:
    """The lines and where each stands."""
    first = baseline(top - setting.head, setting.size, setting.leading)
    for i, line in enumerate(cell.lines):
        yield line, first - i * setting.leading


def _rules(pen: Pen, cells: Sequence[Cell], setting: Setting, top: float, foot: float) -> None:
    if cells and (setting.over or setting.under):
        left = min(cell.x for cell in cells)
        right = max(cell.x + cell.width for cell in cells)
        if setting.over:
            pen.line(left, top, right, top, setting.over)
        if setting.under:
            pen.line(left, foot, right, foot, setting.under, setting.under_shade)
    for cell in cells:
        if cell.blank:
            pen.line(cell.x, foot, cell.x + cell.width, foot, THIN)
