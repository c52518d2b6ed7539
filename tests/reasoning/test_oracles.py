"""Middle-sized made-up catalogues with limits, against established engines."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import pytest

from specbuilder.reasoning.best import Completer
from specbuilder.reasoning.conflicts import minimal_conflicts
from specbuilder.reasoning.reasoner import Reasoner
from specbuilder.reasoning.reasons import minimal_reason
from specbuilder.reasoning.repairs import repairs
from specbuilder.reasoning.states import States
from tests.benchmarks.reasoning.generated import model_document, visit_document
from tests.benchmarks.reasoning.models import Model, compiled, replay, visit_of
from tests.reasoning.referee import ClingoReferee, SatReferee, minimal_by

pytest.importorskip("clingo")
pytest.importorskip("pysat")

SIZES = ((40, 1), (40, 2), (90, 3), (90, 4))


@cache
def _model(size: int, seed: int) -> Model:
    return compiled(model_document(size, seed))


def _held(size: int, seed: int) -> Iterator[list[int]]:
    document = model_document(size, seed)
    yield from list(replay(_model(size, seed), visit_of(visit_document(document, seed))))[::3]


@pytest.mark.parametrize(("size", "seed"), SIZES)
def test_states_and_reasons(size: int, seed: int) -> None:
    model = _model(size, seed)
    reasoner, clingo = Reasoner(model.problem), ClingoReferee(model.problem)
    every = range(1, model.problem.count + 1)
    for held in _held(size, seed):
        states, can_be = reasoner.states(held), clingo.can_be(held)
        if can_be is None:
            assert isinstance(states, frozenset)
            continue
        assert isinstance(states, States)
        assert {v for v in every if states.can_be_true >> v & 1} == {v for v in every if v in can_be}
        assert {v for v in every if states.can_be_false >> v & 1} == {v for v in every if -v in can_be}
        for v in [v for v in every if v not in can_be][::5]:
            assert minimal_by(clingo, minimal_reason(reasoner, held, v), v)


@pytest.mark.parametrize(("size", "seed"), SIZES)
def test_conflicts_and_repairs(size: int, seed: int) -> None:
    model = _model(size, seed)
    reasoner, sat = Reasoner(model.problem), SatReferee(model.problem)
    for held in _held(size, seed):
        if sat.build(held) is not None:
            continue
        for conflict in minimal_conflicts(reasoner, held, 5).found:
            assert minimal_by(sat, conflict[:-1], conflict[-1])
        weights = {lit: 3 + at % 4 for at, lit in enumerate(held)}
        for way in repairs(reasoner, held, weights).ways:
            kept = [lit for lit in held if lit not in way.dropped]
            assert sat.build(kept) is not None
            assert all(sat.build([*kept, lit]) is None for lit in way.dropped)
        drops = {-lit: weight for lit, weight in weights.items()}
        cost, _, is_proved = ClingoReferee(model.problem, drops).best(())
        assert is_proved
        assert repairs(reasoner, held, weights, 1).ways[0].cost == cost


@pytest.mark.parametrize(("size", "seed"), SIZES)
def test_cheapest_completions(size: int, seed: int) -> None:
    model = _model(size, seed)
    completer = Completer(Reasoner(model.problem))
    clingo = ClingoReferee(model.problem, model.prices, ["--opt-strategy=usc"])
    for held in _held(size, seed):
        cost, _, is_proved = clingo.best(held)
        found = completer.best(held, model.prices)
        assert is_proved
        assert found.is_proved
        assert found.cost == cost
        if found.build is not None:
            assert model.problem.broken_by(found.build) is None
