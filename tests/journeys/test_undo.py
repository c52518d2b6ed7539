"""U4: undo names what it undoes, crosses steps, can be put back, and ends."""

from __future__ import annotations

from pathlib import Path

from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Step
from specbuilder.tui.keys import Where

from .bench import counter_on, press
from .stage import WINDOWS, on_stage


@WINDOWS
async def test_u4_undo_twice_and_redo_once(demo: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter")
        first = stage.spec()
        await stage.press("/", "'tow bar'", "enter", "enter")
        towed = stage.spec()
        await stage.press("/", "'laptop'", "enter", "-")
        last = stage.spec()
        assert first != towed != last
        stage.presses = 0
        screen = await stage.press("u")
        assert "Undone:" in screen
        assert "Laptop" in screen
        assert "r puts it back" in screen
        assert stage.spec() == towed
        screen = await stage.press("u")
        assert "Tow bar" in screen
        assert stage.spec() == first
        screen = await stage.press("r")
        assert stage.presses == 3
        assert "Tow bar" in screen
        assert stage.spec() == towed
        screen = await stage.press(*["u"] * 20)
        assert "Nothing left to undo" in screen
        assert stage.spec() == first
        screen = await stage.press("r", "r")
        assert stage.spec() == last
        assert "Nothing left to put back" in await stage.press("r")


async def test_undo_reaches_back_over_leaving_and_opening_again(empty: Path) -> None:
    async with on_stage(empty) as stage:
        await stage.press("n", "2", "enter", "1", "escape", "enter", "u")
        assert stage.spec().answers.get("adults") == 2
        assert stage.spec().answers.get("children") is None
    async with on_stage(empty) as stage:
        await stage.press("enter", "r")
        assert stage.spec().answers.get("children") == 1
        await stage.press("u", "u")
        assert not stage.spec().answers.given


def test_a_step_back_into_another_step_closes_what_told_about_this_one(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "home", "down", "1", "/", *"tow bar", "enter", "enter")
    assert counter.walk is not None
    assert counter.walk.step is not Step.BRIEF
    counter.why(OptionId("tow-bar"))
    press(counter, "u")
    assert counter.top.where is Where.WHY, "it tells about the step that is still there"
    press(counter, "u")
    assert counter.walk.step is Step.BRIEF
    assert not counter.sides
    press(counter, "l", "r", "r")
    assert counter.top.where is Where.LEDGERS, "what tells about all steps stays"


def test_as_many_steps_back_as_edits_leave_the_file_as_it_was_byte_for_byte(demo: Path) -> None:
    path = demo / "0147-r1.toml"
    counter = counter_on(demo)
    press(counter, "enter", "escape")
    before = path.read_bytes()
    press(counter, "enter", "home", "down", "1", "/", *"tow bar", "enter", "enter", "/", *"laptop", "enter", "-")
    press(counter, "/", *"customer's name", "enter", *"A. Person", "enter", "f4", "escape")
    assert path.read_bytes() != before
    press(counter, "enter", "f4", "f4", "f4", "escape")
    assert path.read_bytes() == before
    press(counter, "enter", "f5", "f5", "f5", "f5", "escape")
    assert b"A. Person" in path.read_bytes()
    assert b"tow-bar" in path.read_bytes()
