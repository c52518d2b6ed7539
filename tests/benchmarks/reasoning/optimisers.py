"""The optimisers among the peers: CP-SAT, HiGHS and RC2. One whose package is missing is left out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from specbuilder.reasoning.problem import Problem
from tests.benchmarks.reasoning.models import Model
from tests.benchmarks.reasoning.peers import SECONDS_MAX, one_after_another

WORKERS = 8
"""Also on fewer cores: the searches that prove soonest only join in larger teams."""


class NoLimitsError(ValueError):
    """The engine takes clauses only."""


class CpSat:
    """OR-tools CP-SAT: one model kept; what is held is set by the domains of the variables."""

    def __init__(self, model: Model) -> None:
        from ortools.sat.python import cp_model

        self.model, self.cp = model, cp_model
        problem = model.problem
        self.program: Any = cp_model.CpModel()
        self.variables: list[Any] = [None] + [self.program.new_bool_var("") for _ in range(problem.count)]
        for clause in problem.clauses:
            self.program.add_bool_or([self._at(lit) for lit in clause])
        for together in problem.at_most_one:
            self.program.add_at_most_one([self.variables[v] for v in together])
        for limit in problem.limits:
            self.program.add(sum(weight * self._at(lit) for weight, lit in limit.terms) <= limit.bound)
        self._rules = len(self.program.proto.constraints)

    def _at(self, lit: int) -> Any:
        return self.variables[lit] if lit > 0 else ~self.variables[-lit]

    def _cheapest(
        self, held: Sequence[int], costs: Mapping[int, int], barred: Iterable[Sequence[int]] = ()
    ) -> tuple[int | None, list[int] | None, bool]:
        program = self.program
        for drops in barred:
            program.add_bool_or([self._at(lit) for lit in drops])
        program.minimize(sum(cost * self._at(lit) for lit, cost in costs.items()))
        domains = program.proto.variables
        for lit in held:
            domain = domains[self.variables[abs(lit)].index].domain
            domain[0] = domain[1] = int(lit > 0)
        solver = self.cp.CpSolver()
        solver.parameters.num_workers = WORKERS
        solver.parameters.max_time_in_seconds = SECONDS_MAX
        status = solver.solve(program)
        for lit in held:
            domain = domains[self.variables[abs(lit)].index].domain
            domain[0], domain[1] = 0, 1
        for at in range(self._rules, len(program.proto.constraints)):
            program.proto.constraints[at].clear_bool_or()
        if status not in (self.cp.OPTIMAL, self.cp.FEASIBLE):
            return None, None, bool(status == self.cp.INFEASIBLE)
        values = solver.response_proto.solution
        build = [0] + [values[x.index] for x in self.variables[1:]]
        return round(solver.objective_value), build, bool(status == self.cp.OPTIMAL)

    def repairs(self, held: Sequence[int], weights: Mapping[int, int]) -> list[int]:
        drops = {-lit: weights[lit] for lit in held}
        return one_after_another(lambda barred: self._cheapest((), drops, barred)[:2], held, weights)

    def best(self, held: Sequence[int]) -> tuple[int | None, bool]:
        cost, _, is_proved = self._cheapest(held, self.model.prices)
        return cost, is_proved


class Highs:
    """HiGHS: a 0-1 program kept; what is held is set by the bounds of the columns."""

    def __init__(self, model: Model) -> None:
        import highspy
        import numpy

        self.model, self.numpy = model, numpy
        self.infinite = highspy.kHighsInf
        self.highs: Any = highspy.Highs()
        for option, value in (
            ("output_flag", False),
            ("threads", 2),
            ("time_limit", SECONDS_MAX),
            ("mip_rel_gap", 0.0),
            ("mip_abs_gap", 0.5),
        ):
            self.highs.setOptionValue(option, value)
        self.count = model.problem.count
        self.columns = numpy.arange(self.count, dtype=numpy.int32)
        self.highs.addVars(self.count, numpy.zeros(self.count), numpy.ones(self.count))
        self.highs.changeColsIntegrality(
            self.count, self.columns, numpy.array([highspy.HighsVarType.kInteger] * self.count)
        )
        self._add_problem(model.problem)

    def _add_problem(self, problem: Problem) -> None:
        for clause in problem.clauses:
            self._add_at_least_one(clause)
        for together in problem.at_most_one:
            self._add_row([(1, v) for v in together], -self.infinite, 1.0)
        for limit in problem.limits:
            self._add_row(limit.terms, -self.infinite, float(limit.bound))

    def _add_at_least_one(self, lits: Iterable[int]) -> None:
        self._add_row([(1, lit) for lit in lits], 1.0, self.infinite)

    def _add_row(self, terms: Sequence[tuple[int, int]], low: float, high: float) -> None:
        """A false literal is one less its variable; a row names each column once."""
        moved = sum(weight for weight, lit in terms if lit < 0)
        self.highs.addRow(
            low - moved,
            high - moved,
            len(terms),
            self.numpy.array([abs(lit) - 1 for _, lit in terms], dtype=self.numpy.int32),
            self.numpy.array([float(weight if lit > 0 else -weight) for weight, lit in terms]),
        )

    def _cheapest(
        self, held: Sequence[int], costs: Mapping[int, int], barred: Sequence[Sequence[int]] = ()
    ) -> tuple[int | None, list[int] | None, bool]:
        highs, rows = self.highs, self.highs.getNumRow()
        for drops in barred:
            self._add_at_least_one(drops)
        for lit in held:
            highs.changeColBounds(abs(lit) - 1, float(lit > 0), float(lit > 0))
        priced = self.numpy.zeros(self.count)
        for lit, cost in costs.items():
            priced[abs(lit) - 1] += cost if lit > 0 else -cost
        highs.changeColsCost(self.count, self.columns, priced)
        highs.clearSolver()
        highs.run()
        status = str(highs.getModelStatus())
        values = list(highs.getSolution().col_value)
        for lit in held:
            highs.changeColBounds(abs(lit) - 1, 0.0, 1.0)
        if barred:
            more = highs.getNumRow() - rows
            highs.deleteRows(more, self.numpy.arange(rows, rows + more, dtype=self.numpy.int32))
        if "Infeasible" in status or len(values) < self.count:
            return None, None, "Infeasible" in status
        build = [0] + [int(value > 0.5) for value in values[: self.count]]
        paid = sum(cost for lit, cost in costs.items() if build[abs(lit)] == (lit > 0))
        return paid, build, "Optimal" in status

    def repairs(self, held: Sequence[int], weights: Mapping[int, int]) -> list[int]:
        drops = {-lit: weights[lit] for lit in held}
        return one_after_another(lambda barred: self._cheapest((), drops, barred)[:2], held, weights)

    def best(self, held: Sequence[int]) -> tuple[int | None, bool]:
        cost, _, is_proved = self._cheapest(held, self.model.prices)
        return cost, is_proved


class Rc2:
    """python-sat's RC2: core-guided MaxSAT, built anew each time; no limits."""

    def __init__(self, model: Model) -> None:
        if model.problem.limits:
            raise NoLimitsError("takes no limits")
        from pysat.card import CardEnc, EncType

        self.model = model
        top = model.problem.count
        self.hard = [list(clause) for clause in model.problem.clauses]
        for together in model.problem.at_most_one:
            how = EncType.pairwise if len(together) <= 6 else EncType.seqcounter
            encoded = CardEnc.atmost(lits=list(together), bound=1, top_id=top, encoding=how)
            top = max(top, encoded.nv)
            self.hard.extend(encoded.clauses)

    def _cheapest(self, soft: Mapping[int, int], hard: Iterable[Sequence[int]]) -> tuple[int | None, list[int] | None]:
        from pysat.examples.rc2 import RC2Stratified
        from pysat.formula import WCNF

        formula = WCNF()
        formula.extend(self.hard)
        formula.extend([list(clause) for clause in hard])
        for lit, weight in soft.items():
            formula.append([lit], weight=weight)
        with RC2Stratified(formula, solver="g4", adapt=True, exhaust=True) as search:
            found = search.compute()
            if found is None:
                return None, None
            build = [0] * (self.model.problem.count + 1)
            for lit in found:
                if 0 < lit < len(build):
                    build[lit] = 1
            return search.cost, build

    def repairs(self, held: Sequence[int], weights: Mapping[int, int]) -> list[int]:
        soft = {lit: weights[lit] for lit in held}
        return one_after_another(lambda barred: self._cheapest(soft, barred), held, weights)

    def best(self, held: Sequence[int]) -> tuple[int | None, bool]:
        cost, _ = self._cheapest({-v: price for v, price in self.model.prices.items()}, [[lit] for lit in held])
        return cost, cost is not None
