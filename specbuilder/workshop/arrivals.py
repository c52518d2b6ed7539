"""When the parts of a build are here: as recorded, as the customer says, or after the house's usual wait."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date, timedelta

from specbuilder.model.catalogue import Option
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Truth
from specbuilder.model.own_parts import is_theirs
from specbuilder.model.plan import Arrival
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Choice

from .templates import needed_before
from .view import SpecView

_HERE = frozenset({"in store", "received"})
_ORDERED = "ordered"


def arrivals_of(
    view: SpecView, start: date, passed: Mapping[str, date], ordered: Mapping[OptionId, date]
) -> tuple[Arrival, ...]:
    """One for every part that a step waits for, in build order.

    Args:
        view: the build.
        start: the day it begins; parts that nobody has ordered yet are ordered on it.
        ordered: parts that are ordered on another day.
        passed: steps that are done, with their day. What they needed was there.
    """
    found: dict[OptionId, Arrival] = {}
    if not view.catalogue.work:
        return ()  # no step waits for anything
    for one in view.in_build_order():
        if one.option is None or not _is_waited_for(view, one.choice, one.option):
            continue
        arrival = _arrival(view, one.choice, one.option, ordered.get(one.option.id, start), passed)
        arrival = replace(arrival, also_at=needed_before(view, one))
        other = found.get(arrival.option)
        found[arrival.option] = arrival if other is None else _later(other, arrival)
    return tuple(found.values())


def day_of(text: str) -> date | None:
    """A day as it stands in a file; None when there is none."""
    try:
        return date.fromisoformat(text[:10])
    except ValueError:
        return None


def _is_waited_for(view: SpecView, choice: Choice, option: Option) -> bool:
    """True for what somebody has to bring: it weighs something, takes weeks, is the customer's, or was recorded.

    No step waits for what is only carried along.
    """
    if is_theirs(option, choice) or _supply(view, option.id) is not None:
        return True
    if option.carried:
        return False
    return option.mass_kg > 0 or _weeks(view, option) > 0


def _weeks(view: SpecView, option: Option) -> float:
    """Weeks until it is here; those of a van count while the house supplies it, or may."""
    if option.van is None:
        return option.lead_weeks
    return 0 if view.report.price.van_included is Truth.NO else max(option.lead_weeks, option.van.lead_weeks)


def _arrival(view: SpecView, choice: Choice, option: Option, start: date, passed: Mapping[str, date]) -> Arrival:
    step = view.build_step(option)
    if step not in view.catalogue.work:
        step = next(reversed(tuple(view.catalogue.work)), "")
    record = _supply(view, option.id)
    if record is not None and record.words.strip().lower() in _HERE:
        return Arrival(option=option.id, step=step, on=day_of(record.day), recorded=True, here=True)
    if step in passed:
        return Arrival(option=option.id, step=step, on=passed[step], here=True)
    due = day_of(record.due) if record is not None else None
    if due is not None:
        return Arrival(option=option.id, step=step, on=due, recorded=True)
    if is_theirs(option, choice):
        return Arrival(option=option.id, step=step, on=day_of(choice.own_part.arrives) if choice.own_part else None)
    return Arrival(option=option.id, step=step, on=_after(_ordered_on(record) or start, _weeks(view, option)))


def _ordered_on(record: Record | None) -> date | None:
    return day_of(record.day) if record is not None and record.words.strip().lower() == _ORDERED else None


def _after(day: date, weeks: float) -> date:
    """So many weeks later; the end of all calendars for a wait beyond it."""
    try:
        return day + timedelta(days=-(-weeks * 7 // 1))
    except OverflowError:
        return date.max


def _later(one: Arrival, other: Arrival) -> Arrival:
    """Of two of the same part the one that is worse: no date, else the later one."""
    for arrival in (one, other):
        if arrival.on is None and not arrival.here:
            return arrival
    return max(one, other, key=lambda arrival: arrival.on or date.min)


def _supply(view: SpecView, option: OptionId) -> Record | None:
    """What was last recorded of a part."""
    return next(_supplies_of(view, option), None)


def _supplies_of(view: SpecView, option: OptionId) -> Iterator[Record]:
    records = view.spec.recorded(RecordKind.SUPPLY)
    return (record for record in reversed(records) if record.about == option)
