"""What is done to the job as a whole: quoted, signed, recorded, changed. None of it is undone."""

from __future__ import annotations

from pathlib import Path

from specbuilder.model.edits import Edit
from specbuilder.model.kinds import JobState
from specbuilder.model.life import Hindrance, LifeStep
from specbuilder.model.papers import Case
from specbuilder.model.record import Record
from specbuilder.model.stand import Stand
from specbuilder.office.leaving import keep_as_it_left
from specbuilder.office.paperwork import called_for, pressed
from specbuilder.office.steps import (
    Signature,
    given_up,
    in_the_way,
    is_late,
    kept,
    may_give_up,
    next_begun,
    quoting,
    recording,
    signing,
)
from specbuilder.session.life import SIGNED_STATES
from specbuilder.storage.disk import DiskError
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.storage.papers import write_papers
from specbuilder.storage.rules_files import RulesFaults

from .desk import Desk

PAPERS = "papers"
"""Folder beside the jobs for what is printed."""
TROUBLES = (DiskError, JobUnreadableError, RulesFaults)
"""What may keep a deed from being done; ``str()`` says why."""


class Deeds:
    """Steps of the open job's life. Knows no screen."""

    def __init__(self, desk: Desk) -> None:
        self.desk = desk

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
    def changing(self) -> bool:
        """True while a change to a signed revision is drawn up."""
        return self.desk.session.base is not None and self.desk.session.spec.state not in SIGNED_STATES

    @property
    def late(self) -> bool:
        """True when the change touches what is past its freeze point."""
        return is_late(self.desk.session)

    @property
    def stand(self) -> Stand:
        """The job as it is on the desk."""
        desk = self.desk
        return Stand(catalogue=desk.catalogue, spec=desk.session.spec, report=desk.report)

    def in_the_way(
        self, step: LifeStep, *, hold: str = "", signature: Signature | None = None
    ) -> tuple[Hindrance, ...]:
        """What keeps the job from a step now."""
        return in_the_way(self.desk.session, step, self.desk.now(), hold=hold, signature=signature)

    def quote(self, by: str) -> None:
        """A quote goes out.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: it could not be kept; it says how far it came.
        """
        self._keep(quoting(self.desk.session, self.desk.now(), by))

    def sign(self, signature: Signature) -> None:
        """Both have signed.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: as ``quote``.
        """
        self._keep(signing(self.desk.session, self.desk.now(), signature))

    def record(self, record: Record) -> None:
        """Write something else down.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: as ``quote``.
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
        stand = self.stand
        signed = stand.spec.state in SIGNED_STATES
        base = stand if signed else desk.session.base
        begun = next_begun(desk.house, job, desk.session, desk.counter)
        desk.sit_at(begun, desk.catalogue, base)

    @property
    def may_give_up(self) -> bool:
        """True for a draft that replaces something."""
        return may_give_up(self.stand)

    def give_up(self) -> None:
        """Lay the draft aside and open what it was to replace.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: it stays.
        """
        desk, job = self.desk, self.desk.job
        assert job is not None, "a later revision has a file"
        number, files = job.number, job.files
        job.abandon()
        given_up(desk.house, files, desk.counter)
        desk.open(number)

    def case(self) -> Case:
        """All that papers tell of the job as it is on the desk. Takes a moment: for a worker.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: a revision it is held against cannot be read.
        """
        return self.desk.house.case(self.stand, self.desk.clock().date())

    def print(self) -> tuple[Path, ...]:
        """Writes every paper that the state of the job calls for, beside the jobs.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: none of them stands there half.
        """
        case = self.case()
        spec = case.stand.spec
        folder = self.desk.folder.path / PAPERS / f"{spec.number}-r{spec.revision}"
        return write_papers(folder, pressed(case, called_for(case)))

    def keep_what_left(self) -> None:
        """Keeps what could not be kept when it left the house; does nothing when all is kept.

        Raises:
            DiskError, JobUnreadableError, RulesFaults: it still cannot be kept.
        """
        if not self.desk.read_only:
            keep_as_it_left(self.desk.house, self.stand)

    def _keep(self, edit: Edit) -> None:
        desk, job = self.desk, self.desk.job
        assert job is not None, "nothing leaves the house before something was said"
        desk.swap(kept(desk.house, job, desk.session, edit))
