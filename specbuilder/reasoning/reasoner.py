"""The reasoner: exact answers about one problem, asked again and again while what is held changes a little."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from specbuilder.reasoning.beside import Beside, Swap
from specbuilder.reasoning.budget import ENDLESS, Budget, Spent
from specbuilder.reasoning.builds import Build, Kept, Store, build_of, cover_of
from specbuilder.reasoning.engine import Core, Engine
from specbuilder.reasoning.holding import Holding
from specbuilder.reasoning.learning import Lessons
from specbuilder.reasoning.patch import Patch
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.states import Settling, States
from specbuilder.reasoning.wiring import Wiring

__all__ = ["Core", "Implied", "Reasoner", "States", "Swap"]

KEPT_BUILDS_MAX = 1_500
KEPT_BYTES_MAX = 40_000_000


@dataclass(frozen=True, slots=True)
class Implied:
    """What follows from literals held by propagation alone."""

    literals: tuple[int, ...]
    """In the order they followed; facts of the problem first."""
    because: Mapping[int, Core]
    """Of each literal: the literals held that it rests on (none: it follows from the problem alone)."""


class Reasoner:
    """Keeps old builds and what was learnt from dead ends, so that the next question is cheap. One thread at a time.

    Answers never depend on what was asked before: only their speed does, and which of several builds or cores is given.
    """

    def __init__(self, problem: Problem) -> None:
        """The problem must not change any more."""
        self.problem = problem
        self.engine = Engine(problem)
        self.wiring = Wiring(problem, self.engine)
        self.lessons = Lessons(self.engine)
        self.holding = Holding(self.engine, self.lessons)
        most = max(60, min(KEPT_BUILDS_MAX, KEPT_BYTES_MAX // (problem.count + 100)))
        self.store = Store(most)
        self._beside = Beside(self.wiring)
        self._every = (1 << (problem.count + 1)) - 2

    # ---- questions -----------------------------------------------------------------------------------------------

    def consistent(self, held: Sequence[int], budget: Budget | None = None) -> Build | Core:
        """A build that keeps all of ``held``, or a core: a part of ``held`` that no build keeps (not always minimal).

        Raises Spent when the budget runs out.
        """
        core = self.hold(held)
        if core is not None:
            return core
        found = self.find(held, budget or ENDLESS)
        return build_of(found.mask, self.problem.count) if isinstance(found, Kept) else found

    def states(
        self,
        held: Sequence[int],
        asked: Iterable[int] | None = None,
        budget: Budget | None = None,
        first: Sequence[int] = (),
    ) -> States | Core:
        """Of each variable asked about (None: of all) whether it can be true, and can be false, beside ``held``.

        ``first``: variables to settle before the others. When the budget runs out, what is not settled is named.
        A core when no build keeps ``held``.
        """
        mask = self._every if asked is None else sum(1 << v for v in set(asked))
        core = self.hold(held)
        if core is not None:
            return core
        self.store.trim()
        settling = Settling(self.wiring, self.lessons, self.store, self.holding)
        todo: list[int] = []
        try:
            masks = cover_of(held, self.problem.count)
            live = self.store.keeping(masks)
            if not live:
                found = self.find(held, budget or ENDLESS)
                if not isinstance(found, Kept):
                    return found
                live = [found]
            for kept in live:
                settling.show(kept)
            todo = settling.open_literals(mask, first)
            core = settling.settle(masks, todo, live[-1], budget or ENDLESS)
            if core is not None:
                return core
        except Spent:
            todo = todo or settling.open_literals(mask, first)
        return self._states(settling, mask, todo)

    def beside(
        self, held: Sequence[int], swaps: Sequence[Swap], budget: Budget | None = None
    ) -> list[bool | Core | None]:
        """Of each swap: True when some build keeps ``held`` without what is released and has the literal; else a core,
        a part of those literals that cannot stand together; None: not settled within the budget.

        Meant to be asked for all alternatives after each edit. ``build_beside`` tells the build behind a True.
        """
        purse = budget or ENDLESS
        if not {-lit for lit in held}.isdisjoint(held):
            return self._beside.answers_to_contrary(held, swaps, self, purse)
        try:
            current = self._current(held, purse)
        except Spent:
            return [None] * len(swaps)
        return self._beside.answers(held, current, swaps, self, purse)

    def build_beside(self, swap: Swap) -> Build | None:
        """The build that showed a swap when ``beside`` was last asked for it."""
        kept = self._beside.build(swap)
        return build_of(kept.mask, self.problem.count) if kept else None

    def _current(self, held: Sequence[int], budget: Budget) -> Kept | Core:
        """A build that keeps ``held``, as like the last such build as may be; or a core."""
        core = self.hold(held)
        if core is not None:
            return core
        near, cover = self._beside.current, cover_of(held, self.problem.count)
        if near is None:
            return self.find(held, budget)
        return near if not (near.mask ^ cover.want) & cover.care else self._patched(near, budget)

    def implied(self, held: Sequence[int]) -> Implied | Core:
        """What follows from ``held`` by propagation (and what was learnt so far); a core when that meets a conflict."""
        core = self.hold(held)
        if core is not None:
            return core
        engine = self.engine
        rests: dict[int, Core] = {}
        for lit in engine.trail:
            rests[lit] = engine.core([lit])
        return Implied(tuple(engine.trail), rests)

    def prepare(self, held: Sequence[int], budget: Budget, first: Sequence[int] = ()) -> bool:
        """Answer ahead what the next edit will ask, while nobody waits: the states with one literal more, or less.

        ``first``: the literals to begin with. Whether all of it was done within the budget. It changes no answer.
        """
        states = self.states(held, None, budget)
        open_variables: list[int] = []
        if isinstance(states, States):
            variables = range(1, self.problem.count + 1)
            open_variables = [v for v in variables if states.can_be(v) and states.can_be(-v)]
        more = dict.fromkeys([*first, *open_variables, *(-v for v in open_variables)])
        less = ([other for other in held if other != lit] for lit in reversed(held))
        for edited in (*less, *([*held, lit] for lit in more)):
            answer = self.states(edited, None, budget)
            if budget.is_spent() or (isinstance(answer, States) and answer.unsettled):
                return False
        self.hold(held)
        return True

    # ---- for what is built on top --------------------------------------------------------------------------------

    def hold(self, held: Sequence[int]) -> Core | None:
        """Bring the engine to ``held`` and nothing else; a core when propagation alone refutes it."""
        return self.holding.hold(held)

    def search(self, held: Sequence[int], budget: Budget) -> Kept | Core:
        """A build that keeps ``held``, or a core. Raises Spent."""
        core = self.hold(held)
        return self.find(held, budget) if core is None else core

    def find(self, held: Sequence[int], budget: Budget) -> Kept | Core:
        """A build that keeps ``held``; the engine stands at ``held``. Raises Spent."""
        kept = self.store.first_keeping(cover_of(held, self.problem.count))
        if kept is not None:
            return kept
        return self._patched(self.store.nearest(self.engine.cover()), budget)

    def _patched(self, near: Kept | None, budget: Budget) -> Kept | Core:
        patch = Patch(self.wiring, self.lessons, near or self._nothing(), self.engine.cover(), near is not None)
        try:
            core = patch.run(budget)
            if core is None:
                kept = patch.kept()
                self.store.add(kept)
                return kept
        finally:
            patch.close()
        if core:
            self.lessons.add_proof(core)
        return self.holding.refuted(core)

    def _nothing(self) -> Kept:
        return Kept(0, tuple(self.wiring.sums(build_of(0, self.problem.count))))

    def _states(self, settling: Settling, asked: int, todo: Sequence[int]) -> States:
        cover = self.engine.cover()
        can = settling.can | cover.want
        cannot = ~settling.always | (cover.care & ~cover.want)
        value = self.engine.value
        unsettled = frozenset(
            lit for lit in todo if value[lit] == 0 and not (can >> lit & 1 if lit > 0 else cannot >> -lit & 1)
        )
        return States(asked=asked, can_be_true=can & asked, can_be_false=cannot & asked, unsettled=unsettled)
