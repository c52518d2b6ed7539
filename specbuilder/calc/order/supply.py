"""Whether the house supplies the base van: then it is in the price and its weeks count."""

from __future__ import annotations

from functools import lru_cache

from specbuilder.calc.measuring.measure import largest
from specbuilder.calc.measuring.prepared import Prepared
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import Tag
from specbuilder.model.kinds import Truth
from specbuilder.model.vans import Van

HOUSE_SUPPLIES = Tag("firm-supplies-van")
"""Given by the answer that the house supplies the van."""


def _supplied(option: Option, _van: Van | None) -> float | None:
    return 1 if HOUSE_SUPPLIES in option.gives else None


SUPPLIED = largest(_supplied, none=0)
"""1 when the house supplies the van, else 0."""


@lru_cache(maxsize=4)
def supplied(prep: Prepared) -> Truth:
    """Whether the house supplies the van: settled by a choice, or by all that an undecided group still offers."""
    if any(HOUSE_SUPPLIES in placed.option.gives for placed in prep.situation.placed):
        return Truth.YES
    found = Truth.NO
    for _, options in prep.groups:
        giving = [HOUSE_SUPPLIES in option.gives for option in options]
        if giving and all(giving):
            return Truth.YES
        found = Truth.MAYBE if any(giving) else found
    return found


def own_van(prep: Prepared) -> bool:
    """True when the customer brings the van, whatever is still decided."""
    return supplied(prep) is Truth.NO
