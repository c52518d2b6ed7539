"""Two sellers on one job: the second reads, is told who has it and since when, and goes on once it is free."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from specbuilder.model.ids import OptionId
from specbuilder.tui.counter import Counter
from specbuilder.tui.keys import Where

from .bench import counter_on, press, spec
from .stage import WINDOWS, on_stage

TOW_BAR = OptionId("tow-bar")
TOW = ("/", *"tow bar", "enter", "enter")


def two(folder: Path) -> tuple[Counter, Counter]:
    """Two counters with the same job open; the first one has it."""
    first, second = counter_on(folder), counter_on(folder)
    for counter in (first, second):
        press(counter, "enter")
    return first, second


@pytest.mark.long
@WINDOWS
async def test_the_second_is_told_who_has_the_job_and_since_when(
    demo: Path, size: tuple[int, int], plain: bool
) -> None:
    first = counter_on(demo)
    press(first, "enter")
    async with on_stage(demo, size, plain=plain) as stage:
        told = re.compile(r"Read only: counter 1 has this job since \d\d:\d\d")
        assert told.search(stage.screen()), "in the list already"
        assert told.search(await stage.press("enter"))
        before, files = stage.spec(), {path.name: path.read_bytes() for path in demo.iterdir() if path.is_file()}
        await stage.press("l", "enter")
        assert stage.app.counter.top.where is Where.LEDGER, "everything can be read"
        await stage.press("escape", "escape")
        screen = await stage.press(*TOW[:1], "'tow bar'", "enter", "enter")
        assert told.search(screen)
        assert stage.spec() == before
        await stage.press("escape")
        assert {path.name: path.read_bytes() for path in demo.iterdir() if path.is_file()} == files


def test_the_second_goes_on_where_it_is_once_the_first_has_left_everything_as_it_was(demo: Path) -> None:
    first, second = two(demo)
    press(second, *TOW)
    assert "Read only" in second.message
    press(first, "escape")
    press(second, "enter")
    assert spec(second).has(TOW_BAR)
    third = counter_on(demo)
    press(third, "enter", "u")
    assert "Read only" in third.message, "now it is the second who has it"


def test_what_the_first_changed_is_opened_again_before_the_second_goes_on(demo: Path) -> None:
    first, second = two(demo)
    press(first, *TOW, "escape")
    press(second, "/", *"laptop", "enter", "-")
    assert "open it again" in second.message
    assert spec(second).has(OptionId("laptop"))
    press(second, "escape", "enter")
    assert spec(second).has(TOW_BAR), "what the first did is there"
    press(second, "/", *"laptop", "enter", "-")
    assert not spec(second).has(OptionId("laptop"))


def test_a_what_if_of_the_second_touches_nothing(demo: Path) -> None:
    first, second = two(demo)
    press(second, "t", *TOW)
    assert spec(second).has(TOW_BAR)
    press(second, "escape", "escape")
    press(first, "escape")
    assert "tow-bar" not in (demo / "0147-r1.toml").read_text("utf-8")
