"""The edits a seller could make to one choice, each with the literals it puts in the choice's place."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.edits import Edit, LeaveOut, Move, SetCount, Take
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import Pick, Place
from specbuilder.model.own_parts import is_brought
from specbuilder.model.spec import Choice, Spec
from specbuilder.rulegraph.clauses import Placement, placements_of

from .machine import Machine
from .problem import Compiled


@dataclass(frozen=True, slots=True)
class Alternative:
    """One edit in place of a choice."""

    edit: Edit
    literals: tuple[int, ...]
    """What stands instead, or that the choice does not; empty where nobody knows its place."""
    option: Option | None
    """The option that stands instead."""
    count: int = 1


def alternatives(compiled: Compiled, choice: Choice) -> Iterator[Alternative]:
    """What could be done with a choice: another answer, another place, another count, or without it."""
    catalogue = compiled.catalogue
    option = catalogue.options[choice.option]
    group = catalogue.groups[option.group]
    yield from _elsewhere(compiled, option, choice)
    yield from _counted(compiled, option, choice)
    if group.pick is Pick.ANY:
        counts = compiled.counts.get(Placement(option.id, choice.place), ())
        yield Alternative(LeaveOut(option=option.id, place=choice.place), tuple(-lit for lit in counts[:1]), None, 0)
        return
    for other in catalogue.options_of(option.group):
        if other.id != option.id and not other.refused and not is_brought(other):
            yield from takes(compiled, other)


def takes(compiled: Compiled, option: Option) -> Iterator[Alternative]:
    """Taking an option, at each of its places."""
    for placement in placements_of(option):
        lit = compiled.counts[Placement(option.id, placement.place)][0]
        yield Alternative(Take(option=option.id, place=placement.place), (lit,), option)


def takes_of_extras(machine: Machine, extras: Sequence[OptionId], ground: Sequence[int]) -> list[Take]:
    """Extras taken where they usually stand, or else at the first place that goes with the rest."""
    taken, held = list[Take](), list(ground)
    for option in extras:
        ways = tuple(takes(machine.compiled, machine.compiled.catalogue.options[option]))
        way = ways[0]
        if len(ways) > 1:
            way = next((one for one in ways if machine.stands([*held, *one.literals])), way)
            held += way.literals
        taken.append(Take(option=option, place=None if way is ways[0] else place_of(way.edit)))
    return taken


def _elsewhere(compiled: Compiled, option: Option, choice: Choice) -> Iterator[Alternative]:
    for place in option.places:
        if place is not choice.place:
            counts = compiled.counts[Placement(option.id, place)]
            lit = counts[min(choice.count, len(counts)) - 1]
            yield Alternative(Move(option=option.id, to=place, place=choice.place), (lit,), option, choice.count)


def _counted(compiled: Compiled, option: Option, choice: Choice) -> Iterator[Alternative]:
    counts = compiled.counts.get(Placement(option.id, choice.place), ())
    for count in range(1, len(counts) + 1):
        if count != choice.count:
            literals = (counts[count - 1],) if count == len(counts) else (counts[count - 1], -counts[count])
            yield Alternative(SetCount(option=option.id, count=count, place=choice.place), literals, option, count)


def overfull(catalogue: Catalogue, spec: Spec) -> frozenset[GroupId]:
    """The groups of which more stands than may."""
    many: dict[GroupId, int] = {}
    for choice in spec.choices:
        if (option := catalogue.options.get(choice.option)) is not None:
            many[option.group] = many.get(option.group, 0) + choice.count
    return frozenset(group for group, count in many.items() if count > catalogue.groups[group].max_choices)


def place_of(edit: Edit) -> Place | None:
    """The place an edit takes something at."""
    return edit.place if isinstance(edit, Take) else None


def order_of(edit: Edit) -> int:
    """What leaves goes first, so that it is not in the way of what comes; the base van goes before all."""
    match edit:
        case LeaveOut():
            return 0
        case SetCount() | Move():
            return 1
        case _:
            return 2
