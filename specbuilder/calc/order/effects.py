"""What taking an option does in money and mass, for all options at once, and what each group adds."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from specbuilder.calc.weights.mass import mass_effects
from specbuilder.model.ids import OptionId
from specbuilder.model.report import Effect
from specbuilder.model.situation import Situation

from .price import gross_effects


def effects(situation: Situation) -> Mapping[OptionId, Effect]:
    """Every option of the catalogue with what it does to price and mass on this spec."""
    mass = mass_effects(situation)
    return {option: _effect(pence, mass[option]) for option, pence in gross_effects(situation).items()}


@lru_cache(maxsize=4096)
def _effect(gross_pence: int, mass_kg: float) -> Effect:
    return Effect(gross_pence=gross_pence, mass_kg=mass_kg)
