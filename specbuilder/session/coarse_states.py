"""Fewer states for a limit: numbers of a part between which the room never tells a difference become one.

The longest wait of two hundred parts has dozens of numbers, and a limit on it knows two: in time, and too late.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import product

from specbuilder.calc.limits.shape import Shape
from specbuilder.calc.measuring.states import Fold, Joint
from specbuilder.model.ids import OptionId

MOST_TRIED = 4_000
"""Rooms looked at for one part; a part that would need more keeps all its numbers."""


def coarsened(shape: Shape) -> Shape:
    """The same limit over fewer states.

    Only parts that keep the least or the most can be thinned: the least of two
    numbers falls into the class of the least, so that folding and thinning may change places.
    """
    for at, fold in enumerate(shape.folding.folds):
        if fold is not Fold.SUM:
            shape = _thinned(shape, at)
    return shape


def _thinned(shape: Shape, at: int) -> Shape:
    """The limit with one part thinned."""
    joints = [shape.folding.neutral, *shape.starts, *shape.states.values()]
    numbers = sorted({joint[at] for joint in joints})
    others = [sorted({joint[i] for joint in joints}) if i != at else [0.0] for i in range(len(shape.folding.folds))]
    ways = list(product(*others))
    if len(numbers) < 3 or len(ways) * len(numbers) * len(shape.vans) > MOST_TRIED:
        return shape
    rooms = {x: _rooms(shape, at, x, ways) for x in numbers}
    stands_for: dict[float, float] = {}
    for before, x in zip([None, *numbers], numbers, strict=False):
        same = before is not None and rooms[before] == rooms[x]
        stands_for[x] = stands_for[before] if same and before is not None else x
    if len(set(stands_for.values())) == len(numbers):
        return shape
    return replace(
        shape,
        states=_mapped(shape.states, at, stands_for, shape.folding.neutral),
        starts=tuple(dict.fromkeys(_with(start, at, stands_for[start[at]]) for start in shape.starts)),
    )


def _rooms(shape: Shape, at: int, number: float, ways: Iterable[Joint]) -> tuple[float, ...]:
    """The room for every base van beside every number the other parts can take; told apart no finer than needed."""
    rooms = (shape.room(van, _with(way, at, number)) for way in ways for van in shape.vans)
    if shape.amounts:
        return tuple(rooms)
    return tuple(0.0 if room >= 0 else -1.0 for room in rooms)


def _with(joint: Joint, at: int, number: float) -> Joint:
    return (*joint[:at], number, *joint[at + 1 :])


def _mapped(
    states: Mapping[OptionId, Joint], at: int, stands_for: Mapping[float, float], neutral: Joint
) -> Mapping[OptionId, Joint]:
    """The parts of the state as thinned; an option that brings nothing any more is left out."""
    kept_neutral = _with(neutral, at, stands_for[neutral[at]])
    found = {option: _with(joint, at, stands_for[joint[at]]) for option, joint in states.items()}
    return {option: joint for option, joint in found.items() if joint != kept_neutral}
