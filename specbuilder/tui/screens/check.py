"""The last step: what is broken, what is open, what was accepted, the state of the job, and the spec to hand over."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.edits import AnswerLine, CloseQuestion, Withdraw
from specbuilder.model.findings import Finding
from specbuilder.model.kinds import Level, Step, Verdict
from specbuilder.session.facts import DERIVED
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnAnswer, OnFinding, OnQuestion, OnText, OnWord
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, left, line, parted, wrapped
from specbuilder.tui.readiness import Readiness
from specbuilder.wording.brief import line_words
from specbuilder.wording.check import cautions_head, hand_over_hint, hand_over_line, open_head, standing
from specbuilder.wording.circuit_rows import circuits_hint
from specbuilder.wording.findings import finding_line, findings_none, offers_line, silent_count, silent_words
from specbuilder.wording.forms import form_title
from specbuilder.wording.hints import next_line, why_it
from specbuilder.wording.names import key_name
from specbuilder.wording.open_things import question_text
from specbuilder.wording.papers import step_hint
from specbuilder.wording.typed import answer, one_digit
from specbuilder.wording.why import cannot_accept

from .accept import AcceptPage
from .answering import digits_for, letters_for
from .circuits import CIRCUITS, CircuitsPage, circuits_lines
from .numbered import answer_foot
from .open_things import open_points, question_of, thing_lines
from .page import Host, Page
from .who import WhoPage
from .why import WhyPage

HAND_OVER = OnWord("hand-over")
LINES_EACH = 3
NAME_CELLS = 34


class CheckPage(Page):
    """The check, as lines that lead to what they speak of."""

    where: ClassVar[Where] = Where.CHECK
    step = Step.CHECK

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self.may = Readiness(host)

    def entered(self) -> None:
        """Nothing is folded here."""
        self.shown = ()

    # -- lines -----------------------------------------------------------------------------------------------------

    def lines(self, cells: int) -> Sequence[Line]:
        """Findings, open things, the state of the job, the hand-over."""
        catalogue, report = self.host.catalogue, self.host.report
        heads = (*wrapped(standing(catalogue, report), cells - 2), *parted(self._may_words(), cells - 2))
        result = [line(" ", Bit(part, Ink.HEAD)) for part in heads]
        shown = [f for f in report.findings if f.verdict is not Verdict.HOLDS]
        loud = [f for f in shown if f.level is not Level.NOTE]
        notes = [f for f in shown if f.level is Level.NOTE]
        if told := silent_count(report):
            result.append(line(f" {self.host.marks.doubt} ", Bit(told, Ink.DOUBT)))
        result += self._findings(loud, cells) or [line(f"   {findings_none()}")]
        result += self._open(cells)
        if notes:
            result += [EMPTY, line(" ", Bit(cautions_head(), Ink.HEAD)), *self._findings(notes, cells)]
        result += self._job(cells)
        silent = wrapped(silent_words(catalogue, report), cells - 4)
        result += [EMPTY, *(line(f"   {text}", item=OnText(i) if not i else None) for i, text in enumerate(silent))]
        result += circuits_lines(self.host, cells)
        return [*result, EMPTY, line("   ", Bit(hand_over_line(), Ink.HEAD), item=HAND_OVER)]

    def _may_words(self) -> str:
        """May it be quoted, may it be signed; of what is signed nothing more."""
        return "" if self.host.deeds.signed else self.may.words(open_points(self.host))

    def _findings(self, findings: Sequence[Finding], cells: int) -> list[Line]:
        return [row for finding in findings for row in self._finding(finding, cells)]

    def _finding(self, finding: Finding, cells: int) -> list[Line]:
        words = finding_line(self.host.catalogue, self.host.report, finding)
        mark = self.host.marks.holds if finding.accepted else self.host.marks.of_verdict(finding.verdict)
        if finding.level is Level.NOTE and finding.verdict is Verdict.BROKEN and not finding.accepted:
            mark = " "
        broken = finding.verdict is Verdict.BROKEN and not finding.accepted and finding.level is not Level.NOTE
        ink = Ink.CARE if broken else Ink.PLAIN
        first, *rest = wrapped(words, cells - 4, LINES_EACH)
        return [
            line(f" {mark} ", Bit(first, ink), item=OnFinding(finding.rule)),
            *(line("   ", Bit(text, ink)) for text in rest),
        ]

    def _open(self, cells: int) -> list[Line]:
        rows = [row for row in thing_lines(self.host, cells) if not isinstance(row.item, OnFinding)]
        return [EMPTY, line(" ", Bit(open_head(), Ink.HEAD)), *rows] if rows else []

    def _job(self, cells: int) -> list[Line]:
        catalogue, report = self.host.catalogue, self.host.report
        rows = [EMPTY, line(" ", Bit(form_title("job-state"), Ink.HEAD))]
        for known in catalogue.brief.values():
            if known.question is None and known.key not in DERIVED:
                words = line_words(catalogue, report, known.key)
                name = left(key_name(catalogue, known.key), min(NAME_CELLS, cells // 2))
                rows.append(line(f"   {name} ", cut(words, cells - len(name) - 5), item=OnAnswer(known.key)))
        return rows

    def foot(self, cells: int) -> Sequence[Line]:
        """How to answer, or what Enter does."""
        match self.at:
            case OnAnswer(key) if self._of_job(self.at):
                return answer_foot(self.host.catalogue, self.host.catalogue.brief[key], cells)
            case OnFinding(rule):
                found = self._found(rule)
                texts = [self._below(found, cells)] if found else []
            case OnWord():
                texts = [circuits_hint() if self.at == CIRCUITS else hand_over_hint()]
            case _ if self.at is not None and (text := question_of(self.host, self.at)):
                texts = [text]
            case _:
                texts = []
        return [line(f" {part}") for text in texts for part in wrapped(text, cells - 2)]

    def _below(self, found: Finding, cells: int) -> str:
        """All of a sentence that is too long for its row; under one that is not, what the house offers."""
        words = finding_line(self.host.catalogue, self.host.report, found)
        return words if len(wrapped(words, cells - 4)) > LINES_EACH else offers_line(self.host.catalogue, found)

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Why, who and when, or hand the spec over."""
        match self.at:
            case OnFinding(rule):
                self._why(rule)
            case OnAnswer() if self._of_job(self.at):
                self.move(1)
            case OnWord() if self.at == CIRCUITS:
                self.host.show(CircuitsPage(self.host))
            case OnWord():
                self.host.do(Act.HAND_OVER)
            case _ if self.at is not None and (text := question_of(self.host, self.at)):
                self.move(1)
                self.host.show(WhoPage(self.host, text))
            case _:
                pass

    def act(self, act: Act) -> bool:
        """Accept, take back, why."""
        match act:
            case Act.ACCEPT:
                self._accept()
            case Act.LESS:
                self._take_back()
            case Act.WHY:
                if isinstance(self.at, OnFinding):
                    self._why(self.at.rule)
            case _:
                return False
        return True

    def digit(self, number: int) -> None:
        """A numbered answer about the state of the job."""
        if not isinstance(self.at, OnAnswer) or not self._of_job(self.at):
            return
        known = self.host.catalogue.brief[self.at.key]
        if one_digit(known):
            self.take_text(str(number))
        else:
            self.start_typing(str(number))

    def digit_hint(self) -> str:
        """What a digit does on a line about the state of the job."""
        if not isinstance(self.at, OnAnswer) or not self._of_job(self.at):
            return ""
        return digits_for(self.host.catalogue.brief[self.at.key], bool(self.host.drafts.get(self.at)))

    def hint_of(self, act: Act) -> str | None:
        """Enter does what the line asks for; why only on a finding."""
        if act is Act.WHY:
            return None if isinstance(self.at, OnFinding) else ""
        if act is Act.SIGN:
            return step_hint(*self.host.deeds.step_key)
        if act is not Act.ENTER:
            return None
        match self.at:
            case OnAnswer() if self._of_job(self.at):
                return next_line()
            case OnFinding():
                return why_it()
            case OnWord():
                return ""
            case _:
                return None

    def takes_text(self) -> bool:
        """Nowhere: what is listed here is typed on its own page, and letters are commands on every line."""
        return False

    def letters(self) -> frozenset[str]:
        """Digits, on a line about the state of the job."""
        return (
            letters_for(self.host.catalogue.brief[self.at.key]) if isinstance(self.at, OnAnswer) else super().letters()
        )

    def take_text(self, text: str) -> bool:
        """An answer about the state of the job."""
        if not isinstance(self.at, OnAnswer):
            return False
        known = self.host.catalogue.brief[self.at.key]
        value = answer(known, text)
        return value is not None and self.host.edit(AnswerLine(key=known.key, value=value))

    def reach(self, item: Item) -> None:
        """Put the cursor on a line of the check."""
        self.at = item

    def _of_job(self, at: OnAnswer) -> bool:
        return self.host.catalogue.brief[at.key].question is None

    def _found(self, rule: str) -> Finding | None:
        return next((f for f in self.host.report.findings if f.rule == rule), None)

    def _why(self, rule: str) -> None:
        if (found := self._found(rule)) is not None:
            self.host.show(WhyPage(self.host, found))

    def _accept(self) -> None:
        found = self._found(self.at.rule) if isinstance(self.at, OnFinding) else None
        if found is not None and found.level is not Level.STOP and found.verdict is Verdict.BROKEN:
            self.host.show(AcceptPage(self.host, found.rule))
        else:
            self.host.say(cannot_accept())

    def _take_back(self) -> None:
        match self.at:
            case OnFinding(rule):
                self.host.edit(Withdraw(rule=rule))
            case OnQuestion(text):
                self.host.edit(CloseQuestion(text=text))
            case OnAnswer(key) if self._of_job(self.at):
                self.host.edit(AnswerLine(key=key, value=None))
            case OnAnswer(key):
                self.host.edit(CloseQuestion(text=question_text(self.host.catalogue, key=key)))
            case _:
                pass
