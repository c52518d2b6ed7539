"""How a revision begins and how it is laid aside: whole or not at all; where neither can be seen, that is said."""

from __future__ import annotations

import contextlib
import os
from dataclasses import replace
from pathlib import Path

from specbuilder.model.spec import Spec

from .atomic import moved_back, sync_folder, write_whole
from .disk import DiskError, DiskReason, disk
from .job_files import JobFiles
from .job_recovery import find
from .job_text import clear_halves
from .journal import start_line
from .lock import JobLock
from .open_job import Clock, OpenJob
from .same_folder import SameFolder


def begun(files: JobFiles, lock: JobLock, start: Spec, clock: Clock) -> OpenJob:
    """A revision of this name, which was free: it is there, in its journal, when this returns.

    Raises:
        DiskError: there is none; or it is ``unsure`` whether its journal is there.
    """
    folder = SameFolder(files.folder)
    named = replace(start, number=files.number, revision=files.revision)
    placed = False
    try:
        clear_halves(files)
        write_whole(files.journal, start_line(named))
        placed = True
        return OpenJob(files, find(files, None), clock, lock)
    except DiskError as error:
        placed = placed or error.unsure is not None
        gone = not placed or folder.take_away(files.journal_name)  # half a beginning must not look like a job
        lock.release()
        raise error.about(None if gone else files.journal) from error


def lay_aside(files: JobFiles) -> None:
    """Moves a revision to names that are no job's. The caller holds its lock.

    The journal goes first: of a revision that stops half way the file is there, and that says all of it.

    Raises:
        DiskError: the revision stays; or it is ``unsure`` whether a file of it went.
    """
    moved: list[tuple[Path, Path]] = []
    try:
        for path, ending in ((files.journal, "journal"), (files.spec, "toml")):
            aside = files.aside(ending)
            with disk(path, writing=True), contextlib.suppress(FileNotFoundError):
                os.replace(path, aside)
                moved.append((path, aside))
        if not moved:  # whoever saw it here a moment ago had a folder that is not there now
            raise DiskError(DiskReason.GONE, files.spec, writing=True)
        with disk(files.spec, writing=True):
            sync_folder(files.folder)
    except DiskError as error:
        left = [aside for path, aside in reversed(moved) if not moved_back(path, aside)]
        raise error.about(left[0] if left else None) from error
