"""What the check and the form say before a quote goes out."""

from __future__ import annotations

import pytest

from specbuilder.model.edits import AnswerLine, NameCustomer
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import JobState, Level
from specbuilder.tui.keys import Where
from tests.office.scene import Scene

from .house_scene import opened
from .stage import on_stage


async def test_what_alone_stands_in_the_way_of_a_quote_is_named_on_the_check(scene: Scene) -> None:
    scene.edit(NameCustomer(name="", contact=""))
    async with on_stage(scene.folder, (80, 24)) as stage:
        await opened(stage)
        await stage.press(*["right"] * 8)
        assert "QUOTE no, the customer has no name yet: ask for it" in " ".join((await stage.found()).split())


async def test_a_quote_counts_what_is_not_accepted_yet_beside_its_open_points(scene: Scene) -> None:
    scene.edit(AnswerLine(key=BriefKey("ceiling_gross_pence"), value=100_000))
    async with on_stage(scene.folder, (80, 24)) as stage:
        await opened(stage)
        broken = len(stage.app.counter.report.broken(Level.SIGN))
        assert broken
        await stage.press(*["right"] * 8)
        assert f"{broken} to accept in writing" in " ".join((await stage.found()).split())
        assert f"{broken} broken at SIGN, named on it." in " ".join((await stage.press("s")).split())


async def test_a_step_back_that_leaves_an_empty_revision_says_which_keys_give_it_up(scene: Scene) -> None:
    scene.quote()
    async with on_stage(scene.folder, (80, 24)) as stage:
        await opened(stage)
        screen = await stage.press("home", "1")
        assert "Revision 2 begun." in screen
        screen = await stage.press("u")
        assert "Revision 2 stays: p, then g gives it up" in screen
        await stage.press("p", "g", "enter")
        await stage.found()
        assert (stage.spec().revision, stage.spec().state) == (1, JobState.QUOTED)


@pytest.mark.parametrize(("page", "keys"), [(Where.BRIEF, ()), (Where.WALK, ("right",)), (Where.LEDGERS, ("l",))])
async def test_a_key_that_means_nothing_on_a_page_says_so_and_where_it_works(
    scene: Scene, page: Where, keys: tuple[str, ...]
) -> None:
    async with on_stage(scene.folder, (80, 24)) as stage:
        await opened(stage)
        await stage.press(*keys)
        before = stage.spec()
        assert stage.app.counter.top.where is page
        screen = await stage.press("s")
        assert "s does nothing here, only on: check, paper, papers. F1 lists what works here." in screen
        assert (stage.app.counter.top.where, stage.spec()) == (page, before)
