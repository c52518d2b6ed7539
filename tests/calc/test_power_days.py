"""Whole balances of days with the loads they were published for: nights, sun, charging, the inverter and the pitch."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import inf, isinf
from types import MappingProxyType

import pytest

from specbuilder.calc import CALCULATIONS
from specbuilder.calc.power.battery_beside import sun_by_month
from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.parts import Power
from specbuilder.model.situation import Situation
from tests import worlds
from tests.calc.plain_power_beside import UK
from tests.calc.power_beside_scene import read, value
from tests.calc.power_scene import BRIEF, RULES, build


def _with(loads: Mapping[str, Power], settings: Mapping[str, Mapping[str, float]]) -> Catalogue:
    """The catalogue with loads of other watts, and other house settings."""
    more = {OptionId(name): worlds.option(name, "sockets", power=power) for name, power in loads.items()}
    changed = {
        LedgerId(id_): replace(
            RULES.ledgers[LedgerId(id_)],
            settings=MappingProxyType({**RULES.ledgers[LedgerId(id_)].settings, **numbers}),
        )
        for id_, numbers in settings.items()
    }
    return replace(
        RULES,
        options=MappingProxyType({**RULES.options, **more}),
        ledgers=MappingProxyType({**RULES.ledgers, **changed}),
    )


def _dc(watts: float, hours: float, duty: float = 1, starts: float = 0, start_wh: float = 0) -> Power:
    return Power(
        bus="dc",
        watts_running=watts,
        hours_summer=hours,
        hours_winter=hours,
        duty_summer=duty,
        duty_winter=duty,
        starts_summer=starts,
        starts_winter=starts,
        start_wh=start_wh,
    )


LAPTOP = Power(bus="shared", watts_running=60, hours_summer=2.5, hours_winter=2.5, duty_summer=1, duty_winter=1)
INVERTER = Power(bus="inverter", inverter_w=1000, inverter_efficiency=0.88, inverter_idle_w=12, inverter_surge_w=2000)
PHONES = {"daily-energy": {"phones_wh": 2 * 15 / 0.9, "always_on_wh": 48}}
PANELS = Power(bus="solar", solar_w=200)
OF_WINTER = {
    "a-fridge": _dc(45, 24, 0.25),
    "lamps": _dc(12, 5),
    "a-pump": _dc(50, 0.25),
    "a-heater": _dc(20, 14, 1, 4, 100 * 4 / 60),
    "a-screen": _dc(30, 2),
    "a-laptop": LAPTOP,
    "an-inverter": INVERTER,
    "panels": PANELS,
}
OF_SUMMER = {
    "a-fridge": _dc(45, 24, 0.40),
    "lamps": _dc(12, 2),
    "a-pump": _dc(50, 0.4),
    "a-fan": _dc(20, 8),
    "a-laptop": LAPTOP,
    "an-inverter": INVERTER,
    "panels": PANELS,
    "more-panels": Power(bus="solar", solar_w=150),
}
OF_SOUTH = {**OF_SUMMER, "a-fridge": _dc(45, 24, 0.65), "a-pump": _dc(50, 0.6), "a-fan": _dc(20, 14)}
STORE = ("battery-kettle", "place-in-galley", "dcdc-30")


def _day(loads: Mapping[str, Power], season: str, drive_h: float, region: str = "uk", **settings: float) -> Situation:
    rules = _with(loads, {**PHONES, "battery-nights": settings})
    chosen = [OptionId(name) for name in loads if name != "more-panels"]
    answers: Mapping[str, Answer] = {"season": season, "region": region, "drive_h_per_day": drive_h}
    return build(*STORE, *chosen, rules=rules, answers=answers)


def nights(now: Situation) -> float:
    (nights_,) = [c for c in CALCULATIONS if c.id == "battery-nights"]
    reading = nights_.read(now)
    assert reading.value is not None
    return reading.value.least


def test_a_winter_day_in_december() -> None:
    now = _day(OF_WINTER, "winter", 1)
    assert value("winter-energy", now) == pytest.approx(997, abs=0.5)
    assert value("sun-winter", now) == pytest.approx(70.6, abs=0.05)
    assert value("road-charge", now) == pytest.approx(408)
    assert value("day-balance", now) == pytest.approx(-542, abs=0.5)
    assert value("usable-aged", now) == pytest.approx(2073.6)
    assert nights(now) == pytest.approx(3.82, abs=0.005)
    assert value("nights-without-sun", now) == pytest.approx(2.08, abs=0.005)
    parked = _day(OF_WINTER, "winter", 0)
    assert value("day-balance", parked) == pytest.approx(-930, abs=0.5)
    assert nights(parked) == pytest.approx(2.23, abs=0.005)


def test_a_summer_day_in_june() -> None:
    now = _day(OF_SUMMER, "summer", 0)
    assert value("summer-energy", now) == pytest.approx(924, abs=0.5)
    assert value("sun-summer", now) == pytest.approx(672)
    assert value("day-balance", now) == pytest.approx(-285, abs=0.5)
    assert nights(now) == pytest.approx(7.27, abs=0.005)
    assert value("nights-without-sun", now) == pytest.approx(2.24, abs=0.005)


def test_more_panels_carry_the_summer_day() -> None:
    rules = _with(OF_SUMMER, PHONES)
    answers: Mapping[str, Answer] = {"season": "summer", "region": "uk", "drive_h_per_day": 0}
    now = build(*STORE, *OF_SUMMER, rules=rules, answers=answers)
    assert value("sun-summer", now) == pytest.approx(1176)
    assert value("day-balance", now) == pytest.approx(193, abs=0.5)
    assert isinf(nights(now))


def test_a_day_in_the_south_in_july() -> None:
    """More sun is not more nights: the fridge follows the heat."""
    now = _day(OF_SOUTH, "summer", 0, "south", sun_share=0.65)
    assert value("summer-energy", now) == pytest.approx(1320, abs=4)
    assert value("sun-summer", now) == pytest.approx(1030, abs=0.5)
    assert value("day-balance", now) == pytest.approx(-346, abs=0.5)
    assert nights(now) == pytest.approx(6.00, abs=0.01)


def test_the_end_of_its_life_at_nought() -> None:
    """200 Ah at 0 degrees, worn to 0.8: 1,470 Wh of lithium, 720 Wh of lead."""
    worn = {"battery-nights": {"age_share": 0.8}}
    for battery, wh in (("battery-kettle", 1474.56), ("battery-lead-200", 720)):
        now = build(battery, "place-in-galley", rules=_with({}, worn), answers={"design_temp_c": 0})
        assert value("usable-in-cold", now) == pytest.approx(wh)


def test_hours_to_full() -> None:
    """200 Ah at 30 A: lithium 6.56 h, beside a load of 4 A 7.49 h; lead 2.35 h and four hours no amps shorten."""
    plugged = ("place-in-galley", "hook-up-bundle", "mains-charger-30", "dcdc-30")
    quiet = {"daily-energy": {"phones_wh": 0, "always_on_wh": 0}}
    loaded = {"daily-energy": {"phones_wh": 0, "always_on_wh": 4 * 12.8 * 24}}
    for id_ in ("refill-road", "refill-plug"):
        assert value(id_, build("battery-kettle", *plugged, rules=_with({}, quiet))) == pytest.approx(6.56, abs=0.005)
        assert value(id_, build("battery-kettle", *plugged, rules=_with({}, loaded))) == pytest.approx(7.49, abs=0.005)
        lead = build("battery-lead-200", *plugged, rules=_with({}, quiet))
        assert value(id_, lead) == pytest.approx(6.35, abs=0.005)
        assert value(id_, lead) > 4


def test_it_never_fills_where_the_day_takes_all_the_charger_gives() -> None:
    thirst = _with({}, {"daily-energy": {"always_on_wh": 30 * 12.8 * 24}})
    now = build("battery-kettle", "place-in-galley", "dcdc-30", rules=thirst)
    assert value("refill-road", now) == inf
    assert not read("refill-plug", now).applies


def test_a_battery_is_filled_no_faster_than_it_takes() -> None:
    quiet = _with({}, {"daily-energy": {"phones_wh": 0, "always_on_wh": 0}})
    now = build("battery-lantern", "place-in-galley", "dcdc-50", rules=quiet)
    assert value("refill-road", now) == pytest.approx(100 * 0.3 / (25 * 0.85) + 4)


def test_what_the_battery_carries_for_good() -> None:
    """200 A at 12 V through 0.88: 2,112 W, with a fifth in hand 1,690 W; two packs lose a tenth."""
    rules = _with({"a-maker": replace(INVERTER, inverter_w=3000)}, {})
    one = build("battery-kettle", "place-in-galley", "a-maker", rules=rules)
    assert value("mains-for-good", one) == pytest.approx(2112)
    assert value("mains-in-hand", one) == pytest.approx(1689.6)
    two = build("battery-twin", "place-in-galley", "a-maker", rules=rules)
    assert value("mains-for-good", two) == pytest.approx(360 * 12 * 0.88)


def test_what_is_left_on_a_pitch() -> None:
    """Kettle, water heater and charger: 16 A suffice, 10 A are exceeded by 1,041 W, 6 A by 1,961 W."""
    now = build("hook-up-bundle", "kettle-household", "hot-water-electric-6l", "mains-charger-30", "battery-kettle")
    assert value("left-on-weak-pitch", now) == -1961
    assert value("left-on-usual-pitch", now) == -1041
    assert value("left-on-strong-pitch", now) == 339


def test_the_inverter_left_on() -> None:
    assert value("inverter-left-on", build("inverter-3000")) == 480
    assert not read("inverter-left-on", build("no-inverter")).applies


def test_a_start_beside_the_rest() -> None:
    """The microwave starts alone of those used by turns; the laptop runs on beside it."""
    now = build("inverter-2000", "kettle-low-watt", "microwave-800", "laptop")
    reading = read("inverter-start", now)
    assert value("inverter-start", now) == 1700 + 60
    assert reading.bound is not None
    assert reading.bound.least == 4000
    weak = build("inverter-rough-300", "kettle-low-watt", "laptop")
    assert value("inverter-start", weak) == 90


def test_both_days_whatever_the_season() -> None:
    days = [build("fridge-front-door", "air-heater-diesel-2", answers={"season": s}) for s in BRIEF["season"]]
    assert len({(value("summer-energy", now), value("winter-energy", now)) for now in days}) == 1


def test_the_sun_of_every_month() -> None:
    now = build("solar-flush-100", answers={"region": "uk"})
    months = sun_by_month(now)
    assert [m.least for m in months] == pytest.approx([h * 70 for h in UK])
    assert value("sun-best-month", now) == max(m.least for m in months)
    assert value("sun-worst-month", now) == min(m.least for m in months)
    assert sun_by_month(build("no-battery")) == ()
