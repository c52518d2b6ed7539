"""What every page of the screens is: lines, a cursor among them, perhaps a text being typed, and what keys do there."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Sequence
from typing import ClassVar

from specbuilder.tui.entry import DATE, NUMBER, Entry, started
from specbuilder.tui.items import DATES, NUMBERS, Item, OnField
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import Line, within
from specbuilder.wording.hints import only_figures, take_it

from .host import Host

__all__ = ["Host", "Page"]


class Page(ABC):
    """A list of lines and what may be done with them."""

    where: ClassVar[Where]
    searches: ClassVar[bool] = False
    """True: whatever is typed looks for something, and the arrows keep moving the cursor."""
    tall: ClassVar[bool] = False
    """True: in a small window it takes the place of the page below it and does not lie over a part of it."""
    full: ClassVar[bool] = False
    """True: it takes the whole of every window, and what is opened over it does so, too."""
    shut: ClassVar[bool] = False
    """True: the customer reads it. Nothing else is seen beside it, and only its own second key leads away."""

    heads: ClassVar[int] = 1
    """So many lines over it stay in view."""

    def __init__(self, host: Host) -> None:
        self.host = host
        self.at: Item | None = None
        """Where the cursor stands."""
        self.entry: Entry | None = None
        self.shown: Sequence[Line] = ()
        """The lines as they were last laid out."""
        self.settled = False
        """True right after a digit that was a whole answer: what follows it is not meant for the next line."""

    @abstractmethod
    def lines(self, cells: int) -> Sequence[Line]:
        """What the page holds, in so many cells a line."""

    def head(self, cells: int) -> Sequence[Line]:
        """The lines over it; as many every time."""
        return ()

    def foot(self, cells: int) -> Sequence[Line]:
        """The sentences about the line under the cursor."""
        return ()

    def kept(self) -> int:
        """So many lines under the cursor's are about it and stay in view with it."""
        return 0

    def enter(self) -> None:
        """Enter on the line under the cursor."""
        return

    def act(self, act: Act) -> bool:
        """Another act; False when it means nothing of the page's own."""
        return False

    def digit(self, number: int) -> None:
        """A digit where nothing is being typed."""
        return

    def stray(self, act: Act | None) -> bool:
        """Every key, before it means anything; True when that was all it meant."""
        return False

    def left(self) -> None:
        """It was closed: whatever was being searched for it is called back."""
        return

    @property
    def unseen(self) -> bool:
        """True while it holds something that may be taken and was not painted yet."""
        return False

    def painted(self, at_s: float) -> None:
        """All it holds stands on the screen since then, by the clock of the keys."""
        return

    def takes_text(self) -> bool:
        """True on a line where a letter is meant for the text and is no command: on every field."""
        return isinstance(self.at, OnField)

    def begin_text(self, sign: str) -> None:
        """Begin a text with this sign; where it cannot stand it is said, and nothing else comes of it."""
        if self._typable(sign):
            self.start_typing(sign)
        else:
            self.host.say(only_figures())

    def letters(self) -> frozenset[str]:
        """The only characters that may be typed here; empty: all of them, as in whatever looks for something."""
        if self.searches or not isinstance(self.at, OnField):
            return frozenset()
        return NUMBER if self.at.field in NUMBERS else DATE if self.at.field in DATES else frozenset()

    def digit_hint(self) -> str:
        """What digits do on this line, for the hint line."""
        return ""

    def hint_of(self, act: Act) -> str | None:
        """What an act does on this line, for the hint line; empty: nothing; None: what the table of keys says."""
        return None

    def typing_hint(self) -> str:
        """What Enter does with the text being typed, for the hint line."""
        return take_it()

    def take_text(self, text: str) -> bool:
        """Enter on a typed text; False when it cannot be taken (the last line says why)."""
        return False

    def searched(self) -> None:
        """The text to look for has changed."""
        return

    # -- the cursor ------------------------------------------------------------------------------------------------

    def lay(self, cells: int) -> None:
        """Lay the lines out anew and keep the cursor on a line that is there."""
        before = [line.item for line in self.shown if line.item is not None]
        self.shown = [within(line, cells) for line in self.lines(cells)]
        items = self.items()
        if self.at in items:
            return
        place = before.index(self.at) if self.at in before else 0
        self.at = items[min(place, len(items) - 1)] if items else None

    def items(self) -> list[Item]:
        """Every item the cursor may stand on, in order."""
        return [line.item for line in self.shown if line.item is not None]

    def order_of(self, item: Item | None) -> int:
        """Which place an item has among the lines."""
        items = self.items()
        return items.index(item) if item in items else -1

    def cursor(self) -> int | None:
        """The line of the cursor."""
        if self.at is None:
            return None
        return next((i for i, line in enumerate(self.shown) if line.item == self.at), None)

    def move(self, by: int) -> None:
        """Move the cursor by so many lines it may stand on, and stop at the ends."""
        items = self.items()
        if not items:
            return
        here = items.index(self.at) if self.at in items else 0
        self.at = items[min(max(here + by, 0), len(items) - 1)]

    def move_rows(self, by: int) -> None:
        """Move the cursor by so many lines of the page, and by one it may stand on at least."""
        here = self.cursor()
        if here is None:
            return
        ahead = [i for i, row in enumerate(self.shown) if row.item is not None and (i > here) == (by > 0) and i != here]
        reached = [i for i in ahead if abs(i - here) <= abs(by)]
        self.move((max(len(reached), 1) if ahead else 0) * (1 if by > 0 else -1))

    # -- typing ----------------------------------------------------------------------------------------------------

    def start_typing(self, text: str = "", *, anew: bool = False) -> None:
        """Begin a text on this line, or go on with the one that was not taken.

        A figure typed or pasted on one that was not taken begins anew: two numbers are never glued into a third.
        """
        kept = self.host.drafts.pop(self.at, "") if self.at is not None else ""
        kept = "" if (text or anew) and self.letters() else kept
        self.entry = started(kept).typed(self._typable(text))
        if not self.searches:
            self.host.say("")

    def open_text(self, value: str) -> None:
        """Begin with the text that stands there, or go on with the one that was not taken."""
        self.start_typing("" if self.at is not None and self.host.drafts.get(self.at) else value)

    def type_text(self, text: str) -> None:
        """More of the text, as far as its characters may stand there."""
        if self.entry is not None:
            typable = self._typable(text)
            self.entry = self.entry.typed(typable)
            if text and not typable:
                self.host.say(only_figures())
            self.searched()

    def _typable(self, text: str) -> str:
        allowed = self.letters()
        return "".join(sign for sign in text if sign in allowed) if allowed else text

    def stop_typing(self) -> None:
        """Leave the text as it is; it stays beside its line, not taken."""
        if self.entry is not None and self.entry.text and self.at is not None and not self.searches:
            self.host.drafts[self.at] = self.entry.text
        self.entry = None

    def take_typed(self) -> None:
        """Enter while typing."""
        item = self.at
        if self.entry is not None and self.take_text(self.entry.text.strip()):
            self.entry = None
            if item is not None:
                self.host.drafts.pop(item, None)
