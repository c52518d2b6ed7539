"""The folder of a guided job: made beside nobody's jobs, and taken away where a program was killed in the middle."""

from __future__ import annotations

import contextlib
import os
import re
import shutil
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

_PREFIX = "specbuilder-practice-"
_NAME = re.compile(rf"{_PREFIX}(?:(\d+)-)?\w+", re.ASCII)
_OLD_S = 24 * 60 * 60
"""Nobody practises for so long."""


def practice_folder() -> Path:
    """An empty folder that bears the number of this process; those of processes that ended go.

    Raises:
        OSError: there is no room for it.
    """
    for left in _left(Path(tempfile.gettempdir())):
        shutil.rmtree(left, ignore_errors=True)
    return Path(tempfile.mkdtemp(prefix=f"{_PREFIX}{os.getpid()}-"))


def _left(folder: Path) -> Iterator[Path]:
    """What kills have left of this user in the folder."""
    with contextlib.suppress(OSError):
        for name in os.listdir(folder):
            if (match := _NAME.fullmatch(name)) and _is_ours(folder / name) and _is_left(folder / name, match[1]):
                yield folder / name


def _is_ours(path: Path) -> bool:
    try:
        status = path.lstat()
    except OSError:
        return False
    return os.name != "posix" or status.st_uid == os.getuid()


def _is_left(path: Path, process: str | None) -> bool:
    """By its process where the system tells whether that runs, else by its age."""
    if process and os.name == "posix":
        try:
            os.kill(int(process), 0)
        except (ProcessLookupError, OverflowError):
            return True
        except OSError:
            pass
        return False
    try:
        return time.time() - path.lstat().st_mtime > _OLD_S
    except OSError:
        return False
