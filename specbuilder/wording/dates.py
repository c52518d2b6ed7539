"""Days as people read them: ``18 April 2031``."""

from __future__ import annotations

from datetime import date

NO_DAY = "no date"
_MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
_WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def day_words(day: date) -> str:
    """``18 April 2031``, whatever the language of the system."""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def day_short(day: date) -> str:
    """For columns, with the day of the week: ``Fri 18 Apr 2031``."""
    return f"{_WEEKDAYS[day.weekday()]} {day.day} {_MONTHS[day.month - 1][:3]} {day.year}"


def written_day(text: str) -> str:
    """A date or a moment as it stands in a file, ``2031-04-18 09:30``, as a day; what is none stays as it is."""
    try:
        return day_words(date.fromisoformat(text[:10]))
    except ValueError:
        return text or NO_DAY


def written_moment(text: str) -> str:
    """The same with its time, where it has one: ``18 April 2031, 09:30``."""
    day, _, time = text.partition(" ")
    return f"{written_day(day)}, {time}" if time and written_day(day) != day else written_day(text)


def written_day_brief(text: str) -> str:
    """The same where the year is plain: ``18 Apr``; what is none stays as it is."""
    try:
        day = date.fromisoformat(text[:10])
    except ValueError:
        return text or NO_DAY
    return f"{day.day} {_MONTHS[day.month - 1][:3]}"


def written_day_short(text: str) -> str:
    """The same for columns; empty stays empty."""
    try:
        return day_short(date.fromisoformat(text[:10]))
    except ValueError:
        return text
