"""A page that waits for one proposal of a search, shows all of it, and takes it by one key as one step of undo."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Hashable, Iterator, Sequence
from typing import Generic, TypeVar

from specbuilder.model.edits import Edit, Together
from specbuilder.tui.errands import Stop
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnText
from specbuilder.tui.keys import Act
from specbuilder.tui.line import EMPTY, Bit, Line, line, wrapped
from specbuilder.wording.what_if import not_seen_yet, working_out

from .page import Host, Page
from .question import Question
from .ways import stamped

T = TypeVar("T")


class ProposedPage(Page, Generic[T]):
    """What it proposes stands on lines to read; Enter takes the whole of it."""

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self.question: Question[T] = Question(host)

    @abstractmethod
    def subject(self) -> Hashable:
        """What is asked, beside the spec."""

    @abstractmethod
    def search(self) -> Callable[[Stop], Iterator[T]]:
        """The search, with the values it works on at hand: it runs on a thread of its own."""

    @abstractmethod
    def told(self, answer: T, cells: int) -> Sequence[Line]:
        """The proposal as lines."""

    @abstractmethod
    def proposal(self, answer: T) -> tuple[tuple[Edit, ...], str]:
        """The edits of the proposal, and what the last line says once they are done."""

    # -- lines -----------------------------------------------------------------------------------------------------

    def lines(self, cells: int) -> Sequence[Line]:
        """The proposal, or that it is being worked out."""
        self.question.ask(self.subject(), self.search())
        if self.question.answer is None:
            return [line("   ", Bit(working_out(), Ink.DOUBT), item=OnText(0))]
        return _with_stops(self.told(self.question.answer, cells))

    def left(self) -> None:
        """Nobody waits for it any more."""
        self.question.drop()

    @property
    def unseen(self) -> bool:
        """True while the proposal was not painted yet."""
        return self.question.unseen

    def painted(self, at_s: float) -> None:
        """The proposal stands on the screen."""
        self.question.painted(at_s)

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Take all of it, if it was there to be read."""
        if self.question.answer is None or not self.question.seen():
            self.host.say(not_seen_yet())
            return
        edits, said = self.proposal(self.question.answer)
        self.host.close()
        if edits:
            now = self.host.now()
            self.host.edit(Together(edits=tuple(stamped(edit, now) for edit in edits)), said)

    def hint_of(self, act: Act) -> str | None:
        """Enter only once there is something to take."""
        return "" if act is Act.ENTER and self.question.answer is None else None


def heading(text: str) -> Line:
    """A heading inside a proposal."""
    return line(" ", Bit(text, Ink.HEAD))


def sentences(texts: Sequence[str], cells: int, ink: Ink = Ink.PLAIN, indent: str = "   ") -> list[Line]:
    """Each text on as many lines as it takes."""
    return [line(indent, Bit(part, ink)) for text in texts for part in wrapped(text, cells - len(indent) - 1)]


def _with_stops(lines: Sequence[Line]) -> list[Line]:
    """The cursor may stand on every line that says something, so that all can be scrolled to."""
    return [row if row.item is not None or row == EMPTY else Line(row.bits, OnText(i)) for i, row in enumerate(lines)]
