"""What stands on each axle: everything on board times where it acts along the van.

A mass at ``x`` behind the front axle puts ``x / wheelbase`` of itself on the rear axle and the rest on the front one.
Three things do not simply add: a battery stands where its place is, water stands in its tank up to a travel fill, and
people fill the seats in turn. Each is folded by itself.
"""

from __future__ import annotations

from collections.abc import Callable
from math import isinf

from specbuilder.calc.formulas.axles import axle_loads_kg
from specbuilder.calc.formulas.loads import last_fuel_kg, luggage_kg, seated, travel_water_kg
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest, smallest, summed
from specbuilder.calc.measuring.positions import behind_front_axle_mm, position_behind_front_axle_mm
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, GroupId, LedgerId
from specbuilder.model.ledger import Entry
from specbuilder.model.span import Span
from specbuilder.model.vans import Van

from .mass import part_mass_kg, travel_cap_l, travel_water_l

_ADULTS, _CHILDREN = BriefKey("adults"), BriefKey("children")
_CHILD_MASS, _EXTRA_LOAD, _EXTRA_WHERE = (
    BriefKey("child_mass_kg"),
    BriefKey("extra_load_kg"),
    BriefKey("extra_load_where"),
)
_BATTERY, _PLACE = GroupId("battery"), GroupId("battery-place")
ON_RACK = "rack"

Share = Callable[[float, Van], float]
"""What part of a mass at ``x`` mm behind the front axle counts."""


def on_rear(x_mm: float, van: Van) -> float:
    """What the rear axle carries of it."""
    return axle_loads_kg(1, x_mm, van.wheelbase_mm)[1]


def on_front(x_mm: float, van: Van) -> float:
    """What the front axle carries of it."""
    return axle_loads_kg(1, x_mm, van.wheelbase_mm)[0]


def above_least_front(x_mm: float, van: Van) -> float:
    """What the front axle carries of it beyond the least share it must carry."""
    return axle_loads_kg(1, x_mm, van.wheelbase_mm)[0] - van.front_min_share


def stands_elsewhere(option: Option) -> bool:
    """A battery: it stands where its place is."""
    return option.group == _BATTERY


def _amount_in(share: Share) -> Callable[[Option, Van], float]:
    def amount(option: Option, van: Van) -> float:
        if option.van is not None or stands_elsewhere(option):
            return 0.0
        return part_mass_kg(option) * share(position_behind_front_axle_mm(van, option.position), van)

    return amount


def _battery_kg(option: Option, _van: Van | None) -> float | None:
    return part_mass_kg(option) if stands_elsewhere(option) else None


def _battery_x_mm(option: Option, van: Van | None) -> float | None:
    if option.group != _PLACE or option.position is None:
        return None
    return position_behind_front_axle_mm(van, option.position) if van is not None else 0.0


def battery_at_place(share: Share) -> Measure:
    """The battery where its place is; at the middle of the wheelbase while it has none."""

    def rest(joint: Joint, frame: Frame) -> float:
        kg, x_mm = joint
        return kg * share(frame.van.wheelbase_mm / 2 if isinf(x_mm) else x_mm, frame.van)

    def entry(amount: Span, frame: Frame) -> Entry:
        chosen = [p for p in frame.situation.placed if stands_elsewhere(p.option)]
        return Entry("", amount, option=chosen[0].option.id) if chosen else Entry("", amount, group=_BATTERY)

    return Measure(parts=(summed(_battery_kg), largest(_battery_x_mm)), rest=rest, rest_entry=entry, bent=True)


def _tank_x_mm(option: Option, van: Van | None) -> float | None:
    if not option.water.fresh_travel_l:
        return None
    return position_behind_front_axle_mm(van, option.position) if van is not None else 0.0


def water_in_tank(share: Share) -> Measure:
    """The water of the road in its tank, up to a travel fill."""

    def rest(joint: Joint, frame: Frame) -> float:
        travel_l, cap_l, x_mm = joint
        return 0.0 if isinf(x_mm) else travel_water_kg(travel_l, cap_l) * share(x_mm, frame.van)

    return Measure(
        parts=(summed(travel_water_l), smallest(travel_cap_l), largest(_tank_x_mm)),
        rest=rest,
        rest_entry=lambda amount, frame: frame.entry("travel water", amount),
        bent=True,
    )


def cab_belts(option: Option, _van: Van | None) -> float | None:
    """Belted seats in the cab."""
    return option.space.belts if option.space.belts and option.space.seat_x_mm is None else None


def bench_belts(option: Option, _van: Van | None) -> float | None:
    """Belted seats behind the cab."""
    return option.space.belts if option.space.belts and option.space.seat_x_mm is not None else None


def bench_x_mm(option: Option, _van: Van | None) -> float | None:
    """Where people on it sit, mm behind the door pillar."""
    return option.space.seat_x_mm if option.space.belts else None


def shift_mm(option: Option, _van: Van | None) -> float | None:
    """How far it sets the bench back, mm."""
    return option.space.bench_shift_mm or None


def _counted(frame: Frame) -> tuple[float, float, float] | None:
    """Grown-ups, children and a child's mass; None while one of them is open."""
    adults, children = frame.asked.number(_ADULTS), frame.asked.number(_CHILDREN)
    child = frame.asked.number(_CHILD_MASS) if children.most > 0 else Span(0, 0)
    if adults.settled and children.settled and child.settled:
        return adults.least, children.least, child.least
    return None


def _people(share: Share) -> Measure:
    def rest(joint: Joint, frame: Frame) -> float:
        people = _counted(frame)
        if people is None:
            return 0.0  # their whole range stands among the labelled lines
        cab_belts, bench_belts, seat_x_mm, shift_mm = joint
        adults, children, child_kg = people
        on_bench, in_front = seated(adults, children, cab_belts, bench_belts)
        grown_up_kg = frame.settings["grown_up_kg"]
        van = frame.van
        front_x = behind_front_axle_mm(van, frame.settings["front_seat_x_mm"])
        front_kg = in_front[0] * grown_up_kg + in_front[1] * child_kg
        bench_kg = on_bench[0] * grown_up_kg + on_bench[1] * child_kg
        bench = 0.0 if isinf(seat_x_mm) else share(behind_front_axle_mm(van, seat_x_mm + shift_mm), van)
        return front_kg * share(front_x, van) + bench_kg * bench

    return Measure(
        parts=(summed(cab_belts), summed(bench_belts), largest(bench_x_mm), summed(shift_mm)),
        rest=rest,
        rest_entry=lambda amount, frame: frame.entry("people", amount, _ADULTS, _CHILDREN),
        bent=True,
    )


def _open_people(frame: Frame, share: Share) -> tuple[Entry, ...]:
    """People while their number or mass is open: on whatever seat counts least or most."""
    if _counted(frame) is not None:
        return ()
    adults, children = frame.asked.number(_ADULTS), frame.asked.number(_CHILDREN)
    child, grown_up_kg = frame.asked.number(_CHILD_MASS), frame.settings["grown_up_kg"]
    options = frame.situation.catalogue.options.values()
    shift = sum(option.space.bench_shift_mm for option in options)
    seats = [o.space.seat_x_mm + s for o in options if o.space.seat_x_mm is not None for s in (0, shift)]
    seats.append(frame.settings["front_seat_x_mm"])
    counts = [share(behind_front_axle_mm(frame.van, x), frame.van) for x in seats]
    least_kg = max(adults.least - 1, 0) * grown_up_kg + children.least * child.least
    most_kg = max(adults.most - 1, 0) * grown_up_kg + children.most * child.most
    ends = [kg * count for kg in (least_kg, most_kg) for count in counts]
    return (frame.entry("people", Span(min(ends), max(ends)), _ADULTS, _CHILDREN, _CHILD_MASS),)


def _base(van_kg: Callable[[Van], float], share: Share) -> Callable[[Frame], tuple[Entry, ...]]:
    def base(frame: Frame) -> tuple[Entry, ...]:
        van, number, setting = frame.van, frame.asked.number, frame.settings
        sill = behind_front_axle_mm(van, van.rear_sill_x_mm)
        travellers = number(_ADULTS) + number(_CHILDREN)
        allowances = setting["luggage_per_traveller_kg"], setting["luggage_per_metre_kg"]
        luggage = [luggage_kg(n, van.length_mm / 1000, *allowances) for n in (travellers.least, travellers.most)]
        fuel = last_fuel_kg(van.tank_l, van.fuel_density_kg_per_l, setting["last_fuel_share"])
        fuel_x = behind_front_axle_mm(van, setting["last_fuel_x_mm"])
        return (
            frame.van_entry("van with driver", van_kg(van)),
            *_open_people(frame, share),
            frame.entry(
                "luggage",
                Span(*luggage) * share(sill + setting["luggage_from_sill_mm"], van),
                _ADULTS,
                _CHILDREN,
            ),
            frame.entry("last tenth of fuel", fuel * share(fuel_x, van)),
            *_extra_load(frame, sill, share),
        )

    return base


def _extra_load(frame: Frame, sill_mm: float, share: Share) -> tuple[Entry, ...]:
    extra, setting = frame.asked.number(_EXTRA_LOAD), frame.settings
    if not extra.most:
        return ()
    where = frame.asked.word(_EXTRA_WHERE)
    inside = sill_mm + setting["extra_load_from_sill_mm"]
    rack = sill_mm + setting["rack_load_from_sill_mm"]
    places = [rack] if where == ON_RACK else [inside] if where is not None else [inside, rack]
    ends = [kg * share(x, frame.van) for kg in (extra.least, extra.most) for x in places]
    return (frame.entry("other load", Span(min(ends), max(ends)), _EXTRA_LOAD, _EXTRA_WHERE),)


def _loaded(van_kg: Callable[[Van], float], share: Share) -> Measure:
    return Measure(
        base=_base(van_kg, share),
        amount=lambda option: 0.0 if stands_elsewhere(option) else part_mass_kg(option),
        amount_in=_amount_in(share),
        beside=(battery_at_place(share), water_in_tank(share), _people(share)),
        needs_van=True,
        by_van=True,
    )


SETTINGS = (
    "front_seat_x_mm",
    "luggage_from_sill_mm",
    "extra_load_from_sill_mm",
    "rack_load_from_sill_mm",
    "last_fuel_x_mm",
    "luggage_per_traveller_kg",
    "luggage_per_metre_kg",
    "grown_up_kg",
    "last_fuel_share",
)
"""House settings of all three: where what is no part acts, and the allowances of the loaded van."""

ON_REAR = _loaded(lambda van: van.mro_rear_kg, on_rear)
"""Mass on the rear axle, kg."""
ON_FRONT = _loaded(lambda van: van.mro_front_kg, on_front)
"""Mass on the front axle, kg."""

REAR_AXLE = Tally(
    id=LedgerId("rear-axle"),
    value=ON_REAR,
    bound=Measure(
        base=lambda frame: (frame.van_entry("plate", frame.van.r_max_kg),),
        amount=lambda option: option.space.rear_axle_raise_kg,
        needs_van=True,
    ),
    settings=SETTINGS,
)
"""The rear axle against its plate."""

FRONT_AXLE = Tally(
    id=LedgerId("front-axle"),
    value=ON_FRONT,
    bound=Measure(base=lambda frame: (frame.van_entry("plate", frame.van.f_max_kg),), needs_van=True),
    settings=SETTINGS,
)
"""The front axle against its plate."""

FRONT_SHARE = Tally(
    id=LedgerId("front-share"),
    value=_loaded(lambda van: van.mro_front_kg - van.front_min_share * van.mro_kg, above_least_front),
    bound=Measure(),
    settings=SETTINGS,
)
"""What stands on the front axle beyond the least share of the loaded van that must stand there."""
