"""What a hand on the mouse does again and again: open a job, type by signs, look an act up, take a way out."""

from __future__ import annotations

import re

from specbuilder.tui.keys import Where

from .stage import Stage

FIRST_WAY = re.compile(r"(?:^|\|)[ ►][! ](1) \S")


async def opened(stage: Stage, name: str = "The Saturday family") -> None:
    """The job of this name, by two clicks on its line."""
    await stage.click(name, name)
    await stage.found()
    stage.presses = 0


async def typed(stage: Stage, text: str) -> None:
    """A text, sign by sign, on the last line."""
    for sign in text:
        *above, hints = stage.screen().splitlines()
        pad = hints.index("abcdef" if "abcdef" in hints else "0" if "0 1 2" in hints else ", ")
        await stage.click_at(hints.index("space" if sign == " " else sign, pad), len(above))


async def find(stage: Stage, letters: str, row: str) -> str:
    """Find by letters that are clicked, and stand on that row."""
    await action(stage, r"/ +find\b")
    await typed(stage, letters)
    return await twice(stage, row, Where.FIND)


async def action(stage: Stage, line: str) -> str:
    """An act by its line in the list of actions, a regular expression."""
    await stage.click("F9", last=True)
    return await twice(stage, await stage.wheel_to(line), Where.ACTIONS)


async def take_first_way(stage: Stage) -> None:
    """The first way out, by clicks on its line."""
    before, screen = stage.spec(), stage.screen()
    x, y = next((m.start(1), y) for y, row in enumerate(screen.splitlines()) if (m := FIRST_WAY.search(row)))
    for _ in range(2):
        if stage.spec() == before:
            await stage.click_at(x, y)


async def unfold(stage: Stage, folded: str) -> None:
    """A folded question, by a click on its line, and another one where the cursor was elsewhere."""
    if folded in await stage.click(folded):
        await stage.click(folded)


async def twice(stage: Stage, words: str, where: Where) -> str:
    """A line of a page by a second click, where the first one was not that already."""
    screen = await stage.click(words)
    return await stage.click(words) if stage.app.counter.top.where is where else screen
