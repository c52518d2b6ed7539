"""Ledger limits as rows of a problem: exact also where a least, a most or a switch takes part.

What does not simply add is followed by *states*: one literal for each state the choices so far can have led to, forced
forward from choice to choice. In the last state the row knows how much room there is. A row is thus exact for every
complete build, and a literal forced falsely by nobody costs nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import floor, inf
from typing import TypeAlias

from specbuilder.calc.shape import Shape
from specbuilder.calc.states import Joint
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import Pick
from specbuilder.reasoning.problem import Problem

UNIT = 10**6
"""Amounts are whole millionths of the ledger's unit."""
TOLERANCE = 1e-9
"""As when a limit is judged: two floats nearer than this part of the bound are equal."""
MOST_LITERALS = 600
"""A limit that would need more of them is left to the full evaluation of what is proposed."""

TRUE = 0
"""Stands for the literal that always holds."""

Layer: TypeAlias = dict[Joint, int]
"""The states that may have been reached, each with its literal."""


@dataclass(frozen=True, slots=True)
class Amounting:
    """How often an option stands, as literals: one for each time, at each place."""

    literals: Mapping[OptionId, tuple[int, ...]]


class TooManyStates(Exception):  # noqa: N818  # an outcome, not a fault
    """The limit has more states than are worth following."""


def add_rows(
    problem: Problem, catalogue: Catalogue, amounting: Amounting, shape: Shape, guards: Sequence[tuple[int, ...]]
) -> list[int]:
    """Add one limit that holds whenever one of ``guards`` (and-lists of literals) does; the indices of its rows.

    Raises:
        TooManyStates: before anything was added, when the limit is too wide to be followed.
    """
    if _width(catalogue, amounting, shape) > MOST_LITERALS:
        raise TooManyStates
    layer = _states(problem, catalogue, amounting, shape)
    terms = [
        (round(amount * UNIT), lit) for o, amount in shape.amounts.items() for lit in amounting.literals.get(o, ())
    ]
    terms = [term for term in terms if term[0]]
    most = sum(max(weight, 0) for weight, _ in terms)
    least = sum(min(weight, 0) for weight, _ in terms)
    vans = shape.vans if shape.vans == (None,) else tuple(van.id for van in catalogue.vans)
    rooms = {(v, j): _whole(shape.room(v, j) if v in shape.vans else inf, least, most) for v in vans for j in layer}
    top = max(rooms.values())
    if min(rooms.values()) >= most:
        return []
    terms += _shifts(problem, amounting, layer, rooms, top)
    guard = one_guard(problem, guards)
    every = sum(max(weight, 0) for weight, _ in terms)
    enough = max(every - top, 0)
    if enough:
        terms += [(enough, lit) for lit in guard]
    return [problem.add_limit(terms, top + enough * len(guard))]


def _whole(room: float, least: int, most: int) -> int:
    """The room in whole units, no tighter than *nothing fits* and no wider than *everything fits*."""
    if room == inf:
        return most
    if room == -inf:
        return least - 1
    return max(min(floor(room * UNIT + TOLERANCE * UNIT * max(10.0, abs(room))), most), least - 1)


def one_guard(problem: Problem, guards: Sequence[tuple[int, ...]]) -> tuple[int, ...]:
    """Literals of which all must hold for the limit to bind."""
    if any(not lits for lits in guards):
        return ()
    if len(guards) == 1:
        return guards[0]
    one = problem.new()
    for lits in guards:
        problem.add_clause((*(-lit for lit in lits), one))
    return (one,)


def _shifts(
    problem: Problem,
    amounting: Amounting,
    layer: Layer,
    rooms: Mapping[tuple[OptionId | None, Joint], int],
    top: int,
) -> list[tuple[int, int]]:
    """Terms that take from the widest room what a base van or a state leaves less."""
    vans = dict.fromkeys(van for van, _ in rooms)
    best_of_van = {v: max(rooms[v, j] for j in layer) for v in vans}
    best_of_state = {j: max(rooms[v, j] for v in vans) for j in layer}
    lit_of = {v: amounting.literals[v][0] if v is not None else TRUE for v in vans}
    if all(rooms[v, j] + top == best_of_van[v] + best_of_state[j] for v in vans for j in layer):
        pairs = [(top - best_of_van[v], lit_of[v]) for v in vans]
        pairs += [(top - best_of_state[j], lit) for j, lit in layer.items()]
    else:
        pairs = [(top - room, _both(problem, lit_of[v], layer[j])) for (v, j), room in rooms.items() if top > room]
    return [(less, lit) for less, lit in pairs if less and lit != TRUE]


def _both(problem: Problem, one: int, other: int) -> int:
    """A literal that holds when both do."""
    if TRUE in (one, other):
        return one or other
    both = problem.new()
    problem.add_clause((-one, -other, both))
    return both


def _slots(catalogue: Catalogue, amounting: Amounting, shape: Shape) -> list[tuple[list[tuple[int, Joint]], bool]]:
    """What brings a part of the state, slot by slot: literals with their part, and whether one of them must hold."""
    slots: list[tuple[list[tuple[int, Joint]], bool]] = []
    by_group: dict[GroupId, list[tuple[int, Joint]]] = {}
    for option_id, joint in shape.states.items():
        option = catalogue.options[option_id]
        literals = amounting.literals.get(option_id, ())
        if catalogue.groups[option.group].pick is Pick.ONE:
            by_group.setdefault(option.group, []).extend((lit, joint) for lit in literals)
        else:
            slots += [([(lit, joint)], False) for lit in literals]
    for group, ways in by_group.items():
        members = catalogue.options_of(group)
        slots.append((ways, all(member.id in shape.states for member in members)))
    return slots


def _width(catalogue: Catalogue, amounting: Amounting, shape: Shape) -> int:
    """How many literals its states would need."""
    joints, width = set(shape.starts), 0
    for ways, must in _slots(catalogue, amounting, shape):
        after = {shape.folding.combine(joint, part) for joint in joints for _, part in ways}
        joints = after if must else after | joints
        width += len(joints)
        if width > MOST_LITERALS:
            return width
    return width


def _states(problem: Problem, catalogue: Catalogue, amounting: Amounting, shape: Shape) -> Layer:
    """The last layer of states, each with a literal that holds in every build that comes to it."""
    layer: Layer = {shape.starts[0]: TRUE} if len(shape.starts) == 1 else {}
    if len(shape.starts) > 1:
        layer = {joint: problem.new() for joint in shape.starts}
        problem.add_clause(layer.values())
    for ways, must in _slots(catalogue, amounting, shape):
        layer = _next(problem, layer, ways, must, shape.folding.combine)
    return layer


def _next(
    problem: Problem,
    layer: Layer,
    ways: Iterable[tuple[int, Joint]],
    must: bool,
    combine: Callable[[Joint, Joint], Joint],
) -> Layer:
    """The states after one more slot."""
    ways = tuple(ways)
    reached: dict[Joint, list[tuple[int, ...]]] = {}
    for joint, lit in layer.items():
        for way, part in ways:
            reached.setdefault(combine(joint, part), []).append((lit, way))
        if not must:
            reached.setdefault(joint, []).append((lit, *(-way for way, _ in ways)))
    if len(reached) == 1:
        return dict.fromkeys(reached, TRUE)
    after: Layer = {}
    for joint, conditions in reached.items():
        bare = [tuple(lit for lit in condition if lit != TRUE) for condition in conditions]
        if len(bare) == 1 and len(bare[0]) == 1:
            after[joint] = bare[0][0]
            continue
        after[joint] = problem.new()
        for condition in bare:
            problem.add_clause((*(-lit for lit in condition), after[joint]))
    return after
