"""A folder as it was found: only while it is the same one is a file gone whose name is missing in it."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path

from .atomic import sync_folder


class SameFolder:
    """A drive that is pulled and a folder that is moved take their files along: those are out of sight, not gone."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self._was = self._identity()

    @property
    def stands(self) -> bool:
        """True while the folder of that name is the one that was found."""
        return self._was is not None and self._identity() == self._was

    def take_away(self, name: str) -> bool:
        """Removes a file of the folder; True when it is seen not to be there afterwards."""
        if not self.stands:
            return False
        path = self._path / name
        with contextlib.suppress(OSError):
            path.unlink()
            sync_folder(self._path)
        return _is_missing(path) and self.stands

    def _identity(self) -> tuple[int, int] | None:
        try:
            status = self._path.stat()
        except OSError:
            return None
        return status.st_dev, status.st_ino


def _is_missing(path: Path) -> bool:
    """False as well where nobody can tell."""
    try:
        os.lstat(path)
    except FileNotFoundError:
        return True
    except OSError:
        pass
    return False
