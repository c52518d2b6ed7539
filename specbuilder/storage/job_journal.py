"""The journal a job goes on with when it is opened."""

from __future__ import annotations

import os
from pathlib import Path

from .atomic import moved_back, write_whole
from .disk import DiskError, DiskReason, disk, reading
from .job_files import JobFiles
from .job_recovery import Found
from .journal import entry_line, saved_line, start_line
from .journal_file import JournalFile


def journal_of(files: JobFiles, found: Found) -> JournalFile:
    """The one that is there, or a new one while the old is kept aside; so is a file that cannot be read.

    Raises:
        DiskError: it could not be opened or written; all is as it was, unless the error is ``unsure``.
    """
    aside = _laid_aside(files) if found.set_file_aside else None
    try:
        return _on(files, found) if found.goes_on and files.journal.exists() else _new(files, found)
    except DiskError as error:
        back = aside is None or moved_back(files.spec, aside)
        raise error.about(error.unsure if back else aside) from error


def _on(files: JobFiles, found: Found) -> JournalFile:
    with reading(files.journal) as file:
        return JournalFile(files.journal, file.read(found.journal.good_bytes))


def _new(files: JobFiles, found: Found) -> JournalFile:
    content = start_line(found.start) + (saved_line(found.digest) if found.digest else b"")
    content += b"".join(entry_line(entry) for entry in found.entries)
    content += entry_line(found.journal.cursor) if found.journal.cursor else b""
    _copy_aside(files.journal, files.aside("journal"))
    return JournalFile.new(files.journal, content)


def _laid_aside(files: JobFiles) -> Path | None:
    """Where the file was moved that cannot be read; None: it is not there."""
    aside = files.aside("toml")
    with disk(files.spec, writing=True):
        try:
            os.replace(files.spec, aside)
        except FileNotFoundError:
            return None
    return aside


def _copy_aside(path: Path, aside: Path) -> None:
    """A copy, so that there is a journal at every moment."""
    try:
        with reading(path) as file:
            content = file.read()
        if content:
            write_whole(aside, content)
    except DiskError as error:
        if error.reason is not DiskReason.GONE or error.writing:
            raise error.about(None) from error  # one copy more or less
