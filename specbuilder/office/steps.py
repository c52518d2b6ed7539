"""The steps of a job as a whole: what is written down, kept, and begun anew. Screens and commands take them here."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace

from specbuilder.model.edits import Edit, Write
from specbuilder.model.kinds import JobState
from specbuilder.model.life import Hindrance, LifeStep
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.stand import Stand
from specbuilder.session.change_order import freeze_points
from specbuilder.session.compare import moved
from specbuilder.session.life import hindrances, next_revision, quote_record
from specbuilder.session.state import Session, do
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.open_job import OpenJob

from .house import House, stand_of
from .leaving import keep_as_it_left


@dataclass(frozen=True, slots=True, kw_only=True)
class Signature:
    """Who signs, and where."""

    customer: str
    firm: str
    place: str
    """premises, home or distance."""


def in_the_way(
    session: Session, step: LifeStep, now: str, *, hold: str = "", signature: Signature | None = None
) -> tuple[Hindrance, ...]:
    """What keeps this session's job from a step at this time; nothing: it may be taken."""
    place = signature.place if signature else ""
    return hindrances(session.catalogue, session.spec, step, now, hold=hold, place=place, late=is_late(session))


def is_late(session: Session) -> bool:
    """Whether what changes a signed revision touches something that is past its freeze point."""
    return session.base is not None and any(point.late for point in freeze_points(session.base, session.spec))


def quoting(session: Session, now: str, by: str) -> Edit:
    """A quote goes out."""
    stand = stand_of(session.catalogue, session.spec)
    return Write(record=quote_record(session.catalogue, stand.report, now, by))


def signing(session: Session, now: str, signature: Signature) -> Edit:
    """Both sign: the order, or the change order."""
    stand = stand_of(session.catalogue, session.spec)
    return Write(
        record=Record(
            kind=RecordKind.SIGNED,
            at=now,
            by=signature.customer,
            words=signature.firm,
            about=signature.place,
            pence=stand.report.price.gross.least,
            revision=session.spec.revision,
        )
    )


def recording(session: Session, record: Record) -> Edit:
    """Anything else is written down, in the revision that stands."""
    return Write(record=replace(record, revision=session.spec.revision))


def kept(house: House, job: OpenJob, session: Session, edit: Edit) -> Session:
    """Does a step in a job that is open, writes it whole, and keeps what left the house.

    Raises:
        JobUnreadableError, RulesFaults: a revision it is held against cannot be read.
        DiskError: it could not be written; what is in the journal holds, and is kept as it left with the next opening.
    """
    session, outcome = do(session, edit)
    assert outcome.refused is None, "what is written down is never refused"
    job.append(edit)
    stand = stand_of(session.catalogue, session.spec)
    job.save(session.catalogue, session.spec, stand.report)
    keep_as_it_left(house, stand)
    return session


def next_begun(house: House, job: OpenJob, session: Session, counter: str) -> OpenJob:
    """The next revision, as a draft, from a job that is open; that one is saved and let go of.

    It is held against what ``House.catalogue_for`` says: a change to what was signed against the rules that was agreed
    on, what was only quoted against those of today.

    Raises:
        JobUnreadableError, RulesFaults: a revision it is held against cannot be read.
        DiskError: it could not be begun.
    """
    stand = stand_of(session.catalogue, session.spec)
    job.save(session.catalogue, session.spec, stand.report)
    keep_as_it_left(house, stand)
    house.keep_rules(session.catalogue)
    job.close()
    return house.jobs.begin_revision(next_session(house, session).spec, counter)


def next_session(house: House, session: Session) -> Session:
    """What the next revision begins with.

    Raises:
        JobUnreadableError, RulesFaults, DiskError: a revision it is held against cannot be read.
    """
    start = next_revision(session.catalogue, session.spec)
    today = house.catalogue_for(start, session.catalogue.digest)
    if today is not session.catalogue:
        start = moved(start, today)
    return Session(catalogue=today, spec=start, base=house.base_of(start))


def may_give_up(stand: Stand) -> bool:
    """Whether a revision can be laid aside: nothing of it has left the house, and there is one before it."""
    return stand.spec.state is JobState.DRAFT and stand.spec.revision > 1


def given_up(house: House, files: JobFiles, counter: str) -> None:
    """Lays a draft aside; the revision before it is the newest again, with all that was written down meanwhile.

    Raises:
        JobUnreadableError, RulesFaults: one of the two cannot be read.
        DiskError: its files could not be moved, or another counter has the job.
    """
    spec = house.stand_of(files).spec
    written = [record for record in spec.records if record.revision == spec.revision]
    if written:
        before = max(revision for revision in house.jobs.revisions(files.number) if revision < files.revision)
        _hand_back(house, house.jobs.files(files.number, before), written, counter)
    house.jobs.give_up(files, counter)


def _hand_back(house: House, files: JobFiles, written: list[Record], counter: str) -> None:
    """Writes down in this revision what it does not hold yet: what was recorded is never lost."""
    found, catalogue = house.found(files)
    job = house.jobs.open(files.number, counter, catalogue, revision=files.revision)
    try:
        if job.read_only_because is not None:
            raise DiskError(DiskReason.TAKEN, files.spec, writing=True)
        session = house.session(found, catalogue)
        missing = Counter(replace(record, revision=files.revision) for record in written)
        missing.subtract(session.spec.records)
        for record in missing.elements():
            edit = Write(record=record)
            session, _ = do(session, edit)
            job.append(edit)
        job.save(catalogue, session.spec, stand_of(catalogue, session.spec).report)
        job.close()
    finally:
        job.abandon()


__all__ = [
    "Signature",
    "given_up",
    "in_the_way",
    "is_late",
    "kept",
    "may_give_up",
    "next_begun",
    "next_session",
    "quoting",
    "recording",
    "signing",
]
