"""Tables: heads on every page, figures to the right, words whole where the page is wide enough for them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from specbuilder.documents.blocks import Column, Facts, Table
from specbuilder.documents.formats.wrapping import longest_word

from .fonts import plain, shown, strong
from .pen import Pen
from .rows import Cell, Setting, lines_of, row
from .strips import Strip, kept, together
from .style import BODY, COLUMN_GAP, FIRM, GAP, HAIR, INK, LEFT, RULE, SOFT, TABLE_SIZES, THIN, WIDTH, WRITING_HEIGHT

_PADDING = 3.2
_FACT_PADDING = 1.7
_NAMES_MOST = 0.34
"""Names of facts take at most this part of the width."""
_NARROWEST = 26.0
"""No column is narrower, in points; a table that needs more columns is set record by record."""
_MANY = 8
"""Where there are more columns, they stand closer."""
_FIGURE = 12
"""A figure of up to so many characters is never broken."""
_COLUMN_MOST = 0.3
"""Part of the width that a column may take so that its words stay whole."""
_HEAD_MOST = 160.0
"""Heads that are higher than this are not set again on the next page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Columns:
    """Where the columns of a table stand, and how large its letters are."""

    lefts: tuple[float, ...]
    widths: tuple[float, ...]
    setting: Setting


def table(block: Table) -> list[Strip]:
    """The strips of a table."""
    if not block.rows or not block.columns:
        size, leading = BODY
        return kept(lines_of(plain().lines(block.empty, size, WIDTH), LEFT, plain(), size, leading))
    if (_NARROWEST + COLUMN_GAP * 0.6) * len(block.columns) > WIDTH:
        return _records(block)
    columns = _columns(block)
    heads = _row(block, [column.head for column in block.columns], columns, head=True)
    repeated = tuple(together(heads)) if sum(strip.height for strip in heads) <= _HEAD_MOST else ()
    rows = [
        _row(block, texts, columns, strong_row=i in block.strong, over=_over(block, i))
        for i, texts in enumerate(block.rows)
    ]
    return [
        *(replace(strip, bound=True) for strip in heads),
        *(replace(strip, heads=repeated) for strip in _kept(rows)),
    ]


def facts(block: Facts) -> list[Strip]:
    """Names left, what is so beside them; an empty value is a line to write on."""
    size, leading = BODY
    names = [shown(name) for name, _ in block.rows]
    width = min(max((plain().width(name) * size for name in names), default=0.0), WIDTH * _NAMES_MOST)
    x = LEFT + width + COLUMN_GAP * 1.5
    room = LEFT + WIDTH - x
    setting = Setting(size=size, leading=leading, head=_FACT_PADDING, foot=_FACT_PADDING)
    strips: list[Strip] = []
    for name, value in block.rows:
        told = plain().lines(value, size, room)
        cells = [
            Cell(x=LEFT, width=width, lines=plain().lines(name, size, width), face=plain(), shade=SOFT),
            Cell(x=x, width=room, lines=told, face=plain(), blank=told == ("",)),
        ]
        strips += row(cells, setting)
    return kept(strips)


def _kept(rows: Sequence[Sequence[Strip]]) -> list[Strip]:
    """The first two rows stand together and so do the last two, unless they are as high as several."""
    return kept(strip for strips in rows for strip in strips)


def _over(block: Table, index: int) -> float:
    """The rule above the first of several strong rows."""
    return THIN if index in block.strong and index - 1 not in block.strong else 0.0


def _row(
    block: Table,
    texts: Iterable[str],
    columns: _Columns,
    *,
    head: bool = False,
    strong_row: bool = False,
    over: float = 0.0,
) -> list[Strip]:
    face = strong() if head or strong_row else plain()
    cells: list[Cell] = []
    for i, (text, x, width) in enumerate(zip(texts, columns.lefts, columns.widths, strict=True)):
        lines = face.lines(text, columns.setting.size, width)
        blank = i in block.blank and lines == ("",) and not head
        cells.append(Cell(x=x, width=width, lines=lines, face=face, right=block.columns[i].right, blank=blank))
    if head:
        # Heads of one line stand on the rule like those of two.
        return row(_bottom_aligned(cells), replace(columns.setting, under=FIRM, under_shade=INK))
    return row(cells, replace(columns.setting, under=HAIR, over=over))


def _bottom_aligned(cells: Sequence[Cell]) -> list[Cell]:
    most = max(len(cell.lines) for cell in cells)
    return [replace(cell, lines=("",) * (most - len(cell.lines)) + cell.lines) for cell in cells]


def _records(block: Table) -> list[Strip]:
    """Each row as facts below each other. What is empty and not to be filled in is left out."""
    strips: list[Strip] = []
    for texts in block.rows:
        told = [
            (column.head, text)
            for i, (column, text) in enumerate(zip(block.columns, texts, strict=True))
            if shown(text) or i in block.blank
        ]
        record = facts(Facts(rows=tuple(told)))
        if strips and record:
            record[0] = replace(record[0], gap=GAP * 2, above=_between)
        strips += record
    return strips


def _between(pen: Pen, top: float) -> None:
    """The rule between two records."""
    pen.line(LEFT, top + GAP, LEFT + WIDTH, top + GAP, HAIR, RULE)


def _columns(block: Table) -> _Columns:
    """The largest letters with which no word need be broken; the smallest, where there are none."""
    gaps = _gaps(block.columns)
    room = WIDTH - sum(gaps)
    for size, leading in TABLE_SIZES:
        setting = Setting(size=size, leading=leading, head=_PADDING, foot=_PADDING)
        least = [_least(block, i, size, room) for i in range(len(gaps))]
        if sum(least) <= room:
            break
    widths = _widths([column.share for column in block.columns], least, room)
    lefts = [LEFT + sum(widths[:i]) + sum(gaps[:i]) for i in range(len(gaps))]
    return _Columns(lefts=tuple(lefts), widths=tuple(widths), setting=setting)


def _gaps(columns: Sequence[Column]) -> list[float]:
    """White behind each column: more where a figure and a word would stand close, none behind the last."""
    gap = COLUMN_GAP if len(columns) <= _MANY else COLUMN_GAP * 0.6
    return [*(gap * (2 if a.right and not b.right else 1) for a, b in pairwise(columns)), 0.0]


def _least(block: Table, column: int, size: float, room: float) -> float:
    """So wide that no word and no figure is broken, as far as they are of a reasonable length."""
    head, right = block.columns[column].head, block.columns[column].right
    width = longest_word(shown(head), strong().width)
    for i, texts in enumerate(block.rows):
        face = strong() if i in block.strong else plain()
        text = shown(texts[column])
        whole = right and len(text) <= _FIGURE
        width = max(width, face.width(text) if whole else longest_word(text, face.width))
    least = max(width * size, WRITING_HEIGHT * 2 if column in block.blank else _NARROWEST)
    return min(least, max(room / len(block.columns), room * _COLUMN_MOST))


def _widths(shares: Sequence[float], least: Sequence[float], room: float) -> list[float]:
    """The room by shares; a column that needs more than its share takes it from the others."""
    widths = list(least)
    free = set(range(len(least)))
    while free:
        left = room - sum(widths[i] for i in range(len(widths)) if i not in free)
        total = sum(shares[i] for i in free)
        fair = {i: left * (shares[i] / total if total > 0 else 1 / len(free)) for i in free}
        short = {i for i in free if fair[i] < least[i]}
        if not short:
            for i in free:
                widths[i] = fair[i]
            break
        free -= short
    over = sum(widths) - room
    return [width * room / sum(widths) for width in widths] if over > 0 else widths
