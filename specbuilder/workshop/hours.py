"""Hours of the work, step by step."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from specbuilder.model.catalogue import WorkStep
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Entry, Reading
from specbuilder.model.span import ZERO, Span

from .view import SpecView

_HOURS = LedgerId("workshop-hours")
_DECIMALS = 6
"""Of a number that is worked back out of a sum: what comes behind them is noise."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepHours:
    """Hours of a build; its steps and what is open add up to the whole."""

    whole: Span
    steps: Mapping[str, Span]
    open: tuple[Entry, ...]
    """What no step can be named for: groups that are not chosen yet, parts without a step."""
    undone_h: float = 0
    """Undoing what a signed change made useless; of no step either."""


def step_hours(view: SpecView) -> StepHours | None:
    """None when the hours are not summed, or not by line."""
    reading = view.report.readings.get(_HOURS)
    if reading is None or reading.value is None or not reading.entries:
        return None
    steps = view.catalogue.work
    hours = {step.id: Span(step.hours_fixed, step.hours_fixed) for step in steps.values()}
    undone_h = sum(work.hours for work in view.spec.undone)
    cables = _cables(reading, steps, undone_h)
    for step in steps.values():
        hours[step.id] += cables * step.hours_per_circuit
    left: list[Entry] = []
    for entry in reading.entries:
        option = view.catalogue.options.get(entry.option) if entry.option else None
        at = view.build_step(option) if option else ""
        if at in hours:
            hours[at] += entry.amount
        elif entry.option or entry.group:
            left.append(entry)
    return StepHours(whole=reading.value, steps=hours, open=tuple(left), undone_h=undone_h)


def _cables(reading: Reading, steps: Mapping[str, WorkStep], undone_h: float) -> Span:
    """How many cable runs the hours count: what is left of the lines of no part once the steps have theirs."""
    of_no_part = ZERO
    for entry in reading.entries:
        if entry.option is None and entry.group is None:
            of_no_part += entry.amount
    each_h = sum(step.hours_per_circuit for step in steps.values())
    fixed_h = sum(step.hours_fixed for step in steps.values())
    runs = (of_no_part - fixed_h - undone_h) * (1 / each_h) if each_h else ZERO
    return Span(round(runs.least, _DECIMALS), round(runs.most, _DECIMALS))
