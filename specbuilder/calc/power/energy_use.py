"""What one thing takes from the battery in a day, under a season and an inverter."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from specbuilder.calc.formulas.energy import inverter_idle_wh, inverter_load_wh, load_wh, starts_wh
from specbuilder.calc.formulas.validity import missing
from specbuilder.model.catalogue import Option

from .power_parts import is_inverter, is_load, lacks_idle, lacks_use

SUMMER, BETWEEN, WINTER = SEASONS = "summer", "three-season", "winter"


class Inverter(NamedTuple):
    """What carries the things on mains; no watts where there is none."""

    watts_w: float = 0.0
    efficiency: float = 1.0


def together(inverters: Iterable[Option]) -> Inverter:
    """Several inverters as one: as strong as the strongest, as wasteful as the worst."""
    found = tuple(inverters)
    if any(map(lacks_idle, found)):
        missing("watts, efficiency and idle watts of the inverter W")
    if not found:
        return Inverter()
    return Inverter(max(o.power.inverter_w or 0 for o in found), min(o.power.inverter_efficiency or 1 for o in found))


def used_wh(option: Option, count: int, season: str, inverter: Inverter, on_h: float) -> float:
    """What so many of it take from the battery in a day of the season, Wh."""
    if season == BETWEEN:
        return (used_wh(option, count, SUMMER, inverter, on_h) + used_wh(option, count, WINTER, inverter, on_h)) / 2
    power, summer = option.power, season == SUMMER
    wh = inverter_idle_wh(power.inverter_idle_w or 0, on_h) * count if is_inverter(option) else 0.0
    if not is_load(option):
        return wh
    if lacks_use(option):
        missing("hours a day h")
    hours = (power.hours_summer if summer else power.hours_winter) or 0
    duty = power.duty_summer if summer else power.duty_winter
    watts, duty = power.watts_running or 0, 1 if duty is None else duty
    if power.bus == "dc":
        starts = power.starts_summer if summer else power.starts_winter
        return wh + load_wh(count, watts, hours, duty) + starts_wh(count * starts, power.start_wh)
    if watts > inverter.watts_w:
        return wh
    return wh + inverter_load_wh(count, watts, hours, duty, inverter.efficiency)
