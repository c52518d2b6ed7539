"""The file of a job as it stands before a new text takes its place."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from .atomic import write_whole
from .disk import DiskError, disk, reading
from .job_files import JobFiles


def stands(path: Path, text: str) -> bool:
    """True when the file holds this text already: leaving a job unchanged leaves its file unchanged."""
    try:
        with reading(path) as file:
            return file.read() == text.encode()
    except DiskError:
        return False


def keep_yesterday(files: JobFiles, now: datetime) -> None:
    """Copies a file that was written on an earlier day, before a new one takes its place.

    Raises:
        DiskError: the copy could not be written.
    """
    with disk(files.spec, writing=False):
        try:
            changed_s = files.spec.stat().st_mtime
            if datetime.fromtimestamp(changed_s, now.tzinfo).date() >= now.date():
                return
            content = files.spec.read_bytes()
        except FileNotFoundError:
            return
    write_whole(files.yesterday, content, changed_s=changed_s)
