"""The words a catalogue defines itself (ids, tags, zones, brief keys), against which its other words are held."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from specbuilder.model.kinds import AnswerType

from .faults import meant, quotable


@dataclass(frozen=True, slots=True)
class Names:
    """All words of one kind."""

    lack: str
    """What is said of a missing one, before the word itself: ``there is no option``."""
    words: frozenset[str]
    where: str
    """Where such words are made, for the cure: ``rules/options/``."""
    complete: bool = True
    """False when a file could not be read: a word that is missing here may stand in that file, so none is refused."""

    def unknown(self, word: str) -> str | None:
        """What to say of a word that nothing defines; None for a good one."""
        if word in self.words or not self.complete:
            return None
        cure = f"add it in {self.where} or correct the word."
        return f'{self.lack} "{quotable(word)}"; {meant(word, sorted(self.words), cure)}'


@dataclass(frozen=True, slots=True)
class Asked:
    """What an expression must know of a key of the brief or the job."""

    type: AnswerType
    values: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Vocabulary:
    """Every word other words may refer to."""

    options: Names
    vans: Names
    groups: Names
    ledgers: Names
    cautions: Names
    papers: Names
    steps: Names
    """Steps of the build, ``B0`` and on."""
    hold_points: Names
    questions: Names
    tags: Names
    """Given by an option or a van; ``exhaust@side`` stands here as ``exhaust`` and as ``exhaust@left`` and so on."""
    zones: Names
    """Claimed by an option or a van, with ``@side`` spelt out likewise."""
    brief: Mapping[str, Asked | None]
    """Lines of the brief; None where the line itself is faulty."""
    job: Mapping[str, Asked | None]
    """Lines of the job state."""
    complete: bool
    """False when a file could not be read."""


_ANY = Names("", frozenset(), "", complete=False)

ANY_WORD = Vocabulary(
    options=_ANY,
    vans=_ANY,
    groups=_ANY,
    ledgers=_ANY,
    cautions=_ANY,
    papers=_ANY,
    steps=_ANY,
    hold_points=_ANY,
    questions=_ANY,
    tags=_ANY,
    zones=_ANY,
    brief=MappingProxyType({}),
    job=MappingProxyType({}),
    complete=False,
)
"""Refuses no word: for text that is read without its catalogue."""
