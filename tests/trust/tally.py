"""What one kind of fault did: how often it was tried, and everything that went wrong, with an example of each."""

from __future__ import annotations

import random
import time
import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

EXAMPLES = 12
"""Told of each sort; all are counted."""


@dataclass(kw_only=True)
class Tally:
    """The line of one kind in the table."""

    kind: str
    tried: int = 0
    lost: int = 0
    """Edits that were acknowledged and are gone, doubled or altered; half a thing taken for whole; a broken law."""
    tracebacks: int = 0
    unclear: int = 0
    """Messages that lack file, place or cure."""
    took_s: float = 0.0
    notes: dict[str, int] = field(default_factory=dict)
    """What was done how often, for the reader of the table."""
    examples: list[str] = field(default_factory=list)
    _told: dict[str, int] = field(default_factory=dict)

    @property
    def good(self) -> bool:
        """Nothing lost and no mistake of the program."""
        return self.lost == 0 and self.tracebacks == 0

    def lose(self, what: str) -> None:
        """Something is gone, doubled, half or altered."""
        self.lost += 1
        self._tell("lost", what)

    def mistake(self, what: str) -> None:
        """The program met a mistake of its own."""
        self.tracebacks += 1
        self._tell("traceback", what)

    def dim(self, what: str) -> None:
        """A message that does not say enough."""
        self.unclear += 1
        self._tell("unclear", what)

    def note(self, what: str, count: int = 1) -> None:
        """Counts something that is worth knowing."""
        self.notes[what] = self.notes.get(what, 0) + count

    def _tell(self, sort: str, what: str) -> None:
        self._told[sort] = self._told.get(sort, 0) + 1
        if self._told[sort] <= EXAMPLES:
            self.examples.append(f"{self.kind}: {sort}: {what}")


@dataclass(kw_only=True)
class Run:
    """What a kind of fault is given: dice, time, a folder of its own, and the tally to write into."""

    tally: Tally
    dice: random.Random
    folder: Path
    ends: float
    """In the count of ``time.monotonic``."""
    small: bool = False
    """A few of each only: for the test of the harness itself."""

    @property
    def more(self) -> bool:
        """True while there is time."""
        return time.monotonic() < self.ends

    def share(self, part: float) -> Run:
        """The same with so much of the time that is left."""
        left = max(0.0, self.ends - time.monotonic())
        return Run(
            tally=self.tally,
            dice=self.dice,
            folder=self.folder,
            ends=time.monotonic() + left * part,
            small=self.small,
        )

    def fresh(self, name: str) -> Path:
        """A folder nobody has used."""
        number = 1
        while (path := self.folder / f"{name}-{number}").exists():
            number += 1
        path.mkdir(parents=True)
        return path

    @contextmanager
    def counted(self, what: str) -> Iterator[None]:
        """One try; any exception that comes out of it is a mistake of the program."""
        self.tally.tried += 1
        try:
            yield
        except Exception:  # noqa: BLE001  that is what is counted
            self.tally.mistake(f"{what}\n{traceback.format_exc(limit=-6)}")
