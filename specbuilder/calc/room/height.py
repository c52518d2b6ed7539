"""Height of the closed van."""

from __future__ import annotations

from specbuilder.calc.formulas.gaps import above_steel_mm
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.kinds import RoofPart
from specbuilder.model.ledger import Entry
from specbuilder.model.vans import Van

_LIMIT = BriefKey("parking_limit_mm")


def _kit_mm(option: Option, _van: Van | None) -> float | None:
    return option.space.height_above_roof_mm if option.space.roof_part is None else None


def _on_kit_mm(option: Option, _van: Van | None) -> float | None:
    rides = option.space.roof_part in (RoofPart.TOP, RoofPart.MOVING)
    return option.space.height_above_roof_mm if rides else None


def _fixed_mm(option: Option, _van: Van | None) -> float | None:
    return option.space.height_above_roof_mm if option.space.roof_part is RoofPart.FIXED else None


def _steel(frame: Frame) -> tuple[Entry, ...]:
    return (
        frame.van_entry("van", frame.van.height_mm),
        frame.entry("spare", frame.settings["spare_mm"]),
    )


def _above(joint: Joint, _frame: Frame) -> float:
    return above_steel_mm(*joint)


def _signs(joint: Joint, _frame: Frame) -> tuple[int, ...]:
    kit_mm, on_kit_mm, fixed_mm = joint
    return (1, 1, 0) if kit_mm + on_kit_mm >= fixed_mm else (0, 0, 1)


def _limit(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("limit", frame.asked.number(_LIMIT), _LIMIT),)


CLOSED_HEIGHT = Tally(
    id=LedgerId("closed-height"),
    value=Measure(
        base=_steel,
        amount=lambda option: option.space.body_lift_mm,
        parts=(largest(_kit_mm, none=0), largest(_on_kit_mm, none=0), largest(_fixed_mm, none=0)),
        rest=_above,
        signs=_signs,
        needs_van=True,
    ),
    bound=Measure(base=_limit),
    named_by=_LIMIT,
    settings=("spare_mm",),
)
"""Height of the closed van and some room to spare against the barrier or garage."""
