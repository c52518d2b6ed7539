"""A change to a signed revision: what it alters, what is already done, and what that costs."""

from __future__ import annotations

from dataclasses import dataclass

from .comparison import Comparison
from .record import Undone


@dataclass(frozen=True, slots=True, kw_only=True)
class FreezePoint:
    """A step of the build beside the change."""

    step: str
    passed: str
    """Day on which its hold point was passed; empty while it was not."""
    touched: tuple[str, ...]
    """Names of what the change takes out, puts in or moves there."""
    done: tuple[str, ...]
    """What of it is already cut, run or fitted, in words of the workshop: nothing of it is there while not passed."""

    @property
    def late(self) -> bool:
        """The change comes after its freeze point."""
        return bool(self.passed and self.touched)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeOrder:
    """The change from a signed revision to the one that shall replace it."""

    number: int
    of_revision: int
    becomes: int
    signed_on: str
    """Day on which the old revision was signed."""
    reason: str
    """Empty while nobody gave one."""
    comparison: Comparison
    undone: tuple[Undone, ...]
    """Work that is to be undone, beside the parts' own prices; it is in the price of the new revision."""
    undone_gross_pence: int
    freeze: tuple[FreezePoint, ...]

    @property
    def late(self) -> bool:
        """Something it touches is past its freeze point."""
        return any(point.late for point in self.freeze)
