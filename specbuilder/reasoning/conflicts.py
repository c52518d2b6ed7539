"""Minimal conflicts: parts of what is held that cannot stand together, and of which nothing can be left out.

A conflict is not inside any part of ``held`` that can stand; so it has a member outside each greatest such part. That
makes the minimal conflicts the minimal hitting sets of what those parts leave out (the other side of the duality that
``repairs`` uses), and the search gives the shortest first. A set that still can stand is grown to a greatest one, and
what that leaves out must be hit from then on.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specbuilder.reasoning.budget import ENDLESS, Budget, Spent
from specbuilder.reasoning.builds import Build
from specbuilder.reasoning.hitting import Elements, HittingSets, elements_of
from specbuilder.reasoning.reasoner import Reasoner


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflicts:
    """Minimal conflicts among what is held."""

    found: tuple[tuple[int, ...], ...]
    """Each in the order of what is held; the shortest first, of the same length those taken earlier. One that is empty:
    there is no build at all, whatever is held."""
    is_complete: bool
    """Proved that there are no others. False also when as many were found as were asked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entangled:
    """What takes part in a conflict, and what does not."""

    inside: tuple[int, ...]
    """In some minimal conflict; in the order of what is held."""
    outside: tuple[int, ...]
    """The rest; when not ``is_complete``, some of it may take part in a conflict all the same."""
    is_complete: bool


def minimal_conflicts(
    reasoner: Reasoner, held: Sequence[int], most: int, budget: Budget | None = None, given: Sequence[int] = ()
) -> Conflicts:
    """Up to ``most`` minimal conflicts among ``held``, the shortest first; none when it can stand.

    ``given`` holds whatever is left out, and is not named in the conflicts. The list and its order do not depend on
    what was asked before, as far as the budget reaches.
    """
    search = _Search(reasoner, held, given, budget or ENDLESS)
    found: list[tuple[int, ...]] = []
    try:
        for conflict in search:
            found.append(conflict)
            if len(found) >= most:
                return Conflicts(found=tuple(found), is_complete=False)
    except Spent:
        return Conflicts(found=tuple(found), is_complete=False)
    return Conflicts(found=tuple(found), is_complete=True)


def in_conflict(
    reasoner: Reasoner, held: Sequence[int], budget: Budget | None = None, given: Sequence[int] = ()
) -> Entangled:
    """What of ``held`` takes part in some minimal conflict, and what stands outside all of them."""
    search = _Search(reasoner, held, given, budget or ENDLESS)
    inside: set[int] = set()
    is_complete = True
    try:
        for conflict in search:
            inside.update(conflict)
    except Spent:
        is_complete = False
    distinct = tuple(dict.fromkeys(held))
    return Entangled(
        inside=tuple(lit for lit in distinct if lit in inside),
        outside=tuple(lit for lit in distinct if lit not in inside),
        is_complete=is_complete,
    )


class _Search:
    """The minimal conflicts one by one. Raises Spent."""

    def __init__(self, reasoner: Reasoner, held: Sequence[int], given: Sequence[int], budget: Budget) -> None:
        self._reasoner, self._given, self._budget = reasoner, tuple(given), budget
        self._held = tuple(dict.fromkeys(held))
        self._element = {lit: at for at, lit in enumerate(self._held)}
        self._cores: list[Elements] = []
        self._sets = HittingSets([1] * len(self._held), self._ask, budget.spend)

    def __iter__(self) -> Iterator[tuple[int, ...]]:
        if self._stands((1 << len(self._held)) - 1) is not None:
            return
        for conflict in self._sets:
            yield tuple(self._held[at] for at in elements_of(conflict))

    def _ask(self, chosen: Elements) -> Elements | None:
        """None when what is chosen cannot stand; else what a greatest part around it leaves out."""
        build = self._stands(chosen)
        if build is None:
            return None
        part = chosen | self._kept_by(build)
        for at in range(len(self._held)):
            if not part >> at & 1:
                build = self._stands(part | 1 << at)
                if build is not None:
                    part |= self._kept_by(build)
        return (1 << len(self._held)) - 1 & ~part

    def _stands(self, part: Elements) -> Build | None:
        if any(part & core == core for core in self._cores):
            return None
        self._budget.spend()
        answer = self._reasoner.consistent([*self._given, *(self._held[at] for at in elements_of(part))], self._budget)
        if isinstance(answer, bytes):
            return answer
        self._cores.append(sum(1 << self._element[lit] for lit in answer if lit in self._element))
        return None

    def _kept_by(self, build: Build) -> Elements:
        return sum(1 << at for at, lit in enumerate(self._held) if build[lit])
