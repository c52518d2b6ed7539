"""Readings without a value: where nothing can be said, and where there is nothing to measure."""

from __future__ import annotations

from collections.abc import Iterable

from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Sense, Verdict
from specbuilder.model.ledger import Lack, Outside, Reading
from specbuilder.model.span import Span


def outside_of(fault: OutsideValidity) -> Outside:
    """The number for which an equation says nothing."""
    return Outside(fault.quantity, fault.value, fault.needs)


def unsaid(
    ledger: LedgerId, sense: Sense, fault: OutsideValidity, lacks: Iterable[Lack] = (), bound: Span | None = None
) -> Reading:
    """Nothing can be said while this number is absurd or missing; ``lacks`` may still bring another."""
    return Reading(
        id=ledger,
        value=None,
        bound=bound,
        verdict=Verdict.CANNOT_TELL,
        lacks=tuple(lacks),
        sense=sense,
        outside=outside_of(fault),
    )


def nothing_here(ledger: LedgerId, sense: Sense, bound: Span | None = None) -> Reading:
    """There is nothing to measure, so nothing is broken."""
    return Reading(id=ledger, value=None, bound=bound, verdict=Verdict.HOLDS, applies=False, sense=sense)
