"""Hitting sets, cheapest first: choose elements so that of every named set one at least is chosen.

The sets are not known beforehand. A question is asked about what is chosen so far, and the answer is either "enough" or
a set of which nothing is chosen yet. Sets are kept, so a question is only asked when no known set answers it.

The search is best-first over partial choices. A set is branched on so that no choice is met twice: choose its first
element; or never that one and choose its second; and so on. Known sets that share no element raise the floor of what a
partial choice will cost in the end. Everything is a whole number with one bit an element.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush

Elements = int
"""A set of elements: bit i is set when element i is in it."""


def elements_of(mask: Elements) -> tuple[int, ...]:
    """The elements of a set in rising order."""
    found: list[int] = []
    while mask:
        low = mask & -mask
        found.append(low.bit_length() - 1)
        mask ^= low
    return tuple(found)


@dataclass(frozen=True, slots=True, order=True)
class _Partial:
    """A partial choice in the queue; compared field by field, so equal costs always come in the same order."""

    floor: int
    """The least that any choice grown from it costs."""
    size: int
    elements: tuple[int, ...]
    chosen: Elements
    barred: Elements


class HittingSets:
    """The minimal hitting sets in the order of cost, then of size, then of their elements; that order never varies."""

    def __init__(
        self, costs: Sequence[int], ask: Callable[[Elements], Elements | None], pay: Callable[[], None]
    ) -> None:
        """``costs``: of every element, nought or more (ValueError). ``ask(chosen)``: None when all is hit, else a set
        without a chosen element; an empty one when nothing can ever be enough. ``pay`` is called before every step.
        What the two raise passes through, and the search may be taken up again afterwards.
        """
        if any(cost < 0 for cost in costs):
            raise ValueError("a cost of a hitting set is below nought")
        self._costs = costs
        self._ask = ask
        self._pay = pay
        self._sets: list[Elements] = []
        self._found: list[Elements] = []
        self._queue = [_Partial(0, 0, (), 0, 0)]
        self._last = self._queue[0]

    @property
    def floor(self) -> int | None:
        """No set still to come costs less; None when none can come any more."""
        return self._queue[0].floor if self._queue else None

    def reject(self, needed: Elements) -> None:
        """The set last given is not enough after all: one of ``needed``, none of which it holds, must be chosen too."""
        self._found.remove(self._last.chosen)
        self._sets.append(needed)
        self._push(self.cost(self._last.chosen), self._last.chosen, self._last.barred)

    def cost(self, chosen: Elements) -> int:
        """The costs of some elements, summed."""
        return sum(self._costs[element] for element in elements_of(chosen))

    def __iter__(self) -> Iterator[Elements]:
        while self._queue:
            self._pay()
            found = self._step()
            if found is not None:
                yield found

    def _step(self) -> Elements | None:
        partial = self._queue[0]
        chosen, barred = partial.chosen, partial.barred
        if any(chosen & found == found for found in self._found):
            heappop(self._queue)
            return None
        cost = self.cost(chosen)
        known = self._still_needed(cost, chosen, barred)
        if known is None or known > partial.floor:
            heappop(self._queue)
            if known is not None:
                heappush(self._queue, _Partial(known, partial.size, partial.elements, chosen, barred))
            return None
        needed: Elements | None = next((some for some in self._sets if not some & chosen), None)
        if needed is None:
            needed = self._ask(chosen)
            if needed is None:
                heappop(self._queue)
                self._found.append(chosen)
                self._last = partial
                return chosen
            self._sets.append(needed)
        heappop(self._queue)
        for element in elements_of(needed & ~barred):
            self._push(cost + self._costs[element], chosen | 1 << element, barred)
            barred |= 1 << element
        return None

    def _push(self, cost: int, chosen: Elements, barred: Elements) -> None:
        floor = self._still_needed(cost, chosen, barred)
        if floor is not None:
            heappush(self._queue, _Partial(floor, chosen.bit_count(), elements_of(chosen), chosen, barred))

    def _still_needed(self, cost: int, chosen: Elements, barred: Elements) -> int | None:
        """A floor of the final cost: what is paid, and the cheapest element of known sets that share none.

        None: some known set cannot be hit any more.
        """
        costs, counted = self._costs, 0
        for some in self._sets:
            if some & chosen:
                continue
            some &= ~barred
            if not some:
                return None
            if not some & counted:
                counted |= some
                cost += min(costs[element] for element in elements_of(some))
        return cost
