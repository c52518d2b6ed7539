"""Figures told beside heat, heater fuel, gas, fresh air, water and the fridge, in the order they are shown."""

from __future__ import annotations

from specbuilder.calc.measuring.calculation import Calculation

from .damp_air import DEW_POINT, NIGHT_AIR, NIGHT_AIR_HEAT, WET_GLASS
from .fridge_days import FRIDGE_COOL, FRIDGE_HOT, FRIDGE_WARM
from .fuel_nights import FULL_TANK_NIGHTS, HALF_TANK_NIGHTS, NIGHT_FUEL
from .gas_use import COOKING_DAYS, HEATING_NIGHTS, STORE_DUCT, STORE_VENT
from .heat_loss import (
    COLDEST_DOWN,
    COLDEST_UP,
    HEATER_SHARE,
    LOSS_DOWN,
    LOSS_DOWN_AT_NOUGHT,
    LOSS_DOWN_IN_FROST,
    LOSS_UP,
    LOSS_UP_AT_NOUGHT,
    LOSS_UP_IN_FROST,
    MISSING_DOWN,
    MISSING_IN_FROST,
    MISSING_UP,
)
from .heater_start import START_AMPS, START_VOLTS
from .thin_air import AIR_DENSITY, OVER_RICH
from .vent_table import BELOW_NEXT_ROW, HIGH_BY_TABLE, LOW_BY_TABLE, PLAN_AREA, PLAN_AREA_ROW, ROOF_AND_WALL
from .water_use import (
    BEYOND_TRAVEL,
    PUMP_ENERGY,
    PUMP_MINUTES,
    WASTE_NEEDED,
    WASTE_ON_BOARD,
    WATER_A_DAY,
    WATER_OUTSIDE,
)

BESIDE_LIVING: tuple[Calculation, ...] = (
    LOSS_DOWN,
    LOSS_DOWN_AT_NOUGHT,
    LOSS_DOWN_IN_FROST,
    LOSS_UP,
    LOSS_UP_AT_NOUGHT,
    LOSS_UP_IN_FROST,
    HEATER_SHARE,
    COLDEST_DOWN,
    COLDEST_UP,
    MISSING_DOWN,
    MISSING_UP,
    MISSING_IN_FROST,
    DEW_POINT,
    WET_GLASS,
    PLAN_AREA,
    PLAN_AREA_ROW,
    BELOW_NEXT_ROW,
    HIGH_BY_TABLE,
    ROOF_AND_WALL,
    NIGHT_AIR,
    NIGHT_AIR_HEAT,
    LOW_BY_TABLE,
    COOKING_DAYS,
    HEATING_NIGHTS,
    STORE_VENT,
    STORE_DUCT,
    WASTE_NEEDED,
    WASTE_ON_BOARD,
    FRIDGE_COOL,
    FRIDGE_WARM,
    FRIDGE_HOT,
    WATER_A_DAY,
    PUMP_MINUTES,
    PUMP_ENERGY,
    BEYOND_TRAVEL,
    WATER_OUTSIDE,
    NIGHT_FUEL,
    FULL_TANK_NIGHTS,
    HALF_TANK_NIGHTS,
    START_AMPS,
    START_VOLTS,
    AIR_DENSITY,
    OVER_RICH,
)
