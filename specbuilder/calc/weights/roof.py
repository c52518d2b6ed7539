"""What the roof carries: while driving, while it lifts, and who sleeps up there."""

from __future__ import annotations

from math import inf

from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest, smallest, summed
from specbuilder.calc.measuring.states import Joint, Slot
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, Tag
from specbuilder.model.kinds import RoofPart
from specbuilder.model.ledger import Entry, Lack
from specbuilder.model.vans import Van

LIFTS = Tag("elevating-roof")
"""Given by a roof that lifts: what stands on top rides on it."""
_UPSTAIRS_KG = BriefKey("sleepers_upstairs_kg")


def on_roof_kg(option: Option) -> float:
    """What it puts on the roof while driving, kg."""
    return option.space.roof_mass_kg if option.space.roof_part is not None else 0


def _moving_kg(option: Option) -> float:
    return option.space.roof_mass_kg if option.space.roof_part is RoofPart.MOVING else 0


def _top_kg(option: Option, _van: Van | None) -> float | None:
    return option.space.roof_mass_kg if option.space.roof_part is RoofPart.TOP else None


def _lifts(option: Option, _van: Van | None) -> float | None:
    return 1 if LIFTS in option.gives else None


def _van_lifts(frame: Frame) -> tuple[Slot, ...]:
    """A van whose own roof lifts."""
    lifts = LIFTS in frame.van.gives
    return (Slot(LIFTS, {(1, 0): (0, 0)}, Lack()),) if lifts else ()


def _raised(joint: Joint, _frame: Frame) -> float | None:
    lifts, top_kg = joint
    return top_kg if lifts else None


def _allowed_closed(joint: Joint, frame: Frame) -> float:
    kit_kg = joint[0]
    return frame.van.roof_load_kg if kit_kg == inf else kit_kg


def _bed(joint: Joint, _frame: Frame) -> float | None:
    return None if joint[0] == inf else 0


def _rating(joint: Joint, _frame: Frame) -> float | None:
    return None if joint[0] == inf else joint[0]


def _upstairs(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("people upstairs", frame.asked.number(_UPSTAIRS_KG), _UPSTAIRS_KG),)


_BED_RATING = smallest(lambda option, _van: option.space.roof_bed_rating_kg)

ROOF_LOAD_CLOSED = Tally(
    id=LedgerId("roof-load-closed"),
    value=Measure(amount=on_roof_kg),
    bound=Measure(
        parts=(smallest(lambda option, _van: option.space.roof_allow_closed_kg),),
        rest=_allowed_closed,
        needs_van=True,
    ),
)
"""Everything on the roof against what the kit, or else the van's own roof, carries on the road."""

ROOF_LOAD_RAISED = Tally(
    id=LedgerId("roof-load-raised"),
    value=Measure(
        amount=_moving_kg,
        parts=(largest(_lifts, none=0), summed(_top_kg)),
        rest=_raised,
        signs=lambda joint, _frame: (0, 1 if joint[0] else 0),
        slots=_van_lifts,
        needs_van=True,
        by_van=True,
    ),
    bound=Measure(amount=lambda option: option.space.roof_allow_raised_kg),
)
"""What rides on the lifting part against what its struts lift; nothing to measure while no roof lifts."""

ROOF_BED_LOAD = Tally(
    id=LedgerId("roof-bed-load"),
    value=Measure(base=_upstairs, parts=(_BED_RATING,), rest=_bed),
    bound=Measure(parts=(_BED_RATING,), rest=_rating),
)
"""Sleepers upstairs against the rating of their bed."""
