"""What stands before a command, or alone: enough to open the counter screens without the table of all commands."""

from __future__ import annotations

from argparse import SUPPRESS, ArgumentError, ArgumentParser, Namespace
from collections.abc import Sequence


def folders(to: ArgumentParser, *, main: bool) -> None:
    """The two folders, which may stand before or after the command; only the first place gives a default."""
    default = None if main else SUPPRESS
    to.add_argument("--jobs", metavar="DIR", default=default, help="the folder of the jobs")
    to.add_argument("--rules", metavar="DIR", default=default, help="the folder of the rules")


def screen_flags(to: ArgumentParser) -> None:
    """What the counter screens take."""
    folders(to, main=True)
    to.add_argument("--counter", metavar="NAME", default="", help="what other counters call this one")
    to.add_argument("--ascii", action="store_true", help="marks every font has")
    to.add_argument("--keys", metavar="FILE", help="keys of your own for the screens; specbuilder keys lists the acts")
    to.add_argument("--light", action="store_true", help="dark letters on light ground")


def asks_for_screens(argv: Sequence[str]) -> Namespace | None:
    """What a command line without a command asks for; None where anything else stands in it, or nothing is clear.

    The first frame waits for this, and not for the forty commands that nobody typed.
    """
    flags = ArgumentParser(add_help=False, allow_abbrev=False, exit_on_error=False)
    screen_flags(flags)
    try:
        asked, rest = flags.parse_known_args(argv)
    except (ArgumentError, SystemExit):
        return None
    return None if rest else asked
