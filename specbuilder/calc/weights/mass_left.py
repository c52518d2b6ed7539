"""What the plate leaves for luggage with every belted seat taken, and what the van weighs empty."""

from __future__ import annotations

from specbuilder.calc.formulas.loads import luggage_kg, travel_water_kg
from specbuilder.calc.formulas.masses import dry_mass_kg
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, smallest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.calc.room.seats import belts
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Entry
from specbuilder.model.span import Span
from specbuilder.model.vans import Van

from .mass import part_mass_kg, travel_cap_l, travel_water_l


def _belts(option: Option, _van: Van | None) -> float | None:
    return belts(option) or None


def _leaves_kg(option: Option) -> float:
    """What a part leaves of the plate: a new plate raises it, the part's own mass comes off."""
    return option.space.plate_raise_kg - part_mass_kg(option)


def _plate_and_van(frame: Frame) -> tuple[Entry, ...]:
    van = frame.van
    return (
        frame.van_entry("plate", van.m_max_kg),
        frame.van_entry("van without driver", frame.settings["seat_load_kg"] - van.mro_kg),
    )


def _water_and_people(joint: Joint, frame: Frame) -> float:
    travel_l, cap_l, seats = joint
    return -travel_water_kg(travel_l, cap_l) - frame.settings["seat_load_kg"] * seats


def _water_and_people_entry(amount: Span, frame: Frame) -> Entry:
    return frame.entry("people in every belted seat, travel water", amount)


def _least_luggage(joint: Joint, frame: Frame) -> float:
    (seats,) = joint
    return luggage_kg(seats, frame.van.length_mm / 1000, frame.settings["per_seat_kg"], frame.settings["per_metre_kg"])


def _empty_van(frame: Frame) -> tuple[Entry, ...]:
    van, setting = frame.van, frame.settings
    empty = dry_mass_kg(van.mro_kg, setting["driver_kg"], setting["fuel_share"], van.tank_l, van.fuel_density_kg_per_l)
    return (frame.van_entry("van without driver and fuel", empty),)


def _line(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("most", frame.settings["most_kg"]),)


PAY_MASS = Tally(
    id=LedgerId("pay-mass"),
    value=Measure(
        base=_plate_and_van,
        amount=_leaves_kg,
        parts=(summed(travel_water_l), smallest(travel_cap_l), summed(_belts)),
        rest=_water_and_people,
        rest_entry=_water_and_people_entry,
        needs_van=True,
    ),
    bound=Measure(parts=(summed(_belts),), rest=_least_luggage, needs_van=True),
    settings=("per_seat_kg", "per_metre_kg", "seat_load_kg"),
)
"""Mass left for luggage against the least a motor caravan must leave; the driver has one of the belted seats."""

UNLADEN_MASS = Tally(
    id=LedgerId("unladen-mass"),
    value=Measure(base=_empty_van, amount=lambda option: option.mass_kg, needs_van=True),
    bound=Measure(base=_line),
    settings=("most_kg", "driver_kg", "fuel_share"),
)
"""The empty van against the line the house draws below the speed-limit one: no driver, fuel or water in it."""
