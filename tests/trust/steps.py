"""Every step a program takes on the disk, counted, with a fault at the one that is asked for."""

from __future__ import annotations

import contextlib
import errno
import os
import signal
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path
from typing import Any

_CALLS = (
    "open",
    "write",
    "fsync",
    "replace",
    "rename",
    "link",
    "unlink",
    "remove",
    "ftruncate",
    "mkdir",
    "rmdir",
    "utime",
)
_NEEDS_ROOM = frozenset({"open", "write", "fsync", "mkdir", "link"})
"""What a full disk refuses; taking away and renaming go on."""


class Fault(StrEnum):
    """What happens at a step."""

    FULL_ONCE = "full once"
    FULL = "full from then on"
    SHORT = "half a write, then full"
    SYNC = "EIO at fsync"
    FAILS = "EIO once"
    READ_ONLY = "read only from then on"
    DENIED = "not allowed, once"
    GONE = "folder gone from then on"
    RENAMED = "a file renamed"
    KILL_BEFORE = "killed before"
    KILL_AFTER = "killed after"
    KILL_HALF = "killed with half written"


ERRORS = tuple(fault for fault in Fault if not fault.value.startswith("killed"))
KILLS = tuple(fault for fault in Fault if fault.value.startswith("killed"))


@dataclass
class Steps:
    """Counts the steps and makes the fault."""

    fault: Fault | None
    at: int
    folder: Path
    """Where the jobs are: only what touches it or ``also`` counts."""
    also: tuple[Path, ...] = ()
    taken: int = 0
    hit: bool = False
    names: list[str] = field(default_factory=list)
    handles: dict[int, Path] = field(default_factory=dict)
    """The folder of each open file."""
    _moved: list[tuple[Path, Path]] = field(default_factory=list)
    lifted: bool = False

    def lift(self) -> None:
        """The disk is sound again."""
        self.lifted = True
        for aside, place in self._moved:
            if place.is_dir() and not any(place.iterdir()):
                place.rmdir()
            if aside.exists() and not place.exists():
                os.rename(aside, place)
        self._moved.clear()

    def call(self, name: str, real: Callable[..., Any], *args: Any, **more: Any) -> Any:
        """One call of the system."""
        if self.lifted or self.fault is None or not self._ours(name, args):
            return self._noted(name, args, real(*args, **more))
        if self.fault is Fault.SYNC and name != "fsync":
            return self._noted(name, args, real(*args, **more))
        number = self.taken
        self.taken += 1
        self.names.append(name)
        if number < self.at or (number > self.at and not self._lasts()):
            return self._noted(name, args, real(*args, **more))
        self.hit = True
        return self._noted(name, args, self._faulty(name, real, args, more))

    def _lasts(self) -> bool:
        return self.fault in (Fault.FULL, Fault.READ_ONLY, Fault.SHORT)

    def _faulty(self, name: str, real: Callable[..., Any], args: tuple[Any, ...], more: dict[str, Any]) -> Any:
        match self.fault:
            case Fault.FULL_ONCE | Fault.FULL:
                if name in _NEEDS_ROOM:
                    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
            case Fault.SHORT:
                if name == "write" and self.taken - 1 == self.at:
                    return real(args[0], bytes(args[1])[: len(args[1]) // 2])
                if name in _NEEDS_ROOM:
                    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
            case Fault.SYNC | Fault.FAILS:
                raise OSError(errno.EIO, os.strerror(errno.EIO))
            case Fault.READ_ONLY:
                if name != "fsync" and not (name == "open" and not args[1] & (os.O_WRONLY | os.O_RDWR)):
                    raise OSError(errno.EROFS, os.strerror(errno.EROFS))
            case Fault.DENIED:
                raise OSError(errno.EACCES, os.strerror(errno.EACCES))
            case Fault.GONE:
                self._move(self._folder_of(args[0]))
            case Fault.RENAMED:
                # Files that are ours and no lock: somebody tidies up the folder while the program runs.
                for path in sorted(self.folder.glob("0*-r*.*"))[:1]:
                    self._move(path)
            case Fault.KILL_BEFORE:
                _die()
            case Fault.KILL_AFTER:
                real(*args, **more)
                _die()
            case Fault.KILL_HALF:
                if name == "write":
                    real(args[0], bytes(args[1])[: len(args[1]) // 2])
                    _die()
            case _:
                pass
        return real(*args, **more)

    def _move(self, path: Path) -> None:
        aside = path.with_name(f"{path.name}.elsewhere")
        if path.exists() and not aside.exists():
            os.rename(path, aside)
            self._moved.append((aside, path))

    def _ours(self, name: str, args: tuple[Any, ...]) -> bool:
        if name in ("write", "fsync", "ftruncate"):
            return args[0] in self.handles
        return self._inside(args[0]) or (name in ("replace", "rename", "link") and self._inside(args[1]))

    def _inside(self, path: object) -> bool:
        if isinstance(path, int):
            return path in self.handles
        return self._above(path) is not None

    def _above(self, path: object) -> Path | None:
        """Which of the folders a path is in."""
        text = str(os.fspath(path))  # type: ignore[call-overload]
        return next((folder for folder in (self.folder, *self.also) if text.startswith(str(folder))), None)

    def _folder_of(self, file: object) -> Path:
        """The folder that is touched: it is the one that goes."""
        found = self.handles.get(file) if isinstance(file, int) else self._above(file)
        return found or self.folder

    def _noted(self, name: str, args: tuple[Any, ...], result: Any) -> Any:
        if name == "open" and isinstance(result, int) and self._inside(args[0]):
            self.handles[result] = self._folder_of(args[0])
        return result


def _die() -> None:
    os.kill(os.getpid(), signal.SIGKILL)


@contextlib.contextmanager
def faulty(steps: Steps) -> Iterator[Steps]:
    """All calls of the system that write go through these steps."""
    real = {name: getattr(os, name) for name in _CALLS}
    dup, close = os.dup, os.close

    def through(name: str) -> Callable[..., Any]:
        return lambda *args, **more: steps.call(name, real[name], *args, **more)

    def duplicate(handle: int) -> int:
        new = dup(handle)
        if handle in steps.handles:
            steps.handles[new] = steps.handles[handle]
        return new

    def let_go(handle: int) -> None:
        steps.handles.pop(handle, None)
        close(handle)

    try:
        for name in _CALLS:
            setattr(os, name, through(name))
        os.dup, os.close = duplicate, let_go
        yield steps
    finally:
        for name, function in real.items():
            setattr(os, name, function)
        os.dup, os.close = dup, close
        steps.lift()
