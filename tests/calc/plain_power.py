"""The sums of power once more, as plainly as they are said: one finished build in, value and bound out.

It shares nothing with the program but the records and the figures of the tables, written down again.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from math import inf

from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Option
from specbuilder.model.vans import Van

SUN_H = {
    "uk": {"summer": 4.80, "three-season": 2.76, "winter": 0.504},
    "south": {"summer": 7.92, "three-season": 5.37, "winter": 2.18},
}
INSIDE_C = {"summer": 20, "three-season": 15, "winter": 10}
TAGS = {word: word for word in ("kettle", "microwave", "hair-dryer", "induction", "e-bike", "laptop")}
Pieces = Sequence[tuple[Option, int]]
Brief = Mapping[str, Answer]
Pair = tuple[float | None, float | None]


def _one(pieces: Pieces, column: str) -> Option | None:
    return next((o for o, _ in pieces if getattr(o.power, column) is not None), None)


def _total(pieces: Pieces, column: str) -> float:
    return sum((getattr(o.power, column) or 0) * n for o, n in pieces)


def day_wh(pieces: Pieces, season: str) -> float:
    if season == "three-season":
        return (day_wh(pieces, "summer") + day_wh(pieces, "winter")) / 2
    maker, wh = _one(pieces, "inverter_w"), 33.0 + 48.0
    if maker is not None:
        wh += 3 * (maker.power.inverter_idle_w or 0)
    for option, count in pieces:
        power = option.power
        watts = power.watts_running or 0
        hours = getattr(power, f"hours_{season}") or 0
        duty = getattr(power, f"duty_{season}")
        used = count * watts * hours * (1 if duty is None else duty)
        if power.bus == "dc":
            wh += used + count * getattr(power, f"starts_{season}") * power.start_wh
        if power.bus == "shared" and maker is not None and watts <= (maker.power.inverter_w or 0):
            wh += used / (maker.power.inverter_efficiency or 1)
    return wh


def nights(van: Van, pieces: Pieces, brief: Brief) -> Pair:
    battery, season = _one(pieces, "battery_ah"), str(brief["season"])
    if battery is None:
        return None, None
    power = battery.power
    lead = power.chemistry != "LFP"
    outside = any("battery-outside" in o.gives for o, _ in pieces)
    cold = 1 - 0.01 * (25 - INSIDE_C[season]) if lead else 0.8 if outside and season == "winter" else 1
    usable = (power.battery_ah or 0) * (power.battery_v or 0) * (power.depth_of_discharge or 0) * 0.9 * cold
    sun = _total(pieces, "solar_w") * SUN_H[str(brief["region"])][season] * 0.7
    engine = _total(pieces, "engine_charge_a") * 13.6 * _number(brief, "drive_h_per_day")
    net = day_wh(pieces, season) - (0.75 if lead else 0.95) * (sun + engine)
    return usable / net if net > 0 else inf, _number(brief, "nights_off_grid")


def _number(brief: Brief, key: str) -> float:
    value = brief[key]
    assert isinstance(value, int | float)
    return value


def _amps(pieces: Pieces, volts: float) -> float | None:
    maker = _one(pieces, "inverter_w")
    if maker is None:
        return None
    return (maker.power.inverter_w or 0) / volts / (maker.power.inverter_efficiency or 1)


def battery_current(van: Van, pieces: Pieces, brief: Brief) -> Pair:
    battery = _one(pieces, "battery_ah")
    packs = (battery.power.packs_parallel or 0) if battery else 0
    limit = packs * (battery.power.bms_continuous_a or 0) * (0.9 if packs > 1 else 1) if battery else 0
    return _amps(pieces, 12), limit


def lead_draw(van: Van, pieces: Pieces, brief: Brief) -> Pair:
    battery = _one(pieces, "battery_ah")
    lead = battery is not None and battery.power.chemistry == "AGM"
    return (_amps(pieces, 11.5), 0.25 * (battery.power.battery_ah or 0)) if battery and lead else (None, None)


def largest_load(van: Van, pieces: Pieces, brief: Brief) -> Pair:
    named = brief["must_run"]
    assert isinstance(named, tuple)
    wanted = {TAGS.get(str(word), "medical-device") for word in named if word != "none"}
    asked = [o.power.watts_running or 0 for o, _ in pieces if wanted & set(o.gives)]
    maker = _one(pieces, "inverter_w")
    return (max(asked), maker.power.inverter_w) if asked and maker else (None, None)


def charge_rate(van: Van, pieces: Pieces, brief: Brief) -> Pair:
    battery = _one(pieces, "battery_ah")
    if battery is None:
        return None, None
    each = [(o.power.engine_charge_a or 0, o.power.mains_charge_a or 0) for o, _ in pieces]
    share = 0.5 if battery.power.chemistry == "LFP" else 0.25
    return max((max(pair) for pair in each), default=0), share * (battery.power.battery_ah or 0)


def solar_voltage(van: Van, pieces: Pieces, brief: Brief) -> Pair:
    panels = [(o.power.panel_voc_v or 0, n) for o, n in pieces if o.power.panel_voc_v]
    most = min((o.power.solar_controller_max_v or 0 for o, _ in pieces if o.power.solar_controller_max_v), default=None)
    if not panels:
        return None, None
    row = sum(n for _, n in panels) if most is None or most > 50 else 1  # without a controller the worse counts
    return row * max(v for v, _ in panels) * 1.126, most


def hook_up(van: Van, pieces: Pieces, brief: Brief) -> Pair:
    if not any("hook-up" in o.gives for o, _ in pieces):
        return None, None
    turns, together = [0.0], 0.0
    for option, count in pieces:
        if option.power.hookup_at_once and option.power.bus in ("hookup-only", "shared", "inverter"):
            if {"kettle", "microwave", "hair-dryer"} & set(option.gives):
                turns.append(option.power.watts_running or 0)
            else:
                together += (option.power.watts_running or 0) * count
    return together + max(turns), 230 * float(str(brief["site_amps"]))


PLAIN: Mapping[str, Callable[[Van, Pieces, Brief], Pair]] = {
    "daily-energy": lambda _van, pieces, brief: (day_wh(pieces, str(brief["season"])), None),
    "battery-nights": nights,
    "battery-current": battery_current,
    "inverter-largest-load": largest_load,
    "lead-draw": lead_draw,
    "charge-rate": charge_rate,
    "alternator-input": lambda van, pieces, _brief: (_total(pieces, "engine_input_a"), van.alternator_a / 2),
    "solar-voltage": solar_voltage,
    "hook-up-watts": hook_up,
}
