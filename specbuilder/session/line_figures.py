"""What one choice comes to by itself: its own price, mass, hours and wait, whatever else is chosen."""

from __future__ import annotations

from specbuilder.calc.formulas.loads import last_fuel_kg, luggage_kg
from specbuilder.calc.formulas.money import gross_pence
from specbuilder.calc.formulas.work import circuit_hours_h
from specbuilder.calc.measuring.outcome import all_settings
from specbuilder.calc.measuring.prepared import UNWEIGHED_FACTORS, as_brought, weighing
from specbuilder.calc.order.supply import HOUSE_SUPPLIES
from specbuilder.calc.weights.mass import TOTAL_MASS, part_mass_kg, travel_water_l
from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Owner
from specbuilder.model.situation import Placed
from specbuilder.model.spec import Choice
from specbuilder.model.stand import Stand
from specbuilder.model.vans import Van
from specbuilder.model.ways import Difference

NOTHING = Difference(gross_pence=0, mass_kg=0, hours=0, weeks=0)
_DECIMALS = 6


def line_figures(stand: Stand, choice: Choice | None) -> Difference:
    """What the sums of a build count for this choice, without what choices do to one another; weeks its own wait.

    The figures are those of the option under the catalogue of the stand, with the customer's own sheet, at their low
    end while nobody has weighed a part. What stands nowhere, or has left the catalogue, counts nothing.
    """
    option = stand.catalogue.options.get(choice.option) if choice is not None else None
    if choice is None or option is None:
        return NOTHING
    if option.van is not None:
        return _of_van(stand, option, option.van)
    one = _as_brought(option, choice)
    each_h = sum(step.hours_per_circuit for step in stand.catalogue.work.values())
    hours = one.labour_h + circuit_hours_h(len(one.circuits), each_h)
    mass_kg = part_mass_kg(one) + (travel_water_l(one, None) or 0)
    return Difference(
        gross_pence=gross_pence(one.price_net_pence * choice.count, stand.catalogue.firm.vat_percent),
        mass_kg=round(mass_kg * choice.count, _DECIMALS),
        hours=round(hours * choice.count, _DECIMALS),
        weeks=one.lead_weeks,
    )


def less(after: Difference, before: Difference) -> Difference:
    """After less before."""
    return Difference(
        gross_pence=after.gross_pence - before.gross_pence,
        mass_kg=round(after.mass_kg - before.mass_kg, _DECIMALS),
        hours=round(after.hours - before.hours, _DECIMALS),
        weeks=round(after.weeks - before.weeks, _DECIMALS),
    )


def _as_brought(option: Option, choice: Choice) -> Option:
    """As the sums count it: the customer's part with its sheet, and as light as it may be without one."""
    placed = Placed(option=option, count=choice.count, owner=choice.owner, own_part=choice.own_part)
    one = as_brought(placed)
    unweighed = choice.own_part is None or choice.own_part.mass_kg is None
    if choice.owner is Owner.CUSTOMER and unweighed:
        return weighing(one, min(one.mass_kg * factor for factor in UNWEIGHED_FACTORS))
    return one


def _of_van(stand: Stand, option: Option, van: Van) -> Difference:
    """The van is in price and wait only while the house supplies it; its mass as weighed, with fuel and luggage."""
    catalogue = stand.catalogue
    chosen = (catalogue.options.get(choice.option) for choice in stand.spec.choices)
    supplied = any(one is not None and HOUSE_SUPPLIES in one.gives for one in chosen)
    setting = all_settings(catalogue).get(TOTAL_MASS.id)
    mass_kg = _running_kg(stand, option, van)
    if setting is not None:
        mass_kg += last_fuel_kg(van.tank_l, van.fuel_density_kg_per_l, setting["last_fuel_share"])
        mass_kg += luggage_kg(0, van.length_mm / 1000, 0, setting["luggage_per_metre_kg"])
    return Difference(
        gross_pence=gross_pence(van.price_net_supplied_pence, catalogue.firm.vat_percent) if supplied else 0,
        mass_kg=round(mass_kg, _DECIMALS),
        hours=0,
        weeks=van.lead_weeks if supplied else 0,
    )


def _running_kg(stand: Stand, option: Option, van: Van) -> float:
    """The van's own line of the loaded mass, which knows whether it was weighed."""
    reading = stand.report.readings.get(TOTAL_MASS.id)
    lines = reading.entries if reading is not None else ()
    return next((line.amount.least for line in lines if line.option == option.id), van.mro_kg)
