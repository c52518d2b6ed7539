"""What is told beside gas, fresh air, damp, water and the fridge. OPEN marks where the words leave a choice."""

from __future__ import annotations

import math
from collections.abc import Callable

from tests.independent.build import Build, Reading
from tests.independent.living import vents
from tests.independent.loads import travellers


def gas_a_day_kg(b: Build) -> float:
    """OPEN: nobody says which gas is bought, so the one with the least in a kilogram: butane, 13.74 kWh gross."""
    hobs = [p for p in b.having("heat", "gas_kw_gross") if p.option["heat"].get("cooker_fuel") == "gas"]
    return sum(p.one("heat", "gas_kw_gross") * p.count for p in hobs) * 0.4 / 13.74


def gas_cooking(b: Build) -> Reading:
    day_kg = gas_a_day_kg(b)
    return (0.95 * b.all("heat", "gas_kg") / day_kg if day_kg else None), None


def gas_nights(b: Build) -> Reading:
    if not any(p.option.get("heat", {}).get("heater_fuel") == "gas" for p in b.parts):
        return None, None
    return 0.95 * b.all("heat", "gas_kg") / (0.9 * 9 / 0.9 / 12.69 + gas_a_day_kg(b)), None


def store_vent(b: Build) -> Reading:
    """OPEN: with two stores each is asked for what the larger floor asks."""
    stores, floors = b.having("heat", "gas_locker_vent_mm2"), b.having("heat", "gas_locker_floor_mm2")
    if not floors:
        return None, None
    floor = max(p.one("heat", "gas_locker_floor_mm2") for p in floors)
    needed = max(1, sum(p.count for p in stores)) * max(0.02 * floor, 10_000)
    return b.all("heat", "gas_locker_vent_mm2"), needed


def store_duct(b: Build) -> Reading:
    bottles, kg = b.all("heat", "gas_bottles"), b.all("heat", "gas_kg")
    return (20 if 1 <= bottles <= 2 and kg <= 7 else None), None


def plan_area_m2(b: Build) -> float:
    return float(b.van["length_mm"] * b.van["width_mm"] / 1e6)


def vent_row(b: Build) -> tuple[float, float, float]:
    """Edge, high, low; without an open flame and up to 10 m2 the small openings."""
    area = plan_area_m2(b)
    if "open-flame" not in b.tags and area <= 10:
        return 10, 1500, 500
    rows = (5, 7500, 1000), (10, 10_000, 1500), (15, 12_500, 2000), (20, 15_000, 3000), (99, 20_000, 5000)
    return next(row for row in rows if area <= row[0])


def mixed(b: Build) -> Reading:
    """What is in a wall is written down as half of what it opens, so roof and wall simply add."""
    given, needed = vents(b, "high")
    return (100 * (given or 0) / (needed or 1) if "vent-in-wall" in b.tags else None), None


def vapour_g_per_m3(degrees: float, humidity: float) -> float:
    """From the pressure of the vapour as a gas: 18.015 g/mol, 8.314 J/molK."""
    pascal = humidity * 611.2 * math.exp(17.62 * degrees / (243.12 + degrees))
    return pascal * 18.015 / (8.314462 * (degrees + 273.15))


def air_needed(b: Build) -> float | None:
    """Fifty grams an hour each, out of air at 16 degrees and 70 %, into air as cold as named at 85 %."""
    drier = vapour_g_per_m3(16, 0.7) - vapour_g_per_m3(b.brief["design_temp_c"], 0.85)
    return 50 * b.brief["sleepers"] / drier if b.brief["sleepers"] and drier > 0 else None


def night_air(b: Build) -> Reading:
    needed, cold = air_needed(b), b.brief["design_temp_c"]
    if needed is None:
        return None, None
    low, high = b.all("heat", "vent_low_mm2"), b.all("heat", "vent_high_mm2")
    both_m2 = 1e-6 * low * high / math.hypot(low, high) if low and high else 0.0
    kelvin = 273.15 + (16 + cold) / 2
    return 3600 * 0.6 * both_m2 * math.sqrt(2 * 9.81 * 1.25 * (16 - cold) / kelvin), needed


def night_air_heat(b: Build) -> Reading:
    needed = air_needed(b)
    return (None if needed is None else 0.335 * needed * (16 - b.brief["design_temp_c"])), None


def dew_point_c() -> float:
    """Searched by halving: where the vapour of 20 degrees at 60 % fills the air."""
    held, low, high = 0.6 * math.exp(17.62 * 20 / 263.12), -20.0, 20.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if math.exp(17.62 * middle / (243.12 + middle)) > held else (middle, high)
    return high


def wet_glass(b: Build) -> Reading:
    return dew_point_c() - (20 - 5.75 * 0.13 * (20 - b.brief["design_temp_c"])), None


def litres_a_day(b: Build) -> float | None:
    return 10.0 * travellers(b) if b.having("water", "fresh_full_l") else None


def pump_minutes(b: Build) -> Reading:
    litres = litres_a_day(b)
    return (None if litres is None or "pump" not in b.tags else litres / 7), None


def pump_energy(b: Build) -> Reading:
    minutes, _ = pump_minutes(b)
    watts = max((p.one("power", "watts_running") for p in b.parts if "pump" in p.option.get("gives", [])), default=0.0)
    return (None if minutes is None else watts / 12 * minutes / 60), None


def beyond_travel(b: Build) -> Reading:
    full, travel = b.all("water", "fresh_full_l"), b.all("water", "fresh_travel_l")
    caps = [p.one("water", "fresh_travel_cap_l") for p in b.having("water", "fresh_travel_cap_l")]
    return (full - min([travel, *caps]) if full else None), None


def outside(b: Build) -> Reading:
    tanks = [p for p in b.parts if "tank-outside" in p.option.get("gives", [])]
    litres = [p.one("water", "fresh_full_l") + p.one("water", "waste_l") for p in tanks]
    return (sum(litres) if tanks else None), None


def waste_needed(b: Build) -> Reading:
    return b.all("water", "fresh_full_l") / 2 or None, None


def waste_on_board(b: Build) -> Reading:
    return b.all("water", "waste_l") or None, None


def fridge(around_c: float) -> Callable[[Build], Reading]:
    """By heat gained and the work of a perfect machine between 15 K below the inside and 15 K above the air."""

    def work(air_c: float) -> float:
        return (air_c - 5) * ((air_c + 15) - (5 - 15)) / (5 - 15 + 273.15)

    def work_out(b: Build) -> Reading:
        fridges = [p for p in b.having("power", "watts_running") if "fridge" in p.option.get("gives", [])]
        on = [p.option["power"] for p in fridges if p.option["power"]["hours_summer"] == 24]
        day_wh = sum(power["watts_running"] * 24 * power["duty_summer"] for power in on)
        return (day_wh * work(around_c) / work(25) or None), None

    return work_out


SUMS: dict[str, Callable[[Build], Reading]] = {
    "gas-cooking-days": gas_cooking,
    "gas-nights": gas_nights,
    "gas-store-vent": store_vent,
    "gas-store-duct": store_duct,
    "plan-area": lambda b: (plan_area_m2(b), None),
    "plan-area-row": lambda b: (vent_row(b)[0], None),
    "plan-area-to-next-row": lambda b: (100 - 100 * plan_area_m2(b) / vent_row(b)[0], 2),
    "high-vents-by-table": lambda b: (vent_row(b)[1], None),
    "low-vents-by-table": lambda b: (vent_row(b)[2], None),
    "high-vents-mixed": mixed,
    "night-air": night_air,
    "night-air-heat": night_air_heat,
    "dew-point": lambda _: (dew_point_c(), None),
    "wet-glass": wet_glass,
    "water-a-day": lambda b: (litres_a_day(b), None),
    "pump-minutes": pump_minutes,
    "pump-energy": pump_energy,
    "water-beyond-travel": beyond_travel,
    "water-outside": outside,
    "waste-needed": waste_needed,
    "waste-on-board": waste_on_board,
    "fridge-cool": fridge(15),
    "fridge-warm": fridge(25),
    "fridge-hot": fridge(32),
}
