"""How many nights the heater runs on the fuel it can reach."""

from __future__ import annotations

from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, Tag
from specbuilder.model.ledger import Entry
from specbuilder.model.vans import Van

from .formulas.fuel import burner_l_per_h, nights_on_fuel, usable_l
from .formulas.validity import OutsideValidity, above
from .frame import Frame
from .measure import Measure, largest, summed
from .states import Joint
from .tally import Tally

DRAWS_FUEL, OWN_TANK = Tag("fuel-line"), Tag("own-fuel-tank")
"""Given by a heater that burns diesel or petrol, and by a tank of its own."""
_LIQUID = ("diesel", "petrol")
_NONE, _MEASURED, _UNMEASURED = 0, 1, 2
"""There is no such thing; its figure is known; nobody wrote it down."""
_NIGHTS = BriefKey("nights_off_grid")


def _heater(option: Option, _van: Van | None) -> float | None:
    """A heater that nobody says the consumption of is not known well enough to promise nights."""
    if DRAWS_FUEL not in option.gives:
        return None
    return _MEASURED if (option.heat.fuel_l_per_h or 0) > 0 else _UNMEASURED


def _own_tank(option: Option, _van: Van | None) -> float | None:
    if (option.heat.own_tank_l or 0) > 0:
        return _MEASURED
    return _UNMEASURED if option.heat.own_tank_l is not None or OWN_TANK in option.gives else None


def _fuel_hob(option: Option, _van: Van | None) -> float | None:
    return 1 if option.heat.cooker_fuel in _LIQUID else None


def _reachable_l(own_l: float, frame: Frame) -> float:
    """Fuel for the heater: its own tank, or part of the van's above the reserve. An electric van has no tank."""
    van = frame.van
    if own_l:
        return usable_l(own_l, 1, 0)
    if not van.tank_l and not van.fuel_density_kg_per_l:
        return 0
    return usable_l(van.tank_l, frame.settings["tank_share"], van.fuel_reserve_l)


def _nights_of_heat(joint: Joint, frame: Frame) -> float | None:
    own_l, own_tank, fuel_hob, heater = joint
    if heater == _NONE:
        return None
    if _UNMEASURED in (heater, own_tank):
        raise OutsideValidity("own tank L or burner L/h", 0, "above 0")
    setting = frame.settings
    per_h_l = burner_l_per_h(setting["mean_kw"], setting["burner_share"], setting["diesel_kwh_per_l"])
    cooking_l = setting["fuel_hob_per_day_l"] if fuel_hob else 0
    return nights_on_fuel(_reachable_l(own_l, frame), above("burner L/h", per_h_l), setting["night_h"], cooking_l)


def _nights_wanted(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("nights off the plug", frame.asked.number(_NIGHTS), _NIGHTS),)


HEATER_NIGHTS = Tally(
    id=LedgerId("heater-nights"),
    value=Measure(
        parts=(
            summed(lambda option, _van: option.heat.own_tank_l or None),
            largest(_own_tank, none=_NONE),
            largest(_fuel_hob, none=0),
            largest(_heater, none=_NONE),
        ),
        rest=_nights_of_heat,
        needs_van=True,
    ),
    bound=Measure(base=_nights_wanted),
    settings=("mean_kw", "night_h", "burner_share", "diesel_kwh_per_l", "fuel_hob_per_day_l", "tank_share"),
)
"""Nights on the heater's own tank, or on part of the van's above its reserve, against the nights off the plug."""
