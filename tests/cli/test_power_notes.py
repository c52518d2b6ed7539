"""``why`` of a ledger of the electrics tells its seasons; ``check --json`` says what cannot run together."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli.counter import Counter

ROOT = Path(__file__).parents[2]
WALKERS = str(ROOT / "examples/winter-walkers.toml")
WEAK = str(ROOT / "examples/kettle-on-small-pack.toml")


@pytest.fixture
def house(counter: Counter, tmp_path: Path) -> Counter:
    """A command line on the shipped rules."""
    return Counter(tmp_path, counter._capture, rules=ROOT / "rules")


@pytest.mark.parametrize("ledger", ["daily-energy", "battery-nights"])
def test_why_tells_the_three_seasons(house: Counter, ledger: str) -> None:
    said = house("why", WALKERS, ledger).out
    seasons = tuple(line for line in said if line.startswith(("summer ", "three-season ", "winter ")))
    assert seasons == (
        "summer        1,702 Wh a day, 6.2 nights with sun and driving counted in",
        "three-season  1,857 Wh a day, 4.2 nights with sun and driving counted in",
        "winter        2,012 Wh a day, 3.1 nights with sun and driving counted in",
    )
    told = json.loads("\n".join(house("why", WALKERS, ledger, "--json").out))
    assert set(seasons) <= set(told["reasons"])


def test_why_of_a_figure_beside_a_ledger_stands_alone(house: Counter) -> None:
    said = house("why", WALKERS, "refill-plug").out
    assert said[0].startswith("Hours on the plug from empty to full: 16 h")
    assert not any(line.startswith("winter ") for line in said)


def test_figures_beside_a_ledger_are_in_the_json(house: Counter) -> None:
    told = json.loads("\n".join(house("check", WALKERS, "--json").out))
    by_id = {figure["id"]: figure for figure in told["figures"]}
    assert by_id["usable-new"]["part_of"] == "battery-nights"
    assert by_id["usable-new"]["value"] == 4608
    assert by_id["inverter-start"]["bound"] == 4000


def test_what_cannot_run_together_is_data(house: Counter) -> None:
    told = json.loads("\n".join(house("check", WEAK, "--json").out))["cannot_run_together"]
    assert [(one["feed"], one["limit_w"]) for one in told] == [("battery", 1080)]
    assert [s["options"] for s in told[0]["sets"]] == [
        [{"id": "kettle-household", "count": 1}],
        [{"id": "induction-single", "count": 1}],
        [{"id": "microwave-800", "count": 1}],
    ]
