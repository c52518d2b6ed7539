"""A process of its own for what is going to be killed: forked, so that it begins at once with everything read."""

from __future__ import annotations

import os
import select
import signal
import time
from collections.abc import Callable
from dataclasses import dataclass

NOT_KILLED = 77
"""With this the child ends when it came to its end."""


@dataclass
class Child:
    """A running child and what it has acknowledged."""

    pid: int
    pipe: int

    def kill_after(self, seconds: float) -> list[str]:
        """Kills it so long after its first word, as a power cut would; what it had acknowledged until then."""
        select.select([self.pipe], [], [], 60)
        time.sleep(seconds)
        os.kill(self.pid, signal.SIGKILL)
        return self.ended()[1]

    def ended(self, within_s: float = 120.0) -> tuple[bool, list[str]]:
        """Waits for its end: whether it came to it by itself, and every line it had acknowledged."""
        said = bytearray()
        ends = time.monotonic() + within_s
        while True:
            ready, _, _ = select.select([self.pipe], [], [], max(0.0, ends - time.monotonic()))
            data = os.read(self.pipe, 65536) if ready else b""
            if not ready:
                os.kill(self.pid, signal.SIGKILL)
            if not data:
                break
            said += data
        os.close(self.pipe)
        _, status = os.waitpid(self.pid, 0)
        whole = said[: said.rfind(b"\n") + 1].decode()
        return os.WIFEXITED(status) and os.WEXITSTATUS(status) == NOT_KILLED, whole.splitlines()


def child(work: Callable[[Callable[[str], None]], None]) -> Child:
    """Runs this in a process of its own; ``work`` is given what it acknowledges with, a line at a time."""
    read, write = os.pipe()
    pid = os.fork()
    if pid:
        os.close(write)
        return Child(pid, read)
    code = 1
    try:
        os.close(read)
        nothing = os.open(os.devnull, os.O_RDWR)
        for number in range(3):
            os.dup2(nothing, number)
        work(lambda line: (os.write(write, line.encode() + b"\n"), None)[1])
        code = NOT_KILLED
    finally:
        os._exit(code)
