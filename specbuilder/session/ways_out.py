"""Ways out: the best few sets of edits that clear findings or let a blocked option in.

What must change hits every conflict between the goal and the choices, so the sets of choices to change come cheapest
first from the reasoner (``reasoning/repairs.py``). For each the edits are tried in the order of their cost, what they
leave wanting is added, and the spec after them is evaluated in full before it counts. See ``reasoning/ALGORITHM.md``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from heapq import heappop, heappush

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.spec import Spec
from specbuilder.model.ways import Goal, LetIn, RankBy, WayOut, WaysOut
from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.repairs import Ending, Repair, Repairs

from .way_goal import Quest, make_quest
from .way_probe import probe
from .way_trial import BIG, Candidate, Trials

SECONDS = 1.0
"""When at least one way is found, the search goes on no longer than this."""
PATIENCE = 4.0
"""The search ends after this whatever it found."""
MANY = 4
"""Of ways with more changes only the cheapest for each set of changed choices is looked for."""
WITHIN = 3
"""Changes up to which everything is looked at once a way is found."""


def ways_out(
    catalogue: Catalogue,
    spec: Spec,
    goal: Goal,
    rank_by: RankBy = RankBy.PRICE,
    most: int = 3,
    stop: Callable[[], bool] | None = None,
) -> Iterator[WaysOut]:
    """The ways found so far, again and again, each list longer than the one before; the last is ``finished``.

    Fewest changes first, then by cost. The base van is changed only where nothing else is a way. Every way was
    evaluated in full: it reaches the goal and breaks nothing more at STOP. One that only adds changes to another is
    left out unless less is broken or to be signed after it.
    """
    if isinstance(goal, LetIn) and goal.option not in catalogue.options:
        yield WaysOut(goal=goal, rank_by=rank_by, finished=True, complete=True)
        return
    yield from search(make_quest(catalogue, spec, goal), rank_by, most, stop)


def search(quest: Quest, rank_by: RankBy, most: int, stop: Callable[[], bool] | None) -> Iterator[WaysOut]:
    """The ways of a quest, as ``ways_out`` gives them."""
    yield from _Search(quest, rank_by, most, stop).run()


def is_padded(way: WayOut, known: WayOut) -> bool:
    """Whether a way is another one with changes that no goal asked for.

    More changes are worth it only where they leave less to be broken or signed: no more of any kind, and fewer in all.
    """
    if not set(known.edits) < set(way.edits):
        return False
    clears, breaks = set(way.clears), set(way.breaks)
    better = len(clears) - len(breaks) > len(known.clears) - len(known.breaks)
    return not (better and clears.issuperset(known.clears) and breaks.issubset(known.breaks))


class _Search:
    """One search, in two phases: with the base van as it is, then with another."""

    def __init__(self, quest: Quest, rank_by: RankBy, most: int, stop: Callable[[], bool] | None) -> None:
        self._quest, self._rank_by, self._most, self._stop = quest, rank_by, most, stop
        self._trials = Trials(quest, rank_by, self._is_over)
        self._short, self._long = Budget(seconds=SECONDS), Budget(seconds=PATIENCE)
        self._ways: list[WayOut] = []
        self._within = 0
        self._waited = 0
        self._found = False
        self._complete = True

    def run(self) -> Iterator[WaysOut]:
        if self._quest.hopeless and not self._quest.instead:
            yield self._list(finished=True)
            return
        if self._quest.touching:
            yield from self._probed()
            return
        for with_van in (False, True):
            if with_van and (self._ways or not self._quest.can_change_van):
                break
            for _ in self._phase(with_van):
                yield self._list(finished=False)
        yield self._list(finished=True)

    def _probed(self) -> Iterator[WaysOut]:
        """A figure that no search holds: what touches it is tried one by one, and the best of it two by two."""
        self._complete = False
        found = sorted(probe(self._quest, self._trials, self._is_over), key=lambda candidate: candidate.key)
        for candidate in found:
            way = self._trials.way(candidate)
            if self._is_another(way):
                self._ways.append(way)
                yield self._list(finished=False)
            if len(self._ways) == self._most:
                break
        yield self._list(finished=True)

    def _is_another(self, way: WayOut) -> bool:
        return all(way.spec.choices != known.spec.choices and not is_padded(way, known) for known in self._ways)

    def _list(self, *, finished: bool) -> WaysOut:
        return WaysOut(
            goal=self._quest.goal,
            rank_by=self._rank_by,
            ways=tuple(self._ways),
            within=self._within,
            finished=finished,
            complete=finished and self._complete and not self._trials.was_cut,
        )

    def _phase(self, with_van: bool) -> Iterator[None]:
        """Yields after each way that is added."""
        self._quest.phase = with_van
        waiting: list[tuple[int, int, Candidate]] = []
        budget = Budget(cancelled=self._is_over)
        sets = Repairs(
            self._quest.machine.reasoner,
            [*self._quest.soft(), *self._quest.absent, *self._quest.signs],
            self._trials.weights(),
            given=self._quest.given(with_van),
            budget=budget,
            judge=lambda repair: self._judge(repair, waiting),
        )
        if not with_van:
            for candidate in self._trials.instead():
                self._wait(waiting, candidate)
        more = True
        while more and len(self._ways) < self._most:
            with self._quest.machine.lock:
                more = next(sets, None) is not None
            floor = sets.floor if more else None
            yield from self._ripe(waiting, floor)
            if floor is not None:
                self._within = max(self._within, floor // BIG - 1)
                if self._ways and floor >= (max(WITHIN, len(self._ways[0].edits)) + 1) * BIG:
                    return
        if not more and sets.ending is not Ending.NONE_LEFT:
            self._complete = False
        elif not more:
            self._within = max(self._within, WITHIN)

    def _is_over(self) -> bool:
        if self._stop is not None and self._stop():
            return True
        return self._long.is_spent() or (self._found and self._short.is_spent())

    def _judge(self, repair: Repair, waiting: list[tuple[int, int, Candidate]]) -> tuple[int, ...] | None:
        """Try what could be done with the dropped choices until one way holds; the rest waits its turn."""
        found = False
        if self._is_over():
            return ()
        for candidate in self._trials.candidates(repair):
            if found or self._trials.holds(candidate):
                found = self._found = True
                self._wait(waiting, candidate)
                if len(candidate.edits) > MANY:
                    self._complete = False
                    break
            if self._is_over():
                self._complete = False
                break
        return None if found else ()

    def _wait(self, waiting: list[tuple[int, int, Candidate]], candidate: Candidate) -> None:
        """Of the same rank, what was found first goes first."""
        self._waited += 1
        heappush(waiting, (candidate.key, self._waited, candidate))

    def _ripe(self, waiting: list[tuple[int, int, Candidate]], floor: int | None) -> Iterator[None]:
        """Ways that nothing still to come goes before."""
        while waiting and len(self._ways) < self._most:
            if floor is not None and waiting[0][0] > floor - self._trials.slack:
                return
            key, _, candidate = heappop(waiting)
            if not self._trials.holds(candidate):
                continue
            if candidate.key > key:  # it ranks lower than it seemed
                self._wait(waiting, candidate)
            else:
                way = self._trials.way(candidate)
                if self._is_another(way):
                    self._ways.append(way)
                    yield
