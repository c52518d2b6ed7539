"""The desk: which job is open, its session and its report. What is done is journalled before anybody sees it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, Together
from specbuilder.model.history import Entry, Redo, Undo
from specbuilder.model.outcome import Outcome
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand
from specbuilder.office.house import House
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from specbuilder.session.state import Done, Session, do, redo, replay, undo
from specbuilder.session.trial import trial_of
from specbuilder.storage.disk import DiskError, disk
from specbuilder.storage.job_recovery import Instead, JobUnreadableError
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.journal import CursorPlace
from specbuilder.storage.open_job import Clock, OpenJob
from specbuilder.storage.spec_files import write_spec_file

HANDED_OVER = "handed-over"
"""Folder beside the jobs for the specs written for the workshop."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trouble:
    """The disk did not take something; it is kept and tried again."""

    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Aside:
    """The job as it stands while a what-if is on the screens."""

    session: Session
    report: Report


class Desk:
    """One job at a time, on one catalogue. Knows no screen.

    While a what-if is on, ``session`` and ``report`` are those of the what-if, and nothing that is done is written.
    """

    def __init__(self, house: House, clock: Clock, counter: str) -> None:
        self.house = house
        self.folder: JobsFolder = house.jobs
        self.counter = counter
        self.catalogue: Catalogue = house.catalogue
        """What the open job is held against: the rules of today, or those it was agreed on."""
        self.clock = clock
        self.session = Session(catalogue=self.catalogue, spec=Spec())
        self.report: Report = evaluate(self.catalogue, self.session.spec)
        self.aside: Aside | None = None
        """Set while a what-if is on."""
        self._tried: tuple[Edit, ...] = ()
        self._foreseen: tuple[Spec, Edit, Report] | None = None
        self.job: OpenJob | None = None
        self.trouble: Trouble | None = None
        self.unsynced = False
        """True while something was written that may not have reached the disk."""
        self.changed_at = ""
        """Clock time of the last change, ``HH:MM``."""

    @property
    def read_only(self) -> bool:
        """True when another counter has the job."""
        return self.job is not None and self.job.read_only_because is not None

    def may_write(self) -> bool:
        """True when the job is ours to change; one that the disk kept from us is tried once more."""
        if self.job is None or self.job.read_only_because is None:
            return True
        if not isinstance(self.job.read_only_because, DiskError):
            return False
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
        self.job, self.catalogue = None, self.house.catalogue
        self._forget_trial()
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
        self.job, self.catalogue = job, catalogue
        self._forget_trial()
        self.swap(replay(Session(catalogue=catalogue, spec=job.start, base=base), job.entries))
        self.changed_at = ""

    def leave(self, place: CursorPlace | None) -> bool:
        """Write the file whole and let go of the job. False: the disk did not take it, and the job stays open."""
        self.back_to_job()
        if self.job is None and self.session.past:
            self._create()
        job = self.job
        if job is None:
            return not self.session.past
        if job.read_only_because is not None:
            job.abandon()
            self.job = None
            return True
        try:
            if place is not None:
                job.append(place)
            job.save(self.catalogue, self.session.spec, self.report)
            job.close()
        except DiskError as error:
            self.trouble = Trouble(reason=error.reason.value)
            return False
        self.job, self.trouble = None, None
        return True

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

    def would_be(self, edit: Edit) -> Report:
        """What would follow from an edit; nothing is changed. The last answer is remembered."""
        spec = self.session.spec
        if self._foreseen is None or self._foreseen[:2] != (spec, edit):
            outcome = apply(self.catalogue, spec, edit)
            self._foreseen = spec, edit, evaluate(self.catalogue, outcome.spec)
        return self._foreseen[2]

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

    # -- what if ---------------------------------------------------------------------------------------------------

    @property
    def trying(self) -> bool:
        """True while a what-if is on."""
        return self.aside is not None

    def try_out(self) -> bool:
        """Turn the what-if on: what was tried before, done again over the job as it stands now.

        Returns:
            True when there was something tried before.
        """
        self.aside = Aside(session=self.session, report=self.report)
        session = trial_of(
            Stand(catalogue=self.catalogue, spec=self.session.spec, report=self.report), self.session.base
        )
        for edit in self._tried:
            session, _ = do(session, edit)
        self.swap(session)
        return bool(session.past)

    def back_to_job(self) -> None:
        """Turn it off. What was tried is kept until another job is opened; the job is as it was."""
        if self.aside is None:
            return
        self._tried = tuple(done.edit for done in self.session.past)
        self.session, self.report = self.aside.session, self.aside.report
        self.aside = None

    def keep_trial(self) -> tuple[Done | None, Outcome]:
        """Turn it off and do all of it to the job, as one step of undo."""
        self.back_to_job()
        done, outcome = self.edit(Together(edits=self._tried))
        if done is not None:
            self._tried = ()
        return done, outcome

    def _forget_trial(self) -> None:
        self.aside, self._tried = None, ()

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

    def hand_over(self) -> Path:
        """Write the spec for the workshop.

        Raises:
            DiskError: it could not be written.
        """
        self.back_to_job()
        spec = self.session.spec
        folder = self.folder.path / HANDED_OVER
        path = folder / f"{spec.number}-r{spec.revision}.toml"
        with disk(folder, writing=True):
            folder.mkdir(parents=True, exist_ok=True)
        write_spec_file(path, self.catalogue, spec, self.report)
        return path

    def _create(self) -> None:
        """Number, journal and lock. What was done while the disk took nothing is written first."""
        edits = [done.edit for done in self.session.past]
        first = self.session.past[0].before if edits else self.session.spec
        try:
            job = self.folder.create(self.counter, first)
            for edit in edits:
                job.append(edit)
        except DiskError as error:
            self.trouble = Trouble(reason=error.reason.value)
            return
        self.job, self.trouble = job, None
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
        try:
            self.job.append(entry)
            self.unsynced = True
            self.trouble = None
        except DiskError as error:
            self.trouble = Trouble(reason=error.reason.value)

    def swap(self, session: Session) -> None:
        """Have this session on the desk, with its report."""
        self.session = session
        self.report = evaluate(self.catalogue, session.spec)
