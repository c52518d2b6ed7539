"""U6: a ceiling is named, what is over is said, and ranked savings bring the build under it."""

from __future__ import annotations

from pathlib import Path

from .stage import WINDOWS, on_stage

SAFETY = {"smoke-alarm", "hook-up-bundle", "gas-bundle", "roof-bed-board-net-ladder", "bench-two", "child-top-straps"}
"""Alarm, breaker, net, frame and belts are no savings."""


@WINDOWS
async def test_u6_over_the_ceiling_and_back_under_it(demo: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter")
        before = stage.spec()
        stage.presses = 0
        await stage.press("/", "'cei'", "enter", "'23500'")
        assert "23500" in stage.screen()
        await stage.press("enter")
        assert stage.spec().answers.get("ceiling_gross_pence") == 2_350_000
        await stage.press("w")
        screen = await stage.found()
        assert "£914" in screen, "by how much it is over"
        assert "WAYS OUT" in screen
        for _ in range(3):
            await stage.press("1")
            if "WAYS OUT" not in await stage.found():
                break
        assert stage.presses <= 16
        assert stage.report().price.gross.most <= 2_350_000
        assert "price-under-ceiling" not in stage.loud()
        assert not [f for f in stage.report().findings if f.rule in stage.loud() and f.level.value == "STOP"]
        assert {choice.option for choice in stage.spec().choices} >= SAFETY
        await stage.press(*["u"] * 9)
        assert stage.spec() == before


@WINDOWS
async def test_what_is_over_is_told_by_its_ledger(demo: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter", "/", "'ceil'", "enter", "'24000'", "enter")
        assert "1 broken" in stage.screen()
        screen = await stage.press("l")
        assert "Price" in screen
        assert "broken: £24,414 of" in screen
