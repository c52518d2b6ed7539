"""``compare``, and NUMBER@REVISION wherever a job is read."""

from __future__ import annotations

import json
import shutil
from dataclasses import replace
from datetime import date
from pathlib import Path

import jsonschema
import pytest

from specbuilder.model.edits import AnswerLine, Edit, SetCount, Take
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import JobState, Place
from specbuilder.model.spec import Spec
from specbuilder.office.house import stand_of
from specbuilder.office.variants import works_in
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.kept_rules import keep_rules
from specbuilder.storage.rules_files import read_rules
from specbuilder.storage.spec_files import read_spec_file, write_spec_file
from specbuilder.wording.side_by_side import works_rows
from tests.cli.counter import RULES, Counter, Said

HOUSE = Path(__file__).parents[2]
GALLEY, USB = OptionId("side-galley"), OptionId("usb-pair")


def built(*more: Edit) -> Spec:
    catalogue = read_rules(RULES)
    spec = Spec(number="0001")
    edits = (
        AnswerLine(key=BriefKey("adults"), value=2),
        Take(option=OptionId("hushwain")),
        Take(option=GALLEY, place=Place.LEFT),
        Take(option=OptionId("gas-bundle")),
        Take(option=USB, count=2),
    )
    for edit in (*edits, *more):
        spec = apply(catalogue, spec, edit).spec
    return spec


@pytest.fixture
def revised(counter: Counter) -> Counter:
    """Job 0001: quoted in revision 1, by rules that were kept, and changed in revision 2."""
    catalogue = read_rules(RULES)
    first = replace(built(), state=JobState.QUOTED)
    second = replace(built(SetCount(option=USB, count=3)), revision=2, replaces=1)
    counter.jobs.mkdir()
    for spec in (first, second):
        write_spec_file(counter.jobs / f"0001-r{spec.revision}.toml", catalogue, spec, evaluate(catalogue, spec))
    keep_rules(counter.jobs, RULES, catalogue.digest)
    return counter


@pytest.fixture
def next_year(revised: Counter) -> Counter:
    """The same a year later: the gas bundle is dearer, the galley has another name."""
    folder = revised.folder / "rules"
    shutil.copytree(RULES, folder)
    kitchen, firm = folder / "options" / "kitchen.toml", folder / "firm.toml"
    text = kitchen.read_text().replace("price_net_pence = 78000", "price_net_pence = 81000")
    kitchen.write_text(text.replace('name = "Side galley"', 'name = "Wall galley"'))
    firm.write_text(firm.read_text().replace("2031-04", "2032-04"))
    revised.rules = folder
    return revised


FIRST = (
    "A: job 0001, revision 1, quoted, catalogue 2031-04.",
    "Price of A: £3,907 VAT in, van not included.",
    "Weight of A: about 522 kg left.",
)


def test_two_revisions_line_by_line(revised: Counter) -> None:
    assert revised("compare", "1@1", "1@2") == Said(
        0,
        (
            *FIRST,
            "B: job 0001, revision 2, draft, not quoted, catalogue 2031-04.",
            "Price of B: £3,965 VAT in, van not included.",
            "Weight of B: about 522 kg left.",
            "From A to B: adds 58 pounds; parts take as long as before.",
            "More: 2 x USB pair; now 3 x USB pair: +£58.",
            "The same in both: 4 choices.",
        ),
        (),
    )


def test_the_same_twice_is_compared_as_well(revised: Counter) -> None:
    said = revised("compare", "1", "0001@2")
    assert said.code == 0
    assert said.out[-1] == "Nothing that is built, answered or worked out differs."


def test_what_was_quoted_is_held_against_its_own_rules_and_with_today_against_those_of_today(
    next_year: Counter,
) -> None:
    said = next_year("compare", "1@1", "--today")
    assert said.code == 0
    assert said.out == (
        *FIRST,
        "B: job 0001, revision 1, quoted, catalogue 2032-04.",
        "Price of B: £3,943 VAT in, van not included.",
        "Weight of B: about 522 kg left.",
        "A and B are not held against the same rules.",
        "From A to B: adds 36 pounds; parts take as long as before.",
        "Renamed: Side galley, left; now Wall galley, left.",
        "Dearer: Gas bundle: +£36.",
        "The same in both: 3 choices.",
    )


SHAPE = {
    "type": "object",
    "required": [
        *("format", "a", "b", "empty", "same", "difference", "rest", "changes", "answers", "van_data", "figures"),
        *("pieces", "findings_came", "findings_went", "doubts_came", "doubts_went", "words"),
    ],
    "properties": {
        "a": {"required": ["number", "revision", "state", "catalogue", "catalogue_digest", "verdict", "price"]},
        "changes": {
            "items": {
                "required": ["kind", "mark", "group", "before", "after", "words", "price_gross_pence", "hours"],
                "properties": {"before": {"$ref": "#/$defs/choice"}, "after": {"$ref": "#/$defs/choice"}},
            }
        },
    },
    "$defs": {
        "choice": {
            "oneOf": [
                {"type": "null"},
                {"required": ["option", "name", "place", "count", "whose", "own_part", "note"]},
            ]
        }
    },
}


def test_json_holds_everything_and_nothing_else_is_on_stdout(next_year: Counter) -> None:
    said = next_year("compare", "1@1", "1", "--today", "--json")
    assert said.code == 0
    content = json.loads("\n".join(said.out))
    jsonschema.validate(content, SHAPE)
    assert [(line["kind"], line["price_gross_pence"]) for line in content["changes"]] == [
        ("renamed", 0),
        ("other price", 3600),
        ("resized", 5760),
    ]
    assert content["difference"]["price_gross_pence"] == 9360
    assert content["rest"]["price_gross_pence"] == 0
    assert tuple(content["words"]) == next_year("compare", "1@1", "1", "--today").out


def test_files_are_compared_with_jobs(revised: Counter) -> None:
    out = revised.folder / "tried.toml"
    assert revised("set", "1@2", "no-galley", "--to", str(out)).code == 0
    said = revised("compare", "1", str(out))
    assert "Replaced: Side galley, left; now No kitchen: -£2,808, -92 kg, its part takes 4 weeks less." in said.out


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("1",), "Say what A is compared with: B, or --today for A under the rules of today."),
        (("1@3", "1"), "1@3: job 0001 has no such revision, it has revisions 1 and 2."),
        (("1@one", "1"), "1@one: job 0001 has no such revision, it has revisions 1 and 2."),
        (("1@", "1"), "1@: job 0001 has no such revision, it has revisions 1 and 2."),
    ],
)
def test_what_cannot_be_compared_is_said_with_its_cure(revised: Counter, words: tuple[str, ...], told: str) -> None:
    assert revised("compare", *words) == Said(2, (), (told,))


def test_a_job_or_file_that_is_not_there(revised: Counter) -> None:
    for name in ("9@1", str(revised.folder / "none.toml")):
        said = revised("compare", name, "1")
        assert (said.code, said.out) == (2, ())
        assert "it is not there" in said.err[0]


def test_an_old_revision_is_read_by_every_command_and_changed_by_none(revised: Counter) -> None:
    assert revised("check", "1@1").out[1].startswith("£3,907")
    assert "Extras: 2 x USB pair." in revised("show", "1@1").out
    before = {path.name: path.read_bytes() for path in revised.jobs.iterdir()}
    said = revised("set", "1@1", "usb-pair=4")
    assert said.code == 1
    assert said.err[-1] == "Nothing was changed."
    assert {path.name: path.read_bytes() for path in revised.jobs.iterdir()} == before


def test_the_help_says_what_the_exit_codes_and_the_json_mean(counter: Counter) -> None:
    said = counter("compare", "--help")
    text = " ".join(" ".join(said.out).split())
    assert said.code == 0
    assert "Exit code: 0 compared, whether anything differs or not; 2 A or B cannot be used." in text
    for key in SHAPE["required"]:
        assert key == "format" or key in text, key


def test_a_file_of_markup_and_control_characters_is_told_plainly(counter: Counter, tmp_path: Path) -> None:
    bad = tmp_path / "bad.toml"
    bad.write_text('format = 1\n[job]\nnumber = "[b]"\nnote = "\\u001b[2J"\n')
    said = counter("compare", str(bad), str(bad))
    assert (said.code, said.out) == (2, ())
    assert said.err


@pytest.mark.long
def test_what_works_away_from_a_plug_in_one_of_them_only_is_told_as_on_the_screens(counter: Counter) -> None:
    house = Counter(counter.folder, counter._capture, HOUSE / "rules")
    files = [str(HOUSE / "examples" / f"{name}.toml") for name in ("saturday-family", "off-grid-pair")]
    catalogue = read_rules(house.rules)
    works = [works_in(stand_of(catalogue, read_spec_file(Path(file), catalogue).spec), date.today()) for file in files]
    rows = works_rows(*works)
    assert rows, "these two differ there"
    found = json.loads(house("compare", *files, "--json").out[0])
    assert [(told["what"], told["before"], told["after"]) for told in found["away_from_a_plug"]] == [
        (row.label, row.a.text, row.b.text) for row in rows
    ]
    for row in rows:
        assert f"{row.label[0].upper()}{row.label[1:]}: {row.b.text}; was {row.a.text}." in found["words"]
