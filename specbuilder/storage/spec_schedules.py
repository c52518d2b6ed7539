"""The schedules of a spec's file that the floor works from: holes, seats, circuits, power, gas and fuel, water."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from specbuilder.model.catalogue import Option
from specbuilder.model.own_parts import is_theirs, with_sheet
from specbuilder.model.parts import Heat, Hole, Power, Water
from specbuilder.workshop.cuts import unsettled
from specbuilder.workshop.view import Chosen, SpecView

from .spec_circuits import circuit_item
from .toml_out import Value, Values, comment, figure, item, rows, table

_HOLES = """\
HOLES, in build order, on the datum. agreed_by is filled in on the sheet, not here. Computed."""
_SEATS = """\
SEATS. Plates, bolts (size, grade, torque) and belt points are those of the papers named here. Computed."""
_CIRCUITS = """\
CIRCUITS, in build order. area_mm2 (of each cable, where cables_side_by_side says how many), fuse_a and fuse_kind are
proposals for this load, run and bundle: the papers of the parts and the electrician go first, and to_settle comes
before any cable is cut. Each run is marked with its id at both ends, and its number where count is more than one.
NOT HERE: route, grommets, earth and bond points, charger settings, RCD: they are the electrician's schedule and the
papers of the parts. Computed."""
_POWER = "POWER, as the parts declare it. Computed."
_GAS = """\
GAS, FUEL AND AIR, as the parts declare it; exhaust_... is the end of the exhaust. NOT HERE: pipe mm and route,
regulator, shut-offs, pump angle, exhaust length: they are the gas engineer's and the heater's papers. Computed."""
_WATER = "WATER. NOT HERE: drain points; the fuse of the pump stands with its circuit. Computed."
_NO_POWER, _NO_HEAT, _NO_WATER = Power(), Heat(), Water()


def schedules(view: SpecView, chosen: tuple[Chosen, ...]) -> Iterator[str]:
    """All of them, each with its line on what it does not say."""
    known = [(one, one.option) for one in chosen if one.option is not None]
    cuts = [_hole(view, one, option, hole) for one, option in known for hole in one.holes]
    yield _headed(_HOLES, cuts)
    yield from cuts
    seats = [_seat(view, one, option) for one, option in known if option.space.belts and option.papers]
    yield _headed(_SEATS, seats)
    yield from seats
    lines = {line.id: line for line in reversed(view.report.circuits)}
    runs = [circuit_item(one, option, c, lines.get(c.id)) for one, option in known for c in one.circuits]
    yield _headed(_CIRCUITS, runs)
    yield from runs
    yield _declared("power", _POWER, (_power(one, option) for one, option in known if option.power != _NO_POWER))
    yield _declared("gas_fuel_air", _GAS, (_gas(view, one, option) for one, option in known if option.heat != _NO_HEAT))
    yield _declared("water", _WATER, (_water(view, one, option) for one, option in known if option.water != _NO_WATER))


def _headed(remark: str, items: list[str]) -> str:
    return "\n" + comment(remark if items else f"{remark} None.")


def _hole(view: SpecView, one: Chosen, option: Option, hole: Hole) -> str:
    spot = view.positions.of_cut(hole, one.choice, option)
    values: dict[str, Value | None] = {
        "id": hole.id,
        "for": option.name,
        "place": one.choice.place.value if one.choice.place else None,
        "what": hole.what,
        "surface": hole.surface,
        "x_mm": figure(spot.x_mm) if spot else None,
        "y_mm": figure(spot.y_mm) if spot else None,
        "z_mm": figure(spot.z_mm) if spot else None,
        "tolerance_mm": figure(hole.tolerance_mm),
        "width_mm": figure(hole.width_mm),
        "height_mm": figure(hole.height_mm),
        "diameter_mm": figure(hole.diameter_mm),
        "corner_radius_mm": figure(hole.corner_radius_mm),
        "cut_from": hole.cut_from,
        "edge_treatment": hole.edge_treatment,
        "check_behind": hole.check_behind,
        "freeze_step": hole.freeze_step,
        "do_not_cut_yet": "; ".join(unsettled(view, one, option, hole)),
        "agreed_by": "",
    }
    return item("hole", values, always=("agreed_by",))


def _seat(view: SpecView, one: Chosen, option: Option) -> str:
    spot = view.positions.of_choice(one.choice, option)
    papers = view.catalogue.papers
    values: dict[str, Value | None] = {
        "for": option.name,
        "belts": option.space.belts * one.choice.count,
        "x_mm": figure(spot.x_mm) if spot else None,
        "y_mm": figure(spot.y_mm) if spot else None,
        "front_edge_x_mm": figure(view.front_edge_x_mm(option)),
        "holes": ", ".join(hole.id for hole in one.holes) or "none of its own",
        "papers": [papers[key].name for key in option.papers if key in papers],
        "report_number": "",
    }
    return item("seat", values, always=("report_number",))


def _declared(head: str, remark: str, lines: Iterable[Values]) -> str:
    """A table of one line for each part that declares something; a figure of nought is left out."""
    said = [{key: value for key, value in line.items() if value} for line in lines]
    told = [line for line in said if len(line) > 1]
    return table(head, {}, remark=remark if told else f"{remark} None.") + rows("part", told)


def _named(one: Chosen, option: Option) -> dict[str, Value | None]:
    count = one.choice.count
    return {"for": option.name if count == 1 else f"{count} x {option.name}"}


def _power(one: Chosen, option: Option) -> Values:
    """As the part declares it; of the customer's own what its sheet says, and nothing of the one we would have sold."""
    theirs, sheet = is_theirs(option, one.choice), one.choice.own_part
    power = with_sheet(option, sheet).power if theirs else option.power
    running_w, peak_w = (sheet.watts_w if sheet else None, None) if theirs else (power.watts_running, power.watts_peak)
    return _named(one, option) | {
        "battery_ah": figure(power.battery_ah),
        "battery_v": figure(power.battery_v),
        "chemistry": power.chemistry,
        "bms_continuous_a": figure(power.bms_continuous_a),
        "short_circuit_ka": figure(power.short_circuit_ka),
        "inverter_w": figure(power.inverter_w),
        "inverter_surge_w": figure(power.inverter_surge_w),
        "inverter_idle_w": figure(power.inverter_idle_w),
        "engine_charge_a": figure(power.engine_charge_a),
        "mains_charge_a": figure(power.mains_charge_a),
        "solar_w": figure(power.solar_w),
        "panel_voc_v": figure(power.panel_voc_v),
        "solar_controller_a": figure(power.solar_controller_a),
        "solar_controller_max_v": figure(power.solar_controller_max_v),
        "running_w": figure(running_w),
        "peak_w": figure(peak_w),
    }


def _gas(view: SpecView, one: Chosen, option: Option) -> Values:
    heat, outlet = option.heat, view.positions.of_outlet(one.choice, option)
    return _named(one, option) | {
        "heater_kw": figure(heat.heater_kw),
        "heater_fuel": heat.heater_fuel,
        "fuel_l_per_h": figure(heat.fuel_l_per_h),
        "start_a": figure(heat.start_a),
        "pickups_used": heat.pickups_used,
        "pickups_supplied": heat.pickups_supplied,
        "own_tank_l": figure(heat.own_tank_l),
        "exhaust": "outlet NOT KNOWN" if option.exhaust_outlet and outlet is None else None,
        "exhaust_x_mm": figure(outlet.x_mm) if outlet else None,
        "exhaust_y_mm": figure(outlet.y_mm) if outlet else None,
        "exhaust_z_mm": figure(outlet.z_mm) if outlet else None,
        "cooker_fuel": heat.cooker_fuel,
        "gas_kw_gross": figure(heat.gas_kw_gross),
        "gas_bottles": heat.gas_bottles,
        "gas_kg": figure(heat.gas_kg),
        "gas_store_floor_mm2": figure(heat.gas_locker_floor_mm2),
        "gas_store_vent_mm2": figure(heat.gas_locker_vent_mm2),
        "vent_high_mm2": figure(heat.vent_high_mm2),
        "vent_low_mm2": figure(heat.vent_low_mm2),
        "battery_vent_cm2": figure(heat.battery_vent_cm2),
        "fridge_air_cm2": figure(heat.fridge_air_cm2),
    }


def _water(view: SpecView, one: Chosen, option: Option) -> Values:
    water, spot = option.water, view.positions.of_choice(one.choice, option)
    return _named(one, option) | {
        "fresh_full_l": figure(water.fresh_full_l),
        "fresh_travel_l": figure(water.fresh_travel_l),
        "stops_travel_fill_at_l": figure(water.fresh_travel_cap_l),
        "waste_l": figure(water.waste_l),
        "boiler_l": figure(water.boiler_l),
        "other_water_l": figure(water.extra_water_l),
        "x_mm": figure(spot.x_mm) if spot else None,
        "y_mm": figure(spot.y_mm) if spot else None,
        "z_mm": figure(spot.z_mm) if spot else None,
    }
