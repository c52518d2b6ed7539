"""What the weights mean on the road: the driver's licence by the plate, speed limits by the empty van."""

from __future__ import annotations

from collections.abc import Mapping

from specbuilder.calc.formulas.masses import speed_limits_mph
from specbuilder.calc.formulas.validity import above
from specbuilder.calc.measuring.told import NOTHING, Found, ToldFigure, found_of, merged, of_each_van
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.ledger import Lack
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span, point
from specbuilder.model.vans import Van

from .mass import TOTAL_MASS
from .mass_left import UNLADEN_MASS

_COUNTRY, _BRITAIN, _ELECTRIC = BriefKey("country"), "GB", "electric"
_LIGHTEST_KG = 1.0


def _assumed(situation: Situation) -> tuple[BriefKey, ...]:
    return (_COUNTRY,) if _COUNTRY in situation.facts.assumed else ()


def _speed(road: int, *, id: LedgerId) -> ToldFigure:
    """A limit of the finished motor caravan against that of a car: 1 dual carriageways, 2 other roads."""

    def find(situation: Situation, _settings: Mapping[str, float]) -> Found:
        facts = situation.facts
        if facts.known(_COUNTRY) and facts.get(_COUNTRY) != _BRITAIN:
            return NOTHING
        empty = found_of(UNLADEN_MASS.read(situation))
        lacks = merged(empty.lacks, () if facts.known(_COUNTRY) else (Lack(key=_COUNTRY),))
        if empty.value is None:
            return Found(lacks=lacks)
        ends = speed_limits_mph(empty.value.most)[road], speed_limits_mph(empty.value.least)[road]
        car = speed_limits_mph(_LIGHTEST_KG)[road]
        return Found(value=Span(*ends), bound=point(car), lacks=lacks, assumed=_assumed(situation))

    return ToldFigure(id=id, find=find, rests_on=(UNLADEN_MASS,))


def _licence(situation: Situation, settings: Mapping[str, float]) -> Found:
    return of_each_van(situation, lambda one, van: _licence_of(one, van, settings))


def _licence_of(situation: Situation, van: Van, settings: Mapping[str, float]) -> Found:
    above("plate kg", van.m_max_kg)
    loaded = TOTAL_MASS.read(situation)
    facts, car = situation.facts, point(settings["car_kg"])
    if loaded.bound is None:
        return Found(lacks=loaded.lacks)
    if van.fuel != _ELECTRIC:
        return Found(value=loaded.bound, bound=car)
    electric = point(settings["electric_kg"])
    if not facts.known(_COUNTRY):
        return Found(value=loaded.bound, bound=car.hull(electric), lacks=(Lack(key=_COUNTRY),))
    bound = electric if facts.get(_COUNTRY) == _BRITAIN else car
    return Found(value=loaded.bound, bound=bound, assumed=_assumed(situation))


SPEED_ON_DUAL_ROADS = _speed(1, id=LedgerId("speed-on-dual-roads"))
"""Speed limit on dual carriageways."""
SPEED_ON_OTHER_ROADS = _speed(2, id=LedgerId("speed-on-other-roads"))
"""Speed limit on other roads."""
CAR_LICENCE = ToldFigure(
    id=LedgerId("car-licence"), find=_licence, rests_on=(TOTAL_MASS,), settings=("car_kg", "electric_kg")
)
"""The plate against what a car licence allows."""
