"""Writing a file whole: afterwards it holds either all of the old text or all of the new, whatever happens between."""

from __future__ import annotations

import contextlib
import os
import re
import stat
import time
from pathlib import Path

from .disk import disk, refuse_special

BINARY: int = getattr(os, "O_BINARY", 0)
"""Keeps the system from changing line ends, where it otherwise would."""
PART = ".part"
"""Ending of the file a text is written to before it takes the place of the old one."""
_WRITTEN_S = 600
"""Nothing takes as long to be written."""


def write_whole(path: Path, content: str | bytes, *, changed_s: float | None = None) -> None:
    """Puts this in the place of the file; it stands on the disk when this returns.

    ``changed_s`` becomes the file's time of change, in seconds since 1970; None leaves it to the system.

    Raises:
        DiskError: the old content is still there, unless the error is ``unsure`` of the file: the new one has its
            place, and nobody can tell whether it keeps it. What is no regular file is never replaced.
    """
    refuse_special(path, writing=True)
    target = Path(os.path.realpath(path))
    part = target.with_name(f".{target.name}.{os.getpid()}{PART}")
    with disk(path, writing=True):
        try:
            write_part(part, content if isinstance(content, bytes) else content.encode(), rights(target))
            if changed_s is not None:
                os.utime(part, (changed_s, changed_s))
            os.replace(part, target)
        except OSError:
            with contextlib.suppress(OSError):
                part.unlink()
            raise
    with disk(path, writing=True, unsure=path):
        sync_folder(target.parent)


def moved_back(path: Path, aside: Path) -> bool:
    """Puts a file back in its place that was laid aside; False: it could not be."""
    try:
        os.replace(aside, path)
    except OSError:
        return False
    return True


def clear_left(target: Path, ending: str = PART) -> None:
    """Removes what a kill left half written beside this file; where that cannot be, it stays until the next time.

    What another process may just be writing is younger than ten minutes, and stays.
    """
    name = re.compile(rf"\.{re.escape(target.name)}\.(\d+){re.escape(ending)}", re.ASCII)
    with contextlib.suppress(OSError):
        for found in filter(None, map(name.fullmatch, os.listdir(target.parent))):
            left = target.with_name(found[0])
            if int(found[1]) == os.getpid() or time.time() - left.stat().st_mtime > _WRITTEN_S:
                left.unlink()


def write_all(file: int, data: bytes | memoryview) -> None:
    """Writes all of it to an open file; the system may take it in pieces."""
    rest = memoryview(data)
    while rest:
        rest = rest[os.write(file, rest) :]


def sync_folder(folder: Path) -> None:
    """Makes new and changed names in the folder last; where folders cannot be opened there is nothing to do."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def write_part(part: Path, data: bytes, mode: int | None) -> None:
    """Writes a file with these rights; it stands on the disk when this returns."""
    file = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_TRUNC | BINARY, 0o666)
    try:
        if mode is not None and os.name == "posix":
            os.fchmod(file, mode)
        write_all(file, data)
        os.fsync(file)
    finally:
        os.close(file)


def rights(target: Path) -> int | None:
    """Rights of the file that is replaced: the new one keeps them."""
    try:
        return stat.S_IMODE(target.stat().st_mode)
    except FileNotFoundError:
        return None
