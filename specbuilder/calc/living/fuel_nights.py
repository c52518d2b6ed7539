"""Told beside the nights of heating: fuel a night, and nights on a full and on a half-full tank."""

from __future__ import annotations

from specbuilder.calc.formulas.fuel import fuel_a_night_l
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.ids import LedgerId

from .heater_fuel import FUEL_PARTS, fuel_of, nights_with

_BURNING = "mean_kw", "night_h", "burner_share"


def _night_l(joint: Joint, frame: Frame) -> float | None:
    fuel = fuel_of(joint, frame)
    return None if fuel is None else fuel_a_night_l(fuel.per_h_l, frame.settings["night_h"])


def _nights(joint: Joint, frame: Frame) -> float | None:
    share = frame.settings["tank_share"]
    return nights_with(joint, frame, share, share)


NIGHT_FUEL = Tally(
    id=LedgerId("night-fuel"),
    value=Measure(parts=FUEL_PARTS, rest=_night_l),
    settings=_BURNING,
)
"""What the heater burns in a night, by the litre of its own fuel."""

FULL_TANK_NIGHTS = Tally(
    id=LedgerId("nights-full-tank"),
    value=Measure(parts=FUEL_PARTS, rest=_nights, needs_van=True),
    settings=(*_BURNING, "fuel_hob_per_day_l", "tank_share"),
)
HALF_TANK_NIGHTS = Tally(
    id=LedgerId("nights-half-tank"),
    value=Measure(parts=FUEL_PARTS, rest=_nights, needs_van=True),
    settings=(*_BURNING, "fuel_hob_per_day_l", "tank_share"),
)
"""Nights above the reserve of the pick-up, or from the heater's own tank filled so far."""
