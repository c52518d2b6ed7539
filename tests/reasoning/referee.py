"""Who is asked beside the program: every build written out for tiny problems, two established engines for larger ones.

None of them shares a line with ``specbuilder.reasoning`` but :class:`Problem`; what they say is the truth of the tests.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import combinations
from typing import Any

from specbuilder.reasoning.problem import Problem

Ways = list[tuple[int, frozenset[int]]]
"""Cost and dropped literals, cheapest first."""


class Brute:
    """Every build of a problem of at most sixteen or so variables, as bit sets over all 2^n of them."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        size = 1 << problem.count
        every = (1 << size) - 1
        self.having: dict[int, int] = {}
        for v in range(1, problem.count + 1):
            period = 1 << (v - 1)
            mask = sum(((1 << period) - 1) << at for at in range(period, size, 2 * period))
            self.having[v], self.having[-v] = mask, every & ~mask
        alive = every
        for clause in problem.clauses:
            alive &= _any_of(self.having[lit] for lit in clause)
        for together in problem.at_most_one:
            for one, other in combinations(together, 2):
                alive &= ~(self.having[one] & self.having[other])
        if problem.limits:
            alive = sum(1 << at for at in range(size) if alive >> at & 1 and self._within_limits(at))
        self.alive = alive

    def _within_limits(self, at: int) -> bool:
        return all(
            sum(weight for weight, lit in limit.terms if self.having[lit] >> at & 1) <= limit.bound
            for limit in self.problem.limits
        )

    def with_all(self, held: Iterable[int]) -> int:
        """The builds that have all of these, as bits."""
        left = self.alive
        for lit in held:
            left &= self.having[lit]
        return left

    def consistent(self, held: Iterable[int]) -> bool:
        return self.with_all(held) != 0

    def can_be(self, held: Sequence[int]) -> frozenset[int]:
        """Every literal that some build with all of ``held`` has."""
        left = self.with_all(held)
        return frozenset(lit for lit, builds in self.having.items() if builds & left)

    def conflicts(self, held: Sequence[int]) -> frozenset[frozenset[int]]:
        """All minimal subsets of ``held`` that no build has."""
        return minimal_subsets(held, lambda part: not self.consistent(part))

    def reasons(self, held: Sequence[int], lit: int) -> frozenset[frozenset[int]]:
        """All minimal subsets of ``held`` under which ``lit`` is never true."""
        return minimal_subsets(held, lambda part: not self.consistent((*part, lit)))

    def repairs(self, held: Sequence[int], weights: Mapping[int, int]) -> Ways:
        """All minimal sets whose dropping leaves some build, cheapest first."""
        found = minimal_subsets(held, lambda part: self.consistent(lit for lit in held if lit not in part))
        return sorted(((sum(weights[lit] for lit in way), way) for way in found), key=lambda way: way[0])

    def builds(self, held: Iterable[int] = ()) -> list[bytearray]:
        left = self.with_all(held)
        return [self._build(at) for at in range(1 << self.problem.count) if left >> at & 1]

    def _build(self, at: int) -> bytearray:
        return bytearray([0] + [at >> v & 1 for v in range(self.problem.count)])

    def best(self, held: Sequence[int], costs: Mapping[int, int]) -> int | None:
        """The least sum of the costs of the true literals; None when nothing has all of ``held``."""
        return min((paid(build, costs) for build in self.builds(held)), default=None)


def paid(build: Sequence[int], costs: Mapping[int, int]) -> int:
    """The sum of the costs of the literals that are true in a build."""
    return sum(cost for lit, cost in costs.items() if (build[lit] if lit > 0 else not build[-lit]))


def _any_of(masks: Iterable[int]) -> int:
    union = 0
    for mask in masks:
        union |= mask
    return union


def minimal_subsets(held: Sequence[int], enough: Callable[[tuple[int, ...]], bool]) -> frozenset[frozenset[int]]:
    """All minimal subsets that are ``enough``, which is monotone."""
    found: list[frozenset[int]] = []
    distinct = tuple(dict.fromkeys(held))
    for size in range(len(distinct) + 1):
        for part in combinations(distinct, size):
            if not any(smaller <= set(part) for smaller in found) and enough(part):
                found.append(frozenset(part))
    return frozenset(found)


class SatReferee:
    """python-sat with assumptions; a limit enters as the covers of it that some build broke."""

    def __init__(self, problem: Problem, engine: str = "cadical153") -> None:
        from pysat.card import CardEnc, EncType
        from pysat.solvers import Solver

        self.problem = problem
        self.solver: Any = Solver(name=engine)
        top = problem.count
        for clause in problem.clauses:
            self.solver.add_clause(list(clause))
        for together in problem.at_most_one:
            how = EncType.pairwise if len(together) <= 6 else EncType.seqcounter
            encoded = CardEnc.atmost(lits=list(together), bound=1, top_id=top, encoding=how)
            top = max(top, encoded.nv)
            for made in encoded.clauses:
                self.solver.add_clause(made)
        self.limits = [(sorted(limit.terms, reverse=True), limit.bound) for limit in problem.limits]

    def build(self, held: Sequence[int]) -> bytearray | None:
        while self.solver.solve(assumptions=list(held)):
            found = bytearray(self.problem.count + 1)
            for lit in self.solver.get_model()[: self.problem.count]:
                found[abs(lit)] = lit > 0
            if not self._forbid_broken(found):
                return found
        return None

    def core(self) -> list[int]:
        return list(self.solver.get_core() or ())

    def _forbid_broken(self, build: bytearray) -> bool:
        broken = False
        for terms, bound in self.limits:
            true = [(weight, lit) for weight, lit in terms if (build[lit] if lit > 0 else not build[-lit])]
            if sum(weight for weight, _ in true) > bound:
                broken, total, cover = True, 0, []
                for weight, lit in true:
                    if total <= bound:
                        cover.append(-lit)
                        total += weight
                self.solver.add_clause(cover)
        return broken


class ClingoReferee:
    """clingo: every limit is a weight rule of its own, exact whole numbers up to 2^31."""

    def __init__(
        self,
        problem: Problem,
        costs: Mapping[int, int] | None = None,
        args: Sequence[str] = (),
        more_clauses: Iterable[Sequence[int]] = (),
    ) -> None:
        import clingo

        self.problem = problem
        self.control: Any = clingo.Control(["--warn=none", *args])
        with self.control.backend() as backend:
            # consequences are taken over named atoms only, so each variable has a name
            self.atoms = [0] + [
                backend.add_atom(clingo.Function("x", [clingo.Number(v)])) for v in range(1, problem.count + 1)
            ]
            backend.add_rule(self.atoms[1:], [], True)
            for clause in (*problem.clauses, *more_clauses):
                backend.add_rule([], [-self._at(lit) for lit in clause])
            for together in problem.at_most_one:
                self._limit(backend, [(1, lit) for lit in together], 1)
            for limit in problem.limits:
                self._limit(backend, limit.terms, limit.bound)
            if costs is not None:
                backend.add_minimize(0, [(self._at(lit), cost) for lit, cost in costs.items()])
        self.variable = {atom: v for v, atom in enumerate(self.atoms) if v}
        self._core: list[int] = []

    def _at(self, lit: int) -> int:
        return self.atoms[lit] if lit > 0 else -self.atoms[-lit]

    def _limit(self, backend: Any, terms: Sequence[tuple[int, int]], bound: int) -> None:
        if bound < 0:
            backend.add_rule([], [])
            return
        over = backend.add_atom()
        backend.add_weight_rule([over], bound + 1, [(self._at(lit), weight) for weight, lit in terms])
        backend.add_rule([], [over])

    def _read(self, model: Any) -> bytearray:
        return bytearray([0] + [int(model.is_true(atom)) for atom in self.atoms[1:]])

    def build(self, held: Sequence[int]) -> bytearray | None:
        self.control.configuration.solve.models = 1
        self.control.configuration.solve.enum_mode = "auto"
        with self.control.solve(assumptions=[self._at(lit) for lit in held], yield_=True) as handle:
            model = handle.model()
            if model is not None:
                return self._read(model)
            self._core = list(handle.core())
        return None

    def core(self) -> list[int]:
        return [self.variable[abs(lit)] * (1 if lit > 0 else -1) for lit in self._core if abs(lit) in self.variable]

    def can_be(self, held: Sequence[int]) -> frozenset[int] | None:
        """Every literal that some build with all of ``held`` has; None when there is no such build."""
        brave, cautious = self._consequences("brave", held), self._consequences("cautious", held)
        if brave is None or cautious is None:
            return None
        every = range(1, self.problem.count + 1)
        return frozenset([v for v in every if brave[v]] + [-v for v in every if not cautious[v]])

    def _consequences(self, mode: str, held: Sequence[int]) -> bytearray | None:
        self.control.configuration.solve.models = 0
        self.control.configuration.solve.enum_mode = mode
        with self.control.solve(assumptions=[self._at(lit) for lit in held], yield_=True) as handle:
            for _ in handle:
                pass
            last = handle.last()
            return None if last is None else self._read(last)

    def best(self, held: Sequence[int], seconds: float = 30.0) -> tuple[int | None, bytearray | None, bool]:
        """Cost, build and whether it is proved, for the costs given at the start."""
        self.control.configuration.solve.models = 0
        self.control.configuration.solve.enum_mode = "auto"
        self.control.configuration.solve.opt_mode = "opt"
        found: list[tuple[int, bytearray]] = []

        def keep(model: Any) -> None:
            found.append((model.cost[0] if model.cost else 0, self._read(model)))

        with self.control.solve(assumptions=[self._at(lit) for lit in held], on_model=keep, async_=True) as handle:
            done = handle.wait(seconds)
            if not done:
                handle.cancel()
            proved = bool(done and handle.get().exhausted)
        cost, build = found[-1] if found else (None, None)
        return cost, build, proved


def minimal_by(referee: SatReferee | ClingoReferee, reason: Sequence[int], lit: int) -> bool:
    """Does the referee find that ``reason`` forbids ``lit``, and that none of it can be left out?"""
    if referee.build([*reason, lit]) is not None:
        return False
    return all(referee.build([*(x for x in reason if x != left), lit]) is not None for left in reason)
