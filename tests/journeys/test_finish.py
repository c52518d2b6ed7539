"""Finish it for me: shown first, by four aims, taken by one key as one step of undo."""

from __future__ import annotations

import shutil
from pathlib import Path

from specbuilder.tui.counter import Counter
from specbuilder.tui.keys import Where

from .bench import counter_on, edits, press, spec
from .conftest import EXAMPLES
from .hand_made import ALL, Held, at_once
from .stage import WINDOWS, on_stage


def shown(counter: Counter) -> str:
    counter.lay()
    rows = [*counter.top.head(78), *counter.top.shown]
    return "\n".join(row.text for row in rows)


def opened(folder: Path, held: Held | None = None) -> Counter:
    shutil.copy(EXAMPLES / "half-done-family.toml", folder / "0152-r1.toml")
    counter = counter_on(folder, searches=ALL, runner=held or at_once)
    press(counter, "enter")
    return counter


@WINDOWS
async def test_every_open_question_is_answered_by_two_keys(demo: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("down", "down", "enter")
        before, undecided = stage.spec(), stage.report().undecided
        assert undecided
        await stage.press("f")
        screen = await stage.found()
        assert "FINISH IT, cheapest" in screen
        assert "Together" in screen
        assert "roved" in screen, "it says whether it is proved"
        assert stage.spec() == before
        await stage.press("enter")
        assert len(stage.report().undecided) < len(undecided)
        assert all(stage.spec().has(choice.option) for choice in before.choices), "no choice is touched"
        await stage.press("u")
        assert stage.spec() == before, "one undo step"


def test_a_digit_chooses_the_aim_and_escape_leaves_everything(tmp_path: Path) -> None:
    counter = opened(tmp_path)
    before = spec(counter)
    press(counter, "f")
    assert "Not proved" in shown(counter)
    press(counter, "4")
    assert "nearest to the house usual" in shown(counter).splitlines()[0]
    assert "Proved" in shown(counter)
    press(counter, "9", "escape")
    assert spec(counter) == before
    assert counter.top.where is Where.BRIEF


def test_enter_before_the_proposal_was_painted_takes_nothing(tmp_path: Path) -> None:
    held = Held()
    counter = opened(tmp_path, held)
    before = spec(counter)
    press(counter, "f", "enter")
    assert counter.top.where is Where.FINISH
    held.let_run()
    counter.lay()
    counter.press("enter", None)
    assert spec(counter) == before
    press(counter, "enter")
    assert spec(counter) != before
    assert edits(counter) == 1


def test_where_nothing_is_open_that_is_said(tmp_path: Path) -> None:
    counter = opened(tmp_path)
    press(counter, "f", "enter", "f")
    while not spec(counter) or "nothing to finish" not in shown(counter):
        before = spec(counter)
        press(counter, "enter", "f")
        if spec(counter) == before:
            break
    press(counter, "enter")
    assert counter.top.where is Where.BRIEF


def test_it_can_be_tried_in_a_what_if(tmp_path: Path) -> None:
    counter = opened(tmp_path)
    before = spec(counter)
    press(counter, "f", "t", "enter")
    assert counter.trying
    assert spec(counter) != before
    press(counter, "escape")
    assert spec(counter) == before
