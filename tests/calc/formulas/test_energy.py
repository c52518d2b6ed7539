"""Energy of a day: worked balances of whole days, the laws of the sums, and what the formulas refuse."""

from __future__ import annotations

from collections.abc import Mapping
from math import inf, isclose, nan
from typing import NamedTuple

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas import energy
from specbuilder.calc.formulas.validity import OutsideValidity

WH = st.floats(0, 20_000)
SHARE = st.floats(0.01, 1)
LAPTOP = energy.inverter_load_wh(1, 60, 2.5, 1, 0.88)
ALWAYS_WH = {"phones": 2 * 15 / 0.9, "laptop": LAPTOP, "idle": energy.inverter_idle_wh(12, 3), "always on": 48}
WINTER: Mapping[str, float] = {
    "fridge": energy.fridge_wh(45, 0.25),
    "lights": energy.load_wh(1, 12, 5),
    "pump": energy.load_wh(1, 50, 0.25),
    "heater": energy.load_wh(1, 20, 14),
    "starts": energy.starts_wh(4, energy.glow_wh(100, 4)),
    "television": energy.load_wh(1, 30, 2),
    **ALWAYS_WH,
}
SUMMER: Mapping[str, float] = {
    "fridge": energy.fridge_wh(45, 0.40),
    "lights": energy.load_wh(1, 12, 2),
    "pump": energy.load_wh(1, 50, 0.4),
    "fan": energy.load_wh(1, 20, 8),
    **ALWAYS_WH,
}
SOUTH: Mapping[str, float] = {
    "fridge": energy.fridge_wh(45, 0.65),
    "lights": energy.load_wh(1, 12, 2),
    "pump": energy.load_wh(1, 50, 0.6),
    "fan": energy.load_wh(1, 20, 14),
    **ALWAYS_WH,
}
BANK_WH = energy.usable_wh(200, 12.8, 0.9, 0.9, 1)


class Day(NamedTuple):
    """A whole day worked out apart from the program, to three figures."""

    loads: Mapping[str, float]
    panel_w: float
    sun_h: float
    share: float
    drive_h: float
    load: str
    amp_hours: str
    sun: str
    days: str
    days_alone: str


def three(value: float) -> str:
    return f"{value:.3g}"


@pytest.mark.parametrize(
    "day",
    [
        Day(WINTER, 200, 0.504, 0.70, 1, "997", "77.9", "70.6", "3.82", "2.08"),
        Day(WINTER, 200, 0.504, 0.70, 0, "997", "77.9", "70.6", "2.23", "2.08"),
        Day(SUMMER, 200, 4.80, 0.70, 0, "924", "72.2", "672", "7.27", "2.24"),
        Day(SUMMER, 350, 4.80, 0.70, 0, "924", "72.2", "1.18e+03", "inf", "2.24"),
        Day(SOUTH, 200, 7.919, 0.65, 0, "1.32e+03", "103", "1.03e+03", "6", "1.57"),
    ],
    ids=["winter, an hour's drive", "winter, standing", "summer", "summer, more sun", "south in July"],
)
def test_a_whole_day(day: Day) -> None:
    load = sum(day.loads.values())
    sun = energy.sun_wh(day.panel_w, day.sun_h, day.share)
    engine = energy.engine_wh(30, 13.6, day.drive_h)
    assert three(load) == day.load
    assert three(energy.amp_hours_ah(load, 12.8)) == day.amp_hours
    assert three(sun) == day.sun
    assert three(BANK_WH) == "2.07e+03"
    assert three(energy.autonomy_days(BANK_WH, load, 0.95, sun, engine)) == day.days
    assert three(energy.autonomy_days(BANK_WH, load, 0.95, 0, 0)) == day.days_alone


def test_more_sun_is_not_more_nights_because_the_fridge_follows_the_heat() -> None:
    june = energy.autonomy_days(BANK_WH, sum(SUMMER.values()), 0.95, energy.sun_wh(200, 4.80, 0.70), 0)
    july = energy.autonomy_days(BANK_WH, sum(SOUTH.values()), 0.95, energy.sun_wh(200, 7.919, 0.65), 0)
    assert july < june


def test_an_old_battery_in_the_cold() -> None:
    assert three(energy.usable_wh(200, 12.8, 0.9, 0.8, 0.8)) == "1.47e+03"
    assert three(energy.usable_wh(200, 12, 0.5, 0.8, energy.lead_cold_share(0))) == "720"
    assert energy.lead_cold_share(-10) == pytest.approx(0.65)


def test_single_loads() -> None:
    assert three(energy.inverter_load_wh(1, 800 / 0.6, 0.1, 1, 0.88)) == "152"
    assert three(energy.inverter_load_wh(1, 1000, 0.5, 1, 0.88)) == "568"
    assert energy.inverter_idle_wh(20, 24) == 480
    assert three(energy.amp_hours_ah(480, 12.8)) == "37.5"


@given(WH, WH, SHARE, WH, WH, st.floats(0, 500))
def test_nights_follow_each_number_one_way(
    battery: float, load: float, store: float, sun: float, engine: float, more: float
) -> None:
    days = energy.autonomy_days(battery, load, store, sun, engine)
    assert days >= 0
    assert energy.autonomy_days(battery + more, load, store, sun, engine) >= days
    assert energy.autonomy_days(battery, load + more, store, sun, engine) <= days
    assert energy.autonomy_days(battery, load, store, sun + more, engine) >= days
    assert energy.autonomy_days(battery, load, store, sun, engine + more) >= days


@given(WH, WH, SHARE, WH, WH)
def test_a_day_that_is_carried_never_ends(battery: float, load: float, store: float, sun: float, engine: float) -> None:
    ends = energy.autonomy_days(battery, load, store, sun, engine) < inf
    assert ends == (store * (sun + engine) < load)


@given(st.integers(0, 6), st.floats(0, 3000), st.floats(0, 24), st.floats(0, 1), SHARE)
def test_an_inverter_never_saves_and_pieces_add(
    count: int, watts: float, hours: float, duty: float, efficiency: float
) -> None:
    plain = energy.load_wh(count, watts, hours, duty)
    assert energy.inverter_load_wh(count, watts, hours, duty, efficiency) >= plain
    assert isclose(plain, count * energy.load_wh(1, watts, hours, duty), abs_tol=1e-9)


@given(st.floats(-30, 60), st.floats(0, 20))
def test_a_warmer_lead_battery_gives_no_less(battery_c: float, more: float) -> None:
    share = energy.lead_cold_share(battery_c)
    assert 0 < share <= 1
    assert energy.lead_cold_share(min(battery_c + more, 60)) >= share


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: energy.load_wh(-1, 45, 24),
        lambda: energy.load_wh(1, -45, 24),
        lambda: energy.load_wh(1, 45, 25),
        lambda: energy.load_wh(1, 45, 24, 1.1),
        lambda: energy.load_wh(1, nan, 24),
        lambda: energy.starts_wh(-1, 7),
        lambda: energy.glow_wh(100, 31),
        lambda: energy.inverter_load_wh(1, 60, 2.5, 1, 0),
        lambda: energy.inverter_load_wh(1, 60, 2.5, 1, 1.01),
        lambda: energy.inverter_idle_wh(20, -1),
        lambda: energy.fridge_wh(45, -0.1),
        lambda: energy.amp_hours_ah(100, 0),
        lambda: energy.usable_wh(0, 12.8, 0.9, 0.9, 1),
        lambda: energy.usable_wh(100, 0, 0.9, 0.9, 1),
        lambda: energy.usable_wh(100, 12.8, 1.1, 0.9, 1),
        lambda: energy.lead_cold_share(-40),
        lambda: energy.lead_cold_share(-30, 25, 0.02),
        lambda: energy.sun_wh(100, 13, 0.7),
        lambda: energy.sun_wh(-100, 4, 0.7),
        lambda: energy.engine_wh(30, 0, 1),
        lambda: energy.engine_wh(30, 13.6, 25),
        lambda: energy.autonomy_days(-1, 900, 0.95, 0, 0),
        lambda: energy.autonomy_days(1000, 900, 1.5, 0, 0),
    ],
)
def test_what_cannot_be_is_named_not_answered(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()


COLD_C = st.floats(-20, 10)


@given(COLD_C, SHARE, SHARE)
def test_between_two_warmths_a_battery_gives_between_two_shares(cold_c: float, one: float, other: float) -> None:
    low, high = sorted((one, other))
    share = energy.cold_share_between(cold_c, -20, low, 10, high)
    assert low - 1e-9 <= share <= high + 1e-9
    assert energy.cold_share_between(-20, -20, low, 10, high) == pytest.approx(low)
    assert energy.cold_share_between(10, -20, low, 10, high) == pytest.approx(high)


@given(COLD_C, COLD_C)
def test_colder_never_gives_more(one: float, other: float) -> None:
    colder, warmer = sorted((one, other))
    shares = [energy.cold_share_between(c, -20, 0.7, 10, 1) for c in (colder, warmer)]
    assert shares[0] <= shares[1]


@pytest.mark.parametrize(
    "arguments",
    [
        (-21, -20, 0.7, 0, 0.8),
        (1, -20, 0.7, 0, 0.8),
        (0, 0, 0.7, 0, 0.8),
        (-5, -20, 1.2, 0, 0.8),
        (nan, -20, 0.7, 0, 1),
    ],
)
def test_outside_the_two_warmths_nothing_is_said(arguments: tuple[float, ...]) -> None:
    with pytest.raises(OutsideValidity):
        energy.cold_share_between(*arguments)
