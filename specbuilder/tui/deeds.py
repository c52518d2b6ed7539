"""What is done to the job as a whole: quoted, signed, recorded, changed. None of it is undone."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from contextlib import suppress
from datetime import date
from pathlib import Path

from specbuilder.documents.sheets import SHEETS
from specbuilder.documents.sheets.sheet import Sheet
from specbuilder.model.edits import Edit
from specbuilder.model.findings import Finding
from specbuilder.model.ids import RuleId
from specbuilder.model.kinds import JobState
from specbuilder.model.life import Hindrance, LifeStep
from specbuilder.model.papers import Case
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.report import Pence
from specbuilder.model.stand import Stand
from specbuilder.office.leaving import all_is_kept, keep_as_it_left
from specbuilder.office.paperwork import called_for, pressed
from specbuilder.office.steps import (
    Signature,
    given_up,
    in_the_way,
    is_late,
    may_give_up,
    next_begun,
    quoting,
    recording,
    signing,
)
from specbuilder.session.change_order import order_number
from specbuilder.session.evaluate import evaluate
from specbuilder.session.life import PLACES, SIGNED_STATES, at_signing, place_of, state_on
from specbuilder.storage.disk import DiskError, disk, make_folder
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.storage.papers import write_papers
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.storage.seals import ACTS as LEFT
from specbuilder.storage.spec_files import write_spec_file

from .desk import Desk

PAPERS = "papers"
"""Folder beside the jobs for what is printed."""
COPY = "customer"
"""Name of the sheet that the customer takes along."""
HANDED_OVER = "handed-over"
"""Folder beside the jobs for the specs written for the workshop."""
TROUBLES = (DiskError, JobUnreadableError, RulesFaults)
"""What may keep a deed from being done; ``str()`` says why."""


class Deeds:
    """Steps of the open job's life. Knows no screen."""

    def __init__(self, desk: Desk) -> None:
        self.desk = desk
        self._case: Case | None = None
        """The last one, for papers come one after the other."""

    @property
    def next_step(self) -> LifeStep | None:
        """What comes next in the life of the job; None when nothing does."""
        session = self.desk.session
        match session.spec.state:
            case JobState.DRAFT:
                return LifeStep.ORDER if session.base is not None else LifeStep.QUOTE
            case JobState.QUOTED | JobState.EXPIRED:
                return LifeStep.ORDER
            case JobState.ORDERED | JobState.CHANGED:
                return LifeStep.PASS
            case JobState.AS_BUILT:
                return None

    @property
    def state(self) -> JobState:
        """The state of the job today: a quote may have run out."""
        return state_on(self.desk.session.spec, self.desk.clock().date())

    @property
    def signed(self) -> bool:
        """True when the revision on the desk was signed."""
        return self.desk.session.spec.state in SIGNED_STATES

    @property
    def changing(self) -> bool:
        """True while a change to a signed revision is drawn up."""
        return self.desk.session.base is not None and self.desk.session.spec.state not in SIGNED_STATES

    @property
    def late(self) -> bool:
        """True when the change touches what is past its freeze point."""
        return is_late(self.desk.session)

    @property
    def change_number(self) -> int:
        """The number of the change order that brings this revision."""
        return order_number(self.desk.session.spec)

    @property
    def sheets(self) -> tuple[Sheet, ...]:
        """The papers that can be made of the job, in their order."""
        change = self.desk.session.base is not None
        return tuple(sheet for sheet in SHEETS if change or not sheet.needs_change)

    def calls_for(self, sheet: Sheet) -> bool:
        """Whether the state of the job calls for this paper."""
        return self.desk.session.spec.state in sheet.states

    @property
    def place(self) -> str:
        """Where it is signed, as far as that is known already."""
        return place_of(self.desk.session.spec)

    @property
    def step_key(self) -> tuple[LifeStep | None, JobState]:
        """The next step that a key can take, and the state it is taken in; none where a revision is looked at."""
        return (None if self.desk.looked_at is not None else self.next_step), self.state

    def in_the_way(
        self, step: LifeStep, *, hold: str = "", signature: Signature | None = None
    ) -> tuple[Hindrance, ...]:
        """What keeps the job from a step now."""
        return in_the_way(self.desk.session, step, self.desk.now(), hold=hold, signature=signature)

    def finding_at_signing(self, rule: RuleId) -> Finding | None:
        """What a rule would say if it were signed today where it is said to be signed."""
        desk, spec = self.desk, self.desk.session.spec
        then = at_signing(desk.catalogue, spec, desk.clock().date(), place=self.place or PLACES[0], late=self.late)
        return next((f for f in evaluate(desk.catalogue, then).findings if f.rule == rule), None)

    def quote(self, by: str) -> None:
        """A quote goes out; ``keep_what_left`` is still to be done.

        Raises:
            DiskError: it could not be written to the file yet; it holds, and is written with the next try.
            RulesFaults: what it rests on was changed and cannot be kept; nothing was done.
        """
        self.desk.house.hold_rules(self.desk.catalogue)
        self._keep(quoting(self.desk.session, self.desk.now(), by))

    def sign(self, signature: Signature) -> None:
        """Both have signed; ``keep_what_left`` is still to be done.

        Raises:
            DiskError, RulesFaults: as ``quote``.
        """
        self.desk.house.hold_rules(self.desk.catalogue)
        self._keep(signing(self.desk.session, self.desk.now(), signature))

    def record(self, record: Record) -> None:
        """Write something else down; when that is the hand-over, ``keep_what_left`` is still to be done.

        Raises:
            DiskError: as ``quote``.
        """
        self._keep(recording(self.desk.session, record))

    def begin_next(self) -> None:
        """The next revision of what has left the house, as a draft on the desk.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: it could not be begun; the job is open as it was.
        """
        desk = self.desk
        job = desk.job
        assert job is not None, "what has left the house has a file"
        base = desk.stand if self.signed else desk.session.base
        try:
            begun = next_begun(desk.house, job, desk.session, desk.counter)
        except TROUBLES:
            if not job.held:
                with suppress(*TROUBLES):
                    desk.open_again(job)
            raise
        desk.sit_at(begun, desk.house.catalogue_for(begun.start, desk.catalogue.digest), base)

    @property
    def may_give_up(self) -> bool:
        """True for a draft that replaces something."""
        return not self.desk.trying and self.desk.looked_at is None and may_give_up(self.desk.stand)

    def give_up(self) -> None:
        """Lay the draft aside and open what it was to replace.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: it stays.
        """
        desk, job = self.desk, self.desk.job
        assert job is not None, "a later revision has a file"
        files = job.files
        job.abandon()
        try:
            given_up(desk.house, files, desk.counter)
        finally:
            desk.open_again(job)

    @property
    def deposit(self) -> tuple[Pence, int]:
        """The deposit that is asked for, and what has come in, in pence."""
        from specbuilder.documents.sheets.customer.price import deposit_of

        stand = self.desk.stand
        return deposit_of(stand), sum(record.pence or 0 for record in stand.spec.recorded(RecordKind.DEPOSIT))

    # -- papers ----------------------------------------------------------------------------------------------------

    @property
    def paper_day(self) -> date:
        """The day that papers bear: today, or when a revision is looked at the day it left the house."""
        spec = self.desk.session.spec
        left = [record for record in spec.recorded(*LEFT) if record.revision == spec.revision]
        if self.desk.looked_at is None or not left:
            return self.desk.clock().date()
        return date.fromisoformat(left[-1].day)

    def case(self, stand: Stand, day: date) -> Case:
        """All that papers of this day tell of the job as it stood on the desk. Takes a moment: for a worker.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: a revision it is held against cannot be read.
        """
        known = self._case
        if known is not None and known.stand.report is stand.report and known.today == day:
            return known
        self._case = self.desk.house.case(stand, day)
        return self._case

    def print(self, stand: Stand, day: date) -> tuple[Path, ...]:
        """Writes every paper that the state of the job calls for, beside the jobs. For a worker.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: none of them stands there half.
        """
        return self._write(stand, day, called_for)

    def print_copy(self, stand: Stand, day: date) -> tuple[Path, ...]:
        """Writes the customer's copy of this revision alone. For a worker.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: as ``print``.
        """
        return self._write(stand, day, lambda case: tuple(sheet for sheet in SHEETS if sheet.name == COPY))

    def _write(self, stand: Stand, day: date, sheets: Callable[[Case], Iterable[Sheet]]) -> tuple[Path, ...]:
        case = self.case(stand, day)
        folder = self.desk.folder.path / PAPERS / f"{stand.spec.number}-r{stand.spec.revision}"
        files = pressed(case, sheets(case))
        make_folder(folder)
        return write_papers(folder, files)

    def hand_over(self) -> Path:
        """Writes the spec for the workshop.

        Raises:
            DiskError: it could not be written.
        """
        desk = self.desk
        desk.back_to_job()
        spec = desk.session.spec
        folder = desk.folder.path / HANDED_OVER
        path = folder / f"{spec.number}-r{spec.revision}.toml"
        with disk(folder, writing=True):
            folder.mkdir(parents=True, exist_ok=True)
        write_spec_file(path, desk.catalogue, spec, desk.report)
        return path

    @property
    def replaced_by(self) -> int | None:
        """The later revision that has left the house, so that this one is not to be built.

        Raises:
            DiskError: the jobs folder cannot be read.
        """
        return self.desk.house.replaced_by(self.desk.session.spec)

    @property
    def unkept(self) -> bool:
        """True while something that left the house waits to be kept as it was."""
        desk = self.desk
        mine = desk.job is not None and not desk.read_only and not desk.trying
        return mine and not all_is_kept(desk.house, desk.stand)

    def keep_what_left(self, stand: Stand) -> None:
        """Keeps what is not kept yet of what left the house; does nothing when all is kept. For a worker.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: it still cannot be kept.
        """
        keep_as_it_left(self.desk.house, stand)

    def _keep(self, edit: Edit) -> None:
        assert self.desk.job is not None, "nothing leaves the house before something was said"
        self.desk.keep(edit)
