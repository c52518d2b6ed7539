"""Budgets, answers ahead and odd problems: partial answers are honest, and nothing asked before changes the truth."""

import random

import pytest

from specbuilder.reasoning.budget import Budget, Spent
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.reasoner import Reasoner, Swap
from specbuilder.reasoning.states import States
from tests.reasoning.brute import all_builds, keeping, tiny_problem


def pigeons(count: int) -> Problem:
    """One pigeon more than holes: no build, and a long way to find out."""
    problem = Problem()
    sits = [[problem.new() for _ in range(count)] for _ in range(count + 1)]
    for row in sits:
        problem.add_clause(row)
    for hole in zip(*sits, strict=True):
        problem.add_at_most_one(hole)
    return problem


def test_a_spent_budget_raises_from_consistent_and_the_reasoner_goes_on() -> None:
    reasoner = Reasoner(pigeons(7))
    with pytest.raises(Spent):
        reasoner.consistent([], Budget(steps=5))
    assert reasoner.consistent([1, 2]) == frozenset((1, 2))
    with pytest.raises(Spent):
        reasoner.consistent([], Budget(seconds=0.01))


def test_no_build_at_all_is_an_empty_core() -> None:
    reasoner = Reasoner(pigeons(3))
    assert reasoner.consistent([]) == frozenset()
    assert reasoner.states([1]) == frozenset()
    assert reasoner.beside([1], [Swap(2, (1,))]) == [frozenset()]


def test_a_cancelled_question_says_what_it_does_not_know() -> None:
    reasoner = Reasoner(pigeons(6))
    answer = reasoner.states([], budget=Budget(cancelled=lambda: True))
    assert isinstance(answer, States)
    assert answer.unsettled
    assert all(answer.can_be(lit) is None for lit in answer.unsettled)
    assert reasoner.beside([], [Swap(1)], Budget(cancelled=lambda: True)) == [None]


@pytest.mark.parametrize("seed", range(40))
def test_partial_states_are_true_as_far_as_they_go(seed: int) -> None:
    dice = random.Random(seed)
    problem = tiny_problem(dice)
    builds = all_builds(problem)
    reasoner = Reasoner(problem)
    for steps in (0, 1, 2, 5, 30):
        held = [v if dice.random() < 0.6 else -v for v in dice.sample(range(1, problem.count + 1), 2)]
        answer = reasoner.states(held, budget=Budget(steps=steps))
        live = keeping(builds, held)
        if not isinstance(answer, States):
            assert not live
            continue
        for v in range(1, problem.count + 1):
            assert answer.can_be(v) in (None, any(build[v] for build in live))
            assert answer.can_be(-v) in (None, any(not build[v] for build in live))


@pytest.mark.parametrize("seed", range(20))
def test_answering_ahead_changes_no_answer(seed: int) -> None:
    dice = random.Random(seed)
    problem = tiny_problem(dice)
    plain, ahead = Reasoner(problem), Reasoner(problem)
    held: list[int] = []
    for _ in range(5):
        ahead.prepare(held, Budget(steps=dice.choice((3, 10_000))))
        v = dice.randint(1, problem.count)
        held = [lit for lit in held if abs(lit) != v] + [v if dice.random() < 0.7 else -v]
        one, two = plain.states(held), ahead.states(held)
        if isinstance(one, States):
            assert one == two
        else:
            assert not isinstance(two, States)


def test_enormous_weights_are_whole_numbers_to_the_end() -> None:
    problem = Problem()
    a, b, c = (problem.new() for _ in range(3))
    huge = 10**30
    problem.add_limit([(huge, a), (huge, b), (-1, c)], 2 * huge - 1)
    reasoner = Reasoner(problem)
    assert reasoner.beside([a, b], [Swap(c), Swap(-c)]) == [True, frozenset((a, b, -c))]
    states = reasoner.states([a, b])
    assert isinstance(states, States)
    assert states.can_be(-c) is False


def test_what_is_kept_stays_bounded() -> None:
    problem = Problem()
    variables = [problem.new() for _ in range(24)]
    for at in range(0, 24, 3):
        problem.add_at_most_one(variables[at : at + 3])
    reasoner = Reasoner(problem)
    dice = random.Random(3)
    for _ in range(400):
        held = [v if dice.random() < 0.5 else -v for v in dice.sample(variables, 9)]
        reasoner.states(held)
    reasoner.store.trim()
    assert len(reasoner.store) <= 1_500
