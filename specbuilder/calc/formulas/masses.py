"""Masses as papers name them: kerb, running order, pay-mass, unladen; and what boards weigh, tyres and racks carry."""

from math import floor, isfinite
from types import MappingProxyType

from .validity import OutsideValidity, above, at_least, within

DRIVER_KG = 75.0
"""Mass of a driver in the rules, whoever drives."""
RUNNING_ORDER_FUEL_SHARE = 0.9
"""How full the tank is in running order."""
UNLADEN_LINE_KG = 3050.0
"""A motor caravan that weighs more when empty has lower speed limits in Great Britain."""

_FIRST_INDEX = 80
_TYRE_LOADS = """
450 462 475 487 500 515 530 545 560 580 600 615 630 650 670 690 710 730 750 775 800 825 850 875 900 925 950 975 1000
1030 1060 1090 1120 1150 1180 1215 1250 1285 1320 1360 1400 1450 1500 1550 1600
"""
TYRE_KG = MappingProxyType(dict(enumerate(map(int, _TYRE_LOADS.split()), _FIRST_INDEX)))
"""What one tyre carries by its load index, kg: the table every tyre maker prints."""


def _seats(seats: int) -> int:
    within("belted seats", seats, 1, 9)
    return seats


def _length(length_m: float) -> float:
    return within("overall length m", length_m, 2, 12)


def dry_mass_kg(kerb_kg: float, driver_kg: float, fuel_share: float, tank_l: float, density_kg_per_l: float) -> float:
    """A published kerb mass without the driver and the fuel that it was published with. Result in kg.

    Equation: ``kerb_kg - driver_kg - fuel_share * tank_l * density_kg_per_l``; ``driver_kg`` is 0 where the paper
        counts no driver, and ``fuel_share`` how full its tank is.
    Valid for: vans with a fuel tank or, at 0 L, without; what is left must weigh something.
    Source: arithmetic; papers count 0 or 75 kg of driver and 90 or 100 % of fuel, so ask which.
    Confidence: verified second hand that papers differ; the base van's own paper or a weighbridge ticket goes first.

    Raises:
        OutsideValidity: when a number is negative, the tank more than full, or nothing is left.

    >>> dry_mass_kg(2000, 75, 0.5, 100, 0.8)
    1885.0
    """
    fuel = (
        within("tank share", fuel_share, 0, 1) * at_least("tank L", tank_l) * at_least("density kg/L", density_kg_per_l)
    )
    return above("mass without driver and fuel kg", kerb_kg - at_least("driver kg", driver_kg) - fuel)


def running_order_kg(dry_kg: float, tank_l: float, density_kg_per_l: float) -> float:
    """Mass in running order: with driver and a tank nine tenths full. Result in kg.

    Equation: ``dry_kg + 75 + 0.9 * tank_l * density_kg_per_l``.
    Valid for: ``dry_kg`` with all standard equipment; liquids of the living space are added at their travel fill.
    Source: Regulation (EU) 1230/2012 Art. 2(4)(a): driver of 75 kg, fuel at least 90 %.
    Confidence: verified.

    Raises:
        OutsideValidity: when there is no mass or a number is negative.

    >>> running_order_kg(1900, 100, 0.8)
    2047.0
    """
    fuel = RUNNING_ORDER_FUEL_SHARE * at_least("tank L", tank_l) * at_least("density kg/L", density_kg_per_l)
    return above("mass without driver and fuel kg", dry_kg) + DRIVER_KG + fuel


def pay_mass_kg(plate_kg: float, running_order_kg: float, options_kg: float, seats: int) -> float:
    """What is left for luggage with somebody in every belted seat. Result in kg; negative when people are too much.

    Equation: ``plate_kg - running_order_kg - options_kg - 75 * (seats - 1)``; the driver is in running order already
        and ``options_kg`` is everything built in since.
    Valid for: 1 to 9 belted seats, the driver's among them; berths do not count.
    Source: Regulation (EU) 1230/2012 Annex I, as makers' weight pages quote it.
    Confidence: verified second hand.

    Raises:
        OutsideValidity: when there is no plate or no running order, or the seats are no car's.

    >>> pay_mass_kg(3100, 2610, 140, 4)
    125.0
    """
    left = above("plate kg", plate_kg) - above("running order kg", running_order_kg) - options_kg
    return left - DRIVER_KG * (_seats(seats) - 1)


def least_pay_mass_kg(seats: int, length_m: float) -> float:
    """The luggage that a motor caravan must leave room for. Result in kg.

    Equation: ``10 * (seats + length_m)``; driver's seat included, overall length in metres, not rounded.
    Valid for: 1 to 9 belted seats and 2 to 12 m. A law for new vehicles, good practice for a registered van. Towed
        caravans have another formula.
    Source: Regulation (EU) 1230/2012 Annex I Part A 2.6.4.1.2; the same in Regulation (EU) 2021/535 Annex XIII.
    Confidence: verified second hand.

    Raises:
        OutsideValidity: when seats or length are no motor caravan's.

    >>> least_pay_mass_kg(4, 7)
    110.0
    """
    return 10.0 * (_seats(seats) + _length(length_m))


def passengers_allowed(
    plate_kg: float, running_order_kg: float, options_kg: float, length_m: float, belted_seats: int
) -> int:
    """How many may travel beside the driver with the least luggage of everybody aboard. Result in persons.

    Equation: ``floor((plate_kg - running_order_kg - options_kg - 10 - 10 * length_m) / 85)``, not more than the belted
        seats but the driver's, nor than 8.
    Valid for: a van that carries its driver with the least luggage; 2 to 12 m, 1 to 9 belted seats.
    Source: solved from the pay-mass and its minimum: 75 kg and 10 kg of luggage for each passenger.
    Confidence: known.

    Raises:
        OutsideValidity: when the driver alone is too much, or a number is no motor caravan's.

    >>> passengers_allowed(3500, 2890, 150, 5.99, 7)
    4
    """
    alone = pay_mass_kg(plate_kg, running_order_kg, options_kg, 1)
    over = at_least("pay-mass with the driver alone kg", round(alone, 6), round(least_pay_mass_kg(1, length_m), 6))
    by_mass = floor(round((over - 10 - 10 * length_m) / 85, 9))
    return min(by_mass, _seats(belted_seats) - 1, 8)


def unladen_kg(running_order_kg: float, fuel_kg: float, loads_kg: float, traction_battery_kg: float = 0) -> float:
    """Unladen weight in the sense of British road law. Result in kg.

    Equation: ``running_order_kg - 75 - fuel_kg - loads_kg - traction_battery_kg``; ``loads_kg`` is water, gas and loose
        equipment in the running order. Leisure batteries stay in, the battery that drives the van goes out.
    Valid for: a finished van; whether water of the living space is out is practice, so weigh near the line.
    Source: Road Traffic Regulation Act 1984 and Road Traffic Act 1988 s.190(2): without water, fuel or accumulators
        used for propulsion, loose tools and loose equipment.
    Confidence: verified text; the reading of battery and water is an estimate and must be checked with the authority.

    Raises:
        OutsideValidity: when a number is negative or nothing is left.

    >>> unladen_kg(3000, 65, 40)
    2820.0
    """
    out = (
        at_least("fuel kg", fuel_kg)
        + at_least("loads kg", loads_kg)
        + at_least("traction battery kg", traction_battery_kg)
    )
    return above("unladen weight kg", running_order_kg - DRIVER_KG - out)


def speed_limits_mph(unladen_kg: float) -> tuple[int, int, int]:
    """Speed limits of a motor caravan on motorway, dual carriageway and other roads. Result in mph.

    Equation: ``(70, 70, 60)`` up to 3,050 kg unladen, ``(70, 60, 50)`` above; exactly 3,050 kg is not above.
    Valid for: Great Britain, not more than 8 passengers, no trailer, a van that really is a motor caravan.
    Source: Road Traffic Regulation Act 1984 Sch. 6 Parts I and IV; the test is unladen weight, not the plate.
    Confidence: verified; signs and current law go first.

    Raises:
        OutsideValidity: when there is no mass.

    >>> speed_limits_mph(3050)
    (70, 70, 60)
    """
    return (70, 60, 50) if above("unladen weight kg", unladen_kg) > UNLADEN_LINE_KG else (70, 70, 60)


def board_kg(area_m2: float, thickness_mm: float, density_kg_per_m3: float) -> float:
    """Mass of boards cut from one sheet material. Result in kg.

    Equation: ``area_m2 * thickness_mm / 1000 * density_kg_per_m3``.
    Valid for: solid boards, 0 to 100 mm; densities of 50 to 1,500 kg/m3; edging, glue and fittings come on top.
    Source: plywood density pages: poplar about 520, birch about 675 kg/m3.
    Confidence: verified densities; a board differs by some per cent, so weigh one sheet.

    Raises:
        OutsideValidity: when area, thickness or density is no board's.

    >>> board_kg(10, 20, 600)
    120.0
    """
    sheet = within("thickness mm", thickness_mm, 0, 100) * within("density kg/m3", density_kg_per_m3, 50, 1500) / 1000
    return at_least("area m2", area_m2) * sheet


def tyre_pair_room_kg(load_index: int, axle_limit_kg: float) -> float:
    """What two single tyres carry more than their axle may. Result in kg; negative when the tyres are too weak.

    Equation: ``2 * load of the index - axle_limit_kg``.
    Valid for: load indices 80 to 124, single tyres, at the pressure of the tyre maker's table.
    Source: tyre load index table; the pair must carry the plated axle.
    Confidence: known; the index on the tyre, its maker's table and the van's papers go first.

    Raises:
        OutsideValidity: when the index is not in the table or the axle has no limit.

    >>> tyre_pair_room_kg(109, 2000)
    60.0
    """
    if load_index not in TYRE_KG:
        raise OutsideValidity("load index", load_index, "a whole number from 80 to 124")
    limit = above("axle limit kg", axle_limit_kg)
    if not isfinite(limit):
        raise OutsideValidity("axle limit kg", limit, "a limit")
    return 2.0 * TYRE_KG[load_index] - limit


def rack_allowance_kg(feet: int, per_foot_kg: float, roof_kg: float) -> float:
    """What a carrier on the roof may weigh with everything on it. Result in kg.

    Equation: ``min(feet * per_foot_kg, roof_kg)``; ``roof_kg`` is what the roof under it may carry while driving.
    Valid for: 2 to 12 feet that share the load evenly; carrier, panels and boxes all count.
    Source: body guideline of a van maker: 25 kg a foot; a motor-caravan magazine: about 50 kg on a closed lifting roof.
    Confidence: verified for one family of vans each; the van's and the kit's own papers go first.

    Raises:
        OutsideValidity: when there are no feet or a figure is negative.

    >>> rack_allowance_kg(4, 25, 120), rack_allowance_kg(4, 25, 50)
    (100, 50)
    """
    feet_kg = within("feet", feet, 2, 12) * at_least("per foot kg", per_foot_kg)
    return min(feet_kg, at_least("roof load kg", roof_kg))
