"""Patching: turn an old build into one that agrees with what is assumed. Complete: a build, or a proof.

The old build is a suggestion for every variable. What the engine's trail says goes before it. Clauses and limits that
the two together break are mended one by one: assume one literal that mends, propagate, take over what follows. A dead
end teaches a clause (``learning``), the search goes back to where that clause would have turned it, and goes on.
Only constraints touched by a change are looked at, so the cost is that of the change, not of the problem.
"""

from __future__ import annotations

from collections.abc import Iterable

from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.builds import Cover, Kept, build_of, cover_of, mask_of, variables_of
from specbuilder.reasoning.engine import Conflict, Core
from specbuilder.reasoning.learning import Lessons, lesson, level_of
from specbuilder.reasoning.wiring import Wiring

PATIENCE = 40
"""After so many dead ends (and more each time) the search starts again with what it has learnt."""


class Patch:
    """One patch in the making, from the engine's present trail onwards. ``close`` gives the trail back as it was."""

    def __init__(self, wiring: Wiring, lessons: Lessons, near: Kept, cover: Cover, is_whole: bool = True) -> None:
        """``near``: where to start. ``cover``: of the trail so far, or of the beginning of it.

        ``is_whole`` False: what is near may break clauses, so every one is looked at.
        """
        self._wiring, self._lessons, self._engine = wiring, lessons, wiring.engine
        self._near = near
        self.values = bytearray(build_of(near.mask, self._engine.count))
        self._sums = list(near.sums)
        self._log: list[int] = []
        self._doubts: list[tuple[int, ...]] = [] if is_whole else list(wiring.clauses)
        self._clean = 0
        self._is_moved = False
        self._sated: int | None = None
        self._base = self._engine.mark()
        self._floor = len(self._engine.levels)
        self._saved: list[tuple[int, int, int]] = []
        self._take_over(v if cover.want >> v & 1 else -v for v in variables_of((near.mask ^ cover.want) & cover.care))
        self._taken = cover.upto

    def run(self, budget: Budget) -> Core | None:
        """Mend everything; None: done, ``kept`` tells the build. A core: proved impossible, and what it rests on."""
        engine = self._engine
        patience, ends = PATIENCE, 0
        self._absorb()
        while True:
            lit = self._next_choice()
            if lit == 0:
                return None
            budget.spend()
            conflict = self._choose(lit)
            while conflict is not None:
                if level_of(engine, conflict) <= self._floor:
                    return engine.core(conflict)
                budget.spend()
                ends += 1
                conflict = self._turn(conflict)
            if ends > patience:
                patience += PATIENCE
                ends = 0
                self._start_again()
            self._absorb()

    def _start_again(self) -> None:
        """Drop all choices but keep the values they led to: another way through, with what was learnt."""
        engine, values = self._engine, self.values
        if not self._saved:
            return
        mark = engine.levels[self._floor]
        engine.undo(mark)
        self._taken = min(self._taken, mark)
        self._saved.clear()
        self._log.clear()
        self._is_moved = True
        broken = (clause for clause in self._doubts if not any(values[lit] for lit in clause))
        self._doubts = list(dict.fromkeys(broken))
        self._clean = 0

    def kept(self) -> Kept:
        """The finished build."""
        if self._is_moved:
            return Kept(mask_of(self.values, self._engine.count), tuple(self._sums))
        changed = self._near.mask ^ cover_of([abs(lit) for lit in self._log], self._engine.count).want
        return Kept(changed, tuple(self._sums))

    def extend(self, lit: int, choices: int) -> bool:
        """After ``run`` is done: have this literal too, without one dead end and with few choices; else as it was."""
        engine = self._engine
        known = engine.value[lit]
        if known:
            return known > 0
        levels, mark = len(self._saved), engine.mark()
        conflict = self._choose(lit)
        while conflict is None:
            self._absorb()
            pick = self._next_choice()
            if pick == 0:
                return True
            choices -= 1
            if choices < 0:
                break
            conflict = self._choose(pick)
        self._back_to(levels)
        engine.undo(mark)
        self._taken = mark
        return False

    def close(self) -> None:
        """Undo the engine to where it was."""
        self._engine.undo(self._base)

    # ---- the steps -----------------------------------------------------------------------------------------------

    def _choose(self, lit: int) -> Conflict | None:
        self._saved.append((len(self._log), len(self._doubts), self._clean))
        return self._engine.assume(lit)

    def _turn(self, conflict: Conflict) -> Conflict | None:
        """Learn from a conflict and go back to where the lesson turns the search."""
        engine = self._engine
        clause, keep = lesson(engine, conflict)
        self._wiring.blame[-clause[0]] += 1
        self._lessons.add(clause)
        if keep < self._floor:
            self._lessons.late.append(clause)
        keep = max(keep, self._floor)
        mark = engine.levels[keep]
        self._back_to(keep - self._floor)
        engine.undo(mark)
        self._taken = mark
        return self._lessons.draw(clause[0], clause)

    def _absorb(self) -> None:
        """Take over what the trail says."""
        values, trail = self.values, self._engine.trail
        self._take_over(lit for lit in trail[self._taken :] if not values[lit])
        self._taken = len(trail)

    def _take_over(self, changed: Iterable[int]) -> None:
        values, log, doubts = self.values, self._log, self._doubts
        touched, shifts, sums = self._wiring.touched, self._wiring.shifts, self._sums
        crowded = self._wiring.crowded
        for lit in changed:
            values[lit] = 1
            values[-lit] = 0
            log.append(lit)
            for index, weight in shifts[lit]:
                sums[index] += weight
            if -lit in crowded:
                self._sated = None
                doubts.extend(self._unsated(-lit))
            else:
                doubts.extend(touched[-lit])

    def _unsated(self, false: int) -> list[tuple[int, ...]]:
        """The clauses of a literal that no crowded literal satisfies."""
        sated = self._sated
        if sated is None:
            sated = self._sated = self._wiring.sated(self.values)
        return self._wiring.clauses_of(self._wiring.crowded[false] & ~sated)

    def _back_to(self, level: int) -> None:
        """Values, sums and doubts as they were before the choice of a level."""
        logged, doubted, self._clean = self._saved[level]
        values, log, shifts, sums = self.values, self._log, self._wiring.shifts, self._sums
        crowded = self._wiring.crowded
        while len(log) > logged:
            lit = log.pop()
            values[lit] = 0
            values[-lit] = 1
            if lit in crowded:
                self._sated = None
            for index, weight in shifts[lit]:
                sums[index] -= weight
        del self._doubts[doubted:]
        del self._saved[level:]

    def _next_choice(self) -> int:
        """A literal whose truth mends the first broken clause or limit; 0: nothing is broken."""
        values, doubts, value = self.values, self._doubts, self._engine.value
        at = self._clean
        while at < len(doubts):
            for lit in doubts[at]:
                if values[lit]:
                    break
            else:
                self._clean = at
                if self._is_moved:
                    blame = self._wiring.blame
                    return min((lit for lit in doubts[at] if value[lit] == 0), key=blame.__getitem__)
                return next(lit for lit in doubts[at] if value[lit] == 0)
            at += 1
        self._clean = at
        engine = self._engine
        for index, total in enumerate(self._sums):
            if total > engine.bound[index]:
                return next(-lit for _, lit in engine.terms[index] if values[lit] and value[lit] == 0)
        return 0
