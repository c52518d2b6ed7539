"""A job that is open at this counter: every step into its journal, and the whole of it into its file."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import TypeAlias

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.history import Entry
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec

from .atomic import write_whole
from .disk import DiskError, DiskReason
from .faults import quotable
from .job_files import JobFiles
from .job_journal import journal_of
from .job_notices import Notice, NoticeKind
from .job_recovery import Found, digest_of
from .job_text import keep_yesterday, stands
from .journal import CursorPlace, entry_line, saved_line
from .journal_file import JournalFile
from .lock import BEING_WRITTEN, JobLock, LockHolder
from .same_folder import SameFolder
from .spec_files import spec_text

Clock: TypeAlias = Callable[[], datetime]
"""Gives the time with its zone."""
ReadOnly: TypeAlias = LockHolder | DiskError
"""Why a job can only be looked at: another counter has it, or nothing can be written where it stands."""
Taking: TypeAlias = Callable[[], tuple[Found, JobLock | ReadOnly]]
"""Finds a job and takes its lock."""


class OpenJob:
    """One revision of a job, for writing or (``read_only_because``) for looking at.

    ``start`` and ``entries`` are what it was opened with: replayed in order, they give what was on the screen last.
    """

    def __init__(
        self, files: JobFiles, found: Found, clock: Clock, held: JobLock | ReadOnly, taking: Taking | None = None
    ) -> None:
        """Makes the job ready for appending when the lock is held. ``taking`` is for ``take_again``.

        Raises:
            DiskError: the journal could not be opened; nothing that was there is lost.
        """
        self._taking = taking
        self.files = files
        self.start = found.start
        self.entries = found.entries
        self.cursor: CursorPlace | None = found.journal.cursor
        self.saved = found.saved
        """What the file holds; None when there is none yet or it could not be read."""
        self.saved_entries = found.saved_entries
        """Replaying this many of ``entries`` must give ``saved``."""
        self._clock = clock
        self._lock: JobLock | None = None
        self._journal: JournalFile | None = None
        self._lost = self._placed = False
        self._folder = SameFolder(files.folder)
        self.read_only_because: ReadOnly | None = None
        self._hold(found, held)
        self.taken_over_from = self._lock.left_by if self._lock else None
        torn = NoticeKind.TORN
        self.notices = tuple(n for n in self._first_notices() + found.notices if self._lock or n.kind is not torn)

    @property
    def number(self) -> str:
        """The job's number."""
        return self.files.number

    @property
    def held(self) -> bool:
        """True while it is ours to write to."""
        return self._lock is not None

    @property
    def lags(self) -> bool:
        """True when its file does not hold everything it was opened with: it was left by a kill, or is gone."""
        return self.saved is None or self.saved_entries < len(self.entries)

    @property
    def written(self) -> bool:
        """True when its file was written since it was opened, also when its folder went away after that."""
        now = _identity(self.files.spec)
        return self._placed or (now is not None and now != self._stood)

    @property
    def in_sight(self) -> bool:
        """False when its folder is not where it was: nobody can see what of the last writing stands in it."""
        return self._folder.stands

    @property
    def waiting(self) -> bool:
        """True while something could not be written yet: it is tried again as long as the job is not let go of."""
        return self._journal.waiting > 0 if self._journal is not None else self._lost

    def take_again(self) -> bool:
        """Tries once more to get a job that could only be looked at; True when it can be written to.

        What is on the screen holds: a job that was changed meanwhile is not taken but has to be opened again, and
        ``read_only_because`` says so. There it stands as well why it still cannot be had.

        Raises:
            JobUnreadableError: it cannot be read any more.
            DiskError: the same.
        """
        if self._lock is not None or self._taking is None:
            return self._lock is not None
        found, held = self._taking()
        if isinstance(held, JobLock) and (found.start, found.entries) != (self.start, self.entries):
            held.release()
            held = DiskError(DiskReason.TAKEN, self.files.spec, writing=True)
        try:
            self._hold(found, held)
        except DiskError as error:
            if isinstance(held, JobLock):
                held.release()
            self._hold(found, error)
        return self._lock is not None

    def append(self, *entries: Entry | CursorPlace) -> None:
        """Writes down what was done, before it is painted: all of it at once. Does not wait for the disk: see ``sync``.

        Raises:
            DiskError: it could not be written. It is kept and the job may go on, except when the reason is ``TAKEN``:
                then another counter has the job, and nothing more can be written from here.
        """
        self._writable().append(b"".join(map(entry_line, entries)))

    def retry(self) -> None:
        """Tries once more to write what waits.

        Raises:
            DiskError: it still waits.
        """
        self._writable().retry()

    def sync(self) -> None:
        """Brings what was appended to the disk. May take long: meant for a worker.

        Raises:
            DiskError: the disk did not take it.
        """
        if self._journal is not None:
            self._journal.sync()

    def save(self, catalogue: Catalogue, spec: Spec, report: Report) -> None:
        """Writes the file whole and keeps the last one of an earlier day. ``spec`` holds everything appended so far.

        Raises:
            DiskError: the file is as it was, unless it is ``written``; the journal holds everything.
        """
        journal = self._writable()
        text = spec_text(catalogue, spec, report)
        if stands(self.files.spec, text):
            return
        try:
            self._write(journal, text)
        except DiskError as error:
            self._placed = self._placed or error.unsure == self.files.spec
            raise error.about(None) from error  # ``written`` tells
        self._placed = True

    def _write(self, journal: JournalFile, text: str) -> None:
        now = self._clock()
        keep_yesterday(self.files, now)
        journal.append(saved_line(digest_of(text)))
        journal.sync()
        write_whole(self.files.spec, text, changed_s=now.timestamp())

    def set_aside(self, catalogue: Catalogue, spec: Spec, report: Report) -> Path:
        """Writes a spec beside a job that another counter has taken over, under a name that is no job's.

        Raises:
            DiskError: it could not be written.
        """
        path = self.files.aside("toml")
        write_whole(path, spec_text(catalogue, spec, report))
        return path

    def take_back(self) -> bool:
        """Undoes everything since the job was opened, in the journal as well. False: it stays, or the file holds it."""
        if self._journal is None or self.written:
            return False
        try:
            self._writable().cut_back(self._begun)
        except DiskError:
            return False
        return True

    def discard(self) -> bool:
        """Takes a new job away again, which has no file yet, and lets go of it. False: it stays, and is let go of."""
        new = not self.written and self._stood is None
        gone = new and self._lock is not None and self._lock.keep() and self._folder.take_away(self.files.journal_name)
        self.abandon()
        return gone

    def close(self) -> None:
        """Lets go of the job. What waits is tried once more.

        Raises:
            DiskError: something could not be written; the job stays open.
        """
        if self._journal is not None:
            self._journal.retry()
        self.abandon()

    def abandon(self) -> None:
        """Lets go of the job, whatever waits: only for when there is nothing left to try."""
        if self._journal is not None:
            self._lost = self.waiting
            self._journal.close()
            self._journal = None
        if self._lock is not None:
            self._lock.release()
            self._lock = None

    def _hold(self, found: Found, held: JobLock | ReadOnly) -> None:
        """Makes the job ready for appending when the lock is held, else read only.

        Raises:
            DiskError: the journal could not be opened.
        """
        if isinstance(held, JobLock):
            self._journal = journal_of(self.files, found)
            self._begun = self._journal.length
            self._lock, self.read_only_because = held, None
        else:
            self.read_only_because = held
        self._stood = _identity(self.files.spec)

    def _writable(self) -> JournalFile:
        """The journal, as long as the job is ours.

        Another machine's counter may take over what lay still for a day: then nothing of ours may come in between.
        """
        if self._journal is None or self._lock is None or not self._lock.keep():
            raise DiskError(DiskReason.TAKEN, self.files.spec, writing=True)
        return self._journal

    def _first_notices(self) -> tuple[Notice, ...]:
        now = self._clock()
        match self.read_only_because:
            case LockHolder(nameless=True):
                words = (
                    f"Read only: {quotable(str(self.files.lock), 200)} names no counter: it is just being made, or was "
                    f"cut off. Open the job again after {BEING_WRITTEN.seconds} seconds: it is taken over then."
                )
                return (Notice(kind=NoticeKind.READ_ONLY, words=words),)
            case LockHolder() as holder:
                who = holder.counter or "another counter"
                words = f"Read only: {who} has this job since {holder.since_words(now)}."
                return (Notice(kind=NoticeKind.READ_ONLY, words=words),)
            case DiskError() as error:
                return (Notice(kind=NoticeKind.READ_ONLY, words=f"Read only: {error}"),)
            case None:
                pass
        if self.taken_over_from is not None:
            left = self.taken_over_from
            who = left.counter or "another counter"
            words = f"{who} left this job without closing it, open since {left.since_words(now)}: it is yours now."
            return (Notice(kind=NoticeKind.TAKEN_OVER, words=words),)
        return ()


def _identity(path: Path) -> tuple[int, int] | None:
    """Tells a file from the one that takes its place; None: there is none."""
    try:
        status = path.stat()
    except OSError:
        return None
    return status.st_ino, status.st_mtime_ns
