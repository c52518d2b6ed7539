"""Which counter has a job: a small file beside it that names counter, machine, process and time.

Of two counters that open a job at once, one makes the file (the system lets only one) and the other reads it. A lock
left by a process that no longer runs on this machine is taken over. Whether a process of another machine still runs
cannot be told from here: its lock is taken over when it and the last change of the job are both older than a day.
"""

from __future__ import annotations

import contextlib
import json
import os
import platform
import sys
from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path
from typing import TypeAlias

from .atomic import BINARY, write_all
from .disk import DiskError, DiskReason, disk, reading
from .faults import quotable

LEFT_AFTER = timedelta(days=1)
"""How long a lock of another machine holds without any change of its job."""
BEING_WRITTEN = timedelta(seconds=10)
"""How long an empty lock counts as one that is just being made."""
_LONGEST = 4096
_TRIES = 10
_ENDED = "ended"


@dataclass(frozen=True, slots=True, kw_only=True)
class Process:
    """A running program: machine, number, and when it began, since numbers are used again."""

    host: str
    pid: int
    began: str
    """Empty where the system does not say."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LockHolder:
    """Who has a job, and since when."""

    counter: str
    process: Process
    since: datetime

    @property
    def nameless(self) -> bool:
        """True when the lock holds no counter: it is just being made, or was cut off while it was."""
        return not self.counter and not self.process.host

    def since_words(self, now: datetime) -> str:
        """``10:02``, with the date when it was another day."""
        since = self.since.astimezone(now.tzinfo)
        return f"{since:%H:%M}" if since.date() == now.date() else f"{since:%Y-%m-%d %H:%M}"


Identity: TypeAlias = tuple[int, int]
"""Number on the disk and time of the last change: a lock made anew has another one."""


class JobLock:
    """A lock this program holds."""

    def __init__(self, path: Path, holder: LockHolder, left_by: LockHolder | None, identity: Identity) -> None:
        """``identity``: of the file as it was made; another counter may have it aside for a moment."""
        self.holder = holder
        self.left_by = left_by
        """The counter it was taken over from; None when the job was free."""
        self._path, self._identity = path, identity

    def keep(self) -> bool:
        """False when another counter has taken the job. A lock that somebody merely removed is made again."""
        try:
            return _identity(self._path) == self._identity
        except OSError:
            return self._make_again()

    def release(self) -> None:
        """Frees the job; a lock that is no longer ours stays."""
        with contextlib.suppress(OSError):
            if _identity(self._path) == self._identity:
                self._path.unlink()

    def _make_again(self) -> bool:
        """Where nothing can be made the folder is lost: that is for the journal to say, and nobody else's doing."""
        try:
            made = _make(self._path, self.holder)
            if made is None:
                return False
            self._identity = made
        except (OSError, DiskError):
            pass
        return True


def this_process() -> Process:
    """The process that runs this."""
    return Process(host=platform.node(), pid=os.getpid(), began=_began(os.getpid()))


def take_lock(
    path: Path, counter: str, process: Process, now: datetime, changed: datetime | None
) -> JobLock | LockHolder:
    """The lock, or who holds it. ``changed`` is the last change of the job; None when it has none yet.

    Raises:
        DiskError: the lock could not be written or read.
    """
    mine = LockHolder(counter=counter, process=process, since=now)
    left_by: LockHolder | None = None
    for _ in range(_TRIES):
        if (made := _make(path, mine)) is not None:
            return JobLock(path, mine, left_by, made)
        holder = read_lock(path, now)
        if holder is None:
            continue
        if holds(holder, process, now, changed):
            return holder
        left_by = holder
        _take_away(path, holder, process, now)
    raise DiskError(DiskReason.TAKEN, path, writing=True)


def read_lock(path: Path, now: datetime) -> LockHolder | None:
    """Who holds the lock; None when nobody does.

    A lock that names nobody was cut off while it was made: it holds for ten seconds and no longer.

    Raises:
        DiskError: the lock could not be read.
    """
    try:
        with reading(path) as file:
            text, made_s = file.read(_LONGEST), os.fstat(file.fileno()).st_mtime
    except DiskError as error:
        if error.reason is DiskReason.GONE:
            return None
        raise
    made = datetime.fromtimestamp(made_s, now.tzinfo)
    return _parsed(text) or _nobody(made)


def holds(holder: LockHolder, process: Process, now: datetime, changed: datetime | None) -> bool:
    """False when this process may take the lock over. ``changed`` is the last change of the job."""
    if holder.nameless:
        return abs(now - holder.since) < BEING_WRITTEN
    if holder.process.host == process.host and sys.platform != "win32":
        return _runs(holder.process)
    if holder.since - now > LEFT_AFTER:
        return changed is not None and now - changed < LEFT_AFTER  # no clock is that wrong: the time is none
    last = max(holder.since, changed or holder.since)
    return now - last < LEFT_AFTER


def _make(path: Path, mine: LockHolder) -> Identity | None:
    """The identity of the lock when it was free and is now ours."""
    written = {
        "counter": mine.counter,
        "host": mine.process.host,
        "pid": mine.process.pid,
        "began": mine.process.began,
        "since": mine.since.isoformat(),
    }
    with disk(path, writing=True):
        try:
            file = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | BINARY, 0o666)
        except FileExistsError:
            return None
        try:
            write_all(file, json.dumps(written).encode())
            status = os.fstat(file)
        except OSError:
            path.unlink()
            raise
        finally:
            os.close(file)
    return status.st_ino, status.st_mtime_ns


def _take_away(path: Path, left: LockHolder, process: Process, now: datetime) -> None:
    """Removes a lock nobody holds any more.

    Another counter may do the same at the same moment and already have made its own: what is taken away is looked at
    once more, and put back when it is not what was left.
    """
    aside = path.with_name(f".{path.name}.{process.pid}")
    with disk(path, writing=True):
        try:
            os.replace(path, aside)
        except FileNotFoundError:
            return
        if read_lock(aside, now) == left or path.exists():
            aside.unlink()
        else:
            os.replace(aside, path)


def _parsed(text: bytes) -> LockHolder | None:
    try:
        match json.loads(text):
            case {
                "counter": str(counter),
                "host": str(host),
                "pid": int(pid),
                "began": str(began),
                "since": str(since),
            }:
                process = Process(host=quotable(host), pid=pid, began=quotable(began))
                return LockHolder(
                    counter=quotable(counter), process=process, since=datetime.fromisoformat(since).astimezone()
                )
            case _:
                return None
    except (ValueError, OverflowError, OSError, RecursionError):
        return None


def _nobody(made: datetime) -> LockHolder:
    return LockHolder(counter="", process=Process(host="", pid=0, began=""), since=made)


def _identity(path: Path) -> Identity:
    status = path.stat()
    return status.st_ino, status.st_mtime_ns


def _runs(process: Process) -> bool:
    """True when this very process of this machine still runs."""
    if process.pid <= 0:
        return False
    try:
        os.kill(process.pid, 0)
    except ProcessLookupError:
        return False
    except OSError:
        pass
    began = _began(process.pid)
    return began != _ENDED and (not began or not process.began or began == process.began)


def _began(pid: int) -> str:
    """When a process began, in the system's own count since it was started; empty where the system does not say."""
    try:
        status = Path(f"/proc/{pid}/stat").read_text(encoding="utf-8", errors="replace")
        boot = Path("/proc/sys/kernel/random/boot_id").read_text(encoding="utf-8").strip()
    except OSError:
        return ""
    words = status.rpartition(")")[2].split()
    if words[:1] == ["Z"]:
        return _ENDED
    return f"{boot} {words[19]}" if len(words) > 19 else ""
