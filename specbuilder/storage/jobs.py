"""The jobs folder. One spec and one journal for each job and revision, and a lock for each job that is open.

0147-r1.toml             the spec, written whole when the job is left
0147-r1.journal          every step since the revision began, written before it is painted
0147-r1.yesterday.toml   the spec as last written on an earlier day
0147-r1.set-aside-1.*    what could not be used any more, kept
0147.lock                the counter that has the job open
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable
from datetime import datetime
from math import inf
from pathlib import Path
from typing import TypeVar

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.spec import Spec

from .disk import DiskError, DiskReason, disk
from .job_ends import begun, lay_aside
from .job_files import JobFiles, job_files, main_number
from .job_left import Left, left, sealed_revisions
from .job_list import JobLine, changed_at
from .job_recovery import Found, Instead, JobUnreadableError, find
from .job_text import clear_halves
from .known_lines import KnownLines, Stamps, stamps_of
from .lock import JobLock, LockHolder, Process, holds, read_lock, take_lock, this_process
from .open_job import Clock, OpenJob, ReadOnly

_T = TypeVar("_T")
_DIGITS = 4
_TRIES = 50


def local_time() -> datetime:
    """The time now, with its zone."""
    return datetime.now().astimezone()


class JobsFolder:
    """All jobs of one folder. The folder is made with its first job."""

    def __init__(self, path: Path, *, clock: Clock = local_time, process: Process | None = None) -> None:
        self.path = path
        self._clock = clock
        self._process = process or this_process()
        self._known = KnownLines()

    def list(self, seconds: float = inf) -> tuple[JobLine, ...]:
        """Every job in its newest revision, by number; one that cannot be read says why in its line.

        What is not known when the time is up is told by its number alone: asked again, the list goes on from there.

        Raises:
            DiskError: the folder itself cannot be read. One that does not exist yet has no jobs.
        """
        now = self._clock()
        stamps: Stamps = self._read(stamps_of, {})
        newest = {files.number: files for files in job_files(self.path, stamps)}.values()
        return self._known.lines(newest, stamps, now, self._holder, seconds)

    def revisions(self, number: str) -> tuple[int, ...]:
        """The revisions of a job, oldest first; empty when there is no such job.

        Raises:
            DiskError: the folder cannot be read.
        """
        return tuple(files.revision for files in self._all() if files.number == number)

    def next_number(self) -> str:
        """The number after the highest there is, or of which anything was kept under seal.

        Raises:
            DiskError: the folder cannot be read.
        """
        sealed = (number for number, _ in sealed_revisions(self._names()))
        taken = {files.number for files in self._all()}.union(sealed)
        highest = max((int(main_number(number)) for number in taken), default=0)
        return f"{highest + 1:0{_DIGITS}}"

    def create(self, counter: str, start: Spec | None = None) -> OpenJob:
        """A new job under the next free number, for its first answer: it is there, in its journal, when this returns.

        ``start`` is what it begins with; its number and revision are set here. The file follows with ``save``.

        Raises:
            DiskError: nothing could be written; there is no new job.
        """
        self._refuse_no_folder(writing=True)
        with disk(self.path, writing=True):
            self.path.mkdir(parents=True, exist_ok=True)
        first = int(self.next_number())
        for number in range(first, first + _TRIES):
            files = JobFiles(f"{number:0{_DIGITS}}", 1, self.path)
            if lock := self._free(files, counter):
                return begun(files, lock, start or Spec(), self._clock)
        raise DiskError(DiskReason.TAKEN, self.path, writing=True)

    def create_variant(self, start: Spec, counter: str) -> OpenJob:
        """A variant of a job under the next free letter, beginning with this spec.

        Raises:
            DiskError: nothing could be written, or all letters are taken; there is no new variant.
        """
        main = main_number(start.number)
        for letter in "bcdefghijklmnopqrstuvwxyz":
            files = JobFiles(f"{main}{letter}", 1, self.path)
            if not self._ever(files.number) and (lock := self._free(files, counter)):
                return begun(files, lock, start, self._clock)
        raise DiskError(DiskReason.TAKEN, self.path / f"{main}z-r1.toml", writing=True)

    def variants(self, number: str) -> tuple[str, ...]:
        """The job and its variants, by number; only the number itself when there is no other.

        Raises:
            DiskError: the folder cannot be read.
        """
        found = dict.fromkeys(f.number for f in self._all() if main_number(f.number) == main_number(number))
        return tuple(found) or (number,)

    def open(
        self,
        number: str,
        counter: str,
        catalogue: Catalogue | None,
        *,
        revision: int | None = None,
        instead: Instead | None = None,
    ) -> OpenJob:
        """The job in its newest revision or in that one; to look at only, when another counter has it.

        ``instead`` opens it from something else than its file, as ``JobUnreadableError.others`` offers it.

        Raises:
            JobUnreadableError: it cannot be read; nothing was changed.
            DiskError: there is no such job, or a file could not be read.
        """
        files = self.files(number, revision)

        def taking() -> tuple[Found, JobLock | ReadOnly]:
            return self._taken(files, counter, catalogue, instead)

        found, held = taking()
        try:
            return OpenJob(files, found, self._clock, held, taking)
        except DiskError as error:
            if isinstance(held, JobLock):
                held.release()
            return OpenJob(files, found, self._clock, error, taking)

    def files(self, number: str, revision: int | None = None) -> JobFiles:
        """Where the newest or that revision of a job stands.

        Raises:
            DiskError: there is no such job or revision.
        """
        found = [files for files in self._all() if files.number == number and revision in (None, files.revision)]
        if not found:
            raise DiskError(DiskReason.GONE, self.path / f"{number}-r{revision or 1}.toml", writing=False)
        return found[-1]

    def begin_revision(self, start: Spec, counter: str) -> OpenJob:
        """The next revision of a job, beginning with this spec; whatever was open of the job is let go of before.

        Raises:
            DiskError: it could not be begun: another counter has the job, or there is a later revision already.
        """
        files = JobFiles(start.number, start.revision, self.path)
        lock = self._locked(files, counter)
        try:
            if max(self._ever(start.number), default=0) >= start.revision:
                raise DiskError(DiskReason.IN_THE_WAY, files.spec, writing=True)
        except DiskError:
            lock.release()
            raise
        return begun(files, lock, start, self._clock)

    def give_up(self, files: JobFiles, counter: str) -> None:
        """Lays a revision that was never signed aside: its files stay, under names that are no job's.

        Raises:
            DiskError: another counter has the job, or a file could not be moved; it stays, as far as the error is sure.
        """
        lock = self._locked(files, counter)
        try:
            lay_aside(files)
        finally:
            lock.release()

    def replaced_by(self, number: str, revision: int, *, signed: bool = False) -> int | None:
        """The newest later revision that has taken the place of this one; None: this one is current.

        A quote takes the place of a quote; of what was ``signed`` only a signature does, as it is the workshop that
        builds it until then.

        Raises:
            DiskError: the folder cannot be read, or nobody can tell how far a later revision has left the house.
        """
        now = self._clock()
        known = self._ever(number)
        if revision in known and not signed:
            signed = left(JobFiles(number, revision, self.path), now) is Left.SIGNED
        least = Left.SIGNED if signed else Left.QUOTED
        later = (other for other in known if other > revision)
        return max((r for r in later if left(JobFiles(number, r, self.path), now) >= least), default=None)

    def _taken(
        self, files: JobFiles, counter: str, catalogue: Catalogue | None, instead: Instead | None
    ) -> tuple[Found, JobLock | ReadOnly]:
        """The job as it stands, and its lock or why there is none.

        Raises:
            JobUnreadableError: it cannot be read.
            DiskError: the same.
        """
        held = self._hold(files, counter)
        try:
            found = find(files, catalogue, instead)
        except (JobUnreadableError, DiskError):
            if isinstance(held, JobLock):
                held.release()
            raise
        if isinstance(held, JobLock):
            try:
                clear_halves(files)
            except DiskError as error:
                held.release()
                return found, error
        return found, held

    def _locked(self, files: JobFiles, counter: str) -> JobLock:
        """The lock of a job of which a revision begins or ends.

        Raises:
            DiskError: another counter has it, or it could not be made.
        """
        lock = take_lock(files.lock, counter, self._process, self._clock(), None)
        if isinstance(lock, LockHolder):
            raise DiskError(DiskReason.TAKEN, files.spec, writing=True)
        return lock

    def _free(self, files: JobFiles, counter: str) -> JobLock | None:
        """The lock of a number that is no job's yet; None when it is."""
        lock = take_lock(files.lock, counter, self._process, self._clock(), None)
        if isinstance(lock, LockHolder):
            return None
        try:
            taken = self.revisions(files.number)
        except DiskError:
            lock.release()
            raise
        if taken:
            lock.release()
            return None
        return lock

    def _hold(self, files: JobFiles, counter: str) -> JobLock | ReadOnly:
        now = self._clock()
        try:
            return take_lock(files.lock, counter, self._process, now, changed_at(files, now.tzinfo))
        except DiskError as error:
            return error

    def _all(self) -> tuple[JobFiles, ...]:
        return job_files(self.path, self._names())

    def _ever(self, number: str) -> set[int]:
        return {*self.revisions(number), *(r for n, r in sealed_revisions(self._names()) if n == number)}

    def _names(self) -> Iterable[str]:
        return self._read(os.listdir, ())

    def _read(self, read: Callable[[Path], _T], nothing: _T) -> _T:
        self._refuse_no_folder(writing=False)
        with disk(self.path, writing=False):
            try:
                return read(self.path)
            except FileNotFoundError:
                return nothing

    def _refuse_no_folder(self, *, writing: bool) -> None:
        with disk(self.path, writing=writing):
            if self.path.exists() and not self.path.is_dir():
                raise DiskError(DiskReason.NO_FOLDER, self.path, writing=writing)

    def _holder(self, files: JobFiles) -> LockHolder | None:
        """Who has the job; a lock that can be taken over is nobody's."""
        now = self._clock()
        try:
            holder = read_lock(files.lock, now)
        except DiskError:
            return None
        return holder if holder and holds(holder, self._process, now, changed_at(files, now.tzinfo)) else None
