"""What the disk may refuse, as one exception with a sentence: the only place where ``OSError`` is turned into words."""

from __future__ import annotations

import errno
import stat
from collections.abc import Iterator
from contextlib import contextmanager
from enum import StrEnum
from pathlib import Path
from types import MappingProxyType
from typing import BinaryIO

from .faults import quotable


class DiskReason(StrEnum):
    """Why a file could not be read or written; the text form fits into brackets."""

    FULL = "full"
    READ_ONLY = "read only"
    NOT_ALLOWED = "not allowed"
    GONE = "gone"
    IN_THE_WAY = "something in the way"
    FOLDER = "a folder"
    NO_FILE = "no regular file"
    NO_FOLDER = "no folder"
    NAME = "name not possible"
    TAKEN = "taken by another counter"
    SPOILT = "spoilt"
    FAILED = "failed"


_REASONS = MappingProxyType(
    {
        errno.ENOSPC: DiskReason.FULL,
        errno.EDQUOT: DiskReason.FULL,
        errno.EFBIG: DiskReason.FULL,
        errno.EROFS: DiskReason.READ_ONLY,
        errno.EACCES: DiskReason.NOT_ALLOWED,
        errno.EPERM: DiskReason.NOT_ALLOWED,
        errno.ENOENT: DiskReason.GONE,
        errno.ESTALE: DiskReason.GONE,
        errno.EISDIR: DiskReason.FOLDER,
        errno.ENOTDIR: DiskReason.IN_THE_WAY,
        errno.EEXIST: DiskReason.IN_THE_WAY,
        errno.ENAMETOOLONG: DiskReason.NAME,
        errno.EINVAL: DiskReason.NAME,
        errno.ELOOP: DiskReason.NAME,
    }
)
_BECAUSE = MappingProxyType(
    {
        DiskReason.FULL: "the disk is full: make room and try again.",
        DiskReason.READ_ONLY: "the folder is read only: unlock it, or use another folder.",
        DiskReason.NOT_ALLOWED: "this user may not: change the rights of file and folder, or use another folder.",
        DiskReason.GONE: "it is not there: check the path, and that its drive is connected.",
        DiskReason.IN_THE_WAY: "something else of that name is in the way: move it or use another name.",
        DiskReason.FOLDER: "it is a folder: name a file.",
        DiskReason.NO_FILE: "it is no regular file: use another name.",
        DiskReason.NO_FOLDER: "it is no folder: use --jobs with a folder.",
        DiskReason.NAME: "the system takes no such name: use a shorter, plainer one.",
        DiskReason.TAKEN: "another counter has taken this job over: open it again.",
        DiskReason.SPOILT: "neither it nor its journal tells anything: put one of them back from a copy.",
        DiskReason.FAILED: "the disk reports a fault: check the drive and try again.",
    }
)


class DiskError(Exception):
    """A file could not be read or written. ``str()`` says so with file and cure, and what nobody can be sure of."""

    def __init__(self, reason: DiskReason, path: Path, *, writing: bool, unsure: Path | None = None) -> None:
        self.reason = reason
        self.path = path
        self.writing = writing
        self.unsure = unsure
        """A file that may stand written all the same, as its folder failed or went away after that; None: none does."""
        done = "written" if writing else "read"
        told = f"{quotable(str(path), 200)} could not be {done}, {_BECAUSE[reason]}"
        super().__init__(told if unsure is None else f"{told} {_unsure_words(unsure)}")

    def about(self, unsure: Path | None) -> DiskError:
        """The same from somebody who knows better what may stand written."""
        return DiskError(self.reason, self.path, writing=self.writing, unsure=unsure)


def _unsure_words(path: Path) -> str:
    return f"{quotable(str(path), 200)} may be there all the same: look at it before this is done again."


@contextmanager
def disk(path: Path, *, writing: bool, unsure: Path | None = None) -> Iterator[None]:
    """Runs what touches this file.

    Raises:
        DiskError: instead of any ``OSError``.
    """
    try:
        yield
    except OSError as error:
        reason = _REASONS.get(error.errno or 0, DiskReason.FAILED)
        raise DiskError(reason, path, writing=writing, unsure=unsure) from error


@contextmanager
def reading(path: Path) -> Iterator[BinaryIO]:
    """The file, open for reading. A pipe or a device is never opened: it could wait for ever, or never end.

    Raises:
        DiskError: it is no regular file, is not there, or could not be read.
    """
    refuse_special(path, writing=False)
    with disk(path, writing=False), path.open("rb") as file:
        yield file


def make_folder(folder: Path) -> None:
    """Makes the folder, and those above it, where it is not there yet.

    Raises:
        DiskError: it cannot be made.
    """
    with disk(folder, writing=True):
        folder.mkdir(parents=True, exist_ok=True)


def refuse_special(path: Path, *, writing: bool) -> None:
    """Lets pass what is a regular file, or is not there yet.

    Raises:
        DiskError: it is a folder, a pipe, a device or the like; or nobody can tell.
    """
    with disk(path, writing=writing):
        try:
            mode = path.stat().st_mode
        except FileNotFoundError:
            return
    if not stat.S_ISREG(mode):
        reason = DiskReason.FOLDER if stat.S_ISDIR(mode) else DiskReason.NO_FILE
        raise DiskError(reason, path, writing=writing)
