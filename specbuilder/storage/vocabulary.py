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

    kind: str
    """With its article, for sentences: ``an option``."""
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
        return f'"{quotable(word)}" is not {self.kind} of this catalogue; {meant(word, self.words, cure)}'


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


def _any(kind: str) -> Names:
    return Names(kind, frozenset(), "", complete=False)


ANY_WORD = Vocabulary(
    options=_any("an option"),
    vans=_any("a base van"),
    groups=_any("a group"),
    ledgers=_any("a ledger"),
    cautions=_any("a caution"),
    papers=_any("a paper"),
    steps=_any("a step of the build"),
    hold_points=_any("a hold point"),
    questions=_any("a question"),
    tags=_any("a tag"),
    zones=_any("a zone"),
    brief=MappingProxyType({}),
    job=MappingProxyType({}),
    complete=False,
)
"""Refuses no word: for text that is read without its catalogue."""
