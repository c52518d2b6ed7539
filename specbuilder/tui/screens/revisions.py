"""Every revision of a job: the newest to go on with, the earlier ones to look at."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.office.older import Past
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnText
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import Bit, Line, cut, left, line, wrapped
from specbuilder.wording.hints import open_it
from specbuilder.wording.older import past_words, revisions_hint, revisions_title

from .opener import Opener
from .page import Host, Page

NUMBER_CELLS, STATE_CELLS = 5, 10


class RevisionsPage(Page):
    """One line a revision, the newest first."""

    where: ClassVar[Where] = Where.REVISIONS
    tall: ClassVar[bool] = True

    def __init__(self, host: Host, opener: Opener, number: str, pasts: Sequence[Past]) -> None:
        super().__init__(host)
        self.opener, self.number, self.pasts = opener, number, tuple(pasts)
        self.at = OnText(self.pasts[min(1, len(self.pasts) - 1)].revision)

    def head(self, cells: int) -> Sequence[Line]:
        """Of which job."""
        return [line(" ", Bit(cut(revisions_title(self.number), cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """Revision, state, and since when."""
        return [self._row(past, cells) for past in self.pasts]

    def _row(self, past: Past, cells: int) -> Line:
        state, told = past_words(past.spec, past.state, past.revision == self.pasts[0].revision)
        start = left(f"{past.revision}", NUMBER_CELLS), left(state, STATE_CELLS)
        return line("   ", *start, cut(told, cells - 4 - NUMBER_CELLS - STATE_CELLS), item=OnText(past.revision))

    def foot(self, cells: int) -> Sequence[Line]:
        """What an earlier one is good for."""
        return [line(f" {part}") for part in wrapped(revisions_hint(), cells - 2)]

    def enter(self) -> None:
        """Look at it; the newest is opened."""
        if isinstance(self.at, OnText):
            self._open(self.at.number)

    def hint_of(self, act: Act) -> str | None:
        """The newest is opened to go on with."""
        newest = self.at == OnText(self.pasts[0].revision)
        return open_it() if act is Act.ENTER and newest else None

    def _open(self, revision: int) -> None:
        if revision != self.pasts[0].revision:
            self.opener.look_at(self.number, revision)
        else:
            self.opener.open(self.number)
