"""``finish`` and ``switch``: shown first, taken as one step."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from tests.cli.counter import Counter, Said

WHOLE = "No question is undecided: there is nothing to finish."
SHAPE = {
    "required": [
        *("format", "open", "by", "edits", "takes", "price_gross_pence", "mass_kg", "hours", "weeks", "price_then"),
        *("proven", "still_broken", "unanswered", "verdict_then", "words"),
    ],
    "properties": {"proven": {"type": "boolean"}, "takes": {"minItems": 1}},
}
SWITCH_SHAPE = {
    "required": [
        *("format", "option", "edits", "price_gross_pence", "mass_kg", "hours", "weeks", "stays", "does_not_fit"),
        *("breaks", "clears", "cannot_tell", "ask_again", "complete", "price_now", "price_then", "words"),
    ],
    "properties": {"does_not_fit": {"items": {"required": ["option", "instead", "words"]}}},
}
ROOT = Path(__file__).parents[2]
FAMILY = str(ROOT / "examples/saturday-family.toml")


@pytest.fixture
def house(counter: Counter, tmp_path: Path) -> Counter:
    """A command line on the shipped rules."""
    return Counter(tmp_path, counter._capture, rules=ROOT / "rules")


@pytest.mark.parametrize(
    ("by", "named"),
    [("price", "cheapest"), ("mass", "lightest"), ("weeks", "soonest"), ("usual", "nearest to the house usual")],
)
def test_the_proposal_is_shown_and_nothing_is_changed(job: Counter, by: str, named: str) -> None:
    before = (job.jobs / "0001-r1.toml").read_bytes()
    said = job("finish", "1", "--by", by)
    assert (said.code, said.err) == (0, ())
    assert said.out[0] == f"Finished, {named}: 2 choices would be taken."
    assert "Base van: Hushwain." in said.out
    assert any(line.startswith("Together: ") for line in said.out)
    assert said.out[-1] == "Nothing is changed yet. To take all of it, add --take."
    assert (job.jobs / "0001-r1.toml").read_bytes() == before


def test_the_cheapest_and_the_usual_differ(job: Counter) -> None:
    assert "Galley: No kitchen." in job("finish", "1", "--by", "price").out
    assert any(line.startswith("Galley: Side galley") for line in job("finish", "1", "--by", "usual").out)
    assert any(line.startswith("Galley: Side galley") for line in job("finish", "1").out)


def test_it_is_taken_as_one_step_or_written_elsewhere(job: Counter, tmp_path: Path) -> None:
    out = tmp_path / "whole.toml"
    assert job("finish", "1", "--by", "price", "--to", str(out)).code == 0
    assert job("finish", str(out)) == Said(0, (WHOLE,), ())
    assert job("finish", "1").out[0].startswith("Finished")
    journal = job.jobs / "0001-r1.journal"
    edits = journal.read_text("utf-8").count('{"edit":')
    assert job("finish", "1", "--by", "price", "--take").code == 0
    assert journal.read_text("utf-8").count('{"edit":') == edits + 1
    assert job("finish", "1") == Said(0, (WHOLE,), ())
    assert job("finish", "1", "--take").out[0] == WHOLE


def test_the_proposal_for_programs(job: Counter) -> None:
    told = json.loads("\n".join(job("finish", "1", "--by", "price", "--json").out))
    jsonschema.validate(told, SHAPE)
    assert told["open"] is True
    job("finish", "1", "--by", "price", "--take")
    assert json.loads("\n".join(job("finish", "1", "--json").out))["open"] is False


def test_what_it_cannot_go_by(job: Counter) -> None:
    assert job("finish", "1", "--by", "colour") == Said(
        2, (), ('--by: "colour" is nothing to go by: use price, mass, weeks or usual.',)
    )


def test_another_base_van_is_shown_before_it_is_taken(house: Counter, tmp_path: Path) -> None:
    said = house("switch", FAMILY, "fenwain-long")
    assert said.code == 0
    assert said.out[0] == "Van: Fenwain Long, tailgate, door left instead of Fenwain Short, tailgate, door left."
    assert any(line.startswith("Stays: ") for line in said.out)
    assert any(line.startswith("Does not fit: Larchlid tilting roof, short") for line in said.out)
    told = json.loads("\n".join(house("switch", FAMILY, "fenwain-long", "--json").out))
    jsonschema.validate(told, SWITCH_SHAPE)
    assert [unfit["option"] for unfit in told["does_not_fit"]] == ["larchlid-short", "vents-none-added"]
    out = tmp_path / "long.toml"
    assert house("switch", FAMILY, "fenwain-long", "--to", str(out)).code == 0
    assert any("Fenwain Long" in line for line in house("show", str(out)).out)


@pytest.mark.parametrize(
    ("option", "code", "why"),
    [
        ("usb-pair", 2, "USB pair stands in for nothing: take it with set."),
        ("adults", 2, "adults is no option: name a base van, a roof, or another answer."),
        ("hushwainn", 2, 'Nothing is called "hushwainn": did you mean "hushwain"?'),
    ],
)
def test_what_cannot_be_switched(job: Counter, option: str, code: int, why: str) -> None:
    assert job("switch", "1", option) == Said(code, (), (why,))
