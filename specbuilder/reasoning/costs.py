"""What a build costs beyond a proved floor, and how the floor is raised.

Of some literals, each of which still costs something, let one at least be true in every build. Then the least of their
costs is paid in any case: it moves from each of them to the floor. That counts the first true one of them only. For
the second, a *counter*, a literal that is true when two of them are, takes over the cost; and for the third another,
when that one in turn must be true. A limit ties a counter to the literals it counts. Where no two of them can be true,
as inside a pick-one group, no counter is needed.

So at every moment a build costs the floor and the costs left of its true literals at least; and just the floor, when
nothing that still costs is true and no counter is due.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Count:
    """That so many of some literals are true, or more."""

    lits: tuple[int, ...]
    at_least: int

    def limit(self, counter: int) -> tuple[list[tuple[int, int]], int]:
        """Weighted literals and bound of the limit by which too many true literals make the counter true."""
        over = len(self.lits) - self.at_least + 1
        return [(over, -counter), *((1, lit) for lit in self.lits)], len(self.lits)


class Costs:
    """The floor, and what literals cost beyond it."""

    def __init__(self, costs: Mapping[int, int], at_most_one: Sequence[Sequence[int]]) -> None:
        """``costs`` by literal, of either sign; of a variable that costs something either way, the lesser is paid."""
        self.floor = 0
        """No build costs less."""
        self.left: dict[int, int] = {}
        """By literal: what it costs beyond the floor; always above nought."""
        for variable in {abs(lit): None for lit in costs}:
            true, false = costs.get(variable, 0), costs.get(-variable, 0)
            self.floor += min(true, false)
            if true != false:
                self.left[variable if true > false else -variable] = abs(true - false)
        self.due: dict[Count, int] = {}
        """Counters that have no variable yet, and what they will cost."""
        self._sets: dict[int, list[frozenset[int]]] = {}
        for variables in at_most_one:
            together = frozenset(variables)
            for v in variables:
                self._sets.setdefault(v, []).append(together)
        self._counts: dict[int, Count] = {}
        self._counters: dict[Count, int] = {}

    def take_fact(self, lit: int) -> None:
        """A literal is true in every build from now on."""
        self.left.pop(-lit, None)
        if lit in self.left:
            self.raise_floor((lit,))

    def raise_floor(self, some: Sequence[int]) -> None:
        """Of these literals, all with costs left, one at least is true in every build."""
        step = min(self.left[lit] for lit in some)
        self.floor += step
        for lit in some:
            if self.left[lit] == step:
                del self.left[lit]
            else:
                self.left[lit] -= step
            count = self._counts.get(lit)
            if count is not None and count.at_least < len(count.lits):
                self._add(Count(count.lits, count.at_least + 1), step)
        if len(some) > 1 and not self._exclude_each_other(some):
            self._add(Count(tuple(sorted(some)), 2), step)

    def make(self, count: Count, variable: int) -> None:
        """A counter that is due gets its variable."""
        self.left[variable] = self.due.pop(count)
        self._counts[variable] = count
        self._counters[count] = variable

    def _add(self, count: Count, step: int) -> None:
        variable = self._counters.get(count)
        if variable is None:
            self.due[count] = self.due.get(count, 0) + step
        else:
            self.left[variable] = self.left.get(variable, 0) + step

    def _exclude_each_other(self, some: Sequence[int]) -> bool:
        return any(together.issuperset(some) for together in self._sets.get(some[0], ()))
