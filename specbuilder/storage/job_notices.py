"""What is said when a job is opened, beside the job itself."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from .faults import Fault
from .job_files import JobFiles
from .journal import JournalRecord


class NoticeKind(StrEnum):
    """What is said when a job is opened."""

    READ_ONLY = "read only"
    TAKEN_OVER = "taken over"
    TORN = "torn"
    JOURNAL_BROKEN = "journal broken"
    FILE_CHANGED = "file changed"
    CATALOGUE_CHANGED = "catalogue changed"
    FILE_GONE = "file gone"
    RENAMED = "renamed"
    INSTEAD = "instead"
    FILE_WARNING = "file warning"


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice:
    """One thing the seller should know, as a sentence."""

    kind: NoticeKind
    words: str


def journal_notices(files: JobFiles, record: JournalRecord) -> tuple[Notice, ...]:
    """What of the journal cannot be read."""
    name = files.journal.name
    if record.broken_line:
        words = (
            f"{name}: line {record.broken_line} cannot be read. What stands before it holds, the rest is kept aside: "
            "look through the job, and do again what is missing."
        )
        return (Notice(kind=NoticeKind.JOURNAL_BROKEN, words=words),)
    if record.torn:
        words = f"{name}: the last line was cut off while it was written. Look whether the last thing done is there."
        return (Notice(kind=NoticeKind.TORN, words=words),)
    return ()


def gone_notices(files: JobFiles, record: JournalRecord) -> tuple[Notice, ...]:
    """That the file is gone, where there was one."""
    if not record.saves:
        return ()
    words = f"{files.spec.name} is gone: the job is open as it was left here last, and its file will be written again."
    return (Notice(kind=NoticeKind.FILE_GONE, words=words),)


def no_start(files: JobFiles) -> Fault:
    """Said of a job of which neither file nor journal can be read."""
    words = f"the first line cannot be read, and there is no {files.spec.name}: put a copy of one of the two there."
    return Fault(files.journal.name, 1, "", words)
