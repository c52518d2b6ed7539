"""Why something is as it is: the chain of reasons, and what the house offers."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.edits import Take
from specbuilder.model.findings import Cause, Finding
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.session.explain import why_finding, why_option
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnText
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, wrapped
from specbuilder.wording.findings import finding_words
from specbuilder.wording.reasons import first_taken, reason_head, reasons
from specbuilder.wording.why import cannot_accept, nothing_in_the_way, offers_head, why_finding_title, why_title

from .accept import AcceptPage
from .page import Host, Page


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
        """The sentence the customer hears, the reasons, what may be done."""
        texts = [(text, ink) for told, ink in self._told() for text in _indented(told, cells - 2)]
        return [line(" ", Bit(text, ink), item=OnText(i)) if text else EMPTY for i, (text, ink) in enumerate(texts)]

    def _told(self) -> list[tuple[str, Ink]]:
        match self.subject:
            case Finding():
                return self._of_finding(self._finding(self.subject))
            case option:
                return self._of_option(option)

    def _of_option(self, option: OptionId) -> list[tuple[str, Ink]]:
        catalogue, report = self.host.catalogue, self.host.report
        told: list[tuple[str, Ink]] = []
        for rule in report.options[option].clashes:
            finding = next((f for f in report.findings if f.rule == rule), None)
            if finding is not None:
                told += [*self._of_finding(finding), ("", Ink.PLAIN)]
        cause = why_option(catalogue, report.spec, option)
        if cause is not None:
            told += self._chain(cause)
            told += self._offers(_rules_of(cause))
        return told or [(nothing_in_the_way(catalogue, report, option), Ink.PLAIN)]

    def _of_finding(self, finding: Finding) -> list[tuple[str, Ink]]:
        catalogue, report = self.host.catalogue, self.host.report
        words = finding_words(catalogue, report, finding)
        ink = Ink.CARE if finding.verdict is Verdict.BROKEN else Ink.HEAD
        told = [(words.head, ink)]
        told += [(f"  {text}", Ink.PLAIN) for text in (*words.rests_on, *words.lacks)]
        if taken := first_taken(catalogue, report, why_finding(catalogue, report.spec, finding)):
            told.append((f"  {taken}", Ink.PLAIN))
        if words.fixes:
            told.append((offers_head(), Ink.HEAD))
            told += [(f"  {text}", Ink.PLAIN) for text in words.fixes]
        return [*told, (f"  {words.source}", Ink.PLAIN)]

    def _chain(self, cause: Cause) -> list[tuple[str, Ink]]:
        catalogue, report = self.host.catalogue, self.host.report
        head = reason_head(catalogue, report, cause)
        told = [(f'"{head}"', Ink.HEAD)] if head else []
        told += [(f"  {text}", Ink.PLAIN) for text in reasons(catalogue, report, cause)]
        taken = first_taken(catalogue, report, cause)
        return [*told, (f"  {taken}", Ink.PLAIN)] if taken else told

    def _offers(self, rules: Sequence[RuleId]) -> list[tuple[str, Ink]]:
        fixes = [
            fix for rule in rules if rule in self.host.catalogue.rules for fix in self.host.catalogue.rules[rule].fixes
        ]
        if not fixes:
            return []
        return [(offers_head(), Ink.HEAD), *((f"  {fix}", Ink.PLAIN) for fix in dict.fromkeys(fixes))]

    def _finding(self, asked: Finding) -> Finding:
        """The finding as it stands now: an edit may have changed it since it was asked about."""
        return next((f for f in self.host.report.findings if f.rule == asked.rule), asked)

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Back to where it was asked."""
        self.host.close()

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
        found = self._finding(self.subject) if isinstance(self.subject, Finding) else self._first_clash(self.subject)
        if found is not None and found.level is not Level.STOP and found.verdict is Verdict.BROKEN:
            self.host.show(AcceptPage(self.host, found.rule))
        else:
            self.host.say(cannot_accept())

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
