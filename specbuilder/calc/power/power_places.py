"""Whether the battery fits where it is to stand."""

from __future__ import annotations

from math import inf

from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, lacking, largest, smallest
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId

from .power_parts import is_battery


def _without_size(option: Option) -> bool:
    return is_battery(option) and option.power.battery_ah is None


def _battery(joint: Joint, _frame: Frame) -> float | None:
    capacity_ah, lacks = joint
    if lacks:
        missing("amp-hours of the battery Ah")
    return None if capacity_ah == -inf else capacity_ah


def _place(joint: Joint, _frame: Frame) -> float | None:
    return None if joint[0] == inf else joint[0]


BATTERY_BOX = Tally(
    id=LedgerId("battery-box"),
    value=Measure(
        parts=(largest(lambda option, _van: option.power.battery_ah), lacking(_without_size)),
        rest=_battery,
        signs=lambda _joint, _frame: (1, 0),
    ),
    bound=Measure(parts=(smallest(lambda option, _van: option.space.max_ah),), rest=_place),
)
"""Size of the battery against the largest its place takes; a place without a size takes any."""
