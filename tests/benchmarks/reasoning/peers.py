"""Who is measured: our reasoning, and established engines given the same questions in the way that suits them best.

Each keeps what it has built between questions. Which tasks one can do shows by the methods it has:
``states(held)`` the literals that some build has; ``reason(held, lit)`` a minimal reason; ``repairs(held, weights)``
the three cheapest sets to drop, as costs; ``best(held)`` the cost of the cheapest completion and whether it is proved.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from specbuilder.reasoning.best import Completer
from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.builds import Build
from specbuilder.reasoning.reasoner import Reasoner
from specbuilder.reasoning.reasons import minimal_reason
from specbuilder.reasoning.repairs import repairs
from specbuilder.reasoning.states import States
from tests.benchmarks.reasoning.models import Model
from tests.reasoning.referee import ClingoReferee, SatReferee

Literals = frozenset[int]
WAYS = 3
"""How many repairs are asked for."""
SECONDS_MAX = 20.0
"""For one completion."""


class Ours:
    """The reasoning of the program."""

    def __init__(self, model: Model) -> None:
        self.model = model
        self.reasoner = Reasoner(model.problem)
        self._completer: Completer | None = None

    def states(self, held: Sequence[int]) -> Literals:
        states = self.reasoner.states(held, self.model.options)
        assert isinstance(states, States)
        assert not states.unsettled
        true, false = states.can_be_true, states.can_be_false
        return frozenset(
            [v for v in self.model.options if true >> v & 1] + [-v for v in self.model.options if false >> v & 1]
        )

    def reason(self, held: Sequence[int], lit: int) -> Sequence[int]:
        return minimal_reason(self.reasoner, held, lit)

    def repairs(self, held: Sequence[int], weights: Mapping[int, int]) -> list[int]:
        return [way.cost for way in repairs(self.reasoner, held, weights, WAYS).ways]

    def prepare_best(self) -> None:
        """What is done once for a catalogue and a kind of cost."""
        self._completer = Completer(self.reasoner)
        self._completer.prepare()

    def best(self, held: Sequence[int]) -> tuple[int | None, bool]:
        assert self._completer is not None
        found = self._completer.best(held, self.model.prices, budget=Budget(seconds=SECONDS_MAX))
        return found.cost, found.is_proved

    def check(self, held: Sequence[int]) -> Build | None:
        answer = self.reasoner.consistent(held)
        return answer if isinstance(answer, bytes) else None


class Sat:
    """python-sat: old builds kept, each new one steered towards what no build has shown yet."""

    def __init__(self, model: Model) -> None:
        self.model = model
        self.referee = SatReferee(model.problem, "minisat22")
        self.core_referee = SatReferee(model.problem, "glucose4")
        self._kept: list[bytearray] = []

    def states(self, held: Sequence[int]) -> Literals:
        options = self.model.options
        live = [build for build in self._kept if all(build[lit] if lit > 0 else not build[-lit] for lit in held)]
        seen = {v if build[v] else -v for build in live for v in options}
        if not live:
            self._see(held, seen)
        follows = set(self.referee.solver.propagate(assumptions=list(held))[1])
        unseen = [lit for v in options for lit in (v, -v) if lit not in seen and -lit not in follows]
        for at, lit in enumerate(unseen):
            if lit not in seen:
                self.referee.solver.set_phases([other for other in unseen[at:] if other not in seen])
                self._see([*held, lit], seen)
        return frozenset(seen)

    def _see(self, held: Sequence[int], seen: set[int]) -> None:
        build = self.referee.build(held)
        if build is not None:
            self._kept.append(build)
            del self._kept[:-600]
            seen.update(v if build[v] else -v for v in self.model.options)

    def reason(self, held: Sequence[int], lit: int) -> Sequence[int]:
        return core_and_deletion(self.core_referee, held, lit)


class Clingo:
    """clingo: one run for what some build has, one for what every build has; core-guided optimisation."""

    def __init__(self, model: Model) -> None:
        self.model = model
        self.referee = ClingoReferee(model.problem)
        self._priced: ClingoReferee | None = None

    def states(self, held: Sequence[int]) -> Literals:
        can_be = self.referee.can_be(held)
        assert can_be is not None
        options = set(self.model.options)
        return frozenset(lit for lit in can_be if abs(lit) in options)

    def reason(self, held: Sequence[int], lit: int) -> Sequence[int]:
        return core_and_deletion(self.referee, held, lit)

    def repairs(self, held: Sequence[int], weights: Mapping[int, int]) -> list[int]:
        """Built anew each time: a program's costs cannot be changed."""
        drops = {-lit: weights[lit] for lit in held}

        def cheapest(barred: list[list[int]]) -> tuple[int | None, bytearray | None]:
            return ClingoReferee(self.model.problem, drops, ["--opt-strategy=usc"], barred).best(())[:2]

        return one_after_another(cheapest, held, weights)

    def prepare_best(self) -> None:
        self._priced = ClingoReferee(self.model.problem, self.model.prices, ["--opt-strategy=usc"])

    def best(self, held: Sequence[int]) -> tuple[int | None, bool]:
        assert self._priced is not None
        cost, _, is_proved = self._priced.best(held, SECONDS_MAX)
        return cost, is_proved


def core_and_deletion(referee: SatReferee | ClingoReferee, held: Sequence[int], lit: int) -> Sequence[int]:
    """The engine's core, then one member after another left out as long as the rest still is a core."""
    assert referee.build([*held, lit]) is None
    core = set(referee.core())
    reason = [other for other in held if other in core]
    at = 0
    while at < len(reason):
        if referee.build([*reason[:at], *reason[at + 1 :], lit]) is None:
            core = set(referee.core())
            reason = [other for k, other in enumerate(reason) if k != at and other in core]
            at = min(at, len(reason))
        else:
            at += 1
    return reason


def one_after_another(
    cheapest: Callable[[list[list[int]]], tuple[int | None, Sequence[int] | None]],
    held: Sequence[int],
    weights: Mapping[int, int],
) -> list[int]:
    """The costs of the cheapest repairs: the cheapest, then the cheapest that keeps something of each before."""
    costs: list[int] = []
    barred: list[list[int]] = []
    while len(costs) < WAYS:
        cost, build = cheapest(barred)
        if cost is None or build is None:
            break
        dropped = [lit for lit in held if not (build[lit] if lit > 0 else not build[-lit])]
        costs.append(sum(weights[lit] for lit in dropped))
        barred.append(dropped)
    return costs
