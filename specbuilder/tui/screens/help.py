"""Keys and Actions: both are read from the one table of keys."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.kinds import OptionState, Verdict
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnText, OnWord
from specbuilder.tui.keys import DIGITS, Act, KeyLine, Where
from specbuilder.tui.line import EMPTY, Bit, Line, left, line
from specbuilder.tui.marks import Marks
from specbuilder.wording.forms import form_title
from specbuilder.wording.help import digits_words, marks_words
from specbuilder.wording.states import TO_MIND, state_word, verdict_word

from .page import Host, Page

KEY_CELLS = 9
WIDE = 76


class KeysPage(Page):
    """The keys that work where help was asked for."""

    where: ClassVar[Where] = Where.KEYS

    def __init__(self, host: Host, below: Where) -> None:
        super().__init__(host)
        self.below = below

    def head(self, cells: int) -> Sequence[Line]:
        """Its name, and where."""
        return [line(" ", Bit(f"{form_title('keys')}: {self.below.value}", Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """One key a line, two beside each other where there is room; then the marks."""
        entries = [(entry.shown, entry.words) for entry in self.host.keyboard.lines_of(self.below) if entry.shown]
        entries.append((DIGITS, digits_words()))
        texts = [left(f"{left(shown, KEY_CELLS)}{words}", _column(cells)) for shown, words in entries]
        if cells >= WIDE:
            half = (len(texts) + 1) // 2
            texts = [one + two for one, two in zip(texts[:half], [*texts[half:], ""], strict=False)]
        rows = [line(f" {text}", item=OnText(i)) for i, text in enumerate(texts)]
        marks = [line("   ", text, item=OnText(len(rows) + i)) for i, text in enumerate(_marks(self.host.marks, cells))]
        return [*rows, EMPTY, line(" ", Bit(marks_words(), Ink.HEAD)), *marks]

    def enter(self) -> None:
        """Back."""
        self.host.close()


class ActionsPage(Page):
    """Everything that can be done here, found by its words."""

    where: ClassVar[Where] = Where.ACTIONS
    searches: ClassVar[bool] = True

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
        rows = [*self._acts(), *self.places()]
        return [row for row in rows if all(word in row.text.casefold() for word in wanted)]

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

    def go(self, item: Item) -> None:
        """Go to one of the places."""
        return


def _action(entry: KeyLine) -> Line:
    return line("   ", left(entry.shown, KEY_CELLS), entry.words, item=OnWord(entry.act.value))


def _column(cells: int) -> int:
    return (cells - 2) // 2 if cells >= WIDE else cells - 2


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
