"""What is told beside weights, roof and height. OPEN marks where the words leave a choice, and what was chosen here."""

from __future__ import annotations

import math
import tomllib
from collections.abc import Callable
from functools import cache
from typing import Any

from tests.independent.build import ROOT, Build, Reading
from tests.independent.loads import (
    Load,
    behind_front_axle,
    part_loads,
    place_of,
    water_loads,
    x_of,
)
from tests.independent.weights import (
    closed_height,
    front_axle,
    front_kg,
    plate_kg,
    rear_axle,
    rear_kg,
    total_mass,
    unladen_mass,
)

Case = Callable[[Build], list[Load]]
G = 9.81


def stores_x(b: Build) -> float:
    return behind_front_axle(b.van, "rear", -550)


def rack_x(b: Build) -> float:
    return behind_front_axle(b.van, "rear", 350)


def ready(b: Build) -> list[Load]:
    """Parts and water; the van itself, with its driver and fuel, is added where axles are summed."""
    return [*part_loads(b), *water_loads(b)]


def belts_behind(b: Build) -> float:
    return sum(p.one("space", "belts") * p.count for p in b.parts if p.option["group"] != "cab-seats")


def seated(b: Build) -> list[Load]:
    """75 kg in every belted seat but the driver's."""
    in_front = b.all("space", "belts") - belts_behind(b) - 1
    seats = [p.one("space", "seat_x_mm") for p in b.having("space", "belts") if p.option["group"] != "cab-seats"]
    bench_x = behind_front_axle(b.van, "datum", max(seats, default=0) + b.all("space", "bench_shift_mm"))
    front_x = behind_front_axle(b.van, "datum", -180)
    return [*ready(b), (75 * in_front, front_x, 0.0), (75 * belts_behind(b), bench_x, 0.0)]


def least_luggage(b: Build) -> list[Load]:
    kg = 10 * (b.all("space", "belts") + b.van["length_mm"] / 1000)
    return [*seated(b), (kg, stores_x(b), 0.0)]


def filled(b: Build) -> list[Load]:
    """All that the plate leaves where the luggage lies; nothing where it is over already."""
    left = plate_kg(b) - b.van["mro_kg"] - sum(kg for kg, _, _ in seated(b))
    return [*seated(b), (max(left, 0), stores_x(b), 0.0)]


def lifting(b: Build) -> list[Load]:
    """Driver alone, every fresh tank full, the last of the fuel, and the other load if it rides on the rack."""
    tanks = [(p.one("water", "fresh_full_l") * p.count, x_of(b, p), 0.0) for p in b.having("water", "fresh_full_l")]
    stays = [(p.one("water", "extra_water_l") * p.count, *place_of(b, p)) for p in b.having("water", "extra_water_l")]
    fuel = 0.1 * b.van["tank_l"] * b.van["fuel_density_kg_per_l"]
    found = [*part_loads(b), *tanks, *stays, (fuel, behind_front_axle(b.van, "datum", 200), 0.0)]
    if b.brief["extra_load_where"] == "rack":
        found.append((b.brief["extra_load_kg"], rack_x(b), 0.0))
    return found


CASES: dict[str, Case] = {
    "running-order": ready,
    "all-seats": seated,
    "least-luggage": least_luggage,
    "filled-up": filled,
    "driver-and-rack": lifting,
}


def on_axles(b: Build, case: Case) -> tuple[float, float, float]:
    """Total, front and rear. Moments are taken about the rear axle, so that the front one is not just what is left."""
    wheelbase, loads = b.van["wheelbase_mm"], case(b)
    total = b.van["mro_kg"] + sum(kg for kg, _, _ in loads)
    front = b.van["mro_front_kg"] + sum(kg * (wheelbase - x) for kg, x, _ in loads) / wheelbase
    return total, front, b.van["mro_rear_kg"] + sum(kg * x for kg, x, _ in loads) / wheelbase


def case_sum(case: Case, what: str) -> Callable[[Build], Reading]:
    def reading(b: Build) -> Reading:
        total, front, rear = on_axles(b, case)
        return {
            "total": (total, plate_kg(b)),
            "front": (front, front_axle(b)[1]),
            "rear": (rear, rear_axle(b)[1]),
            "share": (share_kg(b, total, front), 0.0),
        }[what]

    return reading


def share_kg(b: Build, total: float, front: float) -> float:
    return front - float(b.van["front_min_share"]) * total


def keeps(b: Build, more_kg: float, x: float) -> bool:
    """Whether the loaded van still keeps plate, both axles and the least share with so much more at that place."""
    on_rear = more_kg * x / b.van["wheelbase_mm"]
    front, rear = front_kg(b) + more_kg - on_rear, rear_kg(b) + on_rear
    limits = (total_mass(b)[1], front_axle(b)[1], rear_axle(b)[1])
    assert all(limit is not None for limit in limits)
    over = [is_over(kg, limit) for kg, limit in zip((front + rear, front, rear), limits, strict=True)]
    return not any(over) and share_kg(b, front + rear, front) > -1e-9


def is_over(kg: float, limit: float | None) -> bool:
    return limit is not None and kg > limit + 1e-9


def most_kg(b: Build, x: float) -> float:
    """Found by halving, not by turning the sums round."""
    if not keeps(b, 0, x):
        return 0.0
    low, high = 0.0, 5000.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if keeps(b, middle, x) else (low, middle)
    return low


def free(x: Callable[[Build], float]) -> Callable[[Build], Reading]:
    return lambda b: (most_kg(b, x(b)), None)


def free_on_rack(b: Build) -> Reading:
    hung = b.brief["extra_load_where"] == "rack" and b.brief["extra_load_kg"]
    return (most_kg(b, rack_x(b)), None) if "bike-rack" in b.tags or hung else (None, None)


def rest_back(b: Build) -> Reading:
    """The furthest place of all the rest that keeps every limit but the front one, by halving; the sill at most."""
    rest = plate_kg(b) - (front_kg(b) + rear_kg(b))
    if rest <= 0:
        return None, None
    low, high = -5000.0, behind_front_axle(b.van, "rear", 0)

    def fits(x: float) -> bool:
        rear = rear_kg(b) + rest * x / b.van["wheelbase_mm"]
        return not is_over(rear, rear_axle(b)[1]) and share_kg(b, plate_kg(b), plate_kg(b) - rear) > -1e-9

    if not fits(high):
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (middle, high) if fits(middle) else (low, middle)
        high = low
    return high - b.van["datum_from_front_axle_mm"], None


def rest_forward(b: Build) -> Reading:
    """Where the rest fills the front axle; nothing where it does not even ahead of everything."""
    rest, limit = plate_kg(b) - (front_kg(b) + rear_kg(b)), front_axle(b)[1]
    if rest <= 0 or limit is None or front_kg(b) + rest <= limit:
        return None, None
    on_rear = rest - (limit - front_kg(b))
    return on_rear * b.van["wheelbase_mm"] / rest - b.van["datum_from_front_axle_mm"], None


def speed(slow: float, fast: float) -> Callable[[Build], Reading]:
    def limit(b: Build) -> Reading:
        if b.brief["country"] != "GB":
            return None, None
        empty = unladen_mass(b)[0]
        return (slow if empty is not None and empty > 3050 else fast), fast

    return limit


def car_licence(b: Build) -> Reading:
    return plate_kg(b), 4250 if b.van["fuel"] == "electric" and b.brief["country"] == "GB" else 3500


def panels_on_roof(b: Build) -> Reading:
    """Rows by trying every number of panels that lie along."""
    panels = b.having("power", "solar_w")
    if not panels:
        return None, None
    kit = next((p for p in b.parts if "roof-kit" in p.option.get("gives", [])), None)
    length, width = b.van["roof_panel_length_mm"], b.van["roof_panel_width_mm"]
    if kit is not None:
        length, width = min(length, kit.one("space", "length_mm")), min(width, kit.one("space", "width_mm"))
    taken = 0.0
    for p in panels:
        deep, wide, ways = p.one("space", "length_mm"), p.one("space", "width_mm"), []
        for along in range(p.count + 1):
            rows = [(along, deep, wide), (p.count - along, wide, deep)]
            if all(not n or across <= width for n, _, across in rows):
                ways.append(sum(math.ceil(n / (width // across)) * d for n, d, across in rows if n))
        taken += min(ways)
    return taken, length


@cache
def roof_rows(table: str) -> dict[str, dict[str, Any]]:
    tables = tomllib.loads((ROOT / "rules/tables/lifting-roofs.toml").read_text("utf-8"))["table"]
    keys = [column["key"] for column in tables[table]["columns"]]
    return {row[0]: dict(zip(keys, row, strict=True)) for row in tables[table]["rows"]}


def edge_n(b: Build, tilt: str, angle: str) -> float | None:
    """Push up at the front edge by the struts less that of all the weight; below nought: somebody must push."""
    roof = next((roof_rows("tilting-roofs")[p.id] for p in b.parts if p.id in roof_rows("tilting-roofs")), None)
    if roof is None:
        return None
    kelvin = (b.brief["design_temp_c"] + 273.15) / 293.15
    more = sum(roof_rows("roof-struts")[p.id]["more_n"] * p.count for p in b.parts if p.id in roof_rows("roof-struts"))
    lift = roof["struts"] * (roof["strut_n"] + more) * kelvin * roof["pick_up_m"] * math.sin(math.radians(roof[angle]))
    turn = roof["moving_kg"] * roof["centre_m"]
    for p in b.having("space", "roof_mass_kg"):
        if p.option["space"]["roof_part"] in ("moving", "top"):
            x = (roof["hinge_x_mm"] - (x_of(b, p) - b.van["datum_from_front_axle_mm"])) / 1000
            turn += p.one("space", "roof_mass_kg") * p.count * x
    level = math.cos(math.radians(roof[tilt])) if tilt else 1.0
    return float((lift - G * turn * level) / roof["hinge_to_edge_m"])


def roof_push(b: Build) -> Reading:
    up = edge_n(b, "", "strut_closed_deg")
    return (None, None) if up is None else (-up, 250)


def roof_hold(b: Build) -> Reading:
    up = edge_n(b, "opens_deg", "strut_open_deg")
    return (None, None) if up is None else (up, 50)


def bar(mm: float) -> Callable[[Build], Reading]:
    return lambda b: (closed_height(b)[0], mm)


SUMS: dict[str, Callable[[Build], Reading]] = {
    **{f"{name}-{w}": case_sum(case, w) for name, case in CASES.items() for w in ("total", "front", "rear")},
    "filled-up-share": case_sum(filled, "share"),
    "driver-and-rack-share": case_sum(lifting, "share"),
    "free-in-foot-well": free(lambda b: behind_front_axle(b.van, "datum", -850)),
    "free-behind-seats": free(lambda b: behind_front_axle(b.van, "datum", 250)),
    "free-in-stores": free(stores_x),
    "free-on-rack": free_on_rack,
    "rest-furthest-back": rest_back,
    "rest-furthest-forward": rest_forward,
    "speed-on-dual-roads": speed(60, 70),
    "speed-on-other-roads": speed(50, 60),
    "car-licence": car_licence,
    "panels-on-roof": panels_on_roof,
    "roof-push": roof_push,
    "roof-hold": roof_hold,
    **{f"under-bar-{mm}": bar(mm) for mm in (2000, 2100, 2200)},
}


def scales(b: Build) -> dict[str, tuple[float, float]]:
    """Between which masses total, front and rear may turn out on the weighbridge."""
    wheelbase, found = b.van["wheelbase_mm"], {}
    for name, at, share in (
        ("total", 0, lambda x: 1.0),
        ("front", 1, lambda x: 1 - x / wheelbase),
        ("rear", 2, lambda x: x / wheelbase),
    ):
        van = 25 * share(wheelbase * b.van["mro_rear_kg"] / b.van["mro_kg"])
        parts = [
            0.15 * (p.option["mass_kg"] + p.one("water", "extra_water_l")) * p.count * share(x_of(b, p))
            for p in b.parts
            if p.option.get("mass_kg") and p.option.get("basis") != "measured"
        ]
        off = math.sqrt(van**2 + sum(kg**2 for kg in parts))
        middle = on_axles(b, ready)[at]
        found[f"weighbridge-{name}"] = (middle - off, middle + off)
    total = on_axles(b, ready)[0]
    found["finished-weight-band"] = (0.95 * total, 1.05 * total)
    return found
