"""Laws of the mouse: every place leads to all its acts and back by clicks, and clicks at random lose nothing."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from specbuilder.model.edits import Take
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.tui.clicks import act_of_hint, click
from specbuilder.tui.counter import Counter
from specbuilder.tui.items import Item, OnAnswer, OnOption, OnSign
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import Line, width
from specbuilder.tui.pad import Pad
from specbuilder.wording.last_line import again_hint, back_hint

from .bench import counter_on, edits, press, spec, to_jobs
from .hand_made import ALL, at_once
from .test_every_act import go, job_for

OWN = (Where.NOTICE, Where.CUSTOMER)
"""Places that need no list of acts: a notice has none, and what the customer reads has its own last line."""
PLACES = [where for where in Where if where not in OWN]


def hot(line: Line) -> set[Item | Act]:
    return {bit.hot for bit in line.bits if bit.hot is not None}


@pytest.mark.long
@pytest.mark.parametrize("where", PLACES)
def test_every_place_leads_by_clicks_to_all_its_acts_and_back(where: Where, tmp_path: Path) -> None:
    counter = job_for(where, tmp_path)
    go(counter, where)
    for cells in (60, 80, 140):
        last = Pad(in_use=True).line(counter.top, cells)
        assert width(last.text) <= cells
        if counter.top.entry is not None and not counter.top.searches:
            assert {Act.ENTER, Act.BACK} <= hot(last), "what is typed is taken or left"
        else:
            assert where is Where.ACTIONS or Act.ACTIONS in hot(last) or counter.top.searches
            assert where is Where.JOBS or Act.BACK in hot(last)


def test_a_hand_on_the_keys_never_sees_the_signs(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", "p", "o")
    assert not [one for one in hot(Pad().line(counter.top, 80)) if isinstance(one, OnSign)]
    assert [one for one in hot(Pad(in_use=True).line(counter.top, 80)) if isinstance(one, OnSign)]


@pytest.mark.parametrize("cells", [60, 80, 140])
def test_every_sign_a_line_takes_can_be_clicked(demo: Path, cells: int) -> None:
    counter, pad = counter_on(demo), Pad(in_use=True)
    press(counter, "enter", "/", *"customer's name", "enter", "enter")
    signs: set[str] = set()
    for _ in range(3):
        line = pad.line(counter.top, cells)
        assert width(line.text) <= cells
        signs |= {one.sign for one in hot(line) if isinstance(one, OnSign)}
        pad.turn()
    assert {*"abcxyzABCXYZ0189.,-'", " ", "backspace", "shift"} <= signs
    press(counter, "escape")
    counter.go_to(OnAnswer(BriefKey("parking_limit_mm")))
    press(counter, "2")
    numbers = {one.sign for one in hot(pad.line(counter.top, cells)) if isinstance(one, OnSign)}
    assert set("0123456789") <= numbers
    assert not numbers & set("abc"), "a number takes no letters"


def test_the_words_behind_what_was_done_take_it_back_and_bring_it_again() -> None:
    assert act_of_hint(back_hint()) is Act.UNDO
    assert act_of_hint(again_hint()) is Act.REDO
    assert act_of_hint("") is None


def test_a_sign_at_the_end_of_a_row_is_about_that_row_and_not_about_the_one_with_the_cursor(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"flush solar", "enter")
    light = OnOption(OptionId("solar-light-120"))
    counter.edit(Take(option=light.option))
    counter.main_cells = 120
    counter.lay()
    (row,) = (row for row in counter.top.shown if Act.MORE in hot(row) and row.item == light)
    assert counter.top.at != light
    before = spec(counter)
    click(counter, Act.MORE, row.item, side=False)
    assert [choice.count for choice in spec(counter).chosen(light.option)] == [2]
    assert len(spec(counter).choices) == len(before.choices)
    assert counter.top.at == light


def test_a_click_on_a_word_while_a_text_is_typed_keeps_the_text_beside_its_line(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"barrier", "enter", *"21")
    at = counter.top.at
    assert at is not None
    click(counter, Act.LEDGERS, None, side=False)
    assert counter.top.where is Where.LEDGERS
    click(counter, Act.BACK, None, side=False)
    assert counter.drafts[at] == "21"
    click(counter, Act.ENTER, None, side=False)
    click(counter, OnSign("0"), None, side=False)
    click(counter, OnSign("0"), None, side=False)
    click(counter, Act.ENTER, None, side=False)
    assert spec(counter).answers.get("parking_limit_mm") == 2100


def test_what_was_said_about_a_line_goes_with_a_click_on_another(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "home", "down", "down", *"99", "enter")
    assert counter.message
    other = next(row.item for row in counter.top.shown if row.item not in (None, counter.top.at))
    click(counter, None, other, side=False)
    assert counter.top.at == other
    assert not counter.message


def test_a_click_on_the_jobs_that_are_not_shown_shows_them(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "escape")
    assert len([line for line in counter.top.shown if line.item is not None]) == 1
    hidden = next(line for line in counter.top.shown if Act.DOWN in hot(line))
    click(counter, Act.DOWN, hidden.item, side=False)
    assert len([line for line in counter.top.shown if line.item is not None]) == 3


def targets(counter: Counter) -> Iterator[tuple[Item | Act | None, Item | None, bool]]:
    """Everything that can be clicked on, but the way out of the program."""
    side = bool(counter.sides)
    pages = [(counter.top, side)] + ([(counter.main, False)] if side and not counter.full else [])
    for page, at_side in pages:
        for line in (*page.head(78), *page.shown, *page.foot(78)):
            yield from ((one, line.item, at_side) for one in hot(line))
            if line.item is not None:
                yield None, line.item, at_side
    if counter.walk is not None and not counter.full:
        for line in counter.walk.heading(78):
            yield from ((one, None, False) for one in hot(line))
    if not counter.shut:
        yield from ((one, None, False) for one in hot(Pad(in_use=True).line(counter.top, 78)))


@pytest.mark.long
@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.lists(st.integers(0, 10_000), max_size=40))
def test_clicks_at_random_then_back_to_the_jobs_give_the_same_spec_when_it_is_opened_again(picks: list[int]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        counter = counter_on(Path(folder), searches=ALL, runner=at_once)
        press(counter, "n", "2", "enter", "2", "enter")
        for pick in picks:
            counter.painted()
            there = sorted((one for one in targets(counter) if one[0] not in (Act.LEAVE, OnSign("shift"))), key=repr)
            if there:
                chosen, item, side = there[pick % len(there)]
                click(counter, chosen, item, side=side)
        to_jobs(counter)
        left, count = spec(counter), edits(counter)
        press(counter, "enter")
        assert spec(counter) == left or not left.number
        assert edits(counter) == count or not left.number
