"""The cheapest completion is the optimum and says so; the smallest worst; checks from outside; partial answers."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.reasoning.best import Completer
from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.builds import Build
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.reasoner import Reasoner
from tests.benchmarks.reasoning.generated import model_document
from tests.benchmarks.reasoning.models import compiled
from tests.reasoning.referee import Brute, paid
from tests.reasoning.strategies import held_of, literals, problems, seeded_costs, seeded_held, seeded_problem


@settings(max_examples=100, deadline=None)
@given(st.data())
def test_the_best_is_the_optimum(data: st.DataObject) -> None:
    problem = data.draw(problems())
    held = data.draw(held_of(problem))
    costs = data.draw(st.dictionaries(literals(problem), st.integers(-6, 9), max_size=9))
    _compare(Completer(Reasoner(problem)), problem, held, costs)


@pytest.mark.parametrize("seed", range(20))
def test_hundreds_of_completions(seed: int) -> None:
    random = Random(seed)
    for _ in range(20):
        problem = seeded_problem(random)
        completer = Completer(Reasoner(problem))
        for _ in range(3):
            _compare(completer, problem, seeded_held(random, problem), seeded_costs(random, problem, -6))


def _compare(completer: Completer, problem: Problem, held: list[int], costs: dict[int, int]) -> None:
    expected = Brute(problem).best(held, costs)
    found = completer.best(held, costs)
    assert found.is_proved
    assert found.cost == expected
    if found.build is not None:
        assert problem.broken_by(found.build) is None
        assert all(found.build[lit] for lit in held)
        assert paid(found.build, costs) == found.cost == found.floor


def _barring(bad: list[int], lesson: list[int]) -> Callable[[Build, int], list[int] | None]:
    """A judge that lets no build pass in which all of ``bad`` are true."""
    return lambda build, _: lesson if all(build[lit] for lit in bad) else None


def _passing(build: bytearray, bad: list[int]) -> bool:
    return not all(build[lit] if lit > 0 else not build[-lit] for lit in bad)


@pytest.mark.parametrize("seed", range(10))
def test_what_a_judge_refuses_is_never_given_and_the_best_of_the_rest_is(seed: int) -> None:
    random = Random(seed)
    for _ in range(20):
        problem = seeded_problem(random)
        held, costs = seeded_held(random, problem)[:3], seeded_costs(random, problem, -6)
        bad = [random.choice((1, -1)) * v for v in random.sample(range(1, problem.count + 1), 2)]
        left = [build for build in Brute(problem).builds(held) if _passing(build, bad)]
        expected = min((paid(build, costs) for build in left), default=None)
        for lesson in (bad, []):
            found = Completer(Reasoner(problem)).best(held, costs, judge=_barring(bad, lesson))
            assert (found.cost, found.is_proved) == (expected, True)


@pytest.mark.parametrize("seed", range(10))
def test_the_smallest_worst_is_the_optimum(seed: int) -> None:
    random = Random(seed)
    for _ in range(20):
        problem = seeded_problem(random)
        held, weeks = seeded_held(random, problem)[:3], seeded_costs(random, problem, 0)
        then = {v: random.randint(0, 5) for v in range(1, problem.count + 1)}
        bad = [random.choice((1, -1)) * v for v in random.sample(range(1, problem.count + 1), 2)]
        builds = Brute(problem).builds(held)
        completer = Completer(Reasoner(problem))
        found = completer.smallest_worst(held, weeks, then)
        assert (found.worst, found.cost) == _least(builds, weeks, then)
        judged = completer.smallest_worst(held, weeks, then, judge=_barring(bad, bad))
        assert (judged.worst, judged.cost) == _least([b for b in builds if _passing(b, bad)], weeks, then)
        assert found.is_proved
        assert judged.is_proved


def _least(builds: list[bytearray], weeks: dict[int, int], then: dict[int, int]) -> tuple[int, int] | tuple[None, None]:
    def worst(build: bytearray) -> int:
        return max((cost for lit, cost in weeks.items() if (build[lit] if lit > 0 else not build[-lit])), default=0)

    return min(((worst(build), paid(build, then)) for build in builds), default=(None, None))


def test_the_same_question_has_the_same_answer_whatever_was_asked_before() -> None:
    model = compiled(model_document(60, 3))
    fresh, worn = Completer(Reasoner(model.problem)), Completer(Reasoner(model.problem))
    for option in model.options[:30]:
        worn.best([option], model.prices)
    assert worn.best([], model.prices) == fresh.best([], model.prices)


def test_no_build_at_all_is_proved() -> None:
    problem = Problem(count=2)
    problem.add_clause((1, 2))
    found = Completer(Reasoner(problem)).best([-1, -2], {1: 5})
    assert (found.build, found.cost, found.is_proved) == (None, None, True)
    nothing = Completer(Reasoner(problem)).smallest_worst([-1, -2], {1: 5}, {})
    assert (nothing.build, nothing.is_proved) == (None, True)


def test_enormous_costs_of_either_sign() -> None:
    problem = Problem(count=3)
    problem.add_clause((1, 2))
    problem.add_clause((-2, -3))
    found = Completer(Reasoner(problem)).best([], {1: 10**40, 2: 10**40 + 1, 3: -5})
    assert (found.cost, found.is_proved) == (10**40 - 5, True)


def test_called_off_at_once_it_has_nothing_and_says_so() -> None:
    model = compiled(model_document(60, 3))
    found = Completer(Reasoner(model.problem)).best([], model.prices, budget=Budget(cancelled=lambda: True))
    assert (found.build, found.is_proved) == (None, False)


def test_a_spent_budget_gives_the_best_so_far_and_an_honest_floor() -> None:
    model = compiled(model_document(300, 1))
    completer = Completer(Reasoner(model.problem))
    whole = completer.best([], model.prices)
    assert whole.is_proved
    assert whole.cost is not None
    for steps in (60, 120, 200):
        part = completer.best([], model.prices, budget=Budget(steps=steps))
        assert part.floor <= whole.cost
        if part.build is not None:
            assert part.cost == paid(part.build, model.prices) >= whole.cost
            assert model.problem.broken_by(part.build) is None
