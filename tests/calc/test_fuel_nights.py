"""Fuel a night, nights on a tank, the start of a heater, and thin air."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Verdict
from specbuilder.model.parts import Circuit, Heat, Power
from specbuilder.model.span import Span
from specbuilder.wording.ledger_detail import beside_line
from tests import worlds
from tests.calc.beside_scene import (
    SHIPPED,
    nothing_told,
    number,
    says,
    set_to,
    span,
    spans_its_completions,
    told,
    with_tables,
    without_table,
)
from tests.calc.scene import FENWAIN, SHORT, base_van, facts

LITRE_KWH = {str(row[0]): float(row[1]) for row in SHIPPED.tables["fuel-energy"].rows}
BATTERY = Power(bus="battery", battery_ah=100, battery_v=12.8, chemistry="LFP", short_circuit_ka=5)


def burner(
    id_: str, fuel: str = "diesel", run_m: float = 3, start_a: float | None = 20.4, area_mm2: float | None = None
) -> Option:
    """A heater with one cable run; its section computed unless it is given."""
    cable = Circuit(
        id=f"{id_}-c1",
        circuit="air heater",
        from_point="leisure battery fuse block",
        to_point="heater",
        bus="dc",
        load_w=245,
        load_a=20.4,
        run_one_way_m=run_m,
        drop_limit_pct=3,
        protection="",
        own_area_mm2=area_mm2,
    )
    return worlds.option(
        id_,
        "heater",
        gives=f"heater fuel-line burns-{fuel}",
        heat=Heat(heater_kw=2, heater_fuel=fuel, fuel_l_per_h=0.24, start_a=start_a),
        power=Power(bus="dc", watts_running=20),
        circuits=(cable,),
    )


OPTIONS = [
    burner("diesel-heater"),
    burner("petrol-heater", "petrol"),
    burner("far-heater", run_m=6, area_mm2=2.5),
    burner("thin-heater", run_m=5, area_mm2=2.5),
    burner("thick-heater", run_m=6, area_mm2=10),
    burner("lost-heater", run_m=99, area_mm2=0.5),
    burner("unlit-heater", start_a=None),
    replace(burner("wireless-heater"), circuits=()),
    worlds.option("plug-heater", "heater", gives="heater", heat=Heat(heater_kw=1.8, heater_fuel="hook-up")),
    worlds.option("own-tank", "takeoff", gives="own-fuel-tank", heat=Heat(own_tank_l=9)),
    worlds.option("tap", "takeoff"),
    worlds.option("fuel-hob", "cooking", gives="burns-diesel", heat=Heat(cooker_fuel="diesel")),
    worlds.option("gas-hob", "cooking"),
    worlds.option("kit", "extras", gives="altitude-kit", max_count=2),
    worlds.option("lithium", "battery", power=BATTERY),
    worlds.option("lead", "battery", power=replace(BATTERY, chemistry="AGM")),
]
RULES = with_tables(OPTIONS)
NIGHTS = "night-fuel", "nights-full-tank", "nights-half-tank"
ALL = (*NIGHTS, "heater-start-amps", "heater-start-volts", "air-density", "over-rich")


def test_nights_on_a_tank_of_seventy_litres() -> None:
    """52.3 full and 15.7 half full; 13.9 with a hob on it."""
    van = base_van("seventy", replace(FENWAIN, tank_l=70))
    rules = with_tables(OPTIONS, (van,))
    found = [says(rules, id_, "diesel-heater", van=van) for id_ in NIGHTS]
    assert [round(x, 2) for x in found] == [0.96, 52.31, 15.69]
    assert says(rules, "nights-half-tank", "diesel-heater", "fuel-hob", van=van) == pytest.approx(13.94, abs=0.01)
    quarter = set_to(rules, "nights-half-tank", tank_share=0.25)
    assert says(quarter, "nights-half-tank", "diesel-heater", van=van) == 0


def test_petrol_has_less_in_a_litre() -> None:
    petrol, diesel = (says(RULES, "night-fuel", f"{fuel}-heater") for fuel in ("petrol", "diesel"))
    assert petrol / diesel == pytest.approx(LITRE_KWH["diesel"] / LITRE_KWH["petrol"], rel=1e-5)
    assert petrol == pytest.approx(8.1 / 0.85 / 8.8, abs=1e-6)


def test_an_own_tank_is_filled_as_the_figure_says_and_has_no_reserve() -> None:
    full, half = (says(RULES, id_, "diesel-heater", "own-tank") for id_ in NIGHTS[1:])
    assert full == pytest.approx(2 * half, rel=1e-5)
    assert full == pytest.approx(9 * 0.85 * 9.97 / 8.1, abs=1e-5)


@settings(max_examples=40, deadline=None)
@given(tank=st.floats(30, 120), reserve=st.floats(0, 30), one=st.floats(0, 1), other=st.floats(0, 1))
def test_more_in_the_tank_never_heats_fewer_nights(tank: float, reserve: float, one: float, other: float) -> None:
    van = base_van("any", replace(FENWAIN, tank_l=tank, fuel_reserve_l=reserve))
    rules = with_tables(OPTIONS, (van,))
    less, more = (
        says(set_to(rules, "nights-half-tank", tank_share=share), "nights-half-tank", "diesel-heater", van=van)
        for share in sorted((one, other))
    )
    assert less <= more + 1e-9
    full = says(rules, "nights-full-tank", "diesel-heater", van=van)
    assert more <= full + 1e-6
    burnt = full * says(rules, "night-fuel", "diesel-heater", van=van)
    assert burnt == pytest.approx(tank - reserve, abs=1e-3)


@pytest.mark.parametrize(("heater", "volts"), [("far-heater", 12 - 2 * 6 * 20.4 * 7.98 * 1.1179 / 1000)])
def test_volts_behind_a_thin_cable_are_said_to_be_too_few(heater: str, volts: float) -> None:
    reading = told(RULES, "heater-start-volts", heater, "lithium")
    assert number(reading) == pytest.approx(volts, abs=1e-3)
    assert reading.verdict is Verdict.BROKEN
    assert beside_line(RULES, reading) == (
        "Volts at the heater while it lights; it gives up at about 10.5 V: note: 9.8 of 11 V, short by 1.2 V (ESTIMATE)"
    )


def test_volts_behind_a_thick_cable_hold() -> None:
    reading = told(RULES, "heater-start-volts", "thick-heater", "lithium")
    assert reading.verdict is Verdict.HOLDS
    assert 11 < number(reading) < 12
    assert says(RULES, "heater-start-volts", "thick-heater", "lead") == pytest.approx(number(reading) - 0.5)
    assert says(RULES, "heater-start-amps", "thick-heater") == 20.4


def test_a_battery_nobody_chose_yet_spans_the_volts() -> None:
    ways = {"battery": ["lithium", "lead"], "heater": ["far-heater", "thick-heater", "plug-heater"]}
    open_ = spans_its_completions(RULES, "heater-start-volts", ways)
    assert open_.verdict is Verdict.CANNOT_TELL
    assert {lack.group for lack in open_.lacks} == set(ways)


@pytest.mark.parametrize(("height", "density", "rich"), [(1500, 86.4, 15.8), (2000, 82.2, 21.7), (3000, 74.2, 34.7)])
def test_thin_air(height: int, density: float, rich: float) -> None:
    up = facts(altitude_m=height)
    assert round(says(RULES, "air-density", "diesel-heater", facts_=up), 1) == density
    assert round(says(RULES, "over-rich", "petrol-heater", facts_=up), 1) == rich


def test_each_burner_wants_its_own_altitude_setting() -> None:
    assert not told(RULES, "over-rich", "diesel-heater", "kit").applies
    assert told(RULES, "over-rich", "diesel-heater", "fuel-hob", "kit").applies
    assert not told(RULES, "over-rich", "diesel-heater", "fuel-hob", "kit", "kit").applies
    assert told(RULES, "air-density", "diesel-heater", "kit").applies
    assert not told(RULES, "air-density", "plug-heater", "gas-hob").applies


def test_a_height_nobody_named_spans_the_air() -> None:
    reading = told(RULES, "air-density", "diesel-heater", facts_=facts(unknown=["altitude_m"]))
    assert reading.value == span(100 * (1 - 2.25577e-5 * 3000) ** 4.2559, 100)
    assert [lack.key for lack in reading.lacks] == ["altitude_m"]


@pytest.mark.parametrize("id_", ALL)
def test_without_a_fuel_heater_there_is_nothing_to_measure(id_: str) -> None:
    assert not told(RULES, id_, "plug-heater", "gas-hob", "tap").applies


@pytest.mark.parametrize("id_", ALL)
def test_undecided_questions_span_their_answers(id_: str) -> None:
    ways = {
        "heater": ["diesel-heater", "petrol-heater", "plug-heater"],
        "takeoff": ["own-tank", "tap"],
        "cooking": ["fuel-hob", "gas-hob"],
    }
    spans_its_completions(RULES, id_, ways)


@pytest.mark.parametrize(
    ("id_", "heater", "about"),
    [
        ("heater-start-amps", "unlit-heater", "start current"),
        ("heater-start-volts", "unlit-heater", "start current"),
        ("heater-start-volts", "wireless-heater", "cable run"),
        ("heater-start-volts", "lost-heater", "lost-heater-c1"),
    ],
)
def test_a_heater_without_its_figures_tells_nothing(id_: str, heater: str, about: str) -> None:
    nothing_told(told(RULES, id_, heater, "lithium"), about)


def test_missing_tables_and_absurd_settings_tell_nothing() -> None:
    for id_ in NIGHTS:
        nothing_told(told(without_table(RULES, "fuel-energy"), id_, "diesel-heater"), "fuel-energy")
        nothing_told(told(set_to(RULES, "heater-nights", burner_share=0), id_, "diesel-heater"), "efficiency")
    nothing_told(told(set_to(RULES, "heater-nights", night_h=30), "night-fuel", "diesel-heater"), "night h")
    nothing_told(told(without_table(RULES, "conductors"), "heater-start-volts", "diesel-heater"), "conductors")
    no_tank = base_van("dry", replace(FENWAIN, tank_l=0))
    nothing_told(told(with_tables(OPTIONS, (no_tank,)), "nights-full-tank", "diesel-heater", van=no_tank), "tank L")


def test_an_electric_van_heats_no_night_without_a_tank_of_its_own() -> None:
    van = base_van("electric", replace(FENWAIN, tank_l=0, fuel_density_kg_per_l=0, fuel_reserve_l=0))
    rules = with_tables(OPTIONS, (van, SHORT))
    assert says(rules, "nights-full-tank", "diesel-heater", van=van) == 0
    either = told(rules, "nights-full-tank", "diesel-heater", van=None, undecided={"base-van": ["electric", "short"]})
    assert either.value == Span(0, says(rules, "nights-full-tank", "diesel-heater"))
