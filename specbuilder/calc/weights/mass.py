"""The loaded van against its plate."""

from __future__ import annotations

from collections.abc import Mapping

from specbuilder.calc.formulas.loads import last_fuel_kg, luggage_kg, people_kg, travel_water_kg
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.marginal import marginals
from specbuilder.calc.measuring.measure import Measure, smallest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, OptionId
from specbuilder.model.ledger import Entry
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span
from specbuilder.model.vans import Van

_ADULTS, _CHILDREN = BriefKey("adults"), BriefKey("children")
_CHILD_MASS, _EXTRA_LOAD = BriefKey("child_mass_kg"), BriefKey("extra_load_kg")


def part_mass_kg(option: Option) -> float:
    """Mass of a part with the water that is always in it, kg. Fresh water counts apart, because of the travel fill."""
    return option.mass_kg + option.water.extra_water_l


def travel_water_l(option: Option, _van: Van | None) -> float | None:
    """Fresh water it carries on the road, L."""
    return option.water.fresh_travel_l or None


def travel_cap_l(option: Option, _van: Van | None) -> float | None:
    """The travel fill it stops at, L."""
    return option.water.fresh_travel_cap_l


def _loaded_van(frame: Frame) -> tuple[Entry, ...]:
    van, number, setting = frame.van, frame.asked.number, frame.settings
    adults, children, extra = number(_ADULTS), number(_CHILDREN), number(_EXTRA_LOAD)
    child = number(_CHILD_MASS) if children.most > 0 else Span(0, 0)
    ends = (adults.least, children.least, child.least), (adults.most, children.most, child.most)
    people = [people_kg(a, c, setting["grown_up_kg"], kg) for a, c, kg in ends]
    allowances = setting["luggage_per_traveller_kg"], setting["luggage_per_metre_kg"]
    luggage = [luggage_kg(a + c, van.length_mm / 1000, *allowances) for a, c, _ in ends]
    fuel = last_fuel_kg(van.tank_l, van.fuel_density_kg_per_l, setting["last_fuel_share"])
    return (
        frame.van_entry("van with driver", van.mro_kg),
        frame.entry("people", Span(*people), _ADULTS, _CHILDREN, *((_CHILD_MASS,) if children.most > 0 else ())),
        frame.entry("luggage", Span(*luggage), _ADULTS, _CHILDREN),
        frame.entry("last tenth of fuel", fuel),
        frame.entry("other load", extra, _EXTRA_LOAD),
    )


def _travel_water(joint: Joint, _frame: Frame) -> float:
    travel_l, cap_l = joint
    return travel_water_kg(travel_l, cap_l)


def _travel_water_entry(amount: Span, frame: Frame) -> Entry:
    return frame.entry("travel water", amount)


def _plate(frame: Frame) -> tuple[Entry, ...]:
    return (frame.van_entry("plate", frame.van.m_max_kg),)


LOADED = Measure(
    base=_loaded_van,
    amount=part_mass_kg,
    parts=(summed(travel_water_l), smallest(travel_cap_l)),
    rest=_travel_water,
    rest_entry=_travel_water_entry,
    needs_van=True,
)
"""Mass of the loaded van, kg."""

TOTAL_MASS = Tally(
    id=LedgerId("total-mass"),
    value=LOADED,
    bound=Measure(base=_plate, amount=lambda option: option.space.plate_raise_kg, needs_van=True),
    settings=("grown_up_kg", "luggage_per_traveller_kg", "luggage_per_metre_kg", "last_fuel_share"),
)
"""Plate mass against the loaded van."""


def _off(frame: Frame) -> tuple[Entry, ...]:
    on_paper = frame.option.van if frame.option is not None else None
    assert on_paper is not None, "the measure needs the van"
    return (frame.entry("scales beside papers", abs(frame.van.mro_kg - on_paper.mro_kg)),)


def _was_weighed(_joint: Joint, frame: Frame) -> float | None:
    weighed = frame.asked.facts.weighed
    return 0 if weighed is not None and frame.option is not None and weighed.van == frame.option.id else None


ARRIVAL_DIFFERENCE = Tally(
    id=LedgerId("arrival-difference"),
    value=Measure(base=_off, rest=_was_weighed, needs_van=True),
    bound=Measure(base=lambda frame: (frame.entry("most", frame.settings["most_kg"]),)),
    settings=("most_kg",),
)
"""How far the weighed van is from the running order the catalogue gives; nothing to measure before it was weighed."""


def mass_effects(situation: Situation) -> Mapping[OptionId, float]:
    """What each option adds to the loaded van, kg: beside the rest, or in place of what its group of one answer holds.

    Its water counts, and so does a travel fill that caps it. A choice says what it adds now.
    """
    found = marginals(LOADED, situation, TOTAL_MASS.id)
    return {option: round(kg, 6) for option, kg in found.items()}
