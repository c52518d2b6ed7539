"""The plan of a build: steps in order, hours, arrivals and dates."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from .ids import GroupId, OptionId
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
    also_at: tuple[str, ...] = ()
    """Steps before that one which wait for it as well: for its template, or since their hold point looks at it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedStep:
    """One step of the build with its hold point."""

    step: str
    hours: Span
    """Its work, with what groups not chosen yet may add to it; dates use the most, since late is worse."""
    arrivals: tuple[Arrival, ...]
    """Parts it needs, the latest first."""
    first_day: date
    """The first day its work can be begun."""
    last_day: date
    """The day it is finished, and its hold point is there to be passed."""
    critical: bool
    """On the longest path of hours."""
    passed: str = ""
    """Day on which its hold point was passed (of a step without one: the next that has); empty while it was not.
    What is passed costs no more hours: both days are that day."""
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
    moved_with: tuple[OptionId, ...] = ()
    """Parts that hold it just as long: only without their waits as well is it finished ``days_moved`` earlier."""
    groups_open: tuple[GroupId, ...] = ()
    """Not chosen yet: the hours hold the most they may need, but their parts count as if they came in time."""
    undone_h: float = 0
    """Undoing what signed changes made useless, before the work goes on; in ``whole_h`` and ``critical_h``."""
    hours_known: bool = True
    """False: nothing can be said of the hours; they count as none, and the days are those of the parts alone."""
