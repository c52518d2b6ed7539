"""The names of a job's files in the jobs folder. ``0147-r2`` is job 0147 in its second revision."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path

_NAME = re.compile(r"(\d{4,9}[b-z]?)-r([1-9]\d{0,4})\.(toml|journal)", re.ASCII)
_NUMBER = re.compile(r"(\d{4,9})([b-z]?)", re.ASCII)


@dataclass(frozen=True, slots=True, order=True)
class JobFiles:
    """Where one revision of a job stands."""

    number: str
    """Digits, so that it can be a name on any system, and for a variant of a job a letter: ``0147b``."""
    revision: int
    folder: Path = field(hash=False)
    """Left out of the hash, which is asked for thousands of jobs at once."""

    @property
    def spec_name(self) -> str:
        """Its name without its folder, and so on below."""
        return f"{self._stem}.toml"

    @property
    def journal_name(self) -> str:
        """Of the journal."""
        return f"{self._stem}.journal"

    @property
    def lock_name(self) -> str:
        """Of the lock."""
        return f"{self.number}.lock"

    @property
    def spec(self) -> Path:
        """The file of the spec."""
        return self.folder / self.spec_name

    @property
    def journal(self) -> Path:
        """What was done in this revision, line by line."""
        return self.folder / self.journal_name

    @property
    def yesterday(self) -> Path:
        """The spec as it was last written on an earlier day."""
        return self.folder / f"{self._stem}.yesterday.toml"

    @property
    def lock(self) -> Path:
        """Who has the job open, in whatever revision."""
        return self.folder / self.lock_name

    def aside(self, ending: str) -> Path:
        """A free name for something that is kept although it is no longer used."""
        number = 1
        while (path := self.folder / f"{self._stem}.set-aside-{number}.{ending}").exists():
            number += 1
        return path

    @property
    def _stem(self) -> str:
        return f"{self.number}-r{self.revision}"


def is_job_number(text: str) -> bool:
    """True for four to nine digits, with or without the letter of a variant."""
    return _NUMBER.fullmatch(text) is not None


def main_number(number: str) -> str:
    """The number without the letter of a variant."""
    return number.rstrip("bcdefghijklmnopqrstuvwxyz")


def full_number(text: str) -> str:
    """A number as it was typed, ``147b``, with its leading noughts; any other text as it is."""
    typed = re.fullmatch(r"(\d{1,9})([b-z]?)", text, re.ASCII)
    return f"{typed[1]:0>4}{typed[2]}" if typed else text


def job_files(folder: Path, names: Iterable[str]) -> tuple[JobFiles, ...]:
    """Every revision of every job among these names of files, in order; all other files are none of ours."""
    found = {JobFiles(match[1], int(match[2]), folder) for name in names if (match := _NAME.fullmatch(name))}
    return tuple(sorted(found, key=lambda files: (int(main_number(files.number)), files.number, files.revision)))
