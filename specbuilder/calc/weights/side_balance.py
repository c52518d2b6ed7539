"""How unevenly parts and water lie to the left and to the right of the centre line.

People, luggage, other load and fuel are taken on the centre line. No search holds this limit, so its span is honest
rather than tight: what is undecided counts on whichever side is worse.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from specbuilder.calc.formulas.axles import side_difference_kg, side_difference_pct
from specbuilder.calc.formulas.loads import travel_water_kg
from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.calc.measuring.lines import largest_first
from specbuilder.calc.measuring.outcome import all_settings
from specbuilder.calc.measuring.prepared import prepared
from specbuilder.calc.measuring.unsaid import unsaid
from specbuilder.calc.measuring.verdicts import verdict_of
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BASE_VAN_GROUP, GroupId, LedgerId, OptionId
from specbuilder.model.kinds import Place, Verdict
from specbuilder.model.ledger import Entry, Lack, Reading
from specbuilder.model.sides import leader_of, moves_with_its_place, y_on_side_mm
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span, hull, point

from .mass import TOTAL_MASS, part_mass_kg

_ID, _MOST = LedgerId("side-balance"), "most_pct"


@dataclass(frozen=True, slots=True, kw_only=True)
class SideBalance:
    """The figure; see :mod:`specbuilder.calc.weights.side_balance`."""

    id: LedgerId = _ID
    settings: tuple[str, ...] = (_MOST,)

    def touches(self, option: Option) -> bool:
        """True when its mass, its side or the mass of the whole van changes with it."""
        return bool(part_mass_kg(option) or option.places or option.water.fresh_travel_l or option.van or _caps(option))

    def amount(self, situation: Situation, option: Option, place: Place | None) -> float | None:
        """None: what one more does depends on the side of all the others."""
        return None

    def read(self, situation: Situation) -> Reading:
        """Difference between the sides as a part of the loaded van, in percent."""
        sense = situation.catalogue.ledgers[self.id].sense
        bound = point(all_settings(situation.catalogue)[self.id].get(_MOST, 0))
        total = TOTAL_MASS.read(situation)
        vans = [van.van for van in prepared(situation).vans if van.van is not None]
        if total.value is None or not vans:
            lacks = total.lacks or (Lack(group=BASE_VAN_GROUP),)
            return Reading(id=self.id, value=None, bound=bound, verdict=Verdict.CANNOT_TELL, lacks=lacks, sense=sense)
        moments = tuple(_moments(situation))
        turning = sum(m.kg_mm.least for m in moments), sum(m.kg_mm.most for m in moments)
        tracks, totals = [van.track_mm for van in vans], (total.value.least, total.value.most)
        try:
            ends = [_pct(m, t, kg) for m in turning for t in tracks for kg in totals]
            scale = _pct(1, tracks[0], totals[0])
        except OutsideValidity as fault:
            return unsaid(self.id, sense, fault, bound=bound)
        across = turning[0] < 0 < turning[1]
        value = Span(0.0 if across else round(min(ends), 6), round(max(ends), 6))
        return Reading(
            id=self.id,
            value=value,
            bound=bound,
            verdict=verdict_of(sense, value, bound),
            lacks=tuple(dict.fromkeys((*(m.lack for m in moments if m.lack), *total.lacks))),
            entries=largest_first(_entry(m, scale) for m in moments if m.kg_mm.least or m.kg_mm.most),
            assumed=total.assumed,
            sense=sense,
        )


@dataclass(frozen=True, slots=True)
class _Moment:
    """What a choice or an undecided group turns the van by: kilograms times mm, + to the left."""

    kg_mm: Span
    option: OptionId | None = None
    group: GroupId | None = None
    count: int = 1

    @property
    def lack(self) -> Lack | None:
        return Lack(group=self.group) if self.group is not None else None


def _pct(kg_mm: float, track_mm: float, total_kg: float) -> float:
    """A moment about the centre line as a part of the whole van; it turns like its kilograms at one millimetre."""
    return side_difference_pct(side_difference_kg([(kg_mm, 1)], track_mm), total_kg)


def _entry(moment: _Moment, scale: float) -> Entry:
    return Entry("", moment.kg_mm * scale, option=moment.option, group=moment.group, count=moment.count)


def _caps(option: Option) -> bool:
    return option.water.fresh_travel_cap_l is not None


def _moments(situation: Situation) -> Iterator[_Moment]:
    prep = prepared(situation)
    places = _Places(situation)
    share = _water_share(situation)
    for option_id, count, own, placed in prep.settled:
        option = own or placed.option
        turning = _times(places.of(option, placed.place), _kg(option, share) * count)
        yield _Moment(turning, option=option_id, count=count)
    for placed, variants in prep.unweighed:
        kg = hull(_kg(option, share) * placed.count for option in variants)
        if kg is not None:
            at = places.of(placed.option, placed.place)
            yield _Moment(_times(at, kg), option=placed.option.id, count=placed.count)
    for group, options in prep.groups:
        ways = [_times(places.of(o, None), _kg(o, share)) for o in options]
        if (found := hull(ways)) is not None and (found.least or found.most):
            yield _Moment(found, group=group)


def _times(one: Span, other: Span) -> Span:
    ends = [a * b for a in (one.least, one.most) for b in (other.least, other.most)]
    return Span(min(ends), max(ends))


def _kg(option: Option, water_share: Span) -> Span:
    part, travel = part_mass_kg(option), option.water.fresh_travel_l
    return Span(part + travel * water_share.least, part + travel * water_share.most)


def _water_share(situation: Situation) -> Span:
    """What part of the travel litres is on board beside a travel fill; what is undecided may add litres and a stop."""
    placed = [(p.option, p.count) for p in situation.placed]
    litres = sum(option.water.fresh_travel_l * count for option, count in placed)
    caps = _stops(option for option, _ in placed)
    most = [max((o.water.fresh_travel_l for o in options), default=0) for options in situation.undecided.values()]
    may_come = [o for options in situation.undecided.values() for o in options]
    fewest = litres or min((o.water.fresh_travel_l for o in may_come if o.water.fresh_travel_l), default=0)
    return Span(_share(litres + sum(most), [*caps, *_stops(may_come)]), _share(fewest, caps))


def _stops(options: Iterable[Option]) -> list[float]:
    return [o.water.fresh_travel_cap_l for o in options if o.water.fresh_travel_cap_l is not None]


def _share(litres: float, caps: list[float]) -> float:
    return travel_water_kg(litres, min(caps, default=litres)) / litres if litres else 1.0


@dataclass(frozen=True, slots=True)
class _Places:
    """On which side things of a situation sit; a span while that is undecided."""

    situation: Situation

    def of(self, option: Option, place: Place | None) -> Span:
        """y of an option, mm."""
        catalogue = self.situation.catalogue
        at = option.sits_at or catalogue.groups[option.group].sits_at
        if at is not None and at != option.group:
            return self._at(at)
        if option.position is None:
            return Span(0, 0)
        places = (place,) if place is not None or not moves_with_its_place(option) else option.places
        leaders = self._sides(leader_of(catalogue, option))
        ys = [y_on_side_mm(option.position.y_mm, option, p, leader) for p in places for leader in leaders]
        return Span(min(ys), max(ys))

    def _at(self, group: GroupId) -> Span:
        """y of what stands in a group, or of all that may."""
        chosen = self._chosen(group)
        if chosen is not None:
            return self.of(chosen.option, chosen.place)
        live = self.situation.undecided.get(group, ())
        return hull(self.of(option, None) for option in live) or Span(0, 0)

    def _sides(self, group: GroupId | None) -> tuple[Place | None, ...]:
        if group is None:
            return (None,)
        chosen = self._chosen(group)
        if chosen is not None:
            return (chosen.place,)
        live: Iterable[Option] = self.situation.undecided.get(group, ())
        return tuple(dict.fromkeys((None, *(p for option in live for p in option.places))))

    def _chosen(self, group: GroupId) -> Placed | None:
        return next((p for p in self.situation.placed if p.option.group == group), None)


SIDE_BALANCE = SideBalance()
"""Difference between the left and the right side."""
