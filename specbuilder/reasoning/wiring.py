"""Wiring: what is read of a problem once, for every search and sweep over it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from copy import copy

from specbuilder.reasoning.builds import variables_of
from specbuilder.reasoning.engine import Engine
from specbuilder.reasoning.problem import Problem

CROWDED_CLAUSES_MIN = 48
"""A literal that stands in so many long clauses has them as a mask."""
CROWDED_BITS_MAX = 400_000_000
SATING_MAX = 128


class Wiring:
    """Which clauses and limits a literal touches."""

    def __init__(self, problem: Problem, engine: Engine) -> None:
        width = 2 * problem.count + 1
        self.engine = engine
        self.clauses: list[tuple[int, ...]] = list(problem.clauses)
        self.touched: list[tuple[tuple[int, ...], ...]] = [()] * width
        """By literal: the clauses of three literals and more it stands in, the literals cheap to make true first."""
        self.shifts: list[tuple[tuple[int, int], ...]] = [()] * width
        """By literal: the limits whose sum changes when it becomes true, and by how much."""
        self.blame = [0] * width
        """By literal: how often a dead end turned on it."""
        self._long: list[tuple[int, ...]] = []
        for index in range(len(engine.terms)):
            self.add_limit(index)
        self._wire_clauses()
        self.crowded: dict[int, int] = {}
        """Of literals that stand in very many long clauses: those clauses, bit i for clause i."""
        self.sating: list[tuple[int, int]] = []
        """The most crowded literals and their clauses: one of them true, very many clauses need no look."""
        self._crowd()

    def _wire_clauses(self) -> None:
        price = [len(lits) for lits in self.engine.implies]
        for clause in self.engine.long:
            for lit in clause:
                price[-lit] += 1
        touched: dict[int, list[tuple[int, ...]]] = {}
        for clause in self.engine.long:
            ordered = tuple(sorted(clause, key=price.__getitem__))
            self._long.append(ordered)
            for lit in clause:
                touched.setdefault(lit, []).append(ordered)
        for lit, clauses in touched.items():
            self.touched[lit] = tuple(clauses)

    def _crowd(self) -> None:
        counts = Counter(lit for clause in self._long for lit in clause)
        most = CROWDED_BITS_MAX // max(1, len(self._long))
        lits = [lit for lit, count in counts.most_common(most) if count >= CROWDED_CLAUSES_MIN]
        digits = {lit: bytearray(b"0" * len(self._long)) for lit in lits}
        for at, clause in enumerate(self._long):
            for lit in clause:
                if lit in digits:
                    digits[lit][-1 - at] = 49
        self.crowded = {lit: int(digits[lit], 2) for lit in lits}
        self.sating = [(lit, self.crowded[lit]) for lit in lits[:SATING_MAX]]

    def copy(self, engine: Engine) -> Wiring:
        """The same for a copy of the engine, to which limits and clauses can be added."""
        other = copy(self)
        other.engine = engine
        for name in ("clauses", "blame", "shifts", "touched", "_long"):
            setattr(other, name, list(getattr(self, name)))
        other.crowded = dict(self.crowded)
        return other

    def add_clause(self, clause: tuple[int, ...]) -> None:
        """The engine got a clause that does not follow from the problem."""
        self.clauses.append(clause)
        for lit in clause:
            self.touched[lit] += (clause,)
            if lit in self.crowded:
                self.crowded[lit] |= 1 << len(self._long)
        self._long.append(clause)

    def add_limit(self, index: int) -> None:
        """The engine got a limit."""
        for weight, lit in self.engine.terms[index]:
            self.shifts[lit] += ((index, weight),)
            self.shifts[-lit] += ((index, -weight),)

    def sated(self, values: Sequence[int]) -> int:
        """The long clauses that a crowded literal satisfies."""
        sated = 0
        for lit, clauses in self.sating:
            if values[lit]:
                sated |= clauses
        return sated

    def clauses_of(self, mask: int) -> list[tuple[int, ...]]:
        """The long clauses of a mask."""
        long = self._long
        return [long[at] for at in variables_of(mask)]

    def sums(self, build: Sequence[int]) -> list[int]:
        """What a build draws on each limit."""
        return [sum(weight for weight, lit in terms if build[lit]) for terms in self.engine.terms]
