"""How much an option can take from what is left to a bound: a cheap look before the exact reach."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from math import inf

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Sense

from .calculation import Calculation
from .measure import Measure, shares
from .tally import Tally


@dataclass(frozen=True, slots=True)
class Weight:
    """What is lost from the room to the bound, at most; in the ledger's unit."""

    taken: float
    """When the option is taken, as often as it may be."""
    given_up: float
    """When it makes room for another answer."""


@lru_cache(maxsize=4)
def weights_of(catalogue: Catalogue) -> Mapping[LedgerId, Mapping[OptionId, Weight]]:
    """For each ledger the options that touch it with their weight; infinite where a figure is no sum."""
    from . import made  # the list of calculations stands above this file

    return {c.id: _of_ledger(catalogue, c) for c in made(catalogue)}


def _of_ledger(catalogue: Catalogue, calculation: Calculation) -> Mapping[OptionId, Weight]:
    touching = (o for o in catalogue.options.values() if o.van is None and calculation.touches(o))
    return {option.id: _weight(catalogue, calculation, option) for option in touching}


def _weight(catalogue: Catalogue, calculation: Calculation, option: Option) -> Weight:
    if not isinstance(calculation, Tally) or calculation.bound is None:
        return Weight(inf, inf)
    value = _amount(catalogue, calculation.value, option)
    bound = _amount(catalogue, calculation.bound, option)
    if value is None or bound is None:
        return Weight(inf, inf)
    at_least = catalogue.ledgers[calculation.id].sense is Sense.AT_LEAST
    loss = (bound - value if at_least else value - bound) * option.max_count
    return Weight(max(0.0, loss), max(0.0, -loss))


def _amount(catalogue: Catalogue, measure: Measure, option: Option) -> float | None:
    share = shares(measure, catalogue, None)
    amount, joint = share.get(option)
    plain = joint is share.neutral and not measure.by_van and measure.scale is None and measure.final is None
    return amount if plain else None
