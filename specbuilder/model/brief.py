"""The brief: the eleven questions, their lines, and the answers given so far."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TypeAlias

from .ids import BriefKey
from .kinds import AnswerType
from .origin import NOWHERE, Origin
from .rules import ALWAYS, NEVER, AnyOf

Answer: TypeAlias = int | float | str | tuple[str, ...] | tuple[int, ...]
"""A whole number, a decimal, one word, a set of words in the order given, or ages in years."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One of the eleven questions; its lines are the keys of the brief."""

    number: int
    asks: str
    """Short heading, e.g. ``Who travels``."""
    group: str | None = None
    """Id of the option group that answers this question instead of brief keys (question 3)."""
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class BriefLine:
    """One key of the brief (``question`` set) or of the job state (``question`` None)."""

    key: BriefKey
    ask: str
    """The sentence the customer hears."""
    type: AnswerType
    question: int | None = None
    least: float = 0
    most: float = 0
    """Bounds of a number; for ages, of each age."""
    values: tuple[str, ...] = ()
    """The words a ``one of`` or ``list`` answer may take."""
    unit: str = ""
    assumed: Answer | None = None
    """Used, and shown as an assumption, while nobody has answered. None: stays unknown."""
    assumed_unless: AnyOf = NEVER
    """Where this holds nothing is assumed: nobody may take a mild night for granted who sleeps in it in winter."""
    asked_when: AnyOf = ALWAYS
    """The line opens only when this holds; closed lines take ``closed`` as settled."""
    closed: Answer | None = None
    """What the answer is when the line is not asked at all (no children: none under 135 cm)."""
    unnamed: Answer | None = None
    """The answer that means *not named* (ceiling 0, barrier 0), shown in words."""
    origin: Origin = NOWHERE


def _no_answers() -> Mapping[BriefKey, Answer]:
    return MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Answers:
    """What was said, by key. A key that is missing is *not known yet*."""

    given: Mapping[BriefKey, Answer] = field(default_factory=_no_answers)

    def get(self, key: BriefKey) -> Answer | None:
        """The answer, or None while it is not known."""
        return self.given.get(key)

    def with_answer(self, key: BriefKey, value: Answer | None) -> Answers:
        """A copy with this answer; None makes it unknown again."""
        given = {k: v for k, v in self.given.items() if k != key}
        if value is not None:
            given[key] = value
        return Answers(MappingProxyType(given))
