"""Whether the battery fits where it is to stand."""

from __future__ import annotations

from math import inf

from specbuilder.model.ids import LedgerId

from .frame import Frame
from .measure import Measure, largest, smallest
from .states import Joint
from .tally import Tally


def _battery(joint: Joint, _frame: Frame) -> float | None:
    return None if joint[0] == -inf else joint[0]


def _place(joint: Joint, _frame: Frame) -> float | None:
    return None if joint[0] == inf else joint[0]


BATTERY_BOX = Tally(
    id=LedgerId("battery-box"),
    value=Measure(
        parts=(largest(lambda option, _van: option.power.battery_ah),), rest=_battery, signs=lambda _joint, _frame: (1,)
    ),
    bound=Measure(parts=(smallest(lambda option, _van: option.space.max_ah),), rest=_place),
)
"""Size of the battery against the largest its place takes; a place without a size takes any."""
