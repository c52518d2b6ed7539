"""A revision leaves the house: quoted, signed or handed over. Spec and papers are kept as they were, under a seal."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from importlib.metadata import PackageNotFoundError, version
from threading import Lock

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey
from specbuilder.model.record import Record
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand
from specbuilder.storage.disk import disk
from specbuilder.storage.seals import ACTS, Seal, content_digest, sealed_path, write_sealed
from specbuilder.storage.spec_files import spec_text

from .house import House
from .paperwork import called_for, pressed

SPEC = "spec.toml"
_ONE_AT_A_TIME = Lock()
"""The screens keep in a worker what the next opening would keep as well."""


def keep_as_it_left(house: House, stand: Stand) -> None:
    """Keeps spec, papers and rules of the acts with which this revision left the house, each once.

    Raises:
        JobUnreadableError, RulesFaults: a revision it is held against cannot be read.
        DiskError: something could not be written; it is kept with the next try.
    """
    with _ONE_AT_A_TIME:
        for record in stand.spec.records:
            if record.kind in ACTS and record.revision == stand.spec.revision:
                _keep(house, stand, record)


def all_is_kept(house: House, stand: Stand) -> bool:
    """Whether nothing of this revision waits to be kept."""
    return is_kept(house, stand.spec)


def is_kept(house: House, spec: Spec) -> bool:
    """The same of a spec of which nothing was worked out yet."""
    acts = {ACTS[record.kind] for record in spec.records if record.kind in ACTS and record.revision == spec.revision}
    return all(sealed_path(house.jobs.path, spec.number, spec.revision, act).exists() for act in acts)


def asked_of(catalogue: Catalogue) -> frozenset[BriefKey]:
    """The keys of the brief that a customer is asked."""
    return frozenset(key for key, line in catalogue.brief.items() if line.question is not None)


def _keep(house: House, stand: Stand, record: Record) -> None:
    spec, act = stand.spec, ACTS[record.kind]
    path = sealed_path(house.jobs.path, spec.number, spec.revision, act)
    if path.exists() or record is not _last(stand, record):
        return
    with disk(path, writing=True):
        house.keep_rules(stand.catalogue)
    write_sealed(path, seal_of(stand, record), files_of(house, stand, record.day))


def _last(stand: Stand, record: Record) -> Record:
    """Only the newest of an act can still be kept: what stands now is what it was about."""
    return [other for other in stand.spec.recorded(record.kind) if other.revision == record.revision][-1]


def files_of(house: House, stand: Stand, day: str) -> Mapping[str, bytes]:
    """The spec and the papers of a day."""
    case = house.case(stand, date.fromisoformat(day))
    text = spec_text(stand.catalogue, stand.spec, stand.report)
    return {SPEC: text.encode(), **pressed(case, called_for(case))}


def seal_of(stand: Stand, record: Record) -> Seal:
    """The seal of an act, without its files."""
    spec, act = stand.spec, ACTS[record.kind]
    return Seal(
        number=spec.number,
        revision=spec.revision,
        act=act,
        at=record.at,
        content=content_digest(spec, act, asked_of(stand.catalogue)),
        catalogue_version=stand.catalogue.firm.catalogue_version,
        catalogue_digest=stand.catalogue.digest,
        program=program_version(),
        files={},
    )


def program_version() -> str:
    """The version of this program; ``unknown`` in a bare checkout."""
    try:
        return version("specbuilder")
    except PackageNotFoundError:
        return "unknown"
