"""Laws over all sequences of keys."""

from __future__ import annotations

import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from specbuilder.model.edits import NameCustomer, SetNote, Take, WriteNote
from specbuilder.model.ids import OptionId
from specbuilder.tui.counter import Counter
from specbuilder.tui.keys import Where

from .bench import KEYS, counter_on, edits, press, spec, to_jobs, too_wide, typed
from .hand_made import ALL, at_once

pytestmark = pytest.mark.long

SEQUENCES = st.lists(st.sampled_from([typed(key) for key in KEYS]), max_size=30)
PRIVATE = ("CASH ONLY 4711", "07700900123", "MARGIN IS 41")
FEW = settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))


def begun(folder: str) -> Counter:
    counter = counter_on(Path(folder), searches=ALL, runner=at_once)
    press(counter, "n", "2", "enter", "2", "enter")
    return counter


@FEW
@given(SEQUENCES)
@example(["f", "enter", "t", "right", "down", "enter", "1", "k", "u", "t", "f", "2", "enter", "escape"])
@example(["right", "enter", "h", "enter", "d", "1", "escape", "-", "u", "r"])
@example(["9", " ", "6", "escape", "down", "3", "f9", "k", "i", "t", "enter", "y", "1", "6", "enter"])
@example(["p", "b", "enter", "g", "a", "s", "enter", "enter", "escape", "s", "enter", "escape", "x", "u"])
def test_keys_then_escape_then_opening_again_give_the_same_spec(keys: list[str]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        counter = begun(folder)
        press(counter, *keys)
        to_jobs(counter)
        left = spec(counter)
        press(counter, "enter")
        assert spec(counter) == left or not left.number
        to_jobs(counter)
        again = counter_on(Path(folder))
        press(again, *(["down"] * 9), "enter")
        assert spec(again) == spec(counter)


@FEW
@given(SEQUENCES)
def test_as_many_undos_as_edits_give_the_first_spec_and_redo_the_last(keys: list[str]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        counter = begun(folder)
        press(counter, "u", "u")
        first = spec(counter)
        press(counter, "2", *keys, "escape", "escape", "escape", "escape", "enter")
        if counter.walk is None or spec(counter).records:
            return  # what was written down stays, and undo goes no further back
        last, count = spec(counter), edits(counter)
        press(counter, *(["f4"] * count))
        assert spec(counter) == first or spec(counter).number != first.number
        assert edits(counter) == 0
        press(counter, *(["f5"] * count))
        assert spec(counter) == last


@FEW
@given(SEQUENCES)
def test_no_line_is_wider_than_its_window(keys: list[str]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        counter = begun(folder)
        for key in keys:
            press(counter, key)
        for cells in (59, 79, 88):
            assert too_wide(counter, cells) == []


@FEW
@given(SEQUENCES)
def test_whatever_was_pressed_before_nothing_private_stands_in_the_customer_view(keys: list[str]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        counter = begun(folder)
        counter.edit(WriteNote(note=PRIVATE[0]))
        counter.edit(NameCustomer(name="A. Person", contact=PRIVATE[1]))
        counter.edit(Take(option=OptionId("pod-galley")))
        counter.edit(SetNote(option=OptionId("pod-galley"), note=PRIVATE[2]))
        press(counter, *keys)
        to_jobs(counter)
        press(counter, "enter", "f8")
        if counter.top.where is not Where.CUSTOMER:
            return  # another job, or none, has the cursor of the list
        counter.rows_high = 500
        seen: list[str] = []
        for key in ("left", "left", "right", "+", "right"):
            press(counter, key)
            seen += [line.text for line in (*counter.top.head(88), *counter.top.shown, *counter.top.foot(88))]
        assert any("VAT IN" in text for text in seen)
        assert not [text for text in seen if any(words in text for words in PRIVATE)]


@FEW
@given(SEQUENCES)
def test_small_and_wide_windows_give_the_same_spec(keys: list[str]) -> None:
    keys = [key for key in keys if key not in ("pageup", "pagedown")]
    with tempfile.TemporaryDirectory() as one, tempfile.TemporaryDirectory() as other:
        small, wide = begun(one), begun(other)
        small.main_cells = small.side_cells = 59
        wide.main_cells, wide.side_cells = 120, 50
        for counter in (small, wide):
            press(counter, *keys)
        bare = [[(c.option, c.count, c.place, c.owner) for c in spec(counter).choices] for counter in (small, wide)]
        assert bare[0] == bare[1]
        assert spec(small).answers == spec(wide).answers
