"""Open options that no completion can carry: with them, a STOP limit is out of reach whatever else is chosen."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from specbuilder.calc import made
from specbuilder.calc.calculation import Calculation
from specbuilder.calc.weights import Weight, weights_of
from specbuilder.model.catalogue import Option
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Level, OptionState, Pick, RuleKind, Truth, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.rules import Rule, WithinBound
from specbuilder.model.situation import Situation
from specbuilder.rulegraph.judge import Hearing, holds_for_certain
from specbuilder.rulegraph.standing import Standing
from specbuilder.rulegraph.states import Stand
from specbuilder.rulegraph.truth import within


def blocked_by_limits(
    stands: dict[OptionId, Stand], standing: Standing, hearings: Iterable[Hearing]
) -> dict[OptionId, Stand]:
    """The stands, with the options that a limit rules out blocked.

    A limit that is broken already blocks nothing: it is in conflict, and states are told relative to the rest. While
    the base van is undecided, limits wait for it.
    """
    if standing.situation.van is None:
        return stands
    result = dict(stands)
    calculations = {calculation.id: calculation for calculation in made(standing.situation.catalogue)}
    for hearing in hearings:
        limit = _plain_limit(hearing.rule)
        if limit is None or not holds_for_certain(hearing.rule, standing):
            continue
        reading = standing.readings[limit.ledger]
        if reading.verdict is not Verdict.BROKEN and reading.room is not None:
            _block(result, standing.situation, hearing.rule, limit, calculations[limit.ledger], reading)
    return result


def _plain_limit(rule: Rule) -> WithinBound | None:
    if rule.kind is not RuleKind.LIMIT or rule.level is not Level.STOP:
        return None
    atoms = [atom for term in rule.then.terms for atom in term.atoms]
    return atoms[0] if len(atoms) == 1 and isinstance(atoms[0], WithinBound) else None


def _block(
    stands: dict[OptionId, Stand],
    situation: Situation,
    rule: Rule,
    limit: WithinBound,
    calculation: Calculation,
    reading: Reading,
) -> None:
    room = reading.room.most - limit.minus if reading.room is not None else 0.0
    weights = weights_of(situation.catalogue)[limit.ledger]
    for option, weight in weights.items():
        if stands[option].state is not OptionState.OPEN:
            continue
        chosen = situation.catalogue.options[option]
        if weight.taken + _given_up(situation, chosen, weights) <= room:
            continue
        reach = calculation.reach(situation, chosen, stands[option].place)
        if reach is not None and within(limit, *reach) is Truth.NO:
            cause = Cause(kind=CauseKind.LEDGER, ledger=limit.ledger, rule=rule.id, option=option)
            stands[option] = replace(stands[option], state=OptionState.BLOCKED, cause=cause)


def _given_up(situation: Situation, option: Option, weights: Mapping[OptionId, Weight]) -> float:
    """What leaves when the option takes the place of its pick-one group's choice."""
    if situation.catalogue.groups[option.group].pick is Pick.ANY:
        return 0.0
    leaving = (p.option.id for p in situation.placed if p.option.group == option.group)
    return sum(weights[o].given_up for o in leaving if o in weights)
