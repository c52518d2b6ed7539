"""What a figure of the catalogue can be at all. Outside of that it is a slip of the pen, and nothing is summed with it.

These are wide on purpose: what is merely unusual is for an audit to name, not for a sum to refuse.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import inf, isfinite
from types import MappingProxyType
from typing import NamedTuple

from .catalogue import Option
from .kinds import Anchor
from .parts import NO_HEAT, NO_POWER, NO_WATER, Position
from .vans import Van


class Range(NamedTuple):
    """From least to most; ``open`` leaves the least itself out."""

    least: float
    most: float
    open: bool = False

    def holds(self, value: float) -> bool:
        """Whether it can be so."""
        return isfinite(value) and (self.least < value if self.open else self.least <= value) and value <= self.most


@dataclass(frozen=True, slots=True)
class Doubt:
    """A figure that cannot be right."""

    key: str
    """Where it stands in the table of the option or the van: ``mass_kg``, ``position.x_mm``."""
    value: float
    range: Range


OWN_MASS = Range(0, 1_000)
"""kg, of what has a body of its own."""
TAKEN_OUT = Range(-100, 1_000)
"""The same of what may also stand for something that leaves the van."""
MARGIN_MM = 700.0
"""So far beyond the body things may hang: racks, awnings, a step, a bar before the front."""
BELOW_FLOOR_MM = -800.0
"""So far under the bare floor they may hang."""

OPTION_RANGES: Mapping[str, Range] = MappingProxyType(
    {
        "labour_h": Range(0, 2_000),
        "lead_weeks": Range(0, 260),
        "space.roof_mass_kg": Range(-100, 500),
        "space.roof_allow_raised_kg": Range(0, 500),
        "space.roof_allow_closed_kg": Range(0, 1_000),
        "space.roof_bed_rating_kg": Range(0, 1_000, open=True),
        "space.belts": Range(0, 9),
        "space.berths_down": Range(0, 9),
        "space.berths_up": Range(0, 9),
        "space.seat_x_mm": Range(-3_000, 9_000),
        "space.front_x_mm": Range(-3_000, 9_000),
        "space.swivel_sweep_x_mm": Range(-3_000, 9_000),
        "space.bench_shift_mm": Range(-3_000, 3_000),
        "space.length_mm": Range(0, 12_000, open=True),
        "space.cross_width_mm": Range(0, 3_000),
        "space.way_out_take_mm": Range(0, 3_000),
        "space.height_above_roof_mm": Range(0, 3_000),
        "space.body_lift_mm": Range(-500, 1_000),
        "space.bed_length_mm": Range(0, 3_000, open=True),
        "space.bed_width_mm": Range(0, 4_000),
        "space.max_ah": Range(0, 5_000, open=True),
        "space.plate_raise_kg": Range(0, 4_000),
        "space.rear_axle_raise_kg": Range(0, 3_000),
        "power.watts_running": Range(0, 10_000),
        "power.watts_peak": Range(0, 50_000),
        "power.hours_summer": Range(0, 24),
        "power.hours_winter": Range(0, 24),
        "power.duty_summer": Range(0, 1),
        "power.duty_winter": Range(0, 1),
        "power.start_wh": Range(0, 500),
        "power.battery_ah": Range(0, 5_000, open=True),
        "power.battery_v": Range(5, 100),
        "power.depth_of_discharge": Range(0, 1, open=True),
        "power.bms_continuous_a": Range(0, 2_000, open=True),
        "power.packs_parallel": Range(1, 20),
        "power.inverter_w": Range(0, 20_000, open=True),
        "power.inverter_efficiency": Range(0.3, 1),
        "power.inverter_idle_w": Range(0, 500),
        "power.engine_charge_a": Range(0, 500),
        "power.engine_input_a": Range(0, 500),
        "power.mains_charge_a": Range(0, 500),
        "power.solar_w": Range(0, 5_000),
        "power.panel_voc_v": Range(0, 300, open=True),
        "power.solar_controller_max_v": Range(0, 1_000, open=True),
        "heat.heater_kw": Range(0, 50),
        "heat.fuel_l_per_h": Range(0, 10),
        "heat.own_tank_l": Range(0, 500),
        "heat.gas_bottles": Range(0, 20),
        "heat.gas_kg": Range(0, 200),
        "heat.vent_high_mm2": Range(0, 2_000_000),
        "heat.vent_low_mm2": Range(0, 2_000_000),
        "heat.heat_loss_down_w_per_k": Range(-300, 500),
        "heat.heat_loss_up_w_per_k": Range(-300, 500),
        "heat.pickups_used": Range(0, 10),
        "heat.pickups_supplied": Range(0, 10),
        "water.fresh_full_l": Range(0, 1_000),
        "water.fresh_travel_l": Range(0, 1_000),
        "water.fresh_travel_cap_l": Range(0, 1_000),
        "water.waste_l": Range(0, 1_000),
        "water.extra_water_l": Range(0, 200),
    }
)
"""Of options; a figure that is not given is not looked at."""

VAN_RANGES: Mapping[str, Range] = MappingProxyType(
    {
        "m_max_kg": Range(800, 12_000),
        "f_max_kg": Range(300, 8_000),
        "r_max_kg": Range(300, 8_000),
        "mro_kg": Range(500, 10_000),
        "mro_front_kg": Range(200, 6_000),
        "mro_rear_kg": Range(150, 6_000),
        "wheelbase_mm": Range(1_000, 10_000),
        "length_mm": Range(2_000, 12_000),
        "width_mm": Range(1_000, 3_000),
        "height_mm": Range(1_000, 4_500),
        "inside_width_mm": Range(500, 3_000),
        "sliding_door_width_mm": Range(200, 3_000),
        "datum_from_front_axle_mm": Range(-2_000, 5_000),
        "rear_axle_x_mm": Range(-2_000, 8_000),
        "rear_sill_x_mm": Range(500, 10_000),
        "track_mm": Range(1_000, 3_000),
        "front_min_share": Range(0, 0.6),
        "roof_load_kg": Range(0, 1_000),
        "tank_l": Range(0, 500),
        "fuel_density_kg_per_l": Range(0, 1.2),
        "fuel_reserve_l": Range(0, 200),
        "alternator_a": Range(0, 1_000, open=True),
        "ua_w_per_k": Range(0, 1_000, open=True),
        "vent_high_flame_mm2": Range(0, 2_000_000, open=True),
        "vent_low_flame_mm2": Range(0, 2_000_000, open=True),
        "vent_high_sealed_mm2": Range(0, 2_000_000, open=True),
        "vent_low_sealed_mm2": Range(0, 2_000_000, open=True),
        "lead_weeks": Range(0, 260),
    }
)
"""Of base vans."""


def van_doubts(van: Van) -> Iterator[Doubt]:
    """Figures of a base van that cannot be right."""
    for key, bounds in VAN_RANGES.items():
        value = float(getattr(van, key))
        if not bounds.holds(value):
            yield Doubt(key, value, bounds)


def option_doubts(option: Option, vans: tuple[Van, ...]) -> Iterator[Doubt]:
    """Figures of an option that cannot be right; ``vans`` are those it fits."""
    bounds = OWN_MASS if has_body(option) else TAKEN_OUT
    if not bounds.holds(option.mass_kg):
        yield Doubt("mass_kg", option.mass_kg, bounds)
    for key, bounds in OPTION_RANGES.items():
        table, _, name = key.rpartition(".")
        value = getattr(getattr(option, table) if table else option, name)
        if value is not None and not bounds.holds(float(value)):
            yield Doubt(key, float(value), bounds)
    full_l = option.water.fresh_full_l
    if option.water.fresh_travel_l > full_l >= 0:
        yield Doubt("water.fresh_travel_l", option.water.fresh_travel_l, Range(0, full_l))
    yield from _place_doubts(option.position, vans)


def has_body(option: Option) -> bool:
    """Whether it is a thing that stands in the van, not one that leaves or changes it."""
    space = option.space
    sized = any(size is not None for size in (space.length_mm, space.width_mm, space.height_mm))
    works = option.power != NO_POWER or option.heat != NO_HEAT or option.water != NO_WATER
    return sized or works or bool(option.circuits or option.zones)


def _place_doubts(position: Position | None, vans: tuple[Van, ...]) -> Iterator[Doubt]:
    """Where it lies beyond every van it fits, sides and roof with what may hang there."""
    sound = [van for van in vans if not any(True for _ in van_doubts(van))]
    if position is None or not sound:
        return
    for key, value, ranges in (
        ("position.x_mm", position.x_mm, [_along(van, position.anchor) for van in sound]),
        ("position.y_mm", position.y_mm, [_across(van) for van in sound]),
        ("position.z_mm", position.z_mm, [Range(BELOW_FLOOR_MM, van.height_mm + MARGIN_MM) for van in sound]),
    ):
        if not any(one.holds(value) for one in ranges):
            widest = Range(min(one.least for one in ranges), max(one.most for one in ranges))
            yield Doubt(key, value, widest if isfinite(value) else Range(-inf, inf))


def _along(van: Van, anchor: Anchor) -> Range:
    """Front and rear end of the body as seen from the anchor."""
    from_datum = {Anchor.DATUM: 0.0, Anchor.REAR: van.rear_sill_x_mm, Anchor.AXLE_REAR: van.rear_axle_x_mm}[anchor]
    rear = van.rear_sill_x_mm - from_datum
    return Range(rear - van.length_mm - MARGIN_MM, rear + MARGIN_MM)


def _across(van: Van) -> Range:
    return Range(-van.width_mm / 2 - MARGIN_MM, van.width_mm / 2 + MARGIN_MM)
