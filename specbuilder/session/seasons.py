"""The same spec in every season: what a day takes then, and how many nights the battery lasts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from specbuilder.calc.power.battery_nights import BATTERY_NIGHTS
from specbuilder.calc.power.energy_day import DAILY_ENERGY
from specbuilder.calc.power.energy_use import SEASONS
from specbuilder.calc.power.power_parts import SEASON
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ledger import Reading
from specbuilder.model.spec import Spec

from .machine import lock_of
from .situate import lay


def by_season(catalogue: Catalogue, spec: Spec) -> Mapping[str, tuple[Reading, Reading]]:
    """The energy of a day and the nights on the battery, as they would be in each season, lightest first.

    Nothing but the season is asked anew. A catalogue whose brief does not know it, or without these sums, has none.
    """
    line = catalogue.brief.get(SEASON)
    if line is None or not {DAILY_ENERGY.id, BATTERY_NIGHTS.id} <= set(catalogue.ledgers):
        return MappingProxyType({})
    with lock_of(catalogue):
        return MappingProxyType({word: _in(catalogue, spec, word) for word in SEASONS if word in line.values})


def _in(catalogue: Catalogue, spec: Spec, season: str) -> tuple[Reading, Reading]:
    then = replace(spec, answers=spec.answers.with_answer(SEASON, season))
    situation = lay(catalogue, then, exact=False).situation
    return DAILY_ENERGY.read(situation), BATTERY_NIGHTS.read(situation)
