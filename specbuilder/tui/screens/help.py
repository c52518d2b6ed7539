"""Keys and Actions: both are read from the one table of keys."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.kinds import OptionState, Verdict
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnText, OnWord
from specbuilder.tui.keys import DIGITS, Act, KeyLine, Where
from specbuilder.tui.line import EMPTY, Bit, Line, left, line, width, wrapped
from specbuilder.tui.marks import Marks
from specbuilder.wording.forms import form_title
from specbuilder.wording.help import counts_words, digits_words, marks_words
from specbuilder.wording.last_line import nothing_found
from specbuilder.wording.states import TO_MIND, state_word, verdict_word

from .page import Host, Page

KEY_CELLS = 11
_PAIRS = {Act.UP: Act.DOWN, Act.PAGE_UP: Act.PAGE_DOWN, Act.FIRST: Act.LAST}
"""Acts that are told on one line."""


class KeysPage(Page):
    """The keys that work where help was asked for."""

    where: ClassVar[Where] = Where.KEYS
    tall: ClassVar[bool] = True

    def __init__(self, host: Host, below: Where) -> None:
        super().__init__(host)
        self.below = below

    def head(self, cells: int) -> Sequence[Line]:
        """Its name, and where."""
        return [line(" ", Bit(f"{form_title('keys')}: {self.below.value}", Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """One key a line, two beside each other where all of them have room; then the marks."""
        texts = [f"{left(shown, KEY_CELLS)}{words}" for shown, words in self._entries()]
        column = (cells - 2) // 2
        if max(map(width, texts)) < column:
            half = (len(texts) + 1) // 2
            pairs = zip(texts[:half], [*texts[half:], ""], strict=False)
            texts = [left(one, column) + two for one, two in pairs]
        rows = [line(f" {text}", item=OnText(i)) for i, text in enumerate(texts)]
        told = [*_marks(self.host.marks, cells), *wrapped(counts_words(), cells - 4)]
        marks = [line("   ", text, item=OnText(len(rows) + i)) for i, text in enumerate(told)]
        return [*rows, EMPTY, line(" ", Bit(marks_words(), Ink.HEAD)), *marks]

    def _entries(self) -> list[tuple[str, str]]:
        """Keys and what they do; those that lead about two by two."""
        found = {entry.act: entry for entry in self.host.keyboard.lines_of(self.below) if entry.shown}
        pairs = {one: two for one, two in _PAIRS.items() if one in found and two in found}
        told = list[tuple[str, str]]()
        for act, entry in found.items():
            if (other := pairs.get(act)) is not None:
                told.append((f"{entry.shown} {found[other].shown}", f"{entry.words}, {found[other].words}"))
            elif act not in pairs.values():
                told.append((entry.shown, entry.words))
        return [*told, (DIGITS, digits_words())]

    def enter(self) -> None:
        """Back."""
        self.host.close()


class ActionsPage(Page):
    """Everything that can be done here, found by its words."""

    where: ClassVar[Where] = Where.ACTIONS
    searches: ClassVar[bool] = True
    tall: ClassVar[bool] = True

    def __init__(self, host: Host, below: Where) -> None:
        super().__init__(host)
        self.below = below
        self.start_typing()

    def head(self, cells: int) -> Sequence[Line]:
        """The words to look for."""
        typed = self.entry.bits(cells - 12) if self.entry is not None else ()
        return [line(" ", Bit(f"{form_title('actions')}: ", Ink.HEAD), *typed)]

    def lines(self, cells: int) -> Sequence[Line]:
        """Actions with their keys, then steps and ledgers."""
        wanted = self.entry.text.casefold().split() if self.entry is not None else []
        rows = [row for row in self._all() if all(word in row.text.casefold() for word in wanted)]
        return rows or [line(f"   {nothing_found()}")]

    def _all(self) -> list[Line]:
        return [*self._acts(), *self.places()]

    def _acts(self) -> list[Line]:
        moves = (Act.UP, Act.DOWN, Act.PAGE_UP, Act.PAGE_DOWN, Act.FIRST, Act.LAST, Act.ACTIONS)
        entries = [entry for entry in self.host.keyboard.lines_of(self.below) if entry.act not in moves]
        return [_action(entry) for entry in entries]

    def places(self) -> list[Line]:
        """What can be gone to from here beside the actions."""
        return []

    def searched(self) -> None:
        """The first that is left."""
        self.at = None

    def enter(self) -> None:
        """Do it, where the cursor was."""
        at = self.at
        self.host.close()
        if isinstance(at, OnWord):
            self.host.do(Act(at.name))
        elif at is not None:
            self.go(at)

    def hint_of(self, act: Act) -> str | None:
        """Enter only where something is found."""
        return "" if act is Act.ENTER and self.at is None else None

    def go(self, item: Item) -> None:
        """Go to one of the places."""
        return


def _action(entry: KeyLine) -> Line:
    return line("   ", left(entry.shown, KEY_CELLS), entry.words, item=OnWord(entry.act.value))


def _marks(marks: Marks, cells: int) -> list[str]:
    words = [f"{marks.of_state(state)} {state_word(state)}" for state in OptionState]
    words += [f"{marks.of_verdict(verdict)} {verdict_word(verdict)}" for verdict in Verdict]
    words.append(f"{marks.mind} {TO_MIND}")
    rows = [""]
    for word in words:
        if len(rows[-1]) + len(word) + 3 > cells - 3:
            rows.append("")
        rows[-1] += f"{word}   "
    return rows
