"""Tables and facts in columns of a terminal."""

from __future__ import annotations

from collections.abc import Sequence

from specbuilder.documents.blocks import Facts, Table
from specbuilder.documents.formats.wrapping import longest_word
from specbuilder.wording.plain import printable

from .cells import BLANK, broken, cells, padded

_GAP = 2
"""Columns between two columns of a table."""
_READABLE = 12
"""A column that is narrower than this must at least hold its longest word."""
_NAME_SHARE = 3
"""Names of facts take at most one part in so many of the width; longer ones are wrapped."""
_SHORTEST_BLANK, _BLANK = 6, 20
"""Columns of a blank to write in: at least, and where there is room."""


def fact_lines(facts: Facts, width: int) -> list[str]:
    """Names left, what is so beside them."""
    rows = [(printable(name).strip(), printable(value).strip()) for name, value in facts.rows]
    if not rows:
        return []
    most = max(width // _NAME_SHARE, 8)
    names = min(max(cells(name) for name, _ in rows), most)
    lines: list[str] = []
    for name, value in rows:
        values = broken(value or BLANK * (width - names - _GAP), width - names - _GAP)
        lines += _beside([broken(name, names), values], [names, width - names - _GAP], [False, False])
    return lines


def table_lines(table: Table, width: int) -> list[str]:
    """A table; record by record where its columns would be too narrow to read."""
    if not table.rows:
        return list(broken(printable(table.empty), width))
    heads = [printable(column.head).strip() for column in table.columns]
    rows = [[printable(cell).strip() for cell in row] for row in table.rows]
    widths = _widths(table, [heads, *rows], width)
    return _columns(table, heads, rows, widths) if widths else _records(table, heads, rows, width)


def _columns(table: Table, heads: list[str], rows: list[list[str]], widths: list[int]) -> list[str]:
    right = [column.right for column in table.columns]
    rule = "─" * (sum(widths) + _GAP * (len(widths) - 1))
    lines = [*_beside([broken(head, w) for head, w in zip(heads, widths, strict=True)], widths, right), rule]
    set_rows = [_row(table, row, widths, right) for row in rows]
    apart = any(len(row) > 1 for row in set_rows)
    for i, row in enumerate(set_rows):
        begins_strong = i in table.strong and i - 1 not in table.strong and i > 0
        if begins_strong:
            lines.append(rule)
        elif apart and i > 0:
            lines.append("")
        lines += row
    return lines


def _row(table: Table, row: list[str], widths: list[int], right: list[bool]) -> list[str]:
    filled = [
        cell or (BLANK * w if i in table.blank else "") for i, (cell, w) in enumerate(zip(row, widths, strict=True))
    ]
    return _beside([broken(cell, w) for cell, w in zip(filled, widths, strict=True)], widths, right)


def _records(table: Table, heads: list[str], rows: list[list[str]], width: int) -> list[str]:
    """Each row as facts below each other. What is empty and not to be filled in is left out."""
    lines: list[str] = []
    for row in rows:
        facts = [
            (head, cell) for i, (head, cell) in enumerate(zip(heads, row, strict=True)) if cell or i in table.blank
        ]
        lines += [*([""] if lines else []), *fact_lines(Facts(rows=tuple(facts)), width)]
    return lines


def _beside(texts: Sequence[Sequence[str]], widths: Sequence[int], right: Sequence[bool]) -> list[str]:
    """Wrapped texts beside each other."""
    height = max(len(lines) for lines in texts)
    return [
        (" " * _GAP).join(
            padded(lines[i] if i < len(lines) else "", w, right=r)
            for lines, w, r in zip(texts, widths, right, strict=True)
        )
        for i in range(height)
    ]


def _widths(table: Table, rows: list[list[str]], width: int) -> list[int]:
    """Width of each column; empty when they cannot all be readable.

    Each column has its longest word whole, where the width has room for all of them, else what it needs to be readable;
    what is left goes to those that want more, by their shares.
    """
    columns = range(len(table.columns))
    wanted = [max(*(cells(row[i]) for row in rows), _BLANK if i in table.blank else 1) for i in columns]
    room = width - _GAP * (len(columns) - 1)
    whole, readable = ([_least(table, rows, i, wanted[i], most) for i in columns] for most in (width, _READABLE))
    given = whole if sum(whole) <= room else readable
    left = room - sum(given)
    if left < 0:
        return []
    while left > 0 and (asking := [i for i in columns if given[i] < wanted[i]]):
        shares = sum(table.columns[i].share for i in asking)
        for i in asking:
            more = max(int(left * table.columns[i].share / shares) if shares > 0 else 0, 1)
            given[i] += min(more, wanted[i] - given[i], width - _GAP * (len(given) - 1) - sum(given))
        left = width - _GAP * (len(given) - 1) - sum(given)
    return given


def _least(table: Table, rows: list[list[str]], column: int, wanted: int, most: int) -> int:
    """The narrowest that can be read: the longest word or figure, or ``most`` columns of a longer one.

    The heads are the first row. A blank to write in has its own least.
    """
    right = table.columns[column].right
    words = max(
        cells(row[column]) if right and i else int(longest_word(row[column], cells)) for i, row in enumerate(rows)
    )
    least = max(min(words, most), 1)
    return min(max(least, _SHORTEST_BLANK), wanted) if column in table.blank else least
