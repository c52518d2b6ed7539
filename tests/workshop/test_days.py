"""Working days, held against walking the calendar one day after the other."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.kinds import Weekday
from specbuilder.workshop.days import work_days

WEEKS = st.lists(st.sampled_from(tuple(Weekday)), unique=True, min_size=1)
STARTS = st.dates(date(2024, 1, 1), date(2036, 12, 31))
DAY_H = st.sampled_from([1.0, 4.0, 7.5, 8.0])


def walked(week: list[Weekday], start: date, many: int) -> list[date]:
    """The first working days from a day on, found by looking at every day."""
    names = [day.value for day in Weekday]
    found: list[date] = []
    day = start
    while len(found) < many:
        if names[day.weekday()] in week:
            found.append(day)
        day += timedelta(days=1)
    return found


@given(WEEKS, STARTS, DAY_H, st.integers(0, 30), st.integers(1, 60))
def test_the_clock_finds_the_day_on_which_work_begins_and_ends(
    week: list[Weekday], start: date, hours: float, whole_days: int, minutes: int
) -> None:
    days = work_days(week, hours, start)
    calendar = walked(week, start, whole_days + 2)
    at_s = whole_days * days.day_s
    assert days.first == calendar[0]
    assert days.begun(at_s) == days.begun(at_s + minutes * 60 - 1) == calendar[whole_days]
    assert days.ended(at_s + minutes * 60) == calendar[whole_days]
    assert days.ended(at_s + days.day_s) == calendar[whole_days]
    assert days.begun(at_s + days.day_s) == calendar[whole_days + 1]


@given(WEEKS, STARTS, DAY_H, st.integers(-20, 60))
def test_mornings_and_evenings_of_any_day(week: list[Weekday], start: date, hours: float, later: int) -> None:
    days = work_days(week, hours, start)
    day = start + timedelta(days=later)
    calendar = walked(week, start, 70)
    assert days.morning_s(day) == sum(worked < day for worked in calendar) * days.day_s
    assert days.evening_s(day) == sum(worked <= day for worked in calendar) * days.day_s


@given(WEEKS, STARTS, st.integers(0, 60))
def test_days_between_are_counted_one_by_one(week: list[Weekday], start: date, later: int) -> None:
    end = start + timedelta(days=later)
    counted = sum(start < worked <= end for worked in walked(week, start, 70))
    assert work_days(week, 7.5, start).between(start, end) == counted


def test_a_build_longer_than_the_calendar_ends_with_it() -> None:
    days = work_days([Weekday.MON], 7.5, date(2031, 4, 19))
    assert days.begun(days.day_s * 10**9) == date.max


@pytest.mark.parametrize(("week", "hours"), [([], 7.5), ([Weekday.MON], 0.0)])
def test_no_time_of_work_makes_no_dates(week: list[Weekday], hours: float) -> None:
    with pytest.raises(ValueError):
        work_days(week, hours, date(2031, 4, 19))
