"""The van and the options of the scene."""

from __future__ import annotations

from dataclasses import replace

from specbuilder.model.catalogue import Option
from specbuilder.model.circuits import CircuitCode, CircuitProblem
from specbuilder.model.ids import BASE_VAN_GROUP, CautionId, GroupId, OptionId, PaperId
from specbuilder.model.kinds import Anchor, Place
from specbuilder.model.parts import Circuit, Hole, Position, Space
from tests.scenes.cable import PUMP
from tests.scenes.van import FENWAIN


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
    replace(
        PUMP,
        id="fridge-drawer-c1",
        label=f"fridge-drawer-c1/{number}",
        option=FRIDGE.id,
        circuit="fridge feed",
        to_point="fridge",
        load_w=60,
        load_a=5,
        run_one_way_m=3.5,
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
SHORT = Option(
    id=OptionId("fenwain-short"),
    group=BASE_VAN_GROUP,
    name=FENWAIN.name,
    build_step="B0",
    van=replace(FENWAIN, width_mm=1920, f_max_kg=1600, r_max_kg=1700, no_drill_zones=("sills", "floor above the tank")),
)
