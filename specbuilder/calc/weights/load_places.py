"""How many kilograms may still be loaded where, beside all that the ledgers of weight count already.

Total, both axles and the least share in front bind at once. While choices are open the ranges are honest rather than
tight: each limit counts at its own worst and best.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import NamedTuple

from specbuilder.calc.formulas.axles import (
    furthest_back_x_mm,
    furthest_forward_x_mm,
    load_before_front_share_kg,
    load_still_free_kg,
)
from specbuilder.calc.formulas.validity import OutsideValidity, above
from specbuilder.calc.measuring.positions import behind_front_axle_mm
from specbuilder.calc.measuring.told import NOTHING, Found, ToldFigure, found_of, merged, of_each_van
from specbuilder.model.ids import BriefKey, LedgerId, Tag
from specbuilder.model.ledger import Lack
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span, point
from specbuilder.model.vans import Van

from .axles import FRONT_AXLE, FRONT_SHARE, ON_RACK, REAR_AXLE
from .load_cases import rack_x_mm, stores_x_mm
from .mass import TOTAL_MASS

_LEDGERS = (TOTAL_MASS, FRONT_AXLE, REAR_AXLE, FRONT_SHARE)
_RACK = Tag("bike-rack")
_EXTRA_LOAD, _EXTRA_WHERE = BriefKey("extra_load_kg"), BriefKey("extra_load_where")
_Place = Callable[[Van, Mapping[str, float]], float]
"""Where a load lies, mm behind the front axle."""


class _Rooms(NamedTuple):
    """What is left to each limit, kg."""

    total: Span
    front: Span
    rear: Span
    share: Span

    def least(self) -> tuple[float, float, float, float]:
        return self.total.least, self.front.least, self.rear.least, self.share.least

    def most(self) -> tuple[float, float, float, float]:
        return self.total.most, self.front.most, self.rear.most, self.share.most


class _Left(NamedTuple):
    rooms: _Rooms | None
    lacks: tuple[Lack, ...]
    assumed: tuple[BriefKey, ...]


def _left(situation: Situation, van: Van) -> _Left:
    """The rooms of a loaded van.

    Raises:
        OutsideValidity: a limit is missing, or the data are absurd.
    """
    above("plate kg", van.m_max_kg)
    above("front axle limit kg", van.f_max_kg)
    above("rear axle limit kg", van.r_max_kg)
    readings = [ledger.read(situation) for ledger in _LEDGERS]
    found = [found_of(reading) for reading in readings]
    lacks = merged(*(one.lacks for one in found))
    assumed = tuple(dict.fromkeys(key for one in found for key in one.assumed))
    rooms = [reading.room for reading in readings]
    known = [room for room in rooms if room is not None]
    return _Left(_Rooms(*known) if len(known) == len(rooms) else None, lacks, assumed)


def _free_kg(x_mm: float, van: Van, rooms: tuple[float, float, float, float]) -> float:
    total, front, rear, share = rooms
    return min(
        load_still_free_kg(x_mm, van.wheelbase_mm, total, front, rear),
        load_before_front_share_kg(x_mm, van.wheelbase_mm, share, van.front_min_share),
    )


def _no_rack(situation: Situation) -> bool:
    """No rack is chosen, and nobody says that a load rides on one."""
    if any(_RACK in placed.option.gives for placed in situation.placed):
        return False
    facts = situation.facts
    return not (facts.get(_EXTRA_WHERE) == ON_RACK and facts.number(_EXTRA_LOAD).most)


def _free_at(
    place: _Place, *settings: str, id: LedgerId, unless: Callable[[Situation], bool] = lambda _: False
) -> ToldFigure:
    def find(situation: Situation, setting: Mapping[str, float]) -> Found:
        if unless(situation):
            return NOTHING

        def under(one: Situation, van: Van) -> Found:
            left = _left(one, van)
            if left.rooms is None:
                return Found(lacks=left.lacks)
            x_mm = place(van, setting)
            least, most = _free_kg(x_mm, van, left.rooms.least()), _free_kg(x_mm, van, left.rooms.most())
            return Found(value=Span(least, most), lacks=left.lacks, assumed=left.assumed)

        return of_each_van(situation, under)

    return ToldFigure(id=id, find=find, rests_on=_LEDGERS, settings=settings)


def _on_datum(van: Van, setting: Mapping[str, float]) -> float:
    return behind_front_axle_mm(van, setting["x_mm"])


def _furthest(reach: Callable[[float, _Rooms, Van], float | None], *, id: LedgerId) -> ToldFigure:
    """Where the middle of all the rest may lie, mm behind the door pillar; nothing while nothing is left."""

    def find(situation: Situation, _setting: Mapping[str, float]) -> Found:
        def under(one: Situation, van: Van) -> Found:
            left = _left(one, van)
            if left.rooms is None or not _is_settled(left.rooms):
                return Found(lacks=left.lacks)
            rest_kg = left.rooms.total.least
            if rest_kg <= 0:
                return NOTHING
            x_mm = reach(rest_kg, left.rooms, van)
            if x_mm is None:
                return NOTHING
            return Found(value=point(x_mm - van.datum_from_front_axle_mm), lacks=left.lacks, assumed=left.assumed)

        return of_each_van(situation, under)

    return ToldFigure(id=id, find=find, rests_on=_LEDGERS)


def _is_settled(rooms: _Rooms) -> bool:
    return all(room.settled for room in rooms)


def _furthest_back(rest_kg: float, rooms: _Rooms, van: Van) -> float:
    """By the rear axle and by the least share in front; at most at the rear sill."""
    sill = behind_front_axle_mm(van, van.rear_sill_x_mm)
    by_axle = furthest_back_x_mm(rest_kg, van.wheelbase_mm, rooms.rear.least)
    if rooms.share.least < 0:
        raise OutsideValidity("room to the least front share kg", rooms.share.least, "0 or more")
    by_share = van.wheelbase_mm * (1 - van.front_min_share + rooms.share.least / rest_kg)
    return min(by_axle, by_share, sill)


def _furthest_forward(rest_kg: float, rooms: _Rooms, van: Van) -> float | None:
    """By the front axle; None where any place behind it will do."""
    x_mm = furthest_forward_x_mm(rest_kg, van.wheelbase_mm, rooms.front.least)
    return x_mm if x_mm > 0 else None


FREE_IN_FOOT_WELL = _free_at(_on_datum, "x_mm", id=LedgerId("free-in-foot-well"))
"""In the foot well of the passenger."""
FREE_BEHIND_SEATS = _free_at(_on_datum, "x_mm", id=LedgerId("free-behind-seats"))
"""On the floor behind the front seats."""
FREE_IN_STORES = _free_at(stores_x_mm, "luggage_from_sill_mm", id=LedgerId("free-in-stores"))
"""Where the luggage lies."""
FREE_ON_RACK = _free_at(rack_x_mm, "rack_load_from_sill_mm", unless=_no_rack, id=LedgerId("free-on-rack"))
"""On a rack behind the van, where there is one."""
REST_FURTHEST_BACK = _furthest(_furthest_back, id=LedgerId("rest-furthest-back"))
"""How far back the middle of all the rest may lie."""
REST_FURTHEST_FORWARD = _furthest(_furthest_forward, id=LedgerId("rest-furthest-forward"))
"""How far forward."""
