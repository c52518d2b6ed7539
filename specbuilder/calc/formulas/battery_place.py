"""Where a battery stands: air for lead, and a hold for a crash. What a short circuit may draw stands with the fuses."""

from __future__ import annotations

from .validity import above, at_least, within

STANDARD_GRAVITY_M_PER_S2 = 9.81
"""As the rules for fixings count it."""


def gas_flow_m3_per_h(cells: float, gas_a_per_100ah: float, capacity_ah: float) -> float:
    """Air a lead battery needs while it charges. Result in m3/h.

    Equation: ``0.05 * cells * gas_a_per_100ah * capacity_ah / 100``.
    Valid for: one cell or more (6 at 12 V); 1 A sealed and 2 A vented with limited charge, 1.5 and 6 A without a limit.
    Source: EN 50272-3 as reproduced.
    Confidence: verified; check against the bought standard.

    Raises:
        OutsideValidity: no cell, no capacity, gas outside 0 to 10 A.

    >>> round(gas_flow_m3_per_h(6, 1, 200), 3)
    0.6
    """
    gas_a = within("gas A for each 100 Ah", gas_a_per_100ah, 0, 10) * above("capacity Ah", capacity_ah) / 100
    return 0.05 * at_least("cells", cells, 1) * gas_a


def vent_cm2(flow_m3_per_h: float) -> float:
    """Free area of each of the two openings of a battery box, one for air in and one out. Result in cm2.

    Equation: ``28 * flow_m3_per_h``.
    Valid for: natural air from low to high; a flow of 0 or more.
    Source: EN 50272-3 as reproduced.
    Confidence: verified; check against the bought standard.

    Raises:
        OutsideValidity: a flow below 0.

    >>> round(vent_cm2(0.6), 1)
    16.8
    """
    return 28 * at_least("air m3/h", flow_m3_per_h)


def fixing_n(mass_kg: float, times_weight: float) -> float:
    """Force the fixing of a battery must hold in a crash. Result in N.

    Equation: ``mass_kg * times_weight * 9.81``: 20 times its weight along the van, 8 times across.
    Valid for: a mass above 0, 1 to 50 times its weight.
    Source: gas-tank fixings of M1 and N1 under UN R67 in a national rule; a design target for batteries, no duty.
    Confidence: verified second hand; estimate as a target.

    Raises:
        OutsideValidity: no mass, times outside the range.

    >>> round(fixing_n(22, 20)), round(fixing_n(22, 8))
    (4316, 1727)
    """
    return above("mass kg", mass_kg) * within("times its weight", times_weight, 1, 50) * STANDARD_GRAVITY_M_PER_S2
