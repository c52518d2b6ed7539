"""The van and the options of the scene."""

from __future__ import annotations

from specbuilder.model.catalogue import Option
from specbuilder.model.circuits import CircuitCode, CircuitLine, CircuitProblem
from specbuilder.model.ids import BASE_VAN_GROUP, CautionId, GroupId, OptionId, PaperId
from specbuilder.model.kinds import Anchor, Place
from specbuilder.model.parts import Circuit, Hole, Position, Space
from specbuilder.model.vans import Van

VAN = Van(
    name="Fenwain Short",
    family="fenwain",
    fuel="diesel",
    driven_axle="front",
    sliding_doors=(Place.LEFT,),
    rear_doors="tailgate",
    steering_sides=(Place.RIGHT,),
    m_max_kg=3000,
    f_max_kg=1600,
    r_max_kg=1700,
    mro_kg=1960,
    mro_front_kg=1150,
    mro_rear_kg=810,
    wheelbase_mm=3040,
    length_mm=4930,
    width_mm=1920,
    height_mm=1960,
    load_length_mm=2520,
    inside_width_mm=1610,
    inside_height_mm=1400,
    between_arches_mm=1240,
    arch_start_x_mm=1600,
    arch_end_x_mm=2300,
    arch_height_mm=250,
    datum_from_front_axle_mm=1000,
    rear_axle_x_mm=2040,
    rear_sill_x_mm=2520,
    track_mm=1640,
    front_min_share=0.35,
    sliding_door_width_mm=930,
    roof_panel_length_mm=2400,
    roof_panel_width_mm=1300,
    roof_load_kg=150,
    roof_foot_kg=50,
    tank_l=70,
    fuel_density_kg_per_l=0.84,
    factory_fuel_tap=True,
    spare_tank_ports=1,
    fuel_reserve_l=7,
    alternator_type="variable",
    alternator_a=180,
    curtain_airbags=True,
    hv_battery=False,
    no_drill_zones=("sills", "floor above the tank"),
    zones_taken=(),
    ua_w_per_k=40,
    plan_area_m2=4,
    vent_high_flame_mm2=9000,
    vent_low_flame_mm2=9000,
    vent_high_sealed_mm2=4000,
    vent_low_sealed_mm2=4000,
    price_net_supplied_pence=3_000_000,
    lead_weeks=8,
    gives=(),
    remark="",
    source="scenario",
)


def at(x_mm: float, y_mm: float, z_mm: float, anchor: Anchor = Anchor.DATUM) -> Position:
    return Position(anchor=anchor, x_mm=x_mm, y_mm=y_mm, z_mm=z_mm)


GALLEY = Option(
    id=OptionId("side-galley"),
    group=GroupId("galley"),
    name="Side galley",
    price_net_pence=234000,
    lead_weeks=4,
    mass_kg=92,
    position=at(1250, -585, 450),
    build_step="B7",
    places=(Place.RIGHT, Place.LEFT),
    hold_points=("H6",),
    space=Space(length_mm=1950, width_mm=440, height_mm=900),
)
HOB = Option(
    id=OptionId("gas-bundle"),
    group=GroupId("cooking"),
    name='Gas kit: hob, store, "drop vent"',
    price_net_pence=78000,
    mass_kg=21,
    position=at(1250, -585, 600),
    build_step="B7",
    papers=(PaperId("gas-paper"),),
    cautions=(CautionId("gas-work"),),
    holes=(
        Hole(
            id="gas-bundle-h1",
            what="drop vent",
            surface="floor",
            position=at(-350, -520, 0, Anchor.REAR),
            width_mm=None,
            height_mm=None,
            diameter_mm=60,
            corner_radius_mm=None,
            cut_from="inside",
            edge_treatment="primer, sealant",
            check_behind="fuel pipe, brake pipe",
            freeze_step="B2",
            tolerance_mm=2,
        ),
    ),
)
FRIDGE = Option(
    id=OptionId("fridge-drawer"),
    group=GroupId("fridge"),
    name="Drawer fridge",
    price_net_pence=69000,
    mass_kg=19,
    position=at(300, -400, 300),
    build_step="B7",
    max_count=2,
    circuits=(
        Circuit(
            id="fridge-drawer-c1",
            circuit="fridge feed",
            from_point="12 V panel",
            to_point="fridge",
            bus="dc",
            load_w=60,
            load_a=5,
            run_one_way_m=3.5,
            drop_limit_pct=3,
            protection="blade fuse",
        ),
    ),
)
FRIDGE_FEEDS = tuple(
    CircuitLine(
        id="fridge-drawer-c1",
        label=f"fridge-drawer-c1/{number}",
        option=FRIDGE.id,
        circuit="fridge feed",
        from_point="12 V panel",
        to_point="fridge",
        bus="dc",
        load_w=60,
        load_a=5,
        run_one_way_m=3.5,
        drop_limit_pct=3,
        volts_v=12,
        area_mm2=2.5,
        insulation_c=70,
        carries_a=15,
        fuse_a=7.5,
        fuse_kind="blade",
        fuse_place="in the 12 V panel",
        drop_v=0.31224,
        drop_pct=2.602,
        problems=(
            CircuitProblem(code=CircuitCode.SHORT_CIRCUIT_UNKNOWN),
            CircuitProblem(code=CircuitCode.FUSE_WINDOW_EMPTY_UNTIL, has=1.5, needs=2.5),
        ),
    )
    for number in (1, 2)
)
"""What the schedule says of two of these fridges."""
WINDOW = Option(
    id=OptionId("window-fixed"),
    group=GroupId("windows"),
    name="Fixed window",
    price_net_pence=29000,
    mass_kg=12,
    position=at(-750, 840, 900, Anchor.REAR),
    build_step="B2",
    places=(Place.LEFT, Place.RIGHT),
    max_count=2,
)
BATTERY = Option(
    id=OptionId("battery-small"),
    group=GroupId("battery"),
    name="Small pack",
    price_net_pence=89000,
    mass_kg=13,
    position=at(1550, -560, 250),
    build_step="B8",
)
BOX = Option(
    id=OptionId("place-box"),
    group=GroupId("battery-place"),
    name="In the driver's box",
    position=at(-180, -350, 120),
    build_step="B8",
)
FENWAIN = Option(id=OptionId("fenwain-short"), group=BASE_VAN_GROUP, name="Fenwain Short", build_step="B0", van=VAN)
