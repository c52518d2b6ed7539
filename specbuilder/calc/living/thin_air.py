"""Told beside the nights of heating: how thin the air is up there, and how much too rich a burner runs in it."""

from __future__ import annotations

from math import inf

from specbuilder.calc.formulas.fuel import air_density_share, over_rich_share
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, smallest, summed
from specbuilder.calc.measuring.states import Joint, Slot
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, Tag
from specbuilder.model.ledger import Lack
from specbuilder.model.vans import Van

BURNS = Tag("burns-diesel"), Tag("burns-petrol")
"""Given by burners that are fed a fixed amount of fuel."""
ALTITUDE_KIT = Tag("altitude-kit")
"""Given by what makes one burner take less fuel in thin air."""
_ALTITUDE = BriefKey("altitude_m")


def _burner(option: Option, _van: Van | None) -> float | None:
    return 1 if any(tag in option.gives for tag in BURNS) else None


def _kit(option: Option, _van: Van | None) -> float | None:
    return 1 if ALTITUDE_KIT in option.gives else None


def _heights(frame: Frame) -> tuple[Slot, ...]:
    height = frame.asked.number(_ALTITUDE)
    if frame.asked.facts.known(_ALTITUDE):
        return ()
    return (Slot(_ALTITUDE, {(0, 0, end): (0, 0) for end in (height.least, height.most)}, Lack(key=_ALTITUDE)),)


def _altitude_m(joint: Joint, frame: Frame) -> float:
    height = joint[2]
    return frame.asked.facts.number(_ALTITUDE).least if height == inf else height


def _density_pct(joint: Joint, frame: Frame) -> float | None:
    return 100 * air_density_share(_altitude_m(joint, frame)) if joint[0] else None


def _over_rich_pct(joint: Joint, frame: Frame) -> float | None:
    burners, kits, _ = joint
    return 100 * over_rich_share(_altitude_m(joint, frame)) if burners > kits else None


_PARTS = summed(_burner), summed(_kit), smallest(lambda _option, _van: None)

AIR_DENSITY = Tally(id=LedgerId("air-density"), value=Measure(parts=_PARTS, rest=_density_pct, slots=_heights))
"""At the height the customer sleeps at, for whoever burns something."""

OVER_RICH = Tally(id=LedgerId("over-rich"), value=Measure(parts=_PARTS, rest=_over_rich_pct, slots=_heights))
"""Of a burner without altitude setting; nothing to measure where each has one."""
