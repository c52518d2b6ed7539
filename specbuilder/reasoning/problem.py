"""A problem: yes-or-no variables, and what every complete build must hold.

A *variable* is a number from 1; a *literal* is ``v`` (it is true) or ``-v`` (it is false). A *build* gives every
variable a value so that every clause has a true literal, of each at-most-one set no two are true, and every limit is
kept.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Limit:
    """The weights of the true literals sum to ``bound`` at most. Whole numbers, every weight above nought.

    ``bound`` may be below nought: then nothing keeps it.
    """

    terms: tuple[tuple[int, int], ...]
    """Weight and literal; a variable stands in it once."""
    bound: int


@dataclass(slots=True)
class Problem:
    """Filled while compiling, then only read. ``count`` variables, numbered from 1."""

    count: int = 0
    clauses: list[tuple[int, ...]] = field(default_factory=list)
    """Of each, one literal at least is true. An empty clause: no build at all."""
    at_most_one: list[tuple[int, ...]] = field(default_factory=list)
    """Positive literals of which no two are true."""
    limits: list[Limit] = field(default_factory=list)

    def new(self) -> int:
        """A fresh variable."""
        self.count += 1
        return self.count

    def add_clause(self, lits: Iterable[int]) -> int | None:
        """Add a clause and give its index; None when it is always true and was dropped."""
        unique = tuple(dict.fromkeys(lits))
        if any(-lit in unique for lit in unique):
            return None
        self.clauses.append(unique)
        return len(self.clauses) - 1

    def add_at_most_one(self, variables: Iterable[int]) -> None:
        """No two of these variables are true."""
        unique = tuple(dict.fromkeys(variables))
        if len(unique) > 1:
            self.at_most_one.append(unique)

    def add_limit(self, terms: Iterable[tuple[int, int]], bound: int) -> int:
        """Add a limit ``sum(weight * literal) <= bound`` with weights of either sign; give its index.

        A variable may stand in it several times. Weights below nought are turned round: ``-a * x = a * (not x) - a``.
        """
        net: dict[int, int] = {}
        for weight, lit in terms:
            if lit > 0:
                net[lit] = net.get(lit, 0) + weight
            else:
                net[-lit] = net.get(-lit, 0) - weight
                bound -= weight
        kept: list[tuple[int, int]] = []
        for variable, weight in net.items():
            if weight > 0:
                kept.append((weight, variable))
            elif weight < 0:
                kept.append((-weight, -variable))
                bound -= weight
        self.limits.append(Limit(tuple(kept), bound))
        return len(self.limits) - 1

    def broken_by(self, build: Sequence[int]) -> str | None:
        """What a build breaks, in plain words for a test or an assertion; None when it keeps everything.

        ``build[v]`` is 1 where variable v is true, else 0; ``build[0]`` is not looked at.
        """

        def holds(lit: int) -> bool:
            return bool(build[lit]) if lit > 0 else not build[-lit]

        for clause in self.clauses:
            if not any(map(holds, clause)):
                return f"clause {clause}"
        for variables in self.at_most_one:
            if sum(1 for v in variables if build[v]) > 1:
                return f"at most one of {variables}"
        for index, limit in enumerate(self.limits):
            total = sum(weight for weight, lit in limit.terms if holds(lit))
            if total > limit.bound:
                return f"limit {index}: {total} of {limit.bound}"
        return None
