"""U6 without ranked savings: a ceiling is named, what is over is said, and dearer things go until it holds."""

from __future__ import annotations

from pathlib import Path

from .stage import WINDOWS, on_stage


@WINDOWS
async def test_u6_over_the_ceiling_and_back_under_it(demo: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter", "/", "'ceil'", "enter", "'24000'")
        assert "24000" in stage.screen()
        await stage.press("enter")
        assert stage.spec().answers.get("ceiling_gross_pence") == 2_400_000
        assert "1 broken" in stage.screen()
        screen = await stage.press("l")
        assert "Price" in screen
        assert "broken: £24,414 of" in screen
        await stage.press("escape")
        edits = 0
        for name in ("strips", "curtains all"):
            await stage.press("/", f"'{name}'", "enter", "-")
            edits += 1
        assert stage.report().price.gross.most <= 2_400_000
        assert "0 broken" in stage.screen()
        assert edits <= 4
        chosen = {choice.option for choice in stage.spec().choices}
        assert {"smoke-alarm", "hook-up-bundle", "larchlid-short", "bench-two"} <= chosen, "nothing of safety went"
