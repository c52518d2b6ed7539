"""What is asked in a benchmark: the questions of each task along a visit, and who is asked."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import Any

from specbuilder.reasoning.budget import Budget, Spent
from specbuilder.reasoning.reasoner import Reasoner
from specbuilder.reasoning.states import States
from tests.benchmarks.reasoning.models import Model, Step, replay
from tests.benchmarks.reasoning.optimisers import CpSat, Highs, Rc2
from tests.benchmarks.reasoning.peers import Clingo, Ours, Sat
from tests.reasoning.referee import ClingoReferee, SatReferee, minimal_by

BLOCKED_PER_STEP = 6
PREPARING_SECONDS_MAX = 20.0
"""For one step of a visit; what is not settled by then is not asked."""


class Task(Enum):
    STATES = "states"
    REASON = "reason"
    REPAIRS = "repairs"
    BEST = "best"


PEERS: dict[Task, tuple[Callable[[Model], Any], ...]] = {
    Task.STATES: (Ours, Sat, Clingo),
    Task.REASON: (Ours, Sat, Clingo),
    Task.REPAIRS: (Ours, Clingo, Rc2, CpSat, Highs),
    Task.BEST: (Ours, Clingo, Rc2, CpSat, Highs),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    held: tuple[int, ...]
    lit: int = 0
    """The literal that cannot be, where a reason is asked for."""


def questions(model: Model, visit: list[Step], tasks: Sequence[Task]) -> dict[Task, list[Question]]:
    """Along a visit; held by our own reasoner, whose answers the peers' confirm."""
    reasoner = Reasoner(model.problem)
    standing: list[list[int]] = []
    clashing: list[list[int]] = []
    every = list(replay(model, visit))
    for held in every:
        try:
            stands = isinstance(reasoner.consistent(held, Budget(seconds=PREPARING_SECONDS_MAX)), bytes)
            (standing if stands else clashing).append(held)
        except Spent:
            continue
    asked: dict[Task, list[Question]] = {}
    for task in tasks:
        match task:
            case Task.STATES:
                asked[task] = [Question(held=tuple(held)) for held in [[], *standing]]
            case Task.REASON:
                asked[task] = _blocked(model, reasoner, standing)
            case Task.REPAIRS:
                asked[task] = [Question(held=tuple(held)) for held in [*clashing, *_heaped_up(model, visit, reasoner)]]
            case Task.BEST:
                asked[task] = [
                    Question(held=tuple(held)) for held in [[], *(held for held in every[3::4] if held in standing)]
                ]
    return asked


def _blocked(model: Model, reasoner: Reasoner, standing: list[list[int]]) -> list[Question]:
    """Options that the choices, not the rules alone, have newly blocked; a few of each step."""
    free = reasoner.states([], model.options, Budget(seconds=PREPARING_SECONDS_MAX))
    asked: list[Question] = []
    before: set[int] = set()
    for held in standing:
        states = reasoner.states(held, model.options, Budget(seconds=PREPARING_SECONDS_MAX))
        if not isinstance(states, States) or not isinstance(free, States):
            continue
        cannot = ~states.can_be_true & free.can_be_true
        blocked = [v for v in model.options if cannot >> v & 1 and v not in states.unsettled and -v not in held]
        new = [v for v in blocked if v not in before] or blocked
        each = max(1, len(new) // BLOCKED_PER_STEP)
        asked += [Question(held=tuple(held), lit=v) for v in new[::each][:BLOCKED_PER_STEP]]
        before = set(blocked)
    return asked


def _heaped_up(model: Model, visit: list[Step], reasoner: Reasoner) -> list[list[int]]:
    """Harder clashes: all that was ever chosen up to a step, nothing taken back; every third of them."""
    ever: dict[int, int] = {}
    heaps: list[list[int]] = []
    for held in replay(model, visit):
        for lit in held:
            ever.setdefault(abs(lit), lit)
        heap = list(ever.values())
        try:
            if len(heap) >= 6 and not isinstance(
                reasoner.consistent(heap, Budget(seconds=PREPARING_SECONDS_MAX)), bytes
            ):
                heaps.append(heap)
        except Spent:
            continue
    return heaps[::3]


def weights(held: Sequence[int]) -> dict[int, int]:
    """What dropping costs in the benchmark."""
    return {lit: 3 + at * 7 % 5 for at, lit in enumerate(held)}


def answerer(task: Task, peer: Any) -> Callable[[Question], Any]:
    """How a peer is asked."""
    match task:
        case Task.STATES:
            return lambda question: peer.states(question.held)
        case Task.REASON:
            return lambda question: peer.reason(question.held, question.lit)
        case Task.REPAIRS:
            return lambda question: peer.repairs(question.held, weights(question.held))
        case Task.BEST:
            getattr(peer, "prepare_best", lambda: None)()
            return lambda question: peer.best(question.held)


def comparer(task: Task, model: Model) -> Callable[[Question, Any], Hashable]:
    """What of an answer must be the same for all; None: the peer left it open."""
    match task:
        case Task.STATES:
            return lambda _, answer: hash(tuple(sorted(answer)))
        case Task.REASON:
            referee = ClingoReferee(model.problem) if model.problem.limits else SatReferee(model.problem)
            return lambda question, answer: minimal_by(referee, answer, question.lit)
        case Task.REPAIRS:
            return lambda _, answer: tuple(answer)
        case Task.BEST:
            return lambda _, answer: answer[0] if answer[1] else None
