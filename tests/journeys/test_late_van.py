"""U8: the van changes after roof and bench were chosen. What stays and what does not fit is read before it is taken."""

from __future__ import annotations

import re
from pathlib import Path

from .stage import WINDOWS, on_stage


@WINDOWS
async def test_u8_the_table_stands_there_before_anything_is_changed(
    demo: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter")
        before = stage.spec()
        stage.presses = 0
        await stage.press("/", "'lon'", "enter", "enter")
        screen = await stage.found()
        assert stage.spec() == before
        assert "CHANGE" in screen
        assert "DOES NOT FIT  2" in screen
        assert "Larchlid tilting roof, long" in screen
        assert "+£498" in screen
        stays = re.search(r"STAYS\s+(\d+) of (\d+)", screen)
        assert stays
        assert int(stays[2]) - int(stays[1]) == 2
        assert b"larchlid-long" not in (demo / "0147-r1.journal").read_bytes()
        screen = await stage.press("enter")
        assert stage.presses <= 9
        assert "Took Fenwain Long" in screen
        assert all(name in (demo / "0147-r1.journal").read_bytes() for name in (b"fenwain-long", b"larchlid-long"))
        was, now = ({choice.option for choice in spec.choices} for spec in (before, stage.spec()))
        changed = {"fenwain-short", "fenwain-long", "larchlid-short", "larchlid-long"}
        assert was ^ now == {*changed, "vents-none-added", "vents-top-up"}, "over ten square metres more air is needed"
        assert not stage.loud()
        await stage.press("u")
        assert stage.spec() == before, "one undo step"


@WINDOWS
async def test_keeping_the_van_changes_nothing_and_taking_it_alone_leaves_the_clash(
    demo: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter")
        before = stage.spec()
        await stage.press("/", "'lon'", "enter", "enter")
        await stage.found()
        await stage.press("escape")
        assert stage.spec() == before
        await stage.press("enter", "e")
        assert stage.spec().has("fenwain-long")
        assert stage.spec().has("larchlid-short")
        assert stage.loud()


async def test_a_van_that_everything_fits_is_just_taken(demo: Path) -> None:
    async with on_stage(demo) as stage:
        await stage.press("enter", "/", "'twin doors, door left'", "enter", "enter")
        assert stage.spec().has("fenwain-short-twin-rear")
