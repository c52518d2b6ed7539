"""The ledger of claims on named places."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from specbuilder.calc.measuring.lines import largest_first
from specbuilder.calc.measuring.prepared import Prepared, prepared
from specbuilder.calc.measuring.verdicts import verdict_of
from specbuilder.calc.measuring.zones import Claims, Field, Ways, claims_at, field_of, ways_of
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import BASE_VAN_GROUP, GroupId, LedgerId, OptionId
from specbuilder.model.kinds import Place, Verdict
from specbuilder.model.ledger import Entry, Lack, Reading
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span, hull, point

_MOST = "most_claims"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ZoneUse:
    """The fullest of the places that at least one choice claims."""

    id: LedgerId
    settings: tuple[str, ...]

    def touches(self, option: Option) -> bool:
        """True when the option claims or frees a place, or is a base van, which takes some itself."""
        return bool(option.zones or option.frees_zones or option.van)

    def read(self, situation: Situation) -> Reading:
        """The fullest place against one claim each."""
        prep = prepared(situation)
        spec = prep.catalogue.ledgers[self.id]
        bound = point(spec.settings[_MOST])
        settled = [claims_of(prep.catalogue, p) for p in _claiming(prep)]
        open_groups = _open_groups(prep)
        fields = [field_of(van.van, settled, open_groups.values()) for van in prep.vans]
        spans = [_span(field) for field in fields]
        value = hull(spans)
        if value is None:
            return self._unsaid(prep, bound)
        return Reading(
            id=self.id,
            value=value,
            bound=bound,
            verdict=verdict_of(spec.sense, value, bound),
            lacks=() if value.settled else _lacks(open_groups, fields, spans),
            entries=_entries(prep, fields[0]),
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

    def amount(self, _situation: Situation, option: Option, _place: Place | None) -> float | None:
        """None: what a claim adds depends on which place it is for."""
        return None


def claims_of(catalogue: Catalogue, placed: Placed) -> Claims:
    """What a choice claims. A memo of the catalogue."""
    known = _known(catalogue)
    key = placed.option.id, placed.place, placed.count
    found = known.get(key)
    if found is None:
        found = known[key] = claims_at(placed.option, placed.place, placed.count)
    return found


@lru_cache(maxsize=4)
def _known(_catalogue: Catalogue) -> dict[tuple[OptionId, Place | None, int], Claims]:
    return {}


@lru_cache(maxsize=4)
def _touching(catalogue: Catalogue) -> frozenset[OptionId]:
    return frozenset(o.id for o in catalogue.options.values() if o.zones or o.frees_zones)


def _claiming(prep: Prepared) -> list[Placed]:
    """The settled choices that claim or free a place."""
    touching = _touching(prep.catalogue)
    return [p for p in prep.situation.placed if p.option.id in touching]


def _open_groups(prep: Prepared) -> Mapping[str, Ways]:
    """Undecided groups of which some answer claims or frees a place. A memo of the situation."""
    if (found := prep.ways.get(_GROUPS)) is not None:
        return found
    touching = _touching(prep.catalogue)
    found = prep.ways[_GROUPS] = {
        group: Ways(way for option in options for way in ways_of(option))
        for group, options in prep.groups
        if any(option.id in touching for option in options)
    }
    return found


_GROUPS = "groups"


def _span(field: Field) -> Span:
    return Span(field.least, field.most) if field.open else point(field.most)


def _lacks(open_groups: Mapping[str, Ways], fields: list[Field], spans: list[Span]) -> tuple[Lack, ...]:
    """Groups that may still fill a place above the least, and the base van while vans differ."""
    least = min(span.least for span in spans)
    may_fill = {zone for field in fields for zone, most in field.most_by_zone.items() if most > least}
    found = [Lack(group=BASE_VAN_GROUP)] if any(span != spans[0] for span in spans) else []
    return (
        *found,
        *(Lack(group=GroupId(g)) for g, w in open_groups.items() if any(w.differs_in(z) for z in may_fill & w.zones)),
    )


def _entries(prep: Prepared, field: Field) -> tuple[Entry, ...]:
    """Who claims the fullest place of the settled choices."""
    if not field.claimed:
        return ()
    van = prep.situation.van
    fullest = max(sorted(field.claimed), key=lambda zone: field.taken[zone])
    taken = van.van.zones_taken.count(fullest) if van and van.van else 0
    lines = [Entry("van", point(taken), option=van.id)] if van and taken else []
    for placed in _claiming(prep):
        net = claims_of(prep.catalogue, placed).net.get(fullest, 0)
        if net:
            lines.append(Entry("", point(net), option=placed.option.id, count=placed.count))
    return largest_first(lines)


ZONE_USE = ZoneUse(id=LedgerId("zone-use"), settings=(_MOST,))
"""Every named place is for one thing."""
