"""Floor 1: the ledgers and figures. Pure; knows the model only, never the rule graph.

One file a subject turns a situation into readings; ``formulas`` holds the equations. Every calculation stands in
``CALCULATIONS``: what is not listed there is never computed.
"""

from __future__ import annotations

from collections.abc import Mapping

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Situation

from .living.beside_living import BESIDE_LIVING
from .living.fresh_air import HIGH_VENTS, LOW_VENTS
from .living.gas_fuel import FUEL_PICKUPS, GAS_BOTTLES
from .living.heat import HEAT
from .living.heater_fuel import HEATER_NIGHTS
from .living.water import FRESH_WATER_DAYS, WASTE_SHARE
from .measuring.calculation import Calculation
from .measuring.outcome import all_settings
from .order.hours import WORKSHOP_HOURS
from .order.price import PRICE_GROSS
from .order.quote import QUOTE_AGE
from .order.weeks import LEAD_WEEKS
from .power.battery_beside import (
    NIGHTS_WITHOUT_SUN,
    REFILL_PLUG,
    REFILL_ROAD,
    ROAD_CHARGE,
    SUN_BEST_MONTH,
    SUN_BETWEEN,
    SUN_SUMMER,
    SUN_WINTER,
    SUN_WORST_MONTH,
    USABLE_AGED,
    USABLE_IN_COLD,
    USABLE_NEW,
    USABLE_WORN,
)
from .power.battery_nights import BATTERY_NIGHTS
from .power.charging import ALTERNATOR_INPUT, CHARGE_RATE
from .power.energy_beside import (
    DAY_BALANCE,
    INVERTER_LEFT_ON,
    SUMMER_ENERGY,
    WINTER_ENERGY,
)
from .power.energy_day import DAILY_ENERGY
from .power.hook_up import HOOK_UP_WATTS
from .power.inverter_beside import (
    INVERTER_START,
    MAINS_FOR_GOOD,
    MAINS_IN_HAND,
)
from .power.inverter_load import BATTERY_CURRENT, INVERTER_LARGEST_LOAD, LEAD_DRAW
from .power.pitch_beside import (
    LEFT_ON_STRONG_PITCH,
    LEFT_ON_USUAL_PITCH,
    LEFT_ON_WEAK_PITCH,
)
from .power.power_places import BATTERY_BOX
from .power.solar import SOLAR_VOLTAGE
from .room.bars import UNDER_BAR_2000, UNDER_BAR_2100, UNDER_BAR_2200
from .room.beds import BED_LENGTH, BED_WIDTH
from .room.height import CLOSED_HEIGHT
from .room.seats import BELTS, BERTHS, BERTHS_OVER_BELTS
from .room.space import CROSS_WIDTH, FRIDGE_DOOR_GAP, SWIVEL_GAP, WAY_OUT
from .room.zone_use import ZONE_USE
from .weights.axles import FRONT_AXLE, FRONT_SHARE, REAR_AXLE
from .weights.load_cases import (
    ALL_SEATS_FRONT,
    ALL_SEATS_REAR,
    ALL_SEATS_TOTAL,
    DRIVER_AND_RACK_FRONT,
    DRIVER_AND_RACK_REAR,
    DRIVER_AND_RACK_SHARE,
    DRIVER_AND_RACK_TOTAL,
    FILLED_UP_FRONT,
    FILLED_UP_REAR,
    FILLED_UP_SHARE,
    FILLED_UP_TOTAL,
    LEAST_LUGGAGE_FRONT,
    LEAST_LUGGAGE_REAR,
    LEAST_LUGGAGE_TOTAL,
    RUNNING_ORDER_FRONT,
    RUNNING_ORDER_REAR,
    RUNNING_ORDER_TOTAL,
)
from .weights.load_places import (
    FREE_BEHIND_SEATS,
    FREE_IN_FOOT_WELL,
    FREE_IN_STORES,
    FREE_ON_RACK,
    REST_FURTHEST_BACK,
    REST_FURTHEST_FORWARD,
)
from .weights.mass import ARRIVAL_DIFFERENCE, TOTAL_MASS
from .weights.mass_left import PAY_MASS, UNLADEN_MASS
from .weights.roof import ROOF_BED_LOAD, ROOF_LOAD_CLOSED, ROOF_LOAD_RAISED
from .weights.roof_lift import ROOF_HOLD, ROOF_PUSH
from .weights.roof_panels import PANELS_ON_ROOF
from .weights.side_balance import SIDE_BALANCE
from .weights.weighbridge import FINISHED_WEIGHT_BAND, WEIGHBRIDGE_FRONT, WEIGHBRIDGE_REAR, WEIGHBRIDGE_TOTAL
from .weights.weight_law import CAR_LICENCE, SPEED_ON_DUAL_ROADS, SPEED_ON_OTHER_ROADS

CALCULATIONS: tuple[Calculation, ...] = (
    TOTAL_MASS,
    ARRIVAL_DIFFERENCE,
    REAR_AXLE,
    FRONT_AXLE,
    FRONT_SHARE,
    SIDE_BALANCE,
    PAY_MASS,
    UNLADEN_MASS,
    ROOF_LOAD_CLOSED,
    ROOF_LOAD_RAISED,
    ROOF_BED_LOAD,
    RUNNING_ORDER_TOTAL,
    ALL_SEATS_TOTAL,
    LEAST_LUGGAGE_TOTAL,
    FILLED_UP_TOTAL,
    DRIVER_AND_RACK_TOTAL,
    RUNNING_ORDER_FRONT,
    ALL_SEATS_FRONT,
    LEAST_LUGGAGE_FRONT,
    FILLED_UP_FRONT,
    DRIVER_AND_RACK_FRONT,
    RUNNING_ORDER_REAR,
    ALL_SEATS_REAR,
    LEAST_LUGGAGE_REAR,
    FILLED_UP_REAR,
    DRIVER_AND_RACK_REAR,
    FILLED_UP_SHARE,
    DRIVER_AND_RACK_SHARE,
    FREE_IN_FOOT_WELL,
    FREE_BEHIND_SEATS,
    FREE_IN_STORES,
    FREE_ON_RACK,
    REST_FURTHEST_BACK,
    REST_FURTHEST_FORWARD,
    WEIGHBRIDGE_TOTAL,
    WEIGHBRIDGE_FRONT,
    WEIGHBRIDGE_REAR,
    FINISHED_WEIGHT_BAND,
    SPEED_ON_DUAL_ROADS,
    SPEED_ON_OTHER_ROADS,
    CAR_LICENCE,
    PANELS_ON_ROOF,
    ROOF_PUSH,
    ROOF_HOLD,
    UNDER_BAR_2000,
    UNDER_BAR_2100,
    UNDER_BAR_2200,
    BELTS,
    BERTHS,
    BERTHS_OVER_BELTS,
    CROSS_WIDTH,
    WAY_OUT,
    ZONE_USE,
    HEAT,
    HIGH_VENTS,
    LOW_VENTS,
    GAS_BOTTLES,
    FUEL_PICKUPS,
    WASTE_SHARE,
    CLOSED_HEIGHT,
    SWIVEL_GAP,
    FRIDGE_DOOR_GAP,
    BED_LENGTH,
    BED_WIDTH,
    DAILY_ENERGY,
    SUMMER_ENERGY,
    WINTER_ENERGY,
    DAY_BALANCE,
    INVERTER_LEFT_ON,
    BATTERY_NIGHTS,
    USABLE_NEW,
    USABLE_AGED,
    USABLE_WORN,
    USABLE_IN_COLD,
    SUN_SUMMER,
    SUN_BETWEEN,
    SUN_WINTER,
    SUN_BEST_MONTH,
    SUN_WORST_MONTH,
    ROAD_CHARGE,
    NIGHTS_WITHOUT_SUN,
    REFILL_ROAD,
    REFILL_PLUG,
    BATTERY_CURRENT,
    MAINS_FOR_GOOD,
    MAINS_IN_HAND,
    INVERTER_LARGEST_LOAD,
    INVERTER_START,
    LEAD_DRAW,
    BATTERY_BOX,
    CHARGE_RATE,
    ALTERNATOR_INPUT,
    SOLAR_VOLTAGE,
    HOOK_UP_WATTS,
    LEFT_ON_WEAK_PITCH,
    LEFT_ON_USUAL_PITCH,
    LEFT_ON_STRONG_PITCH,
    PRICE_GROSS,
    LEAD_WEEKS,
    FRESH_WATER_DAYS,
    HEATER_NIGHTS,
    QUOTE_AGE,
    WORKSHOP_HOURS,
    *BESIDE_LIVING,
)
"""Every ledger and figure, in the order they are shown."""


def made(catalogue: Catalogue) -> tuple[Calculation, ...]:
    """The calculations this catalogue has a table for, but those that are told beside another one."""
    return tuple(c for c in CALCULATIONS if c.id in catalogue.ledgers and catalogue.ledgers[c.id].part_of is None)


def told_beside(catalogue: Catalogue, ledger: LedgerId | None = None) -> tuple[Calculation, ...]:
    """The calculations told in the detail of a ledger, or of any."""
    of = {id_: spec.part_of for id_, spec in catalogue.ledgers.items() if spec.part_of is not None}
    return tuple(c for c in CALCULATIONS if c.id in of and ledger in (None, of[c.id]))


def read_all(situation: Situation) -> Mapping[LedgerId, Reading]:
    """Every ledger and figure of the catalogue that is made, for this situation."""
    return {c.id: c.read(situation) for c in made(situation.catalogue)}


def missing_settings(catalogue: Catalogue) -> tuple[tuple[LedgerId, str], ...]:
    """House settings that a calculation needs and its table lacks."""
    known = all_settings(catalogue)
    return tuple((c.id, s) for c in CALCULATIONS if c.id in known for s in c.settings if s not in known[c.id])
