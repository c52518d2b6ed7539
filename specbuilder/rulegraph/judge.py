"""Every rule judged on one situation: holds, broken or cannot tell, with what makes it so.

The logic is Kleene's: an atom about an undecided group or an unknown answer is MAYBE, *and* takes the least of its
parts, *or* the greatest, *not* turns YES and NO round. A rule that lands on MAYBE cannot be told yet.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import assert_never

from specbuilder.model.facts import Facts
from specbuilder.model.findings import Finding
from specbuilder.model.ids import BASE_VAN_GROUP, BriefKey, GroupId, LedgerId, OptionId, RuleId, Tag, Zone
from specbuilder.model.kinds import Compare, Place, RuleKind, Truth, Verdict
from specbuilder.model.ledger import Lack, Reading
from specbuilder.model.rules import (
    SAME,
    AllOf,
    Always,
    AnyOf,
    Atom,
    BriefIs,
    Chosen,
    FigureAbove,
    FitsVan,
    Given,
    GroupAnswered,
    MarginBelow,
    NeedsMet,
    Not,
    PlacesLegal,
    Rule,
    WithinBound,
    ZonesFree,
)
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span

from .graph import atoms_of
from .standing import Standing, stand, zone_claims, zones_at

SLACK = 1e-9
"""Two floats nearer than this part of the bound are equal."""


@dataclass(slots=True)
class Evidence:
    """What a judgement rests on, gathered on the way."""

    subjects: list[OptionId] = field(default_factory=list)
    keys: list[BriefKey] = field(default_factory=list)
    lacks: list[Lack] = field(default_factory=list)
    wanted: list[Tag] = field(default_factory=list)
    reading: LedgerId | None = None


def heard(rule: Rule, made: Iterable[LedgerId]) -> bool:
    """False for a rule about a ledger that is not made: it is silent."""
    made = frozenset(made)
    return all(ledger in made for ledger in ledgers_of(rule))


def ledgers_of(rule: Rule) -> tuple[LedgerId, ...]:
    """The ledgers and figures a rule reads."""
    return tuple(
        atom.ledger
        for side in (rule.when, rule.then)
        for atom, _ in atoms_of(side)
        if isinstance(atom, WithinBound | MarginBelow | FigureAbove)
    )


def judge_all(
    rules: Iterable[Rule], situation: Situation, readings: Mapping[LedgerId, Reading], accepted: frozenset[RuleId]
) -> tuple[Finding, ...]:
    """A finding for each rule, what stops first."""
    standing = stand(situation, readings)
    findings = [judge(rule, standing, accepted) for rule in rules]
    return tuple(sorted(findings, key=lambda f: f.rank))


def judge(rule: Rule, standing: Standing, accepted: frozenset[RuleId] = frozenset()) -> Finding:
    """What one rule says."""
    verdict, evidence = _worst(rule, standing)
    order = {p.option.id: i for i, p in enumerate(standing.situation.placed)}
    return Finding(
        rule=rule.id,
        step=rule.step,
        level=rule.level,
        verdict=verdict,
        subjects=tuple(sorted(dict.fromkeys(evidence.subjects), key=lambda o: order.get(o, -1))),
        keys=tuple(dict.fromkeys(evidence.keys)),
        reading=evidence.reading,
        lacks=tuple(dict.fromkeys(evidence.lacks)),
        wanted=tuple(dict.fromkeys(evidence.wanted)),
        accepted=rule.id in accepted and verdict is Verdict.BROKEN,
    )


def _worst(rule: Rule, standing: Standing) -> tuple[Verdict, Evidence]:
    """The worst over the places that ``@same`` may stand for."""
    if not _speaks_of_same(rule):
        return _at(rule, standing, None)
    results = [_at(rule, standing, side) for side in Place]
    for wanted in (Verdict.BROKEN, Verdict.CANNOT_TELL):
        for verdict, evidence in results:
            if verdict is wanted:
                return verdict, evidence
    return results[0]


def _speaks_of_same(rule: Rule) -> bool:
    return any(isinstance(a, Given) and a.place == SAME for e in (rule.when, rule.then) for a, _ in atoms_of(e))


def _at(rule: Rule, standing: Standing, side: Place | None) -> tuple[Verdict, Evidence]:
    when = _any(rule.when, standing, side)
    if when is Truth.NO:
        return Verdict.HOLDS, Evidence()
    then = _any(rule.then, standing, side)
    match rule.kind:
        case RuleKind.EXCLUDES:
            truth = _not(min(when, then, key=_value))
        case RuleKind.NEEDS_ANY | RuleKind.LIMIT | RuleKind.EXACTLY_ONE:
            truth = max(_not(when), then, key=_value)
        case RuleKind.ADVICE:
            truth = max(_not(when), then, key=_value) if rule.then.terms else _not(when)
        case _:
            assert_never(rule.kind)
    verdict = {Truth.YES: Verdict.HOLDS, Truth.NO: Verdict.BROKEN, Truth.MAYBE: Verdict.CANNOT_TELL}[truth]
    if verdict is Verdict.HOLDS:
        return verdict, Evidence()
    evidence = Evidence()
    _gather(rule.when, standing, side, evidence, wanted=False)
    _gather(rule.then, standing, side, evidence, wanted=rule.kind in (RuleKind.NEEDS_ANY, RuleKind.ADVICE))
    if verdict is Verdict.BROKEN:
        evidence.lacks.clear()
    return verdict, evidence


def _value(truth: Truth) -> int:
    return truth.value


def _not(truth: Truth) -> Truth:
    return Truth(2 - truth.value)


def _any(expression: AnyOf, standing: Standing, side: Place | None) -> Truth:
    best = Truth.NO
    for term in expression.terms:
        truth = _all(term, standing, side)
        if truth is Truth.YES:
            return truth
        if truth is Truth.MAYBE:
            best = truth
    return best


def _all(term: AllOf, standing: Standing, side: Place | None) -> Truth:
    worst = Truth.YES
    for atom in term.atoms:
        truth = _truth(atom, standing, side)
        if truth is Truth.NO:
            return truth
        if truth is Truth.MAYBE:
            worst = truth
    return worst


def _truth(atom: Atom, standing: Standing, side: Place | None) -> Truth:
    match atom:
        case Given():
            name = tag_name(atom, side)
            if name in standing.given:
                return Truth.YES
            return Truth.MAYBE if name in standing.may_give else Truth.NO
        case Not(inner):
            return _not(_truth(inner, standing, side))
        case Chosen(option):
            if option in standing.chosen:
                return Truth.YES
            return Truth.MAYBE if option in standing.may_choose else Truth.NO
        case BriefIs():
            return brief_truth(atom, standing.situation.facts)
        case Always():
            return Truth.YES
        case WithinBound(ledger=ledger):
            return _within(atom, standing.readings[ledger])
        case MarginBelow(ledger=ledger, amount=amount):
            room = standing.readings[ledger].room
            return Truth.MAYBE if room is None else _below(room, amount)
        case FigureAbove(ledger=ledger, amount=amount):
            value = standing.readings[ledger].value
            return Truth.MAYBE if value is None else _not(_below(value, amount + SLACK))
        case GroupAnswered(group):
            return {0: Truth.MAYBE, 1: Truth.YES}.get(standing.answered.get(group, 0), Truth.NO)
        case FitsVan():
            return _least(_fit(p.option.fits_vans, standing) for p in standing.situation.placed)
        case NeedsMet():
            return _least(_need(n.any_of, standing) for p in standing.situation.placed for n in p.option.needs)
        case PlacesLegal():
            return _least(_placed_legally(p.place, p.option.places) for p in standing.situation.placed)
        case ZonesFree(zones):
            return _least(_zone(zone, standing.situation) for zone in zones)
        case _:
            assert_never(atom)


def tag_name(atom: Given, side: Place | None) -> str:
    """The capability an atom asks for, with ``@same`` filled in."""
    if atom.place is None:
        return atom.tag
    return f"{atom.tag}@{side.value if atom.place == SAME and side else atom.place}"


def _least(truths: Iterable[Truth]) -> Truth:
    return min(truths, key=_value, default=Truth.YES)


def brief_truth(atom: BriefIs, facts: Facts) -> Truth:
    """Compare an answer; MAYBE while it is unknown, unless its whole range agrees."""
    answer = facts.get(atom.key)
    if answer is None:
        return _in_range(atom, facts)
    if isinstance(answer, tuple):
        if atom.compare is Compare.EQUAL:
            return _yes(str(atom.value) in map(str, answer))
        return _yes(any(str(a) != str(atom.value) for a in answer))
    if atom.compare in (Compare.EQUAL, Compare.UNEQUAL):
        equal = answer == atom.value or str(answer) == str(atom.value)
        return _yes(equal == (atom.compare is Compare.EQUAL))
    number = float(answer)
    return _yes(number > float(atom.value) if atom.compare is Compare.ABOVE else number < float(atom.value))


def _in_range(atom: BriefIs, facts: Facts) -> Truth:
    span = facts.ranges.get(atom.key)
    if span is None or atom.compare not in (Compare.ABOVE, Compare.BELOW):
        return Truth.MAYBE
    limit = float(atom.value)
    inside = [v > limit if atom.compare is Compare.ABOVE else v < limit for v in (span.least, span.most)]
    return Truth.YES if all(inside) else Truth.MAYBE if any(inside) else Truth.NO


def _yes(truth: bool) -> Truth:
    return Truth.YES if truth else Truth.NO


def _below(span: Span, amount: float) -> Truth:
    if span.most < amount:
        return Truth.YES
    return Truth.NO if span.least >= amount else Truth.MAYBE


def _within(atom: WithinBound, reading: Reading) -> Truth:
    if not reading.applies:
        return Truth.YES
    if reading.value is None or (reading.bound is None and reading.lacks):
        return Truth.MAYBE
    if reading.bound is None:
        return Truth.YES
    return within(atom, reading.value, reading.bound)


def within(atom: WithinBound, value: Span, bound: Span) -> Truth:
    """The limit against ``factor * bound - minus``."""
    limit = bound * atom.factor - atom.minus
    slack = SLACK * max(1.0, abs(limit.most))
    if atom.within:
        if value.most <= limit.least + slack:
            return Truth.YES
        return Truth.NO if value.least > limit.most + slack else Truth.MAYBE
    if value.least >= limit.most - slack:
        return Truth.YES
    return Truth.NO if value.most < limit.least - slack else Truth.MAYBE


def _fit(vans: tuple[OptionId, ...], standing: Standing) -> Truth:
    van = standing.situation.van
    if not vans:
        return Truth.YES
    if van is not None:
        return _yes(van.id in vans)
    return Truth.MAYBE if any(v in standing.may_choose for v in vans) else Truth.NO


def _need(any_of: tuple[Tag, ...], standing: Standing) -> Truth:
    if any(tag in standing.given for tag in any_of):
        return Truth.YES
    return Truth.MAYBE if any(tag in standing.may_give for tag in any_of) else Truth.NO


def _placed_legally(place: Place | None, places: tuple[Place, ...]) -> Truth:
    if place is None:
        return Truth.MAYBE if len(places) > 1 else Truth.YES
    return _yes(place in places)


def _zone(zone: Zone, situation: Situation) -> Truth:
    claims, _ = zone_claims(situation, zone)
    if claims > 1:
        return Truth.NO
    taken = situation.van_data.zones_taken.count(zone) if situation.van_data else 0
    may = sum(
        max((_most_claims(o.zones, o.places, zone) for o in options), default=0)
        for options in situation.undecided.values()
    )
    if not may:
        return Truth.YES
    return Truth.MAYBE if (claims or taken) + may > 1 else Truth.YES


def _most_claims(zones: tuple[Zone, ...], places: tuple[Place, ...], zone: Zone) -> int:
    at: tuple[str | None, ...] = tuple(p.value for p in places) or (None,)
    return max(zones_at(zones, place).count(zone) for place in at)


def _gather(expression: AnyOf, standing: Standing, side: Place | None, evidence: Evidence, *, wanted: bool) -> None:
    """Collect what the terms that are not settled as NO rest on (all terms on the side that is wanted)."""
    for term in expression.terms:
        if not wanted and _all(term, standing, side) is Truth.NO and not _all_about_spec(term):
            continue
        for atom in term.atoms:
            _gather_atom(atom, standing, side, evidence, wanted=wanted)


def _all_about_spec(term: AllOf) -> bool:
    return all(
        isinstance(a, FitsVan | NeedsMet | PlacesLegal | ZonesFree | WithinBound | GroupAnswered) for a in term.atoms
    )


def _gather_atom(atom: Atom, standing: Standing, side: Place | None, evidence: Evidence, *, wanted: bool) -> None:
    situation = standing.situation
    match atom:
        case Not(inner):
            _gather_atom(inner, standing, side, evidence, wanted=False)
        case Given():
            name = tag_name(atom, side)
            evidence.subjects += standing.given.get(name, ())
            if name not in standing.given:
                evidence.lacks += (Lack(group=g) for g in standing.may_give.get(name, ()))
                if wanted:
                    evidence.wanted.append(Tag(name))
        case Chosen(option):
            if option in standing.chosen:
                evidence.subjects.append(option)
            elif option in standing.may_choose:
                evidence.lacks.append(Lack(group=standing.may_choose[option]))
        case BriefIs(key=key):
            evidence.keys.append(key)
            if not situation.facts.known(key):
                evidence.lacks.append(Lack(key=key))
        case WithinBound(ledger=ledger) | MarginBelow(ledger=ledger) | FigureAbove(ledger=ledger):
            reading = standing.readings[ledger]
            evidence.reading = ledger
            evidence.subjects += (e.option for e in reading.entries if e.option is not None)
            evidence.lacks += reading.lacks
        case GroupAnswered(group):
            evidence.subjects += (p.option.id for p in situation.placed if p.option.group == group)
            evidence.lacks.append(Lack(group=group))
        case FitsVan():
            for placed in situation.placed:
                if _fit(placed.option.fits_vans, standing) is not Truth.YES:
                    evidence.subjects.append(placed.option.id)
            if situation.van is None:
                evidence.lacks.append(Lack(group=BASE_VAN_GROUP))
        case NeedsMet():
            _gather_needs(standing, evidence)
        case PlacesLegal():
            for placed in situation.placed:
                if _placed_legally(placed.place, placed.option.places) is not Truth.YES:
                    evidence.subjects.append(placed.option.id)
                    evidence.lacks.append(Lack(group=placed.option.group))
        case ZonesFree(zones):
            for zone in zones:
                if _zone(zone, situation) is not Truth.YES:
                    evidence.subjects += zone_claims(situation, zone)[1]
                    evidence.lacks += _may_claim(situation, zone)
        case Always():
            pass
        case _:
            assert_never(atom)


def _gather_needs(standing: Standing, evidence: Evidence) -> None:
    for placed in standing.situation.placed:
        for need in placed.option.needs:
            if _need(need.any_of, standing) is not Truth.YES:
                evidence.subjects.append(placed.option.id)
                evidence.wanted += need.any_of
                evidence.lacks += (Lack(group=g) for t in need.any_of for g in standing.may_give.get(t, ()))


def _may_claim(situation: Situation, zone: Zone) -> Iterable[Lack]:
    for group, options in situation.undecided.items():
        if any(_most_claims(o.zones, o.places, zone) for o in options):
            yield Lack(group=GroupId(group))
