"""What the check and the form say before a quote goes out."""

from __future__ import annotations

from specbuilder.model.edits import AnswerLine, NameCustomer
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import Level
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
