"""What is wrong with a file, and where: one record per fault, so that all of them can be shown at once."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

from specbuilder.model.origin import Origin
from specbuilder.model.plain_text import hidden_character

from .toml_lines import Path, TomlLines

_LONGEST_QUOTE = 60
_LONGEST_LIST = 12
_SHORTEST_START = 3
_PLAIN_KEY = re.compile(r"[A-Za-z0-9_-]+")


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that must be mended before a file can be used."""

    file: str
    """Path below the folder that was read; the folder itself where the fault is in no single file."""
    line: int
    """Counted from 1; 0: the whole file."""
    path: str
    """Dotted, list items counted from 1: ``option.larchlid-short.hole[2].width_mm``. Empty: the whole file."""
    words: str
    """One sentence with its cure."""

    def __str__(self) -> str:
        place = quotable(self.file, 200) + (f":{self.line}" if self.line else "")
        return f"{place}: {self.path}: {self.words}" if self.path else f"{place}: {self.words}"


class FaultList:
    """Collects the faults of one reading."""

    def __init__(self) -> None:
        self._found: list[Fault] = []

    def __len__(self) -> int:
        return len(self._found)

    def add(self, file: str, words: str, *, line: int = 0, path: str = "") -> None:
        """Notes one fault."""
        self._found.append(Fault(file, line, path, words))

    def in_order(self) -> tuple[Fault, ...]:
        """All of them by file and line, each once."""
        return tuple(sorted(dict.fromkeys(self._found), key=lambda fault: (fault.file, fault.line)))


@dataclass(frozen=True, slots=True)
class Source:
    """A file under reading."""

    file: str
    lines: TomlLines
    faults: FaultList = field(repr=False)

    @property
    def top(self) -> Spot:
        """The file's outermost table."""
        return Spot(self, ())


class Spot(NamedTuple):
    """One place in a file under reading: knows its line and takes the faults found there.

    A tuple and no dataclass because one is made for every value of every file, and a tuple is made three times as fast.
    """

    source: Source
    path: Path

    def at(self, *keys: str | int) -> Spot:
        """The spot this many keys or items further in."""
        return Spot(self.source, self.path + keys)

    def fault(self, words: str) -> None:
        """Notes what is wrong here."""
        self.source.faults.add(self.source.file, words, line=self.source.lines.line(self.path), path=dotted(self.path))

    @property
    def origin(self) -> Origin:
        """File and line of the table at this spot."""
        return Origin(self.source.file, self.source.lines.head_line(self.path))


def dotted(path: Path) -> str:
    """The path as it is told to people: keys with dots between, items of lists counted from 1."""
    told = ""
    for key in path:
        if isinstance(key, int):
            told += f"[{key + 1}]"
        else:
            told += ("." if told else "") + (quotable(key) if _PLAIN_KEY.fullmatch(key) else f'"{quotable(key)}"')
    return told


def quotable(text: str, longest: int = _LONGEST_QUOTE) -> str:
    """Text from a file, safe to show: cut to a length, and what cannot be printed written out as ``U+001B``."""
    cut = text if len(text) <= longest else text[: longest - 3] + "..."
    return "".join(each if each.isprintable() else f"U+{ord(each):04X}" for each in cut)


def hidden_lines(text: str) -> Iterator[tuple[int, str]]:
    """The lines of a TOML file that hold such characters, with what they hold; tabs are a file's own.

    In plain ASCII there are none: TOML itself refuses control characters.
    """
    if text.isascii():
        return
    for number, line in enumerate(text.split("\n"), 1):
        hidden = None if line.isprintable() else hidden_character(line.replace("\t", " "))
        if hidden is not None:
            yield number, hidden


def nearest(word: str, words: Iterable[str]) -> str | None:
    """The word that was probably meant: one much like it, or one it is the start of; None when nothing is near."""
    if len(word) > _LONGEST_QUOTE:
        return None
    known = list(words)
    near = difflib.get_close_matches(word, known, n=1, cutoff=0.6)
    near += [longer for longer in known if len(word) >= _SHORTEST_START and longer.startswith(word)]
    return near[0] if near else None


def meant(word: str, words: Iterable[str], cure: str) -> str:
    """The end of a sentence about an unknown word: the nearest one, else the few there are, else ``cure``."""
    known = tuple(words)
    near = nearest(word, known)
    if near is not None:
        return f'did you mean "{near}"?'
    if len(known) == 1:
        return f'the only one is "{known[0]}".'
    return f"use one of {', '.join(known)}." if 1 < len(known) <= _LONGEST_LIST else cure
