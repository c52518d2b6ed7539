"""What is told beside heat and heater fuel. OPEN marks where the words leave a choice."""

from __future__ import annotations

from collections.abc import Callable

from tests.independent.build import Build, Part, Reading, tables


def lost_w_per_k(b: Build, roof_up: bool) -> float | None:
    """None: a roof that does not lift is never up."""
    loss = b.van["ua_w_per_k"] + b.all("heat", "heat_loss_down_w_per_k")
    if not roof_up:
        return float(loss)
    return loss + b.all("heat", "heat_loss_up_w_per_k") if "elevating-roof" in b.tags else None


def lost_kw(roof_up: bool, outside_c: float | None) -> Callable[[Build], Reading]:
    def work_out(b: Build) -> Reading:
        loss, cold = lost_w_per_k(b, roof_up), b.brief["design_temp_c"] if outside_c is None else outside_c
        return (None if loss is None else loss * (20 - cold) / 1000), None

    return work_out


def heaters_kw(b: Build) -> float | None:
    """None without a heater; one on the plug gives nothing to whoever has no plug every night."""
    heaters = b.having("heat", "heater_kw")
    plugged = b.brief["plugged_every_night"] == "yes"
    kw = [
        p.one("heat", "heater_kw") * p.count * (plugged or p.option["heat"]["heater_fuel"] != "hook-up")
        for p in heaters
    ]
    return sum(kw) if heaters else None


def of_loss(b: Build) -> Reading:
    given, upstairs = heaters_kw(b), b.brief["sleepers_upstairs"] > 0 and "elevating-roof" in b.tags
    lost, _ = lost_kw(upstairs, None)(b)
    return (None if given is None or lost is None else 100 * given / lost), None


def coldest(roof_up: bool) -> Callable[[Build], Reading]:
    def work_out(b: Build) -> Reading:
        given, loss = heaters_kw(b), lost_w_per_k(b, roof_up)
        return (None if given is None or loss is None else 20 - 1000 * given / loss), None

    return work_out


def missing(roof_up: bool, outside_c: float | None) -> Callable[[Build], Reading]:
    def work_out(b: Build) -> Reading:
        given, (lost, _) = heaters_kw(b), lost_kw(roof_up, outside_c)(b)
        return (None if given is None or lost is None else max(0.0, lost - given)), None

    return work_out


def fuel_a_night_l(b: Build) -> float | None:
    """0.9 kW for nine hours, by the litre of what the heater burns."""
    if "fuel-line" not in b.tags:
        return None
    petrol = any(p.option.get("heat", {}).get("heater_fuel") == "petrol" for p in b.parts)
    return 8.1 / 0.85 / (8.8 if petrol else 9.97)


def nights(filled: float) -> Callable[[Build], Reading]:
    def work_out(b: Build) -> Reading:
        night_l, own_l = fuel_a_night_l(b), b.all("heat", "own_tank_l")
        if night_l is None:
            return None, None
        fuel_l = filled * own_l or max(0.0, filled * b.van["tank_l"] - b.van["fuel_reserve_l"])
        hob_l = 0.12 * any(p.option.get("heat", {}).get("cooker_fuel") == "diesel" for p in b.parts)
        return fuel_l / (night_l + hob_l), None

    return work_out


def heaters_on_fuel(b: Build) -> list[Part]:
    return [p for p in b.parts if "fuel-line" in p.option.get("gives", [])]


def start_amps(b: Build) -> Reading:
    return max((p.one("heat", "start_a") for p in heaters_on_fuel(b)), default=None), None


def start_volts(b: Build) -> Reading:
    """Behind the thinnest conductor that keeps the drop: EN 1648-2 at 50 degrees or class 5 warmed, the worse."""
    kinds = {"LFP": 12.0, "AGM": 11.5}
    full_v = min((kinds[p.option["power"]["chemistry"]] for p in b.having("power", "battery_ah")), default=11.5)
    found = []
    for part in heaters_on_fuel(b):
        (run,) = part.option["circuit"]
        for area, r20, *_ in tables("tables", "table")["conductors"]["rows"]:
            ohm = 2 * run["run_one_way_m"] * max(0.01989 / area, r20 * (1 + 0.00393 * 30) / 1000)
            if area >= 1 and ohm * run["load_a"] <= run["drop_limit_pct"] / 100 * 12:
                found.append(full_v - ohm * part.one("heat", "start_a"))
                break
    return (min(found), 11) if found else (None, None)


def density(b: Build) -> float:
    """By temperature and pressure of the standard atmosphere, not by the one power."""
    kelvin = 288.15 - 0.0065 * b.brief["altitude_m"]
    return float((kelvin / 288.15) ** (9.80665 * 0.0289644 / (8.314462 * 0.0065)) * 288.15 / kelvin)


def burners(b: Build) -> int:
    return sum(p.count for p in b.parts if {"burns-diesel", "burns-petrol"} & set(p.option.get("gives", [])))


def air_density(b: Build) -> Reading:
    return (100 * density(b) if burners(b) else None), None


def over_rich(b: Build) -> Reading:
    kits = sum(p.count for p in b.parts if "altitude-kit" in p.option.get("gives", []))
    return (100 / density(b) - 100 if burners(b) > kits else None), None


SUMS: dict[str, Callable[[Build], Reading]] = {
    "heat-loss-down": lost_kw(False, None),
    "heat-loss-down-at-nought": lost_kw(False, 0),
    "heat-loss-down-in-frost": lost_kw(False, -15),
    "heat-loss-up": lost_kw(True, None),
    "heat-loss-up-at-nought": lost_kw(True, 0),
    "heat-loss-up-in-frost": lost_kw(True, -15),
    "heat-of-loss": of_loss,
    "coldest-roof-down": coldest(False),
    "coldest-roof-up": coldest(True),
    "heat-missing-down": missing(False, None),
    "heat-missing-up": missing(True, None),
    "heat-missing-in-frost": missing(True, -15),
    "night-fuel": lambda b: (fuel_a_night_l(b), None),
    "nights-full-tank": nights(1),
    "nights-half-tank": nights(0.5),
    "heater-start-amps": start_amps,
    "heater-start-volts": start_volts,
    "air-density": air_density,
    "over-rich": over_rich,
}
