"""One paper as it will be printed, to be read and looked through for words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import ClassVar

from specbuilder.documents.formats import text_lines
from specbuilder.documents.sheets.sheet import Sheet
from specbuilder.tui.deeds import TROUBLES
from specbuilder.tui.errands import Stop
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnText
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import Bit, Line, cut, line, wrapped
from specbuilder.wording import papers as words
from specbuilder.wording.hints import go_there

from .page import Host, Page
from .question import Question

LEAD = 3
"""So many lines stay in view above a place that was found."""


class PaperPage(Page):
    """The lines of a paper. The cursor is the first of those that are seen."""

    where: ClassVar[Where] = Where.PAPER
    tall: ClassVar[bool] = True

    def __init__(self, host: Host, sheet: Sheet) -> None:
        super().__init__(host)
        self.sheet = sheet
        self.wanted = ""
        """The words that are looked for, as they were typed."""
        self.at = OnText(0)
        self._made: Question[tuple[str, ...]] = Question(host)
        self._laid: tuple[tuple[str, ...], str, Sequence[Line]] | None = None

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """Which paper, and which of its lines are seen; the words while they are typed."""
        if self.entry is not None:
            return [line(" / ", *self.entry.bits(cells - 4))]
        texts, here = self._texts, self._here
        top = min(max(here - self._lead, 0), max(len(texts) - self.host.rows_high, 0))
        title = words.paper_title(self.sheet.title, top + 1, min(top + self.host.rows_high, len(texts)), len(texts))
        if (places := self._places()) and here in places:
            title = f"{title}   {words.looking_for(places.index(here) + 1, len(places), self.wanted)}"
        return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """The paper at this width."""
        self._make(cells)
        texts = self._texts
        if not texts:
            return [line(f" {part}", item=OnText(i)) for i, part in enumerate(wrapped(words.MAKING, cells - 2))]
        if self._laid is None or self._laid[:2] != (texts, self.wanted):
            rows = [Line((Bit(" "), *self._bits(text)), OnText(number)) for number, text in enumerate(texts)]
            self._laid = texts, self.wanted, rows
        return self._laid[2]

    def kept(self) -> int:
        """The lines below the cursor that are seen with it: the cursor scrolls the paper."""
        return max(min(self.host.rows_high - 1 - self._lead, len(self.shown) - 1 - self._here), 0)

    def _bits(self, text: str) -> list[Bit]:
        """The line, with the words that are looked for set strong."""
        at = text.casefold().find(self.wanted.casefold()) if self.wanted else -1
        if at < 0 or len(text.casefold()) != len(text):
            return [Bit(text)]
        end = at + len(self.wanted)
        return [Bit(text[:at]), Bit(text[at:end], Ink.HERE), *self._bits(text[end:])]

    @property
    def _texts(self) -> tuple[str, ...]:
        return self._made.answer or ()

    @property
    def _here(self) -> int:
        return self.at.number if isinstance(self.at, OnText) else 0

    @property
    def _lead(self) -> int:
        return LEAD if self.wanted and self._here in self._places() else 0

    def _make(self, cells: int) -> None:
        """Have it set beside the screens; what cannot be read for it is said on it."""
        deeds, sheet, marks = self.host.deeds, self.sheet, self.host.marks
        stand, day = deeds.desk.stand, deeds.paper_day

        def work(stop: Stop) -> Iterator[tuple[str, ...]]:
            try:
                lines = text_lines(sheet.make(deeds.case(stand, day)), cells - 1)
                yield tuple(marks.drawn(text) for text in lines)
            except TROUBLES as error:
                yield (str(error),)

        self._made.ask((sheet.name, cells, day), work)

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """The next place with the words."""
        self._next()

    def act(self, act: Act) -> bool:
        """Look for words, go to the next place."""
        match act:
            case Act.FIND:
                self.start_typing()
            case Act.NEXT:
                self._next()
            case _:
                return False
        return True

    def hint_of(self, act: Act) -> str | None:
        """What the next step is called; there is a next place only where words are looked for."""
        if act is Act.SIGN:
            return words.step_hint(*self.host.deeds.step_key)
        return "" if act in (Act.NEXT, Act.ENTER) and not self.wanted else None

    def typing_hint(self) -> str:
        """Enter goes to the first place."""
        return go_there()

    def take_text(self, text: str) -> bool:
        """Go to the first place behind the cursor that has these words."""
        self.wanted = text
        self._next(also_here=True)
        return True

    def stop_typing(self) -> None:
        """Words that were not looked for are forgotten."""
        self.entry = None

    def left(self) -> None:
        """Nobody waits for it any more."""
        self._made.drop()

    def _places(self) -> list[int]:
        wanted = self.wanted.casefold()
        return [number for number, text in enumerate(self._texts) if wanted in text.casefold()] if wanted else []

    def _next(self, also_here: bool = False) -> None:
        """The next place; behind the last one the first."""
        places = self._places()
        if not places:
            self.host.say(words.no_place(self.wanted) if self.wanted else "")
            return
        behind = [place for place in places if place > self._here or (also_here and place == self._here)]
        self.at = OnText((behind or places)[0])
