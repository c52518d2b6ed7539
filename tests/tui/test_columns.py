"""Columns of the walk: what figures and notes do not need belongs to the name."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.ids import OptionId
from specbuilder.tui.columns import Row, drawn
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnOption
from specbuilder.tui.line import width
from specbuilder.wording.rows import RowWords

NAME = "Larchlid tilting roof, long, with a wide bed"
"""44 cells."""


def _row(name: str, money: str, mass: str, note: str) -> Row:
    words = RowWords(state="chosen", name=name, money=money, mass=mass, note=note)
    return Row(mark="#", ink=Ink.MINE, words=words, item=OnOption(OptionId(name)))


def _texts(cells: int, *rows: Row) -> list[str]:
    return [line.text for line in drawn(cells, lambda _: rows).values()]


def test_a_name_takes_what_short_figures_and_notes_leave() -> None:
    (text,) = _texts(79, _row(NAME, "£78", "4 kg", "5 folded"))
    assert text == f" # chosen   {NAME} £78  4 kg  5 folded"


def test_figures_of_all_rows_stand_in_line_under_the_longest() -> None:
    rows = _texts(79, _row(NAME, "£78", "4 kg", "5 folded"), _row("Table", "+1,380", "1,980 kg", "usual"))
    assert [row.index(" kg") for row in rows] == [65, 65]
    assert NAME[:30] in rows[0]
    assert rows[1].endswith("  +1,380  1,980 kg  usual")


@pytest.mark.parametrize("cells", [59, 78, 87, 139])
def test_no_row_is_wider_than_its_page(cells: int) -> None:
    rows = _texts(cells, _row(NAME * 2, "+1,380", "1,980 kg", "brings Heavy-current cables"), _row("Table", "", "", ""))
    assert max(map(width, rows)) <= cells


def test_a_note_gets_what_names_leave() -> None:
    asked = list[int]()

    def rows(note_cells: int) -> list[Row]:
        asked.append(note_cells)
        return [_row("Table", "£78", "4 kg", "brings Heavy-current cables"[:note_cells])]

    (line,) = drawn(139, rows).values()
    assert line.text.endswith("brings Heavy-current cables")
    assert asked[1] > asked[0]


@pytest.mark.parametrize("cells", [72, 78, 139])
def test_the_signs_for_more_and_less_never_touch_the_note(cells: int) -> None:
    row = replace(_row("Light solar panel, 120 W", "+£468", "+4 kg", "asks for charging"), more=True)
    (text,) = _texts(cells, row)
    assert text.endswith(" + -")
    assert width(text) <= cells
