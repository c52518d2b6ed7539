"""What an option is made of: its place, sizes, power, heat, water, needs, cable runs and cuts."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from .ids import Tag
from .kinds import Anchor, RoofPart
from .origin import NOWHERE, Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class Position:
    """Centre of mass of an option on the job datum, for its usual place.

    x back from the rear face of the left door pillar (or as ``anchor`` says), y from the centre line with + left,
    z up from the bare floor, all in mm.
    """

    anchor: Anchor
    x_mm: float
    y_mm: float
    z_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Space:
    """Sizes, roof, seats and beds of an option; 0 or None where it does not apply."""

    length_mm: float | None = None
    width_mm: float | None = None
    height_mm: float | None = None
    height_above_roof_mm: float | None = None
    roof_part: RoofPart | None = None
    roof_mass_kg: float = 0
    roof_allow_raised_kg: float = 0
    roof_allow_closed_kg: float | None = None
    roof_bed_rating_kg: float | None = None
    belts: int = 0
    seat_x_mm: float | None = None
    front_x_mm: float | None = None
    bench_shift_mm: float = 0
    swivel_sweep_x_mm: float | None = None
    cross_width_mm: float = 0
    way_out_take_mm: float = 0
    swing_mm: float | None = None
    lid_swing_mm: float | None = None
    pull_out_mm: float | None = None
    """How far it comes out of the unit it stands in, as a drawer does."""
    strap_points: int = 0
    """Points for the top straps of child seats."""
    berths_down: int = 0
    berths_up: int = 0
    bed_length_mm: float | None = None
    bed_width_mm: float = 0
    max_ah: float | None = None
    plate_raise_kg: float = 0
    rear_axle_raise_kg: float = 0
    body_lift_mm: float = 0
    """How much higher the whole body stands; adds to the closed height, nothing sits on it."""


LITHIUM = frozenset({"LFP"})
LEAD = frozenset({"AGM", "gel", "wet lead"})
"""Kinds of battery, as the tables of batteries name them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Power:
    """Watts, hours, battery, inverter, chargers and panels of an option."""

    bus: str = ""
    """dc, shared, hookup-only, battery, inverter or solar."""
    watts_running: float | None = None
    watts_peak: float | None = None
    hours_summer: float | None = None
    hours_winter: float | None = None
    duty_summer: float | None = None
    duty_winter: float | None = None
    starts_summer: float = 0
    starts_winter: float = 0
    start_wh: float = 0
    hookup_at_once: bool = False
    ac_role: str = ""
    battery_ah: float | None = None
    battery_v: float | None = None
    chemistry: str = ""
    """LFP or AGM."""
    bms_continuous_a: float | None = None
    bms_peak_a: float | None = None
    packs_parallel: int | None = None
    depth_of_discharge: float | None = None
    short_circuit_ka: float | None = None
    inverter_w: float | None = None
    inverter_surge_w: float | None = None
    inverter_efficiency: float | None = None
    inverter_idle_w: float | None = None
    engine_charge_a: float | None = None
    engine_input_a: float | None = None
    mains_charge_a: float | None = None
    solar_w: float | None = None
    panel_voc_v: float | None = None
    panel_isc_a: float | None = None
    solar_controller_a: float | None = None
    solar_controller_max_v: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Heat:
    """Heaters, fuel, gas, vents and heat loss of an option."""

    heater_kw: float | None = None
    heater_fuel: str = ""
    fuel_l_per_h: float | None = None
    start_a: float | None = None
    pickups_used: int = 0
    pickups_supplied: int = 0
    tank_ports_used: int = 0
    own_tank_l: float | None = None
    fits_fuel: str = ""
    cooker_fuel: str = ""
    gas_kw_gross: float | None = None
    gas_bottles: int = 0
    gas_kg: float = 0
    gas_locker_floor_mm2: float | None = None
    gas_locker_vent_mm2: float | None = None
    vent_high_mm2: float = 0
    vent_low_mm2: float = 0
    battery_vent_cm2: float | None = None
    fridge_air_cm2: float | None = None
    heat_loss_down_w_per_k: float = 0
    heat_loss_up_w_per_k: float = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Water:
    """Tanks and other water of an option; a litre counts one kilogram."""

    fresh_full_l: float = 0
    fresh_travel_l: float = 0
    fresh_travel_cap_l: float | None = None
    waste_l: float = 0
    waste_fixed: bool = False
    boiler_l: float = 0
    extra_water_l: float = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """Tags of which some choice or the van must give one, e.g. ``elevating-roof`` or ``high-cap``."""

    any_of: tuple[Tag, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitStart:
    """Another place where a cable run starts, because of what else is chosen."""

    from_point: str
    beside: tuple[Tag, ...]
    """It starts there where every one of these is given."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Circuit:
    """One cable run. Section and fuse are computed, unless the part's own data state them."""

    id: str
    circuit: str
    from_point: str
    to_point: str
    bus: str
    load_w: float
    load_a: float
    run_one_way_m: float
    drop_limit_pct: float | None
    protection: str
    only_with: tuple[Tag, ...] = ()
    """Run only beside a choice or a van that gives one of these; empty: always."""
    other_starts: tuple[CircuitStart, ...] = ()
    """The first of which every tag is given goes before ``from_point``: one run, fed by one thing in each build."""
    own_area_mm2: float | None = None
    """The section the part's own paper asks for; it goes before a computed one."""
    own_fuse_a: float | None = None
    """The fuse or breaker the part's own paper asks for; the same."""
    origin: Origin = NOWHERE

    def is_run(self, given: Collection[str]) -> bool:
        """Whether it is run beside what gives these tags."""
        return not self.only_with or any(tag in given for tag in self.only_with)

    def starts_at(self, given: Collection[str]) -> str:
        """Where it starts beside what gives these tags."""
        fits = (start for start in self.other_starts if all(tag in given for tag in start.beside))
        return next((start.from_point for start in fits), self.from_point)


@dataclass(frozen=True, slots=True, kw_only=True)
class Hole:
    """One cut in the van."""

    id: str
    what: str
    surface: str
    position: Position
    width_mm: float | None
    height_mm: float | None
    diameter_mm: float | None
    corner_radius_mm: float | None
    cut_from: str
    edge_treatment: str
    check_behind: str
    freeze_step: str
    tolerance_mm: float
    door_position: Position | None = None
    """Its place on a side with a sliding door, where that is another one."""
    measure: str = ""
    """How its place is found on the van; set, ``position`` is no figure to cut by."""
    unless_given: tuple[Tag, ...] = ()
    """Not cut beside a choice or a van that gives one of these."""
    origin: Origin = NOWHERE


NO_SPACE, NO_POWER, NO_HEAT, NO_WATER = Space(), Power(), Heat(), Water()
"""Of an option without such a table."""
