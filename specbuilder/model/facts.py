"""Answers as the reasoning sees them: given, assumed, or unknown with their range."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from .brief import Answer
from .ids import BriefKey, OptionId
from .record import Undone
from .span import Span


@dataclass(frozen=True, slots=True)
class Weighed:
    """The base van on the scales as it came: empty, nobody in it, its tank counted as in running order."""

    van: OptionId
    front_kg: float
    rear_kg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """What holds for one spec: each key of the catalogue's brief has an answer or is unknown."""

    values: Mapping[BriefKey, Answer]
    """Given, derived or assumed answers; a key that is missing is unknown."""
    assumed: frozenset[BriefKey]
    """Keys whose answer is the catalogue's assumption, not the customer's word."""
    ranges: Mapping[BriefKey, Span]
    """Least and most of every number the brief may hold; widens what an unknown feeds."""
    weighed: Weighed | None = None
    """Both axles of the base van, once weighed: they go before the catalogue's running order."""
    undone: tuple[Undone, ...] = ()
    """Work that signed changes made useless: paid for, and no part of any choice."""

    def get(self, key: str) -> Answer | None:
        """The answer, or None while unknown."""
        return self.values.get(BriefKey(key))

    def number(self, key: str) -> Span:
        """The number as a settled span, or its whole range while unknown.

        Raises:
            KeyError: if the brief has no such number.
        """
        value = self.values.get(BriefKey(key))
        if isinstance(value, int | float):
            return Span(value, value)
        return self.ranges[BriefKey(key)]

    def known(self, key: str) -> bool:
        """True when given, derived or assumed."""
        return BriefKey(key) in self.values
