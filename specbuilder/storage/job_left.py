"""How far a revision has left the house: told by its file, its journal and what was kept of it under seal.

The furthest of the three counts. A file that was spoilt, or lags behind its journal, or is gone altogether must not
make a revision look as if nobody had ever signed it: then the one before it would be built.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from datetime import datetime
from enum import IntEnum
from pathlib import Path

from specbuilder.model.kinds import JobState
from specbuilder.model.record import RecordKind

from .disk import DiskError, DiskReason, reading
from .job_files import JobFiles
from .job_list import job_line
from .journal import read_journal, recorded
from .seals import ACTS, sealed_path


class Left(IntEnum):
    """How far, in order."""

    NOT = 0
    """A draft."""
    QUOTED = 1
    SIGNED = 2


_STATES = {JobState.DRAFT: Left.NOT, JobState.QUOTED: Left.QUOTED, JobState.EXPIRED: Left.QUOTED}
_ACTS = {RecordKind.QUOTED: Left.QUOTED, RecordKind.SIGNED: Left.SIGNED, RecordKind.BUILT: Left.SIGNED}
_SEALED = re.compile(rf"(\d{{4,9}}[b-z]?)-r([1-9]\d{{0,4}})-(?:{'|'.join(ACTS.values())})", re.ASCII)


def left(files: JobFiles, now: datetime) -> Left:
    """How far this revision has left the house.

    Raises:
        DiskError: neither file nor journal nor a seal says anything of it.
    """
    told = [*_sealed(files), *_by_file(files, now), *_by_journal(files)]
    if not told:
        raise DiskError(DiskReason.SPOILT, files.spec, writing=False)
    return max(told)


def sealed_revisions(names: Iterable[str]) -> tuple[tuple[str, int], ...]:
    """Number and revision of everything that was kept under seal, whether its files are still there or not."""
    found = {(match[1], int(match[2])) for name in names if (match := _SEALED.fullmatch(name))}
    return tuple(sorted(found))


def _sealed(files: JobFiles) -> Iterator[Left]:
    for kind, act in ACTS.items():
        if _stands(sealed_path(files.folder, files.number, files.revision, act)):
            yield _ACTS[kind]


def _by_file(files: JobFiles, now: datetime) -> Iterator[Left]:
    state = job_line(files, None, now).state if _stands(files.spec) else None
    if state is not None:
        yield _STATES.get(state, Left.SIGNED)


def _by_journal(files: JobFiles) -> Iterator[Left]:
    try:
        with reading(files.journal) as file:
            journal = read_journal(file.read())
    except DiskError:
        return
    if journal.start is not None:
        yield _STATES.get(journal.start.state, Left.SIGNED)
        mine = (record for record in recorded(journal) if record.revision == files.revision)
        yield from (_ACTS[record.kind] for record in mine if record.kind in _ACTS)


def _stands(path: Path) -> bool:
    """Whether anything has this name, a link that leads nowhere included."""
    try:
        path.lstat()
    except OSError:
        return False
    return True
