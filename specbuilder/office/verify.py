"""Is this spec whole, current and unaltered? Told from the file, the job it belongs to, and the seals of what left."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

from specbuilder.model.kinds import JobState
from specbuilder.model.record import RecordKind
from specbuilder.model.spec import Spec
from specbuilder.model.standing import Standing, StandingCode, StandingPoint
from specbuilder.session.life import SIGNED_STATES, state_on
from specbuilder.storage.disk import DiskError, reading
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.storage.seals import ACTS, altered, content_digest, read_seal, sealed_path
from specbuilder.storage.spec_files import ReadSpec, SpecFaultsError, WarningKind, read_spec, read_text, spec_text

from .house import House, stand_of
from .leaving import asked_of

_ACTS_OF = {
    JobState.QUOTED: (RecordKind.QUOTED,),
    JobState.ORDERED: (RecordKind.SIGNED,),
    JobState.CHANGED: (RecordKind.SIGNED,),
    JobState.AS_BUILT: (RecordKind.SIGNED, RecordKind.BUILT),
}
"""What must have been sealed in each state."""
_TEXT_FAULTS = {
    WarningKind.NO_CHECKSUM: StandingCode.NO_CHECKSUM,
    WarningKind.EDITED_BY_HAND: StandingCode.ALTERED,
}


def verify(house: House, path: Path, today: date) -> Standing:
    """What there is to say of the spec in this file.

    Raises:
        DiskError: the file cannot be read at all.
    """
    try:
        read = read_spec(read_text(path, str(path)), str(path), None)
    except SpecFaultsError as error:
        points = tuple(StandingPoint(code=StandingCode.UNREADABLE, text=str(fault)) for fault in error.faults)
        return Standing(number="", revision=0, state="", points=points)
    spec = read.spec
    points = (
        *_text(read),
        *_follows(house, read, path),
        *_job(house, spec, today),
        *_seals(house, spec, read.catalogue_digest),
    )
    return Standing(
        number=spec.number,
        revision=spec.revision,
        state=state_on(spec, today).value,
        points=tuple(dict.fromkeys(points)),
    )


def _text(read: ReadSpec) -> Iterator[StandingPoint]:
    """What its own checksum says."""
    for warning in read.warnings:
        if warning.kind in _TEXT_FAULTS:
            yield StandingPoint(code=_TEXT_FAULTS[warning.kind])


def _follows(house: House, read: ReadSpec, path: Path) -> Iterator[StandingPoint]:
    """Whether it is, byte for byte, what the program writes of what was said: no figure in it is anybody else's."""
    catalogue = house.catalogue_of(read.catalogue_digest) if read.catalogue_digest else None
    if catalogue is None:
        yield StandingPoint(code=StandingCode.RULES_GONE, text=read.catalogue_version)
        return
    stand = stand_of(catalogue, read.spec)
    with reading(path) as file:
        data = file.read()
    if data != spec_text(catalogue, read.spec, stand.report).encode():
        yield StandingPoint(code=StandingCode.NOT_WHAT_FOLLOWS)


def _job(house: House, spec: Spec, today: date) -> Iterator[StandingPoint]:
    """What the jobs folder knows of it."""
    code = StandingCode
    revisions = house.jobs.revisions(spec.number) if spec.number else ()
    if not revisions:
        yield StandingPoint(code=code.NO_JOB, text=str(house.jobs.path))
        return
    if spec.revision not in revisions:
        yield StandingPoint(code=code.NO_REVISION, revision=spec.revision)
        return
    if spec.state is JobState.DRAFT:
        yield StandingPoint(code=code.DRAFT)
    elif state_on(spec, today) is JobState.EXPIRED:
        yield StandingPoint(code=code.EXPIRED, text=spec.valid_until)
    yield from _held_against(house, spec)
    replaced_by = house.replaced_by(spec)
    if replaced_by is not None:
        yield StandingPoint(code=code.REPLACED, revision=replaced_by)
    elif later := [each for each in revisions if each > spec.revision]:
        yield StandingPoint(code=code.CHANGE_OPEN, revision=later[-1])
    yield from _two_current(house, spec, revisions)


def _held_against(house: House, spec: Spec) -> Iterator[StandingPoint]:
    """The job's own file of the revision goes before a copy of it."""
    try:
        stand = house.stand_of(house.jobs.files(spec.number, spec.revision))
    except JobUnreadableError as error:
        yield from (StandingPoint(code=StandingCode.UNREADABLE, text=str(fault)) for fault in error.faults)
        return
    act, asked = ACTS[RecordKind.SIGNED], asked_of(stand)
    other = content_digest(stand.spec, act, asked) != content_digest(spec, act, asked)
    if other or stand.spec.records[: len(spec.records)] != spec.records:
        yield StandingPoint(code=StandingCode.OTHER_CONTENT)
    elif since := len(stand.spec.records) - len(spec.records):
        yield StandingPoint(code=StandingCode.OLDER_LOG, number=since)


def _two_current(house: House, spec: Spec, revisions: tuple[int, ...]) -> Iterator[StandingPoint]:
    """Two signed revisions of which none replaces the other cannot both be built."""
    if spec.state not in SIGNED_STATES:
        return
    for revision in revisions:
        if revision <= spec.revision:
            continue
        try:
            other = house.stand_of(house.jobs.files(spec.number, revision)).spec
        except (JobUnreadableError, DiskError):
            continue
        if other.state in SIGNED_STATES and other.replaces is None:
            yield StandingPoint(code=StandingCode.TWO_CURRENT, revision=revision)


def _seals(house: House, spec: Spec, digest: str) -> Iterator[StandingPoint]:
    """What was kept when it left the house."""
    code = StandingCode
    catalogue = house.catalogue_of(digest) or house.catalogue
    asked = asked_of(stand_of(catalogue, spec))
    for kind in _ACTS_OF.get(spec.state, ()):
        act = ACTS[kind]
        path = sealed_path(house.jobs.path, spec.number, spec.revision, act)
        try:
            seal = read_seal(path)
        except SpecFaultsError:
            yield StandingPoint(code=code.SEAL_BROKEN, text=path.name)
            continue
        if seal is None:
            yield StandingPoint(code=code.NOT_SEALED, text=act)
            continue
        fits = (seal.number, seal.revision, seal.act) == (spec.number, spec.revision, act)
        if not fits or seal.content != content_digest(spec, act, asked):
            yield StandingPoint(code=code.SEAL_BROKEN, text=path.name)
        yield from (StandingPoint(code=code.KEPT_ALTERED, text=f"{path.name}/{name}") for name in altered(path, seal))
