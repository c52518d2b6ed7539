"""The table of two variants: whose columns they are, its lines, and how they stand in so many cells."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specbuilder.model.comparison import AnswerChange, Change
from specbuilder.model.stand import Stand
from specbuilder.office.variants import Beside
from specbuilder.storage.job_files import JobFiles
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnText
from specbuilder.tui.keys import Act
from specbuilder.tui.line import EMPTY, Bit, Line, cut, left, line, wrapped
from specbuilder.tui.marks import Marks
from specbuilder.wording import variants as words
from specbuilder.wording.compare import answer_side
from specbuilder.wording.names import key_name
from specbuilder.wording.side_by_side import SideCell, SideRow

MARGIN = "   "
BETWEEN = 4
"""Cells between the columns, for the arrow."""
CELL_ROWS = 3
"""So many rows a cell may take before it is cut."""


@dataclass(frozen=True, slots=True)
class Side:
    """One of the two: the open job (``files`` is None), or another one."""

    stand: Stand
    name: str
    files: JobFiles | None = None
    under_trial: bool = False
    """The job itself, while a what-if lies over it."""


@dataclass(frozen=True, slots=True, eq=False)
class Laid:
    """The table, and whose columns they are."""

    beside: Beside
    a: Side
    b: Side


@dataclass(frozen=True, slots=True)
class Row:
    """A line of the table, and what can be taken across by it."""

    label: str
    a: SideCell
    b: SideCell
    change: Change | AnswerChange | None


def columns_line(found: Laid, cells: int) -> Line:
    """Whose columns they are."""
    label, room = _widths(cells)
    names = words.column("A", found.a.name), words.column("B", found.b.name)
    start = Bit(left(f" {words.TITLE}", len(MARGIN) + label), Ink.HEAD)
    first = Bit(left(names[0], room + BETWEEN), Ink.HEAD, Act.BEFORE)
    return line(start, first, Bit(cut(names[1], room), Ink.HEAD, Act.AFTER))


def table_lines(found: Laid, cells: int, high: int, marks: Marks, into: str, at: Item | None) -> list[Line]:
    """All of it, with empty lines between all rows where the window has room for them, else behind the sums only.

    Args:
        found: the two.
        cells: columns of the window.
        high: lines of the page that can be seen at once.
        marks: the alphabet of the screens.
        into: ``A`` or ``B``, where the line under the cursor goes; empty: nowhere yet.
        at: the line under the cursor.
    """
    rows = [list(_row(number, row, cells, marks, into, at)) for number, row in enumerate(rows_of(found))]
    below = [line(MARGIN, text) for text in wrapped(found.beside.table.same, cells - 6)]
    if not rows:
        told = [line(MARGIN, part) for part in wrapped(words.nothing_differs(), cells - 6)]
        below = [*told, EMPTY, *below]
    spare = high - sum(map(len, rows)) - len(below) - 2
    sums = _first_change(found.beside.table.rows)
    apart = range(len(rows)) if spare >= len(rows) else (sums - 1,)
    result = [EMPTY] if spare >= 0 else []
    for number, row in enumerate(rows):
        result += [*row, EMPTY] if number in apart else row
    return [*result, EMPTY, *below] if result[-1:] != [EMPTY] else [*result, *below]


def _row(number: int, row: Row, cells: int, marks: Marks, into: str, at: Item | None) -> Iterator[Line]:
    """A line of the table, on as many rows as its longest cell takes."""
    label, room = _widths(cells)
    parts = [wrapped(row.label, label - 1, CELL_ROWS)]
    parts += [wrapped(_cell(cell, marks), room - 1, CELL_ROWS) for cell in (row.a, row.b)]
    arrow = words.INTO_A if into == "A" else words.INTO_B
    here = bool(into) and at == OnText(number)
    for deep in range(max(map(len, parts))):
        texts = [part[deep] if deep < len(part) else "" for part in parts]
        yield line(
            MARGIN,
            left(texts[0], label),
            Bit(left(texts[1], room), Ink.HEAD),
            left(f" {arrow} " if here and deep == 0 else "", BETWEEN),
            Bit(texts[2], Ink.HEAD),
            item=OnText(number) if deep == 0 else None,
        )


def _cell(cell: SideCell, marks: Marks) -> str:
    return f"{marks.of_verdict(cell.verdict)} {cell.text}" if cell.verdict is not None else cell.text


def _widths(cells: int) -> tuple[int, int]:
    """Columns of the label, and of each side."""
    label = max((cells - len(MARGIN)) * 3 // 8, 16)
    return label, max((cells - len(MARGIN) - label - BETWEEN) // 2, 8)


def rows_of(found: Laid) -> tuple[Row, ...]:
    """The table with the lines of the brief that differ before what follows from the choices."""
    table = found.beside.table.rows
    first = _first_change(table)
    answers = (_answer(found, change) for change in found.beside.comparison.answers)
    return (*map(_plain, table[:first]), *answers, *map(_plain, table[first:]))


def _first_change(table: Sequence[SideRow]) -> int:
    return next((number for number, row in enumerate(table) if row.change is not None), len(table))


def _plain(row: SideRow) -> Row:
    return Row(row.label, row.a, row.b, row.change)


def _answer(found: Laid, change: AnswerChange) -> Row:
    a, b = found.a.stand.catalogue, found.b.stand.catalogue
    cells = answer_side(a, change, after=False), answer_side(b, change, after=True)
    return Row(words.answers_head(key_name(b, change.key)), SideCell(text=cells[0]), SideCell(text=cells[1]), change)


def comes_before(one: Side, other: Side) -> bool:
    """The job before what is tried over it, the main job before its variants, the earlier revision before the later."""
    if one.under_trial or other.under_trial:
        return one.under_trial
    return (one.stand.spec.number, one.stand.spec.revision) < (other.stand.spec.number, other.stand.spec.revision)
