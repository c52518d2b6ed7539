"""Limits whose value is a sum of measures over different groups: their states are followed apart, their rooms add up.

Axle loads are such limits. Followed together, the places of the battery, the tanks and the seats would be thousands of
states; apart they are a few dozen.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import ceil, floor, inf
from typing import TypeAlias

from specbuilder.calc.limits.shape import Shape
from specbuilder.calc.measuring.states import Joint
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import Pick
from specbuilder.reasoning.problem import Problem

from .limit_rows import MOST_LITERALS, TOLERANCE, UNIT, Amounting, Layer, TooManyStates, one_guard, states_of, width_of

Misfits: TypeAlias = Mapping[OptionId, frozenset[OptionId]]
"""By base van: options that can never stand beside it, where the problem says so for good."""
Rooms: TypeAlias = dict[tuple[OptionId | None, Joint], float]
"""The room in units under each base van in each state of one piece."""


def add_spread_rows(
    problem: Problem,
    catalogue: Catalogue,
    amounting: Amounting,
    shape: Shape,
    guards: Sequence[tuple[int, ...]],
    misfits: Misfits,
) -> list[int]:
    """Add one limit that holds whenever one of ``guards`` (and-lists of literals) does; the indices of its rows.

    Raises:
        TooManyStates: before anything was added, when the limit is too wide to be followed.
    """
    pieces = (replace(shape, beside=()), *shape.beside)
    if sum(width_of(catalogue, amounting, piece) for piece in pieces) > MOST_LITERALS:
        raise TooManyStates
    layers = [states_of(problem, catalogue, amounting, piece) for piece in pieces]
    rooms = [_rooms(piece, layer) for piece, layer in zip(pieces, layers, strict=True)]
    if any(inf in some.values() for some in rooms):
        return []  # nothing can be said of some state, so nothing is blocked by it
    if len(shape.vans) > 1 and (len(layers[0]) > 1 or any(_differ(some, shape.vans) for some in rooms[1:])):
        singles = [_under(shape, van) for van in shape.vans]
        return [r for one in singles for r in add_spread_rows(problem, catalogue, amounting, one, guards, misfits)]
    widest = [max(some.values()) for some in rooms]
    narrowest = [min(some.values()) for some in rooms]
    top = floor(sum(widest) + TOLERANCE * UNIT * 1000)
    amounts = _fitting(shape, misfits)
    if _most(catalogue, amounting, amounts) - sum(narrowest) <= 0:
        return []  # no build can be over it
    terms = [(round(amount * UNIT), lit) for o, amount in amounts.items() for lit in amounting.literals.get(o, ())]
    terms += _shifts(problem, amounting, shape, layers, rooms)
    terms = [term for term in terms if term[0]]
    guard = _gate(problem, amounting, [(*lits, *_literal(amounting, van)) for lits in guards for van in shape.vans])
    enough = max(sum(max(weight, 0) for weight, _ in terms) - top, 0)
    if enough:
        terms += [(enough, lit) for lit in guard]
    return [problem.add_limit(terms, top + enough * len(guard))]


def _gate(problem: Problem, amounting: Amounting, guards: Sequence[tuple[int, ...]]) -> tuple[int, ...]:
    """Literals of which all hold just when one of the guards does: while one does not, nobody need watch the limit."""
    single = tuple(lits[0] for lits in guards if len(lits) == 1)
    if len(single) < len(guards) or len(guards) == 1:
        return one_guard(problem, guards)
    return (amounting.any_of(problem, single),)


def _rooms(piece: Shape, layer: Layer) -> Rooms:
    return {(van, joint): piece.room(van, joint) * UNIT for van in piece.vans for joint in layer}


def _under(shape: Shape, van: OptionId | None) -> Shape:
    return replace(shape, vans=(van,), beside=tuple(_under(piece, van) for piece in shape.beside))


def _differ(rooms: Rooms, vans: Sequence[OptionId | None]) -> bool:
    """Whether the room of a state is not the same under all base vans."""
    return any(room != rooms[vans[0], joint] for (_, joint), room in rooms.items())


def _literal(amounting: Amounting, van: OptionId | None) -> tuple[int, ...]:
    return (amounting.literals[van][0],) if van is not None else ()


def _fitting(shape: Shape, misfits: Misfits) -> Mapping[OptionId, float]:
    """The amounts of what can stand beside one of the base vans at all."""
    out = [misfits.get(van, frozenset()) if van is not None else frozenset() for van in shape.vans]
    never = frozenset.intersection(*out)
    return {option: amount for option, amount in shape.amounts.items() if option not in never}


def _shifts(
    problem: Problem, amounting: Amounting, shape: Shape, layers: Sequence[Layer], rooms: Sequence[Rooms]
) -> list[tuple[int, int]]:
    """Terms that take from the widest room what a base van or a state leaves less.

    The first piece differs from van to van or has one state; the others are the same under all vans.
    """
    own, *others = rooms
    wide = max(own.values())
    several = len(shape.vans) > 1
    terms = [
        (round(wide - room), (*(_literal(amounting, van) if several else ()), *layers[0][joint]))
        for (van, joint), room in own.items()
    ]
    for some, layer in zip(others, layers[1:], strict=True):
        wide = max(some.values())
        terms += [(round(wide - some[shape.vans[0], joint]), lits) for joint, lits in layer.items()]
    return [(less, amounting.all_of(problem, lits)) for less, lits in terms if less and lits]


def _most(catalogue: Catalogue, amounting: Amounting, amounts: Mapping[OptionId, float]) -> int:
    """The most the plain amounts can sum to, with one answer from each group that takes one."""
    by_group: dict[GroupId, float] = {}
    total = 0.0
    for option_id, amount in amounts.items():
        group = catalogue.options[option_id].group
        if catalogue.groups[group].pick is Pick.ONE:
            by_group[group] = max(by_group.get(group, -inf), amount)
        else:
            total += max(amount, 0.0) * len(amounting.literals.get(option_id, ()))
    for group, amount in by_group.items():
        every = all(option.id in amounts for option in catalogue.options_of(group))
        total += amount if every else max(amount, 0.0)
    return ceil(total * UNIT)
