"""A compressor fridge in the heat."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.fridge import carnot, fridge_day_wh
from specbuilder.calc.formulas.validity import OutsideValidity
from tests.calc.formulas.figures import significant

AROUND = st.floats(5, 60)


def test_a_day_by_the_warmth_around_it() -> None:
    kwh = [fridge_day_wh(400, around) / 1000 for around in (15, 25, 32, 40)]
    assert significant(*kwh) == (0.16, 0.4, 0.616, 0.91)
    assert significant(*(k * 1000 / 12 for k in kwh[1:])) == (33.3, 51.3, 75.8)


def test_the_same_from_heat_that_leaks_in_and_work_that_lifts_it_out() -> None:
    """Two fridge bodies, each losing in proportion, each pumped between the same two ends."""
    for around in (10.0, 25.0, 38.5):
        cold, hot = 5 - 15 + 273.15, around + 15 + 273.15
        work = (around - 5) / (cold / (hot - cold))
        at_25 = 20 / (cold / (25 + 15 + 273.15 - cold))
        assert fridge_day_wh(400, around) == pytest.approx(400 * work / at_25)


@given(AROUND, AROUND)
def test_warmer_takes_more_and_more_than_in_proportion(a: float, b: float) -> None:
    cool, warm = sorted((a, b))
    assert fridge_day_wh(400, cool) <= fridge_day_wh(400, warm)
    if cool > 6 and warm > cool:
        in_proportion = fridge_day_wh(400, cool) * (warm - 5) / (cool - 5)
        assert fridge_day_wh(400, warm) >= in_proportion * (1 - 1e-9)


@given(st.floats(-20, 15), AROUND)
def test_at_25_degrees_it_is_the_stated_figure(inside: float, around: float) -> None:
    assert fridge_day_wh(400, 25, inside) == pytest.approx(400)
    if around >= inside:
        assert carnot(inside, around) > 0


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: fridge_day_wh(0, 25),
        lambda: fridge_day_wh(-400, 25),
        lambda: fridge_day_wh(400, 0),
        lambda: fridge_day_wh(400, 70),
        lambda: fridge_day_wh(400, 30, 25),
        lambda: fridge_day_wh(400, float("nan")),
        lambda: carnot(-50, 20),
    ],
)
def test_absurd_figures_are_named(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()
