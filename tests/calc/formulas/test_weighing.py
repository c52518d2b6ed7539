"""The weighbridge beside what was worked out."""

from __future__ import annotations

from math import nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.calc.formulas.weighing import (
    errors_together_kg,
    fixed_penalty_gbp,
    other_axle_kg,
    overload_pct,
    prediction_error_pct,
    tolerance_band_kg,
)


def test_the_second_axle_and_the_error_of_a_ticket() -> None:
    assert other_axle_kg(2985, 1480) == 1505
    assert prediction_error_pct(2985, 2960) == pytest.approx(0.845, abs=5e-4)


@pytest.mark.parametrize(
    ("weighed", "over", "pounds"), [(3640, 4.00, 0), (3720, 6.29, 100), (3900, 11.4, 200), (4040, 15.4, 300)]
)
def test_roadside_practice_by_how_far_a_van_is_over(weighed: float, over: float, pounds: int) -> None:
    found = overload_pct(weighed, 3500)
    assert found == pytest.approx(over, abs=0.05)
    assert found > 0, "over its limit, whatever is let pass"
    assert fixed_penalty_gbp(found) == pounds


@pytest.mark.parametrize(
    ("over", "pounds"), [(0, 0), (5, 0), (5.01, 100), (9.99, 100), (10, 200), (14.99, 200), (15, 300), (29.99, 300)]
)
def test_each_step_of_the_penalties_begins_where_it_says(over: float, pounds: int) -> None:
    assert fixed_penalty_gbp(over) == pounds


@pytest.mark.parametrize("over", [30, 31, -1, nan])
def test_a_court_and_a_van_under_its_limit_have_no_fixed_penalty(over: float) -> None:
    with pytest.raises(OutsideValidity, match="overload"):
        fixed_penalty_gbp(over)


def test_band_around_a_declared_mass() -> None:
    assert tolerance_band_kg(2503) == pytest.approx((2378, 2628), abs=0.5)


def test_independent_errors_are_less_than_their_sum() -> None:
    errors = (5, 8, 6, 4, 3, 2, 10, 8)
    assert errors_together_kg(errors) == pytest.approx(17.8, abs=0.05)
    assert sum(errors) == 46


@given(st.lists(st.floats(0, 100), max_size=10))
def test_errors_together_lie_between_the_largest_and_the_sum(errors: list[float]) -> None:
    together = errors_together_kg(errors)
    assert max(errors, default=0) * (1 - 1e-9) <= together <= sum(errors) * (1 + 1e-9)


@given(st.floats(1000, 5000), st.floats(1000, 5000))
def test_only_what_is_above_its_limit_is_over(weighed: float, limit: float) -> None:
    over = overload_pct(weighed, limit)
    assert (over > 0) == (weighed > limit)
    assert limit * (1 + over / 100) == pytest.approx(max(weighed, limit))


@given(st.floats(1000, 5000), st.floats(0, 1))
def test_both_axles_make_the_total(total: float, part: float) -> None:
    assert other_axle_kg(total, part * total) + part * total == pytest.approx(total)


def test_weighings_that_cannot_be_are_refused() -> None:
    with pytest.raises(OutsideValidity):
        other_axle_kg(2985, 2986)
    with pytest.raises(OutsideValidity):
        other_axle_kg(0, 0)
    with pytest.raises(OutsideValidity):
        prediction_error_pct(2985, 0)
    with pytest.raises(OutsideValidity):
        overload_pct(3500, 0)
    with pytest.raises(OutsideValidity):
        tolerance_band_kg(-1)
    with pytest.raises(OutsideValidity):
        tolerance_band_kg(2500, 5)
    with pytest.raises(OutsideValidity):
        errors_together_kg([3, -4])
