"""Sums of heat, fresh air and water. OPEN marks where the words leave a choice, and what was chosen here."""

from __future__ import annotations

from tests.independent.build import Build, Reading
from tests.independent.loads import travellers

ROOF_UP = "vents-only-roof-up"


def heat(b: Build) -> Reading:
    """Electric heaters count only for whoever is on a plug every night."""
    plugged = b.brief["plugged_every_night"] == "yes"
    heaters = [p for p in b.having("heat", "heater_kw") if plugged or p.option["heat"]["heater_fuel"] != "hook-up"]
    loss = b.van["ua_w_per_k"] + b.all("heat", "heat_loss_down_w_per_k")
    if b.brief["sleepers_upstairs"] > 0 and "elevating-roof" in b.tags:
        loss += b.all("heat", "heat_loss_up_w_per_k")
    needed = 1.2 * loss * (20 - b.brief["design_temp_c"]) / 1000
    return sum(p.one("heat", "heater_kw") * p.count for p in heaters), needed


def vents(b: Build, where: str) -> Reading:
    case = "flame" if "open-flame" in b.tags else "sealed"
    # An opening that shuts with the roof counts for nothing: fresh air must come in with the roof down.
    shut = sum(p.one("heat", f"vent_{where}_mm2") * p.count for p in b.parts if ROOF_UP in p.option.get("gives", []))
    return b.all("heat", f"vent_{where}_mm2") - shut, b.van[f"vent_{where}_{case}_mm2"]


def waste_share(b: Build) -> Reading:
    fresh = b.all("water", "fresh_full_l")
    fixed = [p for p in b.having("water", "waste_l") if p.option["water"].get("waste_fixed")]
    return (sum(p.one("water", "waste_l") * p.count for p in fixed) / fresh, 0.5) if fresh else (None, None)


def fresh_water_days(b: Build) -> Reading:
    return b.all("water", "fresh_full_l") / (10 * travellers(b)), b.brief["nights_off_grid"]


def heater_nights(b: Build) -> Reading:
    """Nine hours at 0.9 kW a night, from half a tank above the van's reserve or from the heater's own tank."""
    if "fuel-line" not in b.tags:
        return None, None  # OPEN: only an air heater on fuel has nights; a fuel hob alone has none
    own = b.all("heat", "own_tank_l")
    fuel = own or max(0.0, 0.5 * b.van["tank_l"] - b.van["fuel_reserve_l"])
    # OPEN: the words name the heater's fuel; an own tank holds diesel for a diesel heater, so it is diesel there too.
    petrol = any(p.option.get("heat", {}).get("heater_fuel") == "petrol" for p in b.parts)
    hob = 0.12 if any(p.option.get("heat", {}).get("cooker_fuel") == "diesel" for p in b.parts) else 0.0
    return fuel / (9 * 0.9 / (0.85 * (8.8 if petrol else 9.97)) + hob), b.brief["nights_off_grid"]
