"""Repairs: the cheapest sets of held literals to drop so that the rest can stand.

What must be dropped hits every conflict among what is held (Reiter): so the repairs are the minimal hitting sets of the
conflicts, and the conflicts come one by one as cores of the reasoner, whenever a drop turns out not to be enough.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum, auto

from specbuilder.reasoning.budget import ENDLESS, Budget, Spent
from specbuilder.reasoning.builds import Build
from specbuilder.reasoning.hitting import Elements, HittingSets, elements_of
from specbuilder.reasoning.reasoner import Reasoner


@dataclass(frozen=True, slots=True, kw_only=True)
class Repair:
    """One way to make peace by dropping."""

    dropped: tuple[int, ...]
    """In the order of what is held; nothing of it can be kept beside the rest. Empty: nothing was wrong."""
    cost: int
    """The weights of what is dropped, summed."""
    build: Build
    """A build that keeps all the rest."""


class Ending(Enum):
    """Why no further repair comes."""

    STILL_GOING = auto()
    NONE_LEFT = auto()
    """Proved: there are no others."""
    SPENT = auto()
    """The budget ran out: there may be others. Those given are the cheapest all the same."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundRepairs:
    """The first few repairs."""

    ways: tuple[Repair, ...]
    """The cheapest first; of the same cost those that drop fewer first, then those that keep what was taken earlier."""
    ending: Ending


Judge = Callable[[Repair], Collection[int] | None]
"""A check from outside. None: the repair is good. Otherwise held literals that may not be kept together, as a lesson:
every repair still to come drops one of them. An empty collection, or one that names something dropped: only that this
very set of drops is not enough."""


class Repairs:
    """The repairs one by one, the cheapest first: iterate, and stop when there are enough.

    The same in the same order, whatever was asked of the reasoner before. After the budget ran out the search may go
    on: give it a new ``budget``. Do not ask the reasoner something else from inside the judge.
    """

    def __init__(
        self,
        reasoner: Reasoner,
        held: Sequence[int],
        weights: Mapping[int, int] | None = None,
        *,
        given: Sequence[int] = (),
        budget: Budget | None = None,
        judge: Judge | None = None,
    ) -> None:
        """``weights``: of a held literal what dropping it costs, a whole number of nought or more (ValueError); 1 when
        it is not named. ``given``: literals that hold whatever is dropped.
        """
        self.budget = budget or ENDLESS
        self.ending = Ending.STILL_GOING
        self._reasoner, self._given, self._judge = reasoner, tuple(given), judge
        self._held = tuple(dict.fromkeys(held))
        # the elements of the search are the held literals from the last to the first: so that, of equal ways, the one
        # that drops the later choice comes first
        self._elements = self._held[::-1]
        self._element = {lit: at for at, lit in enumerate(self._elements)}
        self._build: Build = b""
        named = weights or {}
        self._sets = HittingSets([named.get(lit, 1) for lit in self._elements], self._ask, self._pay)
        self._ways = iter(self._sets)

    def __iter__(self) -> Iterator[Repair]:
        return self

    @property
    def floor(self) -> int | None:
        """No repair still to come costs less; None when none can come any more."""
        return self._sets.floor

    def __next__(self) -> Repair:
        while True:
            try:
                chosen = next(self._ways, None)
            except Spent:
                # a generator that raised is over; the search itself stands where it was
                self._ways = iter(self._sets)
                self.ending = Ending.SPENT
                raise StopIteration from None
            if chosen is None:
                self.ending = Ending.NONE_LEFT
                raise StopIteration
            self.ending = Ending.STILL_GOING
            way = self._repair(chosen)
            if self._is_good(way, chosen):
                return way

    def _pay(self) -> None:
        self.budget.spend()

    def _ask(self, chosen: Elements) -> Elements | None:
        kept = [lit for at, lit in enumerate(self._elements) if not chosen >> at & 1]
        answer = self._reasoner.consistent([*self._given, *reversed(kept)], self.budget)
        if isinstance(answer, bytes):
            self._build = answer
            return None
        return self._mask(answer)

    def _mask(self, lits: Collection[int]) -> Elements:
        given = frozenset(self._given)
        return sum(1 << self._element[lit] for lit in lits if lit not in given)

    def _repair(self, chosen: Elements) -> Repair:
        dropped = frozenset(self._elements[at] for at in elements_of(chosen))
        return Repair(
            dropped=tuple(lit for lit in self._held if lit in dropped),
            cost=self._sets.cost(chosen),
            build=self._build,
        )

    def _is_good(self, way: Repair, chosen: Elements) -> bool:
        lesson = None if self._judge is None else self._judge(way)
        if lesson is None:
            return True
        needed = self._mask(lesson)
        if not needed or needed & chosen:
            needed = (1 << len(self._elements)) - 1 & ~chosen
        self._sets.reject(needed)
        return False


def repairs(
    reasoner: Reasoner,
    held: Sequence[int],
    weights: Mapping[int, int] | None = None,
    most: int = 3,
    *,
    given: Sequence[int] = (),
    budget: Budget | None = None,
    judge: Judge | None = None,
) -> FoundRepairs:
    """The ``most`` cheapest repairs at once; see :class:`Repairs`."""
    search = Repairs(reasoner, held, weights, given=given, budget=budget, judge=judge)
    ways: list[Repair] = []
    while len(ways) < most:
        way = next(search, None)
        if way is None:
            break
        ways.append(way)
    return FoundRepairs(ways=tuple(ways), ending=search.ending)
