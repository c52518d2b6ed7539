"""U2: a panel on the lifting roof. What would clash is said before it is taken; one digit takes a way out."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.tui.keys import Where

from .bench import counter_on, press, spec
from .stage import WINDOWS, on_stage

SAFETY = {"smoke-alarm", "gas-bundle", "hook-up-bundle", "roof-bed-board-net-ladder", "child-top-straps"}


@WINDOWS
async def test_u2_the_first_enter_shows_what_would_clash_and_a_digit_takes_a_way(
    demo: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter")
        before, loud = stage.spec(), stage.loud()
        stage.presses = 0
        await stage.press("/", "'fra'", "enter", "enter")
        screen = await stage.found()
        assert stage.spec() == before, "nothing is taken before it is read"
        assert "WHY Framed solar panel, 160 W does not fit" in screen
        assert "roof lifting" in screen or "lifting part of the roof" in screen
        assert "height" in screen or "barrier" in screen
        assert "WAYS OUT" in screen
        ways = [row for row in screen.splitlines() if any(f" {mark}{n} " in row for mark in "! " for n in (1, 2, 3))]
        assert len(ways) >= 1
        assert "looking" not in screen
        screen = await stage.press("1")
        assert stage.presses <= 8
        assert "Took " in screen
        assert "u takes it back" in screen
        assert "WAYS OUT" not in screen
        levels = {finding.level.value for finding in stage.report().findings if finding.rule in stage.loud() - loud}
        assert levels <= {"SIGN"}, "no STOP is left of it"
        assert all(stage.spec().has(option) for option in SAFETY), "nothing of safety went"
        await stage.press("u")
        assert stage.spec() == before, "one undo step"


@WINDOWS
async def test_a_blocked_option_is_let_in_by_a_way_or_taken_anyway(
    demo: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter", "/", "'pod galley'", "enter")
        before = stage.spec()
        await stage.press("enter")
        screen = await stage.found()
        assert "WHY Pod galley is blocked" in screen
        assert stage.spec() == before, "asking why changes nothing"
        assert "table" in "\n".join(await stage.read_through()).lower()
        screen = await stage.press("1")
        assert stage.spec().has("pod-galley")
        assert not [f for f in stage.report().findings if f.rule in stage.loud() and f.level.value == "STOP"]
        await stage.press("u")
        assert stage.spec() == before
        await stage.press("enter")
        screen = await stage.press("e")
        assert stage.spec().has("pod-galley")
        assert not stage.spec().has("side-galley")
        assert stage.loud(), "the clash stays open"
        assert "u takes it back" in screen
        await stage.press("u")
        assert stage.spec() == before


@pytest.mark.parametrize("key", ["1", "2", "+"])
def test_an_amount_is_held_back_as_enter_is_where_it_would_clash(tmp_path: Path, key: str) -> None:
    counter = counter_on(tmp_path / "jobs")
    press(counter, "n", "2", "/", *"short", "enter", "enter", "/", *"lar", "enter", "enter", "/", *"fra", "enter")
    before = spec(counter)
    press(counter, key)
    assert counter.top.where is Where.WHY
    assert spec(counter) == before
