"""Where text leaves the program: cleaned, one fact a line, answers on stdout and messages on stderr."""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterable
from enum import IntEnum
from types import MappingProxyType
from typing import TextIO

from specbuilder.wording.plain import printable


class Exit(IntEnum):
    """What the calling shell learns; ``EXITS`` says when."""

    FINE = 0
    BROKEN = 1
    UNUSABLE = 2
    CANNOT_TELL = 3
    OWN_MISTAKE = 70
    ANSWER_LOST = 74
    STOPPED = 130
    NOBODY_READS = 141


EXITS = MappingProxyType(
    {
        Exit.FINE: "done; of check: nothing is broken and nothing unknown at STOP",
        Exit.BROKEN: "what was asked could not be done, or cannot be built as it stands; it says why",
        Exit.UNUSABLE: "a file, the rules or the command line cannot be used",
        Exit.CANNOT_TELL: "of check: nothing is broken, but something at STOP cannot be told yet",
        Exit.OWN_MISTAKE: "a mistake of the program itself",
        Exit.ANSWER_LOST: "the answer could not be written; what was to be done is done where it says so",
        Exit.STOPPED: "stopped by the keyboard",
        Exit.NOBODY_READS: "whoever read the answer went away",
    }
)
"""Each exit code in words, for the help and README."""


class StopError(Exception):
    """Ends a command with sentences for stderr and an exit code."""

    def __init__(self, code: Exit, *lines: str) -> None:
        super().__init__(*lines)
        self.code = code
        self.lines = lines


class AnswerLostError(Exception):
    """Standard output did not take the answer. ``str()`` says why."""


def prepare() -> None:
    """Makes both streams take any character: what a terminal cannot show becomes a question mark.

    A stream that was closed leaves its number free, and the next file opened would get it, and with it whatever is
    written to that stream: the number is given to nothing instead.
    """
    for number in range(3):
        try:
            os.fstat(number)
        except OSError:
            os.open(os.devnull, os.O_RDWR)
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")


def answer(lines: Iterable[str]) -> None:
    """The answer, on stdout.

    Raises:
        AnswerLostError: not all of it could be written.
        BrokenPipeError: whoever read it went away.
    """
    told = tuple(lines)
    if not told:
        return
    try:
        _write(sys.stdout, told)
    except BrokenPipeError:
        silence(sys.stdout)
        raise
    except (OSError, ValueError) as error:
        silence(sys.stdout)
        reason = error.strerror if isinstance(error, OSError) and error.strerror else "it is closed"
        raise AnswerLostError(f"The answer could not be written to standard output ({reason}).") from error


def message(lines: Iterable[str]) -> None:
    """Everything else, on stderr. Where that takes nothing, nobody is told, and the exit code still holds."""
    try:
        _write(sys.stderr, lines)
    except (OSError, ValueError):
        silence(sys.stderr)


def silence(stream: TextIO | None) -> None:
    """Throws away what is still to be written, so that the end of the program does not fail on it."""
    if stream is None:
        return
    nothing = os.open(os.devnull, os.O_WRONLY)
    with contextlib.suppress(OSError, ValueError):
        os.dup2(nothing, stream.fileno())
    os.close(nothing)


def _write(stream: TextIO | None, lines: Iterable[str]) -> None:
    """Writes the lines.

    Raises:
        OSError: the stream takes no more.
        ValueError: it is closed.
    """
    if stream is None:  # it was closed before the program began
        raise ValueError("closed")
    for line in lines:
        stream.write(printable(line) + "\n")
    stream.flush()
