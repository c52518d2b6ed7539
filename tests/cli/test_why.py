"""``why``: reasons as numbered chains, and why something is in when all is well."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli.counter import Counter

ROOT = Path(__file__).parents[2]
FAMILY = str(ROOT / "examples/saturday-family.toml")
CLASHING = str(ROOT / "examples/wide-bench-wrong-roof.toml")


@pytest.fixture
def house(counter: Counter, tmp_path: Path) -> Counter:
    """A command line on the shipped rules."""
    return Counter(tmp_path, counter._capture, rules=ROOT / "rules")


def test_why_something_is_in_when_all_is_well(job: Counter) -> None:
    told = job("why", "1", "gas-bundle").out
    assert told[0].startswith("Gas bundle, chosen, ")
    assert told[1].startswith("You took it, ")
    assert told[1].endswith(" With it came Gas alarm.")
    assert len(told) == 2


def test_a_broken_limit_as_a_numbered_chain_with_its_largest_entries(house: Counter) -> None:
    assert house("why", CLASHING, "bench-beside-kitchen").out[:7] == (
        "STOP, broken: Seats and kitchen side by side are too wide for the van: "
        "you choose these seats or this kitchen.",
        "1. Width of seats and kitchen side by side: 1,650 of 1,610 mm, over by 40 mm (ESTIMATE)",
        "2. of it, Bench Three, three belts, fixed: 1,210 mm",
        "3. of it, Side galley: 440 mm",
        "4. Bench Three, three belts, fixed",
        "5. Side galley, right",
        "First taken: Bench Three, three belts, fixed.",
    )


def test_a_blocked_option_has_its_reasons_each_enough_by_itself(house: Counter) -> None:
    said = house("why", FAMILY, "bench-three")
    assert said.code == 0
    assert said.out[0].startswith("Bench Three, three belts, fixed, blocked")
    assert any(line.startswith("1. ") for line in said.out)
    told = json.loads("\n".join(house("why", FAMILY, "bench-three", "--json").out))
    assert told["state"] == "blocked"
    assert told["all_reasons"]
    assert told["all_reasons"][0] == {"reasons": told["reasons"], "cause": told["cause"]}
    assert isinstance(told["complete"], bool)
    starts = sum(line.startswith("1. ") for line in said.out)
    assert starts == len(told["all_reasons"])
    assert starts == 1 or sum(line.startswith("Reason ") for line in said.out) == starts


def test_a_ledger_answers_to_its_short_name_and_what_is_near_is_named(house: Counter) -> None:
    assert house("why", FAMILY, "rear axle").out == house("why", FAMILY, "rear-axle").out
    assert house("why", FAMILY, "nights").out == house("why", FAMILY, "battery-nights").out
    (said,) = [line for line in house("why", FAMILY, "nigths").err if "did you mean" in line]
    assert '"gas-nights"' in said


def test_a_minus_of_a_shown_figure_is_told_in_words(house: Counter) -> None:
    said = house("why", CLASHING.replace("wide-bench-wrong-roof", "winter-walkers"), "hook-up-watts").out
    (weak,) = [line for line in said if line.startswith("Left on a pitch of 6 A")]
    assert "too much, over by 1,811 W" in weak
