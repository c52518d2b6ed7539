"""The papers of a job: where it stands, what comes next, and every paper that can be made of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import ClassVar

from specbuilder.documents.sheets.sheet import Sheet
from specbuilder.model.kinds import JobState
from specbuilder.model.life import LifeStep
from specbuilder.model.papers import Case
from specbuilder.model.spec import Spec
from specbuilder.storage.disk import DiskError
from specbuilder.tui.deeds import TROUBLES
from specbuilder.tui.errands import Errand, Stop
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnWord
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, left, line, wrapped
from specbuilder.wording import papers as words
from specbuilder.wording.life import cannot_give_up, not_current

from .build import passed_holds
from .confirm import giving_up
from .page import Host, Page
from .paper import PaperPage
from .question import Question
from .record import RecordPage
from .record_forms import deposit_form

NEXT = OnWord("next-step")
DEPOSIT = OnWord("deposit")
BUILD = OnWord("build")
GIVE_UP = OnWord("give-up")
TITLE_CELLS, CALLED_CELLS = 18, 16


class PapersPage(Page):
    """Where the job stands, the next step, and the papers by number."""

    where: ClassVar[Where] = Where.PAPERS
    tall: ClassVar[bool] = True

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self.told = ""
        """What became of the papers that were written."""
        self._case: Question[Case] = Question(host)
        self._spec: Spec | None = None
        """For which the cursor was put where it is wanted first."""
        self._replaced_by: int | None = None

    def _begin(self) -> None:
        """The cursor begins on the paper that the state of the job calls for, or on a deposit that is not here yet."""
        spec, before = self.host.report.spec, self._spec
        if before == spec:
            return
        self._spec, self._replaced_by = spec, self._look_for_later()
        signed = before is not None and before.state is not spec.state and self.host.deeds.signed
        self.at = DEPOSIT if signed and not self.host.deeds.deposit[1] else OnWord(self._wanted().name)

    def _look_for_later(self) -> int | None:
        """The revision that has replaced this one, as far as the folder can be read."""
        try:
            return self.host.deeds.replaced_by
        except DiskError:
            return None

    def _wanted(self) -> Sheet:
        """The paper that the state of the job calls for first."""
        deeds = self.host.deeds
        by_name = {sheet.name: sheet for sheet in deeds.sheets}
        name = "change-order" if deeds.changing else "workshop" if deeds.state in _BUILT_FROM else "customer"
        return by_name.get(name, deeds.sheets[0])

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """Which job, which revision."""
        return [line(" ", Bit(cut(words.papers_title(self.host.report.spec), cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """Where it stands, what comes next, the papers, what was written."""
        self._begin()
        self._make_ready()
        told = [line(f" {text}") for sentence in self._stands() for text in wrapped(sentence, cells - 2)]
        steps = [line(f" {key} ", Bit(cut(text, cells - 4), Ink.HEAD), item=item) for key, text, item in self._steps()]
        sheets = [self._sheet(number, sheet, cells) for number, sheet in enumerate(self.host.deeds.sheets, 1)]
        written = [line(f" {text}") for text in wrapped(self.told, cells - 2)]
        return [*told, EMPTY, *steps, *([EMPTY] if steps else []), *sheets, *([EMPTY] if written else []), *written]

    def foot(self, cells: int) -> Sequence[Line]:
        """What the paper under the cursor is for."""
        sheet = self._at_sheet()
        text = words.about(sheet.about, sheet.private) if sheet is not None else ""
        return [line(f" {part}") for part in wrapped(text, cells - 2)]

    def _stands(self) -> Iterator[str]:
        deeds, desk = self.host.deeds, self.host.deeds.desk
        spec, base = self.host.report.spec, desk.session.base
        if deeds.changing and base is not None:
            yield from words.change_stands(spec, base.spec, deeds.change_number)
        else:
            yield words.stands(spec, deeds.state, self._currency)
        if self._replaced_by is not None:
            yield words.replaced(self._replaced_by)
        if desk.looked_at is not None:
            yield words.looked_at()

    def _steps(self) -> Iterator[tuple[str, str, Item]]:
        """What can be done now, with its key; without one Enter does it."""
        deeds, report = self.host.deeds, self.host.report
        if deeds.desk.looked_at is not None:
            return
        gross, base = report.price.gross, deeds.desk.session.base
        match deeds.next_step:
            case LifeStep.QUOTE:
                yield "s", words.quote_line(gross, self._currency), NEXT
            case LifeStep.ORDER if deeds.state is JobState.EXPIRED:
                yield "s", words.again_line(), NEXT
            case LifeStep.ORDER if base is not None:
                told = words.change_line(deeds.change_number, base.report.price.gross, gross, self._currency)
                yield "s", told, NEXT
            case LifeStep.ORDER:
                yield "s", words.order_line(gross, self._currency), NEXT
            case _:
                pass
        if deeds.signed:
            asked, received = deeds.deposit
            if not received:
                yield " ", words.deposit_line(asked, received, self._currency), DEPOSIT
            yield "b", words.build_line(*passed_holds(self.host)), BUILD
        if deeds.may_give_up:
            yield "g", words.give_up_line(report.spec), GIVE_UP

    def _sheet(self, number: int, sheet: Sheet, cells: int) -> Line:
        called = self._replaced_by is None and self.host.deeds.calls_for(sheet)
        name = Bit(left(sheet.title, TITLE_CELLS), Ink.HEAD if called else Ink.PLAIN)
        start = f" {number} ", name, left(words.called(called), CALLED_CELLS)
        return line(*start, cut(sheet.about, cells - 4 - TITLE_CELLS - CALLED_CELLS), item=OnWord(sheet.name))

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Show the paper, or do what the line says."""
        sheet = self._at_sheet()
        if sheet is not None:
            self.host.show(PaperPage(self.host, sheet))
        elif self.at == NEXT:
            self.host.do(Act.SIGN)
        elif self.at == DEPOSIT and self.host.may_write_down():
            self.host.show(RecordPage(self.host, deposit_form(self.host)))
        elif self.at == BUILD:
            self.host.do(Act.BUILD)
        elif self.at == GIVE_UP:
            self._give_up()

    def digit(self, number: int) -> None:
        """The paper of this number."""
        sheets = self.host.deeds.sheets
        if 0 < number <= len(sheets):
            self.at = OnWord(sheets[number - 1].name)
            self.enter()

    def digit_hint(self) -> str:
        """Digits show the papers."""
        return f"1-{len(self.host.deeds.sheets)} show"

    def act(self, act: Act) -> bool:
        """Write all papers; give the draft up."""
        match act:
            case Act.PRINT:
                self.write()
            case Act.GIVE_UP:
                self._give_up()
            case _:
                return False
        return True

    def hint_of(self, act: Act) -> str | None:
        """What the next step is called; give up only where there is something to be given up."""
        match act:
            case Act.SIGN:
                return words.step_hint(*self.host.deeds.step_key)
            case Act.GIVE_UP:
                return None if self.host.deeds.may_give_up else ""
            case Act.EARLIER:
                return None if self.host.report.spec.revision > 1 else ""
            case _:
                return None

    def _give_up(self) -> None:
        if self.host.deeds.may_give_up:
            self.host.show(giving_up(self.host))
        else:
            self.host.say(cannot_give_up(self.host.report.spec))

    def write(self) -> None:
        """Write every paper that is called for, beside the screens; none is of what was replaced."""
        spec = self.host.report.spec
        if self._replaced_by is not None:
            self.host.say(not_current(spec.number, spec.revision, self._replaced_by)[0])
            return
        deeds, stand, day = self.host.deeds, self.host.deeds.desk.stand, self.host.deeds.paper_day

        def work(stop: Stop) -> Iterator[str]:
            try:
                paths = deeds.print(stand, day)
                yield words.written(len(paths), str(paths[0].parent))
            except TROUBLES as error:
                yield str(error)

        self.host.say(words.writing())
        self.host.send(Errand(spec=stand.spec, work=work, take=self._written))

    def _written(self, told: str) -> None:
        self.told = told
        self.host.say(told)

    def left(self) -> None:
        """Nobody waits for it any more."""
        self._case.drop()

    def _make_ready(self) -> None:
        """What all papers rest on is worked out while the list is read."""
        deeds = self.host.deeds
        stand, day = deeds.desk.stand, deeds.paper_day

        def work(stop: Stop) -> Iterator[Case]:
            try:
                yield deeds.case(stand, day)
            except TROUBLES:
                return  # said when a paper is asked for

        self._case.ask(day, work)

    def _at_sheet(self) -> Sheet | None:
        return next((sheet for sheet in self.host.deeds.sheets if OnWord(sheet.name) == self.at), None)

    @property
    def _currency(self) -> str:
        return self.host.catalogue.firm.currency


_BUILT_FROM = (JobState.ORDERED, JobState.CHANGED)
