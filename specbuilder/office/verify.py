"""Is this spec whole, current and unaltered? Told from the file, the job it belongs to, and the seals of what left."""

from __future__ import annotations

import os
from collections.abc import Iterator
from datetime import date
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import JobState
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Spec
from specbuilder.model.standing import Standing, StandingCode, StandingPoint
from specbuilder.session.life import SIGNED_STATES, state_on
from specbuilder.storage.disk import DiskError, reading
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.storage.kept_rules import are_kept, kept_path
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.storage.seals import ACTS, Seal, altered, content_digest, read_seal, sealed_path
from specbuilder.storage.spec_files import ReadSpec, SpecFaultsError, WarningKind, read_spec, read_text, spec_text

from .house import House, stand_of
from .leaving import asked_of

_ACTS_OF = {
    JobState.QUOTED: (RecordKind.QUOTED,),
    JobState.ORDERED: (RecordKind.SIGNED,),
    JobState.CHANGED: (RecordKind.SIGNED,),
    JobState.AS_BUILT: (RecordKind.SIGNED, RecordKind.BUILT),
}
"""What must have been sealed in each state, besides what was recorded."""
_TEXT_FAULTS = {
    WarningKind.NO_CHECKSUM: StandingCode.NO_CHECKSUM,
    WarningKind.EDITED_BY_HAND: StandingCode.ALTERED,
}
_UNUSABLE = (JobUnreadableError, RulesFaults, DiskError)
"""What else must be looked at cannot be: then nobody can tell, and that is said."""


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
    catalogue, rules = _catalogue(house, read)
    points = (
        *_text(read),
        *rules,
        *_follows(catalogue, read, path),
        *_job(house, spec, today),
        *seals(house, spec, catalogue),
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


def _catalogue(house: House, read: ReadSpec) -> tuple[Catalogue | None, tuple[StandingPoint, ...]]:
    """The rules it was written with; None with the reason when they cannot be had."""
    digest = read.catalogue_digest
    try:
        found = house.catalogue_of(digest) if digest else None
    except (RulesFaults, DiskError):
        kept = kept_path(house.jobs.path, digest).name
        return None, (StandingPoint(code=StandingCode.KEPT_ALTERED, text=kept),)
    gone = StandingPoint(code=StandingCode.RULES_GONE, text=read.catalogue_version)
    return found, () if found is not None else (gone,)


def _follows(catalogue: Catalogue | None, read: ReadSpec, path: Path) -> Iterator[StandingPoint]:
    """Whether it is, byte for byte, what the program writes of what was said: no figure in it is anybody else's."""
    if catalogue is None:
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
    held = tuple(_held_against(house, spec))
    if spec.state is JobState.DRAFT and not any(point.fault for point in held):
        yield StandingPoint(code=code.DRAFT)
    elif state_on(spec, today) is JobState.EXPIRED:
        yield StandingPoint(code=code.EXPIRED, text=spec.valid_until)
    yield from held
    yield from _later(house, spec, revisions)
    yield from _two_current(house, spec, revisions)


def _later(house: House, spec: Spec, revisions: tuple[int, ...]) -> Iterator[StandingPoint]:
    """Whether a later revision has taken its place, or may do so."""
    try:
        replaced_by = house.replaced_by(spec)
    except DiskError as error:
        yield StandingPoint(code=StandingCode.UNREADABLE, text=str(error))
        return
    if replaced_by is not None:
        yield StandingPoint(code=StandingCode.REPLACED, revision=replaced_by)
    elif later := [each for each in revisions if each > spec.revision]:
        yield StandingPoint(code=StandingCode.CHANGE_OPEN, revision=later[-1])


def _held_against(house: House, spec: Spec) -> Iterator[StandingPoint]:
    """The job's own file of the revision goes before a copy of it."""
    try:
        stand = house.stand_of(house.jobs.files(spec.number, spec.revision))
    except _UNUSABLE as error:
        yield from (StandingPoint(code=StandingCode.UNREADABLE, text=line) for line in str(error).split("\n"))
        return
    act, asked, own = ACTS[RecordKind.SIGNED], asked_of(stand.catalogue), stand.spec
    other = content_digest(own, act, asked) != content_digest(spec, act, asked) or own.state is not spec.state
    if other or own.records[: len(spec.records)] != spec.records:
        yield StandingPoint(code=StandingCode.OTHER_CONTENT)
    elif since := len(own.records) - len(spec.records):
        yield StandingPoint(code=StandingCode.OLDER_LOG, number=since)
    for kind, act in ACTS.items():
        path = sealed_path(house.jobs.path, spec.number, spec.revision, act)
        if os.path.lexists(path) and _last(own, kind) is None:
            yield StandingPoint(code=StandingCode.SEAL_BROKEN, text=path.name)


def _two_current(house: House, spec: Spec, revisions: tuple[int, ...]) -> Iterator[StandingPoint]:
    """Two signed revisions of which none replaces the other cannot both be built."""
    if spec.state not in SIGNED_STATES:
        return
    for revision in revisions:
        if revision <= spec.revision:
            continue
        try:
            other = house.stand_of(house.jobs.files(spec.number, revision)).spec
        except _UNUSABLE:
            continue
        if other.state in SIGNED_STATES and other.replaces is None:
            yield StandingPoint(code=StandingCode.TWO_CURRENT, revision=revision)


def seals(house: House, spec: Spec, catalogue: Catalogue | None) -> Iterator[StandingPoint]:
    """What was kept when it left the house."""
    code = StandingCode
    for kind, act in ACTS.items():
        record = _last(spec, kind)
        if record is None and kind not in _ACTS_OF.get(spec.state, ()):
            continue
        path = sealed_path(house.jobs.path, spec.number, spec.revision, act)
        try:
            seal = read_seal(path)
        except (SpecFaultsError, DiskError):
            yield StandingPoint(code=code.SEAL_BROKEN, text=path.name)
            continue
        if seal is None:
            yield StandingPoint(code=code.NOT_SEALED, text=act)
            continue
        if record is None or not _fits(seal, spec, record, catalogue):
            yield StandingPoint(code=code.SEAL_BROKEN, text=path.name)
        yield from (StandingPoint(code=code.KEPT_ALTERED, text=f"{path.name}/{name}") for name in altered(path, seal))
        if not are_kept(house.jobs.path, seal.catalogue_digest):
            kept = kept_path(house.jobs.path, seal.catalogue_digest)
            yield StandingPoint(code=code.KEPT_ALTERED, text=kept.name)


def unlike_its_seal(house: House, spec: Spec, catalogue: Catalogue) -> tuple[StandingPoint, ...]:
    """What was kept of this revision, and is of another content: then it is not what was quoted or signed."""
    return tuple(point for point in seals(house, spec, catalogue) if point.code is StandingCode.SEAL_BROKEN)


def _fits(seal: Seal, spec: Spec, record: Record, catalogue: Catalogue | None) -> bool:
    """Whether the seal is of this act and content. What a quote asked stands in its rules alone."""
    act = ACTS[record.kind]
    if (seal.number, seal.revision, seal.act, seal.at) != (spec.number, spec.revision, act, record.at):
        return False
    if catalogue is None and record.kind is RecordKind.QUOTED:
        return bool(seal.content)
    return seal.content == content_digest(spec, act, asked_of(catalogue) if catalogue else ())


def _last(spec: Spec, kind: RecordKind) -> Record | None:
    """The last record of this kind in this revision."""
    found = [record for record in spec.recorded(kind) if record.revision == spec.revision]
    return found[-1] if found else None
