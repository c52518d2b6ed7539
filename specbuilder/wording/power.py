"""What is told beside the ledgers of the electrics, in words: seasons, months, cold, and what cannot run together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ledger import Reading
from specbuilder.model.power import ColdCharging, Feed, InCold, PowerNotes, Together, TooMuch
from specbuilder.model.span import Span

from .ledger_detail import outside_words
from .names import lack_name, listed, option_name
from .plain import lowered
from .quantities import NO_END, quantity, span, span_tight

_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_FILLED = "with sun and driving counted in"
_MOST_SETS = 6
"""So many sets are told in words; the rest is counted."""


def power_lines(catalogue: Catalogue, notes: PowerNotes) -> tuple[str, ...]:
    """One line each; none where nothing belongs to the ledger."""
    found = [*season_lines(catalogue, notes.seasons)]
    if notes.months:
        found.append(month_line(notes.months))
    if notes.in_cold is not None:
        found.append(cold_line(catalogue, notes.in_cold))
    if notes.together is not None:
        found += together_lines(catalogue, notes.together)
    return tuple(found)


def season_lines(catalogue: Catalogue, seasons: Mapping[str, tuple[Reading, Reading]]) -> tuple[str, ...]:
    """``summer  924 Wh a day, 7.3 nights with sun and driving counted in``: one line a season, in columns."""
    wide = max((len(word) for word in seasons), default=0)
    return tuple(
        f"{word:{wide}}  {_energy(catalogue, day)}, {_nights(catalogue, nights)}"
        for word, (day, nights) in seasons.items()
    )


def _energy(catalogue: Catalogue, reading: Reading) -> str:
    if reading.value is None:
        return _cannot_tell(catalogue, reading)
    return f"{span(reading.value, catalogue.ledgers[reading.id].unit, catalogue.firm.currency)} a day"


def _nights(catalogue: Catalogue, reading: Reading) -> str:
    if not reading.applies:
        return "no battery"
    if reading.value is None:
        return _cannot_tell(catalogue, reading)
    told = span(reading.value, catalogue.ledgers[reading.id].unit, catalogue.firm.currency)
    return f"{f'nights: {NO_END}' if told == NO_END else told} {_FILLED}"


def _cannot_tell(catalogue: Catalogue, reading: Reading) -> str:
    lacks = listed((lack_name(catalogue, lack) for lack in reading.lacks), most=2)
    return f"cannot tell: needs {lacks}" if lacks else "cannot tell"


def month_line(months: tuple[Span, ...]) -> str:
    """``Sun in a day by month, Wh: Jan 74, Feb 156, ...``."""
    each = (
        f"{name} {span_tight(month, 'Wh', '').removesuffix(' Wh')}" for name, month in zip(_MONTHS, months, strict=True)
    )
    return f"Sun in a day by month, Wh: {', '.join(each)}"


def cold_line(catalogue: Catalogue, told: InCold) -> str:
    """Whether the battery may be charged at the cold of the brief."""
    cold = span(told.cold_c, "C", "") + (", assumed" if told.assumed else "")
    names = listed(lowered(option_name(catalogue, option)) for option in told.options)
    return f"Charging in the cold ({cold}): {names}: {_charging(told)}."


def _charging(told: InCold) -> str:
    least = "that of its own paper" if told.least_c is None else quantity(told.least_c, "C", "")
    where = (
        "it stands outside and gets as cold as the night"
        if told.outside
        else "inside it gets as cold as that only in a van left unheated"
    )
    match told.charging:
        case ColdCharging.MAY:
            return f"may be charged only while its cells stay above {least}; a colder night counts"
        case ColdCharging.LEAD:
            return "a lead battery may be charged in frost, slowly; it gives less until it is warm"
        case ColdCharging.WARMS_FIRST:
            return f"below {least} it takes no charge from sun, engine or plug until its own mat has warmed it; {where}"
        case ColdCharging.STOPS_ITSELF:
            return f"below {least} it takes no charge from sun, engine or plug, its own protection stops it; {where}"
        case ColdCharging.MUST_NOT:
            return (
                f"must not be charged below {least}, neither by sun nor engine nor plug, and nothing that is chosen "
                f"stops it; {where}"
            )
        case ColdCharging.UNKNOWN:
            return f"cannot tell yet; lithium must not be charged below {least}"
        case _:
            assert_never(told.charging)


def together_lines(catalogue: Catalogue, told: Together) -> Iterator[str]:
    """What is too strong alone, and what cannot run with what."""
    if told.outside is not None:
        yield outside_words(catalogue, told.outside)
    if told.limit_w is None:
        yield "What cannot run together: cannot tell yet."
        return
    limit = f"{_feed(told.feed, span(told.limit_w, 'W', ''))}{', assumed' if told.assumed else ''}"
    if not told.sets:
        yield f"Everything chosen can run at once: {limit}."
    else:
        yield f"Cannot run together ({limit}):"
        yield from (f"- {set_words(catalogue, one)}" for one in told.sets[:_MOST_SETS])
        if len(told.sets) > _MOST_SETS:
            yield f"- and {len(told.sets) - _MOST_SETS} more sets"
    if told.unsure:
        own = listed(lowered(option_name(catalogue, option)) for option in told.unsure)
        yield f"The customer's own {own}: watts as in the catalogue, to be read off the plate."


def set_words(catalogue: Catalogue, one: TooMuch) -> str:
    """``Household kettle, 2,000 W, with Laptop, 60 W: together 2,060 W, over by 60 W``."""
    names = [option_name(catalogue, option, count=many) for option, many in one.options]
    watts = f"{quantity(one.watts_w, 'W', '')}, over by {quantity(one.over_w, 'W', '')}"
    if sum(many for _, many in one.options) == 1:
        return f"{names[0]}: too strong by itself, {watts}"
    return f"{', with '.join(names)}: together {watts}"


def _feed(feed: Feed, watts: str) -> str:
    match feed:
        case Feed.INVERTER:
            return f"the inverter gives {watts}"
        case Feed.BATTERY:
            return f"the battery carries {watts}, less than the inverter gives"
        case Feed.PITCH:
            return f"the pitch gives {watts}"
        case _:
            assert_never(feed)
