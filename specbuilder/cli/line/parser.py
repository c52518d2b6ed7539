"""The parser of the command line, made from the table of commands."""

from __future__ import annotations

import sys
from argparse import Action, ArgumentParser, _SubParsersAction
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, version
from typing import TYPE_CHECKING, Any, NoReturn

from specbuilder.cli import output
from specbuilder.cli.output import EXITS, Exit, StopError

from .command import Command
from .flags import folders, screen_flags
from .near import nearest
from .shapes import SHAPES
from .table import COMMANDS, GROUPS

if TYPE_CHECKING:
    from _typeshed import SupportsWrite

PROGRAM = "specbuilder"
_LONGEST = 300
"""Of what is repeated of a command line."""


class Parser(ArgumentParser):
    """Cleans what it prints, since it repeats what was typed; no abbreviations, so that a new option breaks nobody."""

    def __init__(self, **settings: object) -> None:
        super().__init__(allow_abbrev=False, **settings)  # type: ignore[arg-type]
        self.color = False  # newer Pythons paint their help where they find a terminal

    def _print_message(self, message: str, file: SupportsWrite[str] | None = None) -> None:
        if message:
            write = output.answer if file in (None, sys.stdout) else output.message
            write(message.rstrip("\n").split("\n"))

    def format_usage(self) -> str:
        """The usage on one line, however wide the terminal is."""
        return " ".join(super().format_usage().split()) + "\n"

    def format_help(self) -> str:
        """A line for each thing it takes, that reads well aloud: no columns."""
        return "\n".join(_command_help(self))

    def error(self, message: str) -> NoReturn:
        """Says what was wrong with the command line and where help is."""
        told = message if len(message) <= _LONGEST else f"{message[: _LONGEST - 3]}..."
        raise StopError(Exit.UNUSABLE, f"{told}.", self.format_usage().rstrip(), f"Help: {self.prog} --help")


class _Top(Parser):
    """The program as a whole: its help lists the commands by groups, a line each, that reads well aloud."""

    def format_help(self) -> str:
        return "\n".join(_help(self))

    def _check_value(self, action: Action, value: Any) -> None:
        """Where a command was mistyped, the ones most like it are named."""
        if not isinstance(action, _SubParsersAction) or value in COMMANDS:
            super()._check_value(action, value)
            return
        near = nearest(value, COMMANDS)
        meant = f" Did you mean {near}?" if near else ""
        raise StopError(
            Exit.UNUSABLE,
            f'There is no command "{value[:_LONGEST]}".{meant}',
            f"Help: {PROGRAM} --help lists them all.",
        )


def parser() -> Parser:
    """The whole command line."""
    top = _Top(
        prog=PROGRAM,
        usage=f"{PROGRAM} [--jobs DIR] [--rules DIR] [--counter NAME] [--ascii] [--keys FILE] [--light] [COMMAND ...]",
        description="Counter program for a campervan workshop. Without a command it opens the counter screens.",
    )
    screen_flags(top)
    top.add_argument("--version", action="version", version=f"{PROGRAM} {version_text()}", help="which version this is")
    commands = top.add_subparsers(dest="command", metavar="COMMAND", parser_class=Parser, prog=PROGRAM)
    for command in COMMANDS.values():
        _add(commands, command)
    return top


def version_text() -> str:
    """The version of the package, which stands in its metadata and nowhere else."""
    try:
        return version(PROGRAM)
    except PackageNotFoundError:
        return "of a folder that was not installed"


def _add(commands: _SubParsersAction[Parser], command: Command) -> None:
    added = commands.add_parser(command.name, help=command.says)
    added.description = f"{command.says[0].upper()}{command.says[1:]}. {command.told}".strip()
    example = f"Example: {PROGRAM} {command.name} {command.example}".rstrip()
    added.epilog = "\n".join(filter(None, (example, SHAPES.get(command.name))))
    command.arguments(added)
    folders(added, main=False)


def _command_help(of: Parser) -> Iterator[str]:
    yield of.format_usage().rstrip("\n")
    yield ""
    yield of.description or ""
    yield ""
    yield from (f"  {action.metavar}: {action.help}" for action in of._actions if not action.option_strings)
    yield from _flags(of)
    yield ""
    yield of.epilog or ""


def _flags(of: Parser) -> Iterator[str]:
    for action in of._actions:  # argparse has no other list of what it takes
        if action.option_strings:
            taken = f" {action.metavar}" if action.metavar else ""
            told = "this help" if "--help" in action.option_strings else action.help
            yield f"  {', '.join(action.option_strings)}{taken}: {told}"


def _help(top: Parser) -> Iterator[str]:
    yield top.format_usage().rstrip("\n")
    yield ""
    yield top.description or ""
    yield f"{PROGRAM} COMMAND --help says what a command takes, with an example."
    for group in GROUPS:
        yield ""
        yield f"{group.title}:"
        yield from (f"  {command.name}: {command.says}" for command in group.commands)
    yield ""
    yield "Before a command:"
    yield from _flags(top)
    yield ""
    yield "Exit codes:"
    yield from (f"  {code.value}: {words}" for code, words in EXITS.items())
