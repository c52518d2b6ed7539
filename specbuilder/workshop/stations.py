"""Where on a walk round the van a part is shown, and in which order one comes past it."""

from __future__ import annotations

from enum import IntEnum

from specbuilder.model.catalogue import Option
from specbuilder.model.vans import Van

from .positions import Spot
from .view import Chosen, SpecView

_SKIN = "side skin"
"""Surface of a cut that shows on the outside of a wall."""
_OVERHEAD_SHARE = 0.85
"""Of the height inside: what hangs higher is looked up to."""
_LINING_MM = 40
"""What sits closer to the wall than its lining is thick sits on the outside."""


class Station(IntEnum):
    """The stops of the walk, in walking order: once round the outside against the clock, then in, up and under."""

    LEFT = 1
    REAR = 2
    RIGHT = 3
    FRONT = 4
    CAB = 5
    INSIDE = 6
    OVERHEAD = 7
    UNDERNEATH = 8
    TABLE = 9
    """What has no place in the van: papers and promises."""


def station_of(view: SpecView, one: Chosen) -> Station:
    """Where it is shown."""
    option = one.option
    spot = spot_of(view, one)
    if option is None or option.van is not None or spot is None:
        return Station.TABLE
    return _by_place(option, spot, view.van_option.van if view.van_option else None)


def spot_of(view: SpecView, one: Chosen) -> Spot | None:
    """The cut that shows outside, else where the part itself sits."""
    option = one.option
    if option is None:
        return None
    cuts = [
        view.positions.of_cut_drawn(hole, one.choice, option) for hole in one.holes if hole.surface.startswith(_SKIN)
    ]
    found = next((cut for cut in cuts if cut is not None), None)
    if found is not None:
        return found
    return view.positions.of_choice(one.choice, option) or _as_drawn(option)


def walking_order(view: SpecView, one: Chosen) -> tuple[int, float, int]:
    """Sorts parts as one comes past them: to the rear along the left, forward along the right, else front to rear."""
    spot, station = spot_of(view, one), station_of(view, one)
    if spot is None:
        return station, 0, one.taken
    x_mm = spot.x_mm if spot.x_mm is not None else 0
    along = {Station.REAR: -spot.y_mm, Station.RIGHT: -x_mm}.get(station, x_mm)
    return station, along, one.taken


def _as_drawn(option: Option) -> Spot | None:
    """Its place in the catalogue, near enough for a walk where the exact one is measured on the van."""
    position = option.position
    return None if position is None else Spot(x_mm=position.x_mm, y_mm=position.y_mm, z_mm=position.z_mm)


def _by_place(option: Option, spot: Spot, van: Van | None) -> Station:
    if option.space.berths_up or option.space.roof_mass_kg > option.mass_kg / 2:
        return Station.OVERHEAD
    if van is None or spot.x_mm is None:
        return Station.UNDERNEATH if spot.z_mm < 0 else Station.INSIDE
    cut_outside = any(hole.surface.startswith(_SKIN) for hole in option.holes)
    if (cut_outside and spot.y_mm) or abs(spot.y_mm) > van.inside_width_mm / 2 - _LINING_MM:
        return Station.LEFT if spot.y_mm > 0 else Station.RIGHT
    if spot.x_mm > van.rear_sill_x_mm:
        return Station.REAR
    if spot.x_mm < -van.datum_from_front_axle_mm:
        return Station.FRONT
    if spot.z_mm < 0:
        return Station.UNDERNEATH
    if spot.x_mm < 0:
        return Station.CAB
    return Station.OVERHEAD if spot.z_mm > _OVERHEAD_SHARE * van.inside_height_mm else Station.INSIDE
