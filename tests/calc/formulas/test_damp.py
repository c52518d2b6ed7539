"""When it gets wet, and the air that dries it."""

from __future__ import annotations

from math import exp, isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.damp import air_heat_w, air_needed_m3_per_h, dew_point_c, water_in_air_g_per_m3
from specbuilder.calc.formulas.heat import air_change_loss_w_per_k
from specbuilder.calc.formulas.validity import OutsideValidity
from tests.calc.formulas.figures import significant

AIR, HUMIDITY = st.floats(-20, 45), st.floats(0.05, 1)


def test_dew_points_of_a_living_and_a_sleeping_van() -> None:
    assert significant(dew_point_c(20, 0.6), dew_point_c(16, 0.7)) == (12, 10.5)


def test_two_sleepers_in_frost() -> None:
    inside, outside = water_in_air_g_per_m3(16, 0.7), water_in_air_g_per_m3(-5, 0.85)
    air = air_needed_m3_per_h(100, inside, outside)
    assert significant(inside, outside, air, air_heat_w(air, 16, -5)) == (9.52, 2.9, 15.1, 106)


@given(AIR, HUMIDITY)
def test_the_dew_point_is_where_the_air_is_full(air: float, humidity: float) -> None:
    """Found by halving between cold and the air itself, from the pressure alone."""

    def full_hpa(celsius: float) -> float:
        return 6.112 * exp(17.62 * celsius / (243.12 + celsius))

    low, high = -80.0, air
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if full_hpa(middle) < humidity * full_hpa(air) else (low, middle)
    assert dew_point_c(air, humidity) == pytest.approx(high, abs=1e-6)
    assert dew_point_c(air, humidity) <= air + 1e-9


@given(AIR, AIR, HUMIDITY)
def test_warm_air_holds_more(a: float, b: float, humidity: float) -> None:
    cold, warm = sorted((a, b))
    assert water_in_air_g_per_m3(cold, humidity) <= water_in_air_g_per_m3(warm, humidity) + 1e-9
    assert water_in_air_g_per_m3(warm, humidity) == pytest.approx(humidity * water_in_air_g_per_m3(warm, 1))


@given(st.floats(0, 2000), st.floats(5, 20), st.floats(0, 4))
def test_the_air_carries_exactly_the_water(moisture: float, inside: float, outside: float) -> None:
    assert air_needed_m3_per_h(moisture, inside, outside) * (inside - outside) == pytest.approx(moisture, abs=1e-9)


@given(st.floats(0, 60), st.floats(-20, 10), st.floats(0, 25))
def test_the_same_heat_as_by_changes_of_a_room(air: float, outside: float, difference: float) -> None:
    by_room = air_change_loss_w_per_k(air / 10, 10) * difference
    assert isclose(air_heat_w(air, outside + difference, outside), by_room, abs_tol=1e-6)


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: dew_point_c(20, 0),
        lambda: dew_point_c(20, 60),
        lambda: dew_point_c(-300, 0.6),
        lambda: water_in_air_g_per_m3(20, -0.1),
        lambda: water_in_air_g_per_m3(500, 0.5),
        lambda: air_needed_m3_per_h(100, 5, 5),
        lambda: air_needed_m3_per_h(100, 5, 9),
        lambda: air_needed_m3_per_h(-1, 9, 5),
        lambda: air_needed_m3_per_h(100, 9, -1),
        lambda: air_heat_w(-1, 20, 0),
        lambda: air_heat_w(15, 0, 20),
    ],
)
def test_absurd_figures_are_named(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()
