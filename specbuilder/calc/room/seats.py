"""Belts and sleeping places."""

from __future__ import annotations

from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.ledger import Entry

_ADULTS, _CHILDREN, _SLEEPERS = BriefKey("adults"), BriefKey("children"), BriefKey("sleepers")


def belts(option: Option) -> float:
    """Seats with belts it brings."""
    return option.space.belts


def berths(option: Option) -> float:
    """Sleeping places it brings, up and down."""
    return option.space.berths_down + option.space.berths_up


def _travellers(frame: Frame) -> tuple[Entry, ...]:
    number = frame.asked.number
    return (
        frame.entry("grown-ups", number(_ADULTS), _ADULTS),
        frame.entry("children", number(_CHILDREN), _CHILDREN),
    )


def _sleepers(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("sleepers", frame.asked.number(_SLEEPERS), _SLEEPERS),)


BELTS = Tally(id=LedgerId("belts"), value=Measure(amount=belts), bound=Measure(base=_travellers))
"""Seats with belts against everybody who travels."""

BERTHS = Tally(id=LedgerId("berths"), value=Measure(amount=berths), bound=Measure(base=_sleepers))
"""Sleeping places against everybody who sleeps in the van."""

BERTHS_OVER_BELTS = Tally(
    id=LedgerId("berths-over-belts"), value=Measure(amount=lambda option: berths(option) - belts(option))
)
"""Sleeping places less seats with belts: above nought, more may sleep than may travel."""
