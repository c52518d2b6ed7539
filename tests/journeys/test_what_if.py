"""U3: what if. The spec, the journal and the file stay as they are until it is kept."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from specbuilder.model.edits import Take
from specbuilder.model.ids import BriefKey
from specbuilder.tui.counter import Counter
from specbuilder.tui.items import OnAnswer
from specbuilder.tui.screens.heading import hints

from .bench import counter_on, edits, press, spec, to_jobs
from .hand_made import ALL, at_once
from .stage import WINDOWS, on_stage


@WINDOWS
async def test_u3_another_van_is_tried_and_left(demo: Path, size: tuple[int, int], plain: bool) -> None:
    path = demo / "0147-r1.toml"
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter", "escape", "enter")
        before, glance, bytes_ = stage.spec(), stage.screen().splitlines()[1], path.read_bytes()
        stage.presses = 0
        screen = await stage.press("t")
        assert "WHAT IF 0147" in screen
        await stage.press("/", "'tor'", "enter", "enter")
        screen = await stage.found()
        assert "CHANGE" in screen
        assert "now broken" in screen or "DOES NOT FIT" in screen, "what it breaks is read before it is taken"
        others = re.search(r"STAYS  (\d+) of (\d+) others", screen)
        assert others
        screen = await stage.press("enter")
        rows = screen.splitlines()
        assert f"stays {others[1]} of {int(others[2]) + 1}" in rows[1], "the same choices, and the van that is switched"
        assert "WHAT IF 0147: Tormwain" in rows[0].replace("  ", " ")
        assert "breaks " in rows[1]
        assert stage.spec().has("tormwain-left")
        screen = await stage.press("escape")
        assert stage.presses <= 10
        assert "WHAT IF" not in screen.splitlines()[0]
        assert screen.splitlines()[1] == glance
        assert stage.spec() == before
        screen = await stage.press("t")
        assert "WHAT IF 0147: Tormwain" in screen, "it was kept"
        await stage.press("escape", "escape")
        assert path.read_bytes() == bytes_


def tried(folder: Path, *keys: str) -> Counter:
    counter = counter_on(folder, searches=ALL, runner=at_once)
    press(counter, "enter", "t", *keys)
    return counter


def test_a_what_if_is_on_every_page_and_writes_nothing(demo: Path) -> None:
    counter = tried(demo)
    journal = (demo / "0147-r1.journal").read_bytes()
    press(counter, "/", *"tow bar", "enter", "enter")
    assert spec(counter).has("tow-bar")
    for key in ("l", "escape", "o", "escape", "left", "right", "f", "escape", "f1", "escape"):
        press(counter, key)
        assert counter.walk is not None
        first, second, *_ = counter.walk.heading(78)
        assert first.text.startswith(" WHAT IF 0147: Tow bar")
        assert "(+" in second.text
        assert "breaks 0" in second.text
        assert len(first.text) == len(second.text) == 78, "the banner is as wide as the window"
    assert (demo / "0147-r1.journal").read_bytes() == journal


def test_undo_and_redo_in_a_what_if_are_its_own(demo: Path) -> None:
    counter = tried(demo)
    before = spec(counter)
    press(counter, "/", *"tow bar", "enter", "enter", "u", "u", "u")
    assert spec(counter) == before
    press(counter, "r")
    assert spec(counter).has("tow-bar")
    press(counter, "escape")
    assert edits(counter) == 0
    assert spec(counter) == before


def test_what_was_tried_is_kept_as_one_step_of_undo(demo: Path) -> None:
    counter = tried(demo)
    before = spec(counter)
    press(counter, "/", *"tow bar", "enter", "enter", "/", *"laptop", "enter", "-")
    wanted = spec(counter)
    press(counter, "k")
    assert not counter.trying
    assert spec(counter) == wanted
    assert edits(counter) == 1
    assert "Kept" in counter.message
    press(counter, "u")
    assert spec(counter) == before
    press(counter, "r")
    to_jobs(counter)
    again = counter_on(demo)
    press(again, "enter")
    assert [c.option for c in spec(again).choices] == [c.option for c in wanted.choices]


def test_a_what_if_is_tried_again_over_the_job_as_it_stands_then(demo: Path) -> None:
    counter = tried(demo, "/", *"tow bar", "enter", "enter", "escape")
    press(counter, "/", *"laptop", "enter", "-", "t")
    assert spec(counter).has("tow-bar")
    assert not spec(counter).has("laptop"), "what was done to the job since is in it"
    press(counter, "escape")
    assert not spec(counter).has("tow-bar")


def test_nothing_is_kept_where_nothing_was_tried(demo: Path) -> None:
    counter = tried(demo, "k")
    assert counter.trying
    press(counter, "escape", "k")
    assert "Nothing was tried" in counter.message
    assert edits(counter) == 0


def test_the_hints_say_how_a_what_if_is_left_and_kept(demo: Path) -> None:
    counter = tried(demo)
    told = hints(counter.top, 200).text
    assert "Esc back to the job" in told
    assert "k keep" in told
    assert "t what if" not in told
    press(counter, "escape")
    assert "k keep" not in hints(counter.top, 200).text


def test_a_job_of_another_counter_can_be_tried_and_not_kept(demo: Path) -> None:
    first = counter_on(demo)
    press(first, "enter")
    counter = tried(demo, "/", *"tow bar", "enter", "enter")
    assert spec(counter).has("tow-bar")
    press(counter, "k")
    assert "Read only" in counter.message
    press(counter, "escape")
    assert not spec(counter).has("tow-bar")


@pytest.mark.parametrize("keys", [("x",), ("q",), ("escape", "escape")])
def test_what_is_written_is_the_job_and_never_the_what_if(demo: Path, keys: tuple[str, ...]) -> None:
    counter = tried(demo, "/", *"tow bar", "enter", "enter", *["right"] * 8)
    press(counter, *keys)
    to_jobs(counter)
    written = list(demo.rglob("*0147*.toml"))
    assert written
    assert not [path for path in written if "tow-bar" in path.read_text()]


def test_what_was_half_typed_in_a_what_if_does_not_stand_over_the_job(demo: Path) -> None:
    counter = tried(demo, "escape")
    night = OnAnswer(BriefKey("design_temp_c"))
    counter.go_to(night)
    counter.lay()
    row = next(row.text for row in counter.top.shown if row.item == night)
    press(counter, "t", *"55", "enter", "escape")
    assert "not taken: 55" in next(row.text for row in counter.top.shown if row.item == night)
    press(counter, "escape")
    assert next(row.text for row in counter.top.shown if row.item == night) == row
    press(counter, *"12", "escape", "t", *"3", "escape", "escape")
    assert counter.drafts == {night: "12"}, "what was half typed in the job is still there"


def test_would_be_changes_nothing(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter")
    before = spec(counter)
    assert counter.would_be(Take(option="tow-bar")).spec.has("tow-bar")  # type: ignore[arg-type]
    assert spec(counter) == before


def test_what_is_kept_and_undone_is_named_as_far_as_the_last_line_has_room(demo: Path) -> None:
    counter = tried(demo, "/", *"laptop", "enter", "-", "/", *"tow bar", "enter", "enter", "k")
    assert counter.message == "Kept: Tow bar with fixed ball and without Laptop"
    press(counter, "u")
    assert counter.message == "Undone: Tow bar with fixed ball and Laptop, 60 W is back"
    counter.window_cells = 60
    press(counter, "r", "u")
    assert counter.message == "Undone: Tow bar with fixed ball and 1 more"
