"""Ctrl-C while something is written: it is written to its end, which takes a moment, and the command has done it."""

from __future__ import annotations

import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType


@contextmanager
def undisturbed() -> Iterator[None]:
    """The first Ctrl-C waits until it is no longer needed; a second one stops at once, for a disk that hangs.

    Raises:
        KeyboardInterrupt: at the second.
    """
    before = signal.getsignal(signal.SIGINT)
    if before is not signal.default_int_handler or threading.current_thread() is not threading.main_thread():
        yield
        return

    def heard(number: int, frame: FrameType | None) -> None:
        signal.signal(number, before)

    signal.signal(signal.SIGINT, heard)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)
