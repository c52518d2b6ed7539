"""Cables: worked cases, published ones as a whole, and what must hold of every cable."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.cables import (
    ampacity_a,
    area_for_drop_mm2,
    bundle_share,
    charger_input_a,
    drop_by_resistance_v,
    drop_by_resistivity_v,
    drop_v,
    load_of_each_a,
    most_amps_for_drop_a,
    resistance_mohm_per_m,
    smallest_area_mm2,
    start_voltage_v,
)
from specbuilder.calc.formulas.cords import cord_ampacity_a, cord_drop_v, warmth_share
from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.model.catalogue import Catalogue

RHO_50, RHO_CRAFT = 0.01989, 0.017871
"""Copper at 50 degrees as EN 1648-2 has it, and by the rules for small craft (10.75 ohm circular mil a foot)."""
MM2_PER_CMIL, M_PER_FT = 0.000506707, 0.3048
R20 = {
    0.5: 39, 0.75: 26, 1: 19.5, 1.5: 13.3, 2.5: 7.98, 4: 4.95, 6: 3.30, 10: 1.91,
    16: 1.21, 25: 0.780, 35: 0.554, 50: 0.386, 70: 0.272, 95: 0.206, 120: 0.161,
}  # fmt: skip
AREAS = sorted(R20)
BUNDLES = [(1, 1), (3, 0.7), (4, 0.6), (7, 0.5), (25, 0.4)]
WARMTH = [(30, 1), (35, 0.91), (40, 0.82), (45, 0.71), (50, 0.58)]

loads = st.floats(0.05, 500)
runs = st.floats(0.1, 30)
drops = st.floats(0.05, 2)
areas = st.sampled_from(AREAS)


def three(value: float) -> float:
    """To three significant figures."""
    return float(f"{value:.3g}")


# --- worked and published cases


def test_a_charging_line_that_may_lose_a_fifth_of_a_volt() -> None:
    """Published beside EN 1648-2: 60 A over 5 m need "at least 60 mm2"."""
    least = area_for_drop_mm2(60, 5, 0.2, RHO_50)
    assert three(least) == 59.7
    assert round(least) == 60
    assert smallest_area_mm2(least, AREAS) == 70


def test_what_six_square_millimetres_feed_over_five_metres() -> None:
    """Published beside EN 1648-2: 24 A at 0.8 V."""
    most = most_amps_for_drop_a(6, 5, 0.8, RHO_50)
    assert three(most) == 24.1
    assert round(most) == 24


def test_a_length_of_the_loop_is_twice_the_run() -> None:
    """Published beside the first two: 2.5 mm2, 0.8 V and "15 m" make 6.5 A. That 15 m is there and back together."""
    assert three(most_amps_for_drop_a(2.5, 15 / 2, 0.8, RHO_50)) == 6.7
    assert three(most_amps_for_drop_a(2.5, 15, 0.8, RHO_50)) == 3.35


def test_the_three_percent_chart_of_small_craft() -> None:
    """Published: 20 A, 30 ft of loop, 3 % of 12 V make 17,900 circular mil, the next size is AWG 6 (13.3 mm2)."""
    least = area_for_drop_mm2(20, 30 * M_PER_FT / 2, 0.36, RHO_CRAFT)
    assert three(least) == 9.08
    assert three(least / MM2_PER_CMIL) == 17_900
    assert three(10.75 * 20 * 30 / 0.36) == 17_900
    assert smallest_area_mm2(least, AREAS) == 10


def test_a_battery_cable_at_its_working_warmth() -> None:
    warm = resistance_mohm_per_m(0.554, 70)
    lost = drop_by_resistance_v(200, 1.5, warm)
    assert three(warm) == 0.663
    assert three(lost) == 0.398
    assert three(lost / 12.8 * 100) == 3.11
    assert warm == pytest.approx(0.554 / 0.833, rel=0.004), "the factor published for 70 degrees"


def test_a_lead_of_twenty_five_metres_at_sixteen_amps() -> None:
    assert three(cord_drop_v(16, 25, 19)) == 7.6
    assert three(cord_drop_v(16, 25, 32)) == 12.8
    assert [three(cord_drop_v(16, 25, mv) / 230 * 100) for mv in (19, 32)] == [3.3, 5.57]


def test_the_table_of_cords_is_what_the_copper_resists_at_sixty_degrees() -> None:
    plain = [three(2 * resistance_mohm_per_m(r20, 60)) for r20 in (7.98, 13.3)]
    tinned = [three(2 * resistance_mohm_per_m(r20, 60)) for r20 in (8.21, 13.7)]
    assert plain == [18.5, 30.8]
    assert tinned == [19.0, 31.7]


def test_the_cable_of_a_fridge_by_the_plain_resistivity() -> None:
    """By EN 1648-2 alone 2.5 mm2 do; the greatest resistance that class 5 allows makes them lose more than 0.36 V."""
    least = area_for_drop_mm2(5.5, 4, 0.36, RHO_50)
    assert three(least) == 2.43
    assert smallest_area_mm2(least, AREAS) == 2.5
    assert three(drop_by_resistivity_v(5.5, 4, 2.5, RHO_50)) == 0.35
    assert three(drop_v(5.5, 4, 2.5, 7.98, RHO_50, 50)) == 0.393
    assert drop_v(5.5, 4, 4, 4.95, RHO_50, 50) < 0.36


def test_what_a_bundle_of_five_leaves() -> None:
    assert three(ampacity_a(18, bundle_share(5, BUNDLES), 1)) == 10.8
    assert three(ampacity_a(25, bundle_share(5, BUNDLES), 1)) == 15.0


def test_the_feed_of_a_two_kilowatt_inverter() -> None:
    load_a = charger_input_a(2000 / 230, 230, 0.88, 12.0)
    assert three(load_a) == 189
    lost = drop_by_resistivity_v(load_a, 1, 50, RHO_50)
    assert three(lost) == 0.151
    assert three(lost / 12 * 100) == 1.26


def test_the_input_of_a_charger_between_batteries() -> None:
    load_a = charger_input_a(30, 14.4, 0.90, 12.5)
    assert three(load_a) == 38.4
    by_share, by_volts = (area_for_drop_mm2(load_a, 6, volts, RHO_50) for volts in (0.375, 0.2))
    assert (three(by_share), smallest_area_mm2(by_share, AREAS)) == (24.4, 25)
    assert (three(by_volts), smallest_area_mm2(by_volts, AREAS)) == (45.8, 50)


def test_a_heater_that_lights() -> None:
    """20.4 A over 3 m of 4 mm2 behind 12 V: 2 x 3 x 20.4 x 4.95 / 1000 = 0.606 V are lost."""
    assert start_voltage_v(12, 20.4, 3, 4.95) == pytest.approx(12 - 0.60588)


def test_a_cord_behind_a_warm_panel() -> None:
    assert three(cord_ampacity_a(16, None, warmth_share(40, WARMTH), 1)) == 13.1
    assert cord_ampacity_a(16, 10, warmth_share(40, WARMTH), 1) == pytest.approx(8.2), "surrounded, and warm besides"
    assert warmth_share(36, WARMTH) == 0.82, "between two rows the warmer one counts"
    assert warmth_share(10, WARMTH) == 1


def test_the_shipped_tables_are_the_ones_of_the_cases(catalogue: Catalogue) -> None:
    rows = catalogue.tables["conductors"].rows
    assert {row[0]: row[1] for row in rows} == R20
    assert [tuple(row) for row in catalogue.tables["bundle-factors"].rows] == BUNDLES
    assert [tuple(row) for row in catalogue.tables["mains-cord-warmth"].rows] == WARMTH


# --- what holds of every cable


@given(load=loads, run=runs, longer=runs, volts=drops)
def test_a_longer_run_never_gets_a_thinner_cable(load: float, run: float, longer: float, volts: float) -> None:
    short, long = sorted((run, longer))
    assert area_for_drop_mm2(load, short, volts, RHO_50) <= area_for_drop_mm2(load, long, volts, RHO_50)


@given(load=loads, run=runs, volts=drops)
def test_the_least_section_loses_just_what_it_may(load: float, run: float, volts: float) -> None:
    area = area_for_drop_mm2(load, run, volts, RHO_50)
    if 0.3 <= area <= 500:
        assert drop_by_resistivity_v(load, run, area, RHO_50) == pytest.approx(volts)
        assert most_amps_for_drop_a(area, run, volts, RHO_50) == pytest.approx(load)


@given(load=loads, run=runs, area=areas)
def test_the_drop_is_never_told_better_than_either_sum(load: float, run: float, area: float) -> None:
    told = drop_v(load, run, area, R20[area], RHO_50, 50)
    assert told >= drop_by_resistivity_v(load, run, area, RHO_50)
    assert told >= drop_by_resistance_v(load, run, resistance_mohm_per_m(R20[area], 50))
    assert 1.07 <= told / drop_by_resistivity_v(load, run, area, RHO_50) <= 1.13


@given(load=loads, run=runs, thin=areas, thick=areas)
def test_a_thicker_cable_never_loses_more(load: float, run: float, thin: float, thick: float) -> None:
    thin, thick = sorted((thin, thick))
    assert drop_v(load, run, thick, R20[thick], RHO_50, 50) <= drop_v(load, run, thin, R20[thin], RHO_50, 50)


@given(least=st.floats(0.01, 130))
def test_the_section_bought_is_the_smallest_that_is_thick_enough(least: float) -> None:
    found = smallest_area_mm2(least, AREAS)
    enough = [area for area in AREAS if area >= least]
    assert found == (enough[0] if enough else None)


@given(few=st.integers(1, 99), many=st.integers(1, 99))
def test_a_larger_bundle_never_leaves_more(few: int, many: int) -> None:
    few, many = sorted((few, many))
    assert bundle_share(many, BUNDLES) <= bundle_share(few, BUNDLES)


@given(cool=st.floats(-20, 50), warm=st.floats(-20, 50))
def test_warmer_surroundings_never_leave_more(cool: float, warm: float) -> None:
    cool, warm = sorted((cool, warm))
    assert warmth_share(warm, WARMTH) <= warmth_share(cool, WARMTH)


@given(start=loads, run=runs, area=areas)
def test_volts_at_the_heater_are_those_of_the_battery_less_the_drop(start: float, run: float, area: float) -> None:
    lost = drop_by_resistance_v(start, run, R20[area])
    if lost < 12:
        assert start_voltage_v(12, start, run, R20[area]) == pytest.approx(12 - lost)
    else:
        with pytest.raises(OutsideValidity):
            start_voltage_v(12, start, run, R20[area])


# --- outside validity


@pytest.mark.parametrize("bad", [0, -1, math.nan, math.inf, -math.inf, 1e9])
def test_absurd_numbers_are_named_and_never_answered(bad: float) -> None:
    for work in (
        lambda: area_for_drop_mm2(bad, 5, 0.2, RHO_50),
        lambda: area_for_drop_mm2(60, bad, 0.2, RHO_50),
        lambda: area_for_drop_mm2(60, 5, bad, RHO_50),
        lambda: area_for_drop_mm2(60, 5, 0.2, bad),
        lambda: drop_by_resistivity_v(60, 5, bad, RHO_50),
        lambda: most_amps_for_drop_a(bad, 5, 0.2, RHO_50),
        lambda: drop_by_resistance_v(60, bad, 1),
        lambda: resistance_mohm_per_m(bad, 50),
        lambda: smallest_area_mm2(bad, AREAS),
        lambda: bundle_share(bad, BUNDLES),
        lambda: ampacity_a(bad, 1, 1),
        lambda: ampacity_a(18, bad, 1),
        lambda: ampacity_a(18, 1, bad),
        lambda: charger_input_a(bad, 14.4, 0.9, 12.5),
        lambda: charger_input_a(30, 14.4, bad, 12.5),
        lambda: charger_input_a(30, 14.4, 0.9, bad),
        lambda: start_voltage_v(bad, 20, 3, 5),
        lambda: cord_drop_v(bad, 25, 19),
        lambda: cord_drop_v(16, bad, 19),
        lambda: cord_ampacity_a(bad, None, 1, 1),
        lambda: cord_ampacity_a(16, bad, 1, 1),
    ):
        with pytest.raises(OutsideValidity):
            work()


def test_a_run_in_millimetres_is_refused() -> None:
    with pytest.raises(OutsideValidity, match="one-way run m is 4000, but must be from 0 to 100"):
        drop_v(5.5, 4000, 2.5, 7.98, RHO_50, 50)


def test_a_cord_in_a_place_too_warm_for_it_carries_nothing() -> None:
    with pytest.raises(OutsideValidity):
        warmth_share(55, WARMTH)
    with pytest.raises(OutsideValidity):
        warmth_share(30, [])


@given(load=st.floats(0.1, 2000), cables=st.sampled_from([2, 3, 4]))
def test_equal_cables_share_a_load_alike_and_carry_all_of_it_together(load: float, cables: int) -> None:
    assert load_of_each_a(load, cables) * cables == pytest.approx(load)


@pytest.mark.parametrize(("load", "cables"), [(500, 1), (500, 0), (500, 5), (0, 2), (-1, 2), (math.nan, 2), (9e9, 2)])
def test_what_is_no_group_of_cables_shares_nothing(load: float, cables: int) -> None:
    with pytest.raises(OutsideValidity):
        load_of_each_a(load, cables)


@given(area=st.sampled_from([50.0, 70.0, 95.0, 120.0]), run=st.floats(0.1, 50), load=st.floats(1, 1000))
def test_two_equal_cables_lose_half_of_what_one_would(area: float, run: float, load: float) -> None:
    pair = drop_v(load_of_each_a(load, 2), run, area, 0.3, RHO_50, 50)
    assert pair == pytest.approx(drop_v(load, run, area, 0.3, RHO_50, 50) / 2)
