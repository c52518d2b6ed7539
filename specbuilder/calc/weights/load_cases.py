"""The van in five states of load: its total, both axles and the least share in front, each against its limit.

Running order: parts, water at its travel fill, the driver. All seats: somebody in every belted seat. Least luggage: and
the luggage a motor caravan must leave room for in the stores. Filled up: instead with all that the plate leaves, there.
Driver and rack: the driver alone, tanks full, and what is said to ride on a rack.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import isinf

from specbuilder.calc.formulas.loads import last_fuel_kg, luggage_kg
from specbuilder.calc.formulas.validity import above
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest, summed
from specbuilder.calc.measuring.positions import behind_front_axle_mm, position_behind_front_axle_mm
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.calc.measuring.told import Found, ToldFigure, found_of, merged, of_each_van
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.ledger import Entry
from specbuilder.model.situation import Situation
from specbuilder.model.span import ZERO, Span
from specbuilder.model.vans import Van

from .axles import (
    ON_RACK,
    Share,
    above_least_front,
    battery_at_place,
    bench_belts,
    bench_x_mm,
    cab_belts,
    on_front,
    on_rear,
    shift_mm,
    stands_elsewhere,
    water_in_tank,
)
from .mass import part_mass_kg

_EXTRA_LOAD, _EXTRA_WHERE = BriefKey("extra_load_kg"), BriefKey("extra_load_where")

SETTINGS = (
    "seat_load_kg",
    "per_seat_kg",
    "per_metre_kg",
    "last_fuel_share",
    "front_seat_x_mm",
    "luggage_from_sill_mm",
    "rack_load_from_sill_mm",
    "last_fuel_x_mm",
)
"""House settings of the cases: those of the ledgers they are told beside."""


@dataclass(frozen=True, slots=True)
class _Limit:
    """What is weighed, and against what."""

    van_kg: Callable[[Van], float]
    share: Share
    bound: Measure


@dataclass(frozen=True, slots=True)
class _Case:
    """Who and what is on board beside parts and driver."""

    seats: bool = False
    luggage: bool = False
    full_and_rack: bool = False


def whole(_x_mm: float, _van: Van) -> float:
    """All of it: the share that makes a total."""
    return 1.0


def limited(name: str, of: Callable[[Van], float], raised_by: Callable[[Option], float]) -> Measure:
    """A limit of the van; where the van's data lack it nothing can be said."""
    return Measure(
        base=lambda frame: (frame.van_entry("plate", above(name, of(frame.van))),), amount=raised_by, needs_van=True
    )


TOTAL = _Limit(
    lambda van: van.mro_kg,
    whole,
    limited("plate kg", lambda van: van.m_max_kg, lambda o: o.space.plate_raise_kg),
)
FRONT = _Limit(
    lambda van: van.mro_front_kg,
    on_front,
    limited("front axle limit kg", lambda van: van.f_max_kg, lambda _: 0),
)
REAR = _Limit(
    lambda van: van.mro_rear_kg,
    on_rear,
    limited("rear axle limit kg", lambda van: van.r_max_kg, lambda o: o.space.rear_axle_raise_kg),
)
SHARE = _Limit(lambda van: van.mro_front_kg - van.front_min_share * van.mro_kg, above_least_front, Measure())


def stores_x_mm(van: Van, settings: Mapping[str, float]) -> float:
    """Where luggage lies, mm behind the front axle."""
    return behind_front_axle_mm(van, van.rear_sill_x_mm) + settings["luggage_from_sill_mm"]


def rack_x_mm(van: Van, settings: Mapping[str, float]) -> float:
    """Where a load on a rear rack hangs, mm behind the front axle."""
    return behind_front_axle_mm(van, van.rear_sill_x_mm) + settings["rack_load_from_sill_mm"]


def _kg(case: _Case, option: Option) -> float:
    if option.van is not None or stands_elsewhere(option):
        return 0.0
    return part_mass_kg(option) + (option.water.fresh_full_l if case.full_and_rack else 0.0)


def _part(case: _Case, share: Share) -> Callable[[Option, Van], float]:
    def amount(option: Option, van: Van) -> float:
        kg = _kg(case, option)
        return kg * share(position_behind_front_axle_mm(van, option.position), van) if kg else 0.0

    return amount


def _everybody(case: _Case, share: Share) -> Measure:
    """Somebody in every belted seat but the driver's; with the least luggage where the case says so."""

    def rest(joint: Joint, frame: Frame) -> float:
        cab, bench, seat_x_mm, back_mm = joint
        van, setting = frame.van, frame.settings
        in_front = max(cab - 1, 0) * share(behind_front_axle_mm(van, setting["front_seat_x_mm"]), van)
        behind = 0.0 if isinf(seat_x_mm) else bench * share(behind_front_axle_mm(van, seat_x_mm + back_mm), van)
        people = setting["seat_load_kg"] * (in_front + behind)
        if not case.luggage:
            return people
        least = luggage_kg(cab + bench, van.length_mm / 1000, setting["per_seat_kg"], setting["per_metre_kg"])
        return people + least * share(stores_x_mm(van, setting), van)

    label = "people in every belted seat, least luggage" if case.luggage else "people in every belted seat"
    return Measure(
        parts=(summed(cab_belts), summed(bench_belts), largest(bench_x_mm), summed(shift_mm)),
        rest=rest,
        rest_entry=lambda amount, frame: frame.entry(label, amount),
        bent=True,
    )


def _fuel_and_rack(frame: Frame, share: Share) -> tuple[Entry, ...]:
    """The last of the fuel, and what rides on the rack; nothing while it is said to ride inside."""
    van, setting = frame.van, frame.settings
    fuel = last_fuel_kg(van.tank_l, van.fuel_density_kg_per_l, setting["last_fuel_share"])
    x = behind_front_axle_mm(van, setting["last_fuel_x_mm"])
    lines = (frame.entry("last tenth of fuel", fuel * share(x, van)),)
    extra = frame.asked.number(_EXTRA_LOAD)
    if not extra.most:
        return lines
    where = frame.asked.word(_EXTRA_WHERE)
    if where is not None and where != ON_RACK:
        return lines
    there = share(rack_x_mm(van, setting), van)
    ends = [extra.least * there, extra.most * there, *([0.0] if where is None else [])]
    return (*lines, frame.entry("load on the rack", Span(min(ends), max(ends)), _EXTRA_LOAD, _EXTRA_WHERE))


def _state(case: _Case, limit: _Limit) -> Measure:
    def base(frame: Frame) -> tuple[Entry, ...]:
        van = frame.van_entry("van with driver", limit.van_kg(frame.van))
        return (van, *_fuel_and_rack(frame, limit.share)) if case.full_and_rack else (van,)

    beside = [battery_at_place(limit.share)]
    if not case.full_and_rack:
        beside.append(water_in_tank(limit.share))
    if case.seats:
        beside.append(_everybody(case, limit.share))
    return Measure(
        base=base,
        amount=lambda option: _kg(case, option),
        amount_in=_part(case, limit.share),
        beside=tuple(beside),
        needs_van=True,
        by_van=True,
    )


def _told(case: _Case, limit: _Limit, *, id: LedgerId) -> Tally:
    return Tally(id=id, value=_state(case, limit), bound=limit.bound, settings=SETTINGS)


_RUNNING_ORDER = _Case()
_ALL_SEATS = _Case(seats=True)
_LEAST_LUGGAGE = _Case(seats=True, luggage=True)
_DRIVER_AND_RACK = _Case(full_and_rack=True)

RUNNING_ORDER_TOTAL = _told(_RUNNING_ORDER, TOTAL, id=LedgerId("running-order-total"))
RUNNING_ORDER_FRONT = _told(_RUNNING_ORDER, FRONT, id=LedgerId("running-order-front"))
RUNNING_ORDER_REAR = _told(_RUNNING_ORDER, REAR, id=LedgerId("running-order-rear"))
ALL_SEATS_TOTAL = _told(_ALL_SEATS, TOTAL, id=LedgerId("all-seats-total"))
ALL_SEATS_FRONT = _told(_ALL_SEATS, FRONT, id=LedgerId("all-seats-front"))
ALL_SEATS_REAR = _told(_ALL_SEATS, REAR, id=LedgerId("all-seats-rear"))
LEAST_LUGGAGE_TOTAL = _told(_LEAST_LUGGAGE, TOTAL, id=LedgerId("least-luggage-total"))
LEAST_LUGGAGE_FRONT = _told(_LEAST_LUGGAGE, FRONT, id=LedgerId("least-luggage-front"))
LEAST_LUGGAGE_REAR = _told(_LEAST_LUGGAGE, REAR, id=LedgerId("least-luggage-rear"))
DRIVER_AND_RACK_TOTAL = _told(_DRIVER_AND_RACK, TOTAL, id=LedgerId("driver-and-rack-total"))
DRIVER_AND_RACK_FRONT = _told(_DRIVER_AND_RACK, FRONT, id=LedgerId("driver-and-rack-front"))
DRIVER_AND_RACK_REAR = _told(_DRIVER_AND_RACK, REAR, id=LedgerId("driver-and-rack-rear"))
DRIVER_AND_RACK_SHARE = _told(_DRIVER_AND_RACK, SHARE, id=LedgerId("driver-and-rack-share"))


def _filled_up(limit: _Limit, seated_axle: Tally, *, id: LedgerId) -> ToldFigure:
    """All seats taken, and what the plate leaves then in the stores.

    What is left falls as the rest grows, so while choices are open its range is honest rather than tight.
    """
    seated = (ALL_SEATS_TOTAL, seated_axle)

    def find(situation: Situation, settings: Mapping[str, float]) -> Found:
        return of_each_van(situation, lambda one, van: with_the_rest(one, van, settings))

    def with_the_rest(situation: Situation, van: Van, settings: Mapping[str, float]) -> Found:
        total, axle = (found_of(one.read(situation)) for one in seated)
        lacks = merged(total.lacks, axle.lacks)
        if total.value is None or total.bound is None or axle.value is None:
            return Found(lacks=lacks)
        left, there = total.bound - total.value, limit.share(stores_x_mm(van, settings), van)
        value = axle.value + Span(max(left.least, 0.0), max(left.most, 0.0)) * there
        bound = axle.bound
        if limit is SHARE:
            value, bound = value - total.value * van.front_min_share, ZERO
        assumed = tuple(dict.fromkeys((*total.assumed, *axle.assumed)))
        return Found(value=value, bound=bound, lacks=lacks, assumed=assumed)

    return ToldFigure(id=id, find=find, rests_on=seated, settings=SETTINGS)


FILLED_UP_TOTAL = _filled_up(TOTAL, ALL_SEATS_TOTAL, id=LedgerId("filled-up-total"))
FILLED_UP_FRONT = _filled_up(FRONT, ALL_SEATS_FRONT, id=LedgerId("filled-up-front"))
FILLED_UP_REAR = _filled_up(REAR, ALL_SEATS_REAR, id=LedgerId("filled-up-rear"))
FILLED_UP_SHARE = _filled_up(SHARE, ALL_SEATS_FRONT, id=LedgerId("filled-up-share"))
