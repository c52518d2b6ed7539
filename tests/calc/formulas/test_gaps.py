"""How high the closed van is, and what is left below a bar."""

from __future__ import annotations

from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.gaps import above_steel_mm, barrier_room_mm, panel_rows_mm
from specbuilder.calc.formulas.validity import OutsideValidity


def test_a_lifting_roof_passes_the_third_bar_and_a_panel_stands_on_the_kit() -> None:
    bare, with_panel = (1970 + above_steel_mm(85, on_kit, 0) for on_kit in (0, 55))
    assert (bare, with_panel) == (2055, 2110)
    assert [barrier_room_mm(bare, bar, 50) >= 0 for bar in (2000, 2100, 2200)] == [False, False, True]


def test_twenty_millimetres_below_a_bar_are_too_little_to_spare() -> None:
    height = 1905 + above_steel_mm(75, 0, 0)
    assert barrier_room_mm(height, 2000, 0) == 20
    assert barrier_room_mm(height, 2000, 50) < 0


def test_a_fixed_thing_beside_the_kit_counts_only_when_it_is_higher() -> None:
    assert above_steel_mm(75, 55, 129) == 130
    assert above_steel_mm(75, 55, 131) == 131


@given(st.floats(1500, 3500), st.floats(1500, 3500), st.floats(0, 200))
def test_a_van_fits_when_its_height_and_the_spare_are_below_the_bar(height: float, bar: float, spare: float) -> None:
    room = barrier_room_mm(height, bar, spare)
    assert height + spare + room == pytest.approx(bar)


@pytest.mark.parametrize(
    ("height", "bar", "spare"), [(1.97, 2000, 50), (1970, 2.0, 50), (1970, 2000, -1), (nan, 2000, 50), (1970, nan, 50)]
)
def test_heights_in_the_wrong_unit_are_refused(height: float, bar: float, spare: float) -> None:
    with pytest.raises(OutsideValidity):
        barrier_room_mm(height, bar, spare)


@given(st.integers(1, 6), st.integers(300, 1500), st.integers(300, 1500), st.integers(500, 2000))
def test_rows_of_panels_are_the_shortest_of_all_ways_to_lay_them(n: int, long: int, wide: int, roof: int) -> None:
    def rows(left: int, at: int) -> float:
        """Every way to fill row after row, all panels of a row turned alike."""
        if not left:
            return 0
        found = [inf]
        for deep, across in ((long, wide), (wide, long)):
            abreast = roof // across
            found += [deep + rows(left - k, at + 1) for k in range(1, min(abreast, left) + 1)]
        return min(found)

    shortest = rows(n, 0)
    if shortest == inf:
        with pytest.raises(OutsideValidity):
            panel_rows_mm(n, long, wide, roof)
    else:
        assert panel_rows_mm(n, long, wide, roof) == shortest


@pytest.mark.parametrize("bad", [(13, 1000, 500, 1300), (1, 0, 500, 1300), (1, 1000, nan, 1300), (1, 1000, 500, 0)])
def test_no_panel_and_no_roof_have_no_rows(bad: tuple[int, float, float, float]) -> None:
    with pytest.raises(OutsideValidity):
        panel_rows_mm(*bad)
