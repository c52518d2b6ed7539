"""What a person types, as values: numbers, dates, answers. None means it is none of that kind."""

from __future__ import annotations

import datetime
import re
from typing import assert_never

from specbuilder.model.brief import Answer, BriefLine
from specbuilder.model.kinds import AnswerType

from .quantities import PENCE

_LONGEST_NUMBER = 12
MINUS = "-"
_DAY_AND_MONTH = 4
_PENNY = 2
_FORMS = tuple(
    re.compile(rf"(?P<sign>[+-]?)(?:{form})", re.ASCII)
    for form in (
        r"(?P<whole>[1-9]\d{0,2}(?:,\d{3})+|[1-9]\d{0,2}(?: \d{3})+|\d+)(?:\.(?P<part>\d*))?",
        r"(?P<whole>)\.(?P<part>\d+)",
        r"(?P<whole>[1-9]\d{0,2}(?:\.\d{3})+|[1-9]\d{0,2}(?: \d{3})+|\d*),(?P<part>\d+)",
        r"(?P<whole>[1-9]\d{0,2}(?:\.\d{3}){2,})(?P<part>)",
    )
)
"""How a number may be written, the first that fits: thousands parted by commas or spaces with a decimal point; a
decimal comma, with points or spaces between thousands. A comma before three figures parts thousands, as the program
itself writes them, unless no thousands can stand there (``0,500``, ``1500,500``)."""


def whole(text: str) -> int | None:
    """A whole number of nought or more; thousands commas and spaces do not matter."""
    bare = _bare(text)
    return int(bare) if bare.isdecimal() else None


def number(text: str) -> float | None:
    """A number with or without decimals and sign; ``2,5`` is as good as ``2.5``."""
    bare = _bare(text)
    return float(bare) if bare else None


def pence(text: str) -> int | None:
    """A sum of money in whole units, to the penny."""
    before, _, after = _bare(text).partition(".")
    if not before or len(after) > _PENNY:
        return None
    return int(f"{before}{after:<0{_PENNY}}")


def above_nought(text: str) -> float | None:
    """A number above nought."""
    value = number(text)
    return value if value is not None and value > 0 else None


def plain(value: float) -> str:
    """A number as it is typed: no thousands comma, no unit."""
    return f"{value:.10g}"


def date(text: str, moment: str = "") -> str | None:
    """A date as ``2031-04-28``, as it was typed; with a moment also ``2804``, the next 28 April from then on."""
    try:
        return datetime.date.fromisoformat(text).isoformat()
    except ValueError:
        return _next_day(text, datetime.date.fromisoformat(moment[:10])) if moment else None


def _next_day(text: str, today: datetime.date) -> str | None:
    """Four figures, day and month, as the next such day; a leap day may be four or eight years away."""
    if len(text) != _DAY_AND_MONTH or not text.isascii() or not text.isdecimal():
        return None
    for year in range(today.year, today.year + 9):
        try:
            found = datetime.date(year, int(text[2:]), int(text[:2]))
        except ValueError:
            continue
        if found >= today:
            return found.isoformat()
    return None


def days_after(moment: str, days: int) -> str:
    """The date so many days after a moment that begins with its date."""
    return (datetime.date.fromisoformat(moment[:10]) + datetime.timedelta(days=days)).isoformat()


def answer(line: BriefLine, text: str) -> Answer | None:
    """The answer to a line of the brief. Money is typed in whole units of money and becomes pence."""
    match line.type:
        case AnswerType.WHOLE:
            return _within(line, _whole_answer(line, text))
        case AnswerType.DECIMAL:
            return _within(line, number(text))
        case AnswerType.ONE_OF:
            return numbered(line, text)
        case AnswerType.LIST:
            parts = text.split() if len(line.values) > 9 else text.replace(" ", "")
            values = tuple(dict.fromkeys(numbered(line, part) for part in parts))
            return tuple(v for v in values if v is not None) if values and None not in values else None
        case AnswerType.AGES:
            ages = tuple(whole(part) for part in text.replace(",", " ").split())
            good = [age for age in ages if age is not None and line.least <= age <= line.most]
            return tuple(good) if good and len(good) == len(ages) else None
        case _:
            assert_never(line.type)


def numbered(line: BriefLine, text: str) -> str | None:
    """The word of a line that has this number, counted from 1."""
    place = whole(text)
    return line.values[place - 1] if place is not None and 0 < place <= len(line.values) else None


def one_digit(line: BriefLine) -> bool:
    """True when one digit is a whole answer, so that nothing need follow it."""
    match line.type:
        case AnswerType.WHOLE:
            return line.least >= 0 and line.most <= 9 and line.unit != PENCE
        case AnswerType.ONE_OF:
            return len(line.values) <= 9
        case AnswerType.DECIMAL | AnswerType.LIST | AnswerType.AGES:
            return False
        case _:
            assert_never(line.type)


def below_nought(line: BriefLine) -> bool:
    """True when the answer may lie below nought, so that a minus begins it."""
    return line.type in (AnswerType.WHOLE, AnswerType.DECIMAL) and line.least < 0


def forgets(line: BriefLine, text: str) -> bool:
    """True when what was typed makes the answer not known again: a minus with no number behind it."""
    return below_nought(line) and text.strip() == MINUS


def typed_answer(line: BriefLine, value: Answer) -> str:
    """An answer as it would be typed."""
    match value:
        case str():
            return str(line.values.index(value) + 1) if value in line.values else ""
        case tuple():
            return " ".join(typed_answer(line, v) if isinstance(v, str) else str(v) for v in value)
        case int() | float():
            return plain(value / 100 if line.unit == PENCE else value)
        case _:
            assert_never(value)


def _whole_answer(line: BriefLine, text: str) -> int | None:
    value = number(text)
    if value is None or value != int(value):
        return None
    return int(value) * 100 if line.unit == PENCE else int(value)


def _within(line: BriefLine, value: float | None) -> int | float | None:
    return value if value is not None and line.least <= value <= line.most else None


def _bare(text: str) -> str:
    """The number as a program reads it, with a decimal point and nothing else; empty when it is none."""
    found = next((match for form in _FORMS if (match := form.fullmatch(text.strip()))), None)
    if found is None:
        return ""
    before = re.sub("[., ]", "", found["whole"]) or "0"
    bare = f"{found['sign'].removeprefix('+')}{before}" + (f".{found['part']}" if found["part"] else "")
    return bare if len(bare) <= _LONGEST_NUMBER else ""
