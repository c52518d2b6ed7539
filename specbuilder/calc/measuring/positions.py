"""Where masses act along the van, seen from the front axle."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.kinds import Anchor
from specbuilder.model.parts import Position
from specbuilder.model.vans import Van


def behind_front_axle_mm(van: Van, x_mm: float, anchor: Anchor = Anchor.DATUM) -> float:
    """Distance of a place behind the front axle, mm; negative ahead of it."""
    match anchor:
        case Anchor.DATUM:
            return van.datum_from_front_axle_mm + x_mm
        case Anchor.REAR:
            return van.datum_from_front_axle_mm + van.rear_sill_x_mm + x_mm
        case Anchor.AXLE_REAR:
            return van.wheelbase_mm + x_mm
        case _:
            assert_never(anchor)


def position_behind_front_axle_mm(van: Van, position: Position | None) -> float:
    """The same for a part; one without a place of its own acts at the middle of the wheelbase."""
    if position is None:
        return van.wheelbase_mm / 2
    return behind_front_axle_mm(van, position.x_mm, position.anchor)
