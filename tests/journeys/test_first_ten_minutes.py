"""U1: two grown-ups, two children, weekends, perhaps France; the rest is left unknown on purpose."""

from __future__ import annotations

from pathlib import Path

from .stage import WINDOWS, on_stage

KEYS = ("n", "2", "enter", "2", "enter", "'9 6'", "enter", "n", "4", "n", "n", "n", "2")


@WINDOWS
async def test_u1_the_brief_is_answered_and_nothing_unknown_looks_good(
    empty: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(empty, size, plain=plain) as stage:
        assert "No jobs yet" in stage.screen()
        await stage.press("n")
        assert not empty.exists() or not list(empty.iterdir()), "a slip leaves nothing"
        await stage.press("2")
        assert (empty / "0001-r1.journal").is_file(), "number and file come with the first answer"
        screen = await stage.press(*KEYS[2:])
        assert stage.presses <= 16
        assert "0 broken" in screen
        assert "holds: " not in "\n".join(row for row in screen.splitlines() if "Weight" in row)
        given = stage.spec().answers.given
        assert given["adults"] == 2
        assert given["children"] == 2
        assert given["child_ages"] == (9, 6)
        assert given["sleepers"] == 4
        assert given["season"] == "three-season"
        assert "parking_limit_mm" not in given
        assert not stage.spec().choices
        lines = await stage.read_through()
        assert sum("not known yet" in line for line in lines) >= 5
        await stage.press("escape")
        assert stage.stored("0001") == stage.spec()
