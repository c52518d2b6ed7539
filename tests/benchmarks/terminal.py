"""A program in a pseudo-terminal of its own, driven by keys and watched byte by byte."""

from __future__ import annotations

import fcntl
import os
import pty
import select
import signal
import struct
import termios
import time
from dataclasses import dataclass
from types import TracebackType

QUIET_S = 0.06
"""A frame is over when nothing came for this long; far above the 2 to 10 ms between the writes of one frame."""


@dataclass(frozen=True, slots=True)
class Frame:
    """What one key caused."""

    last_byte_s: float
    """From the key to the last byte it caused; 0 when nothing came."""
    written: int
    """Bytes."""


class Terminal:
    """Runs a command in a pty of a given size. Use as a context manager."""

    def __init__(self, command: list[str], columns: int, rows: int, env: dict[str, str] | None = None) -> None:
        self.started_at = time.perf_counter()
        self.pid, self.fd = pty.fork()
        if self.pid == 0:
            child = {**os.environ, "TERM": "xterm-256color", "COLORTERM": "truecolor", **(env or {})}
            child.pop("PYTHONDONTWRITEBYTECODE", None)  # an installed program keeps its bytecode
            os.execvpe(command[0], command, child)
        fcntl.ioctl(self.fd, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
        self.seen = bytearray()

    def __enter__(self) -> Terminal:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        os.kill(self.pid, signal.SIGKILL)
        os.waitpid(self.pid, 0)
        os.close(self.fd)

    def until(self, text: str, timeout_s: float = 20) -> float:
        """Seconds from the start until this text was written.

        Raises:
            TimeoutError: with the end of what was written instead.
        """
        wanted = text.encode()
        while time.perf_counter() - self.started_at < timeout_s:
            self._read(0.05)
            if wanted in self.seen:
                return time.perf_counter() - self.started_at
        raise TimeoutError(f"{text!r} not seen; last: {bytes(self.seen[-400:])!r}")

    def settle(self, quiet_s: float = 0.5) -> None:
        """Read until nothing comes for a while."""
        while self._read(quiet_s):
            pass

    def key(self, sequence: bytes) -> Frame:
        """Press one key and wait for its whole frame."""
        pressed = last = time.perf_counter()
        os.write(self.fd, sequence)
        written = 0
        while count := self._read(QUIET_S if written else 0.5):
            written += count
            last = time.perf_counter()
        return Frame(last - pressed if written else 0.0, written)

    def press(self, sequence: bytes) -> None:
        """Press one key and take what comes at once, without waiting for the end of the frame."""
        os.write(self.fd, sequence)
        while self._read(0.01):
            pass

    def rss_kb(self) -> int:
        """Resident memory of the program in kB (Linux)."""
        with open(f"/proc/{self.pid}/status", encoding="ascii") as status:
            return next(int(line.split()[1]) for line in status if line.startswith("VmRSS"))

    def _read(self, wait_s: float) -> int:
        ready, _, _ = select.select([self.fd], [], [], wait_s)
        if not ready:
            return 0
        try:
            data = os.read(self.fd, 65536)
        except OSError:  # the program has ended
            return 0
        self.seen += data
        if b"\x1b[?2026$p" in data:  # asks for synchronized output: answer as a terminal that has it
            os.write(self.fd, b"\x1b[?2026;2$y")
        return len(data)
