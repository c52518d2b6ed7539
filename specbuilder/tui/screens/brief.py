"""The brief: eleven questions, their lines as far as they are asked, and who it is for."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.brief import Answer, BriefLine
from specbuilder.model.edits import AnswerLine, LeaveOut, Take
from specbuilder.model.ids import BriefKey, GroupId
from specbuilder.model.kinds import AnswerType, Step
from specbuilder.session.walk import open_lines
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnAnswer, OnAssumed, OnField, OnGroup
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import Bit, Line, cut, line, width, wrapped
from specbuilder.wording.brief import hint, line_words, not_an_answer
from specbuilder.wording.brief_groups import assumed_hint, assumed_words, group_answer, group_hints
from specbuilder.wording.forms import not_taken
from specbuilder.wording.hints import next_line, open_it, type_it, typed_gone
from specbuilder.wording.names import group_name, key_name
from specbuilder.wording.plain import lowered
from specbuilder.wording.typed import MINUS, answer, below_nought, forgets, one_digit

from .answering import broken_about, digits_for, digits_for_group, enter_for, enter_typing, is_unknown, letters_for
from .brief_columns import NUMBER_CELLS, heading_cells, line_start
from .fields import FieldLines, value_of
from .numbered import answer_foot, asked_lines, numbered_lines
from .page import Host, Page


class BriefPage(Page):
    """Lines of the brief and the customer's own."""

    where: ClassVar[Where] = Where.BRIEF
    step = Step.BRIEF

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self.fields = FieldLines(host, Step.BRIEF)
        self.unfolded: set[BriefKey] = set()

    def entered(self) -> None:
        """Fold what is only assumed."""
        self.unfolded.clear()
        self.shown = ()

    # -- lines -----------------------------------------------------------------------------------------------------

    def lines(self, cells: int) -> Sequence[Line]:
        """Every question with the lines that are asked."""
        return [*self._questions(cells), *self.fields.lines(cells, self.at, self.entry)]

    def _questions(self, cells: int) -> list[Line]:
        catalogue, result = self.host.catalogue, list[Line]()
        asked = open_lines(catalogue, self.host.report.spec)
        for number, question in catalogue.questions.items():
            head = f"{number}", question.asks
            if question.group is not None:
                result.append(self._group(GroupId(question.group), head, cells))
                head = "", ""
            lines = [known for known in asked if known.question == number]
            for known in lines:
                if not self._is_folded(known.key):
                    result.append(self._answer(known, head, cells))
                    head = "", ""
            if folded := [known.key for known in lines if self._is_folded(known.key)]:
                result.append(self._assumed(number, folded, head, cells))
        return result

    def _is_folded(self, key: BriefKey) -> bool:
        """What is only assumed stands in one row a question, until that row is opened."""
        report = self.host.report
        assumed = key in report.facts.assumed and report.spec.answers.get(key) is None
        return assumed and key not in self.unfolded

    def _assumed(self, number: int, keys: Sequence[BriefKey], head: tuple[str, str], cells: int) -> Line:
        start, _ = self._start(head, "", False, cells)
        start = start[: NUMBER_CELLS + heading_cells(cells)]
        words = assumed_words(self.host.catalogue, self.host.report, keys)
        return line(start, cut(words, cells - len(start)), item=OnAssumed(number))

    def foot(self, cells: int) -> Sequence[Line]:
        """What the customer is asked, and how to answer."""
        match self.at:
            case OnAnswer(key):
                return answer_foot(self.host.catalogue, self.host.catalogue.brief[key], cells)
            case OnGroup(group):
                asked = self.host.catalogue.groups[group].question
                return [*asked_lines(asked, cells), *numbered_lines(group_hints(self.host.catalogue, group), cells)]
            case OnAssumed():
                return [line(f" {text}") for text in wrapped(assumed_hint(), cells - 2)]
            case OnField():
                return [line(f" {text}") for text in wrapped(self.fields.hint(self.at), cells - 2)]
            case _:
                return []

    def _answer(self, known: BriefLine, head: tuple[str, str], cells: int) -> Line:
        report, item = self.host.report, OnAnswer(known.key)
        unknown = known.key in report.unknown
        name, words = key_name(self.host.catalogue, known.key), line_words(self.host.catalogue, report, known.key)
        start, room = self._start(head, name, unknown, cells, width(words))
        if self.entry is not None and self.at == item:
            return line(start, *self.entry.bits(room), item=item)
        if draft := self.host.drafts.get(item):
            return line(start, Bit(cut(not_taken(draft), room), Ink.DOUBT), item=item)
        if not unknown:
            return line(start, Bit(cut(words, room), Ink.PLAIN), item=item)
        asked = hint(self.host.catalogue, known)
        whole = width(asked) <= room - width(words) - 2
        return line(start, Bit(words, Ink.DOUBT), f"  {asked}" if whole else "", item=item)

    def _group(self, group: GroupId, head: tuple[str, str], cells: int) -> Line:
        report = self.host.report
        unknown = not report.groups[group].decided
        words = group_answer(self.host.catalogue, report, group)
        start, room = self._start(head, lowered(group_name(self.host.catalogue, group)), unknown, cells, width(words))
        ink = Ink.DOUBT if unknown else Ink.PLAIN
        return line(start, Bit(cut(words, room), ink), item=OnGroup(group))

    def _start(self, head: tuple[str, str], name: str, unknown: bool, cells: int, answer: int = 0) -> tuple[str, int]:
        """Mark, number, heading and short name; and how many cells are left for the answer, which needs so many."""
        return line_start(self.host.marks.doubt if unknown else " ", head, name, cells, answer)

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Take an assumption as said, or begin to type; on what is answered go on."""
        match self.at:
            case OnAnswer(key):
                self._enter_line(key)
            case OnField(field=field):
                self.open_text(value_of(self.host.report.spec, field))
            case OnGroup():
                self.move(1)
            case OnAssumed(number):
                self._unfold(number)
            case _:
                pass

    def _unfold(self, number: int) -> None:
        keys = [k for k, known in self.host.catalogue.brief.items() if known.question == number and self._is_folded(k)]
        self.unfolded.update(keys)
        asked = [known.key for known in open_lines(self.host.catalogue, self.host.report.spec)]
        self.at = next((OnAnswer(key) for key in keys if key in asked), self.at)

    def _enter_line(self, key: BriefKey) -> None:
        report, known = self.host.report, self.host.catalogue.brief[key]
        if self.host.drafts.get(OnAnswer(key)):
            self.start_typing()
        elif report.spec.answers.get(key) is not None:
            self.move(1)
        elif key in report.facts.assumed and report.facts.get(key) is not None:
            self._give(key, report.facts.get(key))
        elif known.type is AnswerType.ONE_OF or one_digit(known):
            self.host.say(not_an_answer(self.host.catalogue, known))
        else:
            self.start_typing()

    def act(self, act: Act) -> bool:
        """Make an answer not known again."""
        if act is not Act.LESS:
            return False
        match self.at:
            case OnAnswer():
                self._forget(self.at)
            case OnField():
                self.fields.clear(self.at)
            case OnGroup(group):
                self._leave_group(group)
            case _:
                pass
        return True

    def digit(self, number: int) -> None:
        """A numbered answer, an amount of one digit, or the first digit of a longer one."""
        match self.at:
            case OnAnswer(key):
                known = self.host.catalogue.brief[key]
                if one_digit(known) and OnAnswer(key) not in self.host.drafts:
                    self.settled = self._take_answer(known, str(number))
                else:
                    self.start_typing(str(number))
            case OnGroup(group):
                options = self.host.catalogue.options_of(group)
                if 0 < number <= len(options):
                    was_unknown = is_unknown(self.host.report, self.at)
                    self.settled = self.host.edit(Take(option=options[number - 1].id, at=self.host.now()))
                    if self.settled:
                        self._go_on(was_unknown)
            case OnField():
                self.start_typing(str(number))
            case OnAssumed():
                self.host.say(assumed_hint())
            case _:
                pass

    def letters(self) -> frozenset[str]:
        """Digits and what stands between them, on a question."""
        return (
            letters_for(self.host.catalogue.brief[self.at.key]) if isinstance(self.at, OnAnswer) else super().letters()
        )

    def digit_hint(self) -> str:
        """Which digits answer at once, or that they begin a number."""
        match self.at:
            case OnAnswer(key):
                return digits_for(self.host.catalogue.brief[key], bool(self.host.drafts.get(self.at)))
            case OnGroup(group):
                return digits_for_group(self.host.catalogue, group)
            case _:
                return ""

    def hint_of(self, act: Act) -> str | None:
        """Enter does what the line asks for; why only where something is broken."""
        if act is Act.WHY:
            return None if broken_about(self.host.report, self.at) is not None else ""
        if act is Act.LESS and isinstance(self.at, OnAnswer):
            return "" if below_nought(self.host.catalogue.brief[self.at.key]) else None
        if act is not Act.ENTER:
            return None
        match self.at:
            case OnAnswer(key):
                return enter_for(self.host.report, self.host.catalogue.brief[key], bool(self.host.drafts.get(self.at)))
            case OnGroup():
                return next_line()
            case OnAssumed():
                return open_it()
            case _:
                return type_it()

    def typing_hint(self) -> str:
        """A minus alone makes the answer not known again."""
        return enter_typing(self.host.catalogue, self.at, self.entry)

    def take_text(self, text: str) -> bool:
        """Enter on what was typed."""
        match self.at:
            case OnAnswer(key):
                return self._take_answer(self.host.catalogue.brief[key], text)
            case OnField():
                taken = self.fields.take(self.at, text)
                if taken:
                    self.move(1)
                return taken
            case _:
                return False

    def reach(self, item: Item) -> None:
        """Put the cursor on an item of the brief, opening what hides it."""
        if isinstance(item, OnAnswer):
            self.unfolded.add(item.key)
        self.at = item

    def _take_answer(self, known: BriefLine, text: str) -> bool:
        value = answer(known, text)
        if value is None and not forgets(known, text):
            self.host.say(not_an_answer(self.host.catalogue, known, text))
            return False
        return self._give(known.key, value)

    def _give(self, key: BriefKey, value: Answer | None) -> bool:
        was_unknown = key in self.host.report.unknown
        given = self.host.report.spec.answers.get(key)
        if given != value and not self.host.edit(AnswerLine(key=key, value=value)):
            return False
        self._go_on(was_unknown)
        return True

    def _go_on(self, to_unknown: bool) -> None:
        """After a first answer to the next line nobody has answered; after a correction just one line on."""
        if not to_unknown:
            self.move(1)
            return
        items = self.items()
        later = items[items.index(self.at) + 1 :] if self.at in items else []
        self.at = next((item for item in later if is_unknown(self.host.report, item)), self.at)

    def _forget(self, at: OnAnswer) -> None:
        """What was typed and not taken goes; else the answer does, or a number below nought begins."""
        half_typed = bool(self.host.drafts.pop(at, ""))
        self.unfolded.add(at.key)
        if below_nought(self.host.catalogue.brief[at.key]):
            self.start_typing(MINUS)
        elif half_typed and self.host.report.spec.answers.get(at.key) is None:
            self.host.say(typed_gone())
        else:
            self.host.edit(AnswerLine(key=at.key, value=None))

    def _leave_group(self, group: GroupId) -> None:
        for choice in self.host.report.groups[group].choices:
            self.host.edit(LeaveOut(option=choice.option))
