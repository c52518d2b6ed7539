"""Small problems, drawn: as hypothesis strategies that shrink, and from a seed where thousands are wanted quickly."""

from __future__ import annotations

from random import Random

from hypothesis import strategies as st

from specbuilder.reasoning.problem import Problem


@st.composite
def problems(draw: st.DrawFn, most: int = 7) -> Problem:
    """A problem of a few variables; now and then without any build."""
    problem = Problem(count=draw(st.integers(2, most)))
    lits = literals(problem)
    for clause in draw(st.lists(st.lists(lits, min_size=1, max_size=4), max_size=9)):
        problem.add_clause(clause)
    for together in draw(st.lists(st.sets(st.integers(1, problem.count), min_size=2, max_size=4), max_size=2)):
        problem.add_at_most_one(sorted(together))
    terms = st.lists(st.tuples(st.integers(-4, 7), lits), min_size=1, max_size=6)
    for row, bound in draw(st.lists(st.tuples(terms, st.integers(-1, 9)), max_size=2)):
        problem.add_limit(row, bound)
    return problem


def literals(problem: Problem) -> st.SearchStrategy[int]:
    """Any literal of a problem."""
    return st.integers(1, problem.count).flatmap(lambda v: st.sampled_from((v, -v)))


def held_of(problem: Problem) -> st.SearchStrategy[list[int]]:
    """Some literals of a problem, each variable once, in any order."""
    signs = st.lists(st.sampled_from((1, -1)), min_size=problem.count, max_size=problem.count)
    taken = st.permutations(range(1, problem.count + 1)).flatmap(
        lambda order: st.integers(0, problem.count).map(lambda most: order[:most])
    )
    return st.tuples(taken, signs).map(lambda both: [v * both[1][v - 1] for v in both[0]])


def seeded_problem(random: Random, most: int = 8) -> Problem:
    """A small problem from a seed."""
    problem = Problem(count=random.randint(3, most))
    variables = range(1, problem.count + 1)

    def lit() -> int:
        return random.choice((1, -1)) * random.choice(variables)

    for _ in range(random.randint(2, 10)):
        problem.add_clause([lit() for _ in range(random.choices((1, 2, 3, 4), (1, 4, 4, 3))[0])])
    for _ in range(random.randint(0, 2)):
        problem.add_at_most_one(random.sample(variables, random.randint(2, min(4, problem.count))))
    for _ in range(random.randint(0, 2)):
        terms = [(random.randint(-4, 7), lit()) for _ in range(random.randint(1, 6))]
        problem.add_limit(terms, random.randint(-1, 9))
    return problem


def seeded_held(random: Random, problem: Problem) -> list[int]:
    """Some literals of a problem, each variable once."""
    some = random.sample(range(1, problem.count + 1), random.randint(0, problem.count))
    return [random.choice((1, -1)) * v for v in some]


def seeded_costs(random: Random, problem: Problem, least: int) -> dict[int, int]:
    """Costs of a few literals."""
    lits = [random.choice((1, -1)) * random.randint(1, problem.count) for _ in range(random.randint(0, 9))]
    return {lit: random.randint(least, 9) for lit in lits}
