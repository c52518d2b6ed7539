"""What is told beside the sums of power once more, as plainly as it is said: one finished build in, one number out."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import inf

from specbuilder.model.catalogue import Option
from specbuilder.model.vans import Van
from tests.calc.plain_power import INSIDE_C, SUN_H, Brief, Pieces, _number, _one, _total, day_wh, hook_up

UK = (0.62, 1.30, 2.30, 3.60, 4.61, 4.80, 4.54, 3.77, 2.76, 1.58, 0.79, 0.50)
SOUTH = (2.77, 3.49, 4.49, 5.91, 6.99, 7.74, 7.92, 7.03, 5.37, 3.56, 2.81, 2.18)
MONTHS_H = {"uk": UK, "south": SOUTH}
BY_TURNS = {"kettle", "microwave", "hair-dryer"}
Value = float | None


def _lead(battery: Option) -> bool:
    return battery.power.chemistry != "LFP"


def _season_share(battery: Option, pieces: Pieces, season: str) -> float:
    if _lead(battery):
        return 1 - 0.01 * (25 - INSIDE_C[season])
    return 0.8 if season == "winter" and any("battery-outside" in o.gives for o, _ in pieces) else 1


def _cold_share(battery: Option, cold_c: float) -> float:
    if _lead(battery):
        return 1 - 0.01 * max(25 - cold_c, 0)
    if cold_c >= 10:
        return 1
    return 0.8 + 0.02 * cold_c if cold_c >= 0 else 0.8 + 0.005 * cold_c


def _usable(age: float, cold: Callable[[Option, Pieces, Brief], float]) -> Callable[[Van, Pieces, Brief], Value]:
    def wh(_van: Van, pieces: Pieces, brief: Brief) -> Value:
        battery = _one(pieces, "battery_ah")
        if battery is None:
            return None
        power = battery.power
        label = (power.battery_ah or 0) * (power.battery_v or 0) * (power.depth_of_discharge or 0)
        return label * age * cold(battery, pieces, brief)

    return wh


def _by_season(battery: Option, pieces: Pieces, brief: Brief) -> float:
    return _season_share(battery, pieces, str(brief["season"]))


def _by_night(battery: Option, _pieces: Pieces, brief: Brief) -> float:
    return _cold_share(battery, _number(brief, "design_temp_c"))


def _balance(_van: Van, pieces: Pieces, brief: Brief) -> Value:
    battery, season = _one(pieces, "battery_ah"), str(brief["season"])
    if battery is None:
        return None
    sun = _total(pieces, "solar_w") * SUN_H[str(brief["region"])][season] * 0.7
    engine = _total(pieces, "engine_charge_a") * 13.6 * _number(brief, "drive_h_per_day")
    return (0.75 if _lead(battery) else 0.95) * (sun + engine) - day_wh(pieces, season)


def _left_on(_van: Van, pieces: Pieces, _brief: Brief) -> Value:
    maker = _one(pieces, "inverter_w")
    return 24 * (maker.power.inverter_idle_w or 0) if maker else None


def _without_sun(van: Van, pieces: Pieces, brief: Brief) -> Value:
    usable = _usable(0.9, _by_season)(van, pieces, brief)
    return None if usable is None else usable / day_wh(pieces, str(brief["season"]))


def _sun(hours: Callable[[Brief], float]) -> Callable[[Van, Pieces, Brief], Value]:
    def wh(_van: Van, pieces: Pieces, brief: Brief) -> Value:
        watts = _total(pieces, "solar_w")
        return watts * hours(brief) * 0.7 if watts else None

    return wh


def _road(_van: Van, pieces: Pieces, brief: Brief) -> Value:
    return _total(pieces, "engine_charge_a") * 13.6 * _number(brief, "drive_h_per_day")


def _hours(battery: Option, amps: float, wh: float) -> float:
    power = battery.power
    capacity, depth = power.battery_ah or 0, power.depth_of_discharge or 0
    net = min(amps, capacity * (0.25 if _lead(battery) else 0.5)) - wh / (power.battery_v or 1) / 24
    if net <= 0:
        return inf
    if _lead(battery):
        return capacity * max(depth - 0.2, 0) / (net * 0.85) + 4
    return capacity * depth / (net * 0.99) + 0.5


def _refill(amps: Callable[[Pieces], float]) -> Callable[[Van, Pieces, Brief], Value]:
    def hours(_van: Van, pieces: Pieces, brief: Brief) -> Value:
        battery, given = _one(pieces, "battery_ah"), amps(pieces)
        return _hours(battery, given, day_wh(pieces, str(brief["season"]))) if battery and given else None

    return hours


def _plug_a(pieces: Pieces) -> float:
    if not any("hook-up" in o.gives for o, _ in pieces):
        return 0.0
    return _total([(o, n) for o, n in pieces if "charger-on-inverter" not in o.gives], "mains_charge_a")


def _carries(share: float) -> Callable[[Van, Pieces, Brief], Value]:
    def watts(_van: Van, pieces: Pieces, _brief: Brief) -> Value:
        battery, maker = _one(pieces, "battery_ah"), _one(pieces, "inverter_w")
        if battery is None or maker is None:
            return None
        packs = battery.power.packs_parallel or 0
        amps = packs * (battery.power.bms_continuous_a or 0) * (0.9 if packs > 1 else 1)
        return share * amps * (11.5 if _lead(battery) else 12) * (maker.power.inverter_efficiency or 0)

    return watts


def _start(_van: Van, pieces: Pieces, _brief: Brief) -> Value:
    maker = _one(pieces, "inverter_w")
    if maker is None:
        return None
    each = [
        o
        for o, n in pieces
        for _ in range(n)
        if o.power.bus == "shared" and o.power.ac_role != "charger"
        if (o.power.watts_running or 0) <= (maker.power.inverter_w or 0)
    ]
    found = [0.0]
    for at, option in enumerate(each):
        rest = [o for n, o in enumerate(each) if n != at and not BY_TURNS & set(o.gives)]
        peak = option.power.watts_peak or option.power.watts_running or 0
        found.append(peak + sum(o.power.watts_running or 0 for o in rest))
    return max(found) or None


def _left(amps: float) -> Callable[[Van, Pieces, Brief], Value]:
    def watts(van: Van, pieces: Pieces, brief: Brief) -> Value:
        drawn, _ = hook_up(van, pieces, brief)
        return None if drawn is None else 230 * amps - drawn

    return watts


PLAIN_BESIDE: Mapping[str, Callable[[Van, Pieces, Brief], Value]] = {
    "summer-energy": lambda _van, pieces, _brief: day_wh(pieces, "summer"),
    "winter-energy": lambda _van, pieces, _brief: day_wh(pieces, "winter"),
    "day-balance": _balance,
    "inverter-left-on": _left_on,
    "usable-new": _usable(1, _by_season),
    "usable-aged": _usable(0.9, _by_season),
    "usable-worn": _usable(0.8, _by_season),
    "usable-in-cold": _usable(0.9, _by_night),
    "nights-without-sun": _without_sun,
    "sun-summer": _sun(lambda brief: SUN_H[str(brief["region"])]["summer"]),
    "sun-three-season": _sun(lambda brief: SUN_H[str(brief["region"])]["three-season"]),
    "sun-winter": _sun(lambda brief: SUN_H[str(brief["region"])]["winter"]),
    "sun-best-month": _sun(lambda brief: max(MONTHS_H[str(brief["region"])])),
    "sun-worst-month": _sun(lambda brief: min(MONTHS_H[str(brief["region"])])),
    "road-charge": _road,
    "refill-road": _refill(lambda pieces: _total(pieces, "engine_charge_a")),
    "refill-plug": _refill(_plug_a),
    "mains-for-good": _carries(1),
    "mains-in-hand": _carries(0.8),
    "inverter-start": _start,
    "left-on-weak-pitch": _left(6),
    "left-on-usual-pitch": _left(10),
    "left-on-strong-pitch": _left(16),
}
