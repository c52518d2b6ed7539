"""The build: hold points, parts, deposit, promises and the next call, each to be written down with Enter."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from typing import ClassVar

from specbuilder.model.ids import OptionId
from specbuilder.model.papers import Case
from specbuilder.model.record import RecordKind
from specbuilder.model.report import Report
from specbuilder.tui.deeds import TROUBLES
from specbuilder.tui.errands import Stop
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnOption, OnText, OnWord
from specbuilder.tui.keys import Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, leaning, left, line, width, wrapped
from specbuilder.wording import build as words
from specbuilder.wording.colleague import is_here
from specbuilder.wording.papers import deposit_line
from specbuilder.workshop.progress import HoldPoint, PartOfBuild, hold_points, next_hold, parts_of_build
from specbuilder.workshop.view import view_of

from .page import Host
from .question import Question
from .record import RecordForm, RecordPage
from .record_forms import built_form, call_form, deposit_form, hold_form, promise_form, supply_form
from .unfolding import UnfoldingPage

DEPOSIT, PROMISE, CALL, HAND_OVER = OnWord("deposit"), OnWord("promise"), OnWord("call"), OnWord("hand-over")
HOLD_CELLS, STATE_CELLS = 5, 28
PART_CELLS = 36


class BuildPage(UnfoldingPage):
    """What was written down of the build, and what can be."""

    where: ClassVar[Where] = Where.BUILD
    tall: ClassVar[bool] = True

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self._case: Question[Case] = Question(host)
        self._known: tuple[Report, tuple[HoldPoint, ...], tuple[PartOfBuild, ...]] | None = None
        self.at = self._first()

    def _first(self) -> Item | None:
        """The deposit while it is not here; then the next hold point."""
        if not self._to_build:
            return PROMISE
        if not self.host.deeds.deposit[1]:
            return DEPOSIT
        return self._following()

    def _following(self) -> Item:
        """The next hold point; when all are passed the hand-over."""
        following = next_hold(self._points)
        return OnWord(following.step.hold_point) if following is not None else HAND_OVER

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """Which job, which revision."""
        return [line(" ", Bit(cut(words.build_title(self.host.report.spec), cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """Deposit, hold points with the one under the cursor unfolded, parts, promises, next call, hand-over."""
        self.below = 0
        self._look()
        spec, deeds = self.host.report.spec, self.host.deeds
        result: list[Line] = []
        if deeds.changing and spec.replaces is not None:
            result += [line(f" {part}") for part in wrapped(words.changes_first(spec.replaces), cells - 2)]
        elif not self._to_build:
            result += [line(f" {part}") for part in wrapped(words.not_ordered_yet(), cells - 2)]
        if self._to_build:
            told = deposit_line(*deeds.deposit, self.host.catalogue.firm.currency)
            result.append(line("   ", cut(told, cells - 4), item=DEPOSIT))
            result += [EMPTY, _head(words.HOLD_POINTS), *self._holds(cells)]
            result += [EMPTY, _head(words.PARTS), *self._part_rows(cells)]
        result += [EMPTY, _head(words.PROMISES), *self._promises(cells)]
        result.append(line("   ", cut(words.another_promise(), cells - 4), item=PROMISE))
        call = words.calls(spec.recorded(RecordKind.CALL))
        result += [EMPTY, _head(words.NEXT_CALL), *(line(f"   {part}") for part in wrapped(call, cells - 5))]
        result.append(line("   ", cut(words.another_call(), cells - 4), item=CALL))
        if self._to_build:
            result += [EMPTY, line("   ", Bit(cut(words.hand_over_line(spec), cells - 4), Ink.HEAD), item=HAND_OVER)]
        return result

    def _holds(self, cells: int) -> Iterator[Line]:
        marks, following, due = self.host.marks, next_hold(self._points), self._due()
        for point in self._points:
            item = OnWord(point.step.hold_point)
            passed = point.passed is not None
            mark = marks.chosen if passed else marks.open if point is following else " "
            state = words.hold_state(point, point is following, due.get(point.step.id))
            told = left(point.step.hold_point, HOLD_CELLS - 1), left(state, STATE_CELLS), " "
            room = cells - 4 - HOLD_CELLS - STATE_CELLS
            yield line(Bit(f" {mark} ", Ink.MINE), *told, cut(point.step.hold_text, room), item=item)
            if self.at == item:
                texts = [part for text in words.hold_detail(point) for part in wrapped(text, cells - 9)]
                self.below = len(texts)
                yield from (line(f"       {text}") for text in texts)

    def _part_rows(self, cells: int) -> Iterator[Line]:
        """What is written down of a part counts for all of its kind: the cursor stands on the first."""
        seen, names = set[OptionId](), self._name_cells(cells)
        for part in self._parts:
            row = self._part(part, cells, names)
            yield Line(row.bits) if part.chosen.choice.option in seen else row
            seen.add(part.chosen.choice.option)

    def _name_cells(self, cells: int) -> int:
        """What names of parts take: all that the longest word of how far a part is leaves."""
        names = [width(words.part_name(self.host.catalogue, part)) for part in self._parts]
        states = [width(self._state(part)) for part in self._parts]
        least = min(PART_CELLS, max(cells // 2 - 4, 10))
        return leaning(least, max(names, default=0), max(states, default=0), cells - 5)

    def _part(self, part: PartOfBuild, cells: int, names: int) -> Line:
        name, mark = left(words.part_name(self.host.catalogue, part), names), self._mark(part)
        state = cut(self._state(part), cells - names - 5)
        return line(Bit(f" {mark} ", Ink.MINE), name, " ", state, item=OnOption(part.chosen.choice.option))

    def _state(self, part: PartOfBuild) -> str:
        return words.part_state(part, self._arrivals().get(part.chosen.choice.option))

    def _mark(self, part: PartOfBuild) -> str:
        """Full: it is in the van or in the house; hollow: it is on its way."""
        if part.fitted or (part.supply is not None and is_here(part.supply)):
            return self.host.marks.chosen
        return self.host.marks.open if part.supply is not None else " "

    def _promises(self, cells: int) -> Iterator[Line]:
        told = words.promises(self.host.report.spec.recorded(RecordKind.PROMISED))
        for number, text in enumerate(told):
            first, *rest = wrapped(text, cells - 5)
            yield line(f"   {first}", item=OnText(number))
            yield from (line(f"   {part}") for part in rest)

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """The form of the row under the cursor."""
        form = self._form() if self.host.may_write_down() else None
        if form is not None:
            self.host.show(RecordPage(self.host, form))

    def left(self) -> None:
        """Nobody waits for the plan any more."""
        self._case.drop()

    def _form(self) -> RecordForm | None:
        host = self.host
        match self.at:
            case OnOption(option):
                part = next((p for p in self._parts if p.chosen.choice.option == option), None)
                return supply_form(host, part) if part is not None else None
            case OnWord() if self.at in _FORMS:
                return _FORMS[self.at](host)
            case OnWord(hold):
                point = next((p for p in self._points if p.step.hold_point == hold), None)
                return hold_form(host, point) if point is not None else None
            case _:
                return None

    # -- what is known ---------------------------------------------------------------------------------------------

    @property
    def _to_build(self) -> bool:
        return self.host.deeds.signed or self.host.deeds.changing

    @property
    def _points(self) -> tuple[HoldPoint, ...]:
        return self._look()[1]

    @property
    def _parts(self) -> tuple[PartOfBuild, ...]:
        return self._look()[2]

    def _look(self) -> tuple[Report, tuple[HoldPoint, ...], tuple[PartOfBuild, ...]]:
        report = self.host.report
        if self._known is None or self._known[0] is not report:
            view, first = view_of(self.host.catalogue, report.spec, report), self._known is None
            self._known = report, hold_points(view), parts_of_build(view)
            if not first:
                self._go_on()
        return self._known

    def _go_on(self) -> None:
        """What was just received or passed is behind: the cursor goes to what comes next."""
        passed = {OnWord(point.step.hold_point) for point in self._points if point.passed is not None}
        if self.at == DEPOSIT or self.at in passed:
            self.at = self._following()

    def _plan(self) -> Case | None:
        """The planned days; they come a moment later."""
        deeds = self.host.deeds
        stand, day = deeds.desk.stand, deeds.paper_day

        def work(stop: Stop) -> Iterator[Case]:
            try:
                yield deeds.case(stand, day)
            except TROUBLES:
                return  # the days are left out then

        self._case.ask(day, work)
        return self._case.answer

    def _due(self) -> dict[str, date]:
        case = self._plan()
        return {step.step: step.last_day for step in case.plan.steps} if case is not None else {}

    def _arrivals(self) -> dict[OptionId, date]:
        case = self._plan()
        steps = case.plan.steps if case is not None else ()
        return {each.option: each.on for step in steps for each in step.arrivals if each.on is not None}


_FORMS = {DEPOSIT: deposit_form, PROMISE: promise_form, CALL: call_form, HAND_OVER: built_form}


def passed_holds(host: Host) -> tuple[int, int, str]:
    """How many hold points are passed, how many there are, and which one is next."""
    passed = {record.about for record in host.report.spec.recorded(RecordKind.PASSED)}
    holds = [step.hold_point for step in host.catalogue.work.values() if step.hold_point]
    return len(passed.intersection(holds)), len(holds), next((hold for hold in holds if hold not in passed), "")


def _head(text: str) -> Line:
    return line(" ", Bit(text, Ink.HEAD))
