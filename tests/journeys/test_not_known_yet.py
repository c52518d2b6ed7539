"""U7 without quote and order: open points are counted, listed, given a person and a date, and stay in the spec."""

from __future__ import annotations

from pathlib import Path

from .stage import WINDOWS, on_stage


@WINDOWS
async def test_u7_every_open_point_gets_a_person_and_a_date(demo: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        screen = await stage.press("down", "down", "enter", "o")
        assert "0152" in screen
        for name in ("barrier height", "Cooking", "Seat cloth"):
            assert name in screen
        price = stage.report().price.gross
        assert price.least < price.most
        questions = len(stage.spec().questions)
        presses = stage.presses
        await stage.press("enter")
        assert "Who finds out" in stage.screen()
        await stage.press("1", "enter")
        await stage.press("down", "enter", "2", "enter")
        await stage.press("end", "up", "enter", "3", "enter")
        assert stage.presses - presses <= 15
        asked = stage.spec().questions[questions:]
        assert [question.owner for question in asked] == ["customer", "counter", "workshop"]
        assert all(question.due for question in asked)
        screen = await stage.press("escape")
        await stage.press("escape")
        assert stage.stored("0152").questions == stage.spec().questions


async def test_a_date_that_is_none_is_not_taken(demo: Path) -> None:
    async with on_stage(demo) as stage:
        await stage.press("down", "down", "enter", "o", "enter", "down", "'soon'")
        assert not stage.spec().questions or all(q.due != "soon" for q in stage.spec().questions)
        screen = await stage.press("enter", "'3'", "enter")
        assert "A date is needed here" in screen
