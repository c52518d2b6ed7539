"""Working days: a clock of working time, and the days of the calendar on which it runs."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from specbuilder.model.kinds import Weekday

_WEEK = tuple(Weekday)
_LAST = date.max.toordinal()


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkDays:
    """The clock stands at nought on the morning of the first working day and runs in whole seconds of work.

    Whole seconds, so that a step which ends with the day ends on that day and not a rounding later.
    """

    weekdays: tuple[int, ...]
    """Days of the week that are worked, Monday is 0; ascending, at least one."""
    day_s: int
    """Seconds of work in a day."""
    first: date
    """The first working day."""

    def begun(self, clock_s: int) -> date:
        """The day on which work begins that begins at this time: at the end of a day, the next one."""
        return self._worked(clock_s // self.day_s)

    def ended(self, clock_s: int) -> date:
        """The day on which work ends that ends at this time: at the end of a day, that one."""
        return self._worked(max(0, -(-clock_s // self.day_s) - 1))

    def morning_s(self, day: date) -> int:
        """When the first working day from this one on begins; nought for days before the first one."""
        return max(0, self._count(day.toordinal()) - self._count(self.first.toordinal())) * self.day_s

    def evening_s(self, day: date) -> int:
        """When the last working day up to this one has ended; nought for days before the first one."""
        return max(0, self._count(day.toordinal() + 1) - self._count(self.first.toordinal())) * self.day_s

    def between(self, earlier: date, later: date) -> int:
        """How many working days later."""
        return self._count(later.toordinal() + 1) - self._count(earlier.toordinal() + 1)

    def _worked(self, number: int) -> date:
        """The working day with this number, counted from 0; the end of all calendars for one beyond it."""
        weeks, place = divmod(self._place(self.first.toordinal()) + number, len(self.weekdays))
        monday = self.first.toordinal() - self.first.weekday()
        return date.fromordinal(min(_LAST, monday + weeks * len(_WEEK) + self.weekdays[place]))

    def _count(self, ordinal: int) -> int:
        """Working days before this one, from the first Monday of the calendar (1 January of the year 1) on."""
        return (ordinal - 1) // len(_WEEK) * len(self.weekdays) + self._place(ordinal)

    def _place(self, ordinal: int) -> int:
        """How many days of its week are worked before it."""
        return sum(day < (ordinal - 1) % len(_WEEK) for day in self.weekdays)


def work_days(worked: Iterable[str], hours_per_day: float, start: date) -> WorkDays:
    """The days of a firm from ``start`` on.

    Raises:
        ValueError: if no day is worked, or no time in a day; the reader of the rules lets neither pass.
    """
    weekdays = tuple(sorted({_WEEK.index(Weekday(day)) for day in worked}))
    day_s = seconds(hours_per_day)
    if not weekdays or day_s <= 0:
        raise ValueError(f"nobody works: {weekdays} days of {hours_per_day} hours")
    wait = min((day - start.weekday()) % len(_WEEK) for day in weekdays)
    first = date.fromordinal(min(_LAST, start.toordinal() + wait))
    return WorkDays(weekdays=weekdays, day_s=day_s, first=first)


def seconds(hours: float) -> int:
    """Hours as whole seconds."""
    return round(hours * 3600)
