"""Filling a battery: worked times, the laws of charging, and what the formulas refuse."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas import charging
from specbuilder.calc.formulas.validity import OutsideValidity

AMPS = st.floats(1, 200)
SHARE = st.floats(0.01, 0.8)


def three(value: float) -> str:
    return f"{value:.3g}"


def test_what_a_charger_takes_from_the_van() -> None:
    assert three(charging.engine_input_a(30, 14.4, 12.5, 0.9)) == "38.4"
    assert charging.engine_input_limit_a(180, 0.5) == 90


def test_times_to_fill() -> None:
    assert three(charging.recharge_lithium_h(200, 0.9, 30)) == "6.56"
    assert three(charging.recharge_lithium_h(200, 0.9, 30, 4)) == "7.49"
    assert three(charging.recharge_lead_h(200, 0.3, 30)) == "6.35"
    assert three(charging.recharge_lead_h(200, 0.3, 30) - 4) == "2.35"


def test_lead_loses_at_a_high_current() -> None:
    hours = charging.discharge_h(200, 1200 / (11.5 * 0.88), 1.1)
    assert three(hours) == "1.32"
    assert three(hours * 60) == "79"
    assert three(hours * 1200 / (11.5 * 0.88)) == "156"


def test_two_panels_on_a_cold_morning() -> None:
    assert three(charging.cold_panel_v(2, 22.5, 0.0028, 45)) == "50.7"


@pytest.mark.parametrize(("cell_c", "may"), [(-0.01, False), (0, True), (25, True), (60, True), (60.01, False)])
def test_frost_forbids_charging_lithium(cell_c: float, may: bool) -> None:
    assert charging.lithium_may_charge(cell_c) is may


@given(AMPS, SHARE, AMPS)
def test_more_amps_fill_sooner_but_never_within_the_last_hours(amps: float, share: float, more: float) -> None:
    for fill, least_h in ((charging.recharge_lithium_h, 0.5), (charging.recharge_lead_h, 4)):
        assert fill(200, share, amps) >= fill(200, share, amps + more) > least_h


@given(st.floats(10, 400), AMPS, st.floats(1, 1.6))
def test_twice_the_current_lasts_at_most_half_as_long(capacity: float, amps: float, exponent: float) -> None:
    once, twice = (charging.discharge_h(capacity, a, exponent) for a in (amps, 2 * amps))
    assert twice <= once / 2 * (1 + 1e-9)
    assert charging.discharge_h(capacity, capacity / 20, exponent) == pytest.approx(20)


@given(st.integers(1, 6), st.floats(10, 60), st.floats(0, 80))
def test_colder_panels_give_more_volts_and_those_in_series_add(count: int, volts: float, colder: float) -> None:
    one = charging.cold_panel_v(1, volts, 0.003, colder)
    assert one >= volts
    assert charging.cold_panel_v(count, volts, 0.003, colder) == pytest.approx(count * one)


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: charging.engine_input_a(30, 14.4, 0, 0.9),
        lambda: charging.engine_input_a(30, 14.4, 12.5, 0),
        lambda: charging.engine_input_limit_a(0, 0.5),
        lambda: charging.charge_limit_a(-1, 0.5),
        lambda: charging.charge_limit_a(100, 3),
        lambda: charging.recharge_lithium_h(200, 0.9, 30, 30),
        lambda: charging.recharge_lithium_h(0, 0.9, 30),
        lambda: charging.recharge_lithium_h(200, 1.1, 30),
        lambda: charging.recharge_lead_h(200, 0.9, 30),
        lambda: charging.recharge_lead_h(200, 0.3, 30, 0, 1),
        lambda: charging.discharge_h(200, 0, 1.1),
        lambda: charging.discharge_h(200, 100, 0.9),
        lambda: charging.cold_panel_v(0, 22, 0.003, 45),
        lambda: charging.cold_panel_v(1, 22, 0.3, 45),
        lambda: charging.lithium_may_charge(400),
        lambda: charging.lithium_may_charge(float("nan")),
    ],
)
def test_what_cannot_be_is_named_not_answered(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()
