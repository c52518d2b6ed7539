"""From which spec a job goes on: its journal, its file, or both, when one of them is broken, missing or changed."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, replace
from enum import StrEnum

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.history import Entry
from specbuilder.model.spec import Spec

from .disk import DiskError, DiskReason, reading
from .faults import Fault, quotable
from .job_files import JobFiles
from .job_notices import Notice, NoticeKind, gone_notices, journal_notices, no_start
from .journal import JOURNAL_FORMAT, JournalRecord, Saved, read_journal, recorded
from .spec_files import ReadSpec, SpecFaultsError, WarningKind, read_spec, read_text


class Instead(StrEnum):
    """What a job can be opened from when its file cannot be read."""

    JOURNAL = "journal"
    """As it was left here last: nothing is lost."""
    YESTERDAY = "yesterday"
    """The copy last written on an earlier day."""


class JobUnreadableError(Exception):
    """A job cannot be opened. Nothing was changed. ``str()`` has one line for each fault."""

    def __init__(self, faults: tuple[Fault, ...], others: tuple[Instead, ...]) -> None:
        self.faults = faults
        self.others = others
        """What it can be opened from instead, the better one first."""
        super().__init__("\n".join(str(fault) for fault in faults))


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What a job goes on from: ``entries`` done one after the other on ``start``."""

    start: Spec
    entries: tuple[Entry, ...]
    journal: JournalRecord
    """The journal on disk; its cursor holds in any case."""
    goes_on: bool
    """True when the journal can be appended to; False when a new one begins with ``start`` and ``entries``."""
    saved: Spec | None
    """What the file holds; None when there is none, or it was passed over."""
    saved_entries: int
    """How many of ``entries`` it holds; they lead from ``start`` to ``saved``."""
    digest: str
    """Hash of the file's text, for a new journal that begins with it; else empty."""
    set_file_aside: bool
    """The file cannot be read and is kept beside the new one."""
    notices: tuple[Notice, ...]
    catalogue_digest: str = ""
    """Of the rules its file was written with; empty while there is no file."""


def find(files: JobFiles, catalogue: Catalogue | None, instead: Instead | None = None) -> Found:
    """What is there of this revision of a job. Writes nothing.

    Raises:
        JobUnreadableError: neither file nor journal can be used as asked.
        DiskError: a file could not be read.
    """
    try:
        # The file first: whoever has the job open marks the journal before the file changes, never after it.
        text, unreadable = _text(files), None
    except SpecFaultsError as error:
        text, unreadable = None, error
    record = read_journal(_bytes(files))
    if record.newer_format:
        words = f"this is format {record.newer_format} and this program reads format {JOURNAL_FORMAT}: "
        fault = Fault(files.journal.name, 1, "", f"{words}open it with a newer program.")
        raise JobUnreadableError((fault,), ())
    match instead:
        case None if unreadable is not None:
            raise JobUnreadableError(unreadable.faults, _others(files, record)) from unreadable
        case None:
            found = _from_both(files, catalogue, record, text)
        case Instead.JOURNAL:
            found = _from_journal(files, record)
        case Instead.YESTERDAY:
            found = _from_yesterday(files, catalogue, record)
    return _named(files, found)


def digest_of(text: str) -> str:
    """The hash by which a journal knows the file it was saved to."""
    return hashlib.sha256(text.encode(errors="replace")).hexdigest()


def _from_both(files: JobFiles, catalogue: Catalogue | None, record: JournalRecord, text: str | None) -> Found:
    """The usual way: file and journal are there and fit each other, or one of them is missing."""
    notices = journal_notices(files, record)
    if text is None:
        if record.start is None:
            if record.empty and not files.journal.exists():
                raise DiskError(DiskReason.GONE, files.spec, writing=False)
            raise JobUnreadableError((no_start(files),), _others(files, record))
        return _on(record, record.start, notices=notices + gone_notices(files, record))
    try:
        read = read_spec(text, files.spec.name, catalogue)
    except SpecFaultsError as error:
        raise JobUnreadableError(error.faults, _others(files, record)) from error
    digest = digest_of(text)
    if record.empty:
        return _from_file(record, read, digest, notices=_warnings(read))
    save = next((save for save in reversed(record.saves) if save.digest == digest), None)
    # The log is never altered and never lost, whatever else was mended by hand.
    if save is None and read.spec.records[: len(known := recorded(record))] != known:
        raise JobUnreadableError((_log_altered(files),), _others(files, record))
    if record.start is None or save is None or record.broken_line or _other_catalogue(read, catalogue):
        why = _why_anew(files, record, read, catalogue, changed=save is None)
        left = _warnings(read, WarningKind.LEFT_CATALOGUE)
        since = _entries_since(record, save)
        return replace(_from_file(record, read, digest, notices=notices + why + left), entries=since)
    on = _on(record, record.start, notices=notices)
    return replace(on, saved=read.spec, saved_entries=save.entries, catalogue_digest=read.catalogue_digest)


def _entries_since(record: JournalRecord, save: Saved | None) -> tuple[Entry, ...]:
    """What was done after the file was written.

    A broken journal whose saves do not name the file cannot say: the file may hold more than can be read of it.
    """
    if save is None and not record.broken_line and record.saves:
        save = record.saves[-1]
    return record.entries[save.entries :] if save else ()


def _from_journal(files: JobFiles, record: JournalRecord) -> Found:
    if record.start is None:
        raise JobUnreadableError((no_start(files),), ())
    words = f"{files.spec.name} could not be read: the job is open as it was left here last, and that file is kept."
    notices = (Notice(kind=NoticeKind.INSTEAD, words=words), *journal_notices(files, record))
    return replace(_on(record, record.start, notices=notices), set_file_aside=True)


def _from_yesterday(files: JobFiles, catalogue: Catalogue | None, record: JournalRecord) -> Found:
    try:
        read = read_spec(read_text(files.yesterday), files.yesterday.name, catalogue)
    except SpecFaultsError as error:
        raise JobUnreadableError(error.faults, ()) from error
    words = f"The job is open from {files.yesterday.name}: what was done since is kept beside it, and not in it."
    notices = (Notice(kind=NoticeKind.INSTEAD, words=words),)
    return replace(_from_file(record, read, "", notices=notices), saved=None, set_file_aside=True)


def _on(record: JournalRecord, start: Spec, *, notices: tuple[Notice, ...]) -> Found:
    """The journal goes on."""
    return Found(
        start=start,
        entries=record.entries,
        journal=record,
        goes_on=not record.broken_line,
        saved=None,
        saved_entries=0,
        digest="",
        set_file_aside=False,
        notices=notices,
    )


def _from_file(record: JournalRecord, read: ReadSpec, digest: str, *, notices: tuple[Notice, ...]) -> Found:
    """A new journal begins with what the file holds."""
    return Found(
        start=read.spec,
        entries=(),
        journal=record,
        goes_on=False,
        saved=read.spec,
        saved_entries=0,
        digest=digest,
        set_file_aside=False,
        notices=notices,
        catalogue_digest=read.catalogue_digest,
    )


def _named(files: JobFiles, found: Found) -> Found:
    """Number and revision are those of the name: a file that was copied to a new name is a new job."""
    start, number, revision = found.start, files.number, files.revision
    saved = replace(found.saved, number=number, revision=revision) if found.saved else None
    if (start.number, start.revision) == (number, revision):
        return replace(found, saved=saved)
    was = f"job {quotable(start.number)}" if start.number else "a job without number"
    words = f"{files.spec.name} calls itself {was}, revision {start.revision}: it goes by its name now."
    notices = (*found.notices, Notice(kind=NoticeKind.RENAMED, words=words))
    named = replace(start, number=number, revision=revision)
    return replace(found, start=named, saved=saved, goes_on=False, notices=notices)


def _warnings(read: ReadSpec, *kinds: WarningKind) -> tuple[Notice, ...]:
    """What was found odd on reading the file; without kinds all of it."""
    told = (warning.words for warning in read.warnings if not kinds or warning.kind in kinds)
    return tuple(Notice(kind=NoticeKind.FILE_WARNING, words=words) for words in told)


def _why_anew(
    files: JobFiles, record: JournalRecord, read: ReadSpec, catalogue: Catalogue | None, *, changed: bool
) -> tuple[Notice, ...]:
    """Why undo reaches back no further than the file."""
    undo = "Undo reaches back to it and no further."
    if changed and record.start is not None:
        words = f"{files.spec.name} was changed outside the program and is taken as it stands. {undo}"
        return (Notice(kind=NoticeKind.FILE_CHANGED, words=words),)
    if _other_catalogue(read, catalogue):
        words = f"The catalogue has changed since {files.spec.name} was written. {undo}"
        return (Notice(kind=NoticeKind.CATALOGUE_CHANGED, words=words),)
    return ()


def _other_catalogue(read: ReadSpec, catalogue: Catalogue | None) -> bool:
    """Under other rules the same edits may lead to another spec: then only the file says what was agreed."""
    return catalogue is not None and read.catalogue_digest != catalogue.digest


def _others(files: JobFiles, record: JournalRecord) -> tuple[Instead, ...]:
    journal = (Instead.JOURNAL,) if record.start is not None else ()
    yesterday = (Instead.YESTERDAY,) if files.yesterday.is_file() else ()
    return journal + yesterday


def _log_altered(files: JobFiles) -> Fault:
    words = (
        "was changed outside the program and does not hold all that was written down of the job: put a copy back, or "
        "move this file away and the job opens as it was left here last."
    )
    return Fault(files.spec.name, 0, "record", words)


def _text(files: JobFiles) -> str | None:
    try:
        return read_text(files.spec)
    except DiskError as error:
        if error.reason is DiskReason.GONE:
            return None
        raise


def _bytes(files: JobFiles) -> bytes:
    """The journal; empty when there is none."""
    try:
        with reading(files.journal) as file:
            return file.read()
    except DiskError as error:
        if error.reason is DiskReason.GONE:
            return b""
        raise
