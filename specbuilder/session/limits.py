"""Open options that no completion can carry: with them, a STOP limit is out of reach whatever else is chosen."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache, partial
from math import inf

from specbuilder.calc import made
from specbuilder.calc.calculation import Calculation
from specbuilder.calc.weights import Weight, weights_of
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import GroupId, OptionId, RuleId
from specbuilder.model.kinds import Level, OptionState, Pick, Place, RuleKind, Truth, Verdict
from specbuilder.model.rules import Chosen, Given, Rule, WithinBound
from specbuilder.model.situation import Placed, Situation
from specbuilder.rulegraph.graph import atoms_of, tags_given
from specbuilder.rulegraph.judge import Hearing, holds_for_certain
from specbuilder.rulegraph.standing import Standing, swapped
from specbuilder.rulegraph.states import Stand
from specbuilder.rulegraph.truth import within

from .relevance import Relevance, memory_of


def blocked_by_limits(
    stands: dict[OptionId, Stand], standing: Standing, hearings: Iterable[Hearing], relevance: Relevance
) -> dict[OptionId, Stand]:
    """The stands, with the options that a limit rules out blocked.

    A limit that is broken already blocks nothing: it is in conflict, and states are told relative to the rest. While
    the base van is undecided, limits that look at the van wait for it.
    """
    result = dict(stands)
    situation = standing.situation
    memory = memory_of(situation.catalogue)
    calculations = {calculation.id: calculation for calculation in made(situation.catalogue)}
    for hearing in hearings:
        rule, limit = hearing.rule, _plain_limit(hearing.rule)
        if limit is None or standing.readings[limit.ledger].verdict is Verdict.BROKEN:
            continue
        calculation = calculations[limit.ledger]
        if situation.van is None and any(calculation.touches(van) for van in situation.catalogue.vans):
            continue
        room = standing.readings[limit.ledger].room
        asked = _may_block(result, situation, limit, room.most - limit.minus if room is not None else -inf)
        if not holds_for_certain(rule, standing):
            wakers = _wakers(situation.catalogue)[rule.id]
            asked = tuple((o, place) for o, place in asked if o in wakers and _wakes(rule, standing, o, place))
        if not asked:
            continue
        key = (rule.id, asked, relevance.of(limit.ledger, extras=True))
        for option in memory.recall(key, partial(_out_of_reach, situation, calculation, limit, asked)):
            cause = Cause(kind=CauseKind.LEDGER, ledger=limit.ledger, rule=rule.id, option=option)
            result[option] = result[option]._replace(state=OptionState.BLOCKED, cause=cause)
    return result


def _plain_limit(rule: Rule) -> WithinBound | None:
    if rule.kind is not RuleKind.LIMIT or rule.level is not Level.STOP:
        return None
    atoms = [atom for term in rule.then.terms for atom in term.atoms]
    return atoms[0] if len(atoms) == 1 and isinstance(atoms[0], WithinBound) else None


@lru_cache(maxsize=4)
def _wakers(catalogue: Catalogue) -> Mapping[RuleId, frozenset[OptionId]]:
    """Options that a rule's condition speaks of, by name or by what they give."""
    tags = {option.id: frozenset(tags_given(option)) for option in catalogue.options.values()}
    return {rule.id: _spoken_of(rule, tags) for rule in catalogue.rules.values()}


def _spoken_of(rule: Rule, tags: Mapping[OptionId, frozenset[str]]) -> frozenset[OptionId]:
    atoms = [atom for atom, _ in atoms_of(rule.when)]
    wanted = {atom.tag for atom in atoms if isinstance(atom, Given)}
    named = {atom.option for atom in atoms if isinstance(atom, Chosen)}
    return frozenset(option for option, given in tags.items() if option in named or not wanted.isdisjoint(given))


def _wakes(rule: Rule, standing: Standing, option: OptionId, place: Place | None) -> bool:
    """Whether taking the option itself makes the rule's condition hold."""
    situation = standing.situation
    coming = Placed(option=situation.catalogue.options[option], place=place)
    one = situation.catalogue.groups[coming.option.group].pick is Pick.ONE
    leaving = tuple(p for p in situation.placed if one and p.option.group == coming.option.group)
    return holds_for_certain(rule, swapped(standing, leaving, coming))


def _may_block(
    stands: dict[OptionId, Stand], situation: Situation, limit: WithinBound, room: float
) -> tuple[tuple[OptionId, Place | None], ...]:
    """Open options heavy enough to use the room up, with the place they would take."""
    weights = weights_of(situation.catalogue)[limit.ledger]
    given_up = _given_up(situation, weights)
    options = situation.catalogue.options
    return tuple(
        (option, stands[option].place)
        for option, weight in weights.items()
        if stands[option].state is OptionState.OPEN and weight.taken + given_up.get(options[option].group, 0) > room
    )


def _given_up(situation: Situation, weights: Mapping[OptionId, Weight]) -> Mapping[GroupId, float]:
    """What leaves each pick-one group when another answer takes the place of its choice."""
    groups = situation.catalogue.groups
    lost: dict[GroupId, float] = {}
    for placed in situation.placed:
        option = placed.option
        if option.id in weights and groups[option.group].pick is Pick.ONE:
            lost[option.group] = lost.get(option.group, 0) + weights[option.id].given_up
    return lost


def _out_of_reach(
    situation: Situation,
    calculation: Calculation,
    limit: WithinBound,
    asked: tuple[tuple[OptionId, Place | None], ...],
) -> tuple[OptionId, ...]:
    found: list[OptionId] = []
    for option, place in asked:
        reach = calculation.reach(situation, situation.catalogue.options[option], place)
        if reach is not None and within(limit, *reach) is Truth.NO:
            found.append(option)
    return tuple(found)
