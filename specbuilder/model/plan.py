"""The plan of a build: steps in order, hours, arrivals and dates."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from .ids import OptionId
from .span import Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrival:
    """A part that a step of the build needs."""

    option: OptionId
    step: str
    on: date | None
    """None: not known (a customer's part without a date)."""
    recorded: bool = False
    """The date was recorded (ordered, due, in store); else it is the house's usual wait from the order on."""
    here: bool = False
    """It is in store."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedStep:
    """One step of the build with its hold point."""

    step: str
    hours: Span
    arrivals: tuple[Arrival, ...]
    """Parts it needs, the latest first."""
    first_day: date
    """The first day its work can be begun."""
    last_day: date
    """The day it is finished, and its hold point is there to be passed."""
    critical: bool
    """On the longest path of hours."""
    passed: str = ""
    """Day on which its hold point was passed; empty while it was not."""
    waits_for: OptionId | None = None
    """The part that keeps it from beginning earlier; None: the steps before it, or the first day, do."""

    @property
    def needed_by(self) -> date:
        """The latest day on which its parts may come without moving anything."""
        return self.first_day


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildPlan:
    """All steps in an order in which they can be done."""

    steps: tuple[PlannedStep, ...]
    critical: tuple[str, ...]
    """Steps of the longest path, in order."""
    critical_h: float
    whole_h: Span
    first_day: date
    finish: date
    moved_by: OptionId | None
    """The part without whose wait it would be finished earlier; None: hours and hands alone decide."""
    days_moved: int
    """So many working days earlier."""
    dates_open: tuple[OptionId, ...]
    """Parts nobody has a date for: the finish is told as if they came in time."""
