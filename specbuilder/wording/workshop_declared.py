"""What a part declares of power, gas, fuel, air and water, in one line each."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.catalogue import Option
from specbuilder.workshop.positions import Spot
from specbuilder.workshop.water import TravelFill

from .own_parts import KINDS
from .quantities import number_text, quantity
from .workshop import amount, counted, spot_text


def power_words(option: Option) -> str:
    """``stores 100 Ah at 12.8 V, lithium iron phosphate; ...``: of what stores, makes or changes power, else empty."""
    power = option.power
    battery = _with(amount(power.battery_ah, "Ah"), "stores", after=f"at {amount(power.battery_v, 'V')}")
    if battery and power.chemistry:
        battery = f"{battery}, {KINDS.get(power.chemistry, power.chemistry)}"
    return _joined(
        battery,
        _with(amount(power.bms_continuous_a, "A"), "gives for good at most"),
        _with(amount(power.short_circuit_ka, "kA"), "short circuit up to"),
        _with(amount(power.inverter_w, "W"), "makes mains up to"),
        _with(amount(power.inverter_surge_w, "W"), "starts up to"),
        _with(amount(power.inverter_idle_w, "W"), "idles at"),
        _with(amount(power.engine_charge_a, "A"), "charges from the engine with"),
        _with(amount(power.mains_charge_a, "A"), "charges from the plug with"),
        _with(amount(power.solar_w, "W"), "sun panel"),
        _with(amount(power.panel_voc_v, "V"), "open voltage"),
        _with(amount(power.solar_controller_a, "A"), "solar controller"),
        _with(amount(power.solar_controller_max_v, "V"), "at most"),
    )


def gas_words(option: Option, outlet: Spot | None, near: tuple[str, float] | None = None) -> str:
    """Heat, fuel, gas, openings and where the exhaust ends, with what is ``near``; empty where nothing is declared."""
    heat = option.heat
    bottles = counted(heat.gas_bottles, "gas bottle", "gas bottles") if heat.gas_bottles else ""
    pickups = counted(heat.pickups_used, "fuel line", "fuel lines")
    supplied = counted(heat.pickups_supplied, "fuel line", "fuel lines")
    return _joined(
        _with(amount(heat.heater_kw, "kW"), "heats with"),
        _with(heat.heater_fuel, "burns"),
        _with(_fine(heat.fuel_l_per_h, "L"), "at full", after="an hour"),
        _with(amount(heat.start_a, "A"), "lights with"),
        _with(pickups if heat.pickups_used else "", "needs"),
        _with(supplied if heat.pickups_supplied else "", "feeds"),
        _with(amount(heat.own_tank_l, "L"), "own tank"),
        _exhaust(option, outlet, near),
        _with(heat.cooker_fuel, "cooks with"),
        _with(amount(heat.gas_kw_gross, "kW"), "gas at full"),
        bottles,
        _with(amount(heat.gas_kg, "kg"), "gas"),
        _with(amount(heat.gas_locker_floor_mm2, "mm2"), "floor of the gas store"),
        _with(amount(heat.gas_locker_vent_mm2, "mm2"), "opening low in the gas store"),
        _with(amount(heat.vent_high_mm2, "mm2"), "opening high up"),
        _with(amount(heat.vent_low_mm2, "mm2"), "opening low down"),
        _with(amount(heat.battery_vent_cm2, "cm2"), "opening of the battery box"),
        _with(amount(heat.fridge_air_cm2, "cm2"), "air path of the fridge"),
    )


def water_words(option: Option, fill: TravelFill, spot: Spot | None, other_body: tuple[str, ...] = ()) -> str:
    """Tanks with their place; empty where nothing is declared. For the road there is one figure, at every part."""
    water = option.water
    said = _joined(
        _with(amount(water.fresh_full_l, "L"), "fresh water"),
        _road(fill) if water.fresh_travel_l or water.fresh_travel_cap_l else "",
        _with(amount(water.waste_l, "L"), "waste water"),
        _with(amount(water.boiler_l, "L"), "boiler"),
        _with(amount(water.extra_water_l, "L"), "other water"),
    )
    if said and spot is not None:
        return f"{said}; at {spot_text(spot, other_body)}"
    return said


def _road(fill: TravelFill) -> str:
    """``filled for the road to 20 L``, of several tanks together."""
    all_ = ", all tanks together" if fill.tanks > 1 else ""
    stopped = ", where the travel-fill stop ends it" if fill.stopped else ""
    return f"filled for the road to {amount(fill.litres, 'L')}{all_}{stopped}"


def _exhaust(option: Option, outlet: Spot | None, near: tuple[str, float] | None) -> str:
    """Where it ends; a side that is not decided is no place."""
    if outlet is not None:
        box = f", {quantity(near[1], 'mm', '')} from the no-drill box: {near[0]}" if near is not None else ""
        return f"exhaust ends at {spot_text(outlet)}{box}"
    return "end of the exhaust NOT KNOWN: its side is not decided" if option.exhaust_outlet is not None else ""


def _fine(value: float | None, unit: str) -> str:
    """One decimal more than usual: a heater burns 0.24 L an hour."""
    return f"{number_text(value, unit, 1)} {unit}" if value else ""


def _with(figure: str, before: str, *, after: str = "") -> str:
    """The figure in its words; nothing where there is no figure."""
    return " ".join(filter(None, (before, figure, after))) if figure else ""


def _joined(*said: str) -> str:
    return "; ".join(_some(said))


def _some(said: tuple[str, ...]) -> Iterator[str]:
    return (one for one in said if one)
