"""What belts pull, and who needs a child seat."""

from __future__ import annotations

from math import nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.seats import belt_test_pull_kn, child_seat_needed
from specbuilder.calc.formulas.validity import OutsideValidity


def test_pull_of_a_bench_that_carries_its_own_belts() -> None:
    assert belt_test_pull_kn(2, 0, 70) == pytest.approx(67.7, abs=0.05)


def test_belts_on_the_body_leave_the_seat_out() -> None:
    assert belt_test_pull_kn(2, 0, 0) == 54


@given(st.integers(0, 4), st.integers(0, 4), st.floats(0, 150))
def test_every_place_and_every_kilogram_of_seat_pulls_more(three_point: int, lap_only: int, seat_kg: float) -> None:
    if three_point + lap_only == 0:
        with pytest.raises(OutsideValidity, match="places"):
            belt_test_pull_kn(three_point, lap_only, seat_kg)
        return
    pull = belt_test_pull_kn(three_point, lap_only, seat_kg)
    assert belt_test_pull_kn(three_point + 1, lap_only, seat_kg) - pull == pytest.approx(27)
    assert belt_test_pull_kn(three_point, lap_only + 1, seat_kg) - pull == pytest.approx(22.25)
    assert belt_test_pull_kn(three_point, lap_only, seat_kg + 1) - pull == pytest.approx(0.1962)


@pytest.mark.parametrize(("three_point", "lap_only", "seat_kg"), [(10, 0, 70), (-1, 2, 70), (2, 0, -1), (2, 0, nan)])
def test_benches_that_cannot_be_are_refused(three_point: int, lap_only: int, seat_kg: float) -> None:
    with pytest.raises(OutsideValidity):
        belt_test_pull_kn(three_point, lap_only, seat_kg)


@pytest.mark.parametrize(
    ("age", "height", "needed"),
    [(3, 95, True), (11.9, 134.9, True), (11.9, 135, False), (12, 134.9, False), (40, 130, False)],
)
def test_age_or_height_ends_the_child_seat_whichever_comes_first(age: float, height: float, needed: bool) -> None:
    assert child_seat_needed(age, height) is needed


@pytest.mark.parametrize(("age", "height"), [(-1, 100), (130, 100), (8, 0), (8, 1.3e3), (nan, 100), (8, nan)])
def test_nobodys_age_or_height_is_refused(age: float, height: float) -> None:
    with pytest.raises(OutsideValidity):
        child_seat_needed(age, height)
