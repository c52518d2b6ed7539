"""What every calculation offers to the reasoning."""

from __future__ import annotations

from typing import Protocol

from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Place
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Situation


class Calculation(Protocol):
    """One ledger or figure."""

    @property
    def id(self) -> LedgerId:
        """Its table in the catalogue."""

    @property
    def settings(self) -> tuple[str, ...]:
        """House settings its table must hold."""

    def touches(self, option: Option) -> bool:
        """True when the option itself changes value or bound."""

    def read(self, situation: Situation) -> Reading:
        """Value, bound and verdict for this situation."""

    def amount(self, situation: Situation, option: Option, place: Place | None) -> float | None:
        """What one more of it adds to the value now, in the ledger's unit; None for figures and base vans."""
