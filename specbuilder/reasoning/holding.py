"""Holding: the engine brought from what was held to what is held now, with as little undone as may be."""

from __future__ import annotations

from collections.abc import Sequence

from specbuilder.reasoning.engine import Core, Engine
from specbuilder.reasoning.learning import Lessons


class Holding:
    """The literals assumed at the bottom of the trail. They keep the order in which they came."""

    def __init__(self, engine: Engine, lessons: Lessons) -> None:
        self._engine, self._lessons = engine, lessons
        self._held: list[int] = []
        self._marks: list[int] = []
        self._settled: frozenset[int] | None = None
        """What is held, while all that follows from it has been drawn."""

    def hold(self, held: Sequence[int]) -> Core | None:
        """Bring the engine to ``held`` and nothing else; a core when propagation alone refutes it."""
        engine, lessons = self._engine, self._lessons
        if engine.dead is not None:
            return frozenset()
        wanted = frozenset(held)
        if wanted == self._settled and not lessons.are_waiting():
            return None
        self._settled = None
        for lit in wanted:
            if -lit in wanted:
                return frozenset((lit, -lit))
        old = self._held
        agreed = 0
        if not lessons.is_due():
            agreed = next((at for at, lit in enumerate(old) if lit not in wanted), len(old))
        known = set(old)
        order = [lit for lit in old[agreed:] if lit in wanted]
        order += [lit for lit in dict.fromkeys(held) if lit not in known]
        if agreed < len(old):
            self.release(agreed)
        if lessons.is_due():
            self.release(0)
            if lessons.tidy() is not None:
                return frozenset()
        conflict = lessons.settle()
        if conflict is not None:
            return self.refuted(engine.core(conflict))
        # bounds are looked at once, at the end: that is enough, and they cost most
        engine.is_bounding = False
        core = self._take(order)
        engine.is_bounding = True
        if core is not None:
            return core
        conflict = engine.propagate()
        if conflict is not None:
            return self.refuted(engine.core(conflict))
        self._settled = wanted
        return None

    def _take(self, lits: Sequence[int]) -> Core | None:
        engine, value = self._engine, self._engine.value
        for lit in lits:
            mark = engine.mark()
            if value[lit] <= 0:
                conflict = engine.assume(lit)
                if conflict is not None:
                    core = engine.core(conflict)
                    engine.undo(mark)
                    return core
            self._held.append(lit)
            self._marks.append(mark)
        return None

    def refuted(self, core: Core) -> Core:
        """What is held cannot stand, though propagation had not seen it: go back to the facts."""
        self.release(0)
        if not core:
            self._engine.dead = []
        return core

    def release(self, agreed: int) -> None:
        """Undo all but the first few literals held."""
        self._settled = None
        if agreed == 0:
            self._engine.undo(self._engine.root)
        elif agreed < len(self._marks):
            self._engine.undo(self._marks[agreed])
        del self._held[agreed:], self._marks[agreed:]
