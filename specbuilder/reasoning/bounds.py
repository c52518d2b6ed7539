"""Bounds on limits: what must yet be drawn, whatever is chosen.

A limit's slack counts only what is true already. But a clause none of whose literals is true, and whose open ones all
weigh in the limit, will draw its lightest open literal at least: the lightest member of a group not answered yet, the
lightest of the things an option needs. Clauses that share no open literal add up. When the sum exceeds the slack, that
is a conflict long before any slack is overdrawn; and an open literal is ruled out when it alone would make it so.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Sequence
from copy import copy
from dataclasses import dataclass

from specbuilder.reasoning.builds import Cover

TIGHT = 0.3
"""A limit is looked at when less than this part of its bound is left."""


@dataclass(frozen=True, slots=True)
class Need:
    """A clause as far as bounds go: when all of ``causes`` are true, one of ``members`` will be."""

    clause: tuple[int, ...]
    causes: int
    members: int
    weights: dict[int, tuple[tuple[int, int], ...]]
    """By number of the limits in which members weigh: weight and bit of each that does, the lightest first."""


Counted = list[tuple[int, int, Need]]
"""Needs that add up: what each draws at least, its open members as a mask, and the need."""


class Bounds:
    """The needs of a problem, and what they must draw."""

    def __init__(self, clauses: Iterable[tuple[int, ...]], terms: Sequence[tuple[tuple[int, int], ...]]) -> None:
        """``terms`` of each limit; none of one that is never looked at."""
        self._weights: list[dict[int, int]] = [{lit: weight for weight, lit in row if lit > 0} for row in terms]
        self._weighing = [sum(1 << lit for lit in weights) for weights in self._weights]
        self._draws: dict[int, list[tuple[int, int]]] = {}
        for index, weights in enumerate(self._weights):
            for lit, weight in weights.items():
                self._draws.setdefault(lit, []).append((index, weight))
        self._standing: list[tuple[int, Need]] = []
        """Members of each need that has no cause, and the need."""
        self._needs: dict[int, list[tuple[int, int, Need]]] = {}
        """By their first cause: members and causes of each, and the need: the masks decide most, so they lie ready."""
        self._having: dict[int, int] = {}
        if terms:
            for clause in clauses:
                self._read(clause)

    def _read(self, clause: tuple[int, ...]) -> None:
        members = [lit for lit in clause if lit > 0]
        causes = [-lit for lit in clause if lit < 0]
        if len(members) < 2:
            return
        found: dict[int, list[tuple[int, int]]] = {}
        for lit in members:
            for index, weight in self._draws.get(lit, ()):
                found.setdefault(index, []).append((weight, 1 << lit))
        if not found:
            return
        weights = {index: tuple(sorted(weighing)) for index, weighing in found.items()}
        need = Need(clause, sum(1 << v for v in causes), sum(1 << v for v in members), weights)
        if causes:
            self._needs.setdefault(causes[0], []).append((need.members, need.causes, need))
            for index in weights:
                self._having[index] = self._having.get(index, 0) | 1 << causes[0]
        else:
            self._standing.append((need.members, need))

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

    def active(self, tight: Iterable[int], cover: Cover) -> list[tuple[Need, int]]:
        """The needs that weigh in tight limits and that nothing true meets yet, and which of their members are open."""
        true, false = cover.want, cover.care ^ cover.want
        open_or_false = ~true
        found: list[tuple[Need, int]] = []
        for members, need in self._standing:
            if not members & true:
                found.append((need, members & ~false))
        having = 0
        for index in tight:
            having |= self._having.get(index, 0)
        causes = true & having
        while causes:
            low = causes & -causes
            causes ^= low
            for members, together, need in self._needs[low.bit_length() - 1]:
                if not members & true and not together & open_or_false:
                    found.append((need, members & ~false))
        return found

    def least(self, tight: Container[int], active: list[tuple[Need, int]]) -> dict[int, Counted]:
        """By number of the tight limits: active needs without a common open member, the heaviest first."""
        weighing = self._weighing
        found: dict[int, Counted] = {}
        for need, members in active:
            for index, weights in need.weights.items():
                if index in tight and not members & ~weighing[index]:
                    for weight, bit in weights:
                        if bit & members:
                            found.setdefault(index, []).append((weight, members, need))
                            break
        return {index: _disjoint(entries) for index, entries in found.items()}

    def because(self, index: int, counted: Counted, value: list[int]) -> list[int]:
        """True literals for which the needs counted are active and draw so much."""
        weights = self._weights[index]
        found: dict[int, None] = {}
        for weight, _, need in counted:
            for lit in need.clause:
                if value[lit] < 0 and (lit < 0 or weights.get(lit, 0) < weight):
                    found[-lit] = None
        return list(found)


def _disjoint(entries: Counted) -> Counted:
    if len(entries) == 1:
        return entries
    used = 0
    counted: Counted = []
    for entry in sorted(entries, key=_by_weight, reverse=True):
        if not entry[1] & used:
            used |= entry[1]
            counted.append(entry)
    return counted


def _by_weight(entry: tuple[int, int, Need]) -> int:
    return entry[0]
