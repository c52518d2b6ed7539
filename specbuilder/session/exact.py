"""Exact states: what every way to finish a build holds, and what none does."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.facts import Facts
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import OptionState, Pick, Place
from specbuilder.model.spec import Choice
from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.conflicts import in_conflict
from specbuilder.reasoning.reasoner import Swap
from specbuilder.rulegraph.clauses import Placement, placements_of

from .machine import Machine

SECONDS = 0.15
"""Time for the states after one edit; what is not settled by then is told as *checking*."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proven:
    """What was proven of one option."""

    state: OptionState | None
    """None: not settled in the time."""
    place: Place | None = None
    """The first of its places that is not blocked."""
    rests_on: frozenset[OptionId] = frozenset()
    """Choices that block it, where they are at hand."""


def kept_choices(machine: Machine, facts: Facts, choices: tuple[Choice, ...]) -> tuple[Choice, ...]:
    """The choices that take part in no conflict. The brief and the base van stand before the choices."""
    with machine.lock:
        held = machine.choices(choices)
        firm = [*machine.answers(facts), *machine.theirs(choices)]
        if not isinstance(machine.reasoner.consistent([*firm, *held]), frozenset):
            return choices
        options = machine.compiled.catalogue.options
        vans = [lit for lit, choice in held.items() if options[choice.option].van is not None]
        rest = [lit for lit in held if lit not in vans]
        for ground in ([*firm, *vans], vans, []):
            if not isinstance(machine.reasoner.consistent(ground), frozenset):
                clashing = in_conflict(machine.reasoner, rest, Budget(seconds=SECONDS), given=ground)
                out = {held[lit] for lit in clashing.inside}
                out |= {held[lit] for lit in vans if lit not in ground}
                kept = tuple(choice for choice in choices if choice not in out)
                return kept if clashing.is_complete else _at_peace(machine, ground, kept)
        return ()


def _at_peace(machine: Machine, ground: Sequence[int], choices: tuple[Choice, ...]) -> tuple[Choice, ...]:
    """Choices that agree, where the time did not suffice to find every conflict."""
    held = machine.choices(choices)
    while isinstance(core := machine.reasoner.consistent([*ground, *held]), frozenset) and not core.isdisjoint(held):
        out = {choice for lit, choice in held.items() if lit in core}
        choices = tuple(choice for choice in choices if choice not in out)
        held = machine.choices(choices)
    return choices


def proven(
    machine: Machine,
    facts: Facts,
    kept: tuple[Choice, ...],
    asked: Iterable[OptionId],
    first: Iterable[OptionId] = (),
) -> Mapping[OptionId, Proven]:
    """The states of some options beside choices that agree.

    An option beside the choice of its pick-one group is asked for in that choice's place.
    """
    with machine.lock:
        return _proven(machine, facts, kept, tuple(asked), tuple(first))


def _proven(
    machine: Machine, facts: Facts, kept: tuple[Choice, ...], asked: Sequence[OptionId], first: Sequence[OptionId]
) -> Mapping[OptionId, Proven]:
    catalogue, compiled = machine.compiled.catalogue, machine.compiled
    answers = _firm(machine, facts, kept)
    held = [*answers, *machine.choices(kept)]
    rivals = _rivals(machine, kept)
    beside = [o for o in asked if catalogue.options[o].group in rivals]
    alone = [o for o in asked if catalogue.options[o].group not in rivals]
    variables = [lit for o in alone for lit in (*_places(machine, o).values(), compiled.option(o))]
    early = [compiled.option(o) for o in first if catalogue.options[o].group not in rivals]
    states = machine.reasoner.states(held, variables, Budget(seconds=SECONDS), early)
    assert not isinstance(states, frozenset), "only choices that agree are asked about"
    found: dict[OptionId, Proven] = {}
    for option in alone:
        open_at = [place for place, lit in _places(machine, option).items() if states.can_be(lit)]
        unsure = any(states.can_be(lit) is None for lit in _places(machine, option).values())
        if not open_at:
            found[option] = Proven(state=None if unsure else OptionState.BLOCKED)
        elif states.can_be(-compiled.option(option)) is False:
            found[option] = Proven(state=OptionState.FOLLOWS, place=open_at[0])
        else:
            found[option] = Proven(state=OptionState.OPEN, place=open_at[0])
    found.update(_beside(machine, held, rivals, beside))
    return found


def _firm(machine: Machine, facts: Facts, kept: tuple[Choice, ...]) -> list[int]:
    """The answers that stand; none where they cannot stand with the base van."""
    firm = [*machine.answers(facts), *machine.theirs(kept)]
    held = machine.choices(kept)
    return firm if not isinstance(machine.reasoner.consistent([*firm, *held]), frozenset) else []


def _rivals(machine: Machine, kept: tuple[Choice, ...]) -> dict[str, tuple[int, ...]]:
    """The literals of the choice in each answered pick-one group."""
    catalogue: Catalogue = machine.compiled.catalogue
    found: dict[str, tuple[int, ...]] = {}
    for choice in kept:
        option = catalogue.options.get(choice.option)
        if option is not None and catalogue.groups[option.group].pick is Pick.ONE:
            found[option.group] = machine.compiled.held(choice)
    return found


def _places(machine: Machine, option: OptionId) -> dict[Place | None, int]:
    """The literal of the option at each of its places, the usual one first."""
    found = placements_of(machine.compiled.catalogue.options[option])
    return {p.place: machine.compiled.counts[Placement(option, p.place)][0] for p in found}


def _beside(
    machine: Machine, held: Sequence[int], rivals: Mapping[str, tuple[int, ...]], asked: Sequence[OptionId]
) -> Mapping[OptionId, Proven]:
    options = machine.compiled.catalogue.options
    swaps: list[Swap] = []
    owners: list[tuple[OptionId, Place | None]] = []
    for option in asked:
        for place, lit in _places(machine, option).items():
            swaps.append(Swap(lit, rivals[options[option].group]))
            owners.append((option, place))
    found: dict[OptionId, Proven] = {}
    unsure: set[OptionId] = set()
    for (option, place), answer in zip(
        owners, machine.reasoner.beside(held, swaps, Budget(seconds=SECONDS)), strict=True
    ):
        if answer is None:
            unsure.add(option)
        elif not isinstance(answer, frozenset) and option not in found:
            found[option] = Proven(state=OptionState.OPEN, place=place)
    for option in asked:
        if option not in found:
            found[option] = Proven(state=None if option in unsure else OptionState.BLOCKED)
    return found
