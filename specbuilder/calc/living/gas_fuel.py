"""Gas bottles on board, and fuel lines for the burners."""

from __future__ import annotations

from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Entry


def _most_bottles(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("most", frame.settings["most_bottles"]),)


GAS_BOTTLES = Tally(
    id=LedgerId("gas-bottles"),
    value=Measure(amount=lambda option: option.heat.gas_bottles),
    bound=Measure(base=_most_bottles),
    settings=("most_bottles",),
)
"""Bottles against the most that may travel."""

FUEL_PICKUPS = Tally(
    id=LedgerId("fuel-pickups"),
    value=Measure(amount=lambda option: option.heat.pickups_used),
    bound=Measure(amount=lambda option: option.heat.pickups_supplied),
)
"""Fuel lines the burners need against those the take-off gives."""
