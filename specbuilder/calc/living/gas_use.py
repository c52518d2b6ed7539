"""Told beside the gas bottles: how long they last, and the openings of their store."""

from __future__ import annotations

from specbuilder.calc.formulas.gas import gas_days, gas_for_heat_kg, gas_g_per_h, small_store_duct_mm, store_vent_mm2
from specbuilder.calc.formulas.validity import above, missing, within
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.table_cells import cell, columns
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.vans import Van

GAS = "gas"
"""Fuel of a hob or heater that burns bottled gas."""
_GASES, _STORE_TABLE, _ONE_OPENING = "gases", "gas-store", "one low opening"
_G_IN_KG = 1000
_MOST_SMALL_BOTTLES, _MOST_SMALL_KG = 2, 7


def _hob_kw(option: Option, _van: Van | None) -> float | None:
    return option.heat.gas_kw_gross or None if option.heat.cooker_fuel == GAS else None


def _is_hob(option: Option, _van: Van | None) -> float | None:
    return 1 if option.heat.cooker_fuel == GAS else None


def _hob_without_kw(option: Option, _van: Van | None) -> float | None:
    return 1 if option.heat.cooker_fuel == GAS and (option.heat.gas_kw_gross or 0) <= 0 else None


def _is_heater(option: Option, _van: Van | None) -> float | None:
    return 1 if option.heat.heater_fuel == GAS else None


def _bottles(option: Option, _van: Van | None) -> float | None:
    return option.heat.gas_bottles or None


def _bottle_without_kg(option: Option, _van: Van | None) -> float | None:
    return 1 if option.heat.gas_bottles and option.heat.gas_kg <= 0 else None


def _gas_kg(option: Option, _van: Van | None) -> float | None:
    return option.heat.gas_kg or None


def _kwh_per_kg(frame: Frame, column: str) -> float:
    """Of the gas with the least in a kilogram, as nobody knows which one is bought."""
    found = [row[0] for row in columns(frame.situation.catalogue, _GASES, column)]
    return above("energy of gas kWh/kg", min(found)) if found else missing(f"{column} in the table {_GASES}")


_PARTS = (
    summed(_gas_kg),
    largest(_bottle_without_kg, none=0),
    summed(_hob_kw),
    largest(_is_hob, none=0),
    largest(_hob_without_kw, none=0),
    largest(_is_heater, none=0),
)


def _content_kg(joint: Joint) -> float:
    kg, without_kg, *_ = joint
    return above("gas content kg", 0) if without_kg else kg


def _cooking_kg(joint: Joint, frame: Frame) -> float:
    """Gas that cooking takes in a day; nought without a gas hob."""
    _, _, hob_kw, is_hob, without_kw, _ = joint
    if not is_hob:
        return 0
    kw = above("gas hob kW", 0 if without_kw else hob_kw)
    hours = within("hours a day at full flame h", frame.settings["hob_h_per_day"], 0, 24)
    return gas_g_per_h(kw, _kwh_per_kg(frame, "kwh_per_kg_gross")) * hours / _G_IN_KG


def _cooking_days(joint: Joint, frame: Frame) -> float | None:
    if not joint[3]:
        return None
    return gas_days(_content_kg(joint), frame.settings["usable_share"], _cooking_kg(joint, frame))


def _heating_nights(joint: Joint, frame: Frame) -> float | None:
    if not joint[5]:
        return None
    setting = frame.settings
    heat_kwh = above("heat a night kWh", setting["mean_kw"] * within("night h", setting["night_h"], 0, 24))
    heating_kg = gas_for_heat_kg(heat_kwh, setting["gas_burner_share"], _kwh_per_kg(frame, "kwh_per_kg_net"))
    return gas_days(_content_kg(joint), setting["usable_share"], heating_kg + _cooking_kg(joint, frame))


COOKING_DAYS = Tally(
    id=LedgerId("gas-cooking-days"),
    value=Measure(parts=_PARTS, rest=_cooking_days),
    settings=("hob_h_per_day", "usable_share"),
)
"""Days the gas on board cooks; nothing to measure without a gas hob."""

HEATING_NIGHTS = Tally(
    id=LedgerId("gas-nights"),
    value=Measure(parts=_PARTS, rest=_heating_nights),
    settings=("mean_kw", "night_h", "gas_burner_share", "hob_h_per_day", "usable_share"),
)
"""Nights the gas on board heats, with the cooking of the day; nothing to measure without a gas heater."""


def _vent_mm2(option: Option, _van: Van | None) -> float | None:
    return option.heat.gas_locker_vent_mm2 or None


def _store(option: Option, _van: Van | None) -> float | None:
    """A store with an opening of its own; a second bottle only makes one larger."""
    return 1 if option.heat.gas_locker_vent_mm2 is not None else None


def _floor_mm2(option: Option, _van: Van | None) -> float | None:
    return option.heat.gas_locker_floor_mm2


def _has_store(option: Option, _van: Van | None) -> float | None:
    heat = option.heat
    return 1 if heat.gas_locker_floor_mm2 is not None or heat.gas_locker_vent_mm2 is not None else None


def _given(joint: Joint, _frame: Frame) -> float | None:
    vents_mm2, has_store = joint
    return vents_mm2 if has_store else None


def _needed(joint: Joint, frame: Frame) -> float | None:
    """Each store by the largest floor, as nobody says which of two is the larger."""
    stores, floor_mm2, has_store = joint
    if not has_store:
        return None
    of_floor, least = (cell(frame.situation.catalogue, _STORE_TABLE, _ONE_OPENING, c) for c in _STORE_COLUMNS)
    return max(stores, 1) * store_vent_mm2(floor_mm2, of_floor, least)


_STORE_COLUMNS = "share_of_floor", "least_mm2"

STORE_VENT = Tally(
    id=LedgerId("gas-store-vent"),
    value=Measure(parts=(summed(_vent_mm2), largest(_has_store, none=0)), rest=_given),
    bound=Measure(parts=(summed(_store), largest(_floor_mm2, none=0), largest(_has_store, none=0)), rest=_needed),
)
"""Free area low in the stores, against what their floors ask for; nothing to measure without a store."""


def _duct_mm(joint: Joint, _frame: Frame) -> float | None:
    bottles, kg, without_kg = joint
    if not bottles:
        return None
    above("gas content kg", 0 if without_kg else kg)
    if bottles > _MOST_SMALL_BOTTLES or kg > _MOST_SMALL_KG:
        return None
    return small_store_duct_mm(int(bottles), kg)


STORE_DUCT = Tally(
    id=LedgerId("gas-store-duct"),
    value=Measure(parts=(summed(_bottles), summed(_gas_kg), largest(_bottle_without_kg, none=0)), rest=_duct_mm),
)
"""The falling duct that small bottles may have instead; nothing to measure with larger ones."""
