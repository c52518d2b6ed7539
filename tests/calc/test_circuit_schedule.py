"""The circuit schedule on the example builds and on every circuit of the catalogue, each figure worked out again."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitCode, CircuitLine
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.situation import Placed
from specbuilder.model.spec import OwnPart, Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.spec_files import read_spec_file
from tests.calc.circuits_scene import (
    KETTLE,
    LANTERN,
    ROOT,
    SMALL,
    TWIN,
    areas,
    carries_by_hand_a,
    codes,
    drop_by_hand_v,
    over_load,
    ratings,
    schedule,
    start_of,
    starts,
    table,
)

EXAMPLES = sorted((ROOT / "examples").glob("*.toml"))
each_example = pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)


def built(catalogue: Catalogue, path: Path) -> tuple[Spec, tuple[CircuitLine, ...]]:
    spec = read_spec_file(path, catalogue).spec
    return spec, evaluate(catalogue, spec).circuits


@pytest.fixture(scope="module")
def every_line(catalogue: Catalogue) -> tuple[CircuitLine, ...]:
    """Every circuit of the catalogue, each option beside each of three batteries, roof beds among them."""
    found: list[CircuitLine] = []
    for option in catalogue.options.values():
        for battery in (SMALL, LANTERN, TWIN):
            beside = () if option.group == "battery" else (battery,)
            lines = schedule(catalogue, option.id, *beside, "roof-bed-board-net-ladder")
            found += (line for line in lines if line.option == option.id)
    return tuple(found)


# --- what stands in it


@each_example
def test_every_circuit_of_every_choice_stands_in_it_once_for_each_of_its_count(
    path: Path, catalogue: Catalogue
) -> None:
    spec, lines = built(catalogue, path)
    expected: Counter[str] = Counter()
    given = {tag.partition("@")[0] for choice in spec.choices for tag in catalogue.options[choice.option].gives}
    for choice in spec.choices:
        for circuit in catalogue.options[choice.option].circuits:
            if not circuit.only_with or given & set(circuit.only_with):
                expected[circuit.id] += choice.count
    assert Counter(line.id for line in lines) == expected
    assert len({line.label for line in lines}) == len(lines)


def test_a_circuit_that_asks_for_another_part_waits_for_it(catalogue: Catalogue) -> None:
    assert not schedule(catalogue, "larchlid-short")
    assert [line.id for line in schedule(catalogue, "larchlid-short", "roof-bed-board-net-ladder")] == [
        "larchlid-short-c1"
    ]


@pytest.mark.parametrize(
    ("beside", "start"),
    [
        (("hook-up-bundle",), "consumer unit"),
        (("hook-up-bundle", "changeover-manual", "inverter-600"), "consumer unit"),
        (("hook-up-bundle", "changeover-manual", "inverter-2000"), "changeover"),
        (("hook-up-bundle", "changeover-automatic", "inverter-3000"), "changeover"),
        (("hook-up-bundle", "inverter-charger-2000"), "safety switch behind the inverter"),
        (("inverter-2000",), "safety switch behind the inverter"),
    ],
)
def test_a_hob_is_fed_by_one_thing_and_by_the_inverter_only_where_that_can_carry_it(
    beside: tuple[str, ...], start: str, catalogue: Catalogue
) -> None:
    lines = {line.id: line for line in schedule(catalogue, *beside, "induction-single")}
    assert lines["induction-single-c1"].from_point == start


def test_a_main_cable_without_a_fuse_carries_what_the_main_fuse_of_an_own_battery_lets_through(
    catalogue: Catalogue,
) -> None:
    sheet = OwnPart(mass_kg=20, continuous_a=200, capacity_ah=200, chemistry="LFP")
    own = Placed(option=catalogue.options[OptionId("battery-own")], owner=Owner.CUSTOMER, own_part=sheet)
    lines = {line.id: line for line in schedule(catalogue, own)}
    assert lines["battery-own-c1"].fuse_a == 250
    assert {lines[f"battery-own-c{n}"].area_mm2 for n in (1, 3, 4, 5)} == {95}


def test_the_lines_say_where_their_figures_are_written(every_line: tuple[CircuitLine, ...]) -> None:
    for line in every_line:
        text = (ROOT / "rules" / line.origin.file).read_text("utf-8").splitlines()[line.origin.line - 1 :]
        assert f'id = "{line.id}"' in text[:3]


def test_every_start_of_the_catalogue_is_in_the_table(every_line: tuple[CircuitLine, ...]) -> None:
    assert {line.from_point for line in every_line} <= set(starts())


# --- figures, worked out once more


def test_no_cable_loses_more_than_it_may(every_line: tuple[CircuitLine, ...]) -> None:
    for line in every_line:
        if line.area_mm2 is None or line.drop_v is None:
            assert CircuitCode.NO_CABLE_FITS in codes(line) or start_of(line)["feeds"] == "earth", line.label
            continue
        volts = line.load_w / line.load_a if line.bus == "solar" else 230 if line.bus == "230" else 12
        assert line.drop_v == pytest.approx(drop_by_hand_v(line, line.area_mm2))
        assert line.drop_pct == pytest.approx(line.drop_v / volts * 100)
        assert line.drop_limit_pct is not None
        assert line.drop_pct <= line.drop_limit_pct + 1e-9, line.label


def test_every_fuse_lies_between_load_and_cable(every_line: tuple[CircuitLine, ...]) -> None:
    fused = [line for line in every_line if line.fuse_a is not None]
    assert len(fused) > 200
    for line in fused:
        assert line.area_mm2 is not None
        assert line.insulation_c is not None
        assert line.fuse_a is not None
        carries = carries_by_hand_a(line, line.area_mm2, line.insulation_c)
        assert line.carries_a == pytest.approx(carries)
        assert over_load(line) * line.load_a <= line.fuse_a + 1e-9 <= carries + 2e-9, line.label


def test_who_has_no_fuse_says_why(every_line: tuple[CircuitLine, ...]) -> None:
    unfused = {line.id: line for line in every_line if line.fuse_a is None}
    for line in unfused.values():
        assert start_of(line)["fuse"] == "none", line.label
        assert line.fuse_place
    assert all(line.area_mm2 for line in unfused.values())


def before_a(line: CircuitLine, every_line: tuple[CircuitLine, ...]) -> float:
    """What the main fuses of its own part let through to a cable of the battery that has no fuse of its own."""
    if start_of(line)["fuse"] != "none" or start_of(line)["feeds"] != "leisure battery":
        return 0
    own = (other for other in every_line if other.option == line.option and start_of(other)["fuse"] == "main")
    return sum({other.label: other.fuse_a or 0 for other in own}.values())


def test_the_section_is_the_thinnest_that_passes_and_of_the_coolest_insulation(
    every_line: tuple[CircuitLine, ...], catalogue: Catalogue
) -> None:
    stated = {c.id: c.own_fuse_a for o in catalogue.options.values() for c in o.circuits}
    for line in every_line:
        if line.area_mm2 is None or line.insulation_c is None:
            continue
        limit_v = (line.drop_limit_pct or 0) * (line.volts_v or 0) / 100
        thinner = [(60.0, a) for a in areas(line)] if line.bus == "230" else [(70.0, a) for a in areas(line)]
        if line.insulation_c == 105:
            thinner += [(105.0, a) for a in areas(line) if a < line.area_mm2]
        else:
            thinner = [(bears, a) for bears, a in thinner if a < line.area_mm2]
        for bears, area in thinner:
            own, carries = stated[line.id], carries_by_hand_a(line, area, bears)
            protects = [own] if own else ratings(line) if start_of(line)["fuse"] != "none" else [carries]
            least_a = max(over_load(line) * line.load_a, before_a(line, every_line))
            fits = [r for r in protects if least_a <= r <= carries]
            assert not fits or drop_by_hand_v(line, area) > limit_v, (line.label, area)


def test_a_fuse_breaks_what_can_flow_or_one_before_it_does(every_line: tuple[CircuitLine, ...]) -> None:
    able = {row["kind"]: row["breaking_ka"] for row in table("fuses", "fuse-breaking")}
    for line in every_line:
        needed, here = line.breaking_needed_ka, line.breaking_ka
        if needed is None or line.fuse_a is None:
            continue
        assert here == able[line.fuse_kind]
        assert here is not None
        short = codes(line) & {CircuitCode.BREAKING_BACKED_UP, CircuitCode.BREAKING_CAPACITY_TOO_SMALL}
        assert bool(short) is (here < needed), line.label


def test_fuses_fed_by_the_starter_battery_lean_on_no_other(every_line: tuple[CircuitLine, ...]) -> None:
    fed = [line for line in every_line if start_of(line)["feeds"] == "starter battery"]
    assert fed
    for line in fed:
        assert line.breaking_needed_ka == 3
        assert CircuitCode.BREAKING_BACKED_UP not in codes(line), line.label


# --- some lines by hand


def test_some_lines_by_hand(catalogue: Catalogue) -> None:
    lines = {line.id: line for line in schedule(catalogue, KETTLE, "inverter-2000", "fridge-front-door", "dcdc-30")}
    told = {key: (line.area_mm2, line.fuse_a, line.fuse_kind) for key, line in lines.items()}
    assert told == {
        "battery-kettle-c1": (95, 250, "class T, 125 V"),  # 200 A: 250 A or more; 70 mm2 carry 216 A, 95 mm2 264 A
        "battery-kettle-c2": (50, 80, "strip fuse, 32 V"),  # 60 A over 2 m within 0.12 V: 35 mm2 lose 0.149 V
        "battery-kettle-c3": (95, None, ""),  # behind the main fuse of 250 A: 70 mm2 carry 216 A, 95 mm2 264 A
        "battery-kettle-c4": (95, None, ""),  # the negative as the positive
        "battery-kettle-c5": (95, None, ""),
        "inverter-2000-c1": (95, 250, "class T, 125 V"),  # 185.2 A: 231.5 A or more
        "inverter-2000-c2": (1.5, 10, "two-pole breaker"),
        "fridge-front-door-c1": (4, 7.5, "blade"),  # 2.5 mm2 may lose 0.393 V of 0.36 V
        "dcdc-30-c1": (35, 50, "strip fuse, 32 V"),  # 38.4 A over 6 m within 0.36 V: 25 mm2 lose 0.402 V
        "dcdc-30-c2": (35, 40, "strip fuse, 32 V"),  # 30 A over 5 m within 0.24 V: 25 mm2 lose 0.262 V
    }
    panel = 12.8 / (12.8 / 6 + 2 * 2 * 0.0178 / 50 * 1000)
    assert lines["fridge-front-door-c1"].breaking_needed_ka == pytest.approx(panel)
    assert [p.what for p in lines["fridge-front-door-c1"].problems] == ["battery-kettle-c2"]


def test_the_run_of_two_packs_is_two_cables_side_by_side(catalogue: Catalogue) -> None:
    """500 A before it: 120 mm2 carry 308 A, 450 A at 105 degrees; of a pair each has 250 A, and 70 mm2 carry 216 A."""
    lines = {line.id: line for line in schedule(catalogue, TWIN)}
    both = lines["battery-twin-c3"]
    assert lines["battery-twin-c1"].fuse_a == lines["battery-twin-c2"].fuse_a == 250
    assert (both.side_by_side, both.area_mm2, both.insulation_c, both.carries_a) == (2, 95, 70, 2 * 264)
    assert both.drop_v == pytest.approx(2 * 0.6 * 200 * 0.206e-3 * 1.1179)
    assert [(p.code, p.has, p.needs, p.serious) for p in both.problems] == [
        (CircuitCode.CABLES_SIDE_BY_SIDE, 264, 250, False)
    ]
    assert both.estimate


def test_no_working_example_has_a_circuit_to_settle_but_runs_to_measure(catalogue: Catalogue) -> None:
    """One of the others has no battery, and what its fuses must break is not known."""
    settle = {path.stem: _to_settle(built(catalogue, path)[1]) for path in EXAMPLES}
    measure = {CircuitCode.RUN_BELOW_STRAIGHT_LINE}
    assert {name: codes for name, codes in settle.items() if codes} == {
        "half-done-family": {CircuitCode.SHORT_CIRCUIT_UNKNOWN},
        "kettle-on-small-pack": measure,
        "right-door-muddle": measure,
        "wheelchair-day-van": measure,
        "winter-walkers": measure,
    }


def _to_settle(lines: tuple[CircuitLine, ...]) -> set[CircuitCode]:
    return {problem.code for line in lines for problem in line.serious}


def test_the_heater_is_sized_for_its_start_and_lights(catalogue: Catalogue) -> None:
    """20.4 A over 3 m of 10 mm2 lose 2 x 3 x 20.4 x 1.91 x 1.1179 / 1000 = 0.261 V of the 12.0 under load."""
    (heater,) = (line for line in schedule(catalogue, KETTLE, "air-heater-diesel-2") if "heater" in line.id)
    assert heater.area_mm2 == 10
    assert heater.start_v == pytest.approx(12 - 0.2613, abs=1e-3)
    (lead,) = (line for line in schedule(catalogue, LANTERN, "air-heater-diesel-2") if "heater" in line.id)
    assert lead.start_v == pytest.approx(11.5 - 0.2613, abs=1e-3)


def test_a_large_inverter_takes_cable_that_bears_more_warmth(catalogue: Catalogue) -> None:
    """284.1 A ask for 400 A; no cable of 70 degrees carries more than 308 A."""
    (feed,) = (line for line in schedule(catalogue, TWIN, "inverter-3000") if line.id == "inverter-3000-c1")
    assert (feed.area_mm2, feed.insulation_c, feed.fuse_a) == (120, 105, 400)
    assert CircuitCode.HOT_CABLE_TAKEN in codes(feed)


def test_a_schedule_is_the_same_whoever_asks_and_how_often(catalogue: Catalogue) -> None:
    once, again = (schedule(catalogue, TWIN, "television", "side-galley") for _ in range(2))
    assert once == again
    assert catalogue.options[OptionId(TWIN)].id in {line.option for line in once}
