"""What a judgement rests on: the choices, answers and ledgers that take part, and what is lacking."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import assert_never

from specbuilder.model.ids import BASE_VAN_GROUP, BriefKey, GroupId, LedgerId, OptionId, Tag, Zone
from specbuilder.model.kinds import Compare, Place, Truth
from specbuilder.model.ledger import Lack, Reading
from specbuilder.model.rules import (
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
from specbuilder.model.situation import Situation

from .standing import Standing
from .truth import all_of, fits, most_claims, need_met, placed_legally, tag_name, zone_free

MOST_NAMED = 5
"""Of a ledger's choices; the rest stand in the ledger itself."""


@dataclass(slots=True)
class Evidence:
    """What a judgement rests on, gathered on the way."""

    subjects: list[OptionId] = field(default_factory=list)
    keys: list[BriefKey] = field(default_factory=list)
    values: list[tuple[BriefKey, str]] = field(default_factory=list)
    lacks: list[Lack] = field(default_factory=list)
    wanted: list[Tag] = field(default_factory=list)
    reading: LedgerId | None = None


def gather(expression: AnyOf, standing: Standing, side: Place | None, evidence: Evidence, *, wanted: bool) -> None:
    """Collect what the terms that are not settled as NO rest on (all terms on the side that is wanted)."""
    for term in expression.terms:
        if not wanted and all_of(term, standing, side) is Truth.NO and not _all_about_spec(term):
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
            if name in standing.given:
                evidence.subjects += standing.given[name] if not wanted else ()
            else:
                evidence.lacks += (Lack(group=g) for g in standing.may_give.get(name, ()))
                if wanted:
                    evidence.wanted.append(Tag(name))
        case Chosen(option):
            if option in standing.chosen:
                evidence.subjects.append(option)
            elif option in standing.may_choose:
                evidence.lacks.append(Lack(group=standing.may_choose[option]))
        case BriefIs(key=key, compare=compare, value=value):
            evidence.keys.append(key)
            if compare is Compare.EQUAL and not wanted:
                evidence.values.append((key, str(value)))
            if not situation.facts.known(key):
                evidence.lacks.append(Lack(key=key))
        case WithinBound(ledger=ledger) | MarginBelow(ledger=ledger) | FigureAbove(ledger=ledger):
            reading = standing.readings[ledger]
            evidence.reading = ledger
            evidence.subjects += _heaviest(reading)
            evidence.lacks += reading.lacks
        case GroupAnswered(group):
            evidence.subjects += (p.option.id for p in situation.placed if p.option.group == group)
            evidence.lacks.append(Lack(group=group))
        case FitsVan():
            for placed in situation.placed:
                if fits(placed.option.fits_vans, standing) is not Truth.YES:
                    evidence.subjects.append(placed.option.id)
            if situation.van is None:
                evidence.lacks.append(Lack(group=BASE_VAN_GROUP))
        case NeedsMet():
            _gather_needs(standing, evidence)
        case PlacesLegal():
            for placed in situation.placed:
                if placed_legally(placed.place, placed.option.places) is not Truth.YES:
                    evidence.subjects.append(placed.option.id)
                    evidence.lacks.append(Lack(group=placed.option.group))
        case ZonesFree(zones):
            for zone in zones:
                if zone_free(zone, standing) is not Truth.YES:
                    evidence.subjects += standing.claims.get(zone, (0, ()))[1]
                    evidence.lacks += _may_claim(situation, zone)
        case Always():
            pass
        case _:
            assert_never(atom)


def _heaviest(reading: Reading) -> tuple[OptionId, ...]:
    """The choices that weigh most in a ledger, and those that set its bound: the ones worth looking at again."""
    entries = [entry.option for entry in reading.entries if entry.option is not None]
    return (*entries[:MOST_NAMED], *reading.bound_by)


def _gather_needs(standing: Standing, evidence: Evidence) -> None:
    for placed in standing.situation.placed:
        for need in placed.option.needs:
            if need_met(need.any_of, standing) is not Truth.YES:
                evidence.subjects.append(placed.option.id)
                evidence.wanted += need.any_of
                evidence.lacks += (Lack(group=g) for t in need.any_of for g in standing.may_give.get(t, ()))


def _may_claim(situation: Situation, zone: Zone) -> Iterable[Lack]:
    for group, options in situation.undecided.items():
        if any(most_claims(o.zones, o.places, zone) for o in options):
            yield Lack(group=GroupId(group))
