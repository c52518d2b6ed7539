"""The cheapest completion: of all builds that keep what is held, one of the least cost, and whether that is proved.

This is the one door between the rest and the search (``descent``): another engine could stand behind it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from specbuilder.reasoning.budget import ENDLESS, Budget, Spent
from specbuilder.reasoning.builds import Build
from specbuilder.reasoning.descent import Descent, Ground, Judge
from specbuilder.reasoning.reasoner import Reasoner


@dataclass(frozen=True, slots=True, kw_only=True)
class Completion:
    """The best build found, and what is known about better ones."""

    build: Build | None
    """None: none was found."""
    cost: int | None
    """What the build costs."""
    floor: int
    """No build that keeps what is held costs less."""
    is_proved: bool
    """With a build: none is cheaper. Without: there is none, or none that passes the judge."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SmallestWorst:
    """A build whose greatest single cost is the least, and of those the cheapest by a second cost."""

    build: Build | None
    """None: none was found."""
    worst: int | None
    """The greatest of the costs of its true literals; nought when none of them costs."""
    cost: int | None
    """What it costs by the second costs."""
    is_proved: bool
    """``worst`` is the least there is, and ``cost`` the least of those with it; without a build: there is none."""


class Completer:
    """Finishes builds of the problem of a reasoner."""

    def __init__(self, reasoner: Reasoner) -> None:
        """What all questions share is built by ``prepare``, or with the first of them."""
        self._reasoner = reasoner
        self._ground: Ground | None = None

    def prepare(self) -> Ground:
        """Build what all questions share, ahead of the first."""
        if self._ground is None:
            self._ground = Ground(self._reasoner.problem)
        return self._ground

    def best(
        self,
        held: Sequence[int],
        costs: Mapping[int, int],
        *,
        budget: Budget | None = None,
        judge: Judge | None = None,
    ) -> Completion:
        """The cheapest build that keeps ``held``. ``costs``: by literal, whole numbers of either sign.

        When the budget runs out, the best build so far and what is proved by then. The same question has the same
        answer, whatever was asked before.
        """
        search = Descent(self.prepare(), held, costs, budget or ENDLESS, judge)
        try:
            search.run()
            is_proved = True
        except Spent:
            is_proved = search.best is not None and search.floor >= search.best[0]
        cost, build = search.best or (None, None)
        floor = cost if is_proved and cost is not None else search.floor
        return Completion(build=build, cost=cost, floor=floor, is_proved=is_proved)

    def smallest_worst(
        self,
        held: Sequence[int],
        costs: Mapping[int, int],
        then: Mapping[int, int],
        *,
        budget: Budget | None = None,
        judge: Judge | None = None,
    ) -> SmallestWorst:
        """Keep ``held``; make the greatest of ``costs`` (weeks, say) as small as it can be, then the sum of ``then``.

        Costs of nought or below count as nought.
        """
        purse = budget or ENDLESS
        steps = sorted({0, *(cost for cost in costs.values() if cost > 0)})
        try:
            first = self._first_step(held, costs, steps, purse)
        except Spent:
            return SmallestWorst(build=None, worst=None, cost=None, is_proved=False)
        for worst in steps[first:]:
            found = self.best(_below(held, costs, worst), then, budget=purse, judge=judge)
            if found.build is not None or not found.is_proved:
                worst_of_it = None if found.build is None else worst
                return SmallestWorst(build=found.build, worst=worst_of_it, cost=found.cost, is_proved=found.is_proved)
            # nothing with so small a worst passes the judge: the next step
        return SmallestWorst(build=None, worst=None, cost=None, is_proved=True)

    def _first_step(self, held: Sequence[int], costs: Mapping[int, int], steps: Sequence[int], budget: Budget) -> int:
        """The place of the least step at which something can stand, by halving; the number of steps: nothing can."""
        low, high = 0, len(steps)
        while low < high:
            middle = (low + high) // 2
            if isinstance(self._reasoner.consistent(_below(held, costs, steps[middle]), budget), bytes):
                high = middle
            else:
                low = middle + 1
        return low


def _below(held: Sequence[int], costs: Mapping[int, int], worst: int) -> list[int]:
    """What is held, and that nothing is true that costs more than ``worst``."""
    return [*held, *(-lit for lit, cost in costs.items() if cost > worst)]
