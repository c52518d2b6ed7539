"""Told beside the nights: what the battery gives by age and cold, what sun and driving bring, how long it fills."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from itertools import product
from math import inf
from typing import NamedTuple

from specbuilder.calc.formulas.charging import charge_limit_a, recharge_lead_h, recharge_lithium_h
from specbuilder.calc.formulas.energy import DAY_H, amp_hours_ah, autonomy_days
from specbuilder.calc.formulas.validity import OutsideValidity, at_least, missing
from specbuilder.calc.measuring.frame import Asked
from specbuilder.calc.measuring.outcome import all_settings
from specbuilder.calc.measuring.prepared import prepared
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Lack
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span

from .banks import SEASON_SETTINGS, Bank, bank_lacks, banks, holds, season_share
from .battery_cold import COLD, share_at
from .energy_day import Use
from .energy_use import BETWEEN, SUMMER, WINTER
from .filling import engine_a, panel_w, turning
from .power_parts import (
    CHARGER_ON_INVERTER,
    PLUG,
    is_engine_charger,
    is_inverter,
    is_panel,
    is_plug_charger,
    lacks_charge,
)
from .told_power import NOTHING, Outlook, Told, over, power_figure

_AGE, _WORN, _LITHIUM, _LEAD, _ABSORPTION = "age_share", "worn_share", "lithium_share", "lead_share", "absorption_h"
_TO_80 = 0.2
"""The last fifth of a lead battery fills by absorption, however strong the charger."""


def _new(outlook: Outlook) -> Told:
    return _usable(outlook, 1.0)


def _aged(outlook: Outlook) -> Told:
    return _usable(outlook, outlook.settings[_AGE])


def _worn(outlook: Outlook) -> Told:
    return _usable(outlook, outlook.settings[_WORN])


def _usable(outlook: Outlook, age_share: float) -> Told:
    seasons, settings = outlook.seasons, outlook.settings

    def wh(bank: Bank | None, season: str) -> float | None:
        return bank.usable_wh(age_share, season_share(bank, season, settings)) if bank is not None else None

    return _of_bank(outlook, lambda bank: tuple(wh(bank, season) for season in seasons))


def _in_cold(outlook: Outlook) -> Told:
    holding = outlook.uses(holds)
    if not any(bank is not None for bank in banks(holding)):
        return NOTHING
    cold, settings = outlook.asked.number(COLD), outlook.settings

    def ends(bank: Bank | None) -> tuple[float | None, ...]:
        if bank is None:
            return (None,)
        shares = (share_at(outlook.catalogue, c, settings) for c in (cold.least, cold.most))
        return tuple(bank.usable_wh(settings[_AGE], share) for share in shares)

    return _of_bank(outlook, ends)


def _of_bank(outlook: Outlook, told: Callable[[Bank | None], tuple[float | None, ...]]) -> Told:
    holding = outlook.uses(holds)
    found = (value for bank in banks(holding) for value in told(bank))
    return over(found, bank_lacks(holding, told))


def _without_sun(outlook: Outlook) -> Told:
    holding, settings, day = outlook.uses(holds), outlook.settings, outlook.day(*outlook.seasons)

    def wh(bank: Bank | None, season: str) -> float | None:
        if bank is None:
            return None
        return bank.usable_wh(settings[_AGE], season_share(bank, season, settings))

    found: list[float | None] = []
    for (season, used), bank in product(day.by_season.items(), banks(holding)):
        usable = wh(bank, season)
        ends = (used.least, used.most) if usable is not None else ()
        found += [autonomy_days(usable or 0, wh_, 1, 0, 0) for wh_ in ends] or [None]
    by_season = tuple(day.by_season)
    lacks = (*day.lacks, *bank_lacks(holding, lambda bank: tuple(wh(bank, season) for season in by_season)))
    return over(found, dict.fromkeys(lacks))


def _sun_in(season: str) -> Callable[[Outlook], Told]:
    return lambda outlook: _sun(outlook, lambda: outlook.sun(season))


def _sun(outlook: Outlook, brought: Callable[[], Span]) -> Told:
    if not outlook.panels_w.most:
        return NOTHING
    return Told(brought(), turning(outlook.uses(is_panel), panel_w))


def sun_by_month(situation: Situation) -> tuple[Span, ...]:
    """What the sun of a day brings from January to December, Wh; nothing without panels or where nobody can tell."""
    settings = all_settings(situation.catalogue).get(SUN_BEST_MONTH.id)
    if settings is None:
        return ()
    outlook = Outlook(prepared(situation), Asked(situation.facts), settings)
    try:
        return outlook.months() if outlook.panels_w.most else ()
    except OutsideValidity:
        return ()


def _best_month(outlook: Outlook) -> Told:
    return _sun(outlook, lambda: _month_of(outlook, max))


def _worst_month(outlook: Outlook) -> Told:
    return _sun(outlook, lambda: _month_of(outlook, min))


def _month_of(outlook: Outlook, pick: Callable[[Iterator[float]], float]) -> Span:
    months = outlook.months()
    return Span(pick(month.least for month in months), pick(month.most for month in months))


def _road(outlook: Outlook) -> Told:
    charging = outlook.uses(is_engine_charger)
    brought = outlook.engine()
    if not any(engine_a(option) for use in charging for option in use.options):
        return NOTHING
    return Told(brought, turning(charging, engine_a))


class _Filled(NamedTuple):
    """What the hours to fill a battery hang on."""

    capacity_ah: float
    depth: float
    volts_v: float
    lithium: bool
    most_a: float


def _filled(bank: Bank | None, settings: Mapping[str, float]) -> _Filled | None:
    if bank is None:
        return None
    depth = bank.mean(lambda option: option.power.depth_of_discharge or 0)
    volts = bank.mean(lambda option: option.power.battery_v or 0)
    most_a = charge_limit_a(bank.capacity_ah, settings[_LITHIUM if bank.lithium else _LEAD])
    return _Filled(bank.capacity_ah, depth, volts, bank.lithium, most_a)


def _hours(filled: _Filled, charge_a: float, day_wh: float, settings: Mapping[str, float]) -> float:
    """From as empty as it may get to full, while the mean of the day is drawn; no end where that is all it gets."""
    given_a = min(at_least("charging A", charge_a), filled.most_a)
    load_a = amp_hours_ah(day_wh, filled.volts_v) / DAY_H
    if load_a >= given_a:
        return inf
    if filled.lithium:
        return recharge_lithium_h(filled.capacity_ah, filled.depth, given_a, load_a)
    to_80 = max(filled.depth - _TO_80, 0)
    return recharge_lead_h(filled.capacity_ah, to_80, given_a, load_a, settings[_ABSORPTION])


def _from_road(outlook: Outlook) -> Told:
    charging = outlook.uses(is_engine_charger)
    ways = [sum(amps) for amps in product(*([engine_a(o) * use.many for o in use.options] for use in charging))]
    return _refill(outlook, lambda _making: ways, turning(charging, engine_a))


def _from_plug(outlook: Outlook) -> Told:
    """The combined unit makes mains and fills the battery, so its amps go with the day it makes."""
    feeding = tuple(u for u in outlook.uses(_on_plug) if not any(map(is_inverter, u.options)))

    def amps(making: tuple[tuple[Option, int], ...]) -> list[float]:
        mine = [((option, many),) for option, many in making]
        rest = [[(option, use.many) for option in use.options] for use in feeding]
        return [_plug_a(chosen) for chosen in product(*mine, *rest)]

    lacks = (use.lack for use in feeding if len({(_plug_amps(o), PLUG in o.gives) for o in use.options}) > 1)
    return _refill(outlook, amps, lacks)


def _on_plug(option: Option) -> bool:
    return PLUG in option.gives or is_plug_charger(option)


def _plug_amps(option: Option) -> float:
    if not is_plug_charger(option) or CHARGER_ON_INVERTER in option.gives:
        return 0.0
    if lacks_charge(option):
        missing("amps a charger gives A")
    return option.power.mains_charge_a or 0


def _plug_a(chosen: tuple[tuple[Option, int], ...]) -> float:
    if not any(PLUG in option.gives for option, _ in chosen):
        return 0.0
    return sum(_plug_amps(option) * many for option, many in chosen)


def _refill(
    outlook: Outlook, amps: Callable[[tuple[tuple[Option, int], ...]], list[float]], charging: Iterator[Lack]
) -> Told:
    settings, holding, day = outlook.settings, outlook.uses(holds), outlook.day(*outlook.seasons)
    found = {_filled(bank, settings) for bank in banks(holding)}
    hours: list[float | None] = []
    for way in day.ways:
        for charge_a, bank in product(set(amps(way.making)), found):
            if bank is None or not charge_a:
                hours.append(None)
            else:
                hours += [_hours(bank, charge_a, wh, settings) for wh in {way.total.least, way.total.most}]
    return over(hours, _refill_lacks(holding, day.lacks, charging, settings, _making(outlook)))


def _making(outlook: Outlook) -> tuple[Use, ...]:
    return tuple(u for u in outlook.uses(is_inverter) if len({o.power.mains_charge_a for o in u.options}) > 1)


def _refill_lacks(
    holding: tuple[Use, ...],
    of_day: tuple[Lack, ...],
    charging: Iterator[Lack],
    settings: Mapping[str, float],
    making: tuple[Use, ...],
) -> Iterator[Lack]:
    yield from bank_lacks(holding, lambda bank: _filled(bank, settings))
    yield from charging
    yield from (use.lack for use in making)
    yield from of_day


_SUN = ("sun_share",)
USABLE_NEW = power_figure(ledger=LedgerId("usable-new"), value=_new, settings=SEASON_SETTINGS)
"""What the battery gives when it is new, in the season of the brief."""
USABLE_AGED = power_figure(ledger=LedgerId("usable-aged"), value=_aged, settings=(_AGE, *SEASON_SETTINGS))
"""The same at the age the nights are planned for."""
USABLE_WORN = power_figure(ledger=LedgerId("usable-worn"), value=_worn, settings=(_WORN, *SEASON_SETTINGS))
"""The same at the end of its life."""
USABLE_IN_COLD = power_figure(
    ledger=LedgerId("usable-in-cold"), value=_in_cold, settings=(_AGE, "lead_full_c", "lead_loss_share_per_c")
)
"""The same when the battery itself is as cold as the night of the brief."""
NIGHTS_WITHOUT_SUN = power_figure(
    ledger=LedgerId("nights-without-sun"), value=_without_sun, settings=(_AGE, *SEASON_SETTINGS)
)
"""Nights with neither sun nor driving."""
SUN_SUMMER = power_figure(ledger=LedgerId("sun-summer"), value=_sun_in(SUMMER), settings=_SUN)
"""What the panels bring in a summer day."""
SUN_BETWEEN = power_figure(ledger=LedgerId("sun-three-season"), value=_sun_in(BETWEEN), settings=_SUN)
"""What they bring in a day of spring or autumn."""
SUN_WINTER = power_figure(ledger=LedgerId("sun-winter"), value=_sun_in(WINTER), settings=_SUN)
"""What they bring in a winter day."""
SUN_BEST_MONTH = power_figure(ledger=LedgerId("sun-best-month"), value=_best_month, settings=_SUN)
"""What they bring in a day of the best month."""
SUN_WORST_MONTH = power_figure(ledger=LedgerId("sun-worst-month"), value=_worst_month, settings=_SUN)
"""What they bring in a day of the worst month."""
ROAD_CHARGE = power_figure(ledger=LedgerId("road-charge"), value=_road, settings=("engine_v",))
"""What the driving of a day brings."""
REFILL_ROAD = power_figure(ledger=LedgerId("refill-road"), value=_from_road, settings=(_LITHIUM, _LEAD, _ABSORPTION))
"""Hours of driving until the battery is full."""
REFILL_PLUG = power_figure(ledger=LedgerId("refill-plug"), value=_from_plug, settings=(_LITHIUM, _LEAD, _ABSORPTION))
"""Hours on the plug until the battery is full."""
