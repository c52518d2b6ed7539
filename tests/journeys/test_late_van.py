"""U8: the van changes after roof and bench were chosen. Nothing vanishes unseen, and what does not fit is led to."""

from __future__ import annotations

from pathlib import Path

from .stage import WINDOWS, on_stage


@WINDOWS
async def test_u8_every_other_choice_stays_and_the_roof_is_marked(
    demo: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter")
        before = {choice.option for choice in stage.spec().choices}
        await stage.press("/", "'fenwain long'", "enter")
        screen = await stage.press("enter")
        assert "STOP now broken: A part made for one" in screen
        assert "1 broken" in screen
        assert "ROOF!1" in await stage.press("n")
        after = {choice.option for choice in stage.spec().choices}
        assert before - after == {"fenwain-short"}, "nothing vanished"
        screen = stage.screen()
        assert "clash" in screen
        assert "would clear" in screen
        screen = await stage.press("/", "'tilting roof, long'", "enter", "enter")
        assert "0 broken" in screen
        after = {choice.option for choice in stage.spec().choices}
        assert before ^ after == {"fenwain-short", "fenwain-long", "larchlid-short", "larchlid-long"}
