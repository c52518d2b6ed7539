"""Reasons are true, minimal, the same every time, and name what was taken first."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.reasoning.budget import Budget, Spent
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.reasoner import Reasoner
from specbuilder.reasoning.reasons import NotForbiddenError, minimal_reason, minimal_reasons
from tests.reasoning.referee import Brute
from tests.reasoning.strategies import held_of, problems, seeded_held, seeded_problem


def _earliest(reasons: frozenset[frozenset[int]], held: list[int]) -> frozenset[int]:
    """Of several reasons the one whose last member came first, then whose last but one did, and so on."""
    return min(reasons, key=lambda reason: sorted(map(held.index, reason), reverse=True))


@settings(max_examples=150, deadline=None)
@given(st.data())
def test_a_reason_is_the_earliest_of_all_minimal_ones(data: st.DataObject) -> None:
    problem = data.draw(problems())
    held = data.draw(held_of(problem))
    brute, reasoner = Brute(problem), Reasoner(problem)
    for v in range(1, problem.count + 1):
        for lit in (v, -v):
            reasons = brute.reasons(held, lit)
            if reasons:
                assert frozenset(minimal_reason(reasoner, held, lit)) == _earliest(reasons, held)
            else:
                with pytest.raises(NotForbiddenError):
                    minimal_reason(reasoner, held, lit)


@pytest.mark.parametrize("seed", range(20))
def test_all_reasons_are_found_the_shortest_first(seed: int) -> None:
    random = Random(seed)
    for _ in range(50):
        problem = seeded_problem(random)
        brute, reasoner, held = Brute(problem), Reasoner(problem), seeded_held(random, problem)
        for v in range(1, problem.count + 1):
            reasons = brute.reasons(held, v)
            found = minimal_reasons(reasoner, held, v, 1_000)
            assert found.is_complete
            assert {frozenset(reason) for reason in found.found} == reasons
            assert len(found.found) == len(reasons)
            keys = [(len(reason), list(map(held.index, reason))) for reason in found.found]
            assert keys == sorted(keys)


@pytest.mark.parametrize("seed", range(10))
def test_what_was_asked_before_changes_no_reason(seed: int) -> None:
    random = Random(seed)
    problem = seeded_problem(random)
    held = seeded_held(random, problem)
    worn = Reasoner(problem)
    for _ in range(30):
        worn.consistent(seeded_held(random, problem))
    for v in range(1, problem.count + 1):
        assert minimal_reasons(worn, held, v, 2) == minimal_reasons(Reasoner(problem), held, v, 2)


def _two_ways() -> Problem:
    """4 is not beside 1, and not beside 2 and 3 together."""
    problem = Problem(count=5)
    problem.add_clause((-1, -4))
    problem.add_clause((-2, -3, -4))
    return problem


def test_the_choices_taken_first_are_named() -> None:
    reasoner = Reasoner(_two_ways())
    assert minimal_reason(reasoner, [1, 5, 2, 3], 4) == (1,)
    assert minimal_reason(reasoner, [2, 3, 5, 1], 4) == (2, 3)


def test_fewest_members_come_first_and_the_list_says_whether_it_is_whole() -> None:
    reasoner = Reasoner(_two_ways())
    both = minimal_reasons(reasoner, [2, 3, 5, 1], 4, 9)
    assert both.found == ((1,), (2, 3))
    assert both.is_complete
    assert not minimal_reasons(reasoner, [2, 3, 5, 1], 4, 1).is_complete


def test_why_something_follows_is_why_its_opposite_cannot_be() -> None:
    problem = Problem(count=3)
    problem.add_clause((-1, 2))
    assert minimal_reason(Reasoner(problem), [3, 1], -2) == (1,)


def test_what_can_never_be_needs_no_choice_as_its_reason() -> None:
    problem = Problem(count=2)
    problem.add_clause((-2,))
    assert minimal_reason(Reasoner(problem), [1], 2) == ()


def test_a_limit_is_a_reason_like_any_rule() -> None:
    problem = Problem(count=4)
    problem.add_limit([(5, 1), (1, 2), (4, 3), (4, 4)], 9)
    assert minimal_reason(Reasoner(problem), [1, 2, 3], 4) == (1, 2)
    assert minimal_reason(Reasoner(problem), [3, 2, 1], 4) == (3, 1)


def test_a_spent_budget_is_said() -> None:
    problem = _two_ways()
    with pytest.raises(Spent):
        minimal_reason(Reasoner(_hard(9)), [], 1, Budget(steps=3))
    assert not minimal_reasons(Reasoner(_hard(9)), [], 1, 9, Budget(steps=3)).is_complete
    assert minimal_reason(Reasoner(problem), [1], 4, Budget(seconds=5)) == (1,)


def _hard(holes: int) -> Problem:
    """One thing more than there are places for: no build, and a long way to see it."""
    problem = Problem(count=1)
    places = [[problem.new() for _ in range(holes)] for _ in range(holes + 1)]
    for row in places:
        problem.add_clause(row)
    for column in zip(*places, strict=True):
        problem.add_at_most_one(column)
    return problem
