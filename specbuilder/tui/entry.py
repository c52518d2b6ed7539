"""A text being typed: where the caret stands and what each editing key does to it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from .ink import Ink
from .line import Bit, clean, cut, width

LONGEST = 500
"""Characters a typed text may have; longer ones are cut when they are pasted."""


WHOLE = frozenset("0123456789")
LISTED = WHOLE | frozenset(" ,")
NUMBER = LISTED | frozenset(".")
SIGNED = NUMBER | frozenset("-")
DATE = WHOLE | frozenset("-")
"""Characters that may be typed where a number, one that may lie below nought, several numbers or a date is wanted."""


@dataclass(frozen=True, slots=True)
class Entry:
    """Text with a caret between its characters."""

    text: str = ""
    caret: int = 0

    def typed(self, text: str) -> Entry:
        """With this text put in at the caret."""
        room = LONGEST - len(self.text)
        new = clean(text)[: max(room, 0)]
        return Entry(self.text[: self.caret] + new + self.text[self.caret :], self.caret + len(new))

    def edited(self, key: str) -> Entry | None:
        """After an editing key; None when the key is none."""
        match key:
            case "backspace":
                start = max(self.caret - 1, 0)
                return Entry(self.text[:start] + self.text[self.caret :], start)
            case "delete":
                return replace(self, text=self.text[: self.caret] + self.text[self.caret + 1 :])
            case "left":
                return replace(self, caret=max(self.caret - 1, 0))
            case "right":
                return replace(self, caret=min(self.caret + 1, len(self.text)))
            case "home":
                return replace(self, caret=0)
            case "end":
                return replace(self, caret=len(self.text))
            case _:
                return None

    def bits(self, cells: int) -> tuple[Bit, ...]:
        """The text around the caret in at most so many cells; the caret is the cell after or under it."""
        under, rest = (self.text[self.caret : self.caret + 1] or " "), self.text[self.caret + 1 :]
        start, room = self.caret, cells - width(under)
        while start > 0 and width(self.text[start - 1]) <= room:
            start -= 1
            room -= width(self.text[start])
        return Bit(self.text[start : self.caret]), Bit(under, Ink.CARET), Bit(cut(rest, room))


def started(text: str) -> Entry:
    """A text with the caret behind it."""
    return Entry(text, len(text))
