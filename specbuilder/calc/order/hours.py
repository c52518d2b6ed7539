"""How long the workshop is busy with it."""

from __future__ import annotations

from specbuilder.calc.formulas.work import circuit_hours_h
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Entry
from specbuilder.model.span import Span
from specbuilder.model.vans import Van


def _circuits(option: Option, _van: Van | None) -> float | None:
    return len(option.circuits) or None


def _fixed(frame: Frame) -> tuple[Entry, ...]:
    steps = frame.situation.catalogue.work.values()
    undone = (frame.entry(work.words, work.hours) for work in frame.asked.facts.undone)
    return (frame.entry("work on every van", sum(step.hours_fixed for step in steps)), *undone)


def _cables(joint: Joint, frame: Frame) -> float:
    steps = frame.situation.catalogue.work.values()
    return circuit_hours_h(joint[0], sum(step.hours_per_circuit for step in steps))


def _cables_entry(amount: Span, frame: Frame) -> Entry:
    return frame.entry("cable runs", amount)


WORKSHOP_HOURS = Tally(
    id=LedgerId("workshop-hours"),
    value=Measure(
        base=_fixed,
        amount=lambda option: option.labour_h,
        parts=(summed(_circuits),),
        rest=_cables,
        rest_entry=_cables_entry,
    ),
)
"""Hours of the choices, of the steps every build has, and of every cable run."""
