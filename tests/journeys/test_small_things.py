"""What a seller would stumble over: hidden jobs, narrow windows, dates, and where a step back leads."""

from __future__ import annotations

import datetime
import shutil
from pathlib import Path

import pytest

from specbuilder.tui.items import OnAnswer, OnJob

from .bench import counter_on, lines, press, spec
from .stage import on_stage


async def test_the_list_says_that_it_hides_other_jobs_and_how_to_see_them(demo: Path) -> None:
    async with on_stage(demo) as stage:
        screen = await stage.press("enter", "escape")
        assert "1 of 3 jobs is shown; Down shows the others" in screen
        screen = await stage.press("down")
        assert "Down shows the others" not in screen
        assert all(name in screen for name in ("0147", "0151", "0152"))


@pytest.mark.parametrize(
    ("key", "stands_on"), [("down", "0152"), ("up", "0147"), ("pagedown", "0152"), ("home", "0147"), ("end", "0152")]
)
def test_the_first_key_that_moves_on_the_list_moves_behind_a_job_too(demo: Path, key: str, stands_on: str) -> None:
    counter = counter_on(demo)
    press(counter, "down", "enter")
    assert spec(counter).number == "0151"
    press(counter, "escape")
    assert counter.jobs.items() == [OnJob("0151")], "no other name is shown by a slip"
    press(counter, key)
    assert counter.jobs.at == OnJob(stands_on)


async def test_the_list_begins_on_the_job_that_was_open_last(demo: Path) -> None:
    async with on_stage(demo) as stage:
        assert stage.app.counter.jobs.at == OnJob("0147"), "no job was open yet"
        await stage.press("down", "enter", "1", "escape")
    async with on_stage(demo) as stage:
        assert stage.app.counter.jobs.at == OnJob("0151")
        assert len(stage.app.counter.jobs.items()) == 3


async def test_after_a_kill_the_list_begins_on_the_variant_that_was_open(demo: Path, tmp_path: Path) -> None:
    killed = tmp_path / "killed"
    async with on_stage(demo) as stage:
        await stage.press("enter", "v", "n", "f")
        assert stage.spec().number == "0147b"
        shutil.copytree(demo, killed)
    async with on_stage(killed) as stage:
        assert stage.app.counter.jobs.at == OnJob("0147b")


async def test_letters_no_job_has_are_cleared_by_one_escape(demo: Path) -> None:
    async with on_stage(demo) as stage:
        screen = await stage.press("/", "'xyzzy'")
        assert "No job has these letters. Esc clears them." in screen
        screen = await stage.press("escape")
        assert "One nurse" in screen
        assert "The Saturday family" in screen


async def test_the_narrowest_window_tells_every_count_and_every_step(demo: Path) -> None:
    async with on_stage(demo, (60, 18)) as stage:
        screen = await stage.press("down", "down", "enter")
        rows = screen.splitlines()
        assert rows[1].endswith(" broken")
        assert " open " in rows[1]
        assert "che" in rows[2].lower()
        assert len([tab for tab in rows[2].split() if tab]) == 9


def test_undo_stands_where_it_changed_something(tmp_path: Path) -> None:
    counter = counter_on(tmp_path)
    press(counter, "n", "2", "enter", "right", "right", "right", "u")
    assert counter.walk is not None
    assert counter.main.at == OnAnswer("adults")
    assert counter.walk.step.value == "brief"
    press(counter, "right", "r")
    assert counter.main.at == OnAnswer("adults")
    assert spec(counter).answers.get("adults") == 2


def test_the_example_of_a_date_is_one_that_may_be_meant(tmp_path: Path) -> None:
    counter = counter_on(tmp_path)
    press(counter, "n", "2", "o", "enter", "down")
    year = str(datetime.date.today().year)
    assert any(f"Date as {year[:3]}" in line.text for line in counter.top.foot(60))


def test_the_help_says_what_the_figures_on_the_line_of_steps_count(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "?")
    told = "\n".join(row.text for row in lines(counter, 78))
    assert "kitchen?2!1: at that step two questions are open and one rule is broken" in told


async def test_the_narrowest_window_says_whether_n_is_a_new_job_or_the_next_open_thing(demo: Path) -> None:
    async with on_stage(demo, (60, 18)) as stage:
        assert "n new job" in stage.screen()
        for step in range(9):
            screen = await stage.press(*(["enter", *["left"] * 8] if step == 0 else ["right"]))
            assert "n next" in screen
            assert "n new job" not in screen
        screen = await stage.press("l")
        assert "n next" in screen
        screen = await stage.press("escape", "v")
        assert "n new variant" in screen
