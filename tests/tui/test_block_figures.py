"""Large figures: every digit is told apart, and they fit where they are drawn."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.tui.block_figures import ROWS, SIGN, drawn

PRICES = st.integers(0, 999_999)


@pytest.mark.parametrize("cells", [200, 4])
def test_no_two_signs_look_alike(cells: int) -> None:
    for one, other in combinations("0123456789,£", 2):
        shapes = drawn(one, cells), drawn(other, cells)
        assert shapes[0] != shapes[1] or not all(shapes), (one, other)


@settings(deadline=None)
@given(least=PRICES, more=PRICES, cells=st.integers(20, 150))
def test_a_price_or_a_range_is_never_wider_than_its_room(least: int, more: int, cells: int) -> None:
    for text in (f"£{least:,}", f"£{least:,} to £{least + more:,}"):
        rows = drawn(text, cells)
        assert all(len(row) <= cells for row in rows)
        assert len(rows) in (0, ROWS, 2 * ROWS + 1)
        assert set("".join(rows)) <= {SIGN, " ", "t", "o"}


def test_a_range_stands_in_one_row_where_it_fits_and_in_two_where_not() -> None:
    text = "£17,532 to £24,024"
    assert len(drawn(text, 130)) == ROWS
    assert len(drawn(text, 70)) == ROWS
    assert len(drawn(text, 55)) == ROWS
    assert len(drawn(text, 45)) == 2 * ROWS + 1
    assert drawn(text, 10) == ()


def test_a_sign_without_a_figure_is_not_drawn_half() -> None:
    assert drawn("kr 1,000", 100) == ()
