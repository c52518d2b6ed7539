"""A job held for a change by the command line: through its journal and lock, as at the counter."""

from __future__ import annotations

from collections.abc import Iterable

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.history import Entry
from specbuilder.model.spec import Spec
from specbuilder.office.house import House, stand_of
from specbuilder.office.leaving import is_kept, keep_as_it_left
from specbuilder.session.evaluate import evaluate
from specbuilder.session.state import Session, replay
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.faults import quotable
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.storage.lock import LockHolder
from specbuilder.storage.open_job import OpenJob, ReadOnly
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.wording.job_lines import could_not_be_written, is_in_journal, out_of_sight
from specbuilder.wording.life import not_newest

from . import output
from .opening import unreadable
from .output import Exit, StopError
from .undisturbed import undisturbed

_LONGEST = 200
COUNTER = "the command line"
"""What a lock says while a line command holds a job."""


class ChangingJob:
    """A job held for a change: what is done goes through its journal and lock, as at the counter."""

    def __init__(self, job: JobFiles, house: House, *, elsewhere: bool = True) -> None:
        """Opens and locks it. ``elsewhere``: what is to be done could be written to another file instead.

        Raises:
            StopError: it cannot be read, it is not the newest revision, or another counter has it.
            DiskError: a file could not be read or written.
            RulesFaults: the rules it was agreed on were altered.
        """
        newest = house.jobs.files(job.number).revision
        if job.revision != newest:
            raise StopError(Exit.BROKEN, not_newest(job.number, job.revision, newest), "Nothing was changed.")
        try:
            _, self._catalogue = house.found(job)
            self._open = house.jobs.open(job.number, COUNTER, self._catalogue, revision=job.revision)
        except JobUnreadableError as error:
            raise unreadable(job, error) from error
        words = refuse_held(self._open, job, elsewhere=elsewhere)
        output.message(words)
        self._house = house
        try:
            base = house.base_of(self._open.start)
        except BaseException as error:
            self._open.abandon()
            if isinstance(error, JobUnreadableError):
                raise unreadable(job, error) from error
            raise
        begun = Session(catalogue=self._catalogue, spec=self._open.start, base=base)
        self.session = replay(begun, self._open.entries)

    def __enter__(self) -> ChangingJob:
        return self

    def __exit__(self, *_: object) -> None:
        self.leave()

    @property
    def job(self) -> OpenJob:
        """The job, held."""
        return self._open

    def keep(self, session: Session, entries: Iterable[Entry]) -> None:
        """Writes what was done, first into the journal and then into the file, and lets go of the job.

        Raises:
            StopError: not everything could be written; it says what stands now.
            DiskError: another counter has taken the job over.
        """
        try:
            keep_whole(self._open, self._catalogue, session.spec, entries)
        except DiskError as error:
            back = self._open.take_back()
            self._open.abandon()
            if error.reason is DiskReason.TAKEN:
                raise
            raise StopError(Exit.UNUSABLE, str(error), stands_now(self._open, back, "Nothing was changed.")) from error
        except KeyboardInterrupt as stop:
            self._open.abandon()
            raise StopError(Exit.STOPPED, "Stopped.", stands_now(self._open, False, "")) from stop

    def catch_up(self) -> None:
        """Writes what a kill or a full disk kept from the file, or from being kept as it left the house.

        Raises:
            StopError: something of it cannot be read or written; nothing was changed.
        """
        house, spec, lags = self._house, self.session.spec, self._open.lags
        if not lags and is_kept(house, spec):
            return
        stand = stand_of(self._catalogue, spec)
        try:
            if lags:
                self._open.save(self._catalogue, spec, stand.report)
            keep_as_it_left(house, stand)
        except JobUnreadableError as error:
            raise unreadable(self._open.files, error) from error
        except (DiskError, RulesFaults) as error:
            raise StopError(Exit.UNUSABLE, *str(error).split("\n"), "Nothing was changed.") from error

    def leave(self) -> None:
        """Lets go of the job unchanged."""
        self._open.abandon()


def refuse_held(open_: OpenJob, job: JobFiles, *, elsewhere: bool = False) -> tuple[str, ...]:
    """What is to be known of a job that was opened, when it is ours to change.

    Raises:
        StopError: another counter has it, or nothing can be written where it stands.
    """
    words = tuple(notice.words for notice in open_.notices)
    because = open_.read_only_because
    if because is None:
        return words
    open_.abandon()
    cure = "Try again later, or write elsewhere with --to OUT." if elsewhere else "Try again later."
    nothing = "" if isinstance(because, DiskError) and because.unsure is not None else "Nothing was changed. "
    raise StopError(Exit.BROKEN, *words, *_lock_cure(because, job), f"{nothing}{cure}")


def keep_new(job: OpenJob, catalogue: Catalogue, spec: Spec, entries: Iterable[Entry]) -> None:
    """Writes the first of a new job and lets go of it.

    Raises:
        StopError: not everything could be written; there is no new job, or it says which one there is.
    """
    try:
        keep_whole(job, catalogue, spec, entries)
    except DiskError as error:
        stands = stands_now(job, job.discard(), "There is no new job.", f"Job {job.number} is there.")
        raise StopError(Exit.UNUSABLE, str(error), stands) from error


def keep_whole(job: OpenJob, catalogue: Catalogue, spec: Spec, entries: Iterable[Entry]) -> None:
    """Appends the entries, writes the file of the spec they led to, and lets go of the job.

    Raises:
        DiskError: not everything could be written, and the job is still held.
    """
    report = evaluate(catalogue, spec)
    with undisturbed():
        job.append(*entries)
        job.save(catalogue, spec, report)
        job.close()


def _lock_cure(because: ReadOnly, job: JobFiles) -> tuple[str, ...]:
    """What can be done about a lock that names a counter."""
    if not isinstance(because, LockHolder) or because.nameless:
        return ()
    words = f"If no counter has job {job.number} open, delete {job.lock}; one left by another machine holds for a day."
    return (words,)


def stands_now(job: OpenJob, back: bool, nothing: str, there: str = "") -> str:
    """What stands of what was asked for, when not all of it could be written.

    Args:
        job: it was asked of this one.
        back: nothing of it stands, and that was seen.
        nothing: said then.
        there: of what was begun, where that could not be taken away again.
    """
    if back:
        return nothing
    if not job.in_sight:
        return out_of_sight(job.number, folder_of(job.files))
    return f"{there} {could_not_be_written(job.number) if job.waiting else is_in_journal(job.number)}".lstrip()


def folder_of(files: JobFiles) -> str:
    """The jobs folder, for a sentence."""
    return quotable(str(files.folder), _LONGEST)
