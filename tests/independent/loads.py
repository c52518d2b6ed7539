"""What weighs in a build and where it is. OPEN marks where the words leave a choice, and what was chosen here."""

from __future__ import annotations

from collections.abc import Iterator

from tests.independent.build import Build, Part, Table, tables

Load = tuple[float, float, float]  # kg, mm behind the front axle, mm left of the centre line
GROUPS = tables("options", "group")


def behind_front_axle(van: Table, anchor: str, x_mm: float) -> float:
    start = {
        "datum": van["datum_from_front_axle_mm"],
        "rear": van["datum_from_front_axle_mm"] + van["rear_sill_x_mm"],
        "axle-rear": van["wheelbase_mm"],
    }
    return float(start[anchor] + x_mm)


def place_of(b: Build, part: Part) -> tuple[float, float]:
    """Distance behind the front axle, and y with + to the left."""
    return x_of(b, part), y_of(b, part)


def x_of(b: Build, part: Part) -> float:
    """Along the van a battery stands at its place; every other part at its own."""
    # OPEN: the papers also let tray, heavy-current set and vent hose sit at the battery place, the travel-fill stop at
    # the tank, and a window beside the sliding door elsewhere; at most 2 kg on the rear axle hang on it.
    host = b.of_group("battery-place") if part.option["group"] == "battery" else None
    if host is not None and "position" in host.option:
        return x_of(b, host)
    position = part.option["position"]
    return behind_front_axle(b.van, position["anchor"], position["x_mm"])


def y_of(b: Build, part: Part) -> float:
    """Across the van every part sits where the papers draw it."""
    group = GROUPS[part.option["group"]]
    host = b.of_group(part.option.get("sits_at", group.get("sits_at", "")))
    if host is not None and host is not part:
        return y_of(b, host)
    y = float(part.option.get("position", {}).get("y_mm", 0))
    # The side of a burner is that of its exhaust; the burner itself stays.
    moves = bool(part.option.get("places")) and "exhaust_outlet" not in part.option
    if moves and part.side:
        return {"left": abs(y), "right": -abs(y), "rear": y}[part.side]
    leader = b.of_group("" if part.option.get("body_stays") else group.get("turns_with", ""))
    return -y if leader is not None and leader.side == "left" else y


def part_loads(b: Build) -> Iterator[Load]:
    for part in b.parts:
        if part.option.get("mass_kg"):
            yield (part.option["mass_kg"] * part.count, *place_of(b, part))


def travel_water_l(b: Build) -> float:
    """Litres carried on the road in tanks and cans: a travel-fill stop caps their sum."""
    caps = [part.one("water", "fresh_travel_cap_l") for part in b.having("water", "fresh_travel_cap_l")]
    return min([b.all("water", "fresh_travel_l"), *caps])


def water_loads(b: Build) -> Iterator[Load]:
    tanks = b.all("water", "fresh_travel_l")
    for part in b.having("water", "fresh_travel_l"):
        # OPEN: with several tanks under one cap each would get its share; no example has two.
        share = part.one("water", "fresh_travel_l") * part.count / tanks
        yield (travel_water_l(b) * share, *place_of(b, part))
    for part in b.having("water", "extra_water_l"):
        yield (part.one("water", "extra_water_l") * part.count, *place_of(b, part))


def people_loads(b: Build) -> Iterator[Load]:
    """Grown-ups sit in front first, children on the bench first; the driver is in the running order already."""
    front = int(sum(p.one("space", "belts") * p.count for p in b.parts if p.option["group"] == "cab-seats"))
    bench = int(sum(p.one("space", "belts") * p.count for p in b.parts if p.option["group"] == "bench"))
    front_x = behind_front_axle(b.van, "datum", -180)
    # OPEN: with two kinds of bench the hindmost seat would count; no example has two.
    seat_x = max((p.one("space", "seat_x_mm") for p in b.having("space", "belts")), default=0)
    bench_x = behind_front_axle(b.van, "datum", seat_x + b.all("space", "bench_shift_mm"))
    grown_ups = [("grown-up", 75.0)] * b.brief["adults"]
    children = [("child", float(b.brief["child_mass_kg"]))] * b.brief["children"]
    for number, (kind, kg) in enumerate([*grown_ups, *children]):
        in_front = front > 0 if kind == "grown-up" else bench == 0
        if in_front or bench == 0:  # who finds no belt counts in front
            front, x = front - 1, front_x
        else:
            bench, x = bench - 1, bench_x
        if number > 0:
            yield kg, x, 0.0


def travellers(b: Build) -> int:
    return int(b.brief["adults"] + b.brief["children"])


def other_loads(b: Build) -> Iterator[Load]:
    """Luggage, what else rides along, and the last tenth of fuel, all on the centre line."""
    yield 10 * (travellers(b) + b.van["length_mm"] / 1000), behind_front_axle(b.van, "rear", -550), 0.0
    from_sill = 350 if b.brief["extra_load_where"] == "rack" else -700
    yield b.brief["extra_load_kg"], behind_front_axle(b.van, "rear", from_sill), 0.0
    yield 0.1 * b.van["tank_l"] * b.van["fuel_density_kg_per_l"], behind_front_axle(b.van, "datum", 200), 0.0


def loads(b: Build) -> list[Load]:
    return [*part_loads(b), *water_loads(b), *people_loads(b), *other_loads(b)]
