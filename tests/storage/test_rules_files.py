"""The reader of the rules folder. Broken files stand in ``tests/bad_files/rules``, each with its whole message."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specbuilder.model.ids import BriefKey, OptionId, RuleId
from specbuilder.model.rules import NEVER, AllOf, AnyOf, BriefIs, Compare
from specbuilder.storage.rules_files import read_rules
from tests.storage.rules_scene import BAD, faults_of

# --- broken files


@pytest.mark.parametrize("name", sorted(path.name for path in BAD.glob("*.toml")))
def test_a_broken_file_is_told_in_full(name: str, folder: Path) -> None:
    shutil.copy(BAD / name, folder)
    expected = [line[3:] for line in (BAD / name).read_text("utf-8").splitlines() if line.startswith("#! ")]
    assert faults_of(folder) == "\n".join(expected)


def test_all_faults_of_all_files_come_at_once(folder: Path) -> None:
    (folder / "a.toml").write_text('[caution.one]\ntext = 1\nshown_where = ""\nwho_must_do_or_sign = ""\n')
    (folder / "z.toml").write_text("[group.roof-type]\n")
    assert faults_of(folder) == (
        "a.toml:2: caution.one.text: needs a text, but this is the number 1: put it in quotes.\n"
        "z.toml:1: group.roof-type: the id group.roof-type stands already in catalogue.toml:43: "
        "give one of the two another id."
    )


def test_words_of_a_file_that_cannot_be_read_are_not_missed(folder: Path) -> None:
    """Without the broken file half of the other words would seem unknown; only what is surely wrong is told."""
    (folder / "catalogue.toml").write_text((folder / "catalogue.toml").read_text() + "[option.\n")
    (folder / "more.toml").write_text('[option.lamp]\ngroup = "lights"\nname = "Lamp"\nmass_kg = true\n')
    assert faults_of(folder) == (
        "catalogue.toml:109: this is no TOML: Invalid initial character for a key part at column 9. "
        "Mend it; the rest of this file was not read.\n"
        "more.toml:4: option.lamp.mass_kg: needs a number, but this is true: write a plain figure."
    )


@pytest.mark.parametrize(
    ("content", "words"),
    [
        pytest.param(
            b'[option.lamp]\nname = """Lamp\n',
            "more.toml:3: this is no TOML: Unterminated string before the file ends. "
            "Mend it; the rest of this file was not read.",
            id="unfinished: its last line is named",
        ),
        pytest.param(
            b"# fine\nname = '\xff'\n",
            "more.toml:2: this line is not UTF-8 text: save the file as UTF-8.",
            id="bytes that are no text",
        ),
        pytest.param(
            b"deep = " + b"[" * 5000 + b"]" * 5000,
            "more.toml: lists or tables lie too deep in one another: write them flatter.",
            id="lists too deep",
        ),
        pytest.param(
            b"[option.lamp]\nmass_kg = 0x" + b"f" * 5000 + b"\nname = 'Lamp'\ngroup = 3\n",
            "more.toml:2: option.lamp.mass_kg: the number is larger than anything counted here: check it.\n"
            "more.toml:4: option.lamp.group: needs a text, but this is the number 3: put it in quotes.",
            id="a number of too many digits",
        ),
        pytest.param(
            b"[option.lamp]\nmass_kg = " + b"9" * 5000 + b"\n",
            "more.toml:2: a number on this line has more digits than anything counted here: check it.",
            id="a number of thousands of digits",
        ),
    ],
)
def test_a_file_that_cannot_be_read_is_told_with_its_line(content: bytes, words: str, folder: Path) -> None:
    (folder / "more.toml").write_bytes(content)
    assert faults_of(folder) == words


# --- what a good folder gives


def test_the_smallest_catalogue(folder: Path) -> None:
    catalogue = read_rules(folder)
    assert catalogue.firm.name == "Pellowmarch Van Joinery"
    assert list(catalogue.options) == ["fenwain", "larchlid", "roof-as-it-is"]
    assert catalogue.rules[RuleId("weight-total")].origin.line == 68
    assert catalogue.brief[BriefKey("signing")].question is None
    assert catalogue.tables["conductors"].rows == ((1.5, "lamps"), (6.0, "pump"))


def test_a_van_is_an_option_without_price_or_mass(folder: Path) -> None:
    (van,) = read_rules(folder).vans
    assert (van.id, van.group, van.price_net_pence, van.mass_kg) == ("fenwain", "base-van", 0, 0)
    assert van.van is not None
    assert (van.name, van.gives) == (van.van.name, van.van.gives)
    assert str(van.origin) == "vans/fenwain.toml:1"


def test_a_van_may_name_the_parts_that_fit_it(folder: Path) -> None:
    text = (folder / "vans" / "fenwain.toml").read_text()
    more = text.replace("[van.fenwain]", '[van.new]\nfitting_parts = ["larchlid", "roof-as-it-is"]')
    (folder / "vans" / "new.toml").write_text(more)
    options = read_rules(folder).options
    assert options[OptionId("larchlid")].fits_vans == ("fenwain", "new")
    assert options[OptionId("roof-as-it-is")].fits_vans == ()


def test_advice_may_leave_out_its_second_half(folder: Path) -> None:
    text = (folder / "catalogue.toml").read_text()
    (folder / "catalogue.toml").write_text(
        text.replace('then = "total-mass <= bound"\n', "").replace('kind = "limit"', 'kind = "advice"')
    )
    assert read_rules(folder).rules[RuleId("weight-total")].then == NEVER


def test_a_figure_among_words_stays_a_word(folder: Path) -> None:
    (folder / "more.toml").write_text(
        '[brief.amps]\nask = "?"\ntype = "one of"\nquestion = 1\nvalues = ["6", "16"]\n'
        '[brief.inlet]\nask = "?"\ntype = "whole"\nquestion = 1\nasked_when = "brief.amps=16"\n'
    )
    expected = AnyOf((AllOf((BriefIs(BriefKey("amps"), Compare.EQUAL, "16"),)),))
    assert read_rules(folder).brief[BriefKey("inlet")].asked_when == expected


def test_files_come_in_the_order_of_the_walk(folder: Path) -> None:
    for name in ("a-first", "finish", "kitchen-gas", "kitchen", "roof", "zz"):
        (folder / f"{name}.toml").write_text(
            f'[caution.{name}]\ntext = ""\nshown_where = ""\nwho_must_do_or_sign = ""\n'
        )
    assert list(read_rules(folder).cautions) == [
        "roof",
        "kitchen-gas",
        "kitchen",
        "finish",
        "a-first",
        "cut-roof",
        "zz",
    ]


def test_the_digest_is_of_names_and_contents_alone(folder: Path, tmp_path: Path) -> None:
    before = read_rules(folder).digest
    moved = folder.rename(tmp_path / "elsewhere")
    (moved / "schema.json").write_text("{}")
    assert read_rules(moved).digest == before
    (moved / "firm.toml").write_text((moved / "firm.toml").read_text() + "\n")
    assert read_rules(moved).digest != before


def test_line_ends_and_marks_of_other_editors_are_taken(folder: Path) -> None:
    text = (folder / "catalogue.toml").read_bytes()
    (folder / "catalogue.toml").write_bytes(b"\xef\xbb\xbf" + text.replace(b"\n", b"\r\n"))
    assert read_rules(folder).rules[RuleId("weight-total")].origin.line == 68
