"""Energy of a day away from the plug: what is used, what the battery gives, what sun and engine bring."""

from __future__ import annotations

from math import inf

from .validity import above, at_least, within

DAY_H = 24.0
"""Hours of a day."""


def load_wh(count: float, watts_w: float, run_h: float, duty: float = 1.0) -> float:
    """Energy that so many of a 12 V thing take from the battery in a day. Result in Wh.

    Equation: ``count * watts_w * run_h * duty``; watts while it runs, hours it is switched on, share of them it runs.
    Valid for: none or more of it, 0 W or more, 0 to 24 hours, a duty from 0 to 1.
    Source: power times time; the sum is done in Wh, for amp-hours at different volts do not add.
    Confidence: known.

    Raises:
        OutsideValidity: count or watts below 0, hours or duty outside their range.

    >>> load_wh(1, 45, 24, 0.25)
    270.0
    """
    pieces, power_w = at_least("count", count), at_least("watts W", watts_w)
    return pieces * power_w * within("hours h", run_h, 0, DAY_H) * within("duty", duty, 0, 1)


def starts_wh(starts: float, start_wh: float) -> float:
    """Energy of the starts of a burner in a day. Result in Wh.

    Equation: ``starts * start_wh``.
    Valid for: none or more starts of 0 Wh or more; shutting down glows again and counts with the start.
    Source: engineering practice for fuel heaters.
    Confidence: estimate.

    Raises:
        OutsideValidity: starts or energy below 0.

    >>> round(starts_wh(4, 6.7), 1)
    26.8
    """
    return at_least("starts", starts) * at_least("energy of a start Wh", start_wh)


def glow_wh(glow_w: float, glow_min: float) -> float:
    """Energy of one start of a burner. Result in Wh.

    Equation: ``glow_w * glow_min / 60``, with the minutes it glows.
    Valid for: up to 30 minutes; cable and fuse are sized for the glow current, not for this mean.
    Source: fuel heaters glow with 100 to 120 W for 3 to 5 minutes.
    Confidence: estimate; the heater's manual goes first.

    Raises:
        OutsideValidity: watts below 0, minutes outside 0 to 30.

    >>> round(glow_wh(100, 4), 2)
    6.67
    """
    return at_least("glow watts W", glow_w) * within("minutes of glow min", glow_min, 0, 30) / 60


def inverter_load_wh(count: float, watts_w: float, run_h: float, duty: float, efficiency: float) -> float:
    """Energy that so many of a mains thing take from the battery through an inverter in a day. Result in Wh.

    Equation: ``count * watts_w * run_h * duty / efficiency``, with mains watts and the inverter's efficiency.
    Valid for: an efficiency above 0 up to 1; 0.85 to 0.92 near full load, about half at a tiny load.
    Source: articles on inverter efficiency.
    Confidence: verified.

    Raises:
        OutsideValidity: as for ``load_wh``; an efficiency that is none.

    >>> round(inverter_load_wh(1, 60, 2.5, 1, 0.88), 1)
    170.5
    """
    return load_wh(count, watts_w, run_h, duty) / above("efficiency", within("efficiency", efficiency, 0, 1))


def inverter_idle_wh(idle_w: float, on_h: float) -> float:
    """Energy an inverter takes for itself in a day. Result in Wh.

    Equation: ``idle_w * on_h``, with the hours it is switched on.
    Valid for: 0 W or more, 0 to 24 hours.
    Source: articles on inverter efficiency: about 20 W for 3 kW.
    Confidence: verified for 3 kW, estimate for smaller ones.

    Raises:
        OutsideValidity: watts below 0, hours outside 0 to 24.

    >>> inverter_idle_wh(20, 24)
    480
    """
    return at_least("idle watts W", idle_w) * within("hours h", on_h, 0, DAY_H)


def fridge_wh(running_w: float, duty: float) -> float:
    """Energy of a compressor fridge in a day. Result in Wh.

    Equation: ``running_w * 24 * duty``, with the share of the time its compressor runs.
    Valid for: a duty from 0 to 1: about 0.2 at 10 degrees around it, 0.4 at 25, 0.65 at 35; more without air.
    Source: three logs of boat fridges.
    Confidence: estimate between measured ends.

    Raises:
        OutsideValidity: watts below 0, a duty outside 0 to 1.

    >>> round(fridge_wh(45, 0.65))
    702
    """
    return load_wh(1, running_w, DAY_H, duty)


def amp_hours_ah(energy_wh: float, nominal_v: float) -> float:
    """Energy as charge of a battery. Result in Ah.

    Equation: ``energy_wh / nominal_v``.
    Valid for: a nominal voltage above 0: 12.8 V lithium, 12.0 V lead.
    Source: ordinary trade practice.
    Confidence: known.

    Raises:
        OutsideValidity: energy below 0, no voltage.

    >>> round(amp_hours_ah(997, 12.8), 1)
    77.9
    """
    return at_least("energy Wh", energy_wh) / above("nominal volts V", nominal_v)


def usable_wh(capacity_ah: float, nominal_v: float, depth_share: float, age_share: float, cold_share: float) -> float:
    """Energy a battery gives between full and as empty as it may get. Result in Wh.

    Equation: ``capacity_ah * nominal_v * depth_share * age_share * cold_share``: the label, how much of it may be
    used, what age has left, what cold leaves.
    Valid for: shares from 0 to 1: depth 0.8 to 0.9 lithium, 0.5 lead; age 1 new, 0.9 design, 0.8 end of life.
    Source: lead-acid page for the depth; 80 % is the usual end of life.
    Confidence: known; estimate for age and cold.

    Raises:
        OutsideValidity: no capacity, no voltage, a share outside 0 to 1.

    >>> round(usable_wh(200, 12.8, 0.9, 0.8, 0.8))
    1475
    """
    label_wh = above("capacity Ah", capacity_ah) * above("nominal volts V", nominal_v)
    aged = within("depth of use", depth_share, 0, 1) * within("share left by age", age_share, 0, 1)
    return label_wh * aged * within("share left by cold", cold_share, 0, 1)


def lead_cold_share(battery_c: float, full_c: float = 25, loss_share_per_c: float = 0.01) -> float:
    """Share of the label a lead battery still gives when it is cold. Result as a part of one.

    Equation: ``1 - loss_share_per_c * max(full_c - battery_c, 0)``.
    Valid for: batteries from -30 to 60 degrees C, full capacity at 0 to 40 degrees; never more than 1.
    Source: tables for stationary and flooded batteries, which disagree: 0.84 to 0.71 at 0 degrees.
    Confidence: estimate; the battery's data sheet goes first.

    Raises:
        OutsideValidity: a temperature outside the range, or so steep a loss that nothing is left.

    >>> lead_cold_share(0), lead_cold_share(30)
    (0.75, 1.0)
    """
    colder_c = max(
        within("temperature of full capacity C", full_c, 0, 40) - within("battery temperature C", battery_c, -30, 60), 0
    )
    return above("share left by cold", 1 - at_least("loss per degree", loss_share_per_c) * colder_c)


def cold_share_between(
    battery_c: float, colder_c: float, colder_share: float, warmer_c: float, warmer_share: float
) -> float:
    """Share of the label a battery still gives between two warmths of which it is known. Result as a part of one.

    Equation: ``colder_share + (warmer_share - colder_share) * (battery_c - colder_c) / (warmer_c - colder_c)``.
    Valid for: a warmth between the two, shares from 0 to 1; a straight line, since no data sheet says more.
    Source: cell data page of one maker for lithium: all of it at 10, 0.8 at 0 and 0.7 at -20 degrees C.
    Confidence: estimate between published ends; the battery's data sheet goes first.

    Raises:
        OutsideValidity: a warmth that is not between them, a share outside 0 to 1, both at one warmth.

    >>> round(cold_share_between(-5, -20, 0.7, 0, 0.8), 3)
    0.775
    """
    over_c = above("degrees between the two C", warmer_c - colder_c)
    part = (within("battery temperature C", battery_c, colder_c, warmer_c) - colder_c) / over_c
    low, high = within("share when colder", colder_share, 0, 1), within("share when warmer", warmer_share, 0, 1)
    return low + (high - low) * part


def sun_wh(panel_w: float, sun_h: float, system_share: float) -> float:
    """Energy panels bring in a day. Result in Wh.

    Equation: ``panel_w * sun_h * system_share``: watts on the label, hours of full sun on a flat panel, and the share
    that dirt, warmth, wires and controller leave.
    Valid for: 0 to 12 hours of full sun, a share from 0 to 1: 0.7 with a tracking controller, 0.55 with a simple one.
    Source: SAP 2012 table U3 for the hours; SAP 2012 appendix M takes 0.8 for a roof at home.
    Confidence: verified hours, estimated share.

    Raises:
        OutsideValidity: watts below 0, hours or share outside their range.

    >>> round(sun_wh(200, 0.504, 0.7), 1)
    70.6
    """
    hours_h = within("hours of full sun h", sun_h, 0, 12)
    return at_least("panel watts W", panel_w) * hours_h * within("system share", system_share, 0, 1)


def engine_wh(charge_a: float, charge_v: float, drive_h: float) -> float:
    """Energy the engine's charging brings in a day. Result in Wh.

    Equation: ``charge_a * charge_v * drive_h``, with the amps into the battery.
    Valid for: 0 A or more, a voltage above 0 (13.6 V lithium, mean), 0 to 24 hours of driving.
    Source: ordinary trade practice for DC-to-DC chargers.
    Confidence: known.

    Raises:
        OutsideValidity: amps below 0, no voltage, hours outside the range.

    >>> round(engine_wh(30, 13.6, 1))
    408
    """
    power_w = at_least("charging amps A", charge_a) * above("charging volts V", charge_v)
    return power_w * within("hours of driving h", drive_h, 0, DAY_H)


def autonomy_days(
    battery_wh: float, used_wh: float, store_share: float, from_sun_wh: float, from_engine_wh: float
) -> float:
    """How long a battery lasts when every day is the same. Result in days.

    Equation: ``battery_wh / (used_wh - store_share * (from_sun_wh + from_engine_wh))``: usable energy over what a
    day takes beyond what is put in; ``store_share`` is what charging and discharging leave of it.
    Valid for: 0 Wh or more of each, a store share from 0 to 1 (0.95 lithium, 0.75 lead); infinite where sun and
    engine carry the day.
    Source: energy balance of a day; efficiencies from a lead-acid page, lithium known.
    Confidence: estimate; real use varies by about a third.

    Raises:
        OutsideValidity: energy below 0, a store share outside 0 to 1.

    >>> round(autonomy_days(2073.6, 997, 0.95, 70.6, 408), 2)
    3.82
    >>> autonomy_days(1000, 500, 0.95, 600, 0)
    inf
    """
    put_in_wh = at_least("energy from the sun Wh", from_sun_wh) + at_least("energy from the engine Wh", from_engine_wh)
    usable = at_least("usable energy Wh", battery_wh)
    net_wh = at_least("energy of a day Wh", used_wh) - within("store share", store_share, 0, 1) * put_in_wh
    return usable / net_wh if net_wh > 0 else inf
