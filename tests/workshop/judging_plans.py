"""What any plan must keep, judged without the code that makes it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain
from math import isclose

from specbuilder.model.catalogue import WorkStep
from specbuilder.model.plan import BuildPlan


def paths(work: tuple[WorkStep, ...]) -> Iterator[tuple[str, ...]]:
    """Every way through the steps, from one that waits for none to one for which none waits."""
    after = {one.id: [other.id for other in work if one.id in other.predecessors] for one in work}

    def on_from(path: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
        if not after[path[-1]]:
            yield path
        for one in after[path[-1]]:
            yield from on_from((*path, one))

    return chain.from_iterable(on_from((one.id,)) for one in work if not one.predecessors)


def assert_in_order(plan: BuildPlan, work: tuple[WorkStep, ...]) -> None:
    order = [one.step for one in plan.steps]
    assert sorted(order) == sorted(one.id for one in work)
    for one in work:
        assert all(order.index(before) < order.index(one.id) for before in one.predecessors)


def assert_longest(plan: BuildPlan, work: tuple[WorkStep, ...]) -> None:
    most_h = {one.step: 0 if one.passed else one.hours.most for one in plan.steps}
    assert plan.critical in set(paths(work))
    assert isclose(plan.critical_h, max(sum(most_h[one] for one in path) for path in paths(work)), abs_tol=0.01)
    assert isclose(plan.critical_h, sum(most_h[one] for one in plan.critical), abs_tol=0.01)
    assert {one.step for one in plan.steps if one.critical} == set(plan.critical)


def assert_days_hold(plan: BuildPlan, work: tuple[WorkStep, ...]) -> None:
    planned = {one.step: one for one in plan.steps}
    for one in work:
        mine = planned[one.id]
        assert mine.first_day <= mine.last_day <= plan.finish
        assert all(planned[before].last_day <= mine.first_day for before in one.predecessors)
        assert all(arrival.on is None or arrival.on <= mine.first_day for arrival in mine.arrivals)
    assert plan.first_day == min(one.first_day for one in plan.steps)
