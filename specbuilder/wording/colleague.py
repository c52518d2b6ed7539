"""Words of the page for a colleague: short, with who said it and when."""

from __future__ import annotations

import re
from datetime import date

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Level, Owner
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import Record
from specbuilder.model.report import Pence
from specbuilder.model.spec import Acceptance, Choice

from .customer import asked, pounds, pounds_range
from .dates import written_day, written_day_short
from .names import option_name, place_name
from .plain import ended, raised
from .records import record_name

LATE = "LATE"
_HERE = ("in store", "received")
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")


def call_words(record: Record) -> str:
    """``21 April 2031, by the counter: the barrier height``."""
    by = one_line(record.by).strip()
    when = written_day(one_line(record.due))
    about = one_line(record.words).strip()
    return f"{when}{f', by {by}' if by else ''}{f': {about}' if about else ''}"


def deposit_words(received: int, due: Pence, currency: str) -> str:
    """``deposit of £2,441 received`` or ``deposit of £2,441 not received yet``."""
    if received:
        return f"deposit of {pounds(received, currency)} received"
    return f"deposit of {pounds_range(due, currency)} not received yet"


def promise_words(record: Record) -> str:
    """``The exhaust stays on the right. The counter, 14 April 2031.``"""
    by = raised(one_line(record.by).strip()) or "Nobody named"
    return f"{ended(one_line(record.words))} {by}, {written_day(one_line(record.at))}."


def acceptance_words(acceptance: Acceptance) -> str:
    """``Accepted in writing: They will ring the insurer. M. Hale, 18 April 2031.``"""
    said = one_line(acceptance.words)
    for level in (Level.SIGN, Level.NOTE):
        said = said.removeprefix(f"{level.value}, broken: ").removeprefix(f"{level.value}, to be said: ")
    by = one_line(acceptance.by).strip() or "Nobody named"
    return f"Accepted in writing: {ended(said)} {raised(by)}, {written_day(one_line(acceptance.at))}."


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


def part_words(catalogue: Catalogue, about: str, record: Record) -> str:
    """``Larchlid tilting roof, short (expected Wed 28 May 2031)``."""
    known = catalogue.options.get(OptionId(about))
    name = known.name if known is not None else one_line(about)
    due = written_day_short(one_line(record.due))
    return f"{name} (expected {due})" if due else name


def supply_words(record: Record) -> str:
    """``Ordered``, ``In store``."""
    return raised(one_line(record.words).strip()) or "Not told"


def is_here(record: Record) -> bool:
    """True when nobody waits for it any more."""
    return record.words.strip().lower() in _HERE


def is_late(record: Record, today: date) -> bool:
    """True when its day is past and it is not here."""
    due = _day(record.due)
    return due is not None and due < today and not is_here(record)


def open_words(text: str, who: str) -> str:
    """``Is the barrier really 2.10 m? Customer, 28 April 2031.``"""
    question = asked(one_line(text))
    return f"{question if question.endswith('?') else ended(question)} {ended(raised(dated(who)))}"


def decided_words(at: str, name: str) -> str:
    """``17 April 2031: Side galley, right``."""
    return f"{written_day(one_line(at))}: {name}"


def record_words(catalogue: Catalogue, record: Record) -> str:
    """``18 April 2031: deposit of £2,441 received``."""
    return f"{written_day(one_line(record.at))}: {record_name(catalogue, record)}"


def dated(text: str) -> str:
    """The text with its days as people read them."""
    return _DAY.sub(lambda found: written_day(found[0]), one_line(text))


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text[:10])
    except ValueError:
        return None
