"""The sums once more, written down as plainly as they are said: one finished build in, one number out.

It shares nothing with the program but the records; the tests hold the program against it over every completion.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from math import floor
from typing import NamedTuple

from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Place, RoofPart
from specbuilder.model.vans import Van


class Piece(NamedTuple):
    """So many of an option at a place."""

    option: Option
    many: int = 1
    place: Place | None = None


class Build(NamedTuple):
    """A finished build."""

    van: Van
    pieces: Sequence[Piece]
    brief: Mapping[str, Answer]

    def n(self, key: str) -> float:
        """A number of the brief."""
        value = self.brief[key]
        assert isinstance(value, int | float)
        return value

    def total(self, of: Callable[[Option], float]) -> float:
        """Summed over the pieces."""
        return sum(of(p.option) * p.many for p in self.pieces)

    def each(self, of: Callable[[Option], float | None]) -> list[float]:
        """The values that are there."""
        return [value for p in self.pieces if (value := of(p.option)) is not None]

    def gives(self, tag: str) -> bool:
        """True when a piece or the van gives it."""
        return tag in self.van.gives or any(tag in p.option.gives for p in self.pieces)


Pair = tuple[float | None, float | None]
NOTHING: Pair = None, None


def _travel_water(b: Build) -> float:
    caps = b.each(lambda o: o.water.fresh_travel_cap_l)
    return min([b.total(lambda o: o.water.fresh_travel_l), *caps])


def total_mass(b: Build) -> Pair:
    water = _travel_water(b)
    people = 75 * (b.n("adults") - 1) + b.n("children") * b.n("child_mass_kg")
    luggage = 10 * (b.n("adults") + b.n("children") + b.van.length_mm / 1000)
    fuel = 0.1 * b.van.tank_l * b.van.fuel_density_kg_per_l
    parts = b.total(lambda o: o.mass_kg + o.water.extra_water_l)
    return (
        b.van.mro_kg + parts + people + luggage + water + fuel + b.n("extra_load_kg"),
        b.van.m_max_kg + b.total(lambda o: o.space.plate_raise_kg),
    )


def pay_mass(b: Build) -> Pair:
    plate = b.van.m_max_kg + b.total(lambda o: o.space.plate_raise_kg)
    seats = b.total(lambda o: o.space.belts)
    parts = b.total(lambda o: o.mass_kg + o.water.extra_water_l)
    left = plate - b.van.mro_kg - parts - _travel_water(b) - 75 * (seats - 1)
    return left, 10 * (seats + b.van.length_mm / 1000)


def unladen_mass(b: Build) -> Pair:
    fuel = 0.9 * b.van.tank_l * b.van.fuel_density_kg_per_l
    return b.van.mro_kg - 75 - fuel + b.total(lambda o: o.mass_kg), 2950


def roof_closed(b: Build) -> Pair:
    kits = b.each(lambda o: o.space.roof_allow_closed_kg)
    return b.total(lambda o: o.space.roof_mass_kg if o.space.roof_part else 0), min(kits, default=b.van.roof_load_kg)


def roof_raised(b: Build) -> Pair:
    if not b.gives("elevating-roof"):
        return NOTHING
    rides = (RoofPart.MOVING, RoofPart.TOP)
    return (
        b.total(lambda o: o.space.roof_mass_kg if o.space.roof_part in rides else 0),
        b.total(lambda o: o.space.roof_allow_raised_kg),
    )


def roof_bed(b: Build) -> Pair:
    ratings = b.each(lambda o: o.space.roof_bed_rating_kg)
    return (b.n("sleepers_upstairs_kg"), min(ratings)) if ratings else NOTHING


def _berths(o: Option) -> float:
    return o.space.berths_down + o.space.berths_up


def closed_height(b: Build) -> Pair:
    space = [p.option.space for p in b.pieces]
    tall = [(s.roof_part, s.height_above_roof_mm) for s in space if s.height_above_roof_mm is not None]
    kit = max((mm for part, mm in tall if part is None), default=0)
    top = max((mm for part, mm in tall if part in (RoofPart.TOP, RoofPart.MOVING)), default=0)
    fixed = max((mm for part, mm in tall if part is RoofPart.FIXED), default=0)
    lift = b.total(lambda o: o.space.body_lift_mm)
    return b.van.height_mm + max(kit + top, fixed) + lift + 30, b.n("parking_limit_mm") or None


def _gap(b: Build, reach: list[float], least: float) -> Pair:
    fronts = b.each(lambda o: o.space.front_x_mm)
    if not fronts or not reach:
        return NOTHING
    return min(fronts) + b.total(lambda o: o.space.bench_shift_mm) - max(reach), least


def fridge_gap(b: Build) -> Pair:
    doors = [p.option for p in b.pieces if "front-door-fridge" in p.option.gives and p.option.position]
    ends = []
    for fridge in doors:
        assert fridge.position is not None
        assert fridge.space.length_mm is not None
        x_mm = fridge.position.x_mm
        if fridge.position.anchor == "rear":
            x_mm += b.van.rear_sill_x_mm
        ends.append(x_mm + fridge.space.length_mm / 2)
    return _gap(b, ends, 20)


def bed_length(b: Build) -> Pair:
    shift = b.total(lambda o: o.space.bench_shift_mm)
    lengths = [
        p.option.space.bed_length_mm - (shift if any("bed-from-bench" in n.any_of for n in p.option.needs) else 0)
        for p in b.pieces
        if _berths(p.option) and p.option.space.bed_length_mm is not None
    ]
    tallest = b.n("tallest_sleeper_mm")
    return (max(lengths), tallest + 100 if tallest else None) if lengths else NOTHING


def zone_use(b: Build) -> Pair:
    claims, claimed = Counter(b.van.zones_taken), set()
    for option, count, place in b.pieces:
        for zone in option.zones:
            where = zone.replace("@side", f"@{place}") if place else zone
            claims[where] += count  # type: ignore[index]  # a zone is text
            claimed.add(where)
        for zone in option.frees_zones:
            claims[zone] -= 1
    return max((max(0, claims[z]) for z in claimed), default=0), 1  # type: ignore[index]  # as above


def _supplied(b: Build) -> bool:
    return b.gives("firm-supplies-van")


def price(b: Build) -> Pair:
    net = b.total(lambda o: o.price_net_pence)
    if _supplied(b) and b.brief["van_in_ceiling"] == "yes":
        net += b.van.price_net_supplied_pence
    return floor(1.2 * net + 0.5 + 1e-9), b.n("ceiling_gross_pence") or None


def weeks(b: Build) -> Pair:
    slowest = max(b.each(lambda o: o.lead_weeks), default=0)
    return max(slowest, b.van.lead_weeks) if _supplied(b) else slowest, b.n("weeks_wanted") or None


def battery_box(b: Build) -> Pair:
    sizes, places = b.each(lambda o: o.power.battery_ah), b.each(lambda o: o.space.max_ah)
    return (max(sizes), min(places, default=None)) if sizes else NOTHING


def heat(b: Build) -> Pair:
    heaters = [(p, p.option.heat.heater_kw) for p in b.pieces if p.option.heat.heater_kw]
    if not heaters:
        return NOTHING
    plugged = b.brief["plugged_every_night"] == "yes"
    kw = sum(kw * p.many for p, kw in heaters if kw and (plugged or p.option.heat.heater_fuel != "hook-up"))
    loss = b.van.ua_w_per_k + b.total(lambda o: o.heat.heat_loss_down_w_per_k)
    if b.n("sleepers_upstairs") > 0 and b.gives("elevating-roof"):
        loss += b.total(lambda o: o.heat.heat_loss_up_w_per_k)
    return kw, 1.2 * loss * (20 - b.n("design_temp_c")) / 1000


def high_vents(b: Build) -> Pair:
    needed = b.van.vent_high_flame_mm2 if b.gives("open-flame") else b.van.vent_high_sealed_mm2
    return b.total(lambda o: 0 if "vents-only-roof-up" in o.gives else o.heat.vent_high_mm2), needed


def low_vents(b: Build) -> Pair:
    needed = b.van.vent_low_flame_mm2 if b.gives("open-flame") else b.van.vent_low_sealed_mm2
    return b.total(lambda o: o.heat.vent_low_mm2), needed


def waste_share(b: Build) -> Pair:
    waste = b.total(lambda o: o.water.waste_l if o.water.waste_fixed else 0)
    fresh = b.total(lambda o: o.water.fresh_full_l)
    return (waste / fresh, 0.5) if waste and fresh else NOTHING


def fresh_water_days(b: Build) -> Pair:
    litres = b.total(lambda o: o.water.fresh_full_l)
    return (litres / 10 / (b.n("adults") + b.n("children")), b.n("nights_off_grid")) if litres else NOTHING


def heater_nights(b: Build) -> Pair:
    if not b.gives("fuel-line"):
        return NOTHING
    own = b.total(lambda o: o.heat.own_tank_l or 0)
    litres = own or max(0, 0.5 * b.van.tank_l - b.van.fuel_reserve_l)
    hob = 0.12 if any(p.option.heat.cooker_fuel == "diesel" for p in b.pieces) else 0
    petrol = any(p.option.heat.heater_fuel == "petrol" for p in b.pieces)
    return litres / (0.9 * 9 / (0.85 * (8.8 if petrol else 9.97)) + hob), b.n("nights_off_grid")


PLAIN: Mapping[str, Callable[[Build], Pair]] = {
    "total-mass": total_mass,
    "pay-mass": pay_mass,
    "unladen-mass": unladen_mass,
    "roof-load-closed": roof_closed,
    "roof-load-raised": roof_raised,
    "roof-bed-load": roof_bed,
    "belts": lambda b: (b.total(lambda o: o.space.belts), b.n("adults") + b.n("children")),
    "berths": lambda b: (b.total(_berths), b.n("sleepers")),
    "berths-over-belts": lambda b: (b.total(_berths) - b.total(lambda o: o.space.belts), None),
    "cross-width": lambda b: (b.total(lambda o: o.space.cross_width_mm), b.van.inside_width_mm),
    "way-out": lambda b: (b.van.sliding_door_width_mm - b.total(lambda o: o.space.way_out_take_mm), 500),
    "zone-use": zone_use,
    "gas-bottles": lambda b: (b.total(lambda o: o.heat.gas_bottles), 2),
    "fuel-pickups": lambda b: (b.total(lambda o: o.heat.pickups_used), b.total(lambda o: o.heat.pickups_supplied)),
    "heat": heat,
    "high-vents": high_vents,
    "low-vents": low_vents,
    "waste-share": waste_share,
    "fresh-water-days": fresh_water_days,
    "heater-nights": heater_nights,
    "closed-height": closed_height,
    "swivel-gap": lambda b: _gap(b, b.each(lambda o: o.space.swivel_sweep_x_mm), 40),
    "fridge-door-gap": fridge_gap,
    "bed-length": bed_length,
    "bed-width": lambda b: (
        b.total(lambda o: o.space.bed_width_mm if _berths(o) else 0),
        500 * b.n("sleepers"),
    ),
    "battery-box": battery_box,
    "price-gross": price,
    "lead-weeks": weeks,
    "quote-age": lambda b: (b.n("age_days"), 30),
    "workshop-hours": lambda b: (16 + b.total(lambda o: o.labour_h + 0.6 * len(o.circuits)), None),
}
