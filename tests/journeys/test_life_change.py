"""A change after the signature: the change order, what is already cut, the revision it replaces, and giving it up."""

from __future__ import annotations

import pytest

from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import JobState
from specbuilder.office.verify import verify
from tests.office.scene import Scene

from .house_scene import opened
from .stage import WINDOWS, Stage, on_stage

GAS = OptionId("gas-bundle")
INDUCTION = ("/", "'ind'", "enter", "enter")


@pytest.fixture
def scene(scene: Scene) -> Scene:
    """A house in which the Saturday family's job is ordered."""
    scene.order()
    return scene


async def change_drawn_up(stage: Stage) -> str:
    """Induction instead of gas, by the first way out: the change order is begun."""
    await stage.press(*INDUCTION)
    screen = await stage.found()
    assert "WAYS OUT" in screen
    return await stage.press("1")


def options_of(stage: Stage) -> set[str]:
    return {choice.option for choice in stage.spec().choices}


@WINDOWS
async def test_u10_before_anything_is_cut_a_change_is_signed_by_ten_keys(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        screen = await change_drawn_up(stage)
        assert "change order 1 to revision 1 (signed 14 Apr)" in screen
        assert "Change order begun, revision 2." in screen
        screen = await stage.press("p")
        assert "Until it is signed the workshop builds revision 1" in screen
        screen = await stage.press("s", "enter")
        assert stage.presses == 10
        assert "builds revision 2, no longer revision 1" in screen
        await stage.found()
        assert (stage.spec().state, stage.spec().revision, stage.spec().replaces) == (JobState.CHANGED, 2, 1)


@WINDOWS
async def test_u10_after_the_cut_the_change_tells_what_is_undone_and_is_accepted_in_writing(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    scene.pass_holds("H0", "H1", "H2")
    agreed = scene.spec(1)
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        await change_drawn_up(stage)
        await stage.press("p", "enter")
        await stage.found()
        told = "\n".join(await stage.read_through())
        assert "already" in told
        assert "cut at B2" in " ".join(told.split())
        await stage.press("escape", "escape")
        stage.presses = 7  # reading the paper was no part of the journey
        screen = await stage.press("p", "s")
        assert "1 thing stands in the way" in screen
        assert "(ESTIMATE) to undo what" in screen
        screen = await stage.press("enter", "enter", "enter")
        assert stage.presses == 12
        await stage.found()
        signed = stage.spec()
        assert (signed.state, signed.revision, signed.replaces) == (JobState.CHANGED, 2, 1)
        assert signed.undone
    assert scene.spec(1) == agreed
    first = verify(scene.house, scene.path(1), scene.now.date())
    assert not first.good
    assert verify(scene.house, scene.path(2), scene.now.date()).good


@WINDOWS
async def test_the_revision_that_was_replaced_is_looked_at_and_leaves_the_house_no_more(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        await change_drawn_up(stage)
        await stage.press("p", "s", "enter")
        await stage.found()
        screen = await stage.press("e")
        assert "REVISIONS of job" in screen
        screen = await stage.press("enter")
        assert "only looked at" in screen
        assert stage.spec().has(GAS)
        screen = await stage.press("p")
        assert "REPLACED by revision 2" in screen
        assert "not to be built" in await stage.press("x")
        await stage.found()
        assert not (scene.folder / "papers").exists()
        await stage.press("1")
        assert "REPLACED" in (await stage.found()).upper()
        await stage.press("escape", "escape", *["right"] * 8)
        assert "not to be built" in await stage.press("x")
        assert not (scene.folder / "handed-over").exists()
        before = stage.spec()
        assert "nothing is changed in it" in await stage.press("/", "'charging sock'", "enter", "+")
        assert stage.spec() == before
        await stage.press("escape")
        await stage.press("enter")
        assert stage.spec().revision == 2
    assert files_changed_since_signing(scene) == set()


def files_changed_since_signing(scene: Scene) -> set[str]:
    """Revisions that are not as they were signed."""
    points = {1: verify(scene.house, scene.path(1), scene.now.date()).points}
    return {str(point.code) for point in points[1]} - {"replaced"}


@WINDOWS
async def test_a_change_is_given_up_by_a_second_key_and_revision_1_holds(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    agreed = scene.spec(1)
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        await change_drawn_up(stage)
        screen = await stage.press("p", "g")
        assert "GIVE UP THE CHANGE" in screen
        assert stage.spec().revision == 2
        await stage.press("escape")
        assert stage.spec().revision == 2
        screen = await stage.press("g", "enter")
        assert "Revision 1 holds" in screen
        assert stage.spec() == agreed
        assert not stage.app.counter.sides
    assert scene.house.jobs.revisions(scene.number) == (1,)
    assert list(scene.folder.glob("*set-aside*"))


async def test_undo_leads_back_through_the_change_and_not_into_what_was_signed(scene: Scene) -> None:
    async with on_stage(scene.folder) as stage:
        await opened(stage)
        await change_drawn_up(stage)
        changed = stage.spec()
        await stage.press("u")
        assert stage.spec().has(GAS)
        assert stage.spec().revision == 2
        assert "Nothing left" in await stage.press("u")
        await stage.press("r")
        assert stage.spec() == changed


async def test_what_is_tried_on_a_signed_job_is_kept_as_a_change_order(scene: Scene) -> None:
    async with on_stage(scene.folder) as stage:
        await opened(stage)
        before = stage.spec()
        await stage.press("t", *INDUCTION)
        await stage.found()
        await stage.press("1")
        assert not stage.spec().has(GAS)
        screen = await stage.press("k")
        assert "Change order begun" in screen
        assert (stage.spec().revision, stage.spec().has(GAS)) == (2, False)
    assert scene.spec(1) == before


async def test_nothing_tried_on_a_signed_job_begins_no_change_order(scene: Scene) -> None:
    async with on_stage(scene.folder) as stage:
        await opened(stage)
        await stage.press("t", "k")
        assert stage.spec().revision == 1 or stage.app.counter.trying
        await stage.press("escape")
        assert stage.spec() == scene.spec(1)


async def test_the_reason_of_a_change_is_kept_before_it_is_signed(scene: Scene) -> None:
    async with on_stage(scene.folder) as stage:
        await opened(stage)
        await change_drawn_up(stage)
        await stage.press("p", "s", "home", "enter", "'No gas on the ferry'", "enter")
        assert stage.spec().reason == "No gas on the ferry"
        await stage.press("enter")
        assert stage.spec().state is JobState.CHANGED


async def test_hold_points_wait_while_a_change_is_drawn_up(scene: Scene) -> None:
    async with on_stage(scene.folder) as stage:
        await opened(stage)
        await change_drawn_up(stage)
        screen = await stage.press("p", "b")
        assert "A change is drawn up" in screen
        await stage.press("down")
        screen = await stage.press("enter", "end", "enter")
        assert "stands in the way" in screen
        assert not stage.spec().recorded()
