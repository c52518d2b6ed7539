"""The file of a job as it stands before a new text takes its place."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from .atomic import PART, clear_left, write_whole
from .disk import DiskError, disk, reading
from .job_files import JobFiles


def stands(path: Path, text: str) -> bool:
    """True when the file holds this text already: leaving a job unchanged leaves its file unchanged."""
    try:
        with reading(path) as file:
            return file.read() == text.encode()
    except DiskError:
        return False


def clear_halves(files: JobFiles) -> None:
    """Removes what a kill left half written of a job that is ours, so that nobody is writing it; and of kept rules.

    Raises:
        DiskError: it is still there.
    """
    with disk(files.folder, writing=True):
        for path in files.folder.glob(f".{files.number}-r{files.revision}.*{PART}"):
            path.unlink(missing_ok=True)
        for part in files.folder.glob(f".rules-*{PART}"):
            clear_left(files.folder / f"{part.name[1:].partition('.zip.')[0]}.zip")


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
