"""Exact states: what every way to finish a build holds, and what none does."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.facts import Facts
from specbuilder.model.ids import GroupId, OptionId, RuleId
from specbuilder.model.kinds import Level, OptionState, Pick, Place, RuleKind
from specbuilder.model.rules import WithinBound
from specbuilder.model.spec import Choice
from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.conflicts import in_conflict
from specbuilder.reasoning.reasoner import Core, States

from .machine import Machine, Ways, machine_of

SECONDS = 0.15
"""Time for the states after one edit; what is not settled by then is told as *checking*."""

STEPS = 600
"""Steps of the search for every conflict among the choices."""


class Proven(NamedTuple):
    """What was proven of one option."""

    state: OptionState | None
    """None: not settled in the time."""
    place: Place | None = None
    """The first of its places that is not blocked."""
    blocked_by: tuple[Choice, ...] = ()
    """Choices that block it, where they are at hand; not always a minimal set."""


_OPEN = {place: Proven(OptionState.OPEN, place) for place in (None, *Place)}
_FOLLOWS = {place: Proven(OptionState.FOLLOWS, place) for place in (None, *Place)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Peace:
    """What stands of a spec without conflict: the states are told relative to it."""

    machine: Machine
    kept: tuple[Choice, ...]
    """The choices that take part in no conflict."""
    firm: tuple[int, ...]
    """The answers that stand, as literals."""
    choices: Mapping[int, Choice]
    """The literals of the kept choices."""


def make_peace(catalogue: Catalogue, facts: Facts, choices: tuple[Choice, ...]) -> Peace:
    """Let go of what is in conflict, and of no more.

    A ledger past its bound is in conflict with nearly every choice that feeds it: there the limit is let go of, since
    its finding says all there is to say. Of the rest each choice that takes part in a minimal conflict is let go of.
    The brief and the base van stand before the choices.
    """
    machine = machine_of(catalogue, facts, choices)
    firm = (*machine.answers(facts), *machine.theirs(choices))
    held = machine.choices(choices)
    if machine.stands([*firm, *held]):
        return Peace(machine=machine, kept=choices, firm=firm, choices=held)
    broken = _broken_limits(catalogue, facts, choices)
    if broken:
        machine = machine_of(catalogue, facts, choices, without=broken)
        firm = (*machine.answers(facts), *machine.theirs(choices))
    held = machine.choices(choices)
    vans = tuple(lit for lit, c in held.items() if catalogue.options[c.option].van is not None)
    rest = [lit for lit in held if lit not in vans]
    for ground, answers in (((*firm, *vans), firm), (vans, ()), (firm, firm), ((), ())):
        if machine.stands(ground):
            gone = _clashing(machine, rest, ground) | (set(vans) - set(ground))
            kept = tuple(c for c in choices if gone.isdisjoint(machine.compiled.held(c)))
            return Peace(machine=machine, kept=kept, firm=answers, choices=machine.choices(kept))
    return Peace(machine=machine, kept=(), firm=(), choices={})


def _clashing(machine: Machine, held: Sequence[int], ground: Sequence[int]) -> set[int]:
    """What takes part in a minimal conflict.

    Where there are too many conflicts to look at them all, those are let go of that one conflict after another names,
    until the rest agrees.
    """
    found = in_conflict(machine.reasoner, held, Budget(steps=STEPS), given=ground)
    if found.is_complete:
        return set(found.inside)
    gone: set[int] = set()
    while conflict := machine.conflict([lit for lit in held if lit not in gone], ground):
        gone.update(conflict)
    return gone


def _broken_limits(catalogue: Catalogue, facts: Facts, choices: tuple[Choice, ...]) -> frozenset[RuleId]:
    """The limits at STOP that the choices break by themselves."""
    machine = machine_of(catalogue, facts, choices, selectable=True)
    held = [*machine.answers(facts), *machine.choices(choices)]
    return frozenset(
        rule
        for rule, lit in machine.compiled.selectors.items()
        if catalogue.rules[rule].kind is RuleKind.LIMIT
        and catalogue.rules[rule].level is Level.STOP
        and any(isinstance(a, WithinBound) for term in catalogue.rules[rule].then.terms for a in term.atoms)
        and not machine.stands([*held, lit])
    )


def proven(peace: Peace, asked: Sequence[OptionId]) -> Mapping[OptionId, Proven]:
    """The states of some options beside what stands.

    An option beside the choice of its pick-one group is asked for in that choice's place.
    """
    machine = peace.machine
    catalogue, compiled = machine.compiled.catalogue, machine.compiled
    choices = peace.choices
    held = [*peace.firm, *choices]
    rivals, places = _rivals(peace), machine.places
    beside = [o for o in asked if catalogue.options[o].group in rivals]
    alone = [o for o in asked if catalogue.options[o].group not in rivals]
    variables = [lit for o in alone for _, lit in places[o]] + [compiled.option(o) for o in alone]
    states = machine.reasoner.states(held, variables, Budget(seconds=SECONDS))
    assert not isinstance(states, frozenset), "only choices that agree are asked about"
    found = {option: _alone(states, places[option], compiled.option(option)) for option in alone}
    found.update(_beside(machine, held, choices, rivals, beside))
    return found


def _alone(states: States, ways: Ways, wherever: int) -> Proven:
    """What the states say of an option that stands in nobody's place."""
    unsure = False
    for place, lit in ways:
        can = states.can_be(lit)
        if can:
            follows = states.can_be(-wherever) is False
            return (_FOLLOWS if follows else _OPEN)[place]
        unsure = unsure or can is None
    return Proven(None if unsure else OptionState.BLOCKED)


def _rivals(peace: Peace) -> dict[GroupId, tuple[int, ...]]:
    """The literals of the choice in each answered pick-one group."""
    catalogue = peace.machine.compiled.catalogue
    found: dict[GroupId, tuple[int, ...]] = {}
    for lit, choice in peace.choices.items():
        group = catalogue.options[choice.option].group
        if catalogue.groups[group].pick is Pick.ONE:
            found[group] = (*found.get(group, ()), lit)
    return found


def _beside(
    machine: Machine,
    held: Sequence[int],
    choices: Mapping[int, Choice],
    rivals: Mapping[GroupId, tuple[int, ...]],
    asked: Sequence[OptionId],
) -> Mapping[OptionId, Proven]:
    options, places = machine.compiled.catalogue.options, machine.places
    of_group = {group: machine.swaps(group, lits) for group, lits in rivals.items()}
    swaps = [swap for option in asked for swap in of_group[options[option].group][option]]
    answers = machine.reasoner.beside(held, swaps, Budget(seconds=SECONDS))
    found: dict[OptionId, Proven] = {}
    at = 0
    for option in asked:
        ways = places[option]
        if answers[at] is True:
            found[option] = _OPEN[ways[0][0]]
        else:
            found[option] = _in_place([(place, answers[at + i]) for i, (place, _) in enumerate(ways)], choices)
        at += len(ways)
    return found


def _in_place(ways: Sequence[tuple[Place | None, bool | Core | None]], choices: Mapping[int, Choice]) -> Proven:
    """What the answers at each place say of an option that would stand in another's place."""
    by: tuple[Choice, ...] = ()
    unsure = False
    for place, answer in ways:
        if answer is True:
            return _OPEN[place]
        if isinstance(answer, frozenset):
            by = by or tuple(choices[lit] for lit in sorted(answer, key=abs) if lit in choices)
        else:
            unsure = True
    return Proven(None if unsure else OptionState.BLOCKED, None, by)
