"""Why something is as it is: the chain of reasons, and what the house offers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from specbuilder.model.edits import Take
from specbuilder.model.findings import Cause, Finding
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Level, OptionState, Verdict
from specbuilder.session.explain import why_finding, why_option
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnText
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, wrapped
from specbuilder.wording.findings import finding_words
from specbuilder.wording.hints import go_there, take_it
from specbuilder.wording.reasons import first_taken, reason_head, reasons_about
from specbuilder.wording.why import cannot_accept, nothing_in_the_way, offers_head, why_finding_title, why_title

from .about import about_cause, about_lack, about_line
from .accept import AcceptPage
from .page import Host, Page

MOST_UNSEEN = 5
"""Behind so many lines without a stop for the cursor the next one is a stop, so that all can be scrolled to."""


@dataclass(frozen=True, slots=True)
class _Told:
    """A sentence of the page."""

    text: str
    ink: Ink = Ink.PLAIN
    about: Item | None = None
    """What Enter goes to."""
    ends: bool = True
    """False: words of the house that nothing can be done with; the cursor goes past them while it can."""


class WhyPage(Page):
    """The reasons for an option's state, or behind a finding."""

    where: ClassVar[Where] = Where.WHY

    def __init__(self, host: Host, subject: OptionId | Finding) -> None:
        super().__init__(host)
        self.subject = subject

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """What is asked about."""
        catalogue, report = self.host.catalogue, self.host.report
        match self.subject:
            case Finding():
                title = why_finding_title(catalogue, self._finding(self.subject))
            case option:
                title = why_title(catalogue, report, option)
        return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """The sentence the customer hears, the reasons, what may be done.

        The cursor stands on what can be gone to, and on lines to read where there would be none in view.
        """
        rows, standing, unseen = list[Line](), set[Item](), MOST_UNSEEN
        for told in self._told():
            for number, text in enumerate(_indented(told.text, cells - 2)):
                item = told.about if number == 0 and told.about not in standing else None
                unseen += 1
                if item is None and text and unseen > (MOST_UNSEEN if told.ends else 2 * MOST_UNSEEN):
                    item = OnText(len(rows))
                if item is not None:
                    standing.add(item)
                    unseen = 0
                rows.append(line(" ", Bit(text, told.ink), item=item) if text else EMPTY)
        return rows

    def _told(self) -> list[_Told]:
        match self.subject:
            case Finding():
                return self._of_finding(self._finding(self.subject))
            case option:
                return self._of_option(option)

    def _of_option(self, option: OptionId) -> list[_Told]:
        catalogue, report = self.host.catalogue, self.host.report
        told: list[_Told] = []
        for rule in report.options[option].clashes:
            finding = next((f for f in report.findings if f.rule == rule), None)
            if finding is not None:
                told += [*self._of_finding(finding), _Told("")]
        cause = why_option(catalogue, report.spec, option)
        if cause is not None:
            told += self._chain(cause)
            told += self._offers(_rules_of(cause))
        return told or [_Told(nothing_in_the_way(catalogue, report, option))]

    def _of_finding(self, finding: Finding) -> list[_Told]:
        catalogue, report = self.host.catalogue, self.host.report
        words = finding_words(catalogue, report, finding)
        told = [_Told(words.head, Ink.CARE if finding.verdict is Verdict.BROKEN else Ink.HEAD)]
        told += [_Told(f"  {text}", about=about_line(catalogue, finding, text)) for text in words.rests_on]
        told += [
            _Told(f"  {text}", about=about_lack(lack)) for text, lack in zip(words.lacks, finding.lacks, strict=True)
        ]
        if taken := first_taken(catalogue, report, why_finding(catalogue, report.spec, finding)):
            told.append(_Told(f"  {taken}"))
        if words.fixes:
            told.append(_Told(offers_head(), Ink.HEAD))
            told += [_Told(f"  {text}", ends=False) for text in words.fixes]
        return [*told, _Told(f"  {words.source}")]

    def _chain(self, cause: Cause) -> list[_Told]:
        catalogue, report = self.host.catalogue, self.host.report
        head = reason_head(catalogue, report, cause)
        told = [_Told(f'"{head}"', Ink.HEAD)] if head else []
        chain = reasons_about(catalogue, report, cause)
        told += [_Told(f"  {text}", about=about_cause(catalogue, node, self.subject)) for text, node in chain]
        taken = first_taken(catalogue, report, cause)
        return [*told, _Told(f"  {taken}")] if taken else told

    def _offers(self, rules: Sequence[RuleId]) -> list[_Told]:
        fixes = [
            fix for rule in rules if rule in self.host.catalogue.rules for fix in self.host.catalogue.rules[rule].fixes
        ]
        if not fixes:
            return []
        return [_Told(offers_head(), Ink.HEAD), *(_Told(f"  {fix}", ends=False) for fix in dict.fromkeys(fixes))]

    def _finding(self, asked: Finding) -> Finding:
        """The finding as it stands now: an edit may have changed it since it was asked about."""
        return next((f for f in self.host.report.findings if f.rule == asked.rule), asked)

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Go to what a reason is about; take what nothing is in the way of; else back to where it was asked."""
        if self.at is not None and not isinstance(self.at, OnText):
            self.host.go_to(self.at)
            return
        option = self._free_option()
        self.host.close()
        if option is not None:
            self.host.edit(Take(option=option, at=self.host.now()))

    def hint_of(self, act: Act) -> str | None:
        """Enter does what the line asks for; what cannot be done is not offered."""
        if act is Act.ENTER and self._free_option() is not None:
            return take_it()
        if act is Act.ENTER and not isinstance(self.at, OnText):
            return go_there()
        if act is Act.ANYWAY:
            return None if self._blocked_option() is not None else ""
        if act is Act.ACCEPT:
            return None if self._acceptable() is not None else ""
        return None

    def _free_option(self) -> OptionId | None:
        """The option asked about when nothing is in the way of it and it is not in."""
        return self._option_in(OptionState.OPEN)

    def _blocked_option(self) -> OptionId | None:
        return self._option_in(OptionState.BLOCKED)

    def _option_in(self, state: OptionState) -> OptionId | None:
        if isinstance(self.subject, Finding):
            return None
        report = self.host.report
        here = report.options[self.subject].state is state and not report.spec.has(self.subject)
        return self.subject if here else None

    def act(self, act: Act) -> bool:
        """Take it anyway; accept in writing."""
        match act:
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


def _rules_of(cause: Cause) -> list[RuleId]:
    rules = [cause.rule] if cause.rule is not None else []
    return rules + [rule for below in cause.because for rule in _rules_of(below)]


def _indented(text: str, cells: int) -> list[str]:
    """Wrapped, with what follows under the beginning."""
    bare = text.lstrip(" ")
    indent = " " * (len(text) - len(bare))
    first, *rest = wrapped(bare, cells - len(indent) - 2) or [""]
    return [f"{indent}{first}", *(f"{indent}  {part}" for part in rest)]
