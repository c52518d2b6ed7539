"""The twelve scenarios with the mouse alone: one plain click on what can be read, and nothing else."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import JobState, Owner
from specbuilder.tui.keys import Where
from tests.office.scene import Scene

from .clicking import action, find, opened, take_first_way, typed, unfold
from .house_scene import THREE_OPEN, scene_of_old, set_clock
from .stage import SMALL, WIDE, on_stage

SIZES = pytest.mark.parametrize("size", [SMALL, pytest.param(WIDE, marks=pytest.mark.long)], ids=["80x24", "140x40"])
LONG_SIZES = pytest.mark.parametrize(
    "size", [pytest.param(SMALL, marks=pytest.mark.long), pytest.param(WIDE, marks=pytest.mark.long)]
)


@SIZES
async def test_u1_by_clicks_alone(empty: Path, size: tuple[int, int]) -> None:
    async with on_stage(empty, size) as stage:
        await stage.click("n new job")
        await stage.click("2", row=" 1  2  3")
        await stage.click("2", row=" 0  1  2")
        await stage.click("Enter type")
        await typed(stage, "9 6")
        await stage.click("Enter", last=True)
        await stage.click("sleepers")
        await stage.click("4", row="2  3  4")
        await stage.click("season", row="5 Season")
        await stage.click("2 ", row="1 summer")
        given = stage.spec().answers.given
        assert (given["adults"], given["children"], given["child_ages"]) == (2, 2, (9, 6))
        assert (given["sleepers"], given["season"]) == (4, "three-season")
        await stage.click("Esc jobs")
        assert stage.stored("0001") == stage.spec()
        assert stage.presses == 0


@LONG_SIZES
async def test_u2_by_clicks_alone(one: Path, size: tuple[int, int]) -> None:
    async with on_stage(one, size) as stage:
        await opened(stage)
        before = stage.spec()
        await find(stage, "fra", "Framed solar")
        await stage.click("Framed solar")
        assert "WAYS OUT" in await stage.found()
        assert stage.spec() == before
        await take_first_way(stage)
        assert stage.spec() != before
        await stage.click("takes it back")
        assert stage.spec() == before, "one undo step, by the words behind what was done"
        await stage.click("puts it back")
        assert stage.spec() != before


@LONG_SIZES
async def test_u3_by_clicks_alone(one: Path, size: tuple[int, int]) -> None:
    async with on_stage(one, size) as stage:
        await opened(stage)
        before = stage.spec()
        await action(stage, "what if")
        await stage.click("van", row="kitchen")
        await unfold(stage, "Base van: Fenwain")
        await stage.wheel_to("Tormwain, door left")
        await stage.click("Tormwain, door left", "Tormwain, door left")
        assert "CHANGE" in await stage.found()
        await stage.click("Enter take all")
        assert stage.spec().has(OptionId("tormwain-left"))
        screen = await stage.click("Esc back to the job")
        assert "WHAT IF" not in screen
        assert stage.spec() == before


@LONG_SIZES
async def test_u4_by_clicks_alone(one: Path, size: tuple[int, int]) -> None:
    async with on_stage(one, size) as stage:
        await opened(stage)
        before = stage.spec()
        await find(stage, "tow", "Tow bar")
        await stage.click("Tow bar")
        towed = stage.spec()
        assert towed.has(OptionId("tow-bar"))
        await find(stage, "laptop", "Laptop")
        await stage.click("- leave out")
        assert not stage.spec().has(OptionId("laptop"))
        assert "Undone:" in await stage.click("takes it back")
        assert stage.spec() == towed
        await action(stage, "undo")
        assert stage.spec() == before
        await stage.click("puts it back")
        assert stage.spec() == towed


@LONG_SIZES
async def test_u5_by_clicks_alone(one: Path, size: tuple[int, int]) -> None:
    async with on_stage(one, size) as stage:
        await opened(stage)
        await action(stage, "side by side")
        await stage.click("n new variant")
        await find(stage, "awn", "Wind-out awning on body")
        await stage.click("- leave out")
        await action(stage, "side by side")
        screen = await stage.found()
        assert "SIDE BY SIDE" in screen
        await stage.click("A  0147")
        await stage.click(next(row for row in screen.splitlines() if "outside" in row).strip("► ")[:12])
        await stage.found()
        assert not stage.stored("0147").has(OptionId("awning-body-rail"))


@LONG_SIZES
async def test_u6_by_clicks_alone(one: Path, size: tuple[int, int]) -> None:
    async with on_stage(one, size) as stage:
        await opened(stage)
        await stage.wheel_to("price ceiling")
        await stage.click("price ceiling")
        await typed(stage, "23500")
        await stage.click("Enter", last=True)
        assert stage.spec().answers.get("ceiling_gross_pence") == 2_350_000
        await stage.click("price ceiling")
        await action(stage, "why it is so")
        for _ in range(3):
            screen = await stage.found()
            if "WAYS OUT" not in screen:
                break
            await take_first_way(stage)
        assert stage.report().price.gross.most <= 2_350_000


@LONG_SIZES
async def test_u7_by_clicks_alone(scene: Scene, size: tuple[int, int]) -> None:
    scene.edit(*THREE_OPEN)
    async with on_stage(scene.folder, size) as stage:
        await opened(stage)
        await stage.click("kg left")
        for owner in ("1 customer", "2 counter", "1 customer"):
            if stage.app.counter.top.where is Where.OPEN:
                await stage.click("Enter who and when")
            await stage.click(owner)
            await stage.click("Enter", last=True)
        assert [question.owner for question in stage.spec().questions] == ["customer", "counter", "customer"]
        await stage.click("Esc back")
        await action(stage, "papers, and where")
        await stage.click("s ", row="Esc")
        await stage.click("Enter", last=True)
        await stage.found()
        assert stage.spec().state is JobState.QUOTED


@LONG_SIZES
async def test_u8_by_clicks_alone(one: Path, size: tuple[int, int]) -> None:
    async with on_stage(one, size) as stage:
        await opened(stage)
        await stage.click("van", row="kitchen")
        await unfold(stage, "Base van: Fenwain")
        await stage.wheel_to("Fenwain Long, tailgate")
        await stage.click("Fenwain Long, tailgate", "Fenwain Long, tailgate")
        assert "DOES NOT FIT  2" in await stage.found()
        await stage.click("Enter take all")
        assert stage.spec().has(OptionId("fenwain-long"))
        assert not stage.loud()


@LONG_SIZES
async def test_u9_by_clicks_alone(one: Path, size: tuple[int, int]) -> None:
    async with on_stage(one, size) as stage:
        await opened(stage)
        await find(stage, "own fri", "Your own fridge")
        await action(stage, "their own part")
        for text in ("16", "45"):
            await typed(stage, text)
            await stage.click("Enter", last=True)
        await stage.click("Arrives")
        await typed(stage, "0306")
        screen = await stage.click("Enter", last=True)
        assert "3 Jun" in screen
        (fridge,) = stage.spec().chosen(OptionId("fridge-own"))
        assert fridge.owner is Owner.CUSTOMER
        assert fridge.own_part is not None
        assert (fridge.own_part.mass_kg, fridge.own_part.watts_w) == (16, 45)


@LONG_SIZES
async def test_u10_by_clicks_alone(scene: Scene, size: tuple[int, int]) -> None:
    scene.order()
    async with on_stage(scene.folder, size) as stage:
        await opened(stage)
        await find(stage, "ind", "Induction hob, one ring")
        await stage.click("Induction hob, one ring")
        await stage.found()
        await take_first_way(stage)
        assert stage.spec().revision == 2
        await action(stage, "papers, and where")
        await stage.click("s ", row="Esc")
        await stage.click("Enter", last=True)
        await stage.found()
        assert (stage.spec().state, stage.spec().replaces) == (JobState.CHANGED, 1)


@LONG_SIZES
async def test_u11_by_clicks_alone(
    empty: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, size: tuple[int, int]
) -> None:
    scene = scene_of_old(empty, tmp_path)
    scene.quote()
    set_clock(scene, monkeypatch)
    scene.days_later(370)
    async with on_stage(scene.folder, size) as stage:
        await stage.click("The Saturday family")
        await stage.click("check against today")
        if stage.app.counter.top.where is Where.OLDER_RULES:
            await stage.click("check against today")
        assert "Renamed" in await stage.found()
        await stage.click("Esc back")
        await action(stage, "papers, and where")
        await stage.click("Colleague's page", "Colleague's page")
        await stage.found()
        await stage.click("/ find words")
        await typed(stage, "hea")
        screen = await stage.click("Enter", last=True)
        assert "eater" in screen


@SIZES
async def test_u12_by_clicks_alone(scene: Scene, size: tuple[int, int]) -> None:
    scene.quote()
    async with on_stage(scene.folder, size) as stage:
        await opened(stage)
        await action(stage, "customer view")
        await stage.click("copy")
        await stage.click("Enter", last=True)
        await stage.found()
        assert (scene.folder / "papers").is_dir()
        await stage.click("YOU MAY STILL LOAD")
        await stage.click("Esc", last=True)
        assert stage.app.counter.top.where is Where.CUSTOMER, "one click stays"
        await stage.click("Enter", last=True)
        assert stage.app.counter.top.where is not Where.CUSTOMER


@pytest.mark.long
async def test_an_answer_below_the_walk_is_the_walks_while_another_page_lies_beside_it(one: Path) -> None:
    async with on_stage(one, WIDE) as stage:
        await opened(stage)
        await action(stage, "ledgers")
        assert stage.app.counter.top.where is Where.LEDGERS
        await stage.click("3", row=" 1  2  3")
        assert stage.spec().answers.given["adults"] == 3
        assert not stage.app.counter.sides
