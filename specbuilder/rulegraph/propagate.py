"""What follows from choices and answers by unit propagation, with the reason of each step.

Choices are held fixed: they are set first and never withdrawn, so a clause that they break is a *conflict* and derives
nothing. Every value carries the set of choices it depends on (a bit mask), which lets ``states.py`` ask what would
follow if one of them were swapped, without running again.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from .clauses import Clauses, no, yes

UNSET = 0
"""Value of a variable that nothing settles. 1 is true, -1 is false."""
BY_CHOICE = -1
"""Reason of a choice."""
BY_ANSWER = -2
"""Reason of an answer of the brief."""
BY_GROUP = -3
"""Reason of an option that stands beside the choice of its pick-one group."""


@dataclass(slots=True)
class Trail:
    """The values after propagation. Built by ``propagate`` and not changed afterwards."""

    value: list[int]
    mask: list[int]
    """For each variable the choices it rests on; bit i is choice i of the run."""
    reason: list[int]
    """For each settled variable the clause that settled it, or one of the BY_ constants."""
    conflicts: list[int]
    """Clauses that the choices and answers break."""

    def is_false(self, lit: int) -> bool:
        """True when the literal is settled as false."""
        return self.value[lit >> 1] == (1 if lit & 1 else -1)


def propagate(clauses: Clauses, choices: Iterable[int], answers: Iterable[int]) -> Trail:
    """Settle what follows.

    Args:
        clauses: the compiled catalogue.
        choices: placement variables that are taken, in the order they were taken.
        answers: literals of brief atoms that are known.
    """
    count = len(clauses.names)
    trail = Trail([UNSET] * count, [0] * count, [BY_CHOICE] * count, [])
    queue = _set_choices(clauses, trail, tuple(choices))
    for lit in answers:
        if trail.value[lit >> 1] == UNSET:
            trail.value[lit >> 1] = -1 if lit & 1 else 1
            trail.reason[lit >> 1] = BY_ANSWER
            queue.append(lit)
    _run(clauses, trail, queue)
    return trail


def _set_choices(clauses: Clauses, trail: Trail, choices: tuple[int, ...]) -> list[int]:
    queue: list[int] = []
    for bit, variable in enumerate(choices):
        trail.value[variable] = 1
        trail.mask[variable] |= 1 << bit
        queue.append(yes(variable))
    for variable in choices:
        group = clauses.group_of.get(variable)
        for other in clauses.one_of[group] if group is not None else ():
            if trail.value[other] == UNSET:
                _settle(trail, no(other), trail.mask[variable], BY_GROUP)
                queue.append(no(other))
    return queue


def _settle(trail: Trail, lit: int, mask: int, reason: int) -> None:
    variable = lit >> 1
    trail.value[variable] = -1 if lit & 1 else 1
    trail.mask[variable] = mask
    trail.reason[variable] = reason


def _run(clauses: Clauses, trail: Trail, queue: list[int]) -> None:
    """Work the queue off. ``falses[c]`` counts the literals of clause c that are settled as false."""
    value, mask, all_lits = trail.value, trail.mask, clauses.lits
    falses = [0] * len(all_lits)
    watching = clauses.watching
    queue.extend(_start_units(clauses, trail))
    at = 0
    while at < len(queue):
        lit = queue[at]
        at += 1
        if not lit & 1:
            _empty_group(clauses, trail, queue, lit >> 1)
        for index in watching[lit ^ 1]:
            falses[index] += 1
            lits = all_lits[index]
            left = len(lits) - falses[index]
            if left == 0:
                trail.conflicts.append(index)
            elif left == 1:
                open_lit, rests_on = -1, 0
                for other in lits:
                    state = value[other >> 1]
                    if state == UNSET:
                        open_lit = other
                    elif (state == 1) == (not other & 1):
                        break  # already satisfied
                    else:
                        rests_on |= mask[other >> 1]
                else:
                    if open_lit >= 0:
                        _settle(trail, open_lit, rests_on, index)
                        queue.append(open_lit)


def _start_units(clauses: Clauses, trail: Trail) -> list[int]:
    """Clauses of one literal hold from the start."""
    found: list[int] = []
    for index in clauses.units:
        lit = clauses.lits[index][0]
        if trail.value[lit >> 1] == UNSET:
            _settle(trail, lit, 0, index)
            found.append(lit)
    return found


def _empty_group(clauses: Clauses, trail: Trail, queue: list[int], variable: int) -> None:
    """An answer that follows leaves no room for the others of its pick-one group."""
    group = clauses.group_of.get(variable)
    if group is None or trail.reason[variable] == BY_CHOICE:
        return
    for other in clauses.one_of[group]:
        if trail.value[other] == UNSET:
            _settle(trail, no(other), trail.mask[variable], BY_GROUP)
            queue.append(no(other))
