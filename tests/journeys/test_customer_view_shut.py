"""The customer's view is shut: no slip of a key or of the mouse leaves it, nothing in it changes the job."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from specbuilder.tui.clicks import click
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import width
from tests.office.scene import Scene

from .bench import KEYS, counter_on, edits, press, typed
from .customer_scene import shut
from .hand_made import at_once
from .house_scene import opened
from .stage import WINDOWS, on_stage


@WINDOWS
async def test_twenty_other_keys_stay_and_change_nothing(quoted: Scene, size: tuple[int, int], plain: bool) -> None:
    """Whatever is pressed behind Escape, but Enter; F9, F1 and their letters open lists of this place alone."""
    async with on_stage(quoted.folder, size, plain=plain) as stage:
        await opened(stage)
        before, files = stage.spec(), sorted(path.name for path in quoted.folder.rglob("*"))
        await stage.press("c")
        pick = random.Random(20311)
        keys = [key for key in KEYS if key not in ("enter", "escape", "f9", "f1", "question_mark", "p")]
        for key in pick.sample(keys, 20):
            await stage.press("escape", typed(key))
            assert stage.app.counter.top.where is Where.CUSTOMER, key
            await stage.press("enter")
            assert stage.app.counter.top.where is Where.CUSTOMER, f"Enter behind {key}"
        assert stage.spec() == before
        assert sorted(path.name for path in quoted.folder.rglob("*")) == files


@pytest.mark.parametrize("key", [key for key in KEYS if key not in ("enter", "escape")])
def test_every_other_key_behind_escape_stays(demo: Path, key: str) -> None:
    counter = shut(demo)
    press(counter, "escape", typed(key))
    while counter.top.where in (Where.ACTIONS, Where.KEYS):
        press(counter, "escape")
    assert counter.top.where is Where.CUSTOMER
    press(counter, "enter")
    assert counter.top.where is Where.CUSTOMER
    assert edits(counter) == 0
    press(counter, "escape", "enter")
    assert counter.top.where is not Where.CUSTOMER


@pytest.mark.parametrize(
    "keys", [("l",), ("o",), ("i",), ("p",), ("right", "right", "d"), ("f",), ("l", "enter"), ("t",), ("v",)]
)
def test_it_opens_from_anywhere_in_a_job_and_leads_back_there(demo: Path, keys: tuple[str, ...]) -> None:
    counter = counter_on(demo, runner=at_once)
    press(counter, "enter", *keys)
    was = counter.top
    press(counter, "f8" if was.entry is not None else "c")
    assert counter.top.where is Where.CUSTOMER
    press(counter, "escape", "enter")
    assert counter.top is was


def test_the_mouse_leaves_by_two_clicks_in_two_corners(demo: Path) -> None:
    counter = shut(demo)

    def hot() -> dict[object, range]:
        """What can be clicked on the last line, and in which columns."""
        found, column = dict[object, range](), 0
        for bit in counter.top.shown[-1].bits:
            if bit.hot is not None:
                found[bit.hot] = range(column, column + width(bit.text))
            column += width(bit.text)
        return found

    first = hot()[Act.BACK]
    click(counter, Act.BACK, None, side=True)
    assert counter.top.where is Where.CUSTOMER
    second = hot()[Act.ENTER]
    assert not set(first) & set(second), "a double click on the first one stays"
    click(counter, Act.ENTER, None, side=True)
    assert counter.top.where is not Where.CUSTOMER


def test_a_second_customer_view_is_not_laid_over_the_first(demo: Path) -> None:
    counter = shut(demo)
    press(counter, "f9", "f8")
    assert counter.top.where is Where.CUSTOMER
    assert len(counter.sides) == 1


def test_a_mistake_of_the_program_does_not_show_the_sellers_screens(demo: Path) -> None:
    counter = shut(demo)
    counter.mistaken(ValueError("something"))
    assert counter.top.where is Where.CUSTOMER
