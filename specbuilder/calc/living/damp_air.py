"""Told beside heat and fresh air: the water sleepers give off, what the fixed openings carry away, and wet glass."""

from __future__ import annotations

from math import inf

from specbuilder.calc.formulas.damp import air_heat_w, air_needed_m3_per_h, dew_point_c, water_in_air_g_per_m3
from specbuilder.calc.formulas.fresh_air import stack_flow_m3_per_h
from specbuilder.calc.formulas.heat import surface_c
from specbuilder.calc.formulas.validity import at_least
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest, smallest, summed
from specbuilder.calc.measuring.states import Joint, Slot
from specbuilder.calc.measuring.table_cells import cell
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.ledger import Lack

from .fresh_air import high_area_mm2

_SLEEPERS, _COLD = BriefKey("sleepers"), BriefKey("design_temp_c")
_NIGHT = "night_c", "night_humidity_share", "outside_humidity_share"

_ANSWERS = largest(lambda _option, _van: None, none=0), smallest(lambda _option, _van: None)
"""Sleepers and the cold outside, while nobody said."""


def _open_answers(frame: Frame) -> tuple[Slot, ...]:
    slots: list[Slot] = []
    sleepers, cold = frame.asked.number(_SLEEPERS), frame.asked.number(_COLD)
    if not frame.asked.facts.known(_SLEEPERS):
        slots.append(Slot(_SLEEPERS, {(n, inf): (0, 0) for n in (sleepers.least, sleepers.most)}, Lack(key=_SLEEPERS)))
    if not frame.asked.facts.known(_COLD):
        slots.append(Slot(_COLD, {(0, c): (0, 0) for c in (cold.least, cold.most)}, Lack(key=_COLD)))
    return tuple(slots)


def _open_cold(frame: Frame) -> tuple[Slot, ...]:
    cold = frame.asked.number(_COLD)
    if frame.asked.facts.known(_COLD):
        return ()
    return (Slot(_COLD, {(0, 0, c): (0, 0) for c in (cold.least, cold.most)}, Lack(key=_COLD)),)


def _sleepers(joint: Joint, frame: Frame) -> float:
    facts = frame.asked.facts
    return facts.number(_SLEEPERS).least if facts.known(_SLEEPERS) else joint[0]


def _cold_c(outside_c: float, frame: Frame) -> float:
    return frame.asked.facts.number(_COLD).least if outside_c == inf else outside_c


def _needed_m3_per_h(joint: Joint, frame: Frame) -> float | None:
    """Air for everybody who sleeps; None where nobody does.

    Raises:
        OutsideValidity: the air outside is no drier than the air inside is to be.
    """
    sleepers = _sleepers(joint, frame)
    if not sleepers:
        return None
    setting, catalogue = frame.settings, frame.situation.catalogue
    each_g_per_h = cell(catalogue, "people-heat", "asleep", "water_g_per_h")
    water_g_per_h = sleepers * at_least("water of a sleeper g/h", each_g_per_h)
    inside = water_in_air_g_per_m3(setting["night_c"], setting["night_humidity_share"])
    outside = water_in_air_g_per_m3(_cold_c(joint[1], frame), setting["outside_humidity_share"])
    return air_needed_m3_per_h(water_g_per_h, inside, outside)


def _flow_m3_per_h(joint: Joint, frame: Frame) -> float:
    """What rises through the fixed openings without wind; nought while one of them is shut."""
    low_mm2, high_mm2, outside_c = joint
    if not low_mm2 or not high_mm2:
        return 0
    setting = frame.settings
    cold_c = _cold_c(outside_c, frame)
    return stack_flow_m3_per_h(low_mm2, high_mm2, setting["vents_apart_m"], setting["night_c"], cold_c)


def _air_heat_w(joint: Joint, frame: Frame) -> float | None:
    air = _needed_m3_per_h(joint, frame)
    return None if air is None else air_heat_w(air, frame.settings["night_c"], _cold_c(joint[1], frame))


NIGHT_AIR = Tally(
    id=LedgerId("night-air"),
    value=Measure(
        parts=(
            summed(lambda option, _van: option.heat.vent_low_mm2 or None),
            summed(lambda option, _van: high_area_mm2(option) or None),
            smallest(lambda _option, _van: None),
        ),
        rest=_flow_m3_per_h,
        slots=_open_cold,
    ),
    bound=Measure(parts=_ANSWERS, rest=_needed_m3_per_h, slots=_open_answers),
    settings=(*_NIGHT, "vents_apart_m"),
)
"""Air through the fixed openings against what the sleepers of the brief need to stay dry."""

NIGHT_AIR_HEAT = Tally(
    id=LedgerId("night-air-heat"),
    value=Measure(parts=_ANSWERS, rest=_air_heat_w, slots=_open_answers),
    settings=_NIGHT,
)
"""What it costs to warm that air."""


def _dew_c(frame: Frame) -> float:
    return dew_point_c(frame.settings["inside_c"], frame.settings["humidity_share"])


def _below_dew_c(joint: Joint, frame: Frame) -> float:
    """How far the glass is below the dew point; below nought it stays dry."""
    glass = cell(frame.situation.catalogue, "u-values", "single glass", "u_w_per_m2k")
    film, inside_c = frame.settings["inside_film_m2k_per_w"], frame.settings["inside_c"]
    return _dew_c(frame) - surface_c(glass, film, inside_c, _cold_c(joint[2], frame))


DEW_POINT = Tally(
    id=LedgerId("dew-point"),
    value=Measure(rest=lambda _joint, frame: _dew_c(frame)),
    settings=("inside_c", "humidity_share"),
)
WET_GLASS = Tally(
    id=LedgerId("wet-glass"),
    value=Measure(
        parts=(*(summed(lambda _option, _van: None) for _ in range(2)), smallest(lambda _option, _van: None)),
        rest=_below_dew_c,
        slots=_open_cold,
    ),
    settings=("inside_c", "humidity_share", "inside_film_m2k_per_w"),
)
"""Bare single glass at the cold named, against the dew point inside."""
