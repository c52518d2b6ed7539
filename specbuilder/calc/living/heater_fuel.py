"""How many nights the heater runs on the fuel it can reach."""

from __future__ import annotations

from typing import NamedTuple

from specbuilder.calc.formulas.fuel import burner_l_per_h, nights_on_fuel, usable_l
from specbuilder.calc.formulas.validity import OutsideValidity, above, within
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, Part, largest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.table_cells import cell
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, Tag
from specbuilder.model.ledger import Entry
from specbuilder.model.vans import Van

DRAWS_FUEL, OWN_TANK = Tag("fuel-line"), Tag("own-fuel-tank")
"""Given by a heater that burns diesel or petrol, and by a tank of its own."""
DIESEL, PETROL = "diesel", "petrol"
LIQUID = (DIESEL, PETROL)
_ENERGY_TABLE = "fuel-energy"
_NONE, _MEASURED, _UNMEASURED = 0, 1, 2
"""There is no such thing; its figure is known; nobody wrote it down."""
_NIGHTS = BriefKey("nights_off_grid")


def _heater(option: Option, _van: Van | None) -> float | None:
    """A heater that nobody says the fuel or the consumption of is not known well enough to promise nights."""
    if DRAWS_FUEL not in option.gives:
        return None
    known = option.heat.heater_fuel in LIQUID and (option.heat.fuel_l_per_h or 0) > 0
    return _MEASURED if known else _UNMEASURED


def _petrol(option: Option, _van: Van | None) -> float | None:
    return 1 if DRAWS_FUEL in option.gives and option.heat.heater_fuel == PETROL else None


def _own_tank(option: Option, _van: Van | None) -> float | None:
    if (option.heat.own_tank_l or 0) > 0:
        return _MEASURED
    return _UNMEASURED if option.heat.own_tank_l is not None or OWN_TANK in option.gives else None


def _fuel_hob(option: Option, _van: Van | None) -> float | None:
    return 1 if option.heat.cooker_fuel in LIQUID else None


def _reachable_l(own_l: float, tank_share: float, frame: Frame) -> float:
    """Fuel for the heater: in its own tank, or in the van's above the reserve. An electric van has no tank."""
    van = frame.van
    if own_l:
        return usable_l(own_l, tank_share, 0)
    if not van.tank_l and not van.fuel_density_kg_per_l:
        return 0
    return usable_l(van.tank_l, tank_share, van.fuel_reserve_l)


def _litre_kwh(fuel: str, frame: Frame) -> float:
    """Net energy of a litre, within what that fuel can have."""
    named = ("kwh_per_l", "least_kwh_per_l", "most_kwh_per_l")
    kwh, least, most = (cell(frame.situation.catalogue, _ENERGY_TABLE, fuel, name) for name in named)
    return within(f"energy of a litre of {fuel} kWh", kwh, least, most)


class Fuel(NamedTuple):
    """What a heater has and takes, in L."""

    own_l: float
    """In a tank of its own; 0 where it draws from the van's."""
    per_h_l: float
    """The heater in an hour."""
    cooking_l: float
    """A fuel hob in a day."""


def fuel_of(joint: Joint, frame: Frame) -> Fuel | None:
    """By the litre of the fuel the heater burns; None where no heater burns any. ``joint`` is of ``FUEL_PARTS``.

    Raises:
        OutsideValidity: the heater, its tank or the energy of a litre has no sound figure.
    """
    own_l, own_tank, fuel_hob, heater, petrol = joint
    if heater == _NONE:
        return None
    if _UNMEASURED in (heater, own_tank):
        raise OutsideValidity("own tank L or burner L/h", 0, "above 0")
    setting = frame.settings
    litre_kwh = _litre_kwh(PETROL if petrol else DIESEL, frame)
    per_h_l = above("burner L/h", burner_l_per_h(setting["mean_kw"], setting["burner_share"], litre_kwh))
    return Fuel(own_l, per_h_l, setting["fuel_hob_per_day_l"] if fuel_hob else 0)


def nights_with(joint: Joint, frame: Frame, own_share: float, tank_share: float) -> float | None:
    """Nights with so much of its own tank, or of the van's; None without a heater that burns fuel."""
    fuel = fuel_of(joint, frame)
    if fuel is None:
        return None
    litres_l = _reachable_l(fuel.own_l, own_share if fuel.own_l else tank_share, frame)
    return nights_on_fuel(litres_l, fuel.per_h_l, frame.settings["night_h"], fuel.cooking_l)


def _nights_of_heat(joint: Joint, frame: Frame) -> float | None:
    return nights_with(joint, frame, 1, frame.settings["tank_share"])


def _nights_wanted(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("nights off the plug", frame.asked.number(_NIGHTS), _NIGHTS),)


FUEL_PARTS: tuple[Part, ...] = (
    summed(lambda option, _van: option.heat.own_tank_l or None),
    largest(_own_tank, none=_NONE),
    largest(_fuel_hob, none=0),
    largest(_heater, none=_NONE),
    largest(_petrol, none=0),
)
"""What decides how long a heater runs."""

HEATER_NIGHTS = Tally(
    id=LedgerId("heater-nights"),
    value=Measure(parts=FUEL_PARTS, rest=_nights_of_heat, needs_van=True),
    bound=Measure(base=_nights_wanted),
    settings=("mean_kw", "night_h", "burner_share", "fuel_hob_per_day_l", "tank_share"),
)
"""Nights on the heater's own tank, or on part of the van's above its reserve, against the nights off the plug."""
