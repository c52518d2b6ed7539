"""FILE on the command line: a spec file, or a job of the jobs folder; opened to read, or to change."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.spec import Spec
from specbuilder.office.house import House
from specbuilder.office.verify import unlike_its_seal
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.faults import quotable
from specbuilder.storage.job_files import JobFiles, full_number, is_job_number, job_files
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.spec_files import read_spec_file, write_spec_file
from specbuilder.wording.names import listed
from specbuilder.wording.standing import point_words

from . import output
from .output import Exit, StopError
from .undisturbed import undisturbed

_LONGEST = 80


@dataclass(frozen=True, slots=True)
class Opened:
    """A spec and where it stands: ``job`` for a job of the jobs folder, else ``path``."""

    spec: Spec
    path: Path
    catalogue: Catalogue
    """What it is held against: the rules of today, or those it was agreed on."""
    job: JobFiles | None = None


def opened(file: str, house: House, *, as_it_was: bool = False) -> Opened:
    """The spec to read. Nothing is locked and nothing is written; what should be known goes to stderr.

    ``as_it_was`` holds it against the rules it was written with, whatever it is.

    Raises:
        StopError: the job cannot be read.
        SpecFaultsError: the file cannot be used.
        DiskError: there is no such file or job, or it cannot be read.
        RulesFaults: the rules it was agreed on were altered.
    """
    job = job_of(file, house.jobs)
    if job is None:
        read = read_spec_file(Path(file), house.catalogue)
        catalogue = house.catalogue_for(read.spec, read.catalogue_digest, as_it_was=as_it_was)
        if catalogue is not house.catalogue:
            read = read_spec_file(Path(file), catalogue)
        output.message(warning.words for warning in read.warnings)
        return Opened(read.spec, Path(file), catalogue)
    try:
        found, catalogue = house.found(job, as_it_was=as_it_was)
        spec = house.session(found, catalogue).spec
    except JobUnreadableError as error:
        raise unreadable(job, error) from error
    output.message(notice.words for notice in found.notices)
    return Opened(spec, job.spec, catalogue, job)


def job_of(file: str, jobs: JobsFolder) -> JobFiles | None:
    """The job that is meant: by its number (``0147``, or ``0147@1`` for its first revision), or by a file of its in
    the jobs folder. None: a file elsewhere.

    Raises:
        StopError: nothing is named, or what stands behind the @ is no revision of it.
        DiskError: no job has this number, or the jobs folder cannot be read.
    """
    if not file:
        raise StopError(Exit.UNUSABLE, "The name of FILE is empty: name a spec file, or the number of a job.")
    text, at, revision = file.partition("@")
    number = full_number(text)
    if is_job_number(number):
        return jobs.files(number, _revision(file, number, revision, jobs) if at else None)
    path = Path(file)
    inside = job_files(jobs.path, (path.name,))
    if inside and same_place(path.parent, jobs.path):
        return jobs.files(inside[0].number, inside[0].revision)
    return None


def held_job(file: str, house: House, because: str) -> JobFiles:
    """The job that is meant, where a file is not enough. ``because`` says why.

    Raises:
        StopError: it is no job of the jobs folder.
        DiskError: as ``job_of``.
    """
    job = job_of(file, house.jobs)
    if job is None:
        raise StopError(
            Exit.UNUSABLE,
            f"{quotable(file, _LONGEST)} is no job of {house.jobs.path}: {because}.",
            "Take the file in first, with specbuilder new --from FILE; that prints the number of the job.",
        )
    return job


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


def write_spec(path: Path, catalogue: Catalogue, spec: Spec) -> None:
    """The spec, written whole to this path.

    Raises:
        DiskError: what stood there still stands there.
    """
    report = evaluate(catalogue, spec)
    with undisturbed():
        write_spec_file(path, catalogue, spec, report)


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
        f"specbuilder restore {job.number} opens it from what is kept: {others}."
        if others
        else "Mend the file, or put a copy in its place."
    )
    return StopError(Exit.UNUSABLE, f"Job {job.number} cannot be read. Nothing was changed.", *faults, cure)


def same_place(one: Path, other: Path) -> bool:
    """True when both are the same file or folder."""
    try:
        return one.resolve() == other.resolve()
    except (OSError, RuntimeError):
        return False
