"""How many nights the battery lasts away from the plug, with the sun and the driving of the brief.

The nights grow with the battery and with what sun and engine bring, and fall with what a day takes. Under one season,
one region and one battery at its place the least and the most therefore come from the ends of the other numbers.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import product
from typing import NamedTuple

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Place, Verdict
from specbuilder.model.ledger import Lack, Outside, Reading
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span, hull

from .energy_day import Day, Use, energy_of, lacks_of, takes_part, uses_of, words
from .energy_use import SUMMER, WINTER
from .formulas.energy import autonomy_days, engine_wh, lead_cold_share, sun_wh, usable_wh
from .formulas.validity import OutsideValidity
from .frame import Asked
from .outcome import all_settings
from .power_parts import (
    DRIVE_H,
    LITHIUM,
    NIGHTS,
    OUTSIDE,
    REGION,
    SEASON,
    is_battery,
    is_engine_charger,
    is_panel,
    lacks_energy,
    lacks_idle,
    lacks_sun_watts,
    lacks_use,
    missing,
)
from .prepared import Prepared, prepared
from .verdicts import verdict_of

_ID = LedgerId("battery-nights")
_SUN_TABLE = "sun-hours"
_DECIMALS = 6
_SETTINGS = (
    "sun_share",
    "engine_v",
    "age_share",
    "store_lithium_share",
    "store_lead_share",
    "lead_full_c",
    "lead_loss_share_per_c",
    "inside_summer_c",
    "inside_three_season_c",
    "inside_winter_c",
    "lithium_outside_winter_share",
)


class Store(NamedTuple):
    """A battery at its place in one season."""

    usable_wh: float
    store_share: float


class Supply(NamedTuple):
    """What fills and holds the battery, over everything undecided."""

    holding: tuple[Use, ...]
    """Batteries and their places."""
    charging: tuple[Use, ...]
    """Chargers on the engine."""
    panels: tuple[Use, ...]


def _is_place(option: Option) -> bool:
    return OUTSIDE in option.gives


@lru_cache(maxsize=16)
def _part(catalogue: Catalogue, is_one: Callable[[Option], bool]) -> frozenset[OptionId]:
    return frozenset(o.id for o in catalogue.options.values() if is_one(o))


def _holds(option: Option) -> bool:
    return is_battery(option) or _is_place(option)


def _supply(prep: Prepared) -> Supply:
    def uses(is_one: Callable[[Option], bool]) -> tuple[Use, ...]:
        return tuple(uses_of(prep, _part(prep.catalogue, is_one)))

    return Supply(uses(_holds), uses(is_engine_charger), uses(is_panel))


def _stores(uses: Sequence[Use], season: str, settings: Mapping[str, float]) -> set[Store | None]:
    """Every battery that may be chosen at every place it may get; None where there is none."""
    return {
        _store(tuple(zip(chosen, (use.many for use in uses), strict=True)), season, settings)
        for chosen in product(*(use.options for use in uses))
    }


def _store(chosen: Sequence[tuple[Option, int]], season: str, settings: Mapping[str, float]) -> Store | None:
    batteries = [(option, many) for option, many in chosen if is_battery(option)]
    if not batteries:
        return None
    if any(lacks_energy(option) for option, _ in batteries):
        missing("amp-hours, volts, depth and kind of the battery")
    outside = any(_is_place(option) for option, _ in chosen)
    usable = sum(many * _usable_wh(option, season, outside, settings) for option, many in batteries)
    lithium = all(option.power.chemistry in LITHIUM for option, _ in batteries)
    return Store(usable, settings["store_lithium_share" if lithium else "store_lead_share"])


def _usable_wh(battery: Option, season: str, outside: bool, settings: Mapping[str, float]) -> float:
    power = battery.power
    if power.chemistry in LITHIUM:
        cold = settings["lithium_outside_winter_share"] if outside and season == WINTER else 1.0
    else:
        inside_c = settings[f"inside_{season.replace('-', '_')}_c"]
        cold = lead_cold_share(inside_c, settings["lead_full_c"], settings["lead_loss_share_per_c"])
    depth, age = power.depth_of_discharge or 0, settings["age_share"]
    return usable_wh(power.battery_ah or 0, power.battery_v or 0, depth, age, cold)


def _summed(uses: Sequence[Use], of: Callable[[Option], float]) -> Span:
    each = [[of(option) * use.many for option in use.options] for use in uses]
    return Span(sum(map(min, each)), sum(map(max, each)))


def _lacks_engine_a(option: Option) -> bool:
    return is_engine_charger(option) and option.power.engine_charge_a is None


def _engine_a(option: Option) -> float:
    if _lacks_engine_a(option):
        missing("amps the engine's charger gives A")
    return option.power.engine_charge_a or 0


def _panel_w(option: Option) -> float:
    if lacks_sun_watts(option):
        missing("watts of the panel W")
    return option.power.solar_w or 0


@lru_cache(maxsize=4)
def _sun_hours(catalogue: Catalogue) -> Mapping[tuple[str, str], float]:
    """Hours of full sun by region and season, from the catalogue's table."""
    table = catalogue.tables.get(_SUN_TABLE)
    found: dict[tuple[str, str], float] = {}
    for row in table.rows if table is not None else ():
        region, season, hours = row
        if isinstance(hours, int | float):
            found[str(region), str(season)] = hours
    return found


class Nights(NamedTuple):
    """Least and most nights over everything undecided, and whether there may be no battery at all."""

    value: Span | None
    absent: bool


def _nights(prep: Prepared, day: Day, supply: Supply, asked: Asked) -> Nights:
    """The nights.

    Raises:
        OutsideValidity: a figure is missing or absurd.
    """
    settings = all_settings(prep.catalogue)[_ID]
    panels, amps = _summed(supply.panels, _panel_w), _summed(supply.charging, _engine_a)
    drive = asked.number(DRIVE_H) if amps.most else Span(0, 0)
    engine = Span(*(engine_wh(a, settings["engine_v"], h) for a, h in zip(_both(amps), _both(drive), strict=True)))
    found: list[Span] = []
    absent = False
    for season, used in day.by_season.items():
        sun = _sun(prep.catalogue, asked, season, panels, settings["sun_share"])
        for store in _stores(supply.holding, season, settings):
            if store is None:
                absent = True
                continue
            ends = ((used.most, sun.least, engine.least), (used.least, sun.most, engine.most))
            each = [autonomy_days(store.usable_wh, u, store.store_share, s, e) for u, s, e in ends]
            found.append(Span(round(each[0], _DECIMALS), round(each[1], _DECIMALS)))
    return Nights(hull(found), absent)


def _both(span: Span) -> tuple[float, float]:
    return span.least, span.most


def _sun(catalogue: Catalogue, asked: Asked, season: str, panels: Span, share: float) -> Span:
    if not panels.most:
        return Span(0, 0)
    hours = _sun_hours(catalogue)
    regions = words(catalogue, asked, REGION, tuple({region: None for region, _ in hours}))
    if not regions or any((region, season) not in hours for region in regions):
        missing("hours of full sun a day h")
    each = [hours[region, season] for region in regions]
    return Span(sun_wh(panels.least, min(each), share), sun_wh(panels.most, max(each), share))


@dataclass(frozen=True, slots=True, kw_only=True)
class BatteryNights:
    """The figure; see :mod:`specbuilder.calc.battery_nights`."""

    id: LedgerId = _ID
    settings: tuple[str, ...] = _SETTINGS

    def touches(self, option: Option) -> bool:
        """True when it uses, holds or fills the battery."""
        return takes_part(option) or _holds(option) or is_engine_charger(option) or is_panel(option)

    def amount(self, _situation: Situation, _option: Option, _place: Place | None) -> float | None:
        """None: it is no sum."""
        return None

    def read(self, situation: Situation) -> Reading:
        """Nights against those of the brief; without end where sun and engine carry the day."""
        prep, asked = prepared(situation), Asked(situation.facts)
        sense = situation.catalogue.ledgers[self.id].sense
        supply = _supply(prep)
        if not any(is_battery(option) for use in supply.holding for option in use.options):
            return Reading(id=self.id, value=None, bound=None, verdict=Verdict.HOLDS, applies=False, sense=sense)
        bound = asked.number(NIGHTS)
        try:
            day = energy_of(prep)
            nights = _nights(prep, day, supply, asked)
        except OutsideValidity as fault:
            return Reading(
                id=self.id,
                value=None,
                bound=bound,
                verdict=Verdict.CANNOT_TELL,
                lacks=tuple(lacks_of(situation, lacks_use, lacks_idle, lacks_energy, lacks_sun_watts, _lacks_engine_a)),
                sense=sense,
                outside=Outside(fault.quantity, fault.value, fault.needs),
            )
        value = nights.value
        if value is None:
            return Reading(id=self.id, value=None, bound=bound, verdict=Verdict.HOLDS, applies=False, sense=sense)
        told = Verdict.CANNOT_TELL if nights.absent else verdict_of(sense, value, bound)
        lacks: tuple[Lack, ...] = ()
        if nights.absent or not value.settled:
            lacks = tuple(dict.fromkeys((*_lacks(supply, prep, asked), *day.lacks)))
        if not bound.settled:
            lacks = (*lacks, Lack(key=NIGHTS))
        return Reading(
            id=self.id,
            value=value,
            bound=bound,
            verdict=told,
            lacks=lacks,
            assumed=tuple(dict.fromkeys((*asked.assumed, *day.asked.assumed))),
            sense=sense,
        )


def _lacks(supply: Supply, prep: Prepared, asked: Asked) -> Iterator[Lack]:
    """What of battery, sun and engine may still turn out several ways; the day's own lacks come beside it."""
    season = asked.facts.get(SEASON)
    if season is None:
        yield Lack(key=SEASON)
    yield from (Lack(key=key) for key in asked.unknown if key != NIGHTS)
    may_be = (str(season),) if season else (SUMMER, WINTER)
    for at, use in enumerate(supply.holding):
        others = (*supply.holding[:at], *supply.holding[at + 1 :])
        if any(_turns(use, others, season_, all_settings(prep.catalogue)[_ID]) for season_ in may_be):
            yield use.lack
    turning = [use for use in supply.charging if len({_engine_a(option) for option in use.options}) > 1]
    turning += [use for use in supply.panels if len({_panel_w(option) for option in use.options}) > 1]
    yield from (use.lack for use in turning)


def _turns(use: Use, others: Sequence[Use], season: str, settings: Mapping[str, float]) -> bool:
    """Whether what stands there changes the battery, beside some way of the others."""
    if len(use.options) < 2:
        return False
    counts = tuple(other.many for other in others)
    for beside in product(*(other.options for other in others)):
        rest = tuple(zip(beside, counts, strict=True))
        if len({_store(((option, use.many), *rest), season, settings) for option in use.options}) > 1:
            return True
    return False


BATTERY_NIGHTS = BatteryNights()
"""Nights on the battery against the nights of the brief; nothing to measure without a battery."""
