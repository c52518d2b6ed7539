"""The desk: which job is open, its session and its report. What is done is journalled before anybody sees it."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from time import monotonic

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit
from specbuilder.model.history import Entry, Redo, Undo
from specbuilder.model.outcome import Outcome
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand
from specbuilder.office.house import House
from specbuilder.session.state import Done, Session, do, redo, replay, undo
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.job_recovery import Instead, JobUnreadableError
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.journal import CursorPlace
from specbuilder.storage.open_job import Clock, OpenJob
from specbuilder.storage.rules_files import RulesFaults

from .in_hand import InHand

SLOW_S = 0.5
"""A disk that takes longer to write one key down is told of."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trouble:
    """The disk did not take something; it is kept and tried again."""

    reason: str


class Desk(InHand):
    """One job at a time, on one catalogue. Knows no screen.

    While a what-if is on, ``session`` and ``report`` are those of the what-if, and nothing that is done is written.
    """

    def __init__(self, house: House, clock: Clock, counter: str) -> None:
        self.house = house
        self.folder: JobsFolder = house.jobs
        self.counter = counter
        self.clock = clock
        super().__init__(house.catalogue)
        self.job: OpenJob | None = None
        self.looked_at: JobFiles | None = None
        """Set while a revision is only looked at, as it was: nothing is locked and nothing is written."""
        self.trouble: Trouble | None = None
        self.unsynced = False
        """True while something was written that may not have reached the disk."""
        self.changed_at = ""
        """Clock time of the last change, ``HH:MM``."""
        self.kept_aside: Path | None = None
        """Where the last job that another counter took over meanwhile was laid when it was left."""
        self._slow_s, self._told_slow = 0.0, False
        self.saved_in_s = 0.0
        """Seconds it took to write the job whole when it was left."""

    @property
    def read_only(self) -> bool:
        """True when another counter has the job."""
        return self.job is not None and self.job.read_only_because is not None

    def may_write(self) -> bool:
        """True when the job is ours to change; one that the disk or another counter kept from us is tried once more.

        What another counter has changed meanwhile is not taken: it has to be opened again.
        """
        if self.looked_at is not None:
            return False
        if self.job is None or self.job.read_only_because is None:
            return True
        try:
            return self.job.take_again()
        except (DiskError, JobUnreadableError):
            return False

    def now(self) -> str:
        """Date and time as they stand in a spec."""
        return f"{self.clock():%Y-%m-%d %H:%M}"

    # -- opening and leaving ---------------------------------------------------------------------------------------

    def begin(self) -> None:
        """A new job. It has no number and no file until something is said."""
        self.job, self.looked_at, self.catalogue = None, None, self.house.catalogue
        self.forget_trial()
        self.swap(Session(catalogue=self.catalogue, spec=Spec()))
        self.changed_at = ""

    def open(self, number: str, instead: Instead | None = None, revision: int | None = None) -> OpenJob:
        """A job as it was last left, with everything that can be undone.

        Raises:
            JobUnreadableError: it cannot be read; nothing was changed.
            DiskError: it is not there or the disk does not give it.
            RulesFaults: the rules it was agreed on were altered.
        """
        found, catalogue = self.house.found(self.folder.files(number, revision), instead)
        base = self.house.base_of(found.start)
        job = self.folder.open(number, self.counter, catalogue, revision=revision, instead=instead)
        self.sit_at(job, catalogue, base)
        return job

    def sit_at(self, job: OpenJob, catalogue: Catalogue, base: Stand | None) -> None:
        """Have this job on the desk. ``base`` is the signed revision that it changes."""
        self.job, self.looked_at, self.catalogue = job, None, catalogue
        self._slow_s, self._told_slow = 0.0, False
        self.forget_trial()
        self.swap(replay(Session(catalogue=catalogue, spec=job.start, base=base), job.entries))
        self.changed_at = ""

    def look_at(self, number: str, revision: int | None = None) -> None:
        """A revision as it was, under its own rules, to be read; the newest, unless another one is named.

        Raises:
            JobUnreadableError, DiskError, RulesFaults: as ``open``.
        """
        files = self.folder.files(number, revision)
        found, catalogue = self.house.found(files, as_it_was=True)
        session = self.house.session(found, catalogue)
        self.job, self.looked_at, self.catalogue = None, files, catalogue
        self.forget_trial()
        self.swap(Session(catalogue=catalogue, spec=session.spec, base=session.base))
        self.changed_at = ""

    def leave(self, place: CursorPlace | None) -> bool:
        """Write the file whole and let go of the job. False: the disk did not take it, and the job stays open."""
        self.back_to_job()
        self.kept_aside, self.saved_in_s = None, 0.0
        if self.looked_at is not None:
            self.looked_at = None
            return True
        if self.job is None and self.session.past:
            self._create()
        job = self.job
        if job is None:
            return not self.session.past
        if job.read_only_because is not None:
            job.abandon()
            self.job = None
            return True
        begun = monotonic()
        try:
            if place is not None:
                job.append(place)
            job.save(self.catalogue, self.session.spec, self.report)
            with suppress(DiskError, RulesFaults):  # without its rules it can only be moved to those of its day
                self.house.keep_rules(self.catalogue)
            job.close()
        except DiskError as error:
            if error.reason is DiskReason.TAKEN and (kept := self._kept_aside(job)) is not None:
                self.kept_aside = kept
            else:
                self.trouble = Trouble(reason=error.reason.value)
                return False
        self.job, self.trouble, self.saved_in_s = None, None, monotonic() - begun
        return True

    def _kept_aside(self, job: OpenJob) -> Path | None:
        """Where the spec on the desk was laid when another counter has taken its job over; None: it could not be."""
        try:
            kept = job.set_aside(self.catalogue, self.session.spec, self.report)
        except DiskError:
            return None
        job.abandon()
        return kept

    def open_again(self, job: OpenJob) -> None:
        """Open a job that was let go of; while it cannot be had it is only looked at.

        Raises:
            JobUnreadableError, DiskError, RulesFaults: it cannot be had.
        """
        try:
            self.open(job.number)
        except DiskError as error:
            job.read_only_because = error
            raise

    # -- doing -----------------------------------------------------------------------------------------------------

    def edit(self, edit: Edit) -> tuple[Done | None, Outcome]:
        """Do it; what was refused changes nothing. The first thing said makes the job: number, journal and lock."""
        session, outcome = do(self.session, edit)
        if outcome.refused is not None:
            return None, outcome
        if self.job is None and not self.trying:
            self._create()
            session, outcome = do(self.session, edit)
        self._write(edit)
        self.swap(session)
        return session.past[-1], outcome

    def undo(self) -> Done | None:
        """Take the last edit back; None when nothing is left."""
        session, done = undo(self.session)
        if done is not None:
            self._write(Undo(session.spec))
            self.swap(session)
        return done

    def redo(self) -> Done | None:
        """Put it back; None when nothing was undone."""
        session, done = redo(self.session)
        if done is not None:
            self._write(Redo(session.spec))
            self.swap(session)
        return done

    def keep(self, edit: Edit) -> None:
        """Write down what is never undone: it is done once it stands in the journal, and the file is written whole.

        Raises:
            DiskError: the file could not be written, or the journal not yet (``trouble``). What was done holds.
        """
        session, outcome = do(self.session, edit)
        assert outcome.refused is None, "what is written down is never refused"
        self._write(edit)
        self.swap(session)
        if self.job is not None:
            self.job.save(self.catalogue, session.spec, self.report)

    # -- the disk --------------------------------------------------------------------------------------------------

    def keep_place(self, place: CursorPlace) -> None:
        """Remember where the cursor stands."""
        if self.job is not None and not self.read_only:
            self._write(place)

    def sync(self) -> None:
        """Bring the journal to the disk. Slow: for a worker."""
        self.unsynced = False
        if self.job is not None:
            try:
                self.job.sync()
            except DiskError as error:
                self.trouble = Trouble(reason=error.reason.value)

    def _create(self) -> None:
        """Number, journal and lock. What was done while the disk took nothing is written first."""
        edits = [done.edit for done in self.session.past]
        first = self.session.past[0].before if edits else self.session.spec
        try:
            job = self.folder.create(self.counter, first)
        except DiskError as error:
            self.trouble = Trouble(reason=error.reason.value)
            return
        self.job, self.trouble = job, None
        try:
            job.append(*edits)
        except DiskError as error:  # the job is ours: it waits there
            self.trouble = Trouble(reason=error.reason.value)
        self.swap(replay(Session(catalogue=self.catalogue, spec=job.start), edits))

    def try_again(self) -> None:
        """Write what the disk did not take, if it takes it now."""
        if self.trouble is None or self.job is None:
            return
        try:
            self.job.retry()
            self.trouble = None
        except DiskError as error:
            self.trouble = Trouble(reason=error.reason.value)

    def _write(self, entry: Entry | CursorPlace) -> None:
        if self.trying:
            return
        self.changed_at = f"{self.clock():%H:%M}"
        if self.job is None:
            return
        begun = monotonic()
        try:
            self.job.append(entry)
            self.unsynced = True
            self.trouble = None
        except DiskError as error:
            self.trouble = Trouble(reason=error.reason.value)
        self._slow_s = max(self._slow_s, monotonic() - begun)

    def slow_s(self) -> float:
        """Seconds the disk took to write one key down, when that was long and was not told yet of this job; else 0."""
        if self._told_slow or self._slow_s < SLOW_S:
            return 0.0
        self._told_slow = True
        return self._slow_s
