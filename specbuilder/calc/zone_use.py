"""The ledger of claims on named places."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import BASE_VAN_GROUP, GroupId, LedgerId, OptionId, Zone
from specbuilder.model.kinds import Place, Verdict
from specbuilder.model.ledger import Entry, Lack, Reading
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span, hull, point

from .lines import largest_first
from .prepared import Prepared, prepared
from .verdicts import verdict_of
from .zones import NO_CLAIMS, Claims, Field, claims_at, field_of, ways_of

_MOST = "most_claims"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ZoneUse:
    """The fullest of the places that at least one choice claims."""

    id: LedgerId
    settings: tuple[str, ...]

    def touches(self, option: Option) -> bool:
        """True when the option claims or frees a place, or is a base van, which takes some itself."""
        return bool(option.zones or option.frees_zones or option.van)

    def moves(self, situation: Situation, option: Option) -> bool:
        """True when taking it may change a claim, by itself or by what it takes the place of."""
        prep = prepared(situation)
        group = prep.members[option.group] if prep.pick_one(option.group) else (option,)
        return any(self.touches(o) for o in group)

    def read(self, situation: Situation) -> Reading:
        """The fullest place against one claim each."""
        prep = prepared(situation)
        spec = prep.catalogue.ledgers[self.id]
        bound = point(spec.settings[_MOST])
        settled = [claims_of(p) for p in situation.placed if p.option.id in _touching(prep.catalogue)]
        open_groups = tuple(_open_groups(prep))
        fields = [field_of(van.van, settled, (ways for _, ways in open_groups)) for van in prep.vans]
        if not fields:
            return self._unsaid(prep, bound)
        spans = [_span(field) for field in fields]
        value = hull(spans)
        assert value is not None
        return Reading(
            id=self.id,
            value=value,
            bound=bound,
            verdict=verdict_of(spec.sense, value, bound),
            lacks=() if value.settled else _lacks(open_groups, fields, spans),
            entries=_entries(situation, fields[0]),
            sense=spec.sense,
        )

    def _unsaid(self, prep: Prepared, bound: Span) -> Reading:
        return Reading(
            id=self.id,
            value=None,
            bound=bound,
            verdict=Verdict.CANNOT_TELL,
            lacks=(Lack(group=BASE_VAN_GROUP),),
            sense=prep.catalogue.ledgers[self.id].sense,
        )

    def reach(self, situation: Situation, option: Option, place: Place | None) -> tuple[Span, Span] | None:
        """Claims on the fullest place if the option stood there, over every way to finish the build."""
        prep = prepared(situation)
        one = option.van is None and prep.pick_one(option.group)
        left = [p for p in situation.placed if not (one and p.option.group == option.group)]
        settled = [claims_of(p) for p in left]
        ways = [w for group, w in _open_groups(prep) if not (one and group == option.group)]
        ways += [
            (NO_CLAIMS, *(_times(way, extra.max_count) for way in ways_of(extra)))
            for extra in situation.free
            if extra.id != option.id and self.touches(extra)
        ]
        if option.van is None and not any(p.option.id == option.id and place in (None, p.place) for p in left):
            ways.append((claims_at(option, place, 1),) if place else ways_of(option))
        vans = (option,) if option.van is not None else prep.vans
        value = hull(_span(field_of(van.van, settled, ways)) for van in vans)
        return None if value is None else (value, point(prep.catalogue.ledgers[self.id].settings[_MOST]))

    def amount(self, _situation: Situation, option: Option, _place: Place | None) -> float | None:
        """None: what a claim adds depends on which place it is for."""
        return None


def claims_of(placed: Placed) -> Claims:
    """What a choice claims."""
    return claims_at(placed.option, placed.place, placed.count)


def _times(way: Claims, count: int) -> Claims:
    return Claims(tuple((zone, times * count) for zone, times in way.claims), way.frees)


@lru_cache(maxsize=4)
def _touching(catalogue: Catalogue) -> frozenset[OptionId]:
    return frozenset(o.id for o in catalogue.options.values() if o.zones or o.frees_zones)


def _open_groups(prep: Prepared) -> Iterable[tuple[GroupId, tuple[Claims, ...]]]:
    """Undecided groups of which some answer claims or frees a place, with every way they may go."""
    for group, options in prep.groups:
        ways = tuple(dict.fromkeys(way for option in options for way in ways_of(option)))
        if ways and ways != (NO_CLAIMS,):
            yield group, ways


def _span(field: Field) -> Span:
    return Span(field.least, field.most) if field.open else point(field.most)


def _lacks(
    open_groups: tuple[tuple[GroupId, tuple[Claims, ...]], ...], fields: list[Field], spans: list[Span]
) -> tuple[Lack, ...]:
    """Groups that may still fill a place above the least, and the base van while vans differ."""
    least = min(span.least for span in spans)
    may_fill = {zone for field in fields for zone, most in field.most_by_zone.items() if most > least}
    found = [Lack(group=BASE_VAN_GROUP)] if any(span != spans[0] for span in spans) else []
    for group, ways in open_groups:
        nets = [way.net for way in ways]
        if any(len({net[zone] for net in nets}) > 1 for zone in may_fill):
            found.append(Lack(group=group))
    return tuple(found)


def _entries(situation: Situation, field: Field) -> tuple[Entry, ...]:
    """Who claims the fullest place of the settled choices."""
    if not field.claimed:
        return ()
    fullest = max(sorted(field.claimed), key=lambda zone: field.taken[zone])
    found = [_line(placed, fullest) for placed in situation.placed]
    van = situation.van_data.zones_taken.count(fullest) if situation.van_data else 0
    taken = [Entry("van", point(van), option=situation.van.id)] if van and situation.van else []
    return largest_first([*taken, *(line for line in found if line is not None)])


def _line(placed: Placed, zone: Zone) -> Entry | None:
    net = claims_of(placed).net[zone]
    return Entry("", point(net), option=placed.option.id, count=placed.count) if net else None


ZONE_USE = ZoneUse(id=LedgerId("zone-use"), settings=(_MOST,))
"""Every named place is for one thing."""
