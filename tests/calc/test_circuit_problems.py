"""What the circuit schedule says of bad figures, of what feeds a circuit, and of tables that are missing."""

from __future__ import annotations

import math
from dataclasses import fields

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitCode, CircuitLine
from specbuilder.model.parts import Heat, Power
from tests.calc.circuits_scene import KETTLE, SMALL, TWIN, codes, line_of, part, run, schedule, without_table

NOTHING = {"area_mm2", "insulation_c", "carries_a", "fuse_a", "drop_v", "drop_pct", "start_v"}
numbers = st.one_of(
    st.sampled_from([0, -1, -0.0, math.nan, math.inf, -math.inf, 1e-300, 1e9, 1e308]), st.floats(0.01, 400)
)


def told_nothing(line: CircuitLine) -> bool:
    return all(getattr(line, name) is None for name in NOTHING)


# --- bad figures


NO_LENGTH, NO_LOAD = (0, -3, math.nan, math.inf, 4000), (0, -3, math.nan, math.inf, 1e6)
NO_SHARE, NO_STATED = (None, 0, -3, 100, math.nan), (0, -3, math.nan, math.inf)
BAD = (
    ("run_one_way_m", NO_LENGTH, CircuitCode.RUN_MISSING),
    ("load_a", NO_LOAD, CircuitCode.LOAD_MISSING),
    ("drop_limit_pct", NO_SHARE, CircuitCode.DROP_LIMIT_MISSING),
    ("own_area_mm2", NO_STATED, CircuitCode.STATED_FIGURE_ABSURD),
    ("own_fuse_a", NO_STATED, CircuitCode.STATED_FIGURE_ABSURD),
)


@pytest.mark.parametrize(("key", "bad", "code"), [(key, bad, code) for key, many, code in BAD for bad in many])
def test_a_figure_that_is_none_is_named_with_its_file(
    key: str, bad: float | None, code: CircuitCode, catalogue: Catalogue
) -> None:
    line = line_of(catalogue, SMALL, **{key: bad})
    assert codes(line) == {code}
    assert line.serious
    assert told_nothing(line)
    assert str(line.origin) == "options/kitchen.toml:12"


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
