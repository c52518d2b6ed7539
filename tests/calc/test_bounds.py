"""At the bound, just over it, with nothing to measure, and with something not known."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from specbuilder.calc import read_all
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.kinds import Anchor, RoofPart, Sense, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.parts import Heat, Position, Power, Space
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span, point
from tests import worlds
from tests.calc.random_worlds import situations
from tests.calc.scene import SHORT, catalogue, facts, situation

DATUM_490 = Position(anchor=Anchor.DATUM, x_mm=490, y_mm=-585, z_mm=420)
BENCH_BED = Space(berths_down=2, bed_length_mm=1880, bed_width_mm=1100)
ROOF_BED = Space(berths_up=2, bed_length_mm=1900, bed_width_mm=1150, roof_bed_rating_kg=150)
LID = Space(height_above_roof_mm=75, roof_allow_closed_kg=50, roof_allow_raised_kg=8)
PANEL = Space(roof_part=RoofPart.TOP, roof_mass_kg=4, height_above_roof_mm=25)
LIGHT = Space(roof_part=RoofPart.FIXED, roof_mass_kg=4, height_above_roof_mm=120)
RULES = catalogue(
    [
        worlds.option("bench-near", "bench", space=Space(front_x_mm=690, belts=2, cross_width_mm=1170)),
        worlds.option("bench-far", "bench", space=Space(front_x_mm=710, belts=2, cross_width_mm=1171)),
        worlds.option("bench-none", "bench"),
        worlds.option("set-back", "seat-extras", space=Space(bench_shift_mm=80)),
        worlds.option("seat-turns", "seat-extras", space=Space(swivel_sweep_x_mm=650)),
        worlds.option(
            "fridge-door", "fridge", gives="front-door-fridge", space=Space(length_mm=400), position=DATUM_490
        ),
        worlds.option("fridge-drawer", "fridge", space=Space(length_mm=440), position=DATUM_490),
        worlds.option("galley", "galley", space=Space(way_out_take_mm=520, cross_width_mm=440)),
        worlds.option("cab", "cab", space=Space(belts=2)),
        worlds.option("bed", "bed", needs=("bed-from-bench",), space=BENCH_BED),
        worlds.option("board", "bed", space=ROOF_BED),
        worlds.option("no-bed", "bed"),
        worlds.option("lid", "roof", gives="elevating-roof", space=LID),
        worlds.option("steel", "roof"),
        worlds.option("panel", "solar", max_count=3, space=PANEL),
        worlds.option("light", "solar", space=LIGHT),
        worlds.option("bottle", "gas", heat=Heat(gas_bottles=2)),
        worlds.option("bottles", "gas", heat=Heat(gas_bottles=3)),
        worlds.option("battery-200", "battery", power=Power(battery_ah=200)),
        worlds.option("battery-none", "battery"),
        worlds.option("box", "place", space=Space(max_ah=200)),
        worlds.option("small-box", "place", space=Space(max_ah=100)),
        worlds.option("nowhere", "place"),
        worlds.option("hob", "hob", heat=Heat(pickups_used=1)),
        worlds.option("tap", "tap", heat=Heat(pickups_supplied=1)),
        worlds.option("cloth", "cloth", lead_weeks=9),
    ],
    [worlds.group("seat-extras", any_=8), worlds.group("solar", any_=6)],
)


def read(id_: str, *choices: str | Placed, **how: object) -> Reading:
    """One ledger of these choices."""
    return read_all(situation(RULES, *choices, **how))[LedgerId(id_)]  # type: ignore[arg-type]  # as situation() takes them


def several(name: str, count: int) -> Placed:
    return Placed(option=next(o for o in RULES.options.values() if o.id == name), count=count)


@pytest.mark.parametrize(
    ("ledger", "choices", "value", "verdict"),
    [
        ("swivel-gap", ["bench-near", "seat-turns"], 40, Verdict.HOLDS),
        ("swivel-gap", ["bench-far", "seat-turns"], 60, Verdict.HOLDS),
        ("fridge-door-gap", ["bench-far", "fridge-door"], 20, Verdict.HOLDS),
        ("fridge-door-gap", ["bench-near", "fridge-door"], 0, Verdict.BROKEN),
        ("fridge-door-gap", ["bench-near", "set-back", "fridge-door"], 80, Verdict.HOLDS),
        ("way-out", ["galley"], 500, Verdict.HOLDS),
        ("cross-width", ["bench-near", "galley"], 1610, Verdict.HOLDS),
        ("cross-width", ["bench-far", "galley"], 1611, Verdict.BROKEN),
        ("belts", ["cab", "bench-near"], 4, Verdict.HOLDS),
        ("belts", ["cab"], 2, Verdict.BROKEN),
        ("berths", ["bed"], 2, Verdict.BROKEN),
        ("berths", ["bed", "board"], 4, Verdict.HOLDS),
        ("bed-length", ["bed"], 1880, Verdict.HOLDS),
        ("bed-length", ["bed", "set-back"], 1800, Verdict.BROKEN),
        ("bed-length", ["board", "set-back"], 1900, Verdict.HOLDS),
        ("bed-width", ["bed", "board"], 2250, Verdict.HOLDS),
        ("bed-width", ["bed"], 1100, Verdict.BROKEN),
        ("roof-bed-load", ["board"], 60, Verdict.HOLDS),
        ("gas-bottles", ["bottle"], 2, Verdict.HOLDS),
        ("gas-bottles", ["bottles"], 3, Verdict.BROKEN),
        ("battery-box", ["battery-200", "box"], 200, Verdict.HOLDS),
        ("battery-box", ["battery-200", "small-box"], 200, Verdict.BROKEN),
        ("fuel-pickups", ["hob"], 1, Verdict.BROKEN),
        ("fuel-pickups", ["hob", "tap"], 1, Verdict.HOLDS),
        ("closed-height", ["lid"], 2065, Verdict.HOLDS),
        ("closed-height", ["light"], 2110, Verdict.BROKEN),
        ("closed-height", ["lid", "panel"], 2090, Verdict.HOLDS),
        ("closed-height", ["lid", "light"], 2110, Verdict.BROKEN),
        ("lead-weeks", ["cloth"], 9, Verdict.HOLDS),
        ("quote-age", [], 0, Verdict.HOLDS),
    ],
)
def test_settled_builds(ledger: str, choices: list[str], value: float, verdict: Verdict) -> None:
    reading = read(ledger, *choices)
    assert reading.value == point(value)
    assert reading.verdict is verdict
    assert reading.applies
    assert not reading.lacks


def test_what_stands_on_top_rides_on_a_roof_that_lifts() -> None:
    assert read("roof-load-raised", several("panel", 2), "lid").verdict is Verdict.HOLDS
    broken = read("roof-load-raised", several("panel", 3), "lid")
    assert broken.verdict is Verdict.BROKEN
    assert [(e.option, e.amount, e.count) for e in broken.entries] == [("panel", point(12), 3)]
    closed = read("roof-load-closed", several("panel", 3), "lid", "light")
    assert (closed.value, closed.bound) == (point(16), point(50))
    assert read("roof-load-closed", several("panel", 3)).bound == point(120)


def test_an_age_of_30_days_is_the_last_that_holds() -> None:
    assert read("quote-age", facts_=facts(age_days=30)).verdict is Verdict.HOLDS
    assert read("quote-age", facts_=facts(age_days=31)).verdict is Verdict.BROKEN


@pytest.mark.parametrize(
    ("ledger", "choices"),
    [
        ("swivel-gap", ["bench-near"]),
        ("swivel-gap", ["seat-turns"]),
        ("fridge-door-gap", ["bench-near", "fridge-drawer"]),
        ("bed-length", ["bench-near"]),
        ("roof-load-raised", ["panel", "steel"]),
        ("roof-bed-load", ["bed"]),
        ("battery-box", ["box"]),
    ],
)
def test_with_nothing_to_measure_nothing_breaks(ledger: str, choices: list[str]) -> None:
    reading = read(ledger, *choices, facts_=facts(unknown=["sleepers_upstairs_kg", "tallest_sleeper_mm"]))
    assert not reading.applies
    assert reading.value is None
    assert reading.verdict is Verdict.HOLDS
    assert not reading.lacks


@pytest.mark.parametrize(
    ("ledger", "key"),
    [
        ("closed-height", "parking_limit_mm"),
        ("price-gross", "ceiling_gross_pence"),
        ("lead-weeks", "weeks_wanted"),
    ],
)
def test_a_bound_nobody_named_is_no_bound(ledger: str, key: str) -> None:
    named = read(ledger, "cloth", facts_=facts({key: 0}))
    assert named.bound is None
    assert not named.applies
    assert named.value is not None
    unknown = read(ledger, "cloth", facts_=facts(unknown=[key]))
    assert unknown.verdict is Verdict.CANNOT_TELL
    assert [lack.key for lack in unknown.lacks] == [key]


def test_while_the_bench_is_undecided_the_gap_cannot_be_told() -> None:
    reading = read("swivel-gap", "seat-turns", undecided={"bench": ["bench-near", "bench-far", "bench-none"]})
    assert reading.verdict is Verdict.CANNOT_TELL
    assert reading.value == Span(40, 60)
    assert [lack.group for lack in reading.lacks] == ["bench"]


def test_while_the_battery_or_its_place_is_undecided_the_box_cannot_be_told() -> None:
    battery = read("battery-box", "box", undecided={"battery": ["battery-200", "battery-none"]})
    assert battery.verdict is Verdict.CANNOT_TELL
    assert [lack.group for lack in battery.lacks] == ["battery"]
    place = read("battery-box", "battery-200", undecided={"place": ["small-box", "nowhere"]})
    assert place.verdict is Verdict.CANNOT_TELL
    assert place.bound is None
    assert [lack.group for lack in place.lacks] == ["place"]


def test_a_group_whose_answers_all_do_the_same_is_no_lack() -> None:
    reading = read("belts", "cab", undecided={"bench": ["bench-near", "bench-far"], "bed": ["bed", "no-bed"]})
    assert reading.verdict is Verdict.HOLDS
    assert not reading.lacks
    assert [(e.group, e.amount) for e in reading.entries if e.group] == [("bench", point(2))]


def test_a_slower_part_hides_what_is_undecided_below_it() -> None:
    quick = replace(RULES.options[next(iter(RULES.options))], id="quick", van=None, group="tap", lead_weeks=2)  # type: ignore[arg-type]
    rules = replace(RULES, options={**RULES.options, quick.id: quick})
    reading = read_all(situation(rules, "cloth", undecided={"tap": ["tap", "quick"]}))[LedgerId("lead-weeks")]
    assert reading.value == point(9)
    assert not reading.lacks
    assert [e.option for e in reading.entries] == ["cloth"]


def test_an_unknown_of_the_brief_widens_and_is_named() -> None:
    reading = read("total-mass", facts_=facts(unknown=["adults", "child_mass_kg"]))
    assert reading.value is not None
    assert reading.value.most - reading.value.least == pytest.approx(5 * 85 + 2 * 50)
    assert [lack.key for lack in reading.lacks] == ["adults", "child_mass_kg"]
    no_child = read("total-mass", facts_=facts(unknown=["child_mass_kg"], children=0))
    assert not no_child.lacks


def test_an_assumption_is_named_and_marks_its_line() -> None:
    reading = read("total-mass", facts_=facts(assumed=["child_mass_kg", "tallest_sleeper_mm"]))
    assert reading.assumed == (BriefKey("child_mass_kg"),)
    assert [e.label for e in reading.entries if e.assumed] == ["people"]
    assert read("bed-length", "bed", facts_=facts(assumed=["tallest_sleeper_mm"])).assumed == ("tallest_sleeper_mm",)


def test_without_any_van_left_nothing_is_said_of_it() -> None:
    reading = read("total-mass", van=None)
    assert reading.value is None
    assert reading.verdict is Verdict.CANNOT_TELL
    assert [lack.group for lack in reading.lacks] == ["base-van"]
    width = read("cross-width", "bench-near", van=None)
    assert width.value == point(1170)
    assert width.bound is None
    assert width.verdict is Verdict.CANNOT_TELL


@given(situations())
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
def test_what_lacks_something_never_simply_holds(now: Situation) -> None:
    for reading in read_all(now).values():
        if reading.verdict is Verdict.HOLDS and reading.applies and reading.lacks:
            assert reading.value is not None
            assert reading.bound is not None
            assert reading.room is not None
            assert reading.room.least >= 0
        if reading.sense is Sense.SHOWN and reading.lacks:
            assert reading.verdict is Verdict.CANNOT_TELL


def test_the_same_situation_reads_the_same() -> None:
    now = situation(RULES, "cab", "bench-near", "seat-turns", undecided={"bed": ["bed", "board", "no-bed"]})
    again = replace(now)
    assert read_all(now) == read_all(again) == read_all(now)
    assert now.van == SHORT
