"""The network: the clauses, sets and limits of a problem as propagation walks them, from literal to literal."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import TypeAlias

from specbuilder.reasoning.bounds import TIGHT, Bounds
from specbuilder.reasoning.limits import exactly_one_sets, restated
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.trail import Trail

GATED_TERMS = 60
"""Limits behind one gate are put to sleep with it when together they have so many terms."""
PAIRED_SET_SIZE = 40
"""At-most-one sets up to this size are kept as implied pairs, greater ones as sets."""


Draws: TypeAlias = list[tuple[tuple[int, int], ...]]
"""By literal: the limits it draws on, and how much. What is empty is one and the same tuple: nothing to fetch."""
Table: TypeAlias = tuple[int, Draws]
"""A gate, and the draws on the limits behind it."""

WEIGHS, IN_TRIO, IN_CLAUSE, IN_SET = 1, 2, 4, 8
"""What a literal touches when it comes true, its pairs apart; see ``Network.touches``."""


class Network(Trail):
    """What a literal touches when it comes true."""

    def __init__(self, problem: Problem, *, is_bounded: bool = True) -> None:
        """``is_bounded`` False: limits are watched by their slack alone."""
        super().__init__(problem.count)
        width = 2 * problem.count + 1
        self.implies: list[tuple[int, ...]] = [()] * width
        self.sets: list[tuple[tuple[int, ...], ...]] = [()] * width
        self.watch: list[list[list[int]]] = [[] for _ in range(width)]
        self.trios: list[tuple[tuple[int, int, list[int]], ...]] = [()] * width
        """By literal: of each clause of three it stands in, the other two, and the clause."""
        self.touches = bytearray(width)
        """By literal: what must be looked at when it comes true. Half of all touch nothing but their pairs."""
        self.long: list[tuple[int, ...]] = []
        """Clauses of three literals and more, as the problem states them."""
        self.units: list[int] = []
        self.is_void = False
        """The problem states an empty clause."""
        self.slack: list[int] = []
        """Of each limit: what is left of its bound."""
        self.near: list[float] = []
        """Of each limit: with less left than that it is worth a closer look; one behind a gate is never: it costs more
        than it rules out."""
        self.draws: Draws = [()] * width
        """On the limits behind no gate."""
        self.gated: list[Table] = []
        self.heaviest: list[int] = []
        """Of each limit: its heaviest weight."""
        self.besides: list[int] = []
        """Of each limit: the heaviest weight besides that of its gate."""
        self.lightest: list[int] = []
        """Of each limit: its lightest weight. With less left than that nothing open draws on it any more."""
        self.sleeps: list[tuple[int, ...]] = [()] * width
        """By literal: the gates it shuts. A limit whose gate is shut is kept whatever else is true."""
        self.bounds: Bounds | None = None
        self._read_clauses(problem)
        self._read_limits(problem, is_bounded)

    def _read_clauses(self, problem: Problem) -> None:
        implied: dict[int, list[int]] = {}
        for clause in problem.clauses:
            match len(clause):
                case 0:
                    self.is_void = True
                case 1:
                    self.units.append(clause[0])
                case 2:
                    one, two = clause
                    implied.setdefault(-one, []).append(two)
                    implied.setdefault(-two, []).append(one)
                case _:
                    self.long.append(clause)
        # a clause watches its rarest literals, so that no literal is watched by very many clauses
        counts = Counter(lit for clause in self.long for lit in clause)
        for clause in self.long:
            self.add_clause(sorted(clause, key=counts.__getitem__))
        for variables in problem.at_most_one:
            for v in variables:
                if len(variables) <= PAIRED_SET_SIZE:
                    implied.setdefault(v, []).extend(-other for other in variables if other != v)
                else:
                    self.sets[v] += (variables,)
                    self.touches[v] |= IN_SET
        for lit, others in implied.items():
            self.implies[lit] = tuple(self.same[other] for other in dict.fromkeys(others))

    def _read_limits(self, problem: Problem, is_bounded: bool) -> None:
        groups = exactly_one_sets(problem) if problem.limits else []
        for stated in problem.limits:
            limit = restated(stated, groups)
            self._add_terms(limit.terms)
            self.bound.append(limit.bound)
        tables = self._gate_tables()
        for index, terms in enumerate(self.terms):
            self._note_draws(index, terms, tables.get(index, self.draws))
        self.slack = list(self.bound)
        self.near = [-1.0 if index in tables else TIGHT * bound for index, bound in enumerate(self.bound)]
        if is_bounded:
            watched = [() if index in tables else terms for index, terms in enumerate(self.terms)]
            bounds = Bounds(problem.clauses, watched)
            self.bounds = None if bounds.is_idle() else bounds

    def _add_terms(self, terms: Sequence[tuple[int, int]]) -> None:
        terms = tuple((weight, self.same[lit]) for weight, lit in sorted(terms, key=lambda term: -term[0]))
        self.terms.append(terms)
        self.heaviest.append(terms[0][0] if terms else 0)
        self.besides.append(terms[1][0] if len(terms) > 1 else 0)
        self.lightest.append(terms[-1][0] if terms else 0)

    def _note_draws(self, index: int, terms: Sequence[tuple[int, int]], draws: Draws) -> None:
        for weight, lit in terms:
            draws[lit] += ((index, weight),)
            self.touches[lit] |= WEIGHS

    def _out(self, index: int) -> int:
        """What the gate of a limit draws, which only says that the limit counts; 0 without one."""
        terms = self.terms[index]
        return terms[0][0] if terms and sum(weight for weight, _ in terms[1:]) <= self.bound[index] else 0

    def _gate_tables(self) -> dict[int, Draws]:
        """A table of its own for the limits behind each gate that is worth one."""
        behind: dict[int, list[int]] = {}
        for index, terms in enumerate(self.terms):
            if self._out(index):
                behind.setdefault(terms[0][1], []).append(index)
        tables: dict[int, Draws] = {}
        for gate, limits in behind.items():
            if sum(len(self.terms[index]) for index in limits) < GATED_TERMS:
                continue
            table: Draws = [()] * len(self.draws)
            self.sleeps[-gate] = (*self.sleeps[-gate], len(self.gated))
            self.touches[-gate] |= WEIGHS
            self.gated.append((gate, table))
            tables.update(dict.fromkeys(limits, table))
        return tables

    def add_pair(self, a: int, b: int) -> None:
        """One of two literals is true."""
        self.implies[-a] += (self.same[b],)
        self.implies[-b] += (self.same[a],)

    def add_clause(self, clause: list[int]) -> None:
        """One of three or more literals is true. The engine reorders the list; the first two are watched."""
        clause[:] = map(self.same.__getitem__, clause)
        for lit in clause:
            self.touches[-lit] |= IN_TRIO if len(clause) == 3 else IN_CLAUSE
        if len(clause) == 3:
            one, two, three = clause
            self.trios[one] += ((two, three, clause),)
            self.trios[two] += ((one, three, clause),)
            self.trios[three] += ((one, two, clause),)
        else:
            self.watch[clause[0]].append(clause)
            self.watch[clause[1]].append(clause)

    def drop_clauses(self, dropped: set[int]) -> None:
        """Forget clauses, given by their ``id``; only while nothing is assumed."""
        for clauses in self.watch:
            if clauses:
                clauses[:] = [clause for clause in clauses if id(clause) not in dropped]
        for lit, trios in enumerate(self.trios):
            if trios:
                self.trios[lit] = tuple(trio for trio in trios if id(trio[2]) not in dropped)

    def add_limit(self, terms: Sequence[tuple[int, int]], bound: int) -> int:
        """Add a limit of weights above nought while the engine runs, everything propagated; give its number.

        It rules nothing out before ``lower`` or the next literal that draws on it.
        """
        index = len(self.terms)
        self._add_terms(terms)
        self.bound.append(bound)
        self.near.append(TIGHT * bound)
        self.slack.append(bound - sum(weight for weight, lit in terms if self.value[lit] > 0))
        self._note_draws(index, terms, self.draws)
        if self.bounds is not None:
            self.bounds.add_limit()
        return index
