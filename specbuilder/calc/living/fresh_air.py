"""Openings that never shut, high up and low down."""

from __future__ import annotations

from collections.abc import Callable

from specbuilder.calc.formulas.fresh_air import needed_mm2
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId, Tag
from specbuilder.model.vans import Van

ONLY_ROOF_UP = Tag("vents-only-roof-up")
"""Given by openings that shut when the roof goes down."""
OPEN_FLAME = Tag("open-flame")
"""Given by what burns the air of the room and leaves its fumes there."""


def high_area_mm2(option: Option) -> float:
    """Free area high up that is there with the roof down as well, mm2: slots in the cloth of a lifting roof are not."""
    return 0 if ONLY_ROOF_UP in option.gives else option.heat.vent_high_mm2


def _flame(option: Option, _van: Van | None) -> float | None:
    return 1 if OPEN_FLAME in option.gives else None


def _needed(for_flame_mm2: Callable[[Van], float], for_sealed_mm2: Callable[[Van], float]) -> Measure:
    """The van's own figure, by whether anything burns openly."""

    def rest(joint: Joint, frame: Frame) -> float:
        van = frame.van
        flame = bool(joint[0]) or OPEN_FLAME in van.gives
        return needed_mm2(for_flame_mm2(van), for_sealed_mm2(van), flame)

    return Measure(parts=(largest(_flame, none=0),), rest=rest, needs_van=True)


HIGH_VENTS = Tally(
    id=LedgerId("high-vents"),
    value=Measure(amount=high_area_mm2),
    bound=_needed(lambda van: van.vent_high_flame_mm2, lambda van: van.vent_high_sealed_mm2),
)
"""Free area high up, with the roof down, against what the van needs."""

LOW_VENTS = Tally(
    id=LedgerId("low-vents"),
    value=Measure(amount=lambda option: option.heat.vent_low_mm2),
    bound=_needed(lambda van: van.vent_low_flame_mm2, lambda van: van.vent_low_sealed_mm2),
)
"""Free area low down against what the van needs."""
