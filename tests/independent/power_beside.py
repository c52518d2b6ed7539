"""Figures told beside the sums of the electrics, and what cannot run together."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise

from tests.independent.build import Build, Part, Reading, Table
from tests.independent.power import SUN_HOURS, battery, daily_wh, day_wh, hook_up_watts, inverter

MONTHS = {  # full hours of sun a day on a flat panel, January to December
    "uk": [0.62, 1.30, 2.30, 3.60, 4.61, 4.80, 4.54, 3.77, 2.76, 1.58, 0.79, 0.50],
    "south": [2.77, 3.49, 4.49, 5.91, 6.99, 7.74, 7.92, 7.03, 5.37, 3.56, 2.81, 2.18],
}
LITHIUM_LEFT = [(-20, 0.7), (0, 0.8), (10, 1.0)]  # degrees, share of the label
INSIDE = {"summer": 20, "three-season": 15, "winter": 10}


def is_lead(b: Build) -> bool:
    return "lead" in b.tags


def label_wh(cell: Table) -> float:
    return float(cell["battery_ah"] * cell["battery_v"] * cell["depth_of_discharge"])


def left_by_season(b: Build) -> float:
    season = b.brief["season"]
    if is_lead(b):
        return 1 - 0.010 * (25 - INSIDE[season])
    return 0.8 if season == "winter" and "battery-outside" in b.tags else 1.0


def left_by_cold(b: Build) -> float:
    """The battery as cold as the night outside: lead a hundredth a degree, lithium along its line."""
    cold = b.brief["design_temp_c"]
    if is_lead(b):
        return 1 - 0.010 * max(25 - cold, 0)
    if cold >= LITHIUM_LEFT[-1][0]:
        return 1.0
    for (low, small), (high, large) in pairwise(LITHIUM_LEFT):
        if low <= cold <= high:
            return small + (large - small) * (cold - low) / (high - low)
    raise ValueError(f"nothing is known of lithium at {cold} degrees")


def usable(b: Build, age: float, left: float) -> Reading:
    cell = battery(b)
    return (label_wh(cell) * age * left, None) if cell else (None, None)


def nights_without_sun(b: Build) -> Reading:
    wh, _ = usable(b, 0.9, left_by_season(b))
    return (wh / daily_wh(b), None) if wh is not None else (None, None)


def sun(b: Build, hours: float) -> Reading:
    watts = b.all("power", "solar_w")
    return (watts * hours * 0.70, None) if watts else (None, None)


def road(b: Build) -> Reading:
    amps = b.all("power", "engine_charge_a")
    return (amps * 13.6 * b.brief["drive_h_per_day"], None) if amps else (None, None)


def day_balance(b: Build) -> Reading:
    if battery(b) is None:
        return None, None
    brought = b.all("power", "solar_w") * SUN_HOURS[b.brief["region"]][b.brief["season"]] * 0.70
    brought += b.all("power", "engine_charge_a") * 13.6 * b.brief["drive_h_per_day"]
    return (0.75 if is_lead(b) else 0.95) * brought - daily_wh(b), None


def left_on(b: Build) -> Reading:
    source = inverter(b)
    return (source["inverter_idle_w"] * 24, None) if source else (None, None)


def hours_to_full(b: Build, amps: float) -> Reading:
    """From as empty as it may get; the mean of the day is drawn meanwhile, no more goes in than it takes."""
    cell = battery(b)
    if cell is None or not amps:
        return None, None
    ah, depth = cell["battery_ah"], cell["depth_of_discharge"]
    # OPEN: what runs meanwhile is not said; here it is the mean of the day in the season of the brief.
    amps = min(amps, ah * (0.25 if is_lead(b) else 0.5)) - daily_wh(b) / cell["battery_v"] / 24
    if amps <= 0:
        return math.inf, None
    if is_lead(b):  # bulk to four fifths, then absorption that no charger shortens
        return ah * max(depth - 0.2, 0) / (amps * 0.85) + 4, None
    return ah * depth / (amps * 0.99) + 0.5, None


def plug_amps(b: Build) -> float:
    """A charger that hangs on the inverter fills the battery from itself and brings nothing."""
    if "hook-up" not in b.tags:
        return 0.0
    fed = [part for part in b.parts if "charger-on-inverter" not in part.option.get("gives", [])]
    return sum(part.one("power", "mains_charge_a") * part.count for part in fed)


def carries(b: Build, share: float) -> Reading:
    cell, source = battery(b), inverter(b)
    if cell is None or source is None:
        return None, None
    amps = cell["bms_continuous_a"] * cell["packs_parallel"] * (0.9 if cell["packs_parallel"] > 1 else 1)
    return share * amps * (11.5 if is_lead(b) else 12.0) * source["inverter_efficiency"], None


def by_turns(part: Part) -> bool:
    return bool({"kettle", "microwave", "hair-dryer"} & set(part.option.get("gives", [])))


def start(b: Build) -> Reading:
    """Each thing the inverter carries starts beside all that runs with it; the largest of these counts."""
    source = inverter(b)
    if source is None:
        return None, None
    parts = [
        part
        for part in b.parts
        if part.option.get("power", {}).get("bus") == "shared" and part.option["power"].get("ac_role") != "charger"
        if part.one("power", "watts_running") <= source["inverter_w"]
    ]
    always = sum(part.one("power", "watts_running") * part.count for part in parts if not by_turns(part))
    found = []
    for part in parts:
        running = part.one("power", "watts_running")
        peak = max(part.one("power", "watts_peak"), running)
        found.append(peak + always - (0 if by_turns(part) else running))
    return (max(found), source["inverter_surge_w"]) if found else (None, None)


def left_on_pitch(b: Build, amps: int) -> Reading:
    drawn, _ = hook_up_watts(b)
    return (230.0 * amps - drawn, None) if "hook-up" in b.tags and drawn is not None else (None, None)


def sun_of(b: Build, season: str) -> Reading:
    return sun(b, SUN_HOURS[b.brief["region"]][season])


SUMS: dict[str, Callable[[Build], Reading]] = {
    "summer-energy": lambda b: (day_wh(b, "summer"), None),
    "winter-energy": lambda b: (day_wh(b, "winter"), None),
    "day-balance": day_balance,
    "inverter-left-on": left_on,
    "usable-new": lambda b: usable(b, 1.0, left_by_season(b)),
    "usable-aged": lambda b: usable(b, 0.9, left_by_season(b)),
    "usable-worn": lambda b: usable(b, 0.8, left_by_season(b)),
    "usable-in-cold": lambda b: usable(b, 0.9, left_by_cold(b)),
    "sun-summer": lambda b: sun_of(b, "summer"),
    "sun-three-season": lambda b: sun_of(b, "three-season"),
    "sun-winter": lambda b: sun_of(b, "winter"),
    "sun-best-month": lambda b: sun(b, max(MONTHS[b.brief["region"]])),
    "sun-worst-month": lambda b: sun(b, min(MONTHS[b.brief["region"]])),
    "road-charge": road,
    "nights-without-sun": nights_without_sun,
    "refill-road": lambda b: hours_to_full(b, b.all("power", "engine_charge_a")),
    "refill-plug": lambda b: hours_to_full(b, plug_amps(b)),
    "mains-for-good": lambda b: carries(b, 1.0),
    "mains-in-hand": lambda b: carries(b, 0.8),
    "inverter-start": start,
    "left-on-weak-pitch": lambda b: left_on_pitch(b, 6),
    "left-on-usual-pitch": lambda b: left_on_pitch(b, 10),
    "left-on-strong-pitch": lambda b: left_on_pitch(b, 16),
}


def cannot_run_together(b: Build) -> list[tuple[str, float, dict[frozenset[tuple[str, int]], float]]]:
    """Feed, what it gives, and the smallest sets with their watts; all sets are tried."""
    found = []
    source = inverter(b)
    if source is not None:
        carried, _ = carries(b, 1.0)
        given = min(source["inverter_w"], carried or 0.0)
        feed = "battery" if (carried or 0.0) < source["inverter_w"] else "inverter"
        found.append((feed, given, smallest_sets(pieces(b, is_shared), given)))
    if "hook-up" in b.tags:
        given = 230.0 * int(b.brief["site_amps"])
        found.append(("pitch", given, smallest_sets(pieces(b, is_mains), given)))
    return found


def is_shared(power: Table) -> bool:
    return bool(power["bus"] == "shared" and "ac_role" not in power)


def is_mains(power: Table) -> bool:
    return power["bus"] in ("shared", "hookup-only") or (power["bus"] == "inverter" and "ac_role" in power)


def pieces(b: Build, is_one: Callable[[Table], bool]) -> list[tuple[str, float]]:
    return [
        (part.id, part.option["power"]["watts_running"])
        for part in b.parts
        if is_one(part.option.get("power") or {"bus": ""})
        for _ in range(part.count)
    ]


def smallest_sets(things: list[tuple[str, float]], limit: float) -> dict[frozenset[tuple[str, int]], float]:
    over = []
    for mask in range(1, 1 << len(things)):
        chosen = [thing for at, thing in enumerate(things) if mask >> at & 1]
        watts = sum(w for _, w in chosen)
        if watts > limit and all(watts - w <= limit for _, w in chosen):
            over.append((chosen, watts))
    return {
        frozenset((name, sum(1 for n, _ in chosen if n == name)) for name, _ in chosen): watts for chosen, watts in over
    }
