"""FILE on the command line: a spec file, or a job of the jobs folder; opened to read, or to change."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit
from specbuilder.model.spec import Spec
from specbuilder.office.house import House, stand_of
from specbuilder.office.leaving import is_kept, keep_as_it_left
from specbuilder.office.verify import unlike_its_seal
from specbuilder.session.evaluate import evaluate
from specbuilder.session.state import Session, replay
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.job_files import JobFiles, full_number, is_job_number, job_files
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.lock import LockHolder
from specbuilder.storage.open_job import OpenJob, ReadOnly
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.storage.spec_files import read_spec_file, write_spec_file
from specbuilder.wording.life import not_newest
from specbuilder.wording.names import listed
from specbuilder.wording.standing import point_words

from . import output
from .output import Exit, StopError

COUNTER = "the command line"
"""What a lock says while a line command holds a job."""


@dataclass(frozen=True, slots=True)
class Opened:
    """A spec and where it stands: ``job`` for a job of the jobs folder, else ``path``."""

    spec: Spec
    path: Path
    catalogue: Catalogue
    """What it is held against: the rules of today, or those it was agreed on."""
    job: JobFiles | None = None


def opened(file: str, house: House) -> Opened:
    """The spec to read. Nothing is locked and nothing is written; what should be known goes to stderr.

    Raises:
        StopError: the job cannot be read.
        SpecFaultsError: the file cannot be used.
        DiskError: there is no such file or job, or it cannot be read.
        RulesFaults: the rules it was agreed on were altered.
    """
    if not file:
        raise StopError(Exit.UNUSABLE, "The name of FILE is empty: name a spec file, or the number of a job.")
    job = job_of(file, house.jobs)
    if job is None:
        read = read_spec_file(Path(file), house.catalogue)
        catalogue = house.catalogue_for(read.spec, read.catalogue_digest)
        if catalogue is not house.catalogue:
            read = read_spec_file(Path(file), catalogue)
        output.message(warning.words for warning in read.warnings)
        return Opened(read.spec, Path(file), catalogue)
    try:
        found, catalogue = house.found(job)
        spec = house.session(found, catalogue).spec
    except JobUnreadableError as error:
        raise unreadable(job, error) from error
    output.message(notice.words for notice in found.notices)
    return Opened(spec, job.spec, catalogue, job)


def job_of(file: str, jobs: JobsFolder) -> JobFiles | None:
    """The job that is meant: by its number (``0147``, or ``0147@1`` for its first revision), or by a file of its in
    the jobs folder. None: a file elsewhere.

    Raises:
        StopError: what stands behind the @ is no revision of it.
        DiskError: no job has this number, or the jobs folder cannot be read.
    """
    text, at, revision = file.partition("@")
    number = full_number(text)
    if is_job_number(number):
        return jobs.files(number, _revision(file, number, revision, jobs) if at else None)
    path = Path(file)
    inside = job_files(jobs.path, (path.name,))
    if inside and same_place(path.parent, jobs.path):
        return jobs.files(inside[0].number, inside[0].revision)
    return None


def _revision(file: str, number: str, text: str, jobs: JobsFolder) -> int:
    """The revision that is meant by what stands behind the @.

    Raises:
        StopError: the job has none of that number.
    """
    known = jobs.revisions(number)
    found = next((revision for revision in known if text == f"{revision}"), None)
    if found is not None or not known:
        return found or 1
    has = f"it has {'revision' if len(known) == 1 else 'revisions'} {listed(f'{one}' for one in known)}"
    raise StopError(Exit.UNUSABLE, f"{file}: job {number} has no such revision, {has}.")


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
        words = tuple(notice.words for notice in self._open.notices)
        because = self._open.read_only_because
        if because is not None:
            self._open.abandon()
            cure = "Try again later, or write elsewhere with --to OUT." if elsewhere else "Try again later."
            raise StopError(Exit.BROKEN, *words, *_lock_cure(because, job), f"Nothing was changed. {cure}")
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

    def keep(self, session: Session, edits: Iterable[Edit]) -> None:
        """Writes what was done, first into the journal and then into the file, and lets go of the job.

        Raises:
            StopError: not everything could be written; it says what stands now.
            DiskError: another counter has taken the job over.
        """
        try:
            _keep(self._open, self._catalogue, session.spec, edits)
        except DiskError as error:
            back = self._open.take_back()
            self._open.abandon()
            if error.reason is DiskReason.TAKEN:
                raise
            stands = "Nothing was changed." if back else waits(self._open.number)
            raise StopError(Exit.UNUSABLE, str(error), stands) from error

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


def keep_new(job: OpenJob, catalogue: Catalogue, spec: Spec, edits: Iterable[Edit]) -> None:
    """Writes the first of a new job and lets go of it.

    Raises:
        StopError: not everything could be written; there is no new job, or it says which one there is.
    """
    try:
        _keep(job, catalogue, spec, edits)
    except DiskError as error:
        stands = "There is no new job." if job.discard() else f"Job {job.number} is there. {waits(job.number)}"
        raise StopError(Exit.UNUSABLE, str(error), stands) from error


def _keep(job: OpenJob, catalogue: Catalogue, spec: Spec, edits: Iterable[Edit]) -> None:
    """Appends the edits, writes the file of the spec they led to, and lets go of the job.

    Raises:
        DiskError: not everything could be written, and the job is still held.
    """
    for edit in edits:
        job.append(edit)
    job.save(catalogue, spec, evaluate(catalogue, spec))
    job.close()


def _lock_cure(because: ReadOnly, job: JobFiles) -> tuple[str, ...]:
    """What can be done about a lock that names a counter."""
    if not isinstance(because, LockHolder) or because.nameless:
        return ()
    words = f"If no counter has job {job.number} open, delete {job.lock}; one left by another machine holds for a day."
    return (words,)


def waits(number: str) -> str:
    """Said of what is in the journal, and not in the file yet."""
    return f"What was asked for is kept in the journal of job {number}: it is written with the next change."


def write_spec(path: Path, catalogue: Catalogue, spec: Spec) -> None:
    """The spec, written whole to this path.

    Raises:
        DiskError: what stood there still stands there.
    """
    write_spec_file(path, catalogue, spec, evaluate(catalogue, spec))


def refuse_altered(house: House, spec: Spec, catalogue: Catalogue) -> None:
    """Goes on when the spec is what was quoted or signed, as far as it was kept.

    Raises:
        StopError: it is not.
    """
    if altered := unlike_its_seal(house, spec, catalogue):
        raise StopError(Exit.BROKEN, *(point_words(point) for point in altered), "Nothing was changed.")


def unreadable(job: JobFiles, error: JobUnreadableError) -> StopError:
    """Ends the command: nothing of the job can be read; it says what it can be opened from instead."""
    faults = (str(fault) for fault in error.faults)
    others = ", ".join(other.value for other in error.others)
    cure = (
        f"It can be opened at the counter from: {others}." if others else "Mend the file, or put a copy in its place."
    )
    return StopError(Exit.UNUSABLE, f"Job {job.number} cannot be read. Nothing was changed.", *faults, cure)


def same_place(one: Path, other: Path) -> bool:
    """True when both are the same file or folder."""
    try:
        return one.resolve() == other.resolve()
    except (OSError, RuntimeError):
        return False
