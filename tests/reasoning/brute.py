"""Tiny random problems, and every build of them by counting through all 2^n."""

import random
from collections.abc import Sequence

from specbuilder.reasoning.problem import Problem


def tiny_problem(dice: random.Random) -> Problem:
    """Clauses, at-most-one sets and limits (weights of either sign) over four to ten variables."""
    problem = Problem()
    count = dice.randint(4, 10)
    for _ in range(count):
        problem.new()
    variables = list(range(1, count + 1))

    def some(least: int, most: int) -> list[int]:
        return dice.sample(variables, min(count, dice.randint(least, most)))

    for _ in range(dice.randint(0, 3)):
        members = some(2, 4)
        problem.add_at_most_one(members)
        if dice.random() < 0.6:
            problem.add_clause(members if dice.random() < 0.5 else [*members, -dice.choice(variables)])
    for _ in range(dice.randint(1, count)):
        problem.add_clause(v if dice.random() < 0.45 else -v for v in some(1 if dice.random() < 0.1 else 2, 4))
    if dice.random() < 0.02:
        problem.add_clause(())
    for _ in range(dice.randint(0, 3)):
        terms = [(dice.randint(-5, 9), v if dice.random() < 0.8 else -v) for v in some(1, count)]
        terms += [(dice.randint(-3, 3), v) for v in some(0, 2)]
        problem.add_limit(terms, dice.randint(-2, 18))
    return problem


def all_builds(problem: Problem) -> list[list[int]]:
    """Every build, by brute force."""
    builds = ([0, *(bits >> v & 1 for v in range(problem.count))] for bits in range(1 << problem.count))
    return [build for build in builds if problem.broken_by(build) is None]


def keeping(builds: Sequence[Sequence[int]], lits: Sequence[int]) -> list[Sequence[int]]:
    """The builds that keep some literals."""
    return [build for build in builds if all(build[lit] if lit > 0 else not build[-lit] for lit in lits)]
