"""``fix``: ways out listed, taken, and refused."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from tests.cli.counter import Counter, Said

FINDING = "STOP, broken: You said no gas. It is about Gas bundle and gas (no gas). [no-gas-means-no-gas]"
NOTHING = "Nothing is broken at STOP or SIGN: there is nothing to find a way out of."
WAY_SHAPE = {
    "required": ["edits", "price_gross_pence", "mass_kg", "hours", "weeks", "clears", "breaks", "words", "number"],
    "properties": {
        "edits": {"type": "array", "minItems": 1, "items": {"required": ["edit"]}},
        "price_gross_pence": {"type": "integer"},
        "clears": {"type": "array", "items": {"type": "string"}},
    },
}
SHAPE = {
    "required": ["format", "goal", "rank", "ways", "within", "complete", "words"],
    "properties": {
        "ways": {"type": "array", "items": WAY_SHAPE},
        "within": {"type": "integer", "minimum": 0},
        "complete": {"type": "boolean"},
    },
}


@pytest.fixture
def clash(job: Counter) -> Counter:
    """Job 0001 with a gas bundle for somebody who wants no gas."""
    assert job("set", "1", "hushwain", "no-galley", "gas=no").code == 0
    return job


def _said(said: Said) -> dict[str, object]:
    told = json.loads("\n".join(said.out))
    assert isinstance(told, dict)
    return told


def test_the_ways_out_are_listed_one_fact_a_line(clash: Counter) -> None:
    said = clash("fix", "1")
    assert said.code == 1
    assert said.err == ()
    assert said.out[0] == FINDING
    assert said.out[1:5] == (
        "Way 1: None built in instead of Gas bundle.",
        "  takes off 984 pounds and 21 kilograms; parts take as long as before.",
        "  clears it.",
        "  lost: Gas alarm.",
    )
    assert said.out[-1] == "Nothing is changed yet. To take one, add --take and its number."
    assert "within" in said.out[-2] or "before" in said.out[-2]
    for thing in ("no-gas-means-no-gas", "gas-bundle"):
        assert clash("fix", "1", thing).out == said.out
    assert not any("\t" in line or "  " in line.lstrip() for line in said.out)


def test_nothing_to_mend(job: Counter) -> None:
    assert job("fix", "1") == Said(3, (NOTHING,), ())
    job("set", "1", "hushwain", "no-galley", "parking_limit_mm=2100")
    assert job("fix", "1") == Said(0, (NOTHING,), ())
    assert job("fix", "1", "gas-bundle").out == ("Gas bundle is in and clashes with nothing.",)
    assert job("fix", "1", "usb-pair").out == ("Nothing is in the way of USB pair: set takes it.",)
    assert job("fix", "1", "flame-needs-alarm").out == (
        'Nothing to mend: Holds. If it were broken: "You cannot smell it."',
    )
    assert job("fix", "1", "total-mass").out == ("Weight of the loaded van: nothing is broken there.",)


def test_the_ways_out_for_programs(clash: Counter) -> None:
    for rank in ("price", "mass", "hours", "weeks"):
        said = clash("fix", "1", "--json", "--rank", rank)
        told = _said(said)
        jsonschema.validate(told, SHAPE)
        assert (said.code, told["rank"]) == (1, rank)
        assert told["goal"] == {"clear": ["no-gas-means-no-gas"]}
    ways = told["ways"]
    assert isinstance(ways, list)
    assert ways[0]["edits"] == [{"edit": "take", "option": "no-cooking", "place": None, "count": 1}]
    assert (ways[0]["price_gross_pence"], ways[0]["clears"]) == (-98_400, ["no-gas-means-no-gas"])
    clash("set", "1", "no-cooking")
    jsonschema.validate(_said(clash("fix", "1", "--json")), SHAPE)


def test_a_way_is_taken_as_one_step_through_the_journal(clash: Counter) -> None:
    journal = clash.jobs / "0001-r1.journal"
    edits = journal.read_text("utf-8").count('{"edit":')
    said = clash("fix", "1", "--take", "1")
    assert said.code == 0
    assert said.out[0] == "Took None built in, instead of Gas bundle and Gas alarm."
    assert journal.read_text("utf-8").count('{"edit":') == edits + 1
    assert not (clash.jobs / "0001.lock").exists()
    assert clash("fix", "1").out == (NOTHING,)
    assert "Cooking: None built in." in clash("show", "1").out


def test_a_way_is_written_elsewhere(clash: Counter, tmp_path: Path) -> None:
    out = tmp_path / "mended.toml"
    before = (clash.jobs / "0001-r1.toml").read_bytes()
    taken = _said(clash("fix", "1", "no-gas-means-no-gas", "--take", "1", "--to", str(out), "--json"))
    jsonschema.validate(taken["taken"], WAY_SHAPE)
    assert (clash.jobs / "0001-r1.toml").read_bytes() == before
    assert clash("fix", str(out)).out == (NOTHING,)
    file = tmp_path / "broken.toml"
    clash("set", "1", "usb-pair", "--to", str(file))
    assert clash("fix", str(file), "--take", "1").code == 0
    assert clash("fix", str(file)).out == (NOTHING,)


@pytest.mark.parametrize(
    ("words", "code", "why"),
    [
        (("--take", "0"), 1, "1: There is no way 0: "),
        (("--take", "99"), 1, "1: There is no way 99: "),
        (("--take", "two"), 1, '1: "two" is no number of a way: --take 1 takes the first that fix lists.'),
        (("usb-pair", "--take", "1"), 1, "1: there is no way 1. Nothing is in the way of USB pair: set takes it."),
        (("--rank", "colour"), 2, '--rank: "colour" is nothing to go by: use price, mass, hours or weeks.'),
        (("--to", "x.toml"), 2, "--to says where to write what --take takes: name the way with --take N."),
        (("gas-lite",), 2, 'Nothing is called "gas-lite": did you mean "gas-light"?'),
        (("adults",), 2,
         "adults can be answered, not mended: name an option, a ledger, or a rule in brackets from check."),
    ],
)  # fmt: skip
def test_what_cannot_be_taken(clash: Counter, words: tuple[str, ...], code: int, why: str) -> None:
    before = (clash.jobs / "0001-r1.toml").read_bytes()
    said = clash("fix", "1", *words)
    assert (said.code, said.out) == (code, ())
    assert said.err[0].startswith(why)
    assert code == 2 or said.err[1:] == ("Nothing was changed.",)
    assert (clash.jobs / "0001-r1.toml").read_bytes() == before
    assert not (clash.jobs / "0001.lock").exists()


def test_where_only_an_answer_helps_no_way_is_invented(job: Counter) -> None:
    job("set", "1", "hushwain", "no-galley", "no-cooking", "gas=no")
    said = job("fix", "1", "gas-bundle")
    assert said.out[0].startswith("Gas bundle, blocked")
    assert said.out[1].startswith("No ")
    assert said.out[1].endswith(" why gives the reasons.")
    assert len(said.out) == 2


def test_set_says_what_it_broke_and_where_the_ways_out_are(job: Counter) -> None:
    job("set", "1", "gas-bundle")
    assert job("set", "1", "gas=no").out[:-1] == (
        "Answered: no gas.",
        "STOP now broken: You said no gas. fix lists the ways out.",
    )


def test_set_offers_a_way_out_behind_another_base_van(counter: Counter, tmp_path: Path) -> None:
    root = Path(__file__).parents[2]
    house = Counter(tmp_path, counter._capture, rules=root / "rules")
    said = house(
        "set", str(root / "examples/saturday-family.toml"), "fenwain-long", "--to", str(tmp_path / "long.toml")
    )
    assert said.out[1].startswith("STOP now broken: A part made for one van does not fit another")
    assert said.out[2].startswith("fix would offer: Larchlid tilting roof, long")
