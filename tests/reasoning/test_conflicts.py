"""All minimal conflicts, the shortest first; what takes part in one, and what stands outside."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.conflicts import in_conflict, minimal_conflicts
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.reasoner import Reasoner
from tests.reasoning.referee import Brute
from tests.reasoning.strategies import held_of, problems, seeded_held, seeded_problem


@settings(max_examples=150, deadline=None)
@given(st.data())
def test_the_conflicts_are_all_minimal_ones(data: st.DataObject) -> None:
    problem = data.draw(problems())
    held = data.draw(held_of(problem))
    found = minimal_conflicts(Reasoner(problem), held, 1_000)
    assert found.is_complete
    assert {frozenset(conflict) for conflict in found.found} == Brute(problem).conflicts(held)
    assert [len(conflict) for conflict in found.found] == sorted(len(conflict) for conflict in found.found)


@pytest.mark.parametrize("seed", range(20))
def test_inside_is_what_some_minimal_conflict_names(seed: int) -> None:
    random = Random(seed)
    for _ in range(50):
        problem = seeded_problem(random)
        held = seeded_held(random, problem)
        named = frozenset().union(*Brute(problem).conflicts(held))
        entangled = in_conflict(Reasoner(problem), held)
        assert entangled.is_complete
        assert entangled.inside == tuple(lit for lit in held if lit in named)
        assert entangled.outside == tuple(lit for lit in held if lit not in named)


@pytest.mark.parametrize("seed", range(10))
def test_the_order_of_the_choices_orders_the_conflicts_and_changes_none(seed: int) -> None:
    random = Random(seed)
    problem = seeded_problem(random)
    held = seeded_held(random, problem)
    turned = random.sample(held, len(held))
    one, other = (minimal_conflicts(Reasoner(problem), order, 1_000) for order in (held, turned))
    assert set(map(frozenset, one.found)) == set(map(frozenset, other.found))


def test_dropping_a_rule_makes_no_conflict() -> None:
    for seed in range(200):
        random = Random(seed)
        problem = seeded_problem(random)
        held = seeded_held(random, problem)
        fewer = Problem(problem.count, problem.clauses[1:], problem.at_most_one, problem.limits)
        before = [set(c) for c in minimal_conflicts(Reasoner(problem), held, 1_000).found]
        for conflict in minimal_conflicts(Reasoner(fewer), held, 1_000).found:
            assert any(old <= set(conflict) for old in before)


def test_no_build_at_all_is_the_empty_conflict() -> None:
    problem = Problem(count=2)
    problem.add_clause(())
    found = minimal_conflicts(Reasoner(problem), [1, 2], 5)
    assert found.found == ((),)
    assert in_conflict(Reasoner(problem), [1, 2]).inside == ()


def test_what_is_given_is_not_named() -> None:
    problem = Problem(count=3)
    problem.add_clause((-1, -2, -3))
    assert minimal_conflicts(Reasoner(problem), [1, 2], 5, given=(3,)).found == ((1, 2),)


def test_both_of_opposites_are_a_conflict() -> None:
    assert minimal_conflicts(Reasoner(Problem(count=2)), [1, 2, -1], 5).found == ((1, -1),)


def test_called_off_it_says_that_it_is_not_whole() -> None:
    problem = Problem(count=3)
    problem.add_clause((-1, -2, -3))
    found = minimal_conflicts(Reasoner(problem), [1, 2], 5, Budget(cancelled=lambda: True))
    assert not found.is_complete
    assert not in_conflict(Reasoner(problem), [1, 2], Budget(cancelled=lambda: True)).is_complete
