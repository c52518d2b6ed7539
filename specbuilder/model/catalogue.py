"""What can be built: everything read from ``rules/``, as frozen values."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from .brief import BriefLine, Question
from .ids import BASE_VAN_GROUP, BriefKey, CautionId, GroupId, LedgerId, OptionId, PaperId, RuleId, Tag, Zone
from .kinds import Anchor, Basis, Confidence, Pick, Place, RoofPart, Step
from .ledger import LedgerSpec
from .origin import NOWHERE, Origin
from .rules import Rule


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
    berths_down: int = 0
    berths_up: int = 0
    bed_length_mm: float | None = None
    bed_width_mm: float = 0
    max_ah: float | None = None
    plate_raise_kg: float = 0
    rear_axle_raise_kg: float = 0
    body_lift_mm: float = 0
    """How much higher the whole body stands; adds to the closed height, nothing sits on it."""


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
class Circuit:
    """One cable run. No conductor and no fuse rating on purpose: computed, or from the part's own data."""

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
    origin: Origin = NOWHERE


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
    fitting_parts: tuple[OptionId, ...] = ()
    """Options whose ``fits_vans`` do not name this van yet although their papers do."""
    no_drill_boxes: tuple[NoDrillBox, ...] = ()
    """What ``no_drill_zones`` say of the floor, in figures; a floor hole that touches one may not be cut."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """An answer of a group."""

    id: OptionId
    group: GroupId
    name: str
    description: str = ""
    price_net_pence: int = 0
    """Fitted price without tax."""
    labour_h: float = 0
    lead_weeks: float = 0
    mass_kg: float = 0
    position: Position | None = None
    door_position: Position | None = None
    """Its place on a side with a sliding door, where that is another one."""
    exhaust_outlet: Position | None = None
    """End of its exhaust for the usual side. Set, ``places`` say where the exhaust ends, and the part itself stays."""
    exhaust_outlet_rear: Position | None = None
    """The same for the rear, as written."""
    body_stays: bool = False
    """It keeps the written y although others of its group turn with something."""
    sits_at: GroupId | None = None
    """As ``sits_at`` of a group, for this option alone."""
    drawn_for: tuple[OptionId, ...] = ()
    """Its place holds only beside one of these and is measured on the van beside others; empty: always."""
    build_step: str = ""
    """B0 to B11."""
    places: tuple[Place, ...] = ()
    """Places it may take, the usual one first; empty: it has no side."""
    fits_vans: tuple[OptionId, ...] = ()
    """Empty: all."""
    max_count: int = 1
    gives: tuple[Tag, ...] = ()
    """A tag ending ``@side`` also gives the bare tag."""
    needs: tuple[Need, ...] = ()
    needs_because: str = ""
    zones: tuple[Zone, ...] = ()
    """``@side`` stands for the chosen place."""
    frees_zones: tuple[Zone, ...] = ()
    papers: tuple[PaperId, ...] = ()
    hold_points: tuple[str, ...] = ()
    cautions: tuple[CautionId, ...] = ()
    basis: Basis = Basis.ESTIMATE
    source: str = ""
    zero_note: str = ""
    """Why mass or price is nought; never by accident."""
    is_none: bool = False
    """This answer means *none of these* and takes nothing."""
    refused: bool = False
    """Kept only so that it can be refused with a reason: no build without a STOP holds it."""
    colour: str = ""
    """Shown colour or finish, where the option is a colour choice."""
    handover: tuple[str, ...] = ()
    """What is said about it on collection day."""
    space: Space = Space()
    power: Power = Power()
    heat: Heat = Heat()
    water: Water = Water()
    circuits: tuple[Circuit, ...] = ()
    holes: tuple[Hole, ...] = ()
    van: Van | None = None
    """Set for the options of group base-van only."""
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """A question inside a step."""

    id: GroupId
    step: Step
    name: str
    """One or two words for the row, e.g. ``Galley``."""
    question: str
    pick: Pick
    none_is_an_answer: bool
    max_choices: int = 1
    compulsory_before_signing: bool = False
    usual: tuple[OptionId, ...] = ()
    """House usual: pick one takes the first that is not blocked; pick any takes all that are not."""
    seller_note: str = ""
    turns_with: GroupId | None = None
    """Drawn for a choice of that group on the right: while it sits on the left, y of these options changes sign."""
    sits_at: GroupId | None = None
    """These options sit where the choice of that group does, whatever position they have of their own."""
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    id: CautionId
    text: str
    shown_where: str
    who_must_do_or_sign: str
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """A paper that others sign."""

    id: PaperId
    name: str
    signed_by: str
    at_hold_point: str
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkStep:
    """One step of the build with its hold point."""

    id: str
    work: str
    hours_fixed: float
    hours_per_circuit: float
    hours_basis: str
    predecessors: tuple[str, ...]
    hold_point: str
    hold_text: str
    pass_figures: str
    freezes: tuple[str, ...]
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of an engineering table; a row outside least..most is a slip of the pen."""

    key: str
    least: float | None = None
    most: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """An engineering table with its source. Rows hold text or numbers, in the order of the columns."""

    id: str
    name: str
    source: str
    confidence: Confidence
    columns: tuple[Column, ...]
    rows: tuple[tuple[str | float, ...], ...]
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Firm:
    """The house that builds. Money in whole pence."""

    name: str
    town: str
    currency: str
    vat_percent: float
    deposit_percent: float
    quote_valid_days: int
    undo_rate_net_pence_per_h: int
    """Only for undoing work already done: prices of parts are fitted prices."""
    catalogue_version: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Catalogue:
    """Everything of ``rules/``. Mappings keep file order, which is the order on screen. Equality is identity."""

    firm: Firm
    questions: Mapping[int, Question]
    brief: Mapping[BriefKey, BriefLine]
    """Lines of the brief and of the job state (those have no question)."""
    groups: Mapping[GroupId, Group]
    options: Mapping[OptionId, Option]
    """All options, the base vans among them (group base-van)."""
    rules: Mapping[RuleId, Rule]
    ledgers: Mapping[LedgerId, LedgerSpec]
    work: Mapping[str, WorkStep]
    cautions: Mapping[CautionId, Caution]
    papers: Mapping[PaperId, Paper]
    tables: Mapping[str, Table]
    digest: str
    """Hash over all files, so that a spec can say what it was computed with."""

    def options_of(self, group: GroupId) -> tuple[Option, ...]:
        """The group's options in file order."""
        return tuple(o for o in self.options.values() if o.group == group)

    def groups_of(self, step: Step) -> tuple[Group, ...]:
        """The step's groups in file order."""
        return tuple(g for g in self.groups.values() if g.step is step)

    @property
    def vans(self) -> tuple[Option, ...]:
        """The base vans."""
        return self.options_of(BASE_VAN_GROUP)
