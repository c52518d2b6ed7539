"""The way in: opens the app, or runs one line command and ends with its exit code."""

from __future__ import annotations

import os
import sys
from argparse import SUPPRESS, ArgumentParser, Namespace
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn, TextIO

from . import output
from .compare_parser import comparing
from .life_parser import life
from .output import AnswerLostError, Exit, StopError

if TYPE_CHECKING:
    from argparse import _SubParsersAction

    from _typeshed import SupportsWrite

_TRACE = "SPECBUILDER_TRACE"
"""Set by developers who want the traceback of a mistake in the program."""
_LONGEST = 300
"""Of what is repeated of a command line."""
_FILE = "a spec file, the number of a job, or NUMBER@REVISION to look at that one"
_THING = (
    "an option by its id or name (OPTION, OPTION@left, OPTION*2), a line of the brief (adults=2), "
    "customer=NAME, or a field of the real van (vin_tail=..., year=...)"
)


def main(argv: Sequence[str] | None = None) -> int:
    """Run the program. Returns its exit code; never raises and never shows a traceback."""
    output.prepare()
    try:
        return _run(list(sys.argv[1:] if argv is None else argv))
    except SystemExit as told:  # help was asked for and printed
        return Exit.FINE if not told.code else Exit.UNUSABLE
    except StopError as stop:
        return _ended(stop.code, stop.lines)
    except BrokenPipeError:
        return Exit.NOBODY_READS
    except AnswerLostError as lost:
        return _ended(Exit.ANSWER_LOST, (str(lost),))
    except KeyboardInterrupt:
        return _ended(Exit.STOPPED, ("Stopped.",))
    except Exception as mistake:
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


def _run(argv: list[str]) -> Exit:
    arguments = _parser().parse_args(argv)
    if arguments.command is None:
        return _app(arguments)
    from . import commands

    return commands.run(arguments)


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


class _Parser(ArgumentParser):
    """Cleans what it prints, since it repeats what was typed; no abbreviations, so that a new option breaks nobody."""

    def __init__(self, **settings: object) -> None:
        super().__init__(allow_abbrev=False, **settings)  # type: ignore[arg-type]

    def _print_message(self, message: str, file: SupportsWrite[str] | None = None) -> None:
        if message:
            write = output.answer if file in (None, sys.stdout) else output.message
            write(message.rstrip("\n").split("\n"))

    def error(self, message: str) -> NoReturn:
        """Says what was wrong with the command line and where help is."""
        told = message if len(message) <= _LONGEST else f"{message[: _LONGEST - 3]}..."
        usage = " ".join(self.format_usage().split())
        raise StopError(Exit.UNUSABLE, f"{told}.", usage, f"Help: {self.prog} --help")


def _parser() -> ArgumentParser:
    top = _Parser(
        prog="specbuilder",
        description="Counter program for a campervan workshop. Without a command it opens the counter screens.",
        epilog="Exit code: 0 done, 1 what was asked could not be done, 2 a file, the rules or the command line cannot "
        "be used, 70 a mistake of the program, 74 the answer could not be written, 130 stopped by the keyboard, "
        "141 whoever read the answer went away. What check means by 0, 1 and 3 stands in its own help.",
    )
    _folders(top, main=True)
    top.add_argument("--counter", metavar="NAME", default="", help="what other counters call this one")
    top.add_argument("--ascii", action="store_true", help="marks every font has")
    top.add_argument("--keys", metavar="FILE", help="keys of your own; specbuilder keys tells how")
    top.add_argument("--light", action="store_true", help="dark letters on light ground")
    commands = top.add_subparsers(dest="command", metavar="COMMAND", parser_class=_Parser)
    check = commands.add_parser("check", help="what is broken, what cannot be told yet, what is open")
    check.description = (
        "Exit code: 0 nothing broken and nothing unknown at STOP, 1 something broken at STOP, "
        "3 nothing broken but something at STOP cannot be told yet, 2 the file cannot be used."
    )
    check.add_argument("file", metavar="FILE", help=_FILE)
    check.add_argument("--json", action="store_true", help="all of the report, for other programs")
    show = commands.add_parser("show", help="the spec line by line; with STEP or GROUP every option there")
    show.add_argument("file", metavar="FILE", help=_FILE)
    show.add_argument("what", metavar="STEP|GROUP", nargs="?", help="brief, van, roof, kitchen, ... or a group")
    brief = commands.add_parser("brief", help="the eleven questions and what was answered")
    brief.add_argument("file", metavar="FILE", help=_FILE)
    why = commands.add_parser("why", help="why an option is as it is, what a finding or a ledger rests on")
    why.add_argument("file", metavar="FILE", help=_FILE)
    why.add_argument("thing", metavar="THING", help="an option, a group, a ledger, or a rule in brackets from check")
    why.add_argument("--json", action="store_true", help="with the chain of reasons as a tree")
    circuits = commands.add_parser("circuits", help="every cable run with its section, fuse and drop")
    circuits.description = (
        "Exit code: 0 every circuit has cable and fuse, 1 something must be settled before a cable is cut."
    )
    circuits.add_argument("file", metavar="FILE", help=_FILE)
    circuits.add_argument("--json", action="store_true", help="every figure, for other programs")
    comparing(commands)
    _proposing(commands)
    for name, what in (("set", "take options, answer the brief, fill van data"), ("drop", "leave out, or not known")):
        change = commands.add_parser(name, help=what)
        change.add_argument("file", metavar="FILE", help=_FILE)
        change.add_argument("things", metavar="THING[=VALUE]" if name == "set" else "THING", nargs="+", help=_THING)
        change.add_argument("--to", metavar="OUT", help="write there and leave FILE as it is")
    new = commands.add_parser("new", help="a new job with its first answers; prints its number")
    new.add_argument("things", metavar="THING[=VALUE]", nargs="*", help=_THING)
    new.add_argument("--from", metavar="FILE", dest="source", help="begin with what this spec says; a job is copied")
    export = commands.add_parser("export", help="write the spec for the workshop")
    export.add_argument("file", metavar="FILE", help=_FILE)
    export.add_argument("--to", metavar="DIR", required=True, help="the folder it is written to")
    commands.add_parser("jobs", help="the list of jobs")
    life(commands)
    audit = commands.add_parser("audit", help="read the rules and say what is faulty or odd")
    audit.add_argument("dir", metavar="DIR", nargs="?", help="a folder of rules; the program's own without it")
    audit.add_argument("--cases", metavar="DIR", help="a folder of cases: a rule without one is named")
    sources = commands.add_parser("sources", help="where every sum and formula comes from, and how sure it is")
    sources.add_argument("formula", metavar="NAME", nargs="?", help="a ledger, figure or formula; all without it")
    for command in commands.choices.values():
        _folders(command, main=False)
    return top


def _proposing(commands: _SubParsersAction[_Parser]) -> None:
    """What searches: nothing is changed unless it is told to take what was found."""
    fix = commands.add_parser("fix", help="ways out of what is broken; with THING of that, or to let an option in")
    fix.description = (
        "Without --take nothing is changed, and the exit code is that of check. With --take it is 0 when the way was "
        "taken and 1 when there is no such way."
    )
    fix.add_argument("file", metavar="FILE", help=_FILE)
    fix.add_argument("thing", metavar="THING", nargs="?", help="an option, a ledger, or a rule in brackets from check")
    fix.add_argument("--rank", metavar="BY", default="price", help="price, mass, hours or weeks: behind fewest changes")
    fix.add_argument("--take", metavar="N", help="take way N, as one step of undo")
    finish = commands.add_parser("finish", help="answers for all that is undecided, shown with their sum")
    finish.description = (
        "Without --take and --to nothing is changed. Exit code: 0 every question has an answer, 1 nothing fits some."
    )
    finish.add_argument("file", metavar="FILE", help=_FILE)
    finish.add_argument("--by", metavar="AIM", default="usual", help="price, mass, weeks or usual; usual without it")
    finish.add_argument("--take", action="store_true", help="take all of it, as one step of undo")
    switch = commands.add_parser("switch", help="what another base van or roof would do to the rest")
    switch.description = "Without --take and --to nothing is changed."
    switch.add_argument("file", metavar="FILE", help=_FILE)
    switch.add_argument("option", metavar="OPTION", help="a base van, a roof, or another answer in place of one")
    switch.add_argument("--take", action="store_true", help="take it with what is proposed, as one step of undo")
    for command in (fix, finish, switch):
        command.add_argument("--to", metavar="OUT", help="write what is taken there and leave FILE as it is")
        command.add_argument("--json", action="store_true", help="for other programs")


def _folders(parser: ArgumentParser, *, main: bool) -> None:
    """The two folders, which may stand before or after the command; only the first place gives a default."""
    default = None if main else SUPPRESS
    parser.add_argument("--jobs", metavar="DIR", default=default, help="the folder of the jobs")
    parser.add_argument("--rules", metavar="DIR", default=default, help="the folder of the rules")
