"""What a job can be laid beside: its variants and earlier revisions; and a line brought into one that is not open."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from specbuilder.documents.sheets.customer.living import works_of
from specbuilder.model.comparison import AnswerChange, Change, Comparison, VanDataChange
from specbuilder.model.edits import Edit
from specbuilder.model.outcome import Outcome
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand
from specbuilder.session.compare import FOR_CUSTOMERS, compare
from specbuilder.session.life import variant_of
from specbuilder.session.merge import merge_edits
from specbuilder.session.papers import case_of
from specbuilder.session.state import Done, Session, do, replay
from specbuilder.storage.disk import DiskError
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.open_job import OpenJob, ReadOnly
from specbuilder.wording.side_by_side import SideBySide, side_by_side
from specbuilder.wording.works_where import WorksWhere

from .house import House, stand_of


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Beside:
    """Two stands laid beside each other."""

    a: Stand
    b: Stand
    comparison: Comparison
    table: SideBySide


@dataclass(frozen=True, slots=True, kw_only=True)
class Brought:
    """What became of a line that was to be brought into a job that is not open."""

    done: Done | None = None
    """What was done to it; None: nothing."""
    edit: Edit | None = None
    outcome: Outcome | None = None
    """The edit that was refused, and what became of it."""
    kept_from: ReadOnly | None = None
    """Who has the job, or why it cannot be written to."""
    changed: bool = False
    """It was changed since it was laid beside the other: it has to be looked at again first."""


def others(house: House, number: str, revision: int) -> tuple[JobFiles, ...]:
    """What a job may be laid beside: the newest revision of each variant, then its own earlier ones, newest first.

    Raises:
        DiskError: the folder cannot be read.
    """
    variants = [house.jobs.files(other) for other in house.jobs.variants(number) if other != number]
    earlier = [house.jobs.files(number, one) for one in house.jobs.revisions(number) if one < revision]
    return (*variants, *reversed(earlier))


def begin_variant(house: House, spec: Spec, counter: str) -> OpenJob:
    """A variant of a job, which begins as that stands.

    Raises:
        DiskError: nothing could be written; there is no new variant.
    """
    return house.jobs.create_variant(variant_of(spec), counter)


def laid(a: Stand, b: Stand, today: date) -> Beside:
    """The table of two stands. Takes a moment: for a worker."""
    comparison = compare(a, b)
    table = side_by_side(a, b, comparison, FOR_CUSTOMERS, (works_in(a, today), works_in(b, today)))
    return Beside(a=a, b=b, comparison=comparison, table=table)


def works_in(stand: Stand, today: date) -> tuple[WorksWhere, ...]:
    """What works where in a stand."""
    return works_of(case_of(stand, today))[1]


def bring_into(
    house: House,
    files: JobFiles,
    line: Change | AnswerChange | VanDataChange,
    into: Stand,
    from_: Stand,
    *,
    counter: str,
    at: str,
) -> Brought:
    """Opens a job, brings a line into it as one step of undo, writes it and lets go of it.

    Args:
        house: jobs and rules.
        files: the job.
        line: of ``compare(into, from_)``.
        into: the job as it was laid beside the other.
        from_: what the line is taken from.
        counter: who does it, for the lock.
        at: when, ``YYYY-MM-DD HH:MM``.

    Raises:
        JobUnreadableError, RulesFaults, DiskError: it cannot be read or not be written; it is as it was, unless the
            error is ``unsure``.
    """
    _, catalogue = house.found(files)
    job = house.jobs.open(files.number, counter, catalogue, revision=files.revision)
    try:
        if job.read_only_because is not None:
            return Brought(kept_from=job.read_only_because)
        begun = Session(catalogue=catalogue, spec=job.start, base=house.base_of(job.start))
        session = replay(begun, job.entries)
        if session.spec != into.spec:
            return Brought(changed=True)
        edit = merge_edits(line, into, from_, at=at)
        session, outcome = do(session, edit)
        if outcome.refused is not None:
            return Brought(edit=edit, outcome=outcome)
        _write(job, session, edit)
        return Brought(done=session.past[-1])
    finally:
        job.abandon()


def _write(job: OpenJob, session: Session, edit: Edit) -> None:
    """Into journal and file, or into neither.

    Raises:
        DiskError: it could not be written.
    """
    try:
        job.append(edit)
        stand = stand_of(session.catalogue, session.spec)
        job.save(stand.catalogue, stand.spec, stand.report)
    except DiskError as error:
        raise error.about(None if job.take_back() else job.files.journal) from error
