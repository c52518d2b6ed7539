"""Inverter against battery: worked cases, the laws, and what the formulas refuse."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas import inverter
from specbuilder.calc.formulas.validity import OutsideValidity

WATTS, EFFICIENCY = st.floats(1, 5000), st.floats(0.5, 1)


def three(value: float) -> str:
    return f"{value:.3g}"


def test_three_kilowatts_need_two_packs() -> None:
    current = inverter.input_current_a(3000, 12, 0.88)
    one, two = inverter.battery_limit_a(200, 1), inverter.battery_limit_a(200, 2)
    assert three(current) == "284"
    assert three(inverter.used_share(current, one)) == "1.42"
    assert three(inverter.mains_allowed_w(one, 12, 0.88)) == "2.11e+03"
    assert two == 360
    assert three(inverter.used_share(current, two)) == "0.789"
    assert three(inverter.rate_per_h(current, 400)) == "0.71"


def test_two_kilowatts_on_one_pack_leave_little() -> None:
    current = inverter.input_current_a(2000, 12, 0.88)
    assert three(current) == "189"
    assert three(inverter.used_share(current, 200)) == "0.947"
    assert three(inverter.mains_allowed_w(200, 12, 0.88, 0.8)) == "1.69e+03"


def test_a_microwave_draws_more_than_its_door_says() -> None:
    drawn = inverter.microwave_input_w(800)
    assert three(drawn) == "1.33e+03"
    assert three(inverter.input_current_a(drawn, 12, 0.88)) == "126"


def test_lead_at_a_kilowatt() -> None:
    current = inverter.input_current_a(1200, 11.5, 0.88)
    assert three(current) == "119"
    assert three(inverter.rate_per_h(current, 200)) == "0.593"
    assert current > inverter.lead_limit_a(200)


@given(WATTS, st.floats(10, 14), EFFICIENCY)
def test_a_battery_allows_just_the_watts_that_draw_its_limit(watts: float, volts: float, efficiency: float) -> None:
    current = inverter.input_current_a(watts, volts, efficiency)
    assert inverter.mains_allowed_w(current, volts, efficiency) == pytest.approx(watts)
    assert current >= watts / volts


@given(st.floats(1, 300), st.integers(1, 6), st.floats(0.5, 1))
def test_packs_side_by_side_give_no_more_than_their_sum(pack_a: float, packs: int, share: float) -> None:
    assert share * pack_a * packs <= inverter.battery_limit_a(pack_a, packs, share) * (1 + 1e-12)
    assert inverter.battery_limit_a(pack_a, packs, share) <= pack_a * packs


@given(WATTS, st.floats(1, 7), WATTS)
def test_a_start_is_no_less_than_what_runs(watts: float, times: float, beside: float) -> None:
    assert inverter.start_w(watts, times, beside) >= watts + beside


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: inverter.input_current_a(2000, 12, 0),
        lambda: inverter.input_current_a(2000, 0, 0.9),
        lambda: inverter.input_current_a(-1, 12, 0.9),
        lambda: inverter.input_current_a(2000, 12, 88),
        lambda: inverter.battery_limit_a(200, 0),
        lambda: inverter.battery_limit_a(-200, 1),
        lambda: inverter.battery_limit_a(200, 2, 0),
        lambda: inverter.used_share(100, 0),
        lambda: inverter.mains_allowed_w(200, 0, 0.9),
        lambda: inverter.start_w(100, 0.5),
        lambda: inverter.microwave_input_w(800, 0),
        lambda: inverter.rate_per_h(100, 0),
        lambda: inverter.lead_limit_a(200, 1.5),
    ],
)
def test_what_cannot_be_is_named_not_answered(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()
