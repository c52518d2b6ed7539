"""Ledger limits as rows of a problem: exact also where a least, a most or a switch takes part.

What does not simply add is followed by *states*: one literal for each state the choices so far can have led to, forced
forward from choice to choice. In the last state the row knows how much room there is. A row is thus exact for every
complete build, and a literal forced falsely by nobody costs nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import product
from math import floor, inf
from typing import TypeAlias

from specbuilder.calc.limits.shape import Shape
from specbuilder.calc.measuring.states import Fold, Joint
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import Pick
from specbuilder.reasoning.problem import Problem

from .coarse_states import coarsened

UNIT = 10**6
"""Amounts are whole millionths of the ledger's unit."""
TOLERANCE = 1e-9
"""As when a limit is judged: two floats nearer than this part of the bound are equal."""
MOST_LITERALS = 600
"""A limit that would need more of them is left to the full evaluation of what is proposed."""

TRUE = 0
"""Stands for the literal that always holds."""

Layer: TypeAlias = dict[Joint, tuple[int, ...]]
"""The states that may have been reached, each with the literals that then all hold."""


Slots: TypeAlias = tuple[tuple[tuple[tuple[int, float], ...], bool], ...]
"""What brings one part of the state, slot by slot: literals with their number, and whether one must hold."""
Part: TypeAlias = tuple[Fold, tuple[float, ...], Slots]
"""How it folds, where it starts, and what brings it."""


@dataclass(frozen=True, slots=True)
class Amounting:
    """How often an option stands, as literals: one for each time, at each place."""

    literals: Mapping[OptionId, tuple[int, ...]]
    together: dict[tuple[int, ...], int] = field(default_factory=dict)
    """Literals made for several that all hold."""
    either: dict[tuple[int, ...], int] = field(default_factory=dict)
    """Literals made for several of which one holds."""
    followed: dict[Part, dict[float, int]] = field(default_factory=dict)
    """Literals made for the numbers a part can come to."""

    def any_of(self, problem: Problem, lits: tuple[int, ...]) -> int:
        """A literal that holds just when one of them does."""
        found = self.either.get(lits)
        if found is None:
            found = self.either[lits] = problem.new()
            problem.add_clause((-found, *lits))
            for lit in lits:
                problem.add_clause((-lit, found))
        return found

    def all_of(self, problem: Problem, lits: tuple[int, ...]) -> int:
        """A literal that holds when all of them do."""
        if len(lits) == 1:
            return lits[0]
        found = self.together.get(lits)
        if found is None:
            found = self.together[lits] = problem.new()
            problem.add_clause((*(-lit for lit in lits), found))
        return found


class TooManyStates(Exception):  # noqa: N818  # an outcome, not a fault
    """The limit has more states than are worth following."""


def add_rows(
    problem: Problem,
    catalogue: Catalogue,
    amounting: Amounting,
    shape: Shape,
    guards: Sequence[tuple[int, ...]],
) -> list[int]:
    """Add one limit that holds whenever one of ``guards`` (and-lists of literals) does; the indices of its rows.

    Raises:
        TooManyStates: before anything was added, when the limit is too wide to be followed.
    """
    shape = coarsened(shape)
    if width_of(catalogue, amounting, shape) > MOST_LITERALS:
        raise TooManyStates
    layer = states_of(problem, catalogue, amounting, shape)
    terms = [
        (round(amount * UNIT), lit) for o, amount in shape.amounts.items() for lit in amounting.literals.get(o, ())
    ]
    terms = [term for term in terms if term[0]]
    most = sum(max(weight, 0) for weight, _ in terms)
    least = sum(min(weight, 0) for weight, _ in terms)
    vans = shape.vans if shape.vans == (None,) else tuple(van.id for van in catalogue.vans)
    rooms = _whole({(v, j): shape.room(v, j) if v in shape.vans else inf for v in vans for j in layer}, least, most)
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


Rooms: TypeAlias = dict[tuple[OptionId | None, Joint], int]
"""The room in whole units under each base van in each state."""


def _whole(rooms: Mapping[tuple[OptionId | None, Joint], float], least: int, most: int) -> Rooms:
    """The rooms in whole units, cut to *nothing fits* and *everything fits* unless van and state simply add."""
    finite = [abs(room) for room in rooms.values() if abs(room) < inf]
    slack = TOLERANCE * UNIT * max(10.0, *finite, 0.0)
    whole = {at: floor(room * UNIT + slack) for at, room in rooms.items() if abs(room) < inf}
    if len(whole) == len(rooms) and _adds_up(whole):
        return whole
    return {at: _cut(whole.get(at, most if room > 0 else least - 1), least, most) for at, room in rooms.items()}


def _cut(room: int, least: int, most: int) -> int:
    return max(min(room, most), least - 1)


def _best(rooms: Rooms) -> tuple[dict[OptionId | None, int], dict[Joint, int]]:
    """The widest room of each van and of each state."""
    of_van: dict[OptionId | None, int] = {}
    of_state: dict[Joint, int] = {}
    for (van, joint), room in rooms.items():
        of_van[van] = max(of_van.get(van, room), room)
        of_state[joint] = max(of_state.get(joint, room), room)
    return of_van, of_state


def _adds_up(rooms: Rooms) -> bool:
    """Whether each room is that of its van and that of its state together."""
    of_van, of_state = _best(rooms)
    top = max(rooms.values())
    return all(room + top == of_van[van] + of_state[joint] for (van, joint), room in rooms.items())


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


def _shifts(problem: Problem, amounting: Amounting, layer: Layer, rooms: Rooms, top: int) -> list[tuple[int, int]]:
    """Terms that take from the widest room what a base van or a state leaves less."""
    of_van, of_state = _best(rooms)
    lits_of: dict[OptionId | None, tuple[int, ...]] = {
        van: (amounting.literals[van][0],) if van is not None else () for van in of_van
    }
    if _adds_up(rooms):
        less = [(top - room, lits_of[van]) for van, room in of_van.items()]
        less += [(top - room, layer[joint]) for joint, room in of_state.items()]
    else:
        less = [(top - room, (*lits_of[van], *layer[joint])) for (van, joint), room in rooms.items()]
    return [(weight, amounting.all_of(problem, lits)) for weight, lits in less if weight and lits]


def _slots(
    catalogue: Catalogue, amounting: Amounting, shape: Shape, at: int
) -> list[tuple[list[tuple[int, float]], bool]]:
    """What brings one part of the state, slot by slot: literals with their number, and whether one must hold."""
    slots: list[tuple[list[tuple[int, float]], bool]] = []
    by_group: dict[GroupId, list[tuple[int, float]]] = {}
    brings = {o: joint[at] for o, joint in shape.states.items() if joint[at] != shape.folding.neutral[at]}
    for option_id, number in brings.items():
        option = catalogue.options[option_id]
        literals = amounting.literals.get(option_id, ())
        if catalogue.groups[option.group].pick is Pick.ONE:
            by_group.setdefault(option.group, []).extend((lit, number) for lit in literals)
        else:
            slots += [([(lit, number)], False) for lit in literals]
    for group, ways in by_group.items():
        slots.append((ways, all(member.id in brings for member in catalogue.options_of(group))))
    return slots


def width_of(catalogue: Catalogue, amounting: Amounting, shape: Shape) -> int:
    """How many literals its states would need."""
    width, together = 0, 1
    for at, fold in enumerate(shape.folding.folds):
        numbers = {start[at] for start in shape.starts}
        for ways, must in _slots(catalogue, amounting, shape, at):
            after = {fold.of(number, more) for number in numbers for _, more in ways}
            numbers = after if must else after | numbers
            width += len(numbers)
            if width > MOST_LITERALS:
                return width
        together *= len(numbers)
    return width + together


def states_of(problem: Problem, catalogue: Catalogue, amounting: Amounting, shape: Shape) -> Layer:
    """The states a build can come to, each with the literals that all hold in every build that comes to it.

    Each part is followed by itself, for each is folded by itself.
    """
    layers = [_shared(problem, catalogue, amounting, shape, at) for at in range(len(shape.folding.folds))]
    return {
        tuple(number for number, _ in ways): tuple(lit for _, lit in ways if lit != TRUE)
        for ways in product(*(layer.items() for layer in layers))
    }


def _shared(problem: Problem, catalogue: Catalogue, amounting: Amounting, shape: Shape, at: int) -> dict[float, int]:
    """The numbers one part can come to, each with its literal; parts that fold alike share their literals.

    What keeps the least or the most only knows which number is larger, so the places of things in one van and in
    another are followed by the same literals.
    """
    fold = shape.folding.folds[at]
    slots = _slots(catalogue, amounting, shape, at)
    starts = tuple(dict.fromkeys(start[at] for start in shape.starts))
    numbers = sorted({*starts, *(number for ways, _ in slots for _, number in ways)})
    names = {x: (x if fold is Fold.SUM else float(rank)) for rank, x in enumerate(numbers)}
    key = (
        fold,
        tuple(names[x] for x in starts),
        tuple((tuple((lit, names[x]) for lit, x in ways), must) for ways, must in slots),
    )
    if key not in amounting.followed:
        amounting.followed[key] = _followed(problem, key)
    known = amounting.followed[key]
    if fold is Fold.SUM:
        return known
    back = {name: x for x, name in names.items()}
    return {back[name]: lit for name, lit in known.items()}


def _followed(problem: Problem, part: Part) -> dict[float, int]:
    """The numbers one part can come to, each with its literal."""
    fold, starts, slots = part
    layer = dict.fromkeys(starts, TRUE)
    if len(layer) > 1:
        layer = {number: problem.new() for number in starts}
        problem.add_clause(layer.values())
    for ways, must in slots:
        layer = _next(problem, layer, ways, must, fold.of)
    return layer


def _next(
    problem: Problem,
    layer: Mapping[float, int],
    ways: Sequence[tuple[int, float]],
    must: bool,
    combine: Callable[[float, float], float],
) -> dict[float, int]:
    """The numbers after one more slot."""
    reached: dict[float, list[tuple[int, ...]]] = {}
    for number, lit in layer.items():
        for way, more in ways:
            reached.setdefault(combine(number, more), []).append((lit, way))
        if not must:
            reached.setdefault(number, []).append((lit, *(-way for way, _ in ways)))
    if len(reached) == 1:
        return dict.fromkeys(reached, TRUE)
    after: dict[float, int] = {}
    for number, conditions in reached.items():
        bare = [tuple(lit for lit in condition if lit != TRUE) for condition in conditions]
        if len(bare) == 1 and len(bare[0]) == 1:
            after[number] = bare[0][0]
            continue
        after[number] = problem.new()
        for condition in bare:
            problem.add_clause((*(-lit for lit in condition), after[number]))
    return after
