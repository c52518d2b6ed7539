"""A second key before what cannot be taken back: give a draft up, quote anew."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import ClassVar

from specbuilder.tui.deeds import TROUBLES
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnWord
from specbuilder.tui.keys import Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, wrapped
from specbuilder.wording import confirm as words
from specbuilder.wording.life import begun, given_up

from .page import Host, Page

DO_IT = OnWord("do-it")


class ConfirmPage(Page):
    """What would be done, and the line that does it."""

    where: ClassVar[Where] = Where.CONFIRM
    tall: ClassVar[bool] = True

    def __init__(self, host: Host, told: words.Confirmed, do: Callable[[], None]) -> None:
        super().__init__(host)
        self.told = told
        self._do = do
        self.at = DO_IT

    def head(self, cells: int) -> Sequence[Line]:
        """What is asked."""
        return [line(" ", Bit(cut(self.told.title, cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """The sentences, and the line that does it."""
        told = [line(f" {part}") for text in self.told.sentences for part in wrapped(text, cells - 2)]
        return [*told, EMPTY, line("   ", Bit(cut(self.told.line, cells - 4), Ink.HEAD), item=DO_IT)]

    def enter(self) -> None:
        """Do it; where it cannot be done everything stays, and that is said."""
        self.host.close()
        try:
            self._do()
        except TROUBLES as error:
            self.host.say(str(error))


def giving_up(host: Host) -> ConfirmPage:
    """Lay the draft aside."""
    spec = host.report.spec

    def do() -> None:
        host.deeds.give_up()
        host.anew()
        host.say(given_up(spec))

    return ConfirmPage(host, words.give_up(spec), do)


def quoting_again(host: Host) -> ConfirmPage:
    """Begin the next revision of a quote that has run out."""

    def do() -> None:
        before = host.catalogue
        host.deeds.begin_next()
        now = host.catalogue
        host.anew()
        host.say(begun(host.report.spec, now if now is not before else None))

    return ConfirmPage(host, words.quote_again(host.report.spec), do)
