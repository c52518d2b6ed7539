"""Told beside the energy of a day: what the fridge takes when it is cooler or hotter around it."""

from __future__ import annotations

from specbuilder.calc.formulas.energy import load_wh
from specbuilder.calc.formulas.fridge import fridge_day_wh
from specbuilder.calc.formulas.validity import above, missing, within
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId, Tag
from specbuilder.model.vans import Van

FRIDGE = Tag("fridge")
_DAY_H = 24


def _lasting(option: Option) -> bool:
    """A compressor that its thermostat runs day and night; a box that is on for some hours follows no such law."""
    return FRIDGE in option.gives and option.power.hours_summer == _DAY_H


def _day_at_25_wh(option: Option, _van: Van | None) -> float | None:
    """The summer day of the catalogue, which is that at 25 degrees."""
    power = option.power
    if not _lasting(option) or not power.watts_running or not power.duty_summer:
        return None
    duty = power.duty_summer
    return load_wh(1, power.watts_running, _DAY_H, duty) if 0 < duty <= 1 and power.watts_running > 0 else None


def _without_figures(option: Option, van: Van | None) -> float | None:
    return 1 if _lasting(option) and _day_at_25_wh(option, van) is None else None


def _day_wh(joint: Joint, frame: Frame) -> float | None:
    at_25_wh, without = joint
    if without:
        return missing("watts or duty of the fridge W")
    if not at_25_wh:
        return None
    around_c = within("around the fridge C", frame.settings["around_c"], -20, 60)
    return fridge_day_wh(above("day at 25 C Wh", at_25_wh), around_c, frame.settings["fridge_c"])


def _fridge(id_: str) -> Tally:
    return Tally(
        id=LedgerId(id_),
        value=Measure(parts=(summed(_day_at_25_wh), largest(_without_figures, none=0)), rest=_day_wh),
        settings=("around_c", "fridge_c"),
    )


FRIDGE_COOL, FRIDGE_WARM, FRIDGE_HOT = _fridge("fridge-cool"), _fridge("fridge-warm"), _fridge("fridge-hot")
"""Compressor fridges by the Carnot law from the figure at 25 degrees; nothing to measure without one."""
