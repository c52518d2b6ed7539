"""Filling a battery and what it may not be asked: amps in, hours to full, volts of cold panels, cold cells."""

from __future__ import annotations

from .validity import above, at_least, within

LITHIUM_CHARGE_C = (0.0, 60.0)
"""Warmth of the cell between which lithium may be charged."""


def engine_input_a(charge_a: float, charge_v: float, van_v: float, efficiency: float) -> float:
    """Current a DC-to-DC charger takes from the van while it charges. Result in A.

    Equation: ``charge_a * charge_v / (efficiency * van_v)``; its fuse and cable follow this, not what it gives.
    Valid for: volts above 0, an efficiency above 0 up to 1 (0.9).
    Source: converter arithmetic.
    Confidence: known; the charger's manual goes first.

    Raises:
        OutsideValidity: amps below 0, no voltage, an efficiency that is none.

    >>> round(engine_input_a(30, 14.4, 12.5, 0.9), 1)
    38.4
    """
    out_w = at_least("charging amps A", charge_a) * above("charging volts V", charge_v)
    share = above("efficiency", within("efficiency", efficiency, 0, 1))
    return out_w / (share * above("volts of the van V", van_v))


def engine_input_limit_a(alternator_a: float, alternator_share: float) -> float:
    """Most current that may be taken from the van's own charging. Result in A.

    Equation: ``alternator_share * alternator_a``.
    Valid for: a share from 0 to 1: a third where the engine idles for it, half else.
    Source: workshop practice; the van maker's body-builder manual goes first.
    Confidence: estimate.

    Raises:
        OutsideValidity: no alternator, a share outside 0 to 1.

    >>> engine_input_limit_a(180, 0.5)
    90.0
    """
    return within("share of the alternator", alternator_share, 0, 1) * above("alternator amps A", alternator_a)


def charge_limit_a(capacity_ah: float, amps_per_ah: float) -> float:
    """Most amps a battery should be charged with. Result in A.

    Equation: ``capacity_ah * amps_per_ah``: 0.5 lithium, 0.25 lead.
    Valid for: a capacity of 0 Ah or more, a rate from 0 to 2.
    Source: article on charging rates: lead 10 to 30 % of the amp-hours, lithium 20 to 50 A for each 100 Ah.
    Confidence: verified; the battery's data sheet goes first.

    Raises:
        OutsideValidity: a capacity below 0, a rate outside the range.

    >>> charge_limit_a(200, 0.5)
    100.0
    """
    return at_least("capacity Ah", capacity_ah) * within("amps for each Ah", amps_per_ah, 0, 2)


def recharge_lithium_h(capacity_ah: float, share: float, charge_a: float, load_a: float = 0) -> float:
    """Time to fill a lithium battery. Result in hours.

    Equation: ``capacity_ah * share / ((charge_a - load_a) * 0.99) + 0.5``: amp-hours over net amps and charge
    efficiency, half an hour at the end; ``share`` is how much of the label is to be filled.
    Valid for: a share from 0 to 1, more charging than load; not below 0 degrees C.
    Source: charge efficiency of lithium; ordinary trade practice.
    Confidence: known.

    Raises:
        OutsideValidity: no capacity, a share outside 0 to 1, a load as large as the charging.

    >>> round(recharge_lithium_h(200, 0.9, 30), 2), round(recharge_lithium_h(200, 0.9, 30, 4), 2)
    (6.56, 7.49)
    """
    return _bulk_h(capacity_ah, share, charge_a, load_a, 0.99) + 0.5


def recharge_lead_h(
    capacity_ah: float, share_to_80: float, charge_a: float, load_a: float = 0, absorption_h: float = 4
) -> float:
    """Time to fill a lead battery. Result in hours.

    Equation: ``capacity_ah * share_to_80 / ((charge_a - load_a) * 0.85) + absorption_h``: up to 80 % amps decide,
    the rest takes 3 to 5 hours that more amps cannot shorten.
    Valid for: a share from 0 to 0.8, more charging than load, absorption from 3 to 5 hours.
    Source: lead-acid page for the charge efficiency; ordinary trade practice for the absorption.
    Confidence: known.

    Raises:
        OutsideValidity: no capacity, a share or absorption outside its range, a load as large as the charging.

    >>> round(recharge_lead_h(200, 0.3, 30), 2)
    6.35
    """
    bulk_h = _bulk_h(capacity_ah, within("share up to 80 %", share_to_80, 0, 0.8), charge_a, load_a, 0.85)
    return bulk_h + within("absorption h", absorption_h, 3, 5)


def _bulk_h(capacity_ah: float, share: float, charge_a: float, load_a: float, efficiency: float) -> float:
    missing_ah = above("capacity Ah", capacity_ah) * within("share to fill", share, 0, 1)
    net_a = above("charging beyond the load A", at_least("charging A", charge_a) - at_least("load A", load_a))
    return missing_ah / (net_a * efficiency)


def discharge_h(capacity_ah: float, current_a: float, exponent: float, rated_h: float = 20) -> float:
    """Time until a lead battery is empty at a steady current (Peukert). Result in hours.

    Equation: ``rated_h * (capacity_ah / (current_a * rated_h)) ** exponent``.
    Valid for: an exponent from 1 to 2: 1.05 to 1.15 sealed mat, 1.10 to 1.25 gel, 1.20 to 1.60 wet, 1.02 lithium;
    currents above the one it is rated at.
    Source: page on the exponent of lead batteries.
    Confidence: verified; half of a lead battery must stay in it all the same.

    Raises:
        OutsideValidity: no capacity, current or rating, an exponent outside the range.

    >>> round(discharge_h(200, 118.58, 1.1), 2)
    1.32
    """
    hours = above("hours of the rating h", rated_h)
    drawn_ah = above("current A", current_a) * hours
    return float(hours * (above("capacity Ah", capacity_ah) / drawn_ah) ** within("exponent", exponent, 1, 2))


def cold_panel_v(in_series: float, open_circuit_v: float, rise_share_per_c: float, colder_by_c: float) -> float:
    """Open voltage of panels on a cold bright morning. Result in V.

    Equation: ``in_series * open_circuit_v * (1 + rise_share_per_c * colder_by_c)``, from the label at 25 degrees C.
    Valid for: one panel or more in series, a rise of 0.001 to 0.006 a degree (0.0028 to 0.0035), 0 to 80 C colder.
    Source: panel data; 45 degrees colder is -20 degrees C, as in the Alps.
    Confidence: known; the panel's data sheet goes first.

    Raises:
        OutsideValidity: no panel, no voltage, rise or cold outside the range.

    >>> round(cold_panel_v(2, 22.5, 0.0028, 45), 1)
    50.7
    """
    rise = within("rise a degree", rise_share_per_c, 0.001, 0.006) * within("degrees colder C", colder_by_c, 0, 80)
    return at_least("panels in series", in_series, 1) * above("open volts V", open_circuit_v) * (1 + rise)


def lithium_may_charge(cell_c: float) -> bool:
    """Whether a lithium cell may be charged at this warmth, by engine, sun or plug alike. Result is yes or no.

    Equation: ``0 <= cell_c <= 60``.
    Valid for: cells from -50 to 100 degrees C; at ease from 5 to 45.
    Source: data page of a lithium cell: charging in frost plates metal and ruins the cell for good.
    Confidence: verified; the battery's data sheet goes first.

    Raises:
        OutsideValidity: a temperature outside the range.

    >>> lithium_may_charge(-0.1), lithium_may_charge(0)
    (False, True)
    """
    least_c, most_c = LITHIUM_CHARGE_C
    return least_c <= within("cell temperature C", cell_c, -50, 100) <= most_c
