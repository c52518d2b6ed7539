"""How old the quote is."""

from __future__ import annotations

from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.ledger import Entry

_AGE = BriefKey("age_days")


def _age(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("days since the quote", frame.asked.number(_AGE), _AGE),)


def _valid(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("days our quotes hold", frame.firm.quote_valid_days),)


QUOTE_AGE = Tally(id=LedgerId("quote-age"), value=Measure(base=_age), bound=Measure(base=_valid))
"""Age of the quote against the days it is valid."""
