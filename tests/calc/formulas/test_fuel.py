"""What burners take, how long a tank lasts, thin air and thin cable."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.fuel import (
    air_density_share,
    burner_l_per_h,
    fuel_a_night_l,
    heater_start_v,
    nights_on_fuel,
    over_rich_share,
    reserve_l,
    start_a,
    usable_l,
)
from specbuilder.calc.formulas.validity import OutsideValidity
from tests.calc.formulas.figures import significant

ETA, DIESEL = 0.85, 9.97
PARKED = st.floats(0, 1)


def nights(fill: float, cooking_l: float = 0) -> float:
    return nights_on_fuel(usable_l(70, fill, 20), burner_l_per_h(0.9, ETA, DIESEL), 9, cooking_l)


def test_litres_an_hour() -> None:
    assert significant(*(burner_l_per_h(kw, ETA, DIESEL) for kw in (0.85, 1.8, 2.0, 4.0))) == (0.1, 0.212, 0.236, 0.472)


def test_nights_on_a_tank_of_seventy_litres() -> None:
    assert significant(nights(1), nights(0.5), nights(0.25), nights(0.5, 0.12)) == (52.3, 15.7, 0, 13.9)


@given(st.floats(0, 2), st.floats(0, 24), st.floats(0, 200))
def test_nights_are_fuel_over_the_fuel_of_a_night(rate: float, hours: float, litres: float) -> None:
    night_l = fuel_a_night_l(rate, hours)
    assert night_l == pytest.approx(rate * hours)
    if night_l > 1e-6:
        assert nights_on_fuel(litres, rate, hours, 0) == pytest.approx(litres / night_l)
    for absurd in ((-1, 9), (0.1, 25), (float("nan"), 9)):
        with pytest.raises(OutsideValidity):
            fuel_a_night_l(*absurd)


def test_thin_air() -> None:
    heights = (1500, 2000, 3000)
    assert significant(*map(air_density_share, heights)) == (0.864, 0.822, 0.742)
    assert significant(*map(over_rich_share, heights)) == (0.158, 0.217, 0.347)


def test_the_atmosphere_by_temperature_and_pressure() -> None:
    """Density from the falling temperature and the pressure it gives, not from the one power."""
    for height in (0.0, 700.0, 1900.0, 3400.0):
        kelvin = 288.15 - 0.0065 * height
        pressure = 101_325 * (kelvin / 288.15) ** (9.80665 * 0.0289644 / (8.314462 * 0.0065))
        density = pressure * 0.0289644 / (8.314462 * kelvin)
        assert air_density_share(height) == pytest.approx(density / 1.225, rel=1e-4)


def test_volts_at_the_heater_while_it_starts() -> None:
    amps = start_a(245, 12)
    found = [heater_start_v(12.2, 6, mm2, amps) for mm2 in (2.5, 4, 6)]
    assert significant(amps, *found) == (20.4, 10.5, 11.1, 11.5)
    assert [volts >= 11.0 for volts in found] == [False, True, True]


def test_a_tank_burnt_hour_by_hour() -> None:
    """Counted down in quarters of an hour instead of divided."""
    litres, quarters, rate = usable_l(70, 0.5, 20), 0, burner_l_per_h(0.9, ETA, DIESEL)
    while litres > 0:
        litres -= rate / 4
        quarters += 1
    assert nights(0.5) == pytest.approx(quarters / 4 / 9, abs=0.03)


@given(PARKED, PARKED, st.floats(0, 60))
def test_more_in_the_tank_never_leaves_less(a: float, b: float, reserve: float) -> None:
    less, more = sorted((a, b))
    assert 0 <= usable_l(60, less, reserve) <= usable_l(60, more, reserve) <= 60 - reserve + 1e-9


@given(st.floats(0.1, 100), st.floats(0.01, 1), st.floats(0.5, 24), st.floats(0, 3))
def test_what_the_nights_burn_is_what_there_was(litres: float, rate: float, hours: float, cooking: float) -> None:
    found = nights_on_fuel(litres, rate, hours, cooking)
    assert found * (rate * hours + cooking) == pytest.approx(litres)


@given(st.floats(-500, 11000), st.floats(-500, 11000))
def test_higher_is_thinner_and_richer(a: float, b: float) -> None:
    low, high = sorted((a, b))
    assert air_density_share(low) >= air_density_share(high) > 0
    assert over_rich_share(low) <= over_rich_share(high)


@given(st.floats(0, 10), st.floats(1.5, 35), st.floats(0, 25))
def test_a_cable_loses_twice_its_run(run_m: float, mm2: float, amps: float) -> None:
    lost = 100 - heater_start_v(100, run_m, mm2, amps)
    assert lost == pytest.approx(amps * 0.0175 / mm2 * run_m * 2, abs=1e-9)


@given(st.floats(1, 120), st.floats(0, 400), st.floats(0, 400))
def test_the_reserve_is_part_of_the_tank(tank: float, gap: float, more: float) -> None:
    depth = gap + more + 1
    assert 0 <= reserve_l(tank, gap, depth) <= tank
    assert reserve_l(tank, depth, depth) == pytest.approx(tank)


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: burner_l_per_h(2, 0, DIESEL),
        lambda: burner_l_per_h(2, 1.2, DIESEL),
        lambda: burner_l_per_h(-2, ETA, DIESEL),
        lambda: burner_l_per_h(2, ETA, 0),
        lambda: usable_l(0, 0.5, 0),
        lambda: usable_l(70, 1.5, 20),
        lambda: usable_l(70, 0.5, 80),
        lambda: usable_l(70, 0.5, -5),
        lambda: nights_on_fuel(15, 0, 9, 0),
        lambda: nights_on_fuel(15, 0.1, 0, 0),
        lambda: nights_on_fuel(15, 0.1, 25, 0),
        lambda: nights_on_fuel(-1, 0.1, 9, 0),
        lambda: nights_on_fuel(15, -0.1, 9, 2),
        lambda: nights_on_fuel(float("nan"), 0.1, 9, 0),
        lambda: reserve_l(80, 60, 0),
        lambda: reserve_l(80, 300, 240),
        lambda: reserve_l(0, 60, 240),
        lambda: air_density_share(20_000),
        lambda: over_rich_share(-2000),
        lambda: start_a(245, 0),
        lambda: heater_start_v(12.2, 6, 0, 20),
        lambda: heater_start_v(12.2, -6, 4, 20),
        lambda: heater_start_v(12.2, 600, 1, 20),
    ],
)
def test_absurd_figures_are_named(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()
