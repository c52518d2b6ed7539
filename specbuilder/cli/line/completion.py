"""``completion``: a script for a shell, made from the parser; and the words that may stand where somebody types."""

from __future__ import annotations

from argparse import Action, ArgumentParser, Namespace
from collections.abc import Iterable
from dataclasses import dataclass, field

from specbuilder.cli.output import Exit, StopError

from .offers import Place, offered_for
from .parser import parser
from .scripts import SCRIPTS, commands_of, flags_of

WORDS = "words"
"""In place of a shell: asks for the words themselves, as the scripts do."""
_FOLDERS = ("jobs", "rules")


def completion(arguments: Namespace) -> tuple[str, ...]:
    """The script for the shell that was named, or what may stand in place of the last word typed.

    Raises:
        StopError: there is no script for it.
    """
    if arguments.shell == WORDS:
        return offered(arguments.typed, {name: getattr(arguments, name) for name in _FOLDERS})
    if arguments.shell not in SCRIPTS:
        known = ", ".join(SCRIPTS)
        raise StopError(Exit.UNUSABLE, f'"{arguments.shell[:60]}" is no shell that can be completed for: use {known}.')
    return tuple(SCRIPTS[arguments.shell](parser()).split("\n"))


def offered(typed: list[str], folders: dict[str, str | None]) -> tuple[str, ...]:
    """Every word that may stand where the last one is typed and begins like it."""
    *before, last = typed or [""]
    line = _Line(dict(folders))
    for word in before:
        line.take(word)
    return tuple(dict.fromkeys(word for word in _offered(line, last) if word.startswith(last)))


@dataclass(slots=True)
class _Line:
    """A command line as far as it is typed."""

    folders: dict[str, str | None]
    at: ArgumentParser = field(default_factory=parser)
    waits: Action | None = None
    """A flag whose value comes next."""
    given: list[str] = field(default_factory=list)
    """What stands behind the command and is no flag."""
    lost: bool = False
    """No such command."""

    def take(self, word: str) -> None:
        """One more word is typed."""
        if self.waits is not None:
            if self.waits.dest in _FOLDERS:
                self.folders[self.waits.dest] = word
            self.waits = None
        elif word.startswith("-"):
            flag = next((one for one in self.at._actions if word in one.option_strings), None)
            self.waits = flag if flag is not None and flag.nargs != 0 else None
        elif commands := commands_of(self.at):
            self.at, self.lost = commands.get(word, self.at), word not in commands
        else:
            self.given.append(word)

    @property
    def slot(self) -> Action | None:
        """What the next word that is no flag is for."""
        slots = [one for one in self.at._actions if not one.option_strings]
        if len(self.given) < len(slots):
            return slots[len(self.given)]
        return slots[-1] if slots and slots[-1].nargs in ("*", "+") else None


def _offered(line: _Line, last: str) -> Iterable[str]:
    if line.lost:
        return ()
    if line.waits is not None:
        return _values(line, line.waits, last)
    if last.startswith("-"):
        return flags_of(line.at)
    if commands := commands_of(line.at):
        return commands
    return _values(line, line.slot, last) if line.slot is not None else ()


def _values(line: _Line, action: Action, last: str) -> Iterable[str]:
    place = Place(jobs=line.folders["jobs"], rules=line.folders["rules"], typed=last)
    return offered_for(f"{action.metavar}", place)
