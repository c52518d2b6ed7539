"""Two variants side by side: what differs, spaced to be read from where the customer sits, and a line taken across."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import ClassVar, TypeAlias

from specbuilder.model.comparison import AnswerChange, Change
from specbuilder.model.outcome import Refusal
from specbuilder.model.stand import Stand
from specbuilder.office.variants import Brought, bring_into, laid, others
from specbuilder.session.merge import merge_edits
from specbuilder.storage.disk import DiskError
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.lock import LockHolder
from specbuilder.tui.deeds import TROUBLES
from specbuilder.tui.errands import Stop
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnText
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, line, wrapped
from specbuilder.wording import edits as edit_words
from specbuilder.wording import variants as words
from specbuilder.wording.jobs import read_only
from specbuilder.wording.refusals import refused
from specbuilder.wording.what_if import not_seen_yet, working_out

from .page import Host, Page
from .question import Question
from .side_table import MARGIN, Laid, Row, Side, columns_line, comes_before, rows_of, table_lines

Found: TypeAlias = Laid | str
"""The table, or why there is none."""


class SideBySidePage(Page):
    """A list of what the job may be laid beside, or the table; with one candidate the table at once."""

    where: ClassVar[Where] = Where.SIDE_BY_SIDE
    full: ClassVar[bool] = True

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self.into: str = ""
        """``A`` or ``B``: where the line under the cursor goes."""
        self._last: Side | None = None
        """The side that was worked on last from here."""
        self._turn = 0
        self._place = 0
        """The line the cursor was on, while the table is worked out anew."""
        self._question: Question[Found] = Question(host)
        self._candidates, self.trouble = self._look()
        self._chosen = self._candidates[0] if len(self._candidates) == 1 else None

    def _look(self) -> tuple[tuple[JobFiles | None, ...], str]:
        """What there is; None stands for the job under a what-if."""
        desk = self.host.deeds.desk
        spec = desk.session.spec
        job: tuple[None, ...] = (None,) if desk.trying else ()
        if not spec.number:
            return job, ""
        try:
            return (*job, *others(desk.house, spec.number, spec.revision)), ""
        except DiskError as error:
            return job, str(error)

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """Whose columns they are."""
        found = self._laid
        return [columns_line(found, cells) if found is not None else line(" ", Bit(words.TITLE, Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """The table; what may be chosen; or that there is nothing."""
        if not self._candidates:
            texts = (self.trouble,) if self.trouble else words.nothing_beside()
            parts = [part for text in texts for part in (*wrapped(text, cells - 5), "")]
            return [EMPTY, *(line(MARGIN, part) for part in parts)]
        if self._chosen is None and len(self._candidates) > 1:
            rows = [line(MARGIN, self._candidate(one), item=OnText(i)) for i, one in enumerate(self._candidates)]
            return [EMPTY, line(MARGIN, Bit(words.choose(), Ink.HEAD)), EMPTY, *rows]
        self._ask()
        found = self._question.answer
        if found is None or isinstance(found, str):
            told = wrapped(working_out() if found is None else found, cells - 5)
            return [EMPTY, *(line(MARGIN, Bit(text, Ink.DOUBT)) for text in told)]
        return table_lines(found, cells, self.host.rows_high, self.host.marks, self.into, self.at)

    def _candidate(self, files: JobFiles | None) -> str:
        if files is None:
            return words.candidate_job()
        own = files.number == self.host.report.spec.number
        return words.candidate(files.number, files.revision, own=own)

    def lay(self, cells: int) -> None:
        """The cursor begins on the first line that can be taken across, and after one on the next."""
        before = self.at
        super().lay(cells)
        if before is None and (found := self._laid) is not None:
            movable = [number for number, row in enumerate(rows_of(found)) if row.change is not None]
            self.at = next((OnText(number) for number in movable if number >= self._place), self.at)
        elif self._laid is not None and isinstance(self.at, OnText):
            self._place = self.at.number

    def left(self) -> None:
        """Nobody waits for it any more."""
        self._question.drop()

    @property
    def unseen(self) -> bool:
        """True while the table was not painted yet."""
        return self._question.unseen

    def painted(self, at_s: float) -> None:
        """It stands on the screen."""
        self._question.painted(at_s)

    @property
    def _laid(self) -> Laid | None:
        return self._question.answer if isinstance(self._question.answer, Laid) else None

    @property
    def _under(self) -> Row | None:
        """The line of the table under the cursor."""
        rows = rows_of(self._laid) if self._laid is not None else ()
        return rows[self.at.number] if isinstance(self.at, OnText) and self.at.number < len(rows) else None

    def _ask(self) -> None:
        """Read the other one and compare, beside the screens."""
        desk, chosen, day = self.host.deeds.desk, self._chosen, self.host.deeds.paper_day
        mine = Side(desk.stand, self._name(desk.stand, chosen))
        aside = desk.aside

        def work(stop: Stop) -> Iterator[Found]:
            try:
                if chosen is None:
                    assert aside is not None, "without another file there is a what-if"
                    job = Stand(catalogue=mine.stand.catalogue, spec=aside.session.spec, report=aside.report)
                    other = Side(job, words.side_name(job.spec, revision=False), under_trial=True)
                else:
                    stand = desk.house.stand_of(chosen)
                    other = Side(stand, self._name_of(chosen), chosen)
                first, second = (other, mine) if comes_before(other, mine) else (mine, other)
                yield Laid(laid(first.stand, second.stand, day), first, second)
            except TROUBLES as error:
                yield str(error)

        self._question.ask((chosen, self._turn), work)

    def _name(self, stand: Stand, chosen: JobFiles | None) -> str:
        if self.host.trying:
            return words.WHAT_IF
        return words.side_name(stand.spec, revision=chosen is not None and chosen.number == stand.spec.number)

    def _name_of(self, files: JobFiles) -> str:
        own = files.number == self.host.report.spec.number
        return words.candidate(files.number, files.revision, own=True) if own else files.number

    # -- acts ------------------------------------------------------------------------------------------------------

    def move(self, by: int) -> None:
        """Another line; no arrow is set on it yet."""
        self.into = ""
        super().move(by)

    def enter(self) -> None:
        """Choose what it is laid beside, or take the line where its arrow points."""
        if self._chosen is None and len(self._candidates) > 1 and isinstance(self.at, OnText):
            self._chosen, self.at = self._candidates[self.at.number], None
            if self._chosen is None:
                self._candidates = (None,)
        elif self._laid is None or not self._question.seen():
            self.host.say(not_seen_yet() if self._candidates else "")
        elif self._under is None or self._under.change is None:
            self.host.say(words.follows())
        elif not self.into:
            self.host.say(words.direction_first())
        else:
            self._take(self._laid, self._under.change)

    def act(self, act: Act) -> bool:
        """Which way, why, another variant, back."""
        match act:
            case Act.BEFORE:
                self._point("A")
            case Act.AFTER:
                self._point("B")
            case Act.WHY:
                self._why()
            case Act.VARIANT:
                self.host.begin_variant()
            case Act.BACK if self._last is not None and self._last.files is not None:
                self.host.go_over(self._last.files.number)
            case _:
                return False
        return True

    def hint_of(self, act: Act) -> str | None:
        """Arrows only on a line that can be taken across; Enter once there is one."""
        movable = self._under is not None and self._under.change is not None
        if act in (Act.BEFORE, Act.AFTER, Act.WHY):
            return None if movable else ""
        if act is Act.ENTER:
            return None if (movable and self.into) or (self._laid is None and self._candidates) else ""
        return None

    def _point(self, side: str) -> None:
        if self._under is not None and self._under.change is not None:
            self.into = side
        elif self._laid is not None:
            self.host.say(words.follows())

    def _why(self) -> None:
        change = self._under.change if self._under is not None else None
        if isinstance(change, Change) and change.option in self.host.report.options:
            self.host.why(change.option)
        else:
            self.host.say(words.why_of_a_choice())

    def _take(self, found: Laid, change: Change | AnswerChange) -> None:
        """The line into one side, as one step of its undo."""
        into, from_ = (found.a, found.b) if self.into == "A" else (found.b, found.a)
        meant = change if self.into == "A" else change.turned
        edit = merge_edits(meant, into.stand, from_.stand, at=self.host.now())
        if into.under_trial:
            done = self.host.edit_job(edit)
        elif into.files is None:
            done = self.host.edit(edit)
        elif into.files.number == self.host.report.spec.number:
            self.host.say(words.stays_as_it_was(into.name))
            return
        else:
            done = self._into_other(into, into.files, meant, from_)
        if done:
            self._last, self.into = into, ""

    def _into_other(self, into: Side, files: JobFiles, meant: Change | AnswerChange, from_: Side) -> bool:
        desk = self.host.deeds.desk
        try:
            told = bring_into(
                desk.house, files, meant, into.stand, from_.stand, counter=desk.counter, at=self.host.now()
            )
        except TROUBLES as error:
            self.host.say(str(error))
            return False
        self.host.say(self._said(told, into), words.back_there() if told.done is not None else "")
        self._turn += told.changed or told.done is not None
        return told.done is not None

    def _said(self, told: Brought, into: Side) -> str:
        """What became of it."""
        catalogue = into.stand.catalogue
        match told:
            case Brought(done=done) if done is not None:
                said = edit_words.done(catalogue, done.edit, done.before, done.after, done.brought, done.left)
                return words.brought(into.name, said)
            case Brought(kept_from=LockHolder() as holder):
                return read_only(holder.counter, holder.since_words(self.host.deeds.desk.clock()))
            case Brought(kept_from=DiskError() as error):
                return str(error)
            case Brought(edit=edit, outcome=outcome) if edit is not None and outcome is not None:
                frozen = outcome.refused is Refusal.FROZEN
                return words.stays_as_it_was(into.name) if frozen else refused(catalogue, edit, outcome)
            case _:
                return words.changed_meanwhile(into.name)
