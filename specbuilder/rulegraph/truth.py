"""Atoms and expressions in Kleene's three values.

An atom about an undecided group or an unknown answer is MAYBE; *and* takes the least of its parts, *or* the greatest,
*not* turns YES and NO round.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import assert_never

from specbuilder.model.facts import Facts
from specbuilder.model.ids import OptionId, Tag, Zone
from specbuilder.model.kinds import Compare, Place, Truth, Verdict
from specbuilder.model.ledger import Reading
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
    WithinBound,
    ZonesFree,
)
from specbuilder.model.span import Span

from .standing import Standing, zones_at

SLACK = 1e-9
"""Two floats nearer than this part of the bound are equal."""


_DENIED = (Truth.YES, Truth.MAYBE, Truth.NO)


def denied(truth: Truth) -> Truth:
    """Kleene's not."""
    return _DENIED[truth]


def any_of(expression: AnyOf, standing: Standing, side: Place | None) -> Truth:
    """Kleene's or over the either-or list."""
    best = Truth.NO
    for term in expression.terms:
        truth = all_of(term, standing, side)
        if truth is Truth.YES:
            return truth
        if truth is Truth.MAYBE:
            best = truth
    return best


def all_of(term: AllOf, standing: Standing, side: Place | None) -> Truth:
    """Kleene's and over the and-list."""
    worst = Truth.YES
    for atom in term.atoms:
        truth = truth_of(atom, standing, side)
        if truth is Truth.NO:
            return truth
        if truth is Truth.MAYBE:
            worst = truth
    return worst


def truth_of(atom: Atom, standing: Standing, side: Place | None) -> Truth:
    """One atom, with ``@same`` read as this side."""
    match atom:
        case Given():
            name = tag_name(atom, side)
            if name in standing.given:
                return Truth.YES
            return Truth.MAYBE if name in standing.may_give else Truth.NO
        case Not(inner):
            return denied(truth_of(inner, standing, side))
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
            return Truth.MAYBE if value is None else denied(_below(value, amount + SLACK))
        case GroupAnswered(group):
            return {0: Truth.MAYBE, 1: Truth.YES}.get(standing.answered.get(group, 0), Truth.NO)
        case FitsVan():
            return least_of(fits(p.option.fits_vans, standing) for p in standing.situation.placed)
        case NeedsMet():
            return least_of(need_met(n.any_of, standing) for p in standing.situation.placed for n in p.option.needs)
        case PlacesLegal():
            return least_of(placed_legally(p.place, p.option.places) for p in standing.situation.placed)
        case ZonesFree(zones):
            return least_of(zone_free(zone, standing) for zone in zones)
        case _:
            assert_never(atom)


def tag_name(atom: Given, side: Place | None) -> str:
    """The capability an atom asks for, with ``@same`` filled in."""
    if atom.place is None:
        return atom.tag
    return f"{atom.tag}@{side.value if atom.place == SAME and side else atom.place}"


def least_of(truths: Iterable[Truth]) -> Truth:
    """Kleene's and over values."""
    return min(truths, default=Truth.YES)


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
    unsaid = reading.bound is None and (bool(reading.lacks) or reading.verdict is Verdict.CANNOT_TELL)
    if reading.value is None or unsaid:
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


def fits(vans: tuple[OptionId, ...], standing: Standing) -> Truth:
    """Whether parts that list these vans fit the one chosen (empty: all)."""
    van = standing.situation.van
    if not vans:
        return Truth.YES
    if van is not None:
        return _yes(van.id in vans)
    return Truth.MAYBE if any(v in standing.may_choose for v in vans) else Truth.NO


def need_met(any_of: tuple[Tag, ...], standing: Standing) -> Truth:
    """Whether one of these capabilities is given."""
    if any(tag in standing.given for tag in any_of):
        return Truth.YES
    return Truth.MAYBE if any(tag in standing.may_give for tag in any_of) else Truth.NO


def placed_legally(place: Place | None, places: tuple[Place, ...]) -> Truth:
    """Whether a choice sits where its table allows."""
    if place is None:
        return Truth.MAYBE if len(places) > 1 else Truth.YES
    return _yes(place in places)


def zone_free(zone: Zone, standing: Standing) -> Truth:
    """Whether no more than one thing claims the zone."""
    situation = standing.situation
    claims, _ = standing.claims.get(zone, (0, ()))
    if claims > 1:
        return Truth.NO
    taken = situation.van_data.zones_taken.count(zone) if situation.van_data else 0
    may = sum(
        max((most_claims(o.zones, o.places, zone) for o in options), default=0)
        for options in situation.undecided.values()
    )
    if not may:
        return Truth.YES
    return Truth.MAYBE if (claims or taken) + may > 1 else Truth.YES


def most_claims(zones: tuple[Zone, ...], places: tuple[Place, ...], zone: Zone) -> int:
    """The most an option can claim of a zone, at its worst place."""
    return _at_worst(zones, places).get(zone, 0) if zones else 0


@lru_cache(maxsize=1_000)
def _at_worst(zones: tuple[Zone, ...], places: tuple[Place, ...]) -> Mapping[Zone, int]:
    """The most that can be claimed of each zone: the same for every spec, and asked for at every edit."""
    most: dict[Zone, int] = {}
    for place in tuple(p.value for p in places) or (None,):
        for zone, claims in Counter(zones_at(zones, place)).items():
            most[zone] = max(most.get(zone, 0), claims)
    return most
