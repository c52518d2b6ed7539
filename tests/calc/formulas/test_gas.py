"""What gas appliances take, how long bottles last, and the openings of their store."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.gas import (
    gas_days,
    gas_for_heat_kg,
    gas_g_per_h,
    round_hole_mm,
    small_store_duct_mm,
    store_vent_mm2,
    store_vent_pair_mm2,
    store_vent_single_mm2,
)
from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.calc.formulas.figures import significant

TABLES = read_rules(rules_folder()).tables
GROSS = {str(row[0]): float(row[1]) for row in TABLES["gases"].rows}
NET = {str(row[0]): float(row[2]) for row in TABLES["gases"].rows}
SIDES = st.floats(50, 2000)


def test_grams_an_hour_by_the_gas_and_the_basis_of_the_plate() -> None:
    assert significant(gas_g_per_h(1, GROSS["butane"]), gas_g_per_h(1, GROSS["propane"])) == (72.8, 71.5)
    assert significant(gas_g_per_h(1, NET["butane"]), gas_g_per_h(1, NET["propane"])) == (78.8, 77.6)
    assert significant(gas_g_per_h(2.8, GROSS["butane"])) == (204,)
    assert significant(gas_g_per_h(2.8, NET["butane"])) == (221,), "a gross plate read as net is wrong by 8 %"


def test_days_on_a_bottle() -> None:
    cooking = gas_for_heat_kg(1.125, 1, GROSS["butane"])
    assert significant(gas_days(2.75, 0.95, cooking)) == (31.9,)
    night = gas_for_heat_kg(9 * 0.9, 0.90, NET["propane"]) + gas_for_heat_kg(1.125, 1, GROSS["propane"])
    assert significant(gas_days(5.5, 0.95, night)) == (6.71,)


def test_openings_of_a_store() -> None:
    assert (store_vent_single_mm2(900, 650), store_vent_pair_mm2(900, 650)) == (11_700, 5_850)
    assert (store_vent_single_mm2(400, 350), store_vent_pair_mm2(400, 350)) == (10_000, 5_000)
    assert small_store_duct_mm(2, 5.5) == 20
    assert significant(round_hole_mm(10_000)) == (113,)


def test_openings_follow_the_table_of_the_house() -> None:
    (_, single, least), (_, each, least_each) = TABLES["gas-store"].rows
    for width, depth in ((900, 650), (400, 350), (1200, 800)):
        assert store_vent_single_mm2(width, depth) == max(float(single) * width * depth, float(least))
        assert store_vent_pair_mm2(width, depth) == max(float(each) * width * depth, float(least_each))


@given(SIDES, SIDES)
def test_the_opening_by_the_floor_is_that_by_its_sides(width: float, depth: float) -> None:
    floor = width * depth
    assert store_vent_mm2(floor, 0.02, 10_000) == pytest.approx(store_vent_single_mm2(width, depth))
    assert store_vent_mm2(floor, 0.01, 5_000) == pytest.approx(store_vent_pair_mm2(width, depth))
    for absurd in ((0, 0.02, 10_000), (floor, 0, 10_000), (floor, 2, 10_000), (floor, 0.02, 0)):
        with pytest.raises(OutsideValidity):
            store_vent_mm2(*absurd)


@given(SIDES, SIDES)
def test_a_pair_is_together_the_single_opening(width: float, depth: float) -> None:
    assert 2 * store_vent_pair_mm2(width, depth) == pytest.approx(store_vent_single_mm2(width, depth))
    assert store_vent_single_mm2(width, depth) == pytest.approx(store_vent_single_mm2(depth, width))


@given(st.floats(1, 1e6))
def test_a_round_hole_has_its_area(area: float) -> None:
    assert pi * (round_hole_mm(area) / 2) ** 2 == pytest.approx(area)


@given(st.floats(0.1, 30), st.floats(0.1, 10), st.floats(0.1, 20))
def test_power_for_a_time_is_heat(kwh_per_kg: float, power: float, hours: float) -> None:
    burnt_kg = gas_g_per_h(power, kwh_per_kg) * hours / 1000
    assert burnt_kg == pytest.approx(gas_for_heat_kg(power * hours, 1, kwh_per_kg))
    assert gas_days(burnt_kg, 1, burnt_kg) == pytest.approx(1)


@pytest.mark.parametrize("bottles", [(0, 5), (3, 5), (2, 7.1), (1, 0), (1, -2)])
def test_the_small_duct_is_for_small_bottles_only(bottles: tuple[int, float]) -> None:
    with pytest.raises(OutsideValidity):
        small_store_duct_mm(*bottles)


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: gas_g_per_h(1, 0),
        lambda: gas_g_per_h(-1, 13.74),
        lambda: gas_for_heat_kg(1, 0, 13.74),
        lambda: gas_for_heat_kg(-1, 1, 13.74),
        lambda: gas_days(2.75, 0.95, 0),
        lambda: gas_days(2.75, 1.5, 0.08),
        lambda: gas_days(-1, 0.95, 0.08),
        lambda: store_vent_single_mm2(0, 300),
        lambda: store_vent_pair_mm2(300, -300),
        lambda: round_hole_mm(0),
    ],
)
def test_absurd_figures_are_named(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()
