"""The cheapest repairs: all of them, in order, one by one; lessons from outside; bad weights and spent budgets."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.reasoner import Reasoner
from specbuilder.reasoning.repairs import Ending, Repair, Repairs, repairs
from tests.reasoning.referee import Brute, minimal_subsets
from tests.reasoning.strategies import held_of, problems, seeded_held, seeded_problem


@settings(max_examples=150, deadline=None)
@given(st.data())
def test_the_repairs_are_all_minimal_ones_the_cheapest_first(data: st.DataObject) -> None:
    problem = data.draw(problems())
    held = data.draw(held_of(problem))
    weights = {lit: data.draw(st.integers(0, 4)) for lit in held}
    _compare(problem, held, weights)


@pytest.mark.parametrize("seed", range(20))
def test_thousands_of_repairs(seed: int) -> None:
    random = Random(seed)
    for _ in range(100):
        problem = seeded_problem(random)
        held = seeded_held(random, problem)
        _compare(problem, held, {lit: random.randint(0, 4) for lit in held})


def _compare(problem: Problem, held: list[int], weights: dict[int, int]) -> None:
    expected = Brute(problem).repairs(held, weights)
    search = Repairs(Reasoner(problem), held, weights)
    ways = list(search)
    assert search.ending is Ending.NONE_LEFT
    assert [way.cost for way in ways] == [cost for cost, _ in expected]
    assert {frozenset(way.dropped) for way in ways} == {dropped for _, dropped in expected}
    for way in ways:
        assert problem.broken_by(way.build) is None
        assert all(way.build[lit] for lit in held if lit not in way.dropped)


@pytest.mark.parametrize("seed", range(10))
def test_the_first_three_are_the_same_whatever_was_asked_before(seed: int) -> None:
    random = Random(seed)
    problem = seeded_problem(random)
    held = seeded_held(random, problem)
    worn = Reasoner(problem)
    for _ in range(30):
        worn.consistent(seeded_held(random, problem))
    one, other = (repairs(reasoner, held).ways for reasoner in (worn, Reasoner(problem)))
    assert [way.dropped for way in one] == [way.dropped for way in other]


def _pair() -> Problem:
    """1 and 2 exclude each other."""
    problem = Problem(count=3)
    problem.add_clause((-1, -2))
    return problem


def test_of_equal_ways_the_one_that_keeps_the_earlier_choice_is_first() -> None:
    assert [way.dropped for way in repairs(Reasoner(_pair()), [1, 2, 3]).ways] == [(2,), (1,)]
    assert [way.dropped for way in repairs(Reasoner(_pair()), [2, 1, 3]).ways] == [(1,), (2,)]


def test_nothing_wrong_is_the_empty_repair() -> None:
    found = repairs(Reasoner(_pair()), [1, 3])
    assert [(way.dropped, way.cost) for way in found.ways] == [((), 0)]
    assert found.ending is Ending.NONE_LEFT


def test_what_is_given_is_never_dropped() -> None:
    assert [way.dropped for way in repairs(Reasoner(_pair()), [2, 3], given=(1,)).ways] == [(2,)]
    assert repairs(Reasoner(_pair()), [3], given=(1, 2)).ways == ()


def test_no_build_at_all_has_no_repair() -> None:
    problem = Problem(count=1)
    problem.add_clause(())
    found = repairs(Reasoner(problem), [1])
    assert found.ways == ()
    assert found.ending is Ending.NONE_LEFT


def test_a_weight_below_nought_is_refused_and_an_enormous_one_is_not() -> None:
    with pytest.raises(ValueError, match="below nought"):
        repairs(Reasoner(_pair()), [1, 2], {1: -1})
    assert [way.cost for way in repairs(Reasoner(_pair()), [1, 2], {1: 10**30}).ways] == [1, 10**30]


def test_a_lesson_from_outside_holds_for_all_that_come_later() -> None:
    """Outside it turns out that 1 and 3 cannot be kept together either."""

    def judge(way: Repair) -> tuple[int, ...] | None:
        return (1, 3) if {1, 3}.isdisjoint(way.dropped) else None

    assert [set(way.dropped) for way in repairs(Reasoner(_pair()), [1, 2, 3], judge=judge).ways] == [{1}, {2, 3}]


def test_a_refusal_without_a_lesson_bars_just_that_way() -> None:
    refused: list[tuple[int, ...]] = []

    def judge(way: Repair) -> tuple[int, ...] | None:
        if len(way.dropped) == 1:
            refused.append(way.dropped)
            return ()
        return None

    ways = repairs(Reasoner(_pair()), [1, 2, 3], judge=judge, most=9)
    assert refused == [(2,), (1,)]
    assert {way.dropped for way in ways.ways} == {(2, 3), (1, 2), (1, 3)}
    assert ways.ending is Ending.NONE_LEFT


@pytest.mark.parametrize("seed", range(5))
def test_lessons_give_the_cheapest_of_what_the_judge_lets_pass(seed: int) -> None:
    random = Random(seed)
    for _ in range(60):
        problem = seeded_problem(random)
        held = seeded_held(random, problem)
        if len(held) < 2:
            continue
        brute, bad = Brute(problem), tuple(random.sample(held, 2))
        weights = {lit: random.randint(1, 4) for lit in held}

        def judge(way: Repair, bad: tuple[int, ...] = bad) -> tuple[int, ...] | None:
            return bad if set(bad).isdisjoint(way.dropped) else None

        def passes(
            drops: tuple[int, ...], bad: tuple[int, ...] = bad, held: list[int] = held, brute: Brute = brute
        ) -> bool:
            return not set(bad).isdisjoint(drops) and brute.consistent(lit for lit in held if lit not in drops)

        expected = sorted(sum(weights[lit] for lit in way) for way in minimal_subsets(held, passes))
        found = repairs(Reasoner(problem), held, weights, most=99, judge=judge)
        assert [way.cost for way in found.ways] == expected


def test_ways_come_one_by_one_and_the_search_goes_on_after_a_spent_budget() -> None:
    problem = Problem(count=8)
    for one in range(1, 9, 2):
        problem.add_clause((-one, -one - 1))
    held = list(range(1, 9))
    whole = [way.dropped for way in repairs(Reasoner(problem), held, most=99).ways]
    search = Repairs(Reasoner(problem), held)
    assert next(search).dropped == whole[0]
    search.budget = Budget(cancelled=lambda: True)
    assert list(search) == []
    assert search.ending is Ending.SPENT
    search.budget = Budget()
    assert [way.dropped for way in search] == whole[1:]
    assert search.ending is Ending.NONE_LEFT
