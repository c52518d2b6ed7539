"""States: of each variable asked about, whether it can be true and whether it can be false in some build.

Old builds that keep what is held show most of it at once. For the rest: assume the literal, patch an old build, and let
the same patch show further literals still open; or take home the proof that there is none.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import islice

from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.builds import Cover, Kept, Store, cover_of, variables_of
from specbuilder.reasoning.engine import Conflict, Core
from specbuilder.reasoning.holding import Holding
from specbuilder.reasoning.learning import Lessons, lesson, level_of
from specbuilder.reasoning.patch import Patch
from specbuilder.reasoning.sweep import Sweep
from specbuilder.reasoning.wiring import Wiring

FRUITLESS_MAX = 12
"""A build in the making is closed after so many literals in a row that it cannot take in."""
EXTRA_CHOICES_MAX = 12
CHANCES = 1
"""Of each literal still open, so many old builds that have it are carried over."""
BROKEN_MAX = 2
"""Old builds that break more of the literals held are not worth carrying over."""


@dataclass(frozen=True, slots=True, kw_only=True)
class States:
    """What is known of the variables asked about, as masks: bit v stands for variable v."""

    asked: int
    can_be_true: int
    """Some build that keeps what is held has it true."""
    can_be_false: int
    unsettled: frozenset[int]
    """Literals not settled when the budget ran out: whether some build has them is not known."""

    def can_be(self, lit: int) -> bool | None:
        """Whether some build that keeps what is held has this literal; None: not settled."""
        if lit in self.unsettled:
            return None
        return bool((self.can_be_true if lit > 0 else self.can_be_false) >> abs(lit) & 1)


class Settling:
    """One question for states. The engine's trail stands at what is held; only what was proved is added to it."""

    def __init__(self, wiring: Wiring, lessons: Lessons, store: Store, holding: Holding) -> None:
        self._engine, self._wiring, self._lessons = wiring.engine, wiring, lessons
        self._store, self._holding = store, holding
        self._ghosts: list[Kept] = []
        self.can = 0
        self.always = -1

    def show(self, kept: Kept) -> None:
        """Count a build that keeps what is held."""
        self.can |= kept.mask
        self.always &= kept.mask

    def _is_shown(self, lit: int) -> bool:
        return bool(self.can >> lit & 1) if lit > 0 else not self.always >> -lit & 1

    def open_literals(self, asked: int, first: Sequence[int]) -> list[int]:
        """Literals asked about that neither a build nor propagation settles, those of ``first`` in front."""
        free = asked & ~self._engine.cover().care
        todo = variables_of(free & ~self.can)
        todo += [-v for v in variables_of(free & self.always)]
        if first:
            front = set(first)
            todo.sort(key=lambda lit: abs(lit) not in front)
        return todo

    def settle(self, held: Cover, todo: Sequence[int], near: Kept, budget: Budget) -> Core | None:
        """Settle literals in order, or until Spent is raised; a core if nothing keeps what is held."""
        if todo:
            todo = self._carry(held, todo)
        value = self._engine.value
        for at, lit in enumerate(todo):
            if value[lit] != 0 or self._is_shown(lit):
                continue
            outcome = self._try(todo, at, near, budget)
            if isinstance(outcome, Kept):
                near = outcome
            elif outcome is not None:
                return outcome
        return None

    def _carry(self, held: Cover, todo: Sequence[int]) -> list[int]:
        """Carry old builds that break little of what is held over to it; the literals they do not show."""
        crowd = self._promising(self._store.nearly(held, BROKEN_MAX), todo)
        if not crowd:
            return list(todo)
        sweep = Sweep(self._wiring, crowd, self._engine.cover())
        sweep.lay()
        builds, self._ghosts = sweep.harvest()
        for kept in builds.values():
            self._take(kept)
        return [lit for lit in todo if not self._is_shown(lit)]

    def _take(self, kept: Kept) -> None:
        if kept.mask & ~self.can or self.always & ~kept.mask:
            self._store.add(kept)
            self.show(kept)

    def _promising(self, old: Sequence[Kept], todo: Sequence[int]) -> list[Kept]:
        """Of some builds those that have a literal still open, the newest first; of each literal so many builds."""
        wanted = cover_of([v for v in todo if v > 0], self._engine.count).care
        unwanted = cover_of([v for v in todo if v < 0], self._engine.count).care
        # bit v of turn k: k + 1 builds with that literal are in
        turns = [(wanted, unwanted)] * CHANCES
        found: list[Kept] = []
        for kept in old:
            mask = kept.mask
            for at, (lacking, unlacking) in enumerate(turns):
                shown, unshown = lacking & mask, unlacking & ~mask
                if shown or unshown:
                    turns[at] = (lacking ^ shown, unlacking ^ unshown)
                    found.append(kept)
                    break
        return found

    def _ghost(self, lit: int) -> Kept | None:
        """Take the next build that has a literal, but breaks something, to be patched."""
        variable, wanted = abs(lit), lit > 0
        for at in range(len(self._ghosts) - 1, -1, -1):
            if (self._ghosts[at].mask >> variable & 1) == wanted:
                return self._ghosts.pop(at)
        return None

    def _try(self, todo: Sequence[int], at: int, near: Kept, budget: Budget) -> Kept | Core | None:
        """A build that shows a literal; None: proved that there is none; a core: there is no build at all."""
        engine, lit = self._engine, todo[at]
        budget.spend()
        mark = engine.mark()
        conflict = engine.assume(lit)
        if conflict is not None:
            return self._refute(lit, conflict, mark)
        patch = Patch(self._wiring, self._lessons, self._ghost(lit) or near, self._engine.cover_at(mark))
        try:
            core = patch.run(budget)
            if core is None:
                return self._take_home(patch, todo, at + 1, budget)
        finally:
            patch.close()
            engine.undo(mark)
        return self._rule_out(lit, core, self._lessons.settle())

    def _refute(self, lit: int, conflict: Conflict, mark: int) -> Core | None:
        """Propagation alone refutes a literal. What that turns on is ruled out with it: often settling others."""
        engine, lessons = self._engine, self._lessons
        if level_of(engine, conflict) < len(engine.levels):
            core = engine.core(conflict)
            engine.undo(mark)
            return core
        clause, keep = lesson(engine, conflict)
        turn = clause[0]
        engine.undo(mark)
        lessons.add(clause)
        if keep < len(engine.levels):
            lessons.late.append(clause)
        failed = lessons.draw(turn, clause)
        if failed is None and engine.value[lit] == 0:
            again = engine.mark()
            refuted = engine.assume(lit)
            core = engine.core(refuted) if refuted else engine.assumed()
            engine.undo(again)
            return self._rule_out(lit, core, None)
        return None if failed is None else engine.core(failed)

    def _rule_out(self, lit: int, core: Core, failed: Conflict | None) -> Core | None:
        """A literal cannot stand with what is held: make its opposite follow."""
        if lit not in core:
            return core
        if failed is None and self._engine.value[lit] == 0:
            clause = self._lessons.add_proof(core)
            self._lessons.late.append(clause)
            failed = self._lessons.draw(-lit, clause)
        return None if failed is None else self._engine.core(failed)

    def _take_home(self, patch: Patch, todo: Sequence[int], start: int, budget: Budget) -> Kept:
        kept = patch.kept()
        self.show(kept)
        others = [lit for lit in islice(todo, start, None) if not self._is_shown(lit)]
        self._store.add(kept)
        self._engine.is_bounding = False
        try:
            self._take_in(patch, others, budget)
        finally:
            self._engine.is_bounding = True
        kept = patch.kept()
        self._store.add(kept)
        self.show(kept)
        return kept

    def _take_in(self, patch: Patch, others: Sequence[int], budget: Budget) -> None:
        """Let a finished build show more of the literals still open."""
        value, values = self._engine.value, patch.values
        fruitless = 0
        for lit in others:
            if value[lit] == 0 and not values[lit]:
                if patch.extend(lit, EXTRA_CHOICES_MAX):
                    fruitless = 0
                else:
                    fruitless += 1
                if fruitless >= FRUITLESS_MAX or budget.is_spent():
                    return
