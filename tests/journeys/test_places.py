"""The window, the list of jobs, the mouse, what a kill leaves, what cannot be read: everything around the walk."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specbuilder.storage.rules_files import rules_folder
from specbuilder.tui.keys import Where

from .bench import counter_on, press, spec
from .conftest import EXAMPLES
from .stage import SMALL, WIDE, WINDOWS, on_stage


@WINDOWS
async def test_every_step_fits_its_window_and_says_the_same_without_colour(
    demo: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        screens = [await stage.press("enter")]
        screens += [await stage.press("right") for _ in range(8)]
        for screen in screens:
            rows = screen.splitlines()
            assert len(rows) <= size[1]
            assert all(len(row) <= size[0] for row in rows)
            assert "£24,414" in rows[1], "the glance line never moves"
            assert "F1 keys" in rows[-1]
        assert all(screen.isascii() is plain or not plain or "£" in screen for screen in screens)


async def test_a_window_that_is_too_small_says_so_and_loses_nothing(demo: Path) -> None:
    async with on_stage(demo, (52, 16)) as stage:
        screen = await stage.press("enter")
        assert "This window is 52 by 16" in screen
        assert "The screens need 60 by 18" in " ".join(screen.split())
        await stage.pilot.resize_terminal(60, 18)
        await stage.pilot.pause()
        screen = stage.screen()
        assert "£24,414" in screen
        assert all(len(row) <= 60 for row in screen.splitlines())
        await stage.pilot.resize_terminal(40, 10)
        await stage.pilot.pause()
        assert "0147" in stage.screen()


async def test_panes_come_with_the_width(demo: Path) -> None:
    async with on_stage(demo, SMALL) as stage:
        screen = await stage.press("down", "down", "enter")
        assert "LEDGERS, worst first" not in screen
        await stage.pilot.resize_terminal(140, 40)
        await stage.pilot.pause()
        screen = stage.screen()
        assert "LEDGERS, worst first" in screen
        assert "UNDECIDED, NOT KNOWN" in screen
        await stage.pilot.resize_terminal(180, 50)
        await stage.pilot.pause()
        assert stage.screen().count("UNDECIDED, NOT KNOWN") == 1


async def test_coming_back_from_a_job_shows_no_other_name_until_down(demo: Path) -> None:
    async with on_stage(demo) as stage:
        assert stage.screen().count("01") >= 3
        screen = await stage.press("enter", "escape")
        assert "The Saturday family" in screen
        assert "One nurse" not in screen
        screen = await stage.press("escape")
        assert "Press q to leave; all is saved" in screen
        assert stage.app.is_running
        assert "One nurse" in await stage.press("down")


async def test_a_job_is_found_by_a_few_letters(demo: Path) -> None:
    async with on_stage(demo) as stage:
        screen = await stage.press("/", "'nurs'")
        assert "One nurse" in screen
        screen = await stage.press("enter", "enter")
        assert "0151 One nurse" in screen


async def test_leaving_the_program_saves_the_open_job(empty: Path) -> None:
    async with on_stage(empty) as stage:
        await stage.press("n", "3", "escape", "q")
        assert not stage.app.is_running
    assert (empty / "0001-r1.toml").is_file()
    assert not (empty / "0001.lock").exists()


async def test_a_kill_leaves_cursor_and_half_typed_text_where_they_were(empty: Path) -> None:
    async with on_stage(empty) as stage:
        await stage.press("n", "2", "enter", "2", "enter", "'9 1'")
        shutil.copytree(empty, empty.parent / "killed", ignore=shutil.ignore_patterns("*.lock"))
    async with on_stage(empty.parent / "killed") as stage:
        screen = await stage.press("enter")
        assert "not taken: 9 1" in screen
        assert next(row for row in screen.splitlines() if "not taken" in row).startswith("►")
        await stage.press("enter", "'2'", "enter")
        assert stage.spec().answers.get("child_ages") == (9, 12)


async def test_a_job_that_cannot_be_read_says_where_and_opens_from_what_is_kept(demo: Path) -> None:
    async with on_stage(demo) as stage:
        await stage.press("enter", "/", "'tow bar'", "enter", "enter", "escape")
    path = demo / "0147-r1.toml"
    path.write_text(path.read_text().replace("[customer]", "[customer", 1))
    async with on_stage(demo) as stage:
        screen = await stage.press("enter")
        assert "This job cannot be read" in screen
        assert "0147-r1.toml" in screen
        screen = await stage.press("enter")
        assert stage.spec().has("tow-bar")


async def test_faults_of_the_rules_are_said_and_nothing_opens(demo: Path, tmp_path: Path) -> None:
    rules = tmp_path / "rules"
    shutil.copytree(str(rules_folder()), rules)
    (rules / "options" / "roof.toml").write_text("[[group]\n")
    async with on_stage(demo, rules=rules) as stage:
        screen = stage.screen()
        assert "The program starts when" in screen
        assert "options/roof.toml" in screen
        screen = await stage.press("escape", "enter", "n", "2")
        assert "The program starts when" in screen
        await stage.press("q")
        assert not stage.app.is_running


async def test_a_second_counter_reads_and_changes_nothing(demo: Path) -> None:
    first = counter_on(demo)
    press(first, "enter")
    second = counter_on(demo)
    press(second, "enter")
    assert second.walk is not None
    before = spec(second)
    press(second, "/", *"tow bar", "enter", "enter")
    assert spec(second) == before
    assert "Read only: counter 1 has this job since" in second.message
    press(second, "escape", "escape", "escape")
    press(first, "/", *"tow bar", "enter", "enter", "escape")
    assert "tow-bar" in (demo / "0147-r1.toml").read_text()


async def test_keys_typed_before_the_catalogue_is_read_are_kept(empty: Path) -> None:
    counter = counter_on(empty)
    opening, counter.opening = counter.opening, None
    press(counter, "n", "2", "enter", "2")
    assert "keys are kept" in counter.message
    assert opening is not None
    counter.loaded(opening)
    assert spec(counter).answers.given == {"adults": 2, "children": 2}


async def test_the_spec_is_handed_over_from_the_check(demo: Path) -> None:
    async with on_stage(demo, WIDE) as stage:
        screen = await stage.press("enter", *["right"] * 8, "x")
        assert "Spec written to" in screen
        written = demo / "handed-over" / "0147-r1.toml"
        assert written.is_file()
        await stage.press("end", "enter")
        assert stage.app.counter.top.where is Where.CHECK


async def test_a_note_is_accepted_in_writing_by_two_keys_and_taken_back_by_one(demo: Path) -> None:
    async with on_stage(demo) as stage:
        await stage.press("enter", *["right"] * 8, "home")
        screen = await stage.press("a")
        assert "ACCEPT in writing" in screen
        assert "The Saturday family" in screen
        assert not stage.spec().accepted
        await stage.press("enter")
        (accepted,) = stage.spec().accepted
        assert accepted.by == "The Saturday family"
        assert accepted.words
        await stage.press("u")
        assert not stage.spec().accepted


@pytest.mark.parametrize("size", [SMALL, WIDE])
async def test_one_plain_click_does_everything_the_walk_needs(demo: Path, size: tuple[int, int]) -> None:
    async with on_stage(demo, size) as stage:

        async def click(word: str) -> str:
            rows = stage.screen().splitlines()
            y = next(i for i, row in enumerate(rows) if word in row)
            await stage.pilot.click(offset=(rows[y].index(word) + 1, y))
            await stage.pilot.pause()
            return stage.screen()

        await click("One nurse")
        screen = await click("One nurse")
        assert "0151 One nurse" in screen
        assert "ROOF" in await click("roof")
        screen = await click("Leave the roof")
        screen = await click("Leave the roof")
        assert "one of" in screen
        screen = await click("Fixed high cap, short")
        assert not stage.spec().has("high-cap-short")
        assert "OPEN THINGS" in await click("kg left")
        screen = await click("Esc back") if "Esc back" in screen else await stage.press("escape")
        assert "OPEN THINGS" not in screen


async def test_the_ground_can_be_turned_to_light_and_back(demo: Path) -> None:
    async with on_stage(demo) as stage:
        await stage.press("f9", "'light'", "enter")
        assert stage.app.look.name == "light"
        assert "#e6e6e6" in stage.app.export_screenshot().lower()
        await stage.press("f9", "'light'", "enter")
        assert stage.app.look.name == "dark"


async def test_the_real_van_is_filled_in_by_typing(empty: Path) -> None:
    async with on_stage(empty) as stage:
        await stage.press("n", "2", "/", "'base van'", "enter", "end")
        await stage.press(*["up"] * 6, "enter", "'12345'")
        screen = await stage.press("enter")
        assert "last six characters" in screen
        await stage.press("'a'", "enter", "'2031'", "enter")
        data = stage.spec().van_data
        assert (data.vin_tail, data.year) == ("12345A", 2031)


def test_examples_open_as_jobs(tmp_path: Path) -> None:
    for number, path in enumerate(sorted(EXAMPLES.glob("*.toml")), 1):
        shutil.copy(path, tmp_path / f"{number:04}-r1.toml")
    counter = counter_on(tmp_path)
    for _ in range(len(counter.jobs.rows)):
        press(counter, "enter")
        assert counter.walk is not None
        press(counter, *["right"] * 8, *["left"] * 8, "escape", "down")


async def test_a_numbered_answer_is_given_by_a_click(empty: Path) -> None:
    async with on_stage(empty) as stage:
        rows = (await stage.press("n")).splitlines()
        y = next(i for i, row in enumerate(rows) if row.startswith(" 1  2  3"))
        await stage.pilot.click(offset=(rows[y].index("3"), y))
        await stage.pilot.pause()
        assert stage.spec().answers.get("adults") == 3


async def test_several_answers_end_with_enter(empty: Path) -> None:
    async with on_stage(empty) as stage:
        await stage.press("n", "2", "/", "'must run'", "enter", "1", "2")
        assert "must_run" not in stage.spec().answers.given
        await stage.press("enter")
        given = stage.spec().answers.get("must_run")
        assert isinstance(given, tuple)
        assert len(given) == 2


async def test_escape_keeps_what_was_half_typed_beside_its_line(empty: Path) -> None:
    async with on_stage(empty) as stage:
        screen = await stage.press("n", "2", "enter", "2", "enter", "'9 1'", "escape")
        assert "not taken: 9 1" in screen
        assert stage.spec().answers.get("child_ages") is None
        screen = await stage.press("enter")
        assert "9 1" in screen
        await stage.press("backspace", "'6'", "enter")
        assert stage.spec().answers.get("child_ages") == (9, 6)


async def test_a_mistake_of_the_program_costs_one_key(demo: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("SPECBUILDER_TRACE")
    async with on_stage(demo) as stage:
        await stage.press("enter")
        before = stage.spec()

        def fails(*_: object) -> None:
            raise RuntimeError("[/] planted")

        with monkeypatch.context() as patch:
            patch.setattr("specbuilder.tui.walk.Walk.next_thing", fails)
            screen = await stage.press("n")
        assert "mistake of the program" in screen
        assert stage.app.is_running
        assert stage.spec() == before
        await stage.press("escape")
        assert "The Saturday family" in stage.screen()


async def test_a_disk_that_takes_nothing_is_said_and_nothing_is_lost(tmp_path: Path) -> None:
    folder = tmp_path / "jobs"
    folder.write_text("in the way")
    counter = counter_on(folder)
    press(counter, "n", "2", "enter", "1")
    assert "Could not write to the disk" in counter.message
    assert spec(counter).answers.given == {"adults": 2, "children": 1}
    press(counter, "escape")
    assert counter.walk is not None, "what is nowhere written is not left"
    folder.unlink()
    press(counter, "escape")
    assert counter.walk is None
    again = counter_on(folder)
    press(again, "enter")
    assert spec(again).answers.given == {"adults": 2, "children": 1}
    press(again, "u", "u")
    assert not spec(again).answers.given
