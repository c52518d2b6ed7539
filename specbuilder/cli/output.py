"""Where text leaves the program: cleaned, one fact a line, answers on stdout and messages on stderr."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable
from enum import IntEnum
from typing import TextIO

from specbuilder.wording.plain import printable


class Exit(IntEnum):
    """What the calling shell learns."""

    FINE = 0
    """Done; of ``check``: nothing broken and nothing unknown at STOP."""
    BROKEN = 1
    """Of ``check``: something broken at STOP. Of others: what was asked could not be done."""
    UNUSABLE = 2
    """A file, the rules or the command line cannot be used."""
    CANNOT_TELL = 3
    """Of ``check``: nothing broken, but something at STOP cannot be told yet."""
    OWN_MISTAKE = 70
    """A mistake of the program itself."""
    STOPPED = 130
    """Stopped by the keyboard."""
    NOBODY_READS = 141
    """Whoever read the answer went away."""


class StopError(Exception):
    """Ends a command with sentences for stderr and an exit code."""

    def __init__(self, code: Exit, *lines: str) -> None:
        super().__init__(*lines)
        self.code = code
        self.lines = lines


def prepare() -> None:
    """Makes both streams take any character: what a terminal cannot show becomes a question mark."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")


def answer(lines: Iterable[str]) -> None:
    """The answer, on stdout."""
    _write(sys.stdout, lines)


def message(lines: Iterable[str]) -> None:
    """Everything else, on stderr."""
    _write(sys.stderr, lines)


def silence() -> None:
    """Throws away what is still to be written, so that the end of the program does not fail on a closed pipe."""
    nothing = os.open(os.devnull, os.O_WRONLY)
    for stream in (sys.stdout, sys.stderr):
        try:
            os.dup2(nothing, stream.fileno())
        except (OSError, ValueError):
            continue


def _write(stream: TextIO, lines: Iterable[str]) -> None:
    for line in lines:
        stream.write(printable(line) + "\n")
    stream.flush()
