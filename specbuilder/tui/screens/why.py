"""Why something is as it is: the chain of reasons, and what the house offers."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.edits import Take
from specbuilder.model.findings import Finding
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Level, OptionState, Verdict
from specbuilder.model.spec import Spec
from specbuilder.model.ways import ClearFindings, Goal, LetIn
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnText, OnWay
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import Bit, Line, cut, fitted, line
from specbuilder.wording.hints import go_there, take_it
from specbuilder.wording.what_if import (
    more_reasons,
    rank_by,
    take_a_way,
    would_break,
    would_break_short,
    would_clash_title,
)
from specbuilder.wording.why import (
    cannot_accept,
    nothing_in_the_way,
    perhaps_more_reasons,
    reason_number,
    why_finding_title,
    why_title,
)

from .accept import AcceptPage
from .foresight import would_break as newly
from .page import Host, Page
from .telling import Told, chain, laid, of_finding, offered_by
from .ways import WaysList

ROOMY = 20
"""From so many lines on what would be broken is told in full."""
MOST_REASONS = 3
LEAST_REASONS = 2
"""Lines of reasons that stand over the ways out in the smallest window."""


class WhyPage(Page):
    """The reasons for an option's state, or behind a finding; then the ways out, as they are found."""

    where: ClassVar[Where] = Where.WHY

    def __init__(self, host: Host, subject: OptionId | Finding) -> None:
        super().__init__(host)
        self.subject = subject
        self.ways = WaysList(host)
        self.whole = False
        """True: all reasons are told; False: as many lines as leave room for the ways out."""
        self.at = OnWay(1)
        self._kept: tuple[tuple[Spec, bool, bool], tuple[list[Told], list[Told]]] | None = None

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """What is asked about."""
        catalogue, report = self.host.catalogue, self.host.report
        match self.subject:
            case Finding():
                title = why_finding_title(catalogue, self._finding(self.subject))
            case option if clashes := newly(self.host, option):
                title = would_clash_title(catalogue, option, len(clashes))
            case option:
                title = why_title(catalogue, report, option)
        return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """The sentence the customer hears, the reasons, the ways out, what the house offers.

        The cursor stands on what can be gone to or taken, and on lines to read where there would be none in view.
        """
        self.ways.look(self._goal())
        told, offers = self._told()
        rows = laid(told, cells)
        if self.ways.goal is None:
            return [*rows, *laid(offers, cells, len(rows))]
        room = max(self.host.rows_high - self.ways.height(cells), LEAST_REASONS)
        if len(rows) > room and not self.whole:
            rows = [*fitted(rows, room - 1, cells), line(f"   {more_reasons()}", item=OnText(room))]
        rows += self.ways.lines(cells, self.at)
        return [*rows, *laid(offers, cells, len(rows))]

    def _goal(self) -> Goal | None:
        """What ways out are looked for; None where nothing is in the way."""
        report = self.host.report
        match self.subject:
            case Finding():
                found = self._finding(self.subject)
                loud = found.verdict is Verdict.BROKEN and found.level is not Level.NOTE and not found.accepted
                return ClearFindings(rules=(found.rule,)) if loud else None
            case option if report.spec.has(option):
                clashes = set(report.options[option].clashes)
                rules = tuple(f.rule for f in report.broken(Level.STOP, Level.SIGN) if f.rule in clashes)
                return ClearFindings(rules=rules) if rules else None
            case option:
                blocked = report.options[option].state is OptionState.BLOCKED
                return LetIn(option=option) if blocked or newly(self.host, option) else None

    def _told(self) -> tuple[list[Told], list[Told]]:
        """What it rests on, and what the house offers; worked out once, so that an arrow key asks nothing."""
        asked = self.host.report.spec, self._short, self.whole
        if self._kept is None or self._kept[0] != asked:
            match self.subject:
                case Finding():
                    told = of_finding(self.host, self._finding(self.subject))
                case option:
                    told = self._of_option(option)
            self._kept = asked, told
        return self._kept[1]

    @property
    def _short(self) -> bool:
        """True where what would be broken is told in one line each."""
        return not self.whole and self.host.rows_high < ROOMY

    def _of_option(self, option: OptionId) -> tuple[list[Told], list[Told]]:
        catalogue, report = self.host.catalogue, self.host.report
        told, offers = list[Told](), list[Told]()
        clashes = set(report.options[option].clashes)
        short = self._short
        for finding in report.findings:
            if finding.rule in clashes:
                reasons, fixes = of_finding(self.host, finding)
                told += [*reasons, Told("")]
                offers += fixes
        for finding in newly(self.host, option):
            after = self.host.would_be(Take(option=option))
            words = would_break_short if short else would_break
            told.append(Told(words(catalogue, after, finding), Ink.CARE, one_line=short))
        most = MOST_REASONS if self.whole else 1
        found = self.host.searches.reasons(catalogue, self.host.editable.spec, option, most)
        causes = found.causes if found is not None else ()
        for number, cause in enumerate(causes, 1):
            if headline := reason_number(number, len(causes)):
                told.append(Told(headline, Ink.HEAD))
            told += chain(self.host, cause, option)
            offers += offered_by(self.host, cause)
        if found is not None and self.whole and not found.complete:
            told.append(Told(perhaps_more_reasons()))
        return told or [Told(nothing_in_the_way(catalogue, report, option))], list(dict.fromkeys(offers))

    def _finding(self, asked: Finding) -> Finding:
        """The finding as it stands now: an edit may have changed it since it was asked about."""
        return next((f for f in self.host.report.findings if f.rule == asked.rule), asked)

    # -- who has seen it, and who waits for it ---------------------------------------------------------------------

    def left(self) -> None:
        """Nobody waits for the ways out any more."""
        self.ways.question.drop()

    @property
    def unseen(self) -> bool:
        """True while a way out was not painted yet."""
        return self.ways.question.unseen

    def painted(self, at_s: float) -> None:
        """The ways stand on the screen."""
        self.ways.question.painted(at_s)

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Take the way under the cursor; go to what a reason is about; take what nothing is in the way of; go back."""
        match self.at:
            case OnWay(number):
                self._take_way(number)
            case OnText() | None:
                self._take_or_close()
            case item:
                self.host.go_to(item)

    def digit(self, number: int) -> None:
        """Take a way by its number."""
        if self.ways.goal is not None and number:
            self._take_way(number)

    def _take_way(self, number: int) -> None:
        """Where something of it is still broken, the page stays and looks anew, so that savings can be added up."""
        goal, found = self.ways.goal, self.ways.edit_of(number)
        if goal is None or found is None:
            return
        if isinstance(goal, LetIn):
            self.host.close()
            self.host.edit(*found)
            return
        self.at = OnWay(1)
        self.host.edit(*found)
        broken = {finding.rule for finding in self.host.report.broken(Level.STOP, Level.SIGN)}
        if not broken.intersection(goal.rules):
            self.host.close()

    def _take_or_close(self) -> None:
        option = self._free_option()
        self.host.close()
        if option is not None:
            self.host.edit(Take(option=option, at=self.host.now()))

    def digit_hint(self) -> str:
        """Which digits take a way."""
        return take_a_way(len(self.ways.ways)) if self.ways.ways else ""

    def hint_of(self, act: Act) -> str | None:
        """Enter does what the line asks for; what cannot be done is not offered."""
        match act:
            case Act.ENTER:
                return self._enter_hint()
            case Act.ANYWAY:
                return None if self._kept_out() is not None else ""
            case Act.ACCEPT:
                return None if self._acceptable() is not None else ""
            case Act.RANK:
                return rank_by(self.ways.next_rank) if self.ways.goal is not None else ""
            case Act.WHY:
                return None if self.ways.goal is not None else ""
            case _:
                return None

    def _enter_hint(self) -> str | None:
        match self.at:
            case OnWay(number):
                return take_it() if number <= len(self.ways.ways) else ""
            case OnText() | None:
                return take_it() if self._free_option() is not None else None
            case _:
                return go_there()

    def _free_option(self) -> OptionId | None:
        """The option asked about when nothing is in the way of it and it is not in."""
        option = self._option_in(OptionState.OPEN)
        return None if option is None or newly(self.host, option) else option

    def _kept_out(self) -> OptionId | None:
        """The option asked about when something is in its way."""
        option = self._option_in(OptionState.OPEN)
        return option if option is not None and newly(self.host, option) else self._option_in(OptionState.BLOCKED)

    def _option_in(self, state: OptionState) -> OptionId | None:
        if isinstance(self.subject, Finding):
            return None
        report = self.host.report
        here = report.options[self.subject].state is state and not report.spec.has(self.subject)
        return self.subject if here else None

    def act(self, act: Act) -> bool:
        """All reasons; another order; take it anyway; accept in writing."""
        match act:
            case Act.WHY:
                self.whole = not self.whole
            case Act.RANK:
                self.ways.rank_by_next()
                self.at = OnWay(1)
            case Act.ANYWAY:
                self._anyway()
            case Act.ACCEPT:
                self._accept()
            case _:
                return False
        return True

    def _anyway(self) -> None:
        option = self.subject if not isinstance(self.subject, Finding) else None
        self.host.close()
        if option is not None and not self.host.report.spec.has(option):
            self.host.edit(Take(option=option, at=self.host.now()))

    def _accept(self) -> None:
        if (found := self._acceptable()) is not None:
            self.host.show(AcceptPage(self.host, found.rule))
        else:
            self.host.say(cannot_accept())

    def _acceptable(self) -> Finding | None:
        """What may be accepted in writing here."""
        found = self._finding(self.subject) if isinstance(self.subject, Finding) else self._first_clash(self.subject)
        good = found is not None and found.level is not Level.STOP and found.verdict is Verdict.BROKEN
        return found if good else None

    def _first_clash(self, option: OptionId) -> Finding | None:
        clashes = self.host.report.options[option].clashes
        return next((f for f in self.host.report.findings if f.rule in clashes and f.level is not Level.STOP), None)
