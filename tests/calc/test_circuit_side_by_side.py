"""Equal cables side by side: proposed where no single one does it, and each of the two takes its half."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitCode
from specbuilder.model.ids import OptionId
from tests.calc.circuits_scene import (
    KETTLE,
    TWIN,
    areas,
    carries_by_hand_a,
    codes,
    drop_by_hand_v,
    line_of,
    over_load,
    part,
    ratings,
    run,
    schedule,
)


@given(length=st.floats(0.1, 60), load=st.floats(1, 350), limit=st.floats(0.5, 10), bundle=st.booleans())
def test_two_cables_are_proposed_where_no_single_one_does_and_each_takes_its_half(
    length: float, load: float, limit: float, bundle: bool, catalogue: Catalogue
) -> None:
    start = "leisure battery fuse block" if bundle else "isolator"
    line = line_of(
        catalogue, KETTLE, run_one_way_m=length, load_a=load, load_w=load * 12, from_point=start, drop_limit_pct=limit
    )
    limit_v, least = limit * 0.12 + 1e-9, over_load(line) * load
    alone = replace(line, side_by_side=1)
    for area in areas(line):
        fits = [r for r in ratings(line) if least <= r <= carries_by_hand_a(alone, area, 105)]
        assert line.side_by_side == 1 or not fits or drop_by_hand_v(alone, area) > limit_v, area
    if line.side_by_side == 1:
        assert CircuitCode.CABLES_SIDE_BY_SIDE not in codes(line)
        return
    assert line.area_mm2 is not None
    assert line.insulation_c is not None
    assert line.fuse_a is not None
    assert line.drop_v is not None
    each = carries_by_hand_a(line, line.area_mm2, line.insulation_c) / 2
    assert each >= line.fuse_a / 2 - 1e-9
    assert line.drop_v <= limit_v
    assert line.area_mm2 >= 50
    (said,) = (p for p in line.problems if p.code is CircuitCode.CABLES_SIDE_BY_SIDE)
    assert said.has == pytest.approx(each)
    assert said.needs == pytest.approx(line.fuse_a / 2)
    assert not said.serious
    assert line.estimate


def test_where_not_even_two_cables_do_it_is_to_be_settled(catalogue: Catalogue) -> None:
    """300 A over 6 m within 0.12 V: two of 120 mm2 lose 2 x 6 x 150 x 0.161 x 1.1179 / 1000 = 0.324 V."""
    line = line_of(catalogue, TWIN, from_point="isolator", load_a=300, run_one_way_m=6, drop_limit_pct=1)
    assert (line.area_mm2, line.side_by_side) == (None, 1)
    assert [(p.code, p.has, p.serious) for p in line.problems] == [(CircuitCode.NO_CABLE_FITS, 120, True)]


def test_no_mains_cord_is_doubled(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, bus="230", from_point="consumer unit", load_a=16, run_one_way_m=90)
    assert (line.area_mm2, line.side_by_side) == (None, 1)
    assert CircuitCode.NO_CABLE_FITS in codes(line)


def test_a_pair_carries_what_the_main_fuses_before_it_let_through(catalogue: Catalogue) -> None:
    """Stated main fuses of 300 A let 600 A through: 300 A each ask for 120 mm2, which carry 308 A."""
    twin = catalogue.options[OptionId(TWIN)]
    mains = tuple(replace(c, own_fuse_a=300) if "main" in c.circuit else c for c in twin.circuits)
    lines = {line.id: line for line in schedule(catalogue, replace(twin, circuits=mains))}
    assert [lines[f"battery-twin-c{n}"].fuse_a for n in (1, 2)] == [300, 300]
    assert (lines["battery-twin-c3"].side_by_side, lines["battery-twin-c3"].area_mm2) == (2, 120)


def test_what_two_cables_feed_may_draw_more_into_a_fault_than_one_would(catalogue: Catalogue) -> None:
    pair = part(run(from_point="isolator", to_point="12 V panel", load_a=150, run_one_way_m=12, drop_limit_pct=3))
    fed = replace(part(run(id="fed-c1", load_a=5)), id=OptionId("fed"))
    (feed,) = (line for line in schedule(catalogue, pair, TWIN) if line.id == "pump-c1")
    assert feed.side_by_side == 2
    assert feed.area_mm2 is not None
    behind = next(line for line in schedule(catalogue, pair, fed, TWIN) if line.id == "fed-c1")
    assert behind.breaking_needed_ka == pytest.approx(12.8 / (12.8 / 12 + 2 * 12 * 0.0178 / (2 * feed.area_mm2) * 1000))
