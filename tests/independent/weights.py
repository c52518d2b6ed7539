"""Sums of masses, axles and roof. OPEN marks where the words leave a choice, and what was chosen here."""

from __future__ import annotations

from tests.independent.build import Build, Reading
from tests.independent.loads import loads, part_loads, water_loads


def parts_kg(b: Build) -> float:
    return sum(kg for kg, _, _ in part_loads(b))


def plate_kg(b: Build) -> float:
    return float(b.van["m_max_kg"]) + b.all("space", "plate_raise_kg")


def total_mass(b: Build) -> Reading:
    return b.van["mro_kg"] + sum(kg for kg, _, _ in loads(b)), plate_kg(b)


def rear_kg(b: Build) -> float:
    """Each load weighs on the rear axle by its distance behind the front axle over the wheelbase."""
    on_rear: float = b.van["mro_rear_kg"]
    return on_rear + sum(kg * x for kg, x, _ in loads(b)) / float(b.van["wheelbase_mm"])


def front_kg(b: Build) -> float:
    """Each load weighs on the front axle by what the rear axle leaves of it, worked out for itself as a check."""
    on_front: float = b.van["mro_front_kg"]
    return on_front + sum(kg * (1 - x / float(b.van["wheelbase_mm"])) for kg, x, _ in loads(b))


def rear_axle(b: Build) -> Reading:
    return rear_kg(b), b.van["r_max_kg"] + b.all("space", "rear_axle_raise_kg")


def front_axle(b: Build) -> Reading:
    return front_kg(b), b.van["f_max_kg"]


def front_share(b: Build) -> Reading:
    return front_kg(b) - b.van["front_min_share"] * (front_kg(b) + rear_kg(b)), 0


def pay_mass(b: Build) -> Reading:
    """What the plate leaves for things when every belted seat is taken."""
    belts = b.all("space", "belts")
    water = sum(kg for kg, _, _ in water_loads(b))
    left = plate_kg(b) - b.van["mro_kg"] - parts_kg(b) - water - 75 * (belts - 1)
    return left, 10 * (belts + b.van["length_mm"] / 1000)


def unladen_mass(b: Build) -> Reading:
    fuel = 0.9 * b.van["tank_l"] * b.van["fuel_density_kg_per_l"]
    return b.van["mro_kg"] - 75 - fuel + parts_kg(b), 2950


def side_balance(b: Build) -> Reading:
    moment = sum(kg * y for kg, _, y in [*part_loads(b), *water_loads(b)])
    return 100 * abs(2 * moment / b.van["track_mm"]) / (front_kg(b) + rear_kg(b)), 4


def on_roof_kg(b: Build, *kinds: str) -> float:
    on_it = [p for p in b.parts if p.option.get("space", {}).get("roof_part") in kinds]
    return sum(p.one("space", "roof_mass_kg") * p.count for p in on_it)


def roof_load_closed(b: Build) -> Reading:
    allowed = b.all("space", "roof_allow_closed_kg")
    return on_roof_kg(b, "fixed", "moving", "top"), allowed or b.van["roof_load_kg"]


def roof_load_raised(b: Build) -> Reading:
    if "elevating-roof" not in b.tags:
        return None, None  # OPEN: without a lifting roof there is nothing to lift
    return on_roof_kg(b, "moving", "top"), b.all("space", "roof_allow_raised_kg")


def roof_bed_load(b: Build) -> Reading:
    rating = b.all("space", "roof_bed_rating_kg")
    return (b.brief["sleepers_upstairs_kg"], rating) if rating else (None, None)


def closed_height(b: Build) -> Reading:
    """What moves or lies on top stands on the kit; what is fixed stands beside it, on the steel."""

    def highest(*kinds: str) -> float:
        on_it = [p for p in b.parts if p.option.get("space", {}).get("roof_part") in kinds]
        return max((p.one("space", "height_above_roof_mm") for p in on_it), default=0)

    roof = b.of_group("roof-type")
    kit = roof.one("space", "height_above_roof_mm") if roof else 0
    above = max(kit + highest("moving", "top"), highest("fixed"))
    height = b.van["height_mm"] + b.all("space", "body_lift_mm") + above + 30
    return height, b.brief["parking_limit_mm"] or None  # a limit of 0 is no limit
