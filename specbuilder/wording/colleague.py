"""Words of the page for a colleague: short, with who said it and when."""

from __future__ import annotations

import re
from datetime import date

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Level, Owner
from specbuilder.model.plain_text import one_line
from specbuilder.model.plan import PlannedStep
from specbuilder.model.record import Record
from specbuilder.model.report import Pence
from specbuilder.model.spec import Acceptance, Choice

from .customer import pounds, pounds_range
from .dates import written_day, written_day_short
from .names import option_name, place_name
from .plain import ended, raised
from .records import record_name

_HERE = ("in store", "received")
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")


def call_words(record: Record) -> str:
    """``21 April 2031, by the counter: the barrier height``."""
    by = one_line(record.by).strip()
    when = written_day(one_line(record.due))
    about = one_line(record.words).strip()
    return f"{when}{f', by {by}' if by else ''}{f': {about}' if about else ''}"


def deposit_words(received: int, asked: Pence, currency: str) -> str:
    """``deposit of £2,441 received`` or ``deposit of £2,441 not received yet``."""
    if received:
        return f"deposit of {pounds(received, currency)} received"
    return f"deposit of {pounds_range(asked, currency)} not received yet"


def promise_words(record: Record) -> str:
    """``The exhaust stays on the right. The counter, 14 April 2031.``"""
    by = raised(one_line(record.by).strip()) or "Nobody named"
    return f"{ended(one_line(record.words))} {by}, {written_day(one_line(record.at))}."


def acceptance_words(acceptance: Acceptance) -> str:
    """The words it was accepted in, by whom and when."""
    said = one_line(acceptance.words)
    for level in (Level.SIGN, Level.NOTE):
        said = said.removeprefix(f"{level.value}, broken: ").removeprefix(f"{level.value}, to be said: ")
    by = one_line(acceptance.by).strip() or "Nobody named"
    return f"{ended(said)} {raised(by)}, {written_day(one_line(acceptance.at))}."


def sides(line: str) -> str:
    """The line of sides of the workshop in small letters: ``Galley: right. Heater exhaust: right.``"""
    return " ".join(ended(raised(each)) for each in line.lower().rstrip(".").split(". "))


def chosen_words(catalogue: Catalogue, choice: Choice) -> str:
    """``Air heater, diesel, 2 kW (exhaust on the right)``; what the customer brings says so."""
    option = catalogue.options[choice.option]
    name = option_name(catalogue, choice.option, count=choice.count)
    if choice.place is not None:
        about = "exhaust " if option.exhaust_outlet is not None else ""
        name = f"{name} ({about}{place_name(choice.place)})"
    return f"{name}, theirs" if choice.owner is Owner.CUSTOMER else name


def part_name(catalogue: Catalogue, about: str) -> str:
    """The part a record of supply is about."""
    known = catalogue.options.get(OptionId(about))
    return known.name if known is not None else one_line(about)


def supply_words(record: Record) -> tuple[str, str]:
    """``("ordered", "Fri 18 Apr 2031")``."""
    return one_line(record.words), written_day_short(one_line(record.due))


def late_words(record: Record, today: date, needed: PlannedStep | None) -> str:
    """``LATE`` when its day is past; empty when it is here or still in time."""
    due = _day(record.due)
    if record.words.strip().lower() in _HERE or due is None:
        return ""
    if due < today:
        return "LATE"
    return "it sets the date" if needed is not None and needed.waits_for == record.about else ""


def decided_words(at: str, name: str) -> str:
    """``14 April 2031: chosen: Side galley, right``."""
    return f"{written_day(one_line(at))}, chosen: {name}"


def record_words(record: Record, currency: str) -> str:
    """``18 April 2031: deposit of £2,441 received``."""
    return f"{written_day(one_line(record.at))}: {record_name(record, currency)}"


def dated(text: str) -> str:
    """The text with its days as people read them."""
    return _DAY.sub(lambda found: written_day(found[0]), one_line(text))


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text[:10])
    except ValueError:
        return None
