"""Random small catalogues and situations in which every sum has something to sum."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from hypothesis import strategies as st

from specbuilder.model.catalogue import Group, Option
from specbuilder.model.kinds import Anchor, RoofPart
from specbuilder.model.parts import Circuit, Heat, Position, Power, Space, Water
from specbuilder.model.situation import Placed, Situation
from tests import worlds
from tests.calc.scene import FENWAIN, HUSHWAIN, base_van, catalogue, facts, situation

CIRCUIT = Circuit(
    id="c",
    circuit="pump",
    from_point="panel",
    to_point="pump",
    bus="dc",
    load_w=50,
    load_a=4.2,
    run_one_way_m=4.5,
    drop_limit_pct=3,
    protection="blade fuse",
)


class Trait(NamedTuple):
    """A handful of fields of an option."""

    space: Mapping[str, Any] = {}
    water: Mapping[str, Any] = {}
    heat: Mapping[str, Any] = {}
    power: Mapping[str, Any] = {}
    plain: Mapping[str, Any] = {}
    gives: str = ""
    needs: str = ""
    zones: str = ""
    frees: str = ""


def _roof(part: RoofPart, kg: float, mm: float) -> Trait:
    return Trait({"roof_part": part, "roof_mass_kg": kg, "height_above_roof_mm": mm})


def _fridge(anchor: Anchor, x_mm: float) -> Trait:
    position = Position(anchor=anchor, x_mm=x_mm, y_mm=0, z_mm=0)
    return Trait({"length_mm": 400}, plain={"position": position}, gives="front-door-fridge")


def _bed(mm: float, needs: str = "") -> Trait:
    return Trait({"berths_down": 2, "bed_length_mm": mm, "bed_width_mm": 1100}, needs=needs)


DIESEL = {"heater_kw": 2, "heater_fuel": "diesel", "fuel_l_per_h": 0.24}
LIVING: tuple[Trait, ...] = (
    Trait(heat=DIESEL, gives="heater fuel-line"),
    Trait(heat={**DIESEL, "heater_fuel": "petrol"}, gives="heater fuel-line"),
    Trait(heat={"heater_kw": 1, "heater_fuel": "hook-up"}, gives="heater"),
    Trait(heat={"heater_kw": 1.8, "heater_fuel": "hook-up"}, gives="heater"),
    Trait(heat={"heat_loss_down_w_per_k": -9.5}),
    Trait(heat={"heat_loss_down_w_per_k": 1.6, "heat_loss_up_w_per_k": 36.3}, gives="elevating-roof"),
    Trait(heat={"heat_loss_up_w_per_k": -11}),
    Trait(heat={"vent_high_mm2": 12_500, "vent_low_mm2": 2000}),
    Trait(heat={"vent_high_mm2": 1500, "vent_low_mm2": 500}),
    Trait(heat={"vent_high_mm2": 12_500}, gives="vents-only-roof-up"),
    Trait(heat={"vent_high_mm2": 10_000, "vent_low_mm2": 1500}, gives="open-flame"),
    Trait(water={"fresh_full_l": 40}, gives="fresh-water"),
    Trait(water={"fresh_full_l": 70}, gives="fresh-water"),
    Trait(water={"waste_l": 35, "waste_fixed": True}, gives="waste-tank"),
    Trait(water={"waste_l": 20}),
    Trait(heat={"own_tank_l": 9}, gives="own-fuel-tank"),
    Trait(heat={"cooker_fuel": "diesel"}),
)
"""Heat, fresh air and water."""
TRAITS: tuple[Trait, ...] = (
    *LIVING,
    *(Trait(plain={"mass_kg": kg}) for kg in (-5, 12.5, 700)),
    Trait(water={"fresh_travel_l": 40}, plain={"mass_kg": 3}),
    Trait(water={"fresh_travel_l": 70}),
    Trait(water={"fresh_travel_cap_l": 20}),
    Trait(water={"fresh_travel_cap_l": 55}),
    Trait(water={"extra_water_l": 8}),
    Trait({"height_above_roof_mm": 75, "roof_allow_closed_kg": 50, "roof_allow_raised_kg": 8}, gives="elevating-roof"),
    Trait({"height_above_roof_mm": 540, "roof_allow_closed_kg": 40}),
    Trait({"roof_allow_raised_kg": 14}),
    _roof(RoofPart.FIXED, 5, 700),
    _roof(RoofPart.FIXED, 90, 50),
    _roof(RoofPart.MOVING, 5.5, 55),
    _roof(RoofPart.TOP, 13, 55),
    Trait({"roof_bed_rating_kg": 150, "berths_up": 2, "bed_length_mm": 1900, "bed_width_mm": 1150}),
    Trait({"belts": 2, "front_x_mm": 720, "cross_width_mm": 1100}),
    Trait({"belts": 3, "front_x_mm": 670, "cross_width_mm": 1210}),
    Trait({"bench_shift_mm": 80}),
    Trait({"swivel_sweep_x_mm": 640}),
    Trait({"swivel_sweep_x_mm": 700}),
    _fridge(Anchor.DATUM, 490),
    _fridge(Anchor.REAR, -2000),
    _bed(1740),
    _bed(1830, "bed-from-bench"),
    Trait({"way_out_take_mm": 320, "cross_width_mm": 440}),
    Trait({"way_out_take_mm": 250}),
    Trait(zones="wall@side z"),
    Trait(zones="underfloor-rear"),
    Trait(zones="z"),
    Trait(frees="underfloor-rear z"),
    Trait(heat={"gas_bottles": 1}),
    Trait(heat={"gas_bottles": 2, "pickups_used": 1}),
    Trait(heat={"pickups_supplied": 1}),
    Trait(plain={"price_net_pence": 31_000, "lead_weeks": 3}),
    Trait(plain={"price_net_pence": 195_000, "lead_weeks": 9, "labour_h": 4.5}),
    Trait(gives="firm-supplies-van"),
    Trait(power={"battery_ah": 100}),
    Trait(power={"battery_ah": 400}),
    Trait({"max_ah": 200}),
    Trait({"max_ah": 100}),
    Trait({"plate_raise_kg": 350, "body_lift_mm": 40}),
    Trait(plain={"labour_h": 2, "circuits": (CIRCUIT,)}),
)


@st.composite
def options(draw: st.DrawFn, id_: str, group: str, most: int = 1, of: tuple[Trait, ...] = TRAITS) -> Option:
    """An option of up to three traits."""
    traits = draw(st.lists(st.sampled_from(of), max_size=3))
    space, water, heat, power, plain = ({k: v for t in traits for k, v in t[i].items()} for i in range(5))
    if any("fuel-line" in t.gives for t in traits) and heat["heater_fuel"] == "hook-up":
        heat["heater_fuel"] = "diesel"  # what has a fuel line burns something
    return worlds.option(
        id_,
        group,
        gives=" ".join(t.gives for t in traits if t.gives),
        needs=tuple(t.needs for t in traits if t.needs),
        zones=" ".join(t.zones for t in traits if t.zones),
        frees=" ".join(dict.fromkeys(t.frees for t in traits if t.frees)),
        places=draw(st.sampled_from(["", "left right"])),
        max_count=most,
        space=Space(**space),
        water=Water(**water),
        heat=Heat(**heat),
        power=Power(**power),
        **plain,
    )


ANSWERS: Mapping[str, tuple[int | str, ...]] = {
    "adults": (1, 2, 4),
    "children": (0, 2),
    "extra_load_kg": (0, 60),
    "sleepers": (0, 3),
    "sleepers_upstairs_kg": (60, 170),
    "tallest_sleeper_mm": (0, 1700),
    "parking_limit_mm": (0, 2100),
    "ceiling_gross_pence": (0, 300_000),
    "van_in_ceiling": ("yes", "no"),
    "weeks_wanted": (0, 5),
    "sleepers_upstairs": (0, 2),
    "design_temp_c": (-10, 5),
    "nights_off_grid": (0, 3),
    "plugged_every_night": ("yes", "no"),
    "age_days": (3, 31),
}


@st.composite
def situations(draw: st.DrawFn, of: tuple[Trait, ...] = TRAITS) -> Situation:
    """Some groups decided, some not; perhaps no van yet; a few answers not known."""
    vans = (base_van("short", FENWAIN), base_van("hush", HUSHWAIN, draw(st.sampled_from(["", "elevating-roof"]))))
    found: list[Option] = []
    for number in range(draw(st.integers(1, 3))):
        group = f"g{number}"
        found += [draw(options(f"{group}-{i}", group, of=of)) for i in range(draw(st.integers(1, 3)))]
    extras = [draw(options(f"x-{i}", "x", draw(st.integers(1, 2)), of)) for i in range(draw(st.integers(0, 3)))]
    groups: tuple[Group, ...] = (worlds.group("x", any_=8),)
    made = catalogue([*found, *extras], groups, vans)
    placed, undecided = list[Placed](), dict[str, tuple[str, ...]]()
    for group in dict.fromkeys(o.group for o in found):
        members = [o for o in found if o.group == group]
        if draw(st.booleans()):
            undecided[group] = tuple(o.id for o in members)
        else:
            placed.append(_somewhere(draw, draw(st.sampled_from(members))))
    taken = [draw(st.booleans()) for _ in extras]
    placed += [
        _somewhere(draw, o, draw(st.integers(1, o.max_count))) for o, in_ in zip(extras, taken, strict=True) if in_
    ]
    van = draw(st.sampled_from([*vans, None]))
    if van is None:
        undecided["base-van"] = tuple(v.id for v in vans)
    answers = {key: draw(st.sampled_from(values)) for key, values in ANSWERS.items()}
    unknown = draw(st.lists(st.sampled_from(sorted(ANSWERS)), max_size=2))
    return situation(
        made,
        *placed,
        van=van,
        undecided=undecided,
        free=[o.id for o, in_ in zip(extras, taken, strict=True) if not in_],
        facts_=facts(answers, unknown=unknown),
    )


def _somewhere(draw: st.DrawFn, option: Option, count: int = 1) -> Placed:
    return Placed(option=option, count=count, place=draw(st.sampled_from(option.places)) if option.places else None)
