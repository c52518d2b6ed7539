"""What happens around a counter: windows resized, keys typed ahead, pastes, slow disks, rules edited meanwhile."""

from __future__ import annotations

import shutil
import time
from collections.abc import Iterator
from pathlib import Path
from threading import Event

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import JobState
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.ways import Goal, RankBy, WaysOut
from specbuilder.storage.journal_file import JournalFile
from specbuilder.storage.open_job import OpenJob
from specbuilder.tui.errands import Stop
from specbuilder.tui.items import OnAnswer
from specbuilder.tui.searches import Searches
from tests.conftest import RULES

from .bench import counter_on, press, spec, to_jobs
from .hand_made import Held, let_in
from .stage import SMALL, Stage, on_stage

POD = OptionId("pod-galley")
TO_POD = ("/", "'pod galley'", "enter", "enter")


class Gated:
    """A search that waits until it is let go."""

    def __init__(self) -> None:
        self.gate = Event()

    def __call__(self, catalogue: Catalogue, spec: Spec, goal: Goal, rank_by: RankBy, stop: Stop) -> Iterator[WaysOut]:
        while not self.gate.wait(0.01):
            if stop():
                return
        yield from let_in(catalogue, spec, goal, rank_by, stop)


async def resized(stage: Stage, columns: int, rows: int) -> str:
    await stage.pilot.resize_terminal(columns, rows)
    await stage.pilot.pause()
    return stage.screen()


async def test_a_window_resized_while_a_search_runs_shows_what_it_finds(demo: Path) -> None:
    gated = Gated()
    async with on_stage(demo) as stage:
        opening = stage.app.counter.opening
        assert opening is not None
        opening.searches = Searches(ways_out=gated)
        await stage.press("enter")
        before = stage.spec()
        await stage.press(*TO_POD)
        for columns, rows in ((140, 40), (60, 18), (40, 10), (200, 60), (60, 18)):
            screen = await resized(stage, columns, rows)
            assert all(len(row) <= columns for row in screen.splitlines())
        assert "looking for ways out" in await resized(stage, 100, 30)
        gated.gate.set()
        await stage.found()
        assert "looking for ways out" not in stage.screen()
        await resized(stage, *SMALL)
        await stage.press("1")
        assert stage.spec().has(POD)
        await stage.press("u")
        assert stage.spec() == before


@pytest.mark.long
async def test_a_window_that_is_made_too_small_meanwhile_still_takes_what_was_found(demo: Path) -> None:
    gated = Gated()
    async with on_stage(demo) as stage:
        opening = stage.app.counter.opening
        assert opening is not None
        opening.searches = Searches(ways_out=gated)
        await stage.press("enter", *TO_POD)
        assert "40 by 10" in await resized(stage, 40, 10)
        gated.gate.set()
        await stage.found()
        assert "Pod galley" in await resized(stage, *SMALL)
        assert "1 " in stage.screen()
        await stage.press("escape")
        assert stage.app.counter.walk is not None


def test_keys_typed_ahead_of_a_slow_answer_are_kept_in_order_and_a_digit_waits_for_what_is_painted(demo: Path) -> None:
    held = Held()
    counter = counter_on(demo, searches=Searches(ways_out=let_in), runner=held)
    press(counter, "enter", "/", *"pod galley", "enter", "enter")
    before = spec(counter)
    press(counter, "1")
    assert spec(counter) == before
    assert counter.message, "it is said why the digit took nothing"
    press(counter, "escape", "/", *"tow bar", "enter", "enter")
    assert spec(counter).has(OptionId("tow-bar")), "what was typed meanwhile was done"
    held.let_run()
    assert not spec(counter).has(POD), "an answer about another spec is dropped"
    press(counter, "u", "/", *"pod galley", "enter", "enter")
    held.let_run()
    counter.lay()
    press(counter, "1")
    assert spec(counter).has(POD)


@pytest.mark.parametrize("where", ["name", "find"])
def test_a_paste_of_a_hundred_thousand_characters_is_cut_and_said(demo: Path, where: str) -> None:
    counter = counter_on(demo)
    press(counter, "enter")
    before = spec(counter)
    if where == "find":
        press(counter, "/")
    else:
        press(counter, "/", *"customer's name", "enter")
    began = time.perf_counter()
    counter.paste("Mortimer " * 11_200)
    assert time.perf_counter() - began < 2
    assert "of 100,800 pasted characters" in counter.message
    press(counter, "enter")
    if where == "name":
        assert "120 is the most" in counter.message
        assert counter.top.entry is not None, "what was pasted is still there to be shortened"
        press(counter, *["backspace"] * 400, "enter")
        assert spec(counter).customer.name == ("Mortimer " * 12)[:100].strip()
    else:
        assert spec(counter) == before


def test_a_figure_is_pasted_where_figures_stand_and_letters_are_not(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter")
    barrier = OnAnswer(BriefKey("parking_limit_mm"))
    counter.go_to(barrier)
    before = spec(counter)
    counter.paste("no idea")
    assert "Nothing of what was pasted" in counter.message
    press(counter, "escape")
    assert spec(counter) == before
    assert counter.drafts.get(barrier, "").strip() == ""
    counter.paste("2,300 mm")
    press(counter, "enter")
    assert spec(counter).answers.get(BriefKey("parking_limit_mm")) == 2300


@pytest.mark.parametrize(("typed", "kilograms"), [("2,5", 2.5), ("2.5", 2.5)])
def test_a_decimal_comma_is_as_good_as_a_point(demo: Path, typed: str, kilograms: float) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"fri", "enter", "y", *typed, "enter")
    (fridge,) = spec(counter).chosen(OptionId("fridge-own"))
    assert fridge.own_part is not None
    assert fridge.own_part.mass_kg == kilograms


def slow(monkeypatch: pytest.MonkeyPatch, seconds: float) -> list[bytes]:
    """Every write of a journal takes so long."""
    written: list[bytes] = []
    really = JournalFile.append

    def append(self: JournalFile, line: bytes) -> None:
        time.sleep(seconds)
        written.append(line)
        really(self, line)

    monkeypatch.setattr(JournalFile, "append", append)
    return written


def test_a_slow_share_is_said_once_and_nothing_is_lost(demo: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    counter = counter_on(demo)
    press(counter, "enter")
    written = slow(monkeypatch, 0.6)
    press(counter, "/", *"tow bar", "enter", "enter")
    assert "The jobs folder is slow" in counter.message
    assert counter.hint, "and undo is still named"
    press(counter, "/", *"laptop", "enter", "-")
    assert "slow" not in counter.message, "it is said once"
    assert len(written) == 2
    wanted = spec(counter)
    monkeypatch.undo()
    to_jobs(counter)
    again = counter_on(demo)
    press(again, "enter")
    assert [choice.option for choice in spec(again).choices] == [choice.option for choice in wanted.choices]


@pytest.mark.long
async def test_keys_pressed_while_a_slow_share_writes_are_all_done_in_order(
    empty: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with on_stage(empty) as stage:
        await stage.press("n", "2", "enter")
        slow(monkeypatch, 0.15)
        await stage.press("2", "enter", "'9 6'", "enter", "4", "enter")
        given = stage.spec().answers.given
        assert (given["children"], given["child_ages"]) == (2, (9, 6))
        await stage.press("escape")
        assert stage.stored("0001").answers == stage.spec().answers


@pytest.fixture
def own_rules(tmp_path: Path) -> Path:
    """A copy of the rules that may be edited."""
    rules = tmp_path / "rules"
    shutil.copytree(RULES, rules)
    return rules


def edit_price(rules: Path) -> None:
    """Somebody makes the tow bar dearer."""
    path = rules / "options" / "base-van.toml"
    text = path.read_text("utf-8")
    path.write_text(text.replace("price_net_pence", "# edited\nprice_net_pence", 1), "utf-8")


def test_a_job_that_is_slow_to_save_is_saved_and_it_is_said(demo: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"tow bar", "enter", "enter")
    really = OpenJob.save

    def save(self: OpenJob, catalogue: Catalogue, spec: Spec, report: Report) -> None:
        time.sleep(0.6)
        really(self, catalogue, spec, report)

    monkeypatch.setattr(OpenJob, "save", save)
    press(counter, "escape")
    assert "Job 0147 is saved. The jobs folder is slow" in counter.message
    assert "tow-bar" in (demo / "0147-r1.toml").read_text("utf-8")
    monkeypatch.undo()
    press(counter, "enter", "escape")
    assert "slow" not in counter.message


async def test_rules_edited_while_the_program_runs_are_said_and_the_job_goes_on_with_those_it_has(
    demo: Path, own_rules: Path
) -> None:
    async with on_stage(demo, rules=own_rules) as stage:
        await stage.press("enter")
        digest = stage.app.counter.catalogue.digest
        edit_price(own_rules)
        await stage.press("/", "'tow bar'", "enter", "enter")
        assert stage.spec().has(OptionId("tow-bar"))
        assert stage.app.counter.catalogue.digest == digest
        screen = await stage.press("escape")
        assert "Rules edited since this program read them count from its next start on" in " ".join(screen.split())
        assert stage.stored("0147").has(OptionId("tow-bar"))
        (own_rules / "options" / "base-van.toml").write_text("not = [rules", "utf-8")
        await stage.press("enter", "u")
        assert not stage.spec().has(OptionId("tow-bar")), "unreadable rules beside it keep nothing from being done"


async def test_a_quote_waits_for_the_rules_it_rests_on(demo: Path, own_rules: Path) -> None:
    async with on_stage(demo, rules=own_rules) as stage:
        await stage.press("enter")
        edit_price(own_rules)
        before = stage.spec()
        await stage.press("p", "s")
        await stage.press("end", "enter")
        screen = " ".join((await stage.found()).split())
        assert "changed after the program read them: start the program again" in screen
        assert stage.spec() == before, "nothing was quoted"
        assert stage.stored("0147").state is JobState.DRAFT
    async with on_stage(demo, rules=own_rules) as stage:
        await stage.press("enter", "p", "s", "end", "enter")
        await stage.found()
        assert stage.spec().state is JobState.QUOTED
