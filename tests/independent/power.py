"""Sums of the electrics. OPEN marks where the words leave a choice, and what was chosen here."""

from __future__ import annotations

import math

from tests.independent.build import Build, Reading, Table

SUN_HOURS = {  # full hours of sun a day on a flat panel
    "uk": {"summer": 4.80, "three-season": 2.76, "winter": 0.504},
    "south": {"summer": 7.92, "three-season": 5.37, "winter": 2.18},
}
APPLIANCE_TAGS = {  # what the brief calls a thing that must run, and the tag by which a part says that it is one
    **{word: word for word in ("kettle", "microwave", "hair-dryer", "induction", "e-bike", "laptop")},
    "medical": "medical-device",
}


def hook_up_watts(b: Build) -> Reading:
    """All that may draw at once, but of kettles, microwave and hair dryer only the largest."""
    # OPEN: without a campsite plug the sum is made all the same; the rule asks for the plug before it judges.
    buses = ("hookup-only", "shared", "inverter")
    by_turns, together = [0.0], 0.0
    for part in b.having("power", "hookup_at_once"):
        watts = part.one("power", "watts_running")
        if part.option["power"]["bus"] not in buses:
            continue
        if {"kettle", "microwave", "hair-dryer"} & set(part.option.get("gives", [])):
            by_turns.append(watts)
        else:
            together += watts * part.count
    return together + max(by_turns), 230.0 * int(b.brief["site_amps"])


def alternator_input(b: Build) -> Reading:
    return b.all("power", "engine_input_a"), 0.5 * b.van["alternator_a"]


def battery(b: Build) -> Table | None:
    part = b.of_group("battery")
    return part.option.get("power") if part else None


def charge_rate(b: Build) -> Reading:
    cell = battery(b)
    if cell is None:
        return None, None
    share = 0.25 if "lead" in b.tags else 0.5
    chargers = [p.one("power", key) for p in b.parts for key in ("engine_charge_a", "mains_charge_a")]
    return max(chargers, default=0), share * cell["battery_ah"]


def inverter(b: Build) -> Table | None:
    found = b.having("power", "inverter_w")
    return found[0].option["power"] if found else None


def day_wh(b: Build, season: str) -> float:
    """A day away from the plug in summer or in winter."""
    source, wh = inverter(b), 33.0 + 48.0  # phones and what is always on, in every build
    for part in b.parts:
        use = part.option.get("power", {})
        hours = part.count * part.one("power", f"hours_{season}") * use.get(f"duty_{season}", 1)
        if use.get("bus") == "dc":
            # OPEN: starts are counted for each piece; no example has two of such a part.
            starts = part.one("power", f"starts_{season}") * part.one("power", "start_wh") * part.count
            wh += use.get("watts_running", 0) * hours + starts
        elif use.get("bus") == "shared" and source and use["watts_running"] <= source["inverter_w"]:
            wh += use["watts_running"] * hours / source["inverter_efficiency"]
    return wh + (source["inverter_idle_w"] * 3 if source else 0)


def daily_wh(b: Build) -> float:
    seasons = ["summer", "winter"] if b.brief["season"] == "three-season" else [b.brief["season"]]
    return sum(day_wh(b, season) for season in seasons) / len(seasons)


def daily_energy(b: Build) -> Reading:
    return daily_wh(b), None


def usable_wh(b: Build, cell: Table) -> float:
    """The label less depth, age and cold: inside the van only lead minds the cold, outside in winter lithium too."""
    season = b.brief["season"]
    cold = 1.0
    if "lead" in b.tags:
        cold = 1 - 0.010 * (25 - {"summer": 20, "three-season": 15, "winter": 10}[season])
    elif season == "winter" and "battery-outside" in b.tags:
        cold = 0.8
    return float(cell["battery_ah"] * cell["battery_v"] * cell["depth_of_discharge"] * 0.9 * cold)


def battery_nights(b: Build) -> Reading:
    """Endless where sun and engine bring back what a day takes."""
    cell = battery(b)
    if cell is None:
        return None, None
    sun = b.all("power", "solar_w") * SUN_HOURS[b.brief["region"]][b.brief["season"]] * 0.70
    engine = b.all("power", "engine_charge_a") * 13.6 * b.brief["drive_h_per_day"]
    short = daily_wh(b) - (0.75 if "lead" in b.tags else 0.95) * (sun + engine)
    return (usable_wh(b, cell) / short if short > 0 else math.inf), b.brief["nights_off_grid"]


def battery_current(b: Build) -> Reading:
    source, cell = inverter(b), battery(b)
    if source is None:
        return None, None
    packs = cell["packs_parallel"] if cell else 0
    limit = cell["bms_continuous_a"] * packs * (0.9 if packs > 1 else 1) if cell else 0  # none carries nothing
    return source["inverter_w"] / (12 * source["inverter_efficiency"]), limit


def inverter_largest_load(b: Build) -> Reading:
    wanted = {APPLIANCE_TAGS[word] for word in b.brief["must_run"] if word in APPLIANCE_TAGS}
    asked = [p.one("power", "watts_running") for p in b.parts if wanted & set(p.option.get("gives", []))]
    source = inverter(b)
    # OPEN: what is asked for but not among the parts has no watts here; another rule asks for the part.
    return (max(asked), source["inverter_w"] if source else None) if asked else (None, None)


def lead_draw(b: Build) -> Reading:
    source, cell = inverter(b), battery(b)
    if source is None or cell is None or "lead" not in b.tags:
        return None, None
    return source["inverter_w"] / (11.5 * source["inverter_efficiency"]), 0.25 * cell["battery_ah"]


def solar_voltage(b: Build) -> Reading:
    """45 degrees colder than the label; in a row only where the controller takes more than 50 V."""
    panels, controllers = b.having("power", "panel_voc_v"), b.having("power", "solar_controller_max_v")
    if not panels:
        return None, None
    # OPEN: of two controllers the weaker one would count; no example has two.
    most = min((p.one("power", "solar_controller_max_v") for p in controllers), default=None)
    in_row = most is not None and most > 50
    volts = b.all("power", "panel_voc_v") if in_row else max(p.one("power", "panel_voc_v") for p in panels)
    return volts * (1 + 0.0028 * 45), most
