"""Bounds on limits: what must yet be drawn, whatever is chosen.

A limit's slack counts only what is true already. But a clause none of whose literals is true, and whose open ones all
weigh in the limit, will draw its lightest open literal at least: the lightest member of a group not answered yet, the
lightest of the things an option needs. Clauses that share no open literal add up. When the sum exceeds the slack, that
is a conflict long before any slack is overdrawn; and an open literal is ruled out when it alone would make it so.
"""

from __future__ import annotations

from collections.abc import Iterable
from copy import copy
from dataclasses import dataclass

TIGHT = 0.3
"""A limit is looked at when less than this part of its bound is left."""


@dataclass(frozen=True, slots=True)
class Need:
    """A clause as far as bounds go: when all of ``causes`` are true, one of ``members`` will be."""

    clause: tuple[int, ...]
    causes: int
    members: int
    weights: tuple[tuple[int, tuple[tuple[int, int], ...]], ...]
    """Of the limits in which members weigh: number, and weight and bit of each member, the lightest first."""


class Bounds:
    """The needs of a problem, and what they must draw."""

    def __init__(self, clauses: Iterable[tuple[int, ...]], terms: list[tuple[tuple[int, int], ...]]) -> None:
        self._weights: list[dict[int, int]] = [{lit: weight for weight, lit in row if lit > 0} for row in terms]
        self._weighing = [sum(1 << lit for lit in weights) for weights in self._weights]
        self._standing: list[Need] = []
        self._needs: dict[int, list[Need]] = {}
        self._having = 0
        if terms:
            for clause in clauses:
                self._read(clause)

    def _read(self, clause: tuple[int, ...]) -> None:
        members = [lit for lit in clause if lit > 0]
        causes = [-lit for lit in clause if lit < 0]
        weights: list[tuple[int, tuple[tuple[int, int], ...]]] = []
        for index, known in enumerate(self._weights):
            weighing = sorted((known[lit], 1 << lit) for lit in members if lit in known)
            if weighing:
                weights.append((index, tuple(weighing)))
        if len(members) < 2 or not weights:
            return
        need = Need(clause, sum(1 << v for v in causes), sum(1 << v for v in members), tuple(weights))
        if causes:
            self._needs.setdefault(causes[0], []).append(need)
            self._having |= 1 << causes[0]
        else:
            self._standing.append(need)

    def copy(self) -> Bounds:
        """Bounds to which limits can be added apart from these."""
        other = copy(self)
        other._weights, other._weighing = list(self._weights), list(self._weighing)
        return other

    def add_limit(self) -> None:
        """A limit came later: it is bounded by its slack alone."""
        self._weights.append({})
        self._weighing.append(0)

    def is_idle(self) -> bool:
        """Whether there is nothing to bound."""
        return not self._standing and not self._needs

    def active(self, true: int, false: int) -> list[tuple[Need, int]]:
        """The needs that nothing true meets yet, and which of their members are open."""
        found: list[tuple[Need, int]] = []
        for need in self._standing:
            members = need.members
            if not members & true:
                found.append((need, members & ~false))
        causes = true & self._having
        while causes:
            low = causes & -causes
            causes ^= low
            for need in self._needs[low.bit_length() - 1]:
                members = need.members
                if not members & true and not need.causes & ~true:
                    found.append((need, members & ~false))
        return found

    def least(self, index: int, active: list[tuple[Need, int]]) -> tuple[int, list[tuple[int, int, Need]]]:
        """What active needs draw at least on a limit: the sum, and weight, open members and need of each counted."""
        weighing = self._weighing[index]
        found: list[tuple[int, int, Need]] = []
        for need, members in active:
            if not members & ~weighing:
                for number, weights in need.weights:
                    if number == index:
                        for weight, bit in weights:
                            if bit & members:
                                found.append((weight, members, need))
                                break
                        break
        found.sort(key=_by_weight, reverse=True)
        used = total = 0
        counted: list[tuple[int, int, Need]] = []
        for entry in found:
            if not entry[1] & used:
                used |= entry[1]
                total += entry[0]
                counted.append(entry)
        return total, counted

    def because(self, index: int, counted: list[tuple[int, int, Need]], value: list[int]) -> list[int]:
        """True literals for which the needs counted are active and draw so much."""
        weights = self._weights[index]
        found: dict[int, None] = {}
        for weight, _, need in counted:
            for lit in need.clause:
                if value[lit] < 0 and (lit < 0 or weights.get(lit, 0) < weight):
                    found[-lit] = None
        return list(found)


def _by_weight(entry: tuple[int, int, Need]) -> int:
    return entry[0]
