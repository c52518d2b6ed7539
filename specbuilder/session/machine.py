"""The exact reasoner of a catalogue under one brief, kept between edits so that the next question is cheap."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from threading import RLock
from typing import TypeAlias

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.facts import Facts
from specbuilder.model.ids import BriefKey, GroupId, OptionId, RuleId
from specbuilder.model.kinds import Level, Owner, Place, Truth
from specbuilder.model.own_parts import is_brought
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.spec import Choice
from specbuilder.reasoning.best import Completer
from specbuilder.reasoning.reasoner import Reasoner, Swap
from specbuilder.rulegraph.clauses import placements_of
from specbuilder.rulegraph.truth import brief_truth

from .problem import Compiled, compile_problem, theirs

KEPT = 4
"""Briefs remembered for each catalogue."""


Ways: TypeAlias = tuple[tuple[Place | None, int], ...]
"""Where an option can stand, each place with its literal."""


Swaps: TypeAlias = Mapping[OptionId, tuple[Swap, ...]]
"""The swap of each option at each of its places."""


@dataclass(slots=True, eq=False)
class Machine:
    """A compiled catalogue with its reasoner. One thread at a time: hold ``lock``."""

    compiled: Compiled
    reasoner: Reasoner
    completer: Completer
    lock: RLock
    dropped: frozenset[RuleId]
    """Limits that the brief alone breaks: they block nothing, and are told as findings."""
    places: Mapping[OptionId, Ways] = field(init=False)
    """The literal of each option at each of its places, the usual one first."""
    _swaps: dict[tuple[GroupId, tuple[int, ...]], Swaps] = field(init=False)

    def __post_init__(self) -> None:
        self._swaps = {}
        counts = self.compiled.counts
        self.places = {
            option.id: tuple((p.place, counts[p][0]) for p in placements_of(option))
            for option in self.compiled.catalogue.options.values()
        }

    def swaps(self, group: GroupId, rivals: tuple[int, ...]) -> Swaps:
        """How each option of a group would stand in the place of what is chosen there; asked for at every edit."""
        found = self._swaps.get((group, rivals))
        if found is None:
            options = self.compiled.catalogue.options_of(group)
            found = {option.id: tuple(Swap(lit, rivals) for _, lit in self.places[option.id]) for option in options}
            self._swaps[group, rivals] = found
        return found

    def answers(self, facts: Facts) -> dict[int, BriefKey]:
        """The settled atoms of the brief as literals, each with its line.

        The state of the job (a line without a question) is left open: it moves on by itself and blocks no option.
        """
        found: dict[int, BriefKey] = {}
        for atom, variable in self.compiled.clauses.atom.items():
            if self.compiled.catalogue.brief[atom.key].question is None:
                continue
            truth = brief_truth(atom, facts)
            if truth is not Truth.MAYBE:
                found[variable + 1 if truth is Truth.YES else -(variable + 1)] = atom.key
        return found

    def choices(self, choices: tuple[Choice, ...]) -> dict[int, Choice]:
        """The literals of choices with their choice; in catalogue order, so that the order taken changes nothing."""
        found = {lit: choice for choice in choices for lit in self.compiled.held(choice)}
        return {lit: found[lit] for lit in sorted(found, key=abs)}

    def stands(self, lits: Iterable[int]) -> bool:
        """Whether some build keeps all of these literals."""
        return not isinstance(self.reasoner.consistent(list(lits)), frozenset)

    def conflict(self, held: Sequence[int], ground: Sequence[int] = ()) -> tuple[int, ...]:
        """A minimal part of ``held`` that cannot stand beside ``ground``; what was taken earlier is named rather.

        Empty where all of it can stand, or the ground itself cannot.
        """
        core = self.reasoner.consistent([*ground, *held])
        if not isinstance(core, frozenset):
            return ()
        left = [lit for lit in held if lit in core]
        for lit in reversed(left[:]):
            if lit in left:
                less = self.reasoner.consistent([*ground, *(other for other in left if other != lit)])
                if isinstance(less, frozenset):
                    left = [other for other in left if other in less and other != lit]
        return tuple(left)

    def theirs(self, choices: tuple[Choice, ...]) -> tuple[int, ...]:
        """That some part is the customer's, where a rule asks for it."""
        return theirs(self.compiled, choices)


def machine_of(
    catalogue: Catalogue,
    facts: Facts,
    choices: tuple[Choice, ...],
    *,
    selectable: bool = False,
    without: frozenset[RuleId] = frozenset(),
) -> Machine:
    """The machine for this brief.

    Args:
        catalogue: what can be built.
        facts: the brief; only its numbers matter.
        choices: only the customer's own parts among them matter.
        selectable: with the rules at SIGN as well, each with a switch of its own.
        without: rules about limits that are let go of.
    """
    shelf = _shelf(catalogue)
    with shelf.lock:
        key = selectable, without, _entering(catalogue, facts, selectable, shelf), _own_parts(catalogue, choices)
        machine = shelf.machines.get(key)
        if machine is None and without:
            machine = _letting_go(machine_of(catalogue, facts, choices, selectable=selectable), without)
        elif machine is None:
            machine = _made(catalogue, facts, choices, selectable, shelf)
            shelf.words |= {word for word in machine.compiled.asked.keys if word not in facts.ranges}
            key = selectable, without, _entering(catalogue, facts, selectable, shelf), _own_parts(catalogue, choices)
        shelf.machines[key] = machine
        shelf.machines.move_to_end(key)
        if len(shelf.machines) > KEPT:
            shelf.machines.popitem(last=False)
        return machine


def _letting_go(whole: Machine, rules: frozenset[RuleId]) -> Machine:
    """The machine without some limits."""
    compiled = whole.compiled.letting_go(rules)
    reasoner = Reasoner(compiled.problem)
    return Machine(compiled, reasoner, Completer(reasoner), whole.lock, whole.dropped)


class _Shelf:
    """The machines of one catalogue."""

    def __init__(self) -> None:
        self.lock = RLock()
        self.machines: OrderedDict[Hashable, Machine] = OrderedDict()
        self.words: frozenset[BriefKey] = frozenset()
        """Answers in words that some limit has been seen to rest on."""


@lru_cache(maxsize=4)
def _shelf(_catalogue: Catalogue) -> _Shelf:
    return _Shelf()


def lock_of(catalogue: Catalogue) -> RLock:
    """Held while a report is made: what is remembered between edits is for one thread at a time."""
    return _shelf(catalogue).lock


def _entering(catalogue: Catalogue, facts: Facts, selectable: bool, shelf: _Shelf) -> Hashable:
    """What enters limits: numbers, words that some limit rests on (with the rules at SIGN all), and weighed axles."""
    return facts.weighed, tuple(
        (key, value)
        for key, value in facts.values.items()
        if (isinstance(value, int | float) or selectable or key in shelf.words) and key in catalogue.brief
    )


def _own_parts(catalogue: Catalogue, choices: tuple[Choice, ...]) -> Hashable:
    """What the sheets say. A part that is the customer's anyway and has no sheet counts as it does while not taken."""
    return tuple(
        (c.option, c.owner, c.own_part)
        for c in choices
        if c.own_part or (c.owner is Owner.CUSTOMER and not is_brought(catalogue.options.get(c.option)))
    )


def _made(
    catalogue: Catalogue,
    facts: Facts,
    choices: tuple[Choice, ...],
    selectable: bool,
    shelf: _Shelf,
) -> Machine:
    """Compile, and take over the reasoner of a brief whose limits are the same."""
    levels = (Level.STOP, Level.SIGN) if selectable else (Level.STOP,)
    placed = _brought(catalogue, choices)
    situation = Situation(catalogue=catalogue, facts=facts, van=None, placed=placed, undecided={}, free=())
    compiled = compile_problem(situation, levels, selectable=selectable)
    for machine in shelf.machines.values():
        if machine.compiled.levels == levels and machine.compiled.problem == compiled.problem and not machine.dropped:
            return machine
    reasoner, dropped = Reasoner(compiled.problem), frozenset[RuleId]()
    if not selectable and isinstance(reasoner.consistent(()), frozenset):
        dropped = _broken_by_brief(compile_problem(situation, levels, selectable=True), shelf)
        compiled = compile_problem(situation, levels, selectable=False, without=dropped)
        reasoner = Reasoner(compiled.problem)
    return Machine(compiled, reasoner, Completer(reasoner), shelf.lock, dropped)


def _brought(catalogue: Catalogue, choices: tuple[Choice, ...]) -> tuple[Placed, ...]:
    """The customer's parts as their sheets have them, and those that may still come as nobody has read them."""
    known = tuple(
        Placed(option=catalogue.options[c.option], count=c.count, place=c.place, owner=c.owner, own_part=c.own_part)
        for c in choices
        if c.option in catalogue.options and (c.owner is Owner.CUSTOMER or c.own_part is not None)
    )
    read = {placed.option.id for placed in known}
    others = (o for o in catalogue.options.values() if is_brought(o) and o.id not in read)
    return (*known, *(Placed(option=option, owner=Owner.CUSTOMER) for option in others))


def _broken_by_brief(compiled: Compiled, shelf: _Shelf) -> frozenset[RuleId]:
    """The rules that cannot stand together whatever is chosen."""
    rules = compiled.catalogue.rules
    rule_of = {lit: rule for rule, lit in compiled.selectors.items() if rules[rule].level is Level.STOP}
    reasoner = Reasoner(compiled.problem)
    machine = Machine(compiled, reasoner, Completer(reasoner), shelf.lock, frozenset())
    dropped: set[int] = set()
    while conflict := machine.conflict([lit for lit in rule_of if lit not in dropped]):
        dropped.update(conflict)
    return frozenset(rule_of[lit] for lit in dropped)
