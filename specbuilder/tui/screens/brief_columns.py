"""Where the cells of a line of the brief stand: mark, number, question, its own name, answer."""

from __future__ import annotations

from specbuilder.tui.line import cut, leaning, left, right, width

NUMBER_CELLS = 5
HEADING_CELLS = 20
HEADED_FROM = 70
"""Below this width a line has its own name only; the whole question stands below the list."""
LEAST_ANSWER, LONGEST_NAME = 24, 33
"""Cells an answer keeps however long the names are, and what a name takes at most."""


def heading_cells(cells: int) -> int:
    """Columns of the question."""
    return HEADING_CELLS if cells >= HEADED_FROM else 0


def line_start(mark: str, head: tuple[str, str], name: str, cells: int, answer: int = 0) -> tuple[str, int]:
    """Mark, number, heading and short name; and how many cells are left for the answer, which needs so many."""
    heading = heading_cells(cells)
    rest = cells - NUMBER_CELLS - heading
    names = leaning(min(LONGEST_NAME, max(rest - LEAST_ANSWER, 12)), width(name) + 1, answer + 1, rest)
    asks = left(cut(head[1], heading - 1), heading) if heading else ""
    start = f" {mark}{right(head[0], 2)} {asks}{left(cut(name, names - 1), names)} "
    return start, max(cells - len(start), 4)
