from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.plain_text import hidden_character
from specbuilder.tui.entry import Entry, started
from specbuilder.tui.line import Bit, clean, cut, fitted, leaning, left, line, right, width, within, wrapped
from specbuilder.wording.plain import fitted as fitted_words

HOSTILE = "\x1b]0;x\x07 [/] [@click=app.quit]Gas[/] \x9b2J\u202e\u2066\u200b\xad\x7f"


def test_nothing_that_steers_a_terminal_is_left() -> None:
    shown = clean(HOSTILE)
    assert "[@click=app.quit]Gas[/]" in shown
    assert not [c for c in shown if ord(c) < 32 or 0x7F <= ord(c) < 0xA0 or 0x200B <= ord(c) <= 0x206F]


def test_line_ends_become_blanks() -> None:
    assert clean("one\ntwo\tthree") == "one two three"


@given(st.text(max_size=60), st.integers(min_value=0, max_value=40))
def test_cut_and_filled_text_has_its_width(text: str, cells: int) -> None:
    assert width(cut(text, cells)) <= cells
    assert width(left(text, cells)) == cells
    assert width(right(text, cells)) == cells


@given(st.text(max_size=200), st.integers(min_value=2, max_value=40), st.integers(min_value=1, max_value=5))
def test_wrapped_text_stays_within_its_width(text: str, cells: int, rows: int) -> None:
    assert all(width(part) <= cells for part in wrapped(text, cells))
    assert len(wrapped(text, cells, rows)) <= rows


@given(st.lists(st.text(max_size=20), max_size=5), st.integers(min_value=3, max_value=40))
def test_a_line_within_a_width_says_where_it_was_cut(texts: list[str], cells: int) -> None:
    whole = line(*(Bit(text) for text in texts))
    shown = within(whole, cells)
    assert width(shown.text) <= cells
    assert shown.text == whole.text or shown.text.endswith("..")


def test_text_of_any_length_costs_the_same() -> None:
    assert len(clean("x" * 1_000_000)) <= 2000


def test_more_lines_than_fit_say_so() -> None:
    lines = [line(f"line {i}") for i in range(5)]
    assert [row.text for row in fitted(lines, 2, 20)] == ["line 0", "line 1 .."]
    assert fitted(lines, 5, 20) == lines


@pytest.mark.parametrize(
    ("keys", "text"),
    [
        (["left", "backspace"], "ac"),
        (["home", "delete"], "bc"),
        (["left", "left", "x"], "axbc"),
        (["home", "left", "end", "right", "d"], "abcd"),
    ],
)
def test_editing_keys(keys: list[str], text: str) -> None:
    entry = started("abc")
    for key in keys:
        entry = entry.typed(key) if len(key) == 1 else entry.edited(key) or entry
    assert entry.text == text


@given(st.text(max_size=80), st.integers(min_value=0, max_value=80), st.integers(min_value=3, max_value=30))
def test_the_caret_is_always_seen(text: str, caret: int, cells: int) -> None:
    entry = Entry().typed(text)
    entry = Entry(entry.text, min(caret, len(entry.text)))
    bits = entry.bits(cells)
    assert width("".join(bit.text for bit in bits)) <= cells
    assert len(bits) == 3


def test_what_is_not_printable_cannot_be_typed() -> None:
    assert "\x1b" not in Entry().typed("a\x1bb").text


@pytest.mark.parametrize("hidden", ["\ud800", "\U000e0041", "\u180e", "\ufff9", "\x9b", "\u202e"])
def test_what_nobody_sees_and_no_terminal_takes_is_shown_as_a_sign(hidden: str) -> None:
    assert clean(f"a{hidden}b") == "a\N{REPLACEMENT CHARACTER}b"
    assert hidden_character(hidden) is not None, "no file may hold it either"


@pytest.mark.parametrize(
    ("cells", "shown"),
    [
        (28, "Larchlid tilting roof, short"),
        (27, "Larchlid tilting roof.."),
        (22, "Larchlid tilting.."),
        (12, "Larchlid.."),
        (8, "Larchl.."),
    ],
)
def test_a_name_is_cut_behind_a_word_where_that_costs_little(cells: int, shown: str) -> None:
    assert cut("Larchlid tilting roof, short", cells) == shown
    assert fitted_words("Larchlid tilting roof, short", cells) == shown


def test_a_long_word_is_cut_where_the_room_ends() -> None:
    assert cut("The Oberlandesgerichtspräsidentin", 20) == "The Oberlandesgeri.."


@pytest.mark.parametrize(
    ("needs", "beside", "first"),
    [(10, 10, 20), (30, 10, 30), (10, 35, 15), (45, 10, 40), (30, 25, 30), (40, 40, 20)],
    ids=["room for both", "name longer", "answer longer", "name too long", "answer is cut a little", "both too long"],
)
def test_the_one_of_two_cells_takes_what_the_other_can_spare(needs: int, beside: int, first: int) -> None:
    assert leaning(20, needs, beside, 50) == first
