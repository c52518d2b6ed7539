"""How many nights the battery lasts away from the plug, with the sun and the driving of the brief.

The nights grow with the battery and with what sun and engine bring, and fall with what a day takes. Under one season,
one region and one battery at its place the least and the most therefore come from the ends of the other numbers.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from specbuilder.calc.formulas.energy import autonomy_days
from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.calc.measuring.frame import Asked
from specbuilder.calc.measuring.outcome import all_settings
from specbuilder.calc.measuring.prepared import Prepared, prepared
from specbuilder.calc.measuring.unsaid import nothing_here, unsaid
from specbuilder.calc.measuring.verdicts import verdict_of
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Place, Verdict
from specbuilder.model.ledger import Lack, Reading
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span, hull

from .banks import SEASON_SETTINGS, STORE_SETTINGS, Bank, bank_lacks, banks, holds, season_share
from .energy_day import Day, Use, energy_of, lacks_of, takes_part
from .energy_use import SUMMER, WINTER
from .filling import engine_a, engine_of_day, lacks_engine_a, panel_w, summed, sun_of_day, turning, uses
from .power_parts import (
    NIGHTS,
    SEASON,
    is_battery,
    is_engine_charger,
    is_panel,
    lacks_energy,
    lacks_idle,
    lacks_sun_watts,
    lacks_use,
)

_ID = LedgerId("battery-nights")
_DECIMALS = 6
_SETTINGS = ("sun_share", "engine_v", "age_share", *STORE_SETTINGS, *SEASON_SETTINGS)


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


def _supply(prep: Prepared) -> Supply:
    return Supply(uses(prep, holds), uses(prep, is_engine_charger), uses(prep, is_panel))


def _store(bank: Bank | None, season: str, settings: Mapping[str, float]) -> Store | None:
    if bank is None:
        return None
    usable = bank.usable_wh(settings["age_share"], season_share(bank, season, settings))
    return Store(usable, bank.store_share(settings))


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
    panels = summed(supply.panels, panel_w)
    engine = engine_of_day(supply.charging, asked, settings["engine_v"])
    found: list[Span] = []
    absent = False
    for season, used in day.by_season.items():
        sun = sun_of_day(prep.catalogue, asked, season, panels, settings["sun_share"])
        for store in {_store(bank, season, settings) for bank in banks(supply.holding)}:
            if store is None:
                absent = True
                continue
            ends = ((used.most, sun.least, engine.least), (used.least, sun.most, engine.most))
            each = [autonomy_days(store.usable_wh, u, store.store_share, s, e) for u, s, e in ends]
            found.append(Span(round(each[0], _DECIMALS), round(each[1], _DECIMALS)))
    return Nights(hull(found), absent)


@dataclass(frozen=True, slots=True, kw_only=True)
class BatteryNights:
    """The figure; see :mod:`specbuilder.calc.power.battery_nights`."""

    id: LedgerId = _ID
    settings: tuple[str, ...] = _SETTINGS

    def touches(self, option: Option) -> bool:
        """True when it uses, holds or fills the battery."""
        return takes_part(option) or holds(option) or is_engine_charger(option) or is_panel(option)

    def amount(self, _situation: Situation, _option: Option, _place: Place | None) -> float | None:
        """None: it is no sum."""
        return None

    def read(self, situation: Situation) -> Reading:
        """Nights against those of the brief; without end where sun and engine carry the day."""
        prep, asked = prepared(situation), Asked(situation.facts)
        sense = situation.catalogue.ledgers[self.id].sense
        supply = _supply(prep)
        if not any(is_battery(option) for use in supply.holding for option in use.options):
            return nothing_here(self.id, sense)
        bound = asked.number(NIGHTS)
        try:
            day = energy_of(prep)
            nights = _nights(prep, day, supply, asked)
        except OutsideValidity as fault:
            return unsaid(
                self.id,
                sense,
                fault,
                lacks_of(situation, lacks_use, lacks_idle, lacks_energy, lacks_sun_watts, lacks_engine_a),
                bound,
            )
        value = nights.value
        if value is None:
            return nothing_here(self.id, sense, bound)
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
    settings = all_settings(prep.catalogue)[_ID]
    yield from bank_lacks(supply.holding, lambda bank: tuple(_store(bank, season_, settings) for season_ in may_be))
    yield from turning(supply.charging, engine_a)
    yield from turning(supply.panels, panel_w)


BATTERY_NIGHTS = BatteryNights()
"""Nights on the battery against the nights of the brief; nothing to measure without a battery."""
