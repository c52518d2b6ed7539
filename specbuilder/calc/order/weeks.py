"""Weeks until the slowest part is here."""

from __future__ import annotations

from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest
from specbuilder.calc.measuring.prepared import prepared
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.kinds import Truth
from specbuilder.model.ledger import Entry
from specbuilder.model.span import Span

from .supply import SUPPLIED, own_van, supplied

_WANTED = BriefKey("weeks_wanted")


def _slowest(joint: Joint, frame: Frame) -> float:
    weeks, supplied = joint
    return max(weeks, frame.van.lead_weeks) if supplied else weeks


def _signs(joint: Joint, frame: Frame) -> tuple[int, ...]:
    weeks, supplied = joint
    return (0 if supplied and frame.van.lead_weeks > weeks else 1, 0)


def _van_line(amount: Span, frame: Frame) -> Entry | None:
    sets_it = supplied(prepared(frame.situation)) is Truth.YES and amount.most == frame.van.lead_weeks
    return frame.van_entry("van", frame.van.lead_weeks) if sets_it else None


def _wanted(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("wanted", frame.asked.number(_WANTED), _WANTED),)


LEAD_WEEKS = Tally(
    id=LedgerId("lead-weeks"),
    value=Measure(
        parts=(largest(lambda option, _van: option.lead_weeks or None, none=0), SUPPLIED),
        rest=_slowest,
        rest_entry=_van_line,
        signs=_signs,
        needs_van=True,
        van_unseen=own_van,
    ),
    bound=Measure(base=_wanted),
    named_by=_WANTED,
)
"""The slowest part, or the van the house supplies, against the weeks wanted."""
