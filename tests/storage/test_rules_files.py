"""The reader of the rules folder. Broken files stand in ``tests/bad_files/rules``, each with its whole message."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest
import tomli_w
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from specbuilder.model.ids import BriefKey, OptionId, RuleId
from specbuilder.model.rules import NEVER, AllOf, AnyOf, BriefIs, Compare
from specbuilder.storage.rules_files import RulesFaults, read_rules
from specbuilder.storage.rules_tables import SECTIONS

BAD = Path(__file__).parent.parent / "bad_files" / "rules"
GOOD = BAD / "good"
FEW = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A copy of the smallest whole catalogue."""
    return Path(shutil.copytree(GOOD, tmp_path / "rules"))


def faults_of(folder: Path) -> str:
    """What the reader says; the test fails when it says nothing."""
    with pytest.raises(RulesFaults) as caught:
        read_rules(folder)
    assert [str(fault) for fault in caught.value.faults] == str(caught.value).split("\n")
    return str(caught.value)


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


def test_an_unfinished_file_is_told_with_its_last_line(folder: Path) -> None:
    (folder / "more.toml").write_text('[option.lamp]\nname = """Lamp\n')
    assert faults_of(folder) == (
        "more.toml:3: this is no TOML: Unterminated string before the file ends. "
        "Mend it; the rest of this file was not read."
    )


def test_bytes_that_are_no_text(folder: Path) -> None:
    (folder / "more.toml").write_bytes(b"# fine\nname = '\xff'\n")
    assert faults_of(folder) == "more.toml:2: this line is not UTF-8 text: save the file as UTF-8."


def test_lists_too_deep(folder: Path) -> None:
    (folder / "more.toml").write_text("deep = " + "[" * 5000 + "]" * 5000)
    assert faults_of(folder) == "more.toml: lists or tables lie too deep in one another: write them flatter."


def test_a_number_of_too_many_digits(folder: Path) -> None:
    (folder / "more.toml").write_text("[option.lamp]\nmass_kg = 0x" + "f" * 5000 + "\nname = 'Lamp'\ngroup = 3\n")
    assert faults_of(folder) == (
        "more.toml:2: option.lamp.mass_kg: the number is larger than anything counted here: check it.\n"
        "more.toml:4: option.lamp.group: needs a text, but this is the number 3: put it in quotes."
    )


def test_a_number_of_thousands_of_digits(folder: Path) -> None:
    (folder / "more.toml").write_text("[option.lamp]\nmass_kg = " + "9" * 5000 + "\n", encoding="utf-8")
    assert faults_of(folder) == (
        "more.toml:2: a number on this line has more digits than anything counted here: check it."
    )


# --- broken folders


def test_an_empty_folder(tmp_path: Path) -> None:
    (tmp_path / "rules").mkdir()
    (tmp_path / "rules" / "notes.json").write_text("{}")
    assert faults_of(tmp_path / "rules") == (
        "rules: there is no rule file in this folder: put the .toml files of the rules there."
    )


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    assert faults_of(tmp_path / "rules") == (
        "rules: the folder cannot be read (No such file or directory): look at its path and rights."
    )


def test_a_file_in_place_of_the_folder(tmp_path: Path) -> None:
    (tmp_path / "rules").write_text("")
    assert faults_of(tmp_path / "rules") == (
        "rules: the folder cannot be read (Not a directory): look at its path and rights."
    )


def test_a_file_that_cannot_be_opened(folder: Path) -> None:
    (folder / "odd.toml").mkdir()
    assert faults_of(folder) == (
        "odd.toml: this is a folder and its name is one of a rule file: rename it, or take it out."
    )


def test_what_is_no_file_is_told_and_never_waited_for(folder: Path) -> None:
    os.mkfifo(folder / "pipe.toml")
    (folder / "link.toml").symlink_to("nowhere")
    assert faults_of(folder) == (
        "link.toml: this link leads to no file: mend it, or take it out.\n"
        "pipe.toml: this is no regular file: take it out."
    )


def test_no_base_van(folder: Path) -> None:
    shutil.rmtree(folder / "vans")
    assert faults_of(folder) == (
        'catalogue.toml:58: option.larchlid.fits_vans[1]: there is no base van "fenwain"; '
        "add it in a [van.ID] table or correct the word.\n"
        "vans: there is no base van: add a file with a table [van.ID] in it."
    )


def test_nothing_asks_for_the_base_van(folder: Path) -> None:
    text = (folder / "catalogue.toml").read_text()
    (folder / "catalogue.toml").write_text(text.replace("[group.base-van]", "[group.body]"))
    assert faults_of(folder) == "options: nothing asks for the base van: add the table [group.base-van]."


def test_no_firm(folder: Path) -> None:
    (folder / "firm.toml").unlink()
    assert faults_of(folder) == "firm.toml: the firm is missing: add this file with a table [firm] in it."


def test_a_broken_firm(folder: Path) -> None:
    text = (folder / "firm.toml").read_text()
    (folder / "firm.toml").write_text(text.replace("vat_percent = 20", "vat = 20"))
    assert faults_of(folder) == (
        "firm.toml:1: firm.vat_percent: is missing: add it (a number).\n"
        'firm.toml:5: firm.vat: there is no such key here; did you mean "vat_percent"?'
    )


def test_days_of_work_that_make_no_dates(folder: Path) -> None:
    text = (folder / "firm.toml").read_text()
    (folder / "firm.toml").write_text(text + "work_days = []\nhours_per_day = 0\n")
    assert faults_of(folder) == (
        'firm.toml:10: firm.work_days: is empty, and dates of work need a day: name one, such as "mon".\n'
        "firm.toml:11: firm.hours_per_day: a working day of 0 hours makes no dates: "
        "write hours above 0, at most 24."
    )


def test_figures_of_the_firm_that_make_no_price_and_no_date(folder: Path) -> None:
    text = (folder / "firm.toml").read_text()
    (folder / "firm.toml").write_text(text.replace("vat_percent = 20", "vat_percent = 1e15"))
    assert faults_of(folder) == "firm.toml:5: firm.vat_percent: 1e+15 is not from 0 to 100: check it."
    (folder / "firm.toml").write_text(text.replace("vat_percent = 20", "vat_percent = 1e308"))
    assert faults_of(folder) == (
        "firm.toml:5: firm.vat_percent: the number is larger than anything counted here: check it."
    )


def test_a_day_of_work_that_is_no_day(folder: Path) -> None:
    (folder / "firm.toml").write_text((folder / "firm.toml").read_text() + 'work_days = ["mon", "toes"]\n')
    assert faults_of(folder) == (
        'firm.toml:10: firm.work_days[2]: "toes" is no word for this; use one of mon, tue, wed, thu, fri, sat, sun.'
    )


def test_a_step_after_one_that_is_not_there(folder: Path) -> None:
    (folder / "work.toml").write_text(
        '[work.B1]\nwork = "Strip"\nhours_fixed = 1\nhours_per_circuit = 0\nhours_basis = "fixed"\n'
        'predecessors = ["B7"]\nhold_point = ""\nhold_text = ""\nfreezes = []\n'
    )
    assert faults_of(folder) == (
        'work.toml:6: work.B1.predecessors[1]: there is no step of the build "B7"; use one of B0, B1.'
    )


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


# --- anything at all


@FEW
@given(content=st.binary(max_size=300))
@example(content=b"[option.a]\nx = [[[[1]]]]\n")
@example(content=b'"\\u0000" = 1\n')
def test_any_bytes_are_refused_with_faults_and_nothing_else(content: bytes, folder: Path) -> None:
    (folder / "more.toml").write_bytes(content)
    _reads_or_refuses(folder)


@FEW
@given(
    start=st.integers(0, 3200),
    length=st.integers(0, 60),
    put=st.text("[]{}=.,\"'#\n\\ab1-_@|+!<>\x00\u202e", max_size=5),
)
def test_a_catalogue_with_a_piece_torn_out(start: int, length: int, put: str, folder: Path) -> None:
    text = (GOOD / "catalogue.toml").read_text()
    (folder / "catalogue.toml").write_text(text[:start] + put + text[start + length :], "utf-8")
    _reads_or_refuses(folder)


_SCALARS = st.one_of(
    st.text(max_size=12),
    st.integers(),
    st.floats(),
    st.booleans(),
    st.dates(),
    st.sampled_from(["#awning@same", "brief.adults>2 | larchlid", "total-mass <= bound", "a | b", "one of", "list"]),
)
_FIRST_KEYS = ["group", "name", "when", "then", "kind", "type", "values", "assumed", "asked_when", "gives", "needs"]
_OTHER_KEYS = ["zones", "places", "columns", "rows", "circuit", "hole", "space", "settings", "question", "predecessors"]
_KEYS = st.text(max_size=5) | st.sampled_from([*_FIRST_KEYS, *_OTHER_KEYS])
_VALUES = st.recursive(
    _SCALARS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(_KEYS, inner, max_size=3),
    max_leaves=8,
)


@FEW
@given(
    document=st.dictionaries(
        st.sampled_from([*SECTIONS, "firm"]),
        st.dictionaries(st.text("abc-_1", max_size=4), st.dictionaries(_KEYS, _VALUES, max_size=6), max_size=3),
        max_size=4,
    )
)
def test_any_toml_is_refused_with_faults_and_nothing_else(document: dict[str, object], folder: Path) -> None:
    (folder / "more.toml").write_bytes(tomli_w.dumps(document).encode("utf-8", "ignore"))
    _reads_or_refuses(folder)


def _reads_or_refuses(folder: Path) -> None:
    refused: RulesFaults | None = None
    try:
        read_rules(folder)
    except RulesFaults as faults:
        refused = faults
    if refused is not None:
        assert refused.faults
        assert str(refused).replace("\n", "").isprintable()
