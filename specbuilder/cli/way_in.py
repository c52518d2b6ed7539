"""The way in: opens the app, or runs one line command and ends with its exit code."""

from __future__ import annotations

import os
import sys
from argparse import Namespace
from collections.abc import Sequence
from pathlib import Path
from typing import TextIO

from . import output
from .line.flags import asks_for_screens
from .output import AnswerLostError, Exit, StopError

_TRACE = "SPECBUILDER_TRACE"
"""Set by developers who want the traceback of a mistake in the program."""


def entered(argv: Sequence[str]) -> int:
    """Run what was typed. Returns the exit code; never raises and never shows a traceback."""
    try:
        output.prepare()
        return _run(list(argv))
    except SystemExit as told:  # help was asked for and printed
        return Exit.FINE if not told.code else Exit.UNUSABLE
    except StopError as stop:
        return _ended(stop.code, stop.lines)
    except BrokenPipeError:
        return Exit.NOBODY_READS
    except AnswerLostError as lost:
        return _ended(Exit.ANSWER_LOST, (str(lost),))
    except KeyboardInterrupt:
        return _stopped()
    except Exception as mistake:
        if _by_keyboard(mistake):
            return _stopped()
        # The last floor: whoever stands at the counter is told in a sentence.
        if os.environ.get(_TRACE):
            raise
        kind = f"{type(mistake).__name__}: {mistake}"[:300]
        return _ended(
            Exit.OWN_MISTAKE,
            (
                f"specbuilder stopped because of a mistake of its own ({kind}). Files stand as they were last written.",
                f"Please tell whoever looks after the program what you typed; {_TRACE}=1 shows them where it happened.",
            ),
        )


def _stopped() -> Exit:
    output.silence(sys.stdout)
    return _ended(Exit.STOPPED, ("Stopped.",))


def _by_keyboard(mistake: BaseException | None) -> bool:
    """Whether Ctrl-C is behind it: Python makes another error of one that comes while a class is being made."""
    while mistake is not None and not isinstance(mistake, KeyboardInterrupt):
        mistake = mistake.__cause__
    return mistake is not None


def _run(argv: list[str]) -> Exit:
    screens = asks_for_screens(argv)
    if screens is not None:
        return _app(screens)
    from .line.parser import parser
    from .line.table import COMPLETION

    arguments = parser().parse_args(argv)
    if arguments.command is None:
        return _app(arguments)
    if arguments.command == COMPLETION:
        return _complete(arguments)
    from . import commands

    return commands.run(arguments)


def _complete(arguments: Namespace) -> Exit:
    """Asked at every press of Tab, so that nothing else is loaded for it."""
    from .line.completion import completion

    output.answer(completion(arguments))
    return Exit.FINE


def _app(arguments: Namespace) -> Exit:
    """The counter screens; the toolkit is loaded only now and only for them."""
    if reason := _no_screen():
        raise StopError(
            Exit.UNUSABLE,
            f"{reason}, so the counter screens cannot open here. Use the line commands: specbuilder --help lists them.",
        )
    from specbuilder.tui.app import run

    from .own_keys import keys_path, unusable_keys

    with unusable_keys():
        code = run(
            jobs=_path(arguments.jobs),
            rules=_path(arguments.rules),
            keys=keys_path(arguments.keys),
            ascii=arguments.ascii,
            light=arguments.light,
            counter=arguments.counter,
        )
    return Exit.FINE if code == 0 else Exit.OWN_MISTAKE


def _no_screen() -> str:
    """Why no screen can be drawn; empty when one can."""
    if not all(_is_terminal(stream) for stream in (sys.stdin, sys.stdout, sys.stderr)):
        return "This is not a terminal"
    return "This terminal cannot move its cursor (TERM=dumb)" if os.environ.get("TERM") == "dumb" else ""


def _is_terminal(stream: TextIO | None) -> bool:
    """False as well for a stream that was closed. The screens are drawn on stderr, so that one counts too."""
    return stream is not None and not stream.closed and stream.isatty()


def _path(text: str | None) -> Path | None:
    return Path(text) if text else None


def _ended(code: Exit, lines: Sequence[str]) -> Exit:
    """Says why the program ends."""
    output.message(lines)
    return code
