"""A new seller alone: the guided job is followed by doing what it says, and leaves the jobs of the house alone."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.tui.guide import LESSONS, Guide
from specbuilder.tui.keyboard import Keyboard
from specbuilder.tui.line import wrapped
from specbuilder.tui.practice import Practice

from .stage import WINDOWS, Stage, on_stage

KEYS = {**Keyboard().names(), "step-after": "right", "back": "escape", "enter": "enter"}
TWO_MINUTES_OF_KEYS = 60


def guide(stage: Stage) -> Guide:
    found = stage.app.counter.guide
    assert found is not None
    return found


@WINDOWS
async def test_every_lesson_is_followed_by_its_keys_alone(demo: Path, size: tuple[int, int], plain: bool) -> None:
    before = {path.name: path.read_bytes() for path in demo.iterdir()}
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("g")
        await stage.found()
        stage.presses = 0
        for number, lesson in enumerate(LESSONS[:-1], 1):
            screen = await stage.found()
            assert guide(stage).at == number - 1, screen
            if not stage.app.counter.shut:
                assert f"Practice {number} of {len(LESSONS)}" in screen
            await stage.press(*(KEYS.get(key, key) for key in lesson.keys))
        screen = await stage.found()
        assert "ends the practice" in " ".join(screen.split())
        assert stage.presses <= TWO_MINUTES_OF_KEYS
        assert "0147" not in screen, "the jobs of the house are laid aside"
        screen = await stage.press("g")
        assert stage.app.counter.guide is None
        assert "0147" in screen
        assert "Practice" not in screen
    assert {path.name: path.read_bytes() for path in demo.iterdir()} == before


async def test_whoever_leaves_the_program_in_the_middle_leaves_nothing_behind(demo: Path) -> None:
    async with on_stage(demo, (80, 24)) as stage:
        await stage.press("g")
        await stage.found()
        await stage.press("n", "2")
        opening = stage.app.counter.opening
        assert opening is not None
        practised = opening.desk.folder.path
        assert practised != demo
        assert practised.exists()
    assert not practised.parent.exists()


async def test_what_a_new_seller_does_beside_the_lesson_is_no_harm(demo: Path) -> None:
    async with on_stage(demo, (80, 24)) as stage:
        await stage.press("g")
        await stage.found()
        await stage.press("n", "u", "l", "escape", "right", "left", "2", "escape")
        assert guide(stage).at == 2
        assert "Practice 3" in await stage.press("enter")


def test_a_lesson_takes_at_most_three_lines_of_the_smallest_window() -> None:
    for number, lesson in enumerate(LESSONS, 1):
        assert len(wrapped(f"Practice {number} of {len(LESSONS)}: {lesson.words()}", 58)) <= 3


async def test_what_goes_wrong_before_the_first_lesson_is_said_and_the_jobs_come_back(
    demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("SPECBUILDER_TRACE")
    async with on_stage(demo, (80, 24)) as stage:
        await stage.found()

        def broken(practice: Practice) -> None:
            raise MemoryError("no room")

        monkeypatch.setattr(Practice, "load", broken)
        await stage.press("g")
        screen = await stage.found()
        assert "No practice now" in screen
        assert "0147" in screen
        assert stage.app.counter.guide is None
