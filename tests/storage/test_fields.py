"""Typed reading of a table: values, defaults, and every fault at once."""

from __future__ import annotations

import tomllib

import pytest

from specbuilder.model.kinds import Place
from specbuilder.storage.faults import Fault, FaultList, Source, dotted, hidden_character, nearest, quotable
from specbuilder.storage.fields import Fields
from specbuilder.storage.toml_lines import TomlLines


def fields(text: str) -> tuple[Fields, FaultList]:
    """The outermost table of a file called ``job.toml``."""
    faults = FaultList()
    source = Source("job.toml", TomlLines(text), faults)
    return Fields(tomllib.loads(text), source.top), faults


def told(faults: FaultList) -> list[str]:
    return [str(fault) for fault in faults.in_order()]


def test_values_of_every_kind() -> None:
    table, faults = fields(
        'name = "Ash"\nnote = "one\\ntwo"\ncount = 3\nmass_kg = 2\nlength_m = 2.5\nkept = false\nplace = "left"\n'
        'tags = ["a", "b"]\n[inner]\nx = 1\n[[part]]\nid = "p"\n[[part]]\nid = "q"\n[by.one]\nx = 1\n[by.two]\nx = 2\n'
    )
    assert table.text("name") == "Ash"
    assert table.text("note", lines=True) == "one\ntwo"
    assert table.whole("count") == 3
    assert (table.number("mass_kg"), type(table.number("mass_kg"))) == (2.0, float)
    assert table.number("length_m") == 2.5
    assert table.yes_no("kept") is False
    assert table.word("place", Place) is Place.LEFT
    assert table.texts("tags") == ("a", "b")
    assert table.table("inner").whole("x") == 1
    assert [part.text("id") for part in table.tables("part")] == ["p", "q"]
    assert [(name, entry.whole("x")) for name, entry in table.table("by").entries()] == [("one", 1), ("two", 2)]
    assert table.value("count") == 3
    table.close()
    assert told(faults) == []


def test_defaults_stand_in_for_what_is_missing() -> None:
    table, faults = fields("")
    assert table.text("a", "none") == "none"
    assert table.whole("b", 0) == 0
    assert table.number("c", 1.5) == 1.5
    assert table.yes_no("d", True) is True
    assert table.word("e", Place, Place.REAR) is Place.REAR
    assert table.texts("f", ()) == ()
    assert table.table("g", optional=True).has("x") is False
    assert table.tables("h") == ()
    assert table.value("i") is None
    assert len(faults) == 0


def test_every_missing_key_is_told() -> None:
    table, faults = fields("[job]\n")
    job = table.table("job")
    assert (job.text("a"), job.whole("b"), job.number("c"), job.yes_no("d")) == ("", 0, 0, False)
    assert (job.word("e", Place), job.texts("f"), job.table("g").has("x")) == (Place.LEFT, (), False)
    assert told(faults) == [
        "job.toml:1: job.a: is missing: add it (a text).",
        "job.toml:1: job.b: is missing: add it (a whole number).",
        "job.toml:1: job.c: is missing: add it (a number).",
        "job.toml:1: job.d: is missing: add it (true or false).",
        "job.toml:1: job.e: is missing: add it (one of left, right, rear).",
        "job.toml:1: job.f: is missing: add it (a list of texts).",
        "job.toml:1: job.g: is missing: add it (a table).",
    ]


def test_every_wrong_kind_is_told() -> None:
    table, faults = fields(
        'a = 1\nb = "1"\nc = true\nd = 1\ne = "lift"\nf = "x"\ng = 3\nh = [1]\ni = ["x", 2]\nj = 1.5\nk = 1979-05-27\n'
        "[l]\none = 1\n"
    )
    assert (table.text("a"), table.whole("b"), table.number("c"), table.yes_no("d")) == ("", 0, 0, False)
    assert (table.word("e", Place), table.texts("f"), table.tables("h")) == (Place.LEFT, (), ())
    assert table.table("g").has("x") is False
    assert table.texts("i") == ("x",)
    assert (table.whole("j"), table.text("k"), table.table("l").entries()) == (0, "", ())
    assert told(faults) == [
        "job.toml:1: a: needs a text, but this is the number 1: put it in quotes.",
        'job.toml:2: b: needs a whole number, but this is the text "1": write it without quotes.',
        "job.toml:3: c: needs a number, but this is true: write a plain figure.",
        "job.toml:4: d: needs true or false, but this is the number 1: write one of the two words without quotes.",
        'job.toml:5: e: "lift" is no word for this; did you mean "left"?',
        'job.toml:6: f: needs a list, but this is the text "x": put it in [ ].',
        "job.toml:7: g: needs a table, but this is the number 3: write key = value pairs under a head of its own.",
        "job.toml:8: h[1]: needs a table, but this is the number 1: write key = value pairs under a head of its own.",
        "job.toml:9: i[2]: needs a text, but this is the number 2: put it in quotes.",
        "job.toml:10: j: needs a whole number, but this is the number 1.5: write a plain figure.",
        "job.toml:11: k: needs a text, but this is a date or time: put it in quotes.",
        "job.toml:13: l.one: needs a table, but this is the number 1: write key = value pairs under a head of its own.",
    ]


def test_numbers_that_measure_nothing() -> None:
    table, faults = fields("a = inf\nb = nan\nc = 99999999999999999999\nd = -99999999999999999999\n")
    assert (table.number("a"), table.number("b"), table.number("c"), table.whole("d")) == (0, 0, 0, 0)
    assert told(faults) == [
        "job.toml:1: a: needs a finite number: inf and nan stand for nothing that can be measured.",
        "job.toml:2: b: needs a finite number: inf and nan stand for nothing that can be measured.",
        "job.toml:3: c: the number is larger than anything counted here: check it.",
        "job.toml:4: d: the number is larger than anything counted here: check it.",
    ]


def test_unknown_keys_are_refused_with_the_nearest_known_one() -> None:
    table, faults = fields('nmae = 1\ncolour = 2\n[inner]\n"odd key" = 1\n')
    table.text("name", "")
    inner = table.table("inner")
    table.close()
    inner.close()
    assert told(faults) == [
        'job.toml:1: nmae: there is no such key here; did you mean "name"?',
        "job.toml:2: colour: there is no such key here; use one of name, inner.",
        'job.toml:4: inner."odd key": there is no such key here; take it out.',
    ]


@pytest.mark.parametrize(
    ("written", "words"),
    [
        ("\\u001b[31m", "the text holds the hidden character U+001B at place 1: take it out."),
        ("a\\u202eb", "the text holds the hidden character U+202E at place 2: take it out."),
        ("a\\u009bb", "the text holds the hidden character U+009B at place 2: take it out."),
        ("a\\nb", "the text holds a line break at place 2: take it out."),
        ("a\\tb", "the text holds a tab at place 2: take it out."),
    ],
)
def test_hidden_characters_are_refused(written: str, words: str) -> None:
    table, faults = fields(f'name = "{written}"\n')
    assert table.text("name") == ""
    assert told(faults) == [f"job.toml:1: name: {words}"]


def test_a_text_of_several_lines_may_hold_nothing_else_that_is_hidden() -> None:
    assert hidden_character("one\ntwo", lines=True) is None
    assert hidden_character("one\r\ntwo", lines=True) == "the hidden character U+000D at place 4"


def test_a_very_long_text_is_quoted_short() -> None:
    table, faults = fields(f'count = "{"x" * 10_000}"\n')
    table.whole("count")
    assert told(faults) == [
        f'job.toml:1: count: needs a whole number, but this is the text "{"x" * 57}...": write it without quotes.'
    ]


def test_paths_as_they_are_told() -> None:
    assert dotted(("option", "larchlid-short", "hole", 1, "width_mm")) == "option.larchlid-short.hole[2].width_mm"
    assert dotted(("odd key", "\x1b")) == '"odd key"."U+001B"'
    assert dotted(()) == ""


def test_a_fault_without_line_or_path() -> None:
    assert str(Fault("rules", 0, "", "gone.")) == "rules: gone."
    assert str(Fault("odd\nname.toml", 3, "", "gone.")) == "oddU+000Aname.toml:3: gone."


def test_faults_come_by_file_and_line_and_each_once() -> None:
    faults = FaultList()
    for file, line in (("b", 1), ("a", 2), ("a", 1), ("a", 2)):
        faults.add(file, "x.", line=line)
    assert told(faults) == ["a:1: x.", "a:2: x.", "b:1: x."]


@pytest.mark.parametrize(
    ("word", "words", "expected"),
    [
        ("mas_kg", ("mass_kg", "name"), "mass_kg"),
        ("vat", ("name", "vat_percent"), "vat_percent"),
        ("xyz", ("mass_kg", "name"), None),
        ("x" * 100_000, ("x" * 100_000,), None),
    ],
)
def test_the_nearest_word(word: str, words: tuple[str, ...], expected: str | None) -> None:
    assert nearest(word, words) == expected


def test_what_cannot_be_printed_is_written_out() -> None:
    assert quotable("a\x1b\u202e\u00a0é") == "aU+001BU+202EU+00A0é"
