"""A stage for journeys: the app in a window, keys pressed in order, and what can be read on it."""

from __future__ import annotations

import html
import os
import re
from collections.abc import AsyncIterator, Iterable
from contextlib import asynccontextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest
from textual import events
from textual.pilot import Pilot

from specbuilder.model.ids import RuleId
from specbuilder.model.kinds import Level
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.spec_files import read_spec_file
from specbuilder.tui.counter_app import CounterApp
from specbuilder.tui.ink import COLOURLESS, DARK, Look
from specbuilder.tui.line import width
from specbuilder.tui.start import Start
from specbuilder.tui.widgets.board import Board

_TEXT = re.compile(r'<text[^>]*? x="([\d.]+)" y="([\d.]+)" textLength[^>]*>([^<]*)</text>')
_CELL = 12.2
"""Width of a cell in that picture."""

SMALL, WIDE = (80, 24), (140, 40)
WINDOWS = pytest.mark.parametrize(
    ("size", "plain"),
    [
        pytest.param(SMALL, False, id="80x24"),
        pytest.param(WIDE, False, id="140x40", marks=pytest.mark.long),
        pytest.param(SMALL, True, id="ascii", marks=pytest.mark.long),
    ],
)
"""Every journey is made at both sizes, and without colour or shapes; the one check makes the first, ``-m long`` all."""
NAMES = {"/": "slash", "+": "plus", "-": "minus", "?": "question_mark", " ": "space", ".": "full_stop"}


@dataclass
class Stage:
    """The running app."""

    app: CounterApp
    pilot: Pilot[None]
    jobs: Path
    presses: int = 0
    clicks: int = 0

    async def press(self, *keys: str) -> str:
        """Press keys and give the screen back. ``'96'`` in quotes is typed; anything else is the name of a key."""
        for key in self._single(keys):
            self.presses += 1
            self.app.post_message(events.Key(NAMES.get(key, key), key if len(key) == 1 else None))
            await self.pilot.pause(0)
        await self.pilot.pause()
        return self.screen()

    async def click(self, *words: str, row: str = "", last: bool = False) -> str:
        """Click on words that can be read, one after the other, and give the screen back.

        ``row``: on the line that has these words; ``last``: the last of several places, as on the line of hints.
        """
        for word in words:
            self.clicks += 1
            lines = self.screen().splitlines()
            found = [(line.rindex if last else line.index, y) for y, line in enumerate(lines) if word in line]
            places = [(at(word), y) for at, y in found if row in lines[y]]
            assert places, f"{word!r} stands nowhere on\n" + "\n".join(lines)
            x, y = places[-1 if last else 0]
            await self.click_at(width(lines[y][:x]), y)
        return self.screen()

    async def click_at(self, x: int, y: int) -> str:
        """Click on one cell."""
        await self.pilot.click(offset=(x, y))
        await self.pilot.pause()
        return self.screen()

    async def wheel_to(self, word: str, turns: int = 20) -> str:
        """Turn the wheel over the page on top until this can be read, a regular expression, and give that back."""
        board = self.app.query_one("#side" if self.app.counter.sides else "#main", Board)
        for _ in range(turns):
            if found := re.search(word, self.screen()):
                return found[0]
            board.post_message(events.MouseScrollDown(board, 1, 1, 0, 1, 0, False, False, False))
            await self.pilot.pause()
        raise AssertionError(f"{word!r} is not reached by the wheel on\n{self.screen()}")

    async def found(self) -> str:
        """The screen once every search has come to its end and what it brought is painted."""
        await self.app.workers.wait_for_complete()
        await self.pilot.pause()
        await self.pilot.pause()
        return self.screen()

    def screen(self) -> str:
        """Everything that can be read on the screen, line by line, from the toolkit's public picture of it."""
        rows: dict[float, str] = {}
        for x, y, text in _TEXT.findall(self.app.export_screenshot(simplify=True)):
            shown = html.unescape(text).replace("\xa0", " ").rstrip("\n")
            row, column = rows.get(float(y), ""), round(float(x) / _CELL)
            rows[float(y)] = row[:column].ljust(column) + shown
        return "\n".join(row.rstrip() for _, row in sorted(rows.items()))

    async def read_through(self) -> list[str]:
        """Every line of the page with the cursor, from its first to its last, as it can be scrolled to."""
        screens = [await self.press("home")]
        while (screen := await self.press("pagedown")) != screens[-1]:
            screens.append(screen)
        return list(dict.fromkeys(line for screen in screens for line in screen.splitlines()))

    def spec(self) -> Spec:
        """The spec as it stands on the counter."""
        opening = self.app.counter.opening
        assert opening is not None
        return opening.desk.session.spec

    def report(self) -> Report:
        """Everything that follows from it."""
        return self.app.counter.report

    def loud(self) -> set[RuleId]:
        """Rules that are broken at STOP or SIGN and not accepted."""
        return {finding.rule for finding in self.report().broken(Level.STOP, Level.SIGN)}

    def stored(self, number: str) -> Spec:
        """The spec as it stands in the job's file, read back."""
        opening = self.app.counter.opening
        assert opening is not None
        files = JobsFolder(self.jobs).files(number)
        return read_spec_file(files.spec, opening.desk.catalogue).spec

    @staticmethod
    def _single(keys: Iterable[str]) -> Iterable[str]:
        for key in keys:
            if len(key) > 1 and key[0] == key[-1] == "'":
                yield from key[1:-1]
            else:
                yield key


@asynccontextmanager
async def on_stage(
    jobs: Path,
    size: tuple[int, int] = SMALL,
    *,
    rules: Path | None = None,
    plain: bool = False,
    start: type[Start] = Start,
    look: Look = DARK,
) -> AsyncIterator[Stage]:
    """The app in a window of this size, with its catalogue read. ``plain``: ASCII marks and no colour."""
    os.environ.pop("NO_COLOR", None)
    app = CounterApp(start(jobs, rules, "counter 1"), COLOURLESS if plain else look, ascii_marks=plain)
    async with app.run_test(size=size) as pilot:
        for _ in range(2000):
            if app.counter.opening is not None or app.counter.sides:
                break
            await pilot.pause(0.01)
        await pilot.pause()
        yield Stage(app=app, pilot=pilot, jobs=jobs)
