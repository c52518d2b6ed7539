"""The reasoner against brute force on tiny problems: one reasoner, many edits, in any order."""

import random
from collections.abc import Sequence

import pytest

from specbuilder.reasoning import builds, network, states, sweep, wiring
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.reasoner import Implied, Reasoner, Swap
from specbuilder.reasoning.states import States
from tests.reasoning.brute import all_builds, keeping, tiny_problem


def edited(dice: random.Random, held: list[int], count: int) -> list[int]:
    """What is held after one edit: mostly one more or one less, sometimes another order or all anew."""
    chance = dice.random()
    if chance < 0.3 and held:
        held.pop(dice.randrange(len(held)))
    elif chance < 0.4:
        dice.shuffle(held)
    elif chance < 0.45:
        held = [v if dice.random() < 0.6 else -v for v in dice.sample(range(1, count + 1), dice.randint(0, 4))]
    else:
        v = dice.randint(1, count)
        held = [lit for lit in held if abs(lit) != v or dice.random() < 0.1]
        held.append(v if dice.random() < 0.7 else -v)
    return held


def check_core(core: frozenset[int], lits: Sequence[int], builds: list[list[int]]) -> None:
    assert core <= set(lits)
    assert not keeping(builds, list(core))


def check_build(build: bytes, lits: Sequence[int], problem: Problem) -> None:
    assert problem.broken_by(build) is None
    assert all(build[lit] for lit in lits)
    assert all(build[v] != build[-v] for v in range(1, problem.count + 1))


def check_states(reasoner: Reasoner, held: list[int], builds: list[list[int]], dice: random.Random) -> None:
    count = reasoner.problem.count
    asked = None if dice.random() < 0.5 else dice.sample(range(1, count + 1), dice.randint(1, count))
    answer = reasoner.states(held, asked, first=dice.sample(range(1, count + 1), 2))
    live = keeping(builds, held)
    if not live:
        assert isinstance(answer, frozenset)
        check_core(answer, held, builds)
        return
    assert isinstance(answer, States)
    assert not answer.unsettled
    for v in asked or range(1, count + 1):
        assert answer.can_be(v) == any(build[v] for build in live), (held, v)
        assert answer.can_be(-v) == any(not build[v] for build in live), (held, -v)


def check_consistent(reasoner: Reasoner, held: list[int], builds: list[list[int]]) -> None:
    answer = reasoner.consistent(held)
    assert isinstance(answer, bytes) == bool(keeping(builds, held))
    if isinstance(answer, bytes):
        check_build(answer, held, reasoner.problem)
    else:
        check_core(answer, held, builds)


def check_beside(reasoner: Reasoner, held: list[int], builds: list[list[int]], swaps: list[Swap]) -> None:
    for swap, answer in zip(swaps, reasoner.beside(held, swaps), strict=True):
        lits = [*(lit for lit in held if lit not in swap.released), swap.lit]
        assert (answer is True) == bool(keeping(builds, lits)), (held, swap, answer)
        if answer is True:
            build = reasoner.build_beside(swap)
            assert build is not None
            check_build(build, lits, reasoner.problem)
        else:
            assert isinstance(answer, frozenset)
            check_core(answer, lits, builds)


def check_implied(reasoner: Reasoner, held: list[int], builds: list[list[int]]) -> None:
    answer = reasoner.implied(held)
    if not isinstance(answer, Implied):
        check_core(answer, held, builds)
        return
    assert set(held) <= set(answer.literals)
    for lit in answer.literals:
        assert answer.because[lit] <= set(held)
        assert not keeping(builds, [*answer.because[lit], -lit])


@pytest.mark.parametrize("seed", range(80))
def test_every_answer_equals_brute_force_through_any_edits(seed: int) -> None:
    dice = random.Random(seed)
    for _ in range(4):
        problem = tiny_problem(dice)
        builds = all_builds(problem)
        reasoner = Reasoner(problem)
        count = problem.count
        held: list[int] = []
        swaps = [
            Swap(v if dice.random() < 0.8 else -v, tuple(dice.sample(range(1, count + 1), dice.randint(0, 2))))
            for v in dice.sample(range(1, count + 1), 4)
        ]
        for _ in range(14):
            held = edited(dice, held, count)
            match dice.randrange(6):
                case 0:
                    check_consistent(reasoner, held, builds)
                case 1 | 2:
                    check_beside(reasoner, held, builds, swaps)
                case 3:
                    check_implied(reasoner, held, builds)
                case _:
                    check_states(reasoner, held, builds, dice)


@pytest.mark.parametrize("seed", range(1000, 1030))
def test_crowded_literals_and_great_sets_change_nothing(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(wiring, "CROWDED_CLAUSES_MIN", 1)
    monkeypatch.setattr(sweep, "MANY_CLAUSES", seed % 3)
    monkeypatch.setattr(network, "PAIRED_SET_SIZE", 2)
    monkeypatch.setattr(builds, "BITS_ONE_BY_ONE_MAX", 0)
    monkeypatch.setattr(states, "CHANCES", 3)
    test_every_answer_equals_brute_force_through_any_edits(seed)
