"""What every calculation offers to the reasoning."""

from __future__ import annotations

from typing import Protocol

from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Place
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span


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

    def moves(self, situation: Situation, option: Option) -> bool:
        """True when taking it may change value or bound, by itself or by what it takes the place of."""

    def read(self, situation: Situation) -> Reading:
        """Value, bound and verdict for this situation."""

    def reach(self, situation: Situation, option: Option, place: Place | None) -> tuple[Span, Span] | None:
        """Value and bound if the option stood in the spec, over every way to finish the build from there.

        In a pick-one group it stands instead of the answer there, else beside the rest. The free extras may come or
        stay away. None where nothing bounds it, or some way to finish has nothing to measure.
        """

    def amount(self, situation: Situation, option: Option, place: Place | None) -> float | None:
        """What one more of it adds to the value now, in the ledger's unit; None for figures and base vans."""
