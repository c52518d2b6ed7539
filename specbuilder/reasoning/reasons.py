"""Reasons: a part of what is held under which a literal cannot be true, and of which nothing can be left out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from specbuilder.reasoning.budget import ENDLESS, Budget
from specbuilder.reasoning.conflicts import minimal_conflicts
from specbuilder.reasoning.engine import Core
from specbuilder.reasoning.reasoner import Reasoner


class NotForbiddenError(ValueError):
    """A reason was asked for something that can be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reasons:
    """Several minimal reasons for the same thing."""

    found: tuple[tuple[int, ...], ...]
    """Each in the order of what is held; the shortest first, of the same length those taken earlier. One that is empty:
    the literal can never be true, whatever is held."""
    is_complete: bool
    """Proved that there are no others. False also when as many were found as were asked for."""


def minimal_reason(reasoner: Reasoner, held: Sequence[int], lit: int, budget: Budget | None = None) -> tuple[int, ...]:
    """The minimal part of ``held`` under which ``lit`` cannot be true, in the order of ``held``.

    Of several, the one that names what was taken earliest: its last member is the one by which, choice after choice,
    the literal first became impossible; the member before it the one by which it first became impossible given that
    last member; and so on. So it is the same whatever was asked before. Why ``lit`` *must* be true: ask for ``-lit``.

    Raises NotForbiddenError when ``lit`` can be true beside ``held``, Spent when the budget runs out.
    """
    search = _Earliest(reasoner, held, lit, budget or ENDLESS)
    return search.run()


def minimal_reasons(
    reasoner: Reasoner, held: Sequence[int], lit: int, most: int, budget: Budget | None = None
) -> Reasons:
    """Up to ``most`` minimal reasons why ``lit`` cannot be true beside ``held``, the shortest first; none when it can.

    Never raises Spent: when the budget runs out, what was found by then.
    """
    conflicts = minimal_conflicts(reasoner, held, most, budget, given=(lit,))
    return Reasons(found=conflicts.found, is_complete=conflicts.is_complete)


class _Earliest:
    """The walk back from the end of what is held. ``needed`` are members found, with the literal in question first."""

    def __init__(self, reasoner: Reasoner, held: Sequence[int], lit: int, budget: Budget) -> None:
        self._reasoner, self._budget = reasoner, budget
        self._held = [other for other in dict.fromkeys(held) if other != lit]
        self._place = {other: at for at, other in enumerate(self._held)}
        self._needed = [lit]

    def run(self) -> tuple[int, ...]:
        core = self._refuted(len(self._held))
        if core is None:
            raise NotForbiddenError(f"{self._needed[0]} can be true beside what is held")
        end = len(self._held)
        while True:
            # nothing from `end` on is needed but what is in `needed`: go on from the last that the core names
            end = max((at for at in map(self._place.get, core) if at is not None and at < end), default=-1)
            if end < 0:
                return tuple(self._needed[:0:-1])
            earlier = self._refuted(end)
            if earlier is None:
                self._needed.append(self._held[end])
            else:
                core = earlier

    def _refuted(self, end: int) -> Core | None:
        """A core of what is needed and of everything held before a place; None when that can stand."""
        self._budget.spend()
        answer = self._reasoner.consistent([*self._needed, *self._held[:end]], self._budget)
        return None if isinstance(answer, bytes) else answer
