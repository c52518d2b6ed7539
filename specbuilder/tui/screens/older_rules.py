"""A job that other rules than today's were used for: look at it, hold it against today, move it to today."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import ClassVar

from specbuilder.model.comparison import Comparison
from specbuilder.model.kinds import JobState
from specbuilder.model.stand import Stand
from specbuilder.office.older import Older, as_of_today
from specbuilder.session.compare import compare
from specbuilder.tui.errands import Stop
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnText
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, wrapped
from specbuilder.wording.hints import go_back, open_by_number
from specbuilder.wording.older import (
    against_lines,
    against_title,
    checking_against,
    look_line,
    move_line,
    older_title,
    older_words,
    take_up_line,
)
from specbuilder.wording.older import check_line as check_line_

from .opener import Opener
from .page import Host, Page
from .question import Question

LOOK, CHECK, MOVE = OnText(1), OnText(2), OnText(3)


class OlderRulesPage(Page):
    """Three lines; nothing is changed but by the third."""

    where: ClassVar[Where] = Where.OLDER_RULES
    tall: ClassVar[bool] = True

    def __init__(self, host: Host, opener: Opener, number: str, older: Older) -> None:
        super().__init__(host)
        self.opener, self.number, self.older = opener, number, older
        self.at = LOOK

    @property
    def _holds(self) -> bool:
        """A quote that has not run out can still be signed as it is."""
        return self.older.state is JobState.QUOTED

    def head(self, cells: int) -> Sequence[Line]:
        """Which job, and which prices."""
        title = older_title(self.older.spec, self.older.catalogue, self.host.catalogue)
        return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """Where it stands, then what can be done."""
        older = self.older
        told = [
            line(f" {part}")
            for text in older_words(older.spec, older.catalogue, older.state)
            for part in wrapped(text, cells - 2)
        ]
        first = take_up_line(older.spec) if self._holds else look_line()
        rows: list[Line] = []
        for item, text in ((LOOK, first), (CHECK, check_line_()), (MOVE, move_line(older.spec, older.state))):
            head, *rest = wrapped(text, cells - 6)
            rows.append(line(f" {item.number}   ", Bit(head, Ink.HEAD), item=item))
            rows += [line(f"     {part}") for part in rest]
        return [*told, EMPTY, *rows]

    def enter(self) -> None:
        """Do what the line says."""
        if isinstance(self.at, OnText):
            self.digit(self.at.number)

    def digit(self, number: int) -> None:
        """The line of this number."""
        match OnText(number):
            case line_ if line_ == LOOK and self._holds:
                self.opener.take_up(self.number)
            case line_ if line_ == LOOK:
                self.opener.look_at(self.number)
            case line_ if line_ == CHECK:
                if self.opener.look_at(self.number):
                    self.host.show(AgainstPage(self.host))
            case line_ if line_ == MOVE:
                self.opener.move_to_today(self.number)
            case _:
                pass

    def digit_hint(self) -> str:
        """Digits do what the lines say."""
        return open_by_number(3)

    def hint_of(self, act: Act) -> str | None:
        """There is no customer here to turn the screen to."""
        return "" if act is Act.CUSTOMER else None


class AgainstPage(Page):
    """What the rules of today make of a job that is looked at as it was."""

    where: ClassVar[Where] = Where.AGAINST_TODAY
    tall: ClassVar[bool] = True

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self._found: Question[tuple[Stand, Comparison]] = Question(host)

    def head(self, cells: int) -> Sequence[Line]:
        """Which rules against which."""
        title = against_title(self.host.catalogue, self.host.deeds.desk.house.catalogue)
        return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """Gone, renamed, dearer, lighter; what is broken now; what it comes to."""
        self._look()
        if self._found.answer is None:
            return [line(f" {checking_against()}", item=OnText(0))]
        now, comparison = self._found.answer
        rows: list[Line] = []
        for number, text in enumerate(against_lines(self.host.deeds.desk.stand, now, comparison)):
            head, *rest = wrapped(text, cells - 5)
            rows.append(line(f"   {head}", item=OnText(number)))
            rows += [line(f"     {part}") for part in rest]
        return rows

    def enter(self) -> None:
        """Back to the job as it was."""
        self.host.close()

    def hint_of(self, act: Act) -> str | None:
        """It is only read."""
        return go_back() if act is Act.ENTER else None

    def left(self) -> None:
        """Nobody waits for it any more."""
        self._found.drop()

    def _look(self) -> None:
        desk = self.host.deeds.desk
        house, then = desk.house, desk.stand

        def work(stop: Stop) -> Iterator[tuple[Stand, Comparison]]:
            now = as_of_today(house, then.spec)
            yield now, compare(then, now)

        self._found.ask("today", work)
