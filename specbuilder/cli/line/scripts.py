"""The scripts that complete the command line in three shells, made from the parser.

Commands and flags stand in the script itself. What depends on jobs and rules is asked of the program, as
``specbuilder completion words -- WHAT WAS TYPED``, which prints a word a line.
"""

from __future__ import annotations

from argparse import ArgumentParser, _SubParsersAction
from collections.abc import Callable, Mapping
from importlib.resources import files
from types import MappingProxyType

from .table import COMMANDS

PROGRAM = "specbuilder"


def bash(top: ArgumentParser) -> str:
    """For bash."""
    return _made("bash", top).replace("@COMMANDS@", " ".join(commands_of(top))).rstrip("\n")


def zsh(top: ArgumentParser) -> str:
    """For zsh."""
    described = "\n".join(f"        {_quoted(f'{name}:{says}')}" for name, says in _said().items())
    return _made("zsh", top).replace("@DESCRIBED@", described).rstrip("\n")


def fish(top: ArgumentParser) -> str:
    """For fish."""
    lines = [
        f"complete -c specbuilder -n __fish_use_subcommand -a {name} -d {_quoted(says)}"
        for name, says in _said().items()
    ]
    for name, one in commands_of(top).items():
        lines += (
            f"complete -c specbuilder -n '__fish_seen_subcommand_from {name}' -l {flag.removeprefix('--')}"
            for flag in flags_of(one)
        )
    return _script("fish").replace("@LINES@", "\n".join(lines)).rstrip("\n")


SCRIPTS: Mapping[str, Callable[[ArgumentParser], str]] = MappingProxyType({"bash": bash, "zsh": zsh, "fish": fish})


def _script(shell: str) -> str:
    return (files(__package__) / "shells" / f"{PROGRAM}.{shell}").read_text("utf-8")


def _made(shell: str, top: ArgumentParser) -> str:
    """The script with the flags of each command, and with those before a command that take a value."""
    valued = [name for one in top._actions for name in one.option_strings if one.nargs != 0]
    return _script(shell).replace("@CASES@", _cases(top)).replace("@VALUED@", "|".join(valued))


def _cases(top: ArgumentParser) -> str:
    """The flags of each command; of the program where none is typed yet."""
    every = {'""': top, **commands_of(top)}
    return "\n".join(f'        {name}) flags="{" ".join(flags_of(one))}" ;;' for name, one in every.items())


def commands_of(top: ArgumentParser) -> Mapping[str, ArgumentParser]:
    """The commands by their names; none behind a command itself."""
    return next((one.choices for one in top._actions if isinstance(one, _SubParsersAction)), {})


def flags_of(of: ArgumentParser) -> tuple[str, ...]:
    """The long flags it takes."""
    return tuple(name for one in of._actions for name in one.option_strings if name.startswith("--"))


def _said() -> dict[str, str]:
    """Each command with its line of help."""
    return {command.name: command.says for command in COMMANDS.values()}


def _quoted(text: str) -> str:
    """In single quotes, which these shells read alike as long as none is inside."""
    return "'" + text.replace("'", "") + "'"
