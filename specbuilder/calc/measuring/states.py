"""What a set of choices may come to: every distinct state of a measure, each with the span of its plain amount.

A state is a tuple of numbers, one for each part of the measure, folded by adding or by keeping the least or the most.
The plain amount needs no states: it only adds, so its least and most add. A measure without parts has one state,
``()``, and is then an ordinary sum with a range.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from enum import Enum
from itertools import product
from typing import NamedTuple, TypeAlias

from specbuilder.model.ledger import Lack

Joint: TypeAlias = tuple[float, ...]
"""One state: a number for each part."""
States: TypeAlias = dict[Joint, tuple[float, float]]
"""Each state that can come about, with the least and the most plain amount it can come with."""

MOST_STATES = 20_000
"""Above this many pairs the states are widened to the corners of the box around them."""


class Fold(Enum):
    """How the numbers of several choices become one."""

    SUM = "sum"
    LEAST = "least"
    MOST = "most"

    def of(self, one: float, other: float) -> float:
        """Two numbers folded into one."""
        return _OPERATIONS[self](one, other)


class Slot(NamedTuple):
    """One thing that may still go several ways."""

    key: str
    """The group, option or key of the brief; unique in a chain."""
    states: States
    lack: Lack | None = None
    """What settles it; None for an extra that nobody has to decide."""


def _added(a: float, b: float) -> float:
    return a + b


def _smaller(a: float, b: float) -> float:
    return a if a < b else b


def _larger(a: float, b: float) -> float:
    return a if a > b else b


_WHOLE: Mapping[Fold, Callable[[Iterable[float]], float]] = {Fold.SUM: sum, Fold.LEAST: min, Fold.MOST: max}
_OPERATIONS = {Fold.SUM: _added, Fold.LEAST: _smaller, Fold.MOST: _larger}


class Folding:
    """How the states of one measure fold, and the state of nothing at all."""

    __slots__ = ("_operations", "folds", "neutral")

    def __init__(self, folds: Sequence[Fold], neutral: Joint) -> None:
        self.folds, self.neutral = tuple(folds), neutral
        self._operations = tuple(_OPERATIONS[fold] for fold in folds)

    def combine(self, one: Joint, other: Joint) -> Joint:
        """Two states folded into one."""
        neutral = self.neutral
        if other is neutral:
            return one
        if one is neutral:
            return other
        return tuple([operation(a, b) for operation, a, b in zip(self._operations, one, other, strict=True)])

    def together(self, joints: Sequence[Joint]) -> Joint:
        """Many states folded into one."""
        if len(joints) < 2:
            return joints[0] if joints else self.neutral
        columns = zip(self.folds, zip(*joints, strict=True), strict=True)
        return tuple([_WHOLE[fold](column) for fold, column in columns])

    def times(self, joint: Joint, count: int) -> Joint:
        """A state so many times over: sums grow, leasts and mosts do not."""
        if count == 1 or joint is self.neutral:
            return joint
        return tuple([x * count if fold is Fold.SUM else x for fold, x in zip(self.folds, joint, strict=True)])

    def merge(self, one: States, other: States) -> States:
        """Every state of one beside every state of the other.

        Exact up to ``MOST_STATES`` pairs. Above that both are widened to the corners of their boxes: sums, leasts and
        mosts grow with each of their numbers, so nothing that can come about lies outside.
        """
        if len(one) * len(other) > MOST_STATES:
            one, other = _corners(one), _corners(other)
        if len(other) == 1 and self.neutral in other:
            low, high = other[self.neutral]
            return {joint: (a + low, b + high) for joint, (a, b) in one.items()}
        merged: States = {}
        combine = self.combine
        for joint, (low, high) in one.items():
            for beside, (least, most) in other.items():
                both, least, most = combine(joint, beside), low + least, high + most
                known = merged.get(both)
                if known is not None:
                    least, most = _smaller(known[0], least), _larger(known[1], most)
                merged[both] = least, most
        return merged


def add_state(states: States, joint: Joint, least: float, most: float) -> None:
    """Let this state come about with these amounts too."""
    known = states.get(joint)
    states[joint] = (least, most) if known is None else (min(known[0], least), max(known[1], most))


def _corners(states: States) -> States:
    low, high = min(a for a, _ in states.values()), max(b for _, b in states.values())
    sides = ({min(column), max(column)} for column in zip(*states, strict=True))
    return dict.fromkeys(product(*sides), (low, high))


class Chain:
    """Slots one after the other, merged from both ends so that any one of them can be left out cheaply."""

    __slots__ = ("_after", "_at", "_before", "_folding", "_without", "settled", "slots")

    def __init__(self, folding: Folding, amount: float, settled: Joint, slots: Iterable[Slot]) -> None:
        self.slots = tuple(slots)
        self.settled = settled
        """The state of what is settled, before any slot."""
        self._folding = folding
        self._at = {slot.key: index for index, slot in enumerate(self.slots)}
        self._before: list[States] = [{settled: (amount, amount)}]
        for slot in self.slots:
            self._before.append(folding.merge(self._before[-1], slot.states))
        self._after: list[States] = []
        self._without: dict[str, States] = {}

    @property
    def all(self) -> States:
        """Everything together."""
        return self._before[-1]

    def without(self, key: str) -> States:
        """Everything but one slot; everything when there is no such slot."""
        index = self._at.get(key)
        if index is None:
            return self.all
        if not self._after:
            self._merge_backwards()
        found = self._without.get(key)
        if found is None:
            found = self._without[key] = self._folding.merge(self._before[index], self._after[index])
        return found

    def _merge_backwards(self) -> None:
        after: States = {self._folding.neutral: (0, 0)}
        self._after.append(after)
        for slot in reversed(self.slots[1:]):
            after = self._folding.merge(after, slot.states)
            self._after.append(after)
        self._after.reverse()
