"""The body of a base van: geometry, masses, limits, and where nobody may drill."""

from __future__ import annotations

from dataclasses import dataclass

from .ids import CautionId, OptionId, Tag, Zone
from .kinds import Basis, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class NoDrillBox:
    """A part of the floor that may not be drilled, on the job datum, mm; the van maker's drawing goes first."""

    what: str
    from_x_mm: float
    to_x_mm: float
    from_y_mm: float
    to_y_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Van:
    """A base van body. Running-order mass includes the driver (75 kg) and 90 % fuel."""

    name: str
    family: str
    fuel: str
    driven_axle: str
    sliding_doors: tuple[Place, ...]
    rear_doors: str
    steering_sides: tuple[Place, ...]
    m_max_kg: float
    f_max_kg: float
    r_max_kg: float
    mro_kg: float
    mro_front_kg: float
    mro_rear_kg: float
    wheelbase_mm: float
    length_mm: float
    width_mm: float
    height_mm: float
    load_length_mm: float
    inside_width_mm: float
    inside_height_mm: float
    between_arches_mm: float
    arch_start_x_mm: float
    arch_end_x_mm: float
    arch_height_mm: float
    datum_from_front_axle_mm: float
    rear_axle_x_mm: float
    rear_sill_x_mm: float
    track_mm: float
    front_min_share: float
    sliding_door_width_mm: float
    roof_panel_length_mm: float
    roof_panel_width_mm: float
    roof_load_kg: float
    roof_foot_kg: float
    tank_l: float
    fuel_density_kg_per_l: float
    factory_fuel_tap: bool
    spare_tank_ports: int
    fuel_reserve_l: float
    alternator_type: str
    alternator_a: float
    curtain_airbags: bool
    hv_battery: bool
    no_drill_zones: tuple[str, ...]
    zones_taken: tuple[Zone, ...]
    """A zone named twice is claimed twice."""
    ua_w_per_k: float
    plan_area_m2: float
    vent_high_flame_mm2: float
    vent_low_flame_mm2: float
    vent_high_sealed_mm2: float
    vent_low_sealed_mm2: float
    price_net_supplied_pence: int
    lead_weeks: float
    gives: tuple[Tag, ...]
    remark: str
    source: str
    basis: Basis = Basis.SCENARIO
    cautions: tuple[CautionId, ...] = ()
    """What is said with every build in this van."""
    fitting_parts: tuple[OptionId, ...] = ()
    """Options whose ``fits_vans`` do not name this van yet although their papers do."""
    no_drill_boxes: tuple[NoDrillBox, ...] = ()
    """What ``no_drill_zones`` say of the floor, in figures; a floor hole that touches one may not be cut."""
