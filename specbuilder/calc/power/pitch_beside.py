"""Told beside the campsite plug: what is left on a weak, a usual and a strong pitch with everything on."""

from __future__ import annotations

from specbuilder.calc.formulas.hookup import site_w
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, lacking, largest
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Entry

from .hook_up import MAINS_V, has_plug, lacks_plug_watts, together_w, turn_w

_SITE_A = "site_a"


def _pitch(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("pitch", site_w(frame.settings[_SITE_A], frame.settings[MAINS_V])),)


def _rest(joint: Joint, _frame: Frame) -> float | None:
    plug, watts, lacks = joint
    if not plug:
        return None
    return missing("watts on the plug W") if lacks else -watts


def _left_on(name: str) -> Tally:
    return Tally(
        id=LedgerId(name),
        value=Measure(
            base=_pitch,
            amount=lambda option: -together_w(option),
            parts=(largest(has_plug, none=0), largest(turn_w, none=0), lacking(lacks_plug_watts)),
            rest=_rest,
            signs=lambda _joint, _frame: (0, -1, 0),
        ),
        settings=(MAINS_V, _SITE_A),
    )


LEFT_ON_WEAK_PITCH = _left_on("left-on-weak-pitch")
"""Watts left on a pitch of 6 A; below nought its breaker goes."""
LEFT_ON_USUAL_PITCH = _left_on("left-on-usual-pitch")
"""The same on one of 10 A."""
LEFT_ON_STRONG_PITCH = _left_on("left-on-strong-pitch")
"""The same on one of 16 A."""
