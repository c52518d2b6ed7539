"""Room inside: side by side, out of the door, and between what moves and the bench."""

from __future__ import annotations

from math import inf

from specbuilder.calc.formulas.gaps import gap_to_bench_mm, x_from_datum_mm
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, lacking, largest, smallest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Anchor
from specbuilder.model.ledger import Entry
from specbuilder.model.own_parts import FRONT_DOOR
from specbuilder.model.vans import Van


def centre_x_mm(option: Option, van: Van | None) -> float | None:
    """Distance of its centre behind the datum, mm; behind its own anchor without a van; None where it has no place."""
    if option.position is None:
        return None
    x_mm = option.position.x_mm
    match option.position.anchor:
        case Anchor.DATUM:
            return x_mm
        case Anchor.REAR:
            return x_from_datum_mm(x_mm, van.rear_sill_x_mm) if van else x_mm
        case Anchor.AXLE_REAR:
            return x_from_datum_mm(x_mm, van.wheelbase_mm - van.datum_from_front_axle_mm) if van else x_mm


def _door_edge_x_mm(option: Option, van: Van | None) -> float | None:
    if FRONT_DOOR not in option.gives or option.space.length_mm is None:
        return None
    centre = centre_x_mm(option, van)
    return None if centre is None else centre + option.space.length_mm / 2


def lacks_door(option: Option) -> bool:
    """A fridge with a door to the front, of which nobody knows how long it is."""
    return FRONT_DOOR in option.gives and option.position is not None and option.space.length_mm is None


def _gap(joint: Joint, _frame: Frame) -> float | None:
    front_mm, shift_mm, reach_mm = joint
    return None if front_mm == inf or reach_mm == -inf else gap_to_bench_mm(front_mm, shift_mm, reach_mm)


def _door_gap(joint: Joint, frame: Frame) -> float | None:
    front_mm, shift_mm, reach_mm, lacks = joint
    if lacks and front_mm != inf:
        missing("length of the fridge's door mm")
    return _gap((front_mm, shift_mm, reach_mm), frame)


def _least_mm(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("least", frame.settings["least_mm"]),)


def _inside_width(frame: Frame) -> tuple[Entry, ...]:
    return (frame.van_entry("inside width", frame.van.inside_width_mm),)


def _door_width(frame: Frame) -> tuple[Entry, ...]:
    return (frame.van_entry("sliding door", frame.van.sliding_door_width_mm),)


_FRONT = smallest(lambda option, _van: option.space.front_x_mm)
_SHIFT = summed(lambda option, _van: option.space.bench_shift_mm or None)
_SIGNS = (1, 1, -1)

CROSS_WIDTH = Tally(
    id=LedgerId("cross-width"),
    value=Measure(amount=lambda option: option.space.cross_width_mm),
    bound=Measure(base=_inside_width, needs_van=True),
)
"""Seats and kitchen side by side against the width inside."""

WAY_OUT = Tally(
    id=LedgerId("way-out"),
    value=Measure(base=_door_width, amount=lambda option: -option.space.way_out_take_mm, needs_van=True),
    bound=Measure(base=_least_mm),
    settings=("least_mm",),
)
"""What is left of the sliding door's width."""

SWIVEL_GAP = Tally(
    id=LedgerId("swivel-gap"),
    value=Measure(
        parts=(_FRONT, _SHIFT, largest(lambda option, _van: option.space.swivel_sweep_x_mm)),
        rest=_gap,
        signs=lambda _joint, _frame: _SIGNS,
    ),
    bound=Measure(base=_least_mm),
    settings=("least_mm",),
)
"""Gap between a turning seat and the bench; nothing to measure without either."""

FRIDGE_DOOR_GAP = Tally(
    id=LedgerId("fridge-door-gap"),
    value=Measure(
        parts=(_FRONT, _SHIFT, largest(_door_edge_x_mm), lacking(lacks_door)),
        rest=_door_gap,
        signs=lambda _joint, _frame: (*_SIGNS, 0),
        needs_van=True,
        by_van=True,
    ),
    bound=Measure(base=_least_mm),
    settings=("least_mm",),
)
"""Gap between the open fridge door and the bench; nothing to measure without either."""
