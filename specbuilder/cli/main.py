"""The program as its process: from the first moment on, Ctrl-C ends it with a sentence or silently, and with its code.

Nothing but what Python has loaded anyway is imported before that is so.
"""

from __future__ import annotations

import os
import sys

TYPE_CHECKING = False
"""Set by the type checker alone; the module that has it would have to be loaded."""
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import NoReturn

_STOPPED = 130
"""``Exit.STOPPED``, which cannot be imported yet."""


def main(argv: Sequence[str] | None = None) -> int:
    """Run the program. Returns its exit code; never raises and never shows a traceback.

    With ``argv`` it is run by another program, whose signals are left alone.
    """
    if argv is not None:
        from .way_in import entered

        return entered(argv)
    try:
        return _process()
    except KeyboardInterrupt:
        _leave()


def _process() -> int:
    import signal

    # What a shell has told to run on through Ctrl-C runs on.
    heard = signal.getsignal(signal.SIGINT) is signal.default_int_handler
    if heard:
        signal.signal(signal.SIGINT, _leave)
    from .way_in import entered

    if heard:
        signal.signal(signal.SIGINT, signal.default_int_handler)
    code = entered(sys.argv[1:])
    if heard:  # what was to be done is done: nothing of the end of the program is worth a word
        signal.signal(signal.SIGINT, signal.SIG_IGN)
    if code == _STOPPED:
        _leave()
    return code


def _leave(*_: object) -> NoReturn:
    """Ends at once: Python itself would end by the signal, or tell where it was."""
    os._exit(_STOPPED)
