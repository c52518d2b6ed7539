"""Openings that never shut."""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.fresh_air import (
    area_below_edge_pct,
    high_vent_in_wall_mm2,
    high_vent_met_share,
    high_vent_mm2,
    low_vent_mm2,
    needed_mm2,
    plan_area_m2,
    stack_flow_m3_per_h,
)
from specbuilder.calc.formulas.heat import air_change_loss_w_per_k
from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.calc.formulas.figures import significant

RULES = read_rules(rules_folder())
SIDES = st.integers(500, 9000)
AREAS = st.floats(100, 50_000)


@pytest.mark.parametrize(
    ("length", "width", "flame", "comes_to"),
    [
        (4904, 1904, True, (10_000, 20_000, 1_500)),
        (5304, 1904, True, (12_500, 25_000, 2_000)),
        (4904, 1904, False, (1_500, 3_000, 500)),
        (5000, 2000, True, (10_000, 20_000, 1_500)),
        (5000, 2000, False, (1_500, 3_000, 500)),
        (5001, 2000, True, (12_500, 25_000, 2_000)),
        (5001, 2000, False, (12_500, 25_000, 2_000)),
    ],
)
def test_areas_by_size_and_flame(length: int, width: int, flame: bool, comes_to: tuple[int, ...]) -> None:
    of = (high_vent_mm2, high_vent_in_wall_mm2, low_vent_mm2)
    assert tuple(area(length, width, flame) for area in of) == comes_to


def test_plan_areas() -> None:
    assert significant(plan_area_m2(4904, 1904), plan_area_m2(5304, 1904)) == (9.34, 10.1)


def test_roof_and_wall_together() -> None:
    assert high_vent_met_share(8000, 4000, 10_000) >= 1
    assert high_vent_met_share(8000, 3000, 10_000) < 1


def test_air_that_rises_through_a_full_set() -> None:
    flow = stack_flow_m3_per_h(2000, 12_500, 1.25, 20, -5)
    assert significant(flow, flow / 9.3555) == (6.31, 0.674)
    assert significant(air_change_loss_w_per_k(flow / 9.3555, 9.3555) * 25) == (52.8,)


def test_the_same_flow_from_the_pressure_of_two_columns() -> None:
    """The weight of cold air against that of warm air drives the same flow through both holes, one after the other."""
    cold, warm, height = 353.05 / 268.15, 353.05 / 293.15, 1.25
    drive = (cold - warm) * 9.81 * height
    resistance = warm / 2 * (1 / (0.6 * 2000e-6) ** 2 + 1 / (0.6 * 12_500e-6) ** 2)
    flow = sqrt(drive / resistance) * 3600
    assert stack_flow_m3_per_h(2000, 12_500, 1.25, 20, -5) == pytest.approx(flow, rel=0.03)


def test_the_tables_of_the_house_say_the_same() -> None:
    for up_to, high, wall, low in RULES.tables["vents-open-flame"].rows:
        side = int(sqrt(float(up_to)) * 1000)
        found = high_vent_mm2(side, side, True), high_vent_in_wall_mm2(side, side, True), low_vent_mm2(side, side, True)
        assert found == (high, wall, low)
    ((up_to, high, wall, low),) = RULES.tables["vents-sealed"].rows
    side = int(sqrt(float(up_to)) * 1000)
    assert (high_vent_mm2(side, side, False), high_vent_in_wall_mm2(side, side, False)) == (high, wall)
    assert low_vent_mm2(side, side, False) == low


def test_every_van_of_the_house_asks_for_what_its_size_needs() -> None:
    for option in RULES.vans:
        van = option.van
        assert van is not None
        size = van.length_mm, van.width_mm
        assert van.plan_area_m2 == pytest.approx(plan_area_m2(*size), abs=0.005)
        assert (van.vent_high_flame_mm2, van.vent_low_flame_mm2) == (
            high_vent_mm2(*size, True),
            low_vent_mm2(*size, True),
        )
        sealed = high_vent_mm2(*size, False), low_vent_mm2(*size, False)
        assert (van.vent_high_sealed_mm2, van.vent_low_sealed_mm2) == sealed


@given(SIDES, SIDES, SIDES, st.booleans())
def test_a_longer_van_never_needs_less_and_a_flame_never_helps(a: int, b: int, width: int, flame: bool) -> None:
    short, long = sorted((a, b))
    for area in (high_vent_mm2, low_vent_mm2):
        assert area(short, width, flame) <= area(long, width, flame)
        assert area(short, width, False) <= area(short, width, True)
        assert area(short, width, flame) == area(width, short, flame)


@given(AREAS, AREAS, AREAS)
def test_a_wall_counts_half(roof: float, wall: float, needed: float) -> None:
    assert high_vent_met_share(roof, wall, needed) == pytest.approx(high_vent_met_share(roof + wall / 2, 0, needed))


@given(AREAS, AREAS, st.floats(0.1, 3), st.floats(-20, 15), st.floats(0.1, 20))
def test_the_smaller_hole_rules_and_warmth_drives(
    low: float, high: float, height: float, outside: float, difference: float
) -> None:
    flow = stack_flow_m3_per_h(low, high, height, outside + difference, outside)
    assert 0 < flow <= stack_flow_m3_per_h(min(low, high), 1e12, height, outside + difference, outside) * (1 + 1e-9)
    assert flow == pytest.approx(stack_flow_m3_per_h(high, low, height, outside + difference, outside))
    assert stack_flow_m3_per_h(low, high, height, outside, outside) == 0


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: plan_area_m2(0, 1900),
        lambda: high_vent_mm2(4900, -1, True),
        lambda: low_vent_mm2(float("nan"), 1900, False),
        lambda: needed_mm2(0, 1500, True),
        lambda: needed_mm2(10_000, 0, False),
        lambda: high_vent_met_share(8000, 4000, 0),
        lambda: high_vent_met_share(-1, 4000, 10_000),
        lambda: stack_flow_m3_per_h(0, 12_500, 1.25, 20, -5),
        lambda: stack_flow_m3_per_h(2000, 12_500, -1, 20, -5),
        lambda: stack_flow_m3_per_h(2000, 12_500, 1.25, -5, 20),
        lambda: stack_flow_m3_per_h(2000, 12_500, 1.25, 20, -300),
    ],
)
def test_absurd_figures_are_named(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()


@given(st.floats(0.1, 30), st.floats(0, 1))
def test_below_an_edge_in_parts_of_it(edge: float, share: float) -> None:
    area = max(edge * share, 1e-6)
    assert area_below_edge_pct(edge, edge) == 0
    assert edge * (1 - area_below_edge_pct(area, edge) / 100) == pytest.approx(area)
    for absurd in ((0, edge), (edge * 1.01, edge), (1, 0), (float("nan"), edge)):
        with pytest.raises(OutsideValidity):
            area_below_edge_pct(*absurd)
