"""Lines of the list of jobs, kept for as long as the files they were read from stay as they are.

A firm has thousands of jobs after some years, and the list is made anew each time one is left.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import replace
from datetime import datetime
from math import inf
from pathlib import Path

from .job_files import JobFiles
from .job_list import JobLine, job_line
from .lock import LockHolder

Stamps = Mapping[str, tuple[int, int, int]]
"""By name: when each file of a folder was last changed (ns), its size, and its number on the disk."""
_RACY_NS = 2_000_000_000
"""A file that was changed this short a time ago may change again and look the same: its line is read anew."""


def stamps_of(folder: Path) -> Stamps:
    """The stamps of a folder's files. What goes away meanwhile has none."""
    found: dict[str, tuple[int, int, int]] = {}
    with os.scandir(folder) as entries:
        for entry in entries:
            try:
                about = entry.stat()
            except OSError:
                continue
            found[entry.name] = about.st_mtime_ns, about.st_size, about.st_ino
    return found


class KnownLines:
    """The lines as they were last read. A second thread may read ahead: a line is put there whole or not at all."""

    def __init__(self) -> None:
        self._known: dict[JobFiles, tuple[Hashable, JobLine]] = {}

    def lines(
        self,
        jobs: Iterable[JobFiles],
        stamps: Stamps,
        now: datetime,
        holder: Callable[[JobFiles], LockHolder | None],
        seconds: float = inf,
    ) -> tuple[JobLine, ...]:
        """A line for each job; one that is not known when the time is up is bare, and says so."""
        until = time.monotonic() + seconds
        return tuple(self._line(files, stamps, now, holder, until) for files in jobs)

    def _line(
        self,
        files: JobFiles,
        stamps: Stamps,
        now: datetime,
        holder: Callable[[JobFiles], LockHolder | None],
        until: float,
    ) -> JobLine:
        held_by = holder(files) if files.lock_name in stamps else None
        mark = stamps.get(files.spec_name), stamps.get(files.journal_name), now.date()
        known = self._known.get(files)
        if known is not None and known[0] == mark:
            return known[1] if held_by is None else replace(known[1], holder=held_by)
        if time.monotonic() > until:
            return JobLine(number=files.number, revision=files.revision, unread=True)
        line = job_line(files, held_by, now)
        newest = max((stamp[0] for stamp in mark[:2] if stamp is not None), default=0)
        if time.time_ns() - newest > _RACY_NS:
            self._known[files] = mark, replace(line, holder=None)
        return line
