"""``circuits``: the schedule of an example and of bad rules, in words and as JSON."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

import pytest

from tests.cli.counter import Counter

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "examples"


@pytest.fixture
def house(counter: Counter, tmp_path: Path) -> Counter:
    """A command line on a copy of the shipped rules."""
    rules = tmp_path / "rules"
    shutil.copytree(ROOT / "rules", rules)
    return Counter(tmp_path, counter._capture, rules=rules)


def test_a_schedule_in_words(house: Counter) -> None:
    said = house("circuits", str(EXAMPLES / "saturday-family.toml"))
    assert said.code == 0
    assert re.match(r"12 V: \d+ runs", said.out[0])
    fridge = next(line for line in said.out if line.startswith("fridge-"))
    assert re.search(r"4 mm² +7\.5 A blade", fridge)
    assert not [line for line in said.out if line.startswith("To settle")]
    assert said.out[-1].startswith("Proposals for these loads, runs and bundles (ESTIMATE).")


def test_what_must_be_settled_is_told_to_the_shell(house: Counter) -> None:
    said = house("circuits", str(EXAMPLES / "half-done-family.toml"))
    assert said.code == 1
    assert any(line.startswith("To settle: Roof bed light feed (larchlid-short-c1), ") for line in said.out)


def test_two_cables_side_by_side_are_minded_and_need_no_settling(house: Counter) -> None:
    said = house("circuits", str(EXAMPLES / "off-grid-pair.toml"))
    assert said.code == 0
    assert any(re.search(r"battery-twin-c3 .* 2 x 95 mm² ", line) for line in said.out)
    assert any(line.startswith("Mind: Combined run of both packs (battery-twin-c3), ") for line in said.out)


def test_the_same_as_json(house: Counter) -> None:
    said = house("circuits", str(EXAMPLES / "off-grid-pair.toml"), "--json")
    told = json.loads("\n".join(said.out))
    assert said.code == 0
    assert (told["format"], told["number"]) == (1, "0105")
    lines = {line["mark"]: line for line in told["circuits"]}
    assert len(lines) == len(told["circuits"])
    assert (lines["battery-twin-c1"]["area_mm2"], lines["battery-twin-c1"]["fuse_a"]) == (95, 250)
    assert lines["battery-twin-c1"]["breaking_needed_ka"] == 12
    pair = lines["battery-twin-c3"]
    (problem,) = pair["problems"]
    assert (problem["code"], problem["serious"]) == ("cables-side-by-side", False)
    assert (pair["side_by_side"], pair["area_mm2"], pair["carries_a"]) == (2, 95, 528)
    assert lines["battery-twin-c1"]["side_by_side"] == 1


def test_the_protection_of_the_230_v_side_is_told_with_who_brings_it(house: Counter) -> None:
    said = house("circuits", str(EXAMPLES / "saturday-family.toml"))
    told = said.out[said.out.index("Protection of the 230 V side") :]
    assert any("behind the inlet: brought by Campsite plug kit." in line for line in told)
    assert any("behind the inverter: brought by Inverter of the Small pack" in line for line in told)
    assert any(line.startswith("Mind: one link of neutral and earth") for line in told)
    assert "a competent electrician" in told[-1]


def test_a_switch_that_nothing_brings_is_told_to_the_shell(house: Counter) -> None:
    said = house("circuits", str(EXAMPLES / "kettle-on-small-pack.toml"), "--json")
    points = {point["code"]: point for point in json.loads("\n".join(said.out))["mains_protection"]}
    assert said.code == 1
    assert points["inverter-residual-current-switch"]["stand"] == "to settle"
    assert points["charger-before-changeover"]["options"] == ["mains-charger-on-inverter"]
    assert (points["two-pole-breakers"]["has"], points["two-pole-breakers"]["needs"]) == (4, 4)


def test_a_bad_length_in_the_rules_is_named_with_file_and_line(house: Counter) -> None:
    path = house.rules / "options" / "kitchen.toml"
    text = path.read_text("utf-8")
    at = text.index('id = "side-galley-c1"')
    path.write_text(text[:at] + text[at:].replace("run_one_way_m = 4.5", "run_one_way_m = 0", 1), "utf-8")
    said = house("circuits", str(EXAMPLES / "saturday-family.toml"))
    assert said.code == 1
    number = text[:at].count("\n")
    assert (
        f"To settle: Water pump (side-galley-c1) in options/kitchen.toml:{number}: a one-way run of 0 m"
        in "\n".join(said.out)
    )


def test_a_spec_without_choices_runs_no_cable(counter: Counter) -> None:
    assert counter("new", "adults=2").code == 0
    assert counter("circuits", "1") == (counter("circuits", "0001"))
    assert counter("circuits", "1").out == ("No cable is run by what is chosen.",)
    assert counter("circuits", "1").code == 0
