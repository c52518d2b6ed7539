"""A number that may not be settled yet: the least and the most it can become."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Span:
    """All values from ``least`` to ``most``; a settled number has both equal. Unit is the owner's.

    Raises:
        ValueError: if ``least`` is above ``most``.
    """

    least: float
    most: float

    def __post_init__(self) -> None:
        if self.least > self.most:
            raise ValueError(f"span from {self.least} down to {self.most}")

    @property
    def settled(self) -> bool:
        """True when only one value is left."""
        return self.least == self.most

    def __add__(self, other: Span | float) -> Span:
        o = as_span(other)
        return Span(self.least + o.least, self.most + o.most)

    def __sub__(self, other: Span | float) -> Span:
        o = as_span(other)
        return Span(self.least - o.most, self.most - o.least)

    def __mul__(self, factor: float) -> Span:
        a, b = self.least * factor, self.most * factor
        return Span(min(a, b), max(a, b))

    def hull(self, other: Span) -> Span:
        """The smallest span that holds both."""
        return Span(min(self.least, other.least), max(self.most, other.most))


ZERO = Span(0, 0)


def point(value: float) -> Span:
    """A settled number."""
    return Span(value, value)


def as_span(value: Span | float) -> Span:
    """The value itself, or a plain number as a settled span."""
    return value if isinstance(value, Span) else Span(value, value)


def hull(spans: Iterable[Span]) -> Span | None:
    """The smallest span that holds all of them; None when there are none."""
    result: Span | None = None
    for span in spans:
        result = span if result is None else result.hull(span)
    return result
