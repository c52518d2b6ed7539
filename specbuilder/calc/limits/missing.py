"""Figures without which a sum cannot be made: which part lacks one, under which key, and which ledgers it silences."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from specbuilder.calc.power.power_parts import (
    lacks_charge,
    lacks_energy,
    lacks_idle,
    lacks_input,
    lacks_output,
    lacks_protection,
    lacks_size,
    lacks_sun_watts,
    lacks_use,
    lacks_volts,
)
from specbuilder.calc.room.space import lacks_door
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId, Tag

_HEATER, _FUEL_LINE, _OWN_TANK = Tag("heater"), Tag("fuel-line"), Tag("own-fuel-tank")
_FRESH, _WASTE = Tag("fresh-water"), Tag("waste-tank")


class Gap(NamedTuple):
    """One kind of missing figure."""

    keys: str
    """As they stand in the file, the likely ones first."""
    lacks: Callable[[Option], bool]
    ledgers: frozenset[LedgerId]


def _gap(keys: str, lacks: Callable[[Option], bool], ledgers: str) -> Gap:
    return Gap(keys, lacks, frozenset(map(LedgerId, ledgers.split())))


def _heater_without_kw(option: Option) -> bool:
    return _HEATER in option.gives and not (option.heat.heater_kw or 0) > 0


def _burner_without_rate(option: Option) -> bool:
    return _FUEL_LINE in option.gives and not (option.heat.fuel_l_per_h or 0) > 0


def _gas_without_power(option: Option) -> bool:
    return option.heat.heater_fuel == "gas" and not (option.heat.gas_kw_gross or 0) > 0


def _own_tank_without_litres(option: Option) -> bool:
    told = option.heat.own_tank_l
    return (told is not None or _OWN_TANK in option.gives) and not (told or 0) > 0


def _fresh_without_litres(option: Option) -> bool:
    return _FRESH in option.gives and not option.water.fresh_full_l > 0


def _waste_without_litres(option: Option) -> bool:
    return (option.water.waste_fixed or _WASTE in option.gives) and not option.water.waste_l > 0


def _bottle_without_kg(option: Option) -> bool:
    return option.heat.gas_bottles > 0 and not option.heat.gas_kg > 0


def _plug_without_watts(option: Option) -> bool:
    return option.power.hookup_at_once and option.power.watts_running is None


GAPS: tuple[Gap, ...] = (
    _gap("power.battery_ah, power.chemistry", lacks_size, "battery-nights lead-draw charge-rate battery-box"),
    _gap("power.battery_v, power.depth_of_discharge", lacks_energy, "battery-nights"),
    _gap("power.bms_continuous_a, power.packs_parallel", lacks_protection, "battery-current"),
    _gap(
        "power.inverter_efficiency, power.inverter_w",
        lacks_output,
        "battery-current lead-draw inverter-largest-load daily-energy battery-nights",
    ),
    _gap("power.inverter_idle_w", lacks_idle, "daily-energy battery-nights"),
    _gap("power.hours_summer, power.hours_winter", lacks_use, "daily-energy battery-nights"),
    _gap("power.engine_charge_a, power.mains_charge_a", lacks_charge, "charge-rate battery-nights"),
    _gap("power.engine_input_a", lacks_input, "alternator-input"),
    _gap("power.panel_voc_v, power.solar_controller_max_v", lacks_volts, "solar-voltage"),
    _gap("power.solar_w", lacks_sun_watts, "battery-nights"),
    _gap("power.watts_running", _plug_without_watts, "hook-up-watts"),
    _gap("space.length_mm", lacks_door, "fridge-door-gap"),
    _gap("heat.heater_kw", _heater_without_kw, "heat"),
    _gap("heat.fuel_l_per_h", _burner_without_rate, "heater-nights"),
    _gap("heat.gas_kw_gross", _gas_without_power, ""),
    _gap("heat.own_tank_l", _own_tank_without_litres, "heater-nights"),
    _gap("heat.gas_kg", _bottle_without_kg, ""),
    _gap("water.fresh_full_l", _fresh_without_litres, "fresh-water-days waste-share"),
    _gap("water.waste_l", _waste_without_litres, "waste-share"),
)
"""All kinds; those of which a more telling one comes first are told by that one."""


def missing_of(option: Option) -> tuple[Gap, ...]:
    """What an option lacks."""
    return tuple(gap for gap in GAPS if gap.lacks(option))
