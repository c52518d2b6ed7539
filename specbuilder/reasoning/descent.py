"""The search for the cheapest build, from above and from below in turn.

From below: suppose of everything that costs that it is false, the dearest first. Where that cannot stand, a core tells
of which literals one must be true, and the floor rises (``costs``). From above: whatever build is met is the best so
far when it is cheaper; only cheaper ones are looked for from then on: limits on the cost say so, and a literal that
costs more than the gap between floor and best is ruled out. The search is over when the two meet, or when nothing
cheaper can stand.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence

from specbuilder.reasoning.budget import Budget, Spent
from specbuilder.reasoning.builds import Build, Cover, Kept, build_of
from specbuilder.reasoning.costs import Costs
from specbuilder.reasoning.engine import Core, Engine
from specbuilder.reasoning.learning import Lessons
from specbuilder.reasoning.patch import Patch
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.wiring import Wiring

Judge = Callable[[Build, int], Collection[int] | None]
"""A check from outside of a build and its cost. None: it is good. Otherwise literals of it that cannot all be true, as
a lesson for every build to come; an empty collection: only that this very build will not do."""

COUNTERS_MAX = 400
STEPS_PER_ROUND = 300
"""How long the first look for something cheaper lasts; each one lasts longer by as much."""


class _Share(Budget):
    """A part of a budget."""

    __slots__ = ("_left", "_whole")

    def __init__(self, whole: Budget, steps: int) -> None:
        super().__init__()
        self._whole, self._left = whole, steps

    def spend(self, steps: int = 1) -> None:
        self._whole.spend(steps)
        self._left -= steps
        if self._left < 0:
            raise ShareSpent


class ShareSpent(Spent):
    """A part of the budget is spent, the whole is not."""


class Ground:
    """What is built once of a problem for all searches: an engine with room for counters."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        roomy = Problem(problem.count + COUNTERS_MAX, problem.clauses, problem.at_most_one, problem.limits)
        # limits restated by their groups see most of what bounds would, and at every step for nothing
        self.engine = Engine(roomy, is_bounded=False)
        self.wiring = Wiring(roomy, self.engine)
        self.near = Kept(0, tuple(self.wiring.sums(build_of(0, roomy.count))))


class Descent:
    """One search: on a copy of the ground's engine, in which what is held are facts."""

    def __init__(
        self, ground: Ground, held: Sequence[int], costs: Mapping[int, int], budget: Budget, judge: Judge | None
    ) -> None:
        problem = ground.problem
        self._count, self._budget, self._judge = problem.count, budget, judge
        self._priced = [(lit, cost) for lit, cost in costs.items() if cost]
        self._engine = ground.engine.copy()
        self._lessons = Lessons(self._engine)
        self._wiring = ground.wiring.copy(self._engine)
        self._spare = iter(range(problem.count + 1, self._engine.count + 1))
        self._costs = Costs(dict(self._priced), problem.at_most_one)
        self._known = 0
        self._near = ground.near
        self._cost_limits: list[int] = []
        self.best: tuple[int, Build] | None = None
        """Cost and build."""
        self._first: tuple[int, Build] | None = None
        self._state(held)

    @property
    def floor(self) -> int:
        """No build costs less."""
        return self._costs.floor if self.best is None else min(self._costs.floor, self.best[0])

    def run(self) -> None:
        """To the proof that nothing is cheaper than ``best``. Raises Spent; ``best`` is then the best so far."""
        if self._engine.dead is not None or self._look() is not None:
            return
        try:
            self._meet()
        except Spent:
            if self.best is None and self._first is not None and self._refused(*self._first) is None:
                self.best = self._first
            raise

    def _meet(self) -> None:
        steps = 0
        while self._settle() and self._suppose() and self._settle():
            steps += STEPS_PER_ROUND
            try:
                if self._descend(steps):
                    return
            except ShareSpent:
                continue

    # ---- from above ----------------------------------------------------------------------------------------------

    def _look(self, budget: Budget | None = None) -> Core | None:
        """Look for a build beside what is supposed; None: there is one. A core: there is none."""
        patch = Patch(self._wiring, self._lessons, self._near, Cover(0, 0), False)
        try:
            core = patch.run(budget or self._budget)
            if core is not None:
                return core
            self._near = patch.kept()
        finally:
            patch.close()
        self._judge_build(build_of(self._near.mask & (2 << self._count) - 1, self._count))
        return None

    def _judge_build(self, build: Build) -> None:
        cost = sum(cost for lit, cost in self._priced if build[lit])
        if self.best is not None and cost >= self.best[0]:
            return
        if self._judge is not None and self._first is None:
            # the first build met is seldom good, and a judge may be slow: it is kept for want of a better one
            self._first = (cost, build)
            return
        lesson = self._refused(cost, build)
        self._engine.undo(self._engine.root)
        if lesson is not None:
            every = range(1, self._count + 1)
            self._forbid(lesson or [v if build[v] else -v for v in every])
            return
        less = 0 if self.best is None else self.best[0] - cost
        self.best = (cost, build)
        for index in self._cost_limits:
            if self._engine.dead is None:
                self._engine.dead = self._engine.lower(index, less)

    def _refused(self, cost: int, build: Build) -> Collection[int] | None:
        return None if self._judge is None else self._judge(build, cost)

    def _forbid(self, lits: Collection[int]) -> None:
        """At the root: not all of these."""
        engine = self._engine
        clause = [-lit for lit in lits if engine.value[lit] <= 0 or engine.place[lit] >= engine.root]
        clause = [lit for lit in clause if engine.value[lit] >= 0]
        self._wiring.add_clause(tuple(clause))
        if not clause:
            engine.dead = []
        elif len(clause) == 1:
            engine.dead = engine.add_fact(clause[0])
        elif len(clause) == 2:
            engine.add_pair(*clause)
        else:
            engine.add_clause(clause)

    def _descend(self, steps: int) -> bool:
        """Go from one build to a cheaper one; True: nothing is cheaper. Raises ShareSpent."""
        if self.best is None:
            return False
        share = _Share(self._budget, steps)
        self._limit_costs()
        while self._engine.dead is None:
            if self._look(share) is not None:
                return True
        return True

    def _limit_costs(self) -> None:
        """Only what is cheaper than the best: what it costs as asked, and what it costs beyond the floor."""
        assert self.best is not None
        most = self.best[0] - 1
        if not self._cost_limits:
            asked = Costs(dict(self._priced), ())
            whole = self._add_limit([(cost, lit) for lit, cost in asked.left.items()], most - asked.floor)
            self._cost_limits.append(whole)
        costs = self._costs
        rest = self._add_limit([(cost, lit) for lit, cost in costs.left.items()], most - costs.floor)
        self._cost_limits.append(rest)
        for index in self._cost_limits:
            if self._engine.dead is None:
                self._engine.dead = self._engine.lower(index, 0)

    def _settle(self) -> bool:
        """Back at the root: take over facts, and rule out what costs more than the gap; False: nothing is left."""
        engine, costs = self._engine, self._costs
        engine.undo(engine.root)
        if engine.dead is None and self._lessons.is_due():
            engine.dead = self._lessons.tidy()
        while engine.dead is None:
            known = self._known
            for lit in engine.trail[known:]:
                costs.take_fact(lit)
            self._known = len(engine.trail)
            if self.best is None:
                return True
            gap = self.best[0] - costs.floor
            if gap <= 0:
                return False
            self._state([-lit for lit, cost in costs.left.items() if cost >= gap])
            if self._known == len(engine.trail):
                return True
        return False

    def _state(self, facts: Iterable[int]) -> None:
        """At the root: make literals facts, and draw what follows once for all."""
        engine = self._engine
        for lit in facts:
            if engine.dead is None and engine.value[lit] < 0:
                engine.dead = [-lit]
            if engine.value[lit] == 0:
                engine.put(lit, 0)
        if engine.dead is None:
            engine.dead = engine.propagate()
        engine.fix()

    # ---- from below ----------------------------------------------------------------------------------------------

    def _suppose(self) -> bool:
        """Suppose all that costs to be false, raising the floor until that can stand; False: nothing is left."""
        costs, left = self._costs, self._costs.left
        order = sorted(left, key=lambda lit: (-left[lit], lit))
        place = {lit: at for at, lit in enumerate(order)}
        supposed: list[tuple[int, int]] = []
        at = 0
        while True:
            at, core = self._suppose_from(order, at, supposed)
            if core is None:
                core = self._look()
                if core is None:
                    return self._count_on()
            some = [-lit for lit in core]
            if not some:
                return False
            self._budget.spend()
            costs.raise_floor(some)
            if self.best is not None and costs.floor >= self.best[0]:
                return False
            at = min(at, *(place[lit] for lit in some if lit not in left))
            while supposed and supposed[-1][0] >= at:
                self._engine.undo(supposed.pop()[1])

    def _suppose_from(self, order: Sequence[int], at: int, supposed: list[tuple[int, int]]) -> tuple[int, Core | None]:
        """Go on supposing from a place in the order; where it stopped, and the core that stopped it."""
        engine, left, value = self._engine, self._costs.left, self._engine.value
        while at < len(order):
            lit = order[at]
            if lit in left:
                if value[lit] > 0:
                    return at, engine.core([lit]) | {-lit}
                if value[lit] == 0:
                    mark = engine.mark()
                    conflict = engine.assume(-lit)
                    if conflict is not None:
                        core = engine.core(conflict)
                        engine.undo(mark)
                        return at, core
                    supposed.append((at, mark))
            at += 1
        return at, None

    def _count_on(self) -> bool:
        """At the root: make the counters that are due, as long as there is room."""
        engine, costs = self._engine, self._costs
        engine.undo(engine.root)
        for count in list(costs.due):
            variable = next(self._spare, None)
            if variable is None:
                break
            costs.make(count, variable)
            self._add_limit(*count.limit(variable))
        return True

    def _add_limit(self, terms: list[tuple[int, int]], bound: int) -> int:
        index = self._engine.add_limit(terms, bound)
        self._wiring.add_limit(index)
        mask = self._near.mask
        drawn = sum(weight for weight, lit in terms if (mask >> abs(lit) & 1) == (lit > 0))
        self._near = Kept(mask, (*self._near.sums, drawn))
        return index
