"""Which ledger keeps a blocked option out, where one alone does: the short answer for its row."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache

from specbuilder.calc import made
from specbuilder.calc.measuring.calculation import Calculation
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Level, OptionState, Pick, RuleKind, Truth, Verdict
from specbuilder.model.rules import Rule, WithinBound
from specbuilder.rulegraph.judge import Hearing
from specbuilder.rulegraph.standing import Standing
from specbuilder.rulegraph.states import Stand
from specbuilder.rulegraph.truth import any_of

FEW = 3
"""So many choices tell the reason by themselves."""


def with_ledgers(
    stands: dict[OptionId, Stand], standing: Standing, hearings: Iterable[Hearing]
) -> dict[OptionId, Stand]:
    """The stands; an option that search blocked and one ledger has no room for names that ledger."""
    asked = [o for o, s in stands.items() if s.state is OptionState.BLOCKED and _unclear(s.cause)]
    if not asked:
        return stands
    limits = [(h.rule, atom) for h in hearings if (atom := _limit(h.rule)) is not None and _binds(h.rule, standing)]
    tallies = {c.id: c for c in made(standing.situation.catalogue)}
    result = dict(stands)
    touched = _touched(standing.situation.catalogue)
    for option in asked:
        for rule, atom in limits:
            if option in touched[atom.ledger] and _is_over(standing, tallies, option, stands[option], atom):
                cause = Cause(kind=CauseKind.LEDGER, ledger=atom.ledger, rule=rule.id, option=option)
                result[option] = stands[option]._replace(cause=cause)
                break
    return result


@lru_cache(maxsize=4)
def _touched(catalogue: Catalogue) -> Mapping[LedgerId, frozenset[OptionId]]:
    """The options that change each ledger at all: few of them do."""
    return {c.id: frozenset(o.id for o in catalogue.options.values() if c.touches(o)) for c in made(catalogue)}


def _unclear(cause: Cause | None) -> bool:
    if cause is None or cause.kind is not CauseKind.TOGETHER:
        return False
    return not 0 < len(cause.because) <= FEW


def _limit(rule: Rule) -> WithinBound | None:
    if rule.kind is not RuleKind.LIMIT or rule.level is not Level.STOP:
        return None
    atoms = [atom for term in rule.then.terms for atom in term.atoms]
    return atoms[0] if len(atoms) == 1 and isinstance(atoms[0], WithinBound) else None


def _binds(rule: Rule, standing: Standing) -> bool:
    (atom,) = (a for t in rule.then.terms for a in t.atoms if isinstance(a, WithinBound))
    reading = standing.readings.get(atom.ledger)
    if reading is None or reading.room is None or reading.verdict is Verdict.BROKEN:
        return False
    return any_of(rule.when, standing, None) is Truth.YES


def _is_over(
    standing: Standing,
    tallies: Mapping[LedgerId, Calculation],
    option: OptionId,
    stand: Stand,
    atom: WithinBound,
) -> bool:
    """Whether what it adds, less what leaves its group for it, is more than the room there can be."""
    situation, tally = standing.situation, tallies[atom.ledger]
    room = standing.readings[atom.ledger].room
    coming = situation.catalogue.options[option]
    more = tally.amount(situation, coming, stand.place)
    if room is None or not more:
        return False
    if situation.catalogue.groups[coming.group].pick is Pick.ONE:
        leaving = (p for p in situation.placed if p.option.group == coming.group)
        more -= sum((tally.amount(situation, p.option, p.place) or 0) * p.count for p in leaving)
    return more * (1 if atom.within else -1) > room.most - atom.minus
