"""What the circuit schedule says of bad figures, of what the part's own paper asks for, and of what nobody knows."""

from __future__ import annotations

import math
from dataclasses import fields, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitBasis, CircuitCode, CircuitLine
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.parts import Heat, Power
from specbuilder.model.situation import Placed
from specbuilder.model.spec import OwnPart
from tests.calc.circuits_scene import (
    KETTLE,
    SMALL,
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
    without_table,
)

NOTHING = {"area_mm2", "insulation_c", "carries_a", "fuse_a", "drop_v", "drop_pct", "start_v"}
numbers = st.one_of(
    st.sampled_from([0, -1, -0.0, math.nan, math.inf, -math.inf, 1e-300, 1e9, 1e308]), st.floats(0.01, 400)
)


def told_nothing(line: CircuitLine) -> bool:
    return all(getattr(line, name) is None for name in NOTHING)


# --- bad figures


@pytest.mark.parametrize("bad", [0, -3, math.nan, math.inf, 4000])
def test_a_run_that_is_no_length_is_named_with_its_file(bad: float, catalogue: Catalogue) -> None:
    line = line_of(catalogue, SMALL, run_one_way_m=bad)
    assert codes(line) == {CircuitCode.RUN_MISSING}
    assert line.serious
    assert told_nothing(line)
    assert str(line.origin) == "options/kitchen.toml:12"


@pytest.mark.parametrize("bad", [0, -3, math.nan, math.inf, 1e6])
def test_a_load_that_is_none_is_named(bad: float, catalogue: Catalogue) -> None:
    line = line_of(catalogue, SMALL, load_a=bad)
    assert codes(line) == {CircuitCode.LOAD_MISSING}
    assert told_nothing(line)


@pytest.mark.parametrize("bad", [None, 0, -3, 100, math.nan])
def test_a_drop_that_is_no_share_is_named(bad: float | None, catalogue: Catalogue) -> None:
    line = line_of(catalogue, SMALL, drop_limit_pct=bad)
    assert codes(line) == {CircuitCode.DROP_LIMIT_MISSING}
    assert told_nothing(line)


@pytest.mark.parametrize("key", ["own_area_mm2", "own_fuse_a"])
@pytest.mark.parametrize("bad", [0, -3, math.nan, math.inf])
def test_a_stated_figure_that_is_none_is_named(key: str, bad: float, catalogue: Catalogue) -> None:
    line = line_of(catalogue, SMALL, **{key: bad})
    assert codes(line) == {CircuitCode.STATED_FIGURE_ABSURD}
    assert told_nothing(line)


@given(
    load=numbers,
    watts=numbers,
    length=numbers,
    limit=st.one_of(st.none(), numbers),
    area=st.one_of(st.none(), numbers),
    fuse=st.one_of(st.none(), numbers),
    bus=st.sampled_from(["dc", "vehicle", "solar", "230", "wireless"]),
    start=st.sampled_from(["12 V panel", "isolator", "leisure battery +", "panel", "consumer unit", "a new place"]),
    battery=st.sampled_from([SMALL, TWIN, None]),
)
def test_nothing_makes_it_fail_and_nothing_absurd_gets_a_figure(
    load: float,
    watts: float,
    length: float,
    limit: float | None,
    area: float | None,
    fuse: float | None,
    bus: str,
    start: str,
    battery: str | None,
    catalogue: Catalogue,
) -> None:
    line = line_of(
        catalogue,
        *([battery] if battery else []),
        load_a=load,
        load_w=watts,
        run_one_way_m=length,
        drop_limit_pct=limit,
        own_area_mm2=area,
        own_fuse_a=fuse,
        bus=bus,
        from_point=start,
    )
    for field in fields(line):
        value = getattr(line, field.name)
        if field.name in NOTHING and value is not None:
            assert math.isfinite(value)
            assert value > 0
    if not line.serious and line.fuse_a is not None:
        assert line.carries_a is not None
        assert load <= line.fuse_a + 1e-9 <= line.carries_a + 2e-9
        assert line.drop_pct is not None
        assert limit is not None
        assert line.drop_pct <= limit + 1e-6


@given(length=st.floats(0.1, 60), longer=st.floats(0.1, 60), load=st.floats(0.1, 150))
def test_a_longer_run_never_gets_a_thinner_cable(
    length: float, longer: float, load: float, catalogue: Catalogue
) -> None:
    short, long = (line_of(catalogue, KETTLE, run_one_way_m=m, load_a=load) for m in sorted((length, longer)))
    if long.area_mm2 is not None:
        assert short.area_mm2 is not None
        thin, thick = ((one.side_by_side, one.insulation_c, one.area_mm2) for one in (short, long))
        assert thin <= thick
    else:
        assert CircuitCode.NO_CABLE_FITS in codes(long)


def test_an_empty_window_takes_the_next_cable_and_says_so(catalogue: Catalogue) -> None:
    """9 A in a bundle of five over half a metre: 1.5 mm2 carry 10.8 A, and the fuse must be 11.25 A or more."""
    line = line_of(catalogue, KETTLE, load_a=9, run_one_way_m=0.5)
    assert (line.area_mm2, line.fuse_a) == (2.5, 15)
    (said,) = (p for p in line.problems if p.code is CircuitCode.FUSE_WINDOW_EMPTY_UNTIL)
    assert (said.has, said.needs, said.serious) == (1.5, 2.5, False)


# --- equal cables side by side


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


# --- what the part's own paper asks for


def test_the_part_s_own_figures_go_before_the_computed_ones(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, own_area_mm2=10, own_fuse_a=20)
    assert (line.area_mm2, line.fuse_a, line.basis, line.estimate) == (10, 20, CircuitBasis.STATED, False)
    assert not line.serious
    assert line_of(catalogue, KETTLE, own_fuse_a=20).area_mm2 == 4, "in a bundle of five 2.5 mm2 carry 15 A"
    assert line_of(catalogue, KETTLE, own_fuse_a=20).basis is CircuitBasis.FUSE_STATED
    assert line_of(catalogue, KETTLE, own_area_mm2=10).basis is CircuitBasis.SECTION_STATED
    assert line_of(catalogue, KETTLE).basis is CircuitBasis.COMPUTED


def test_a_stated_cable_thinner_than_the_sum_is_warned_of_and_stands(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, own_area_mm2=1.5)
    assert line.area_mm2 == 1.5
    assert codes(line) >= {CircuitCode.OWN_CABLE_SMALLER_THAN_COMPUTED, CircuitCode.DROP_ABOVE_LIMIT}
    (said,) = (p for p in line.problems if p.code is CircuitCode.OWN_CABLE_SMALLER_THAN_COMPUTED)
    assert (said.has, said.needs) == (1.5, 2.5)


def test_a_stated_fuse_that_does_not_protect_the_stated_cable(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, own_area_mm2=4, own_fuse_a=40)
    (said,) = (p for p in line.problems if p.code is CircuitCode.OWN_FUSE_ABOVE_CABLE)
    assert (said.has, said.needs) == (40, pytest.approx(45 * 0.6)), "even of 105 degrees it carries 27 A"


def test_a_stated_fuse_too_small_for_a_steady_load(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, own_fuse_a=5)
    (said,) = (p for p in line.problems if p.code is CircuitCode.OWN_FUSE_BELOW_LOAD)
    assert (said.has, said.needs) == (5, pytest.approx(5.25))
    assert line.fuse_a == 5


def test_a_stated_cable_without_a_fuse_that_protects_it(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, own_area_mm2=1, load_a=12, run_one_way_m=0.2)
    assert line.fuse_a is None
    assert CircuitCode.NO_FUSE_IN_WINDOW in codes(line)


def test_a_section_between_two_listed_ones_counts_as_the_thinner(catalogue: Catalogue) -> None:
    odd, listed = (line_of(catalogue, KETTLE, own_area_mm2=area) for area in (3, 2.5))
    assert (odd.area_mm2, odd.carries_a, odd.drop_v) == (3, listed.carries_a, listed.drop_v)
    thin = line_of(catalogue, KETTLE, own_area_mm2=0.4)
    assert CircuitCode.OWN_CABLE_NOT_IN_TABLE in codes(thin)
    assert thin.carries_a is thin.drop_v is None


def test_a_bonding_conductor_carries_no_load_and_needs_its_section(catalogue: Catalogue) -> None:
    bare = {"from_point": "earth bar of the consumer unit", "bus": "230", "load_a": 0, "load_w": 0}
    assert codes(line_of(catalogue, **bare, drop_limit_pct=None)) == {CircuitCode.EARTH_SECTION_MISSING}
    bond = line_of(catalogue, **bare, drop_limit_pct=None, own_area_mm2=4)
    assert (bond.area_mm2, bond.fuse_a, bond.problems) == (4, None, ())


# --- what feeds it


def test_no_battery_leaves_open_what_a_fuse_must_break(catalogue: Catalogue) -> None:
    line = line_of(catalogue)
    assert codes(line) == {CircuitCode.SHORT_CIRCUIT_UNKNOWN}
    assert line.breaking_needed_ka is None
    assert line.fuse_a == 7.5


def test_a_small_fuse_with_none_before_it_is_told(catalogue: Catalogue) -> None:
    """A battery of 6 kA with no main circuit in the schedule: nothing stands before a blade fuse of 7.5 A."""
    bare = part(run(from_point="leisure battery fuse block"), power=Power(battery_ah=100, short_circuit_ka=6))
    (line,) = schedule(catalogue, bare)
    (said,) = line.problems
    assert said.code is CircuitCode.BREAKING_CAPACITY_TOO_SMALL
    assert (said.has, said.needs, said.serious) == (1, 6, True)


def test_a_larger_one_is_then_taken_in_a_kind_that_breaks_it(catalogue: Catalogue) -> None:
    bare = part(
        run(from_point="leisure battery fuse block", load_a=24), power=Power(battery_ah=100, short_circuit_ka=6)
    )
    (line,) = schedule(catalogue, bare)
    assert (line.fuse_a, line.fuse_kind, line.serious) == (30, "strip fuse, 32 V", ())


def test_more_than_any_fuse_breaks_is_told(catalogue: Catalogue) -> None:
    bare = part(run(from_point="leisure battery +", load_a=100), power=Power(battery_ah=400, short_circuit_ka=30))
    (line,) = schedule(catalogue, bare)
    assert line.fuse_kind == "class T, 125 V"
    assert CircuitCode.BREAKING_CAPACITY_TOO_SMALL in codes(line)


def test_a_lithium_main_is_class_t_and_a_lead_one_may_be_a_terminal_fuse(catalogue: Catalogue) -> None:
    kinds = {key: schedule(catalogue, key)[0].fuse_kind for key in (SMALL, "battery-lantern", "battery-lead-200")}
    assert kinds == {
        SMALL: "class T, 125 V",
        "battery-lantern": "terminal fuse, 14 V",
        "battery-lead-200": "terminal fuse, 14 V",
    }


def test_a_heater_behind_a_thin_stated_cable_may_not_light(catalogue: Catalogue) -> None:
    heater = part(run(load_a=20.4, run_one_way_m=3, own_area_mm2=2.5), heat=Heat(start_a=20.4))
    (line,) = (one for one in schedule(catalogue, heater, KETTLE) if one.id == "pump-c1")
    (said,) = (p for p in line.problems if p.code is CircuitCode.HEATER_START_VOLTAGE_LOW)
    assert said.has == pytest.approx(12 - 2 * 3 * 20.4 * 7.98 * 1.1179 / 1000)
    assert said.needs == 11


def test_the_start_of_a_heater_goes_before_a_smaller_load(catalogue: Catalogue) -> None:
    heater = part(run(load_a=2, run_one_way_m=3), heat=Heat(start_a=20.4))
    (line,) = (one for one in schedule(catalogue, heater, KETTLE) if one.id == "pump-c1")
    assert (line.load_a, line.fuse_a) == (20.4, 30)


# --- the customer's own part


def test_the_sheet_of_an_own_part_sizes_its_circuit(catalogue: Catalogue) -> None:
    fridge = catalogue.options[OptionId("fridge-own")]
    sheet = Placed(option=fridge, owner=Owner.CUSTOMER, own_part=OwnPart(watts_w=120))
    (line,) = (one for one in schedule(catalogue, sheet, KETTLE) if one.option == fridge.id)
    assert (line.load_w, line.load_a) == (120, 10)
    assert CircuitCode.OWN_PART_FIGURES not in codes(line)


def test_an_own_part_without_a_sheet_is_sized_by_the_catalogue_and_says_so(catalogue: Catalogue) -> None:
    fridge = catalogue.options[OptionId("fridge-own")]
    for sheet in (None, OwnPart(mass_kg=20)):
        theirs = Placed(option=fridge, owner=Owner.CUSTOMER, own_part=sheet)
        (line,) = (one for one in schedule(catalogue, theirs, KETTLE) if one.option == fridge.id)
        assert line.load_a == fridge.circuits[0].load_a
        assert CircuitCode.OWN_PART_FIGURES in codes(line)


def test_a_sheet_of_no_watts_is_a_load_that_is_missing(catalogue: Catalogue) -> None:
    theirs = Placed(option=catalogue.options[OptionId("fridge-own")], owner=Owner.CUSTOMER, own_part=OwnPart(watts_w=0))
    (line,) = schedule(catalogue, theirs)
    assert CircuitCode.LOAD_MISSING in codes(line)


# --- tables


@pytest.mark.parametrize(
    "name",
    [
        "conductors", "bundle-factors", "place-factors", "copper", "mains-cords", "mains-cord-warmth", "mains-in-walls",
        "cable-starts", "cable-settings", "fuse-ratings", "breaker-ratings", "fuse-breaking", "main-fuses",
        "fuse-rules", "battery-kinds",
    ],
)  # fmt: skip
def test_a_table_that_is_missing_is_named_and_nothing_is_worked_out(name: str, catalogue: Catalogue) -> None:
    lines = schedule(without_table(catalogue, name), KETTLE, "television")
    assert len(lines) == 6
    for line in lines:
        assert [(p.code, p.what) for p in line.problems] == [(CircuitCode.TABLE_MISSING, name)]
        assert told_nothing(line)


def test_a_place_the_table_does_not_know_is_run_as_the_house_runs_others(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, from_point="a new place")
    assert line.fuse_place == "within 200 mm of where it starts"
    assert line.breaking_needed_ka == 6
