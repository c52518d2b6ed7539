"""Figures told beside the sums of power, read from a situation."""

from __future__ import annotations

from specbuilder.calc import CALCULATIONS
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Situation
from tests.calc.plain_power_beside import PLAIN_BESIDE

FIGURES = {c.id: c for c in CALCULATIONS if c.id in PLAIN_BESIDE}


def read(id_: str, now: Situation) -> Reading:
    return FIGURES[LedgerId(id_)].read(now)


def value(id_: str, now: Situation) -> float:
    reading = read(id_, now)
    assert reading.value is not None, reading
    assert reading.value.settled, reading
    assert not reading.lacks
    return reading.value.least
