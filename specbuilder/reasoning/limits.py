"""Limits, restated so that propagation sees more: what a group must draw is counted before it is answered.

Where exactly one of some variables is true (or exactly one if a parent is, and none otherwise), the weight of the
lightest is drawn whichever it is. It is moved from the members to the bound, or to the parent. Every build draws the
same as before; but while nothing is chosen the limit already knows of it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from specbuilder.reasoning.problem import Limit, Problem

PASSES_MAX = 6
"""Weights move up so many parents at most."""


@dataclass(frozen=True, slots=True)
class ExactlyOne:
    """Of the members as many are true as of the parent: one if it is, none if not. No parent: one."""

    members: tuple[int, ...]
    parent: int | None


def exactly_one_sets(problem: Problem) -> list[ExactlyOne]:
    """The exactly-one sets a problem states, those with a parent first."""
    exclusive: dict[int, list[frozenset[int]]] = {}
    for variables in problem.at_most_one:
        known = frozenset(variables)
        for v in variables:
            exclusive.setdefault(v, []).append(known)
    pairs = {frozenset(clause) for clause in problem.clauses if len(clause) == 2}
    found: list[ExactlyOne] = []
    for clause in problem.clauses:
        members = tuple(lit for lit in clause if lit > 0)
        parents = [-lit for lit in clause if lit < 0]
        if len(members) < 2 or len(parents) > 1:
            continue
        if any(known.issuperset(members) for known in exclusive.get(members[0], ())):
            parent = parents[0] if parents else None
            if parent is None or all(frozenset((-member, parent)) in pairs for member in members):
                found.append(ExactlyOne(members, parent))
    return sorted(found, key=lambda group: group.parent is None)


def restated(limit: Limit, groups: Iterable[ExactlyOne]) -> Limit:
    """A limit that every build keeps just when it keeps the given one, and draws as little as may be late."""
    bound = limit.bound
    weights: dict[int, int] = {}
    for weight, lit in limit.terms:
        if lit > 0:
            weights[lit] = weights.get(lit, 0) + weight
        else:
            weights[-lit] = weights.get(-lit, 0) - weight
            bound -= weight
    groups = list(groups)
    for _ in range(PASSES_MAX):
        moved = False
        for group in groups:
            if weights.keys().isdisjoint(group.members):
                continue
            least = min(weights.get(member, 0) for member in group.members)
            if least:
                moved = True
                for member in group.members:
                    weights[member] = weights.get(member, 0) - least
                if group.parent is None:
                    bound -= least
                else:
                    weights[group.parent] = weights.get(group.parent, 0) + least
        if not moved:
            break
    terms: list[tuple[int, int]] = []
    for variable, weight in weights.items():
        if weight > 0:
            terms.append((weight, variable))
        elif weight < 0:
            terms.append((-weight, -variable))
            bound -= weight
    return Limit(tuple(terms), bound)
