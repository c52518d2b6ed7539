"""U2 without ways out: a panel on the lifting roof. The clash is said at once, and why is one key away."""

from __future__ import annotations

from pathlib import Path

from .stage import WINDOWS, on_stage


@WINDOWS
async def test_u2_both_findings_are_said_and_clear_together(demo: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter")
        before = stage.spec()
        await stage.press("/", "'framed'", "enter")
        screen = await stage.press("enter")
        assert "broken" in screen
        assert "clash" in screen
        assert "u takes it back" in screen
        assert len(stage.loud()) >= 2, "roof load and height at once"
        screen = await stage.press("enter")
        assert "WHY Framed solar panel, 160 W clashes" in screen
        assert "over by" in screen
        assert "WHAT WE CAN DO" in "\n".join(await stage.read_through())
        await stage.press("escape")
        clashes = stage.loud()
        await stage.press("/", "'light solar'", "enter", "enter")
        await stage.press("/", "'framed'", "enter", "-")
        assert len(stage.loud()) < len(clashes)
        assert stage.spec().has("solar-light-120")
        assert not stage.spec().has("solar-framed-160")
        await stage.press("u", "u", "u")
        assert stage.spec() == before


@WINDOWS
async def test_a_blocked_option_says_why_and_can_be_taken_anyway(
    demo: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter", "/", "'pod galley'", "enter")
        before = stage.spec()
        screen = await stage.press("enter")
        assert "WHY Pod galley is blocked" in screen
        assert stage.spec() == before, "asking why changes nothing"
        assert "table" in "\n".join(await stage.read_through()).lower()
        screen = await stage.press("e")
        assert stage.spec().has("pod-galley")
        assert not stage.spec().has("side-galley")
        assert stage.loud(), "the clash stays open"
        assert "u takes it back" in screen
        await stage.press("u")
        assert stage.spec() == before
