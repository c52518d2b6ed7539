"""A job of a year ago: looked at as it was, held against today, moved to today; and the page for a colleague."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.kinds import JobState
from specbuilder.storage.seals import sealed_path
from tests.office.scene import Scene

from .house_scene import NEW_NAME, OLD_NAME, scene_of_old, set_clock
from .stage import WINDOWS, Stage, on_stage

A_YEAR, A_WEEK = 370, 7


@pytest.fixture
def scene(empty: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Scene:
    """A house that quoted the Saturday family's job with the rules of then."""
    made = scene_of_old(empty, tmp_path)
    made.quote()
    set_clock(made, monkeypatch)
    return made


def files_of(scene: Scene) -> dict[str, bytes]:
    """Every spec of the folder, as it stands there."""
    return {path.name: path.read_bytes() for path in scene.folder.glob("*.toml")}


async def asked(stage: Stage) -> str:
    """The only job of the list, found by its number: what is asked first."""
    return await stage.press("/", "'001'", "enter", "enter")


@WINDOWS
async def test_u11_a_year_old_quote_is_checked_against_today_and_a_colleague_is_answered(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    scene.days_later(A_YEAR)
    before = files_of(scene)
    async with on_stage(scene.folder, size, plain=plain) as stage:
        assert "expired" in stage.screen()
        screen = await asked(stage)
        assert "2030-03" in screen
        assert "has run out" in screen
        assert "1   look as it was" in screen
        await stage.press("2")
        screen = await stage.found()
        told = "\n".join(await stage.read_through())
        assert f"Renamed: {OLD_NAME}" in told
        assert NEW_NAME in told
        assert "+£84" in told
        stage.presses = len("/001") + len(("enter", "enter", "2"))
        await stage.press("escape", "p", "4")
        await stage.found()
        screen = await stage.press("/", "'hea'", "enter")
        assert stage.presses == 15
        assert "Heater" in screen
        await stage.press("escape", "escape", "escape", "escape")
    assert files_of(scene) == before


async def test_papers_of_what_is_looked_at_come_out_as_they_were_sealed(scene: Scene) -> None:
    scene.days_later(A_YEAR)
    async with on_stage(scene.folder) as stage:
        await asked(stage)
        await stage.press("1", "p", "x")
        await stage.found()
    kept = sealed_path(scene.folder, scene.number, 1, "quoted")
    written = list((scene.folder / "papers" / f"{scene.number}-r1").iterdir())
    assert {path.name: path.read_bytes() for path in written} == {
        path.name: path.read_bytes() for path in kept.iterdir() if path.suffix in (".txt", ".pdf")
    }


@WINDOWS
async def test_moved_to_today_it_is_a_draft_with_the_prices_of_today(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    scene.days_later(A_YEAR)
    quoted = scene.path(1).read_bytes()
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await asked(stage)
        old = scene.session()
        screen = await stage.press("3")
        assert "Revision 2 is begun" in screen
        spec = stage.spec()
        assert (spec.state, spec.revision, spec.replaces) == (JobState.DRAFT, 2, 1)
        assert spec.choices == old.spec.choices
        assert stage.app.counter.catalogue.firm.catalogue_version != "2030-03"
        await stage.press("p", "s", "enter")
        await stage.found()
        assert stage.spec().state is JobState.QUOTED
        now = stage.spec().records[-1].pence or 0
        assert now - (spec.records[-1].pence or 0) == 8400
    assert scene.path(1).read_bytes() == quoted


@WINDOWS
async def test_a_quote_that_holds_is_gone_on_with_as_it_was_quoted(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    scene.days_later(A_WEEK)
    async with on_stage(scene.folder, size, plain=plain) as stage:
        screen = await asked(stage)
        assert "1   go on as it was quoted" in screen
        await stage.press("1", "p", "s", "enter")
        await stage.found()
        assert stage.spec().state is JobState.ORDERED
        assert stage.app.counter.catalogue.firm.catalogue_version == "2030-03"
        await stage.press("escape", "escape")
        await stage.press("enter")
        assert stage.spec().state is JobState.ORDERED


async def test_a_quote_that_has_run_out_is_quoted_again_and_not_signed(scene: Scene) -> None:
    scene.days_later(A_WEEK)
    async with on_stage(scene.folder) as stage:
        await asked(stage)
        await stage.press("1")
        scene.days_later(A_YEAR)
        screen = await stage.press("p")
        assert "has run out" in screen
        screen = await stage.press("s")
        assert "QUOTE AGAIN" in screen
        await stage.press("enter")
        assert (stage.spec().state, stage.spec().revision) == (JobState.DRAFT, 2)
        assert stage.app.counter.catalogue.firm.catalogue_version != "2030-03"
        screen = await stage.press("p", "s")
        assert "QUOTE revision 2" in screen


async def test_an_edit_of_a_quote_of_older_rules_begins_a_draft_of_today(scene: Scene) -> None:
    scene.days_later(A_WEEK)
    async with on_stage(scene.folder) as stage:
        await asked(stage)
        await stage.press("1")
        screen = await stage.press("/", "'wind-out'", "enter", "-")
        assert stage.spec().revision == 2
        assert "prices of today" in screen
        assert stage.app.counter.catalogue.firm.catalogue_version != "2030-03"
        assert len(stage.spec().choices) < len(scene.spec(1).choices)


async def test_a_draft_of_older_rules_is_looked_at_or_moved_to_today(
    empty: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made = scene_of_old(empty, tmp_path)
    made.house.keep_rules(made.house.catalogue)
    set_clock(made, monkeypatch)
    before = files_of(made)
    async with on_stage(made.folder) as stage:
        screen = await asked(stage)
        assert "A draft" in screen
        await stage.press("1")
        assert stage.app.counter.catalogue.firm.catalogue_version == "2030-03"
        assert "only looked at" in stage.screen()
        await stage.press("escape")
        assert files_of(made) == before
        await stage.press("enter", "3")
        assert stage.app.counter.catalogue.firm.catalogue_version != "2030-03"
        assert stage.spec().state is JobState.DRAFT


async def test_what_is_signed_is_opened_as_it_was_agreed_without_a_question(scene: Scene) -> None:
    scene.sign()
    scene.days_later(A_YEAR)
    async with on_stage(scene.folder) as stage:
        await stage.press("enter")
        await stage.found()
        assert stage.app.counter.walk is not None
        assert stage.app.counter.catalogue.firm.catalogue_version == "2030-03"
        assert stage.spec().state is JobState.ORDERED
