"""What weighs in a build and where it is. OPEN marks where the words leave a choice, and what was chosen here."""

from __future__ import annotations

from collections.abc import Iterator

from tests.independent.build import Build, Part, Table, tables

Load = tuple[float, float, float]  # kg, mm behind the front axle, mm left of the centre line


def behind_front_axle(van: Table, anchor: str, x_mm: float) -> float:
    start = {
        "datum": van["datum_from_front_axle_mm"],
        "rear": van["datum_from_front_axle_mm"] + van["rear_sill_x_mm"],
        "axle-rear": van["wheelbase_mm"],
    }
    return float(start[anchor] + x_mm)


def place_of(b: Build, part: Part) -> tuple[float, float]:
    """Distance behind the front axle, and y with + to the left."""
    option, group = part.option, tables("options", "group")[part.option["group"]]
    # OPEN: the words say that a battery sits at its battery place; the data says the same of tray, heavy-current set,
    # vent hose (battery place) and travel-fill stop (tank). The data is followed.
    host_group = option.get("sits_at") or group.get("sits_at")
    host = b.of_group(host_group) if host_group else None
    if host is not None and "position" in host.option:
        return place_of(b, host)
    position = option["position"]
    if "door_position" in option and part.side in b.van["sliding_doors"]:
        position = option["door_position"]  # OPEN: beside the sliding door the data names another place
    x, y = behind_front_axle(b.van, position["anchor"], position["x_mm"]), float(position["y_mm"])
    # OPEN: "a choice placed left takes +|y|" against the data, where the side of a burner is that of its exhaust and
    # the burner itself stays. The data is followed: it is bolted under a seat or into the kitchen all the same.
    if part.side and "exhaust_outlet" not in option:
        return x, {"left": abs(y), "right": -abs(y), "rear": 0.0}[part.side]
    # OPEN: in words only bench, fridge and hob turn with a kitchen on the left; the data says it of more groups.
    # The data is followed; no example has its kitchen on the left.
    galley = b.of_group("galley")
    turned = group.get("turns_with") == "galley" and not option.get("body_stays") and galley is not None
    return (x, -y) if turned and galley is not None and galley.side == "left" else (x, y)


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
    people = [("grown-up", 75.0)] * b.brief["adults"] + [("child", float(b.brief["child_mass_kg"]))] * b.brief[
        "children"
    ]
    for number, (kind, kg) in enumerate(people):
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
