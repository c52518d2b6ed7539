"""The cuts of a build: which may be made by their figures, and which not yet."""

from __future__ import annotations

import math

from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Owner, Place
from specbuilder.model.parts import Hole
from specbuilder.model.vans import NoDrillBox

from .positions import Spot
from .view import Chosen, SpecView

OTHER_BODY = "drawn for a van of another height or width: measure on the van"
_FLOOR = "floor"
"""The surface under which the no-drill boxes of a van lie."""
_SKIN = "side skin"
"""A surface that does not say on which side it is."""


def unsettled(view: SpecView, one: Chosen, option: Option, hole: Hole) -> list[str]:
    """Why a hole is not to be cut yet; nothing when it may be."""
    spot = view.positions.of_cut(hole, one.choice, option)
    if hole.measure or not view.positions.is_drawn(option):
        why = [f"measure on the van: {hole.measure or option.measure or 'its place is drawn beside other parts'}"]
    elif spot is None:
        why = [OTHER_BODY]
    else:
        why = ["x is not known before the base van is decided"] if spot.x_mm is None else []
        why += [f"NO-DRILL ZONE: {box}" for box in view.positions.boxes_hit(hole, spot)]
    why += ["its side is not decided"] if option.places and one.choice.place is None else []
    why += ["the customer's own part: measure the part"] if one.choice.owner is Owner.CUSTOMER else []
    return why + (["more than one: places of the others are measured"] if one.choice.count > 1 else [])


def nearest_box(view: SpecView, hole: Hole, spot: Spot | None) -> tuple[str, float] | None:
    """The no-drill box that is nearest to the edge of a floor hole, and how far it is; None where it is not known.

    A round hole counts as the square about it.
    """
    if hole.surface != _FLOOR:
        return None
    half_x_mm = (hole.diameter_mm or hole.width_mm or 0) / 2
    half_y_mm = (hole.diameter_mm or hole.height_mm or 0) / 2
    return nearest_to(view, spot, half_x_mm, half_y_mm)


def nearest_to(
    view: SpecView, spot: Spot | None, half_x_mm: float = 0, half_y_mm: float = 0
) -> tuple[str, float] | None:
    """The no-drill box of the van that is nearest to a place under it, and how far it is from above, rounded down."""
    van = view.van_option.van if view.van_option is not None else None
    if van is None or spot is None or spot.x_mm is None or not van.no_drill_boxes:
        return None
    x_mm, y_mm = spot.x_mm, spot.y_mm

    def apart_mm(box: NoDrillBox) -> float:
        along = max(box.from_x_mm - x_mm, x_mm - box.to_x_mm, 0) - half_x_mm
        across = max(box.from_y_mm - y_mm, y_mm - box.to_y_mm, 0) - half_y_mm
        return math.hypot(max(along, 0), max(across, 0))

    nearest = min(van.no_drill_boxes, key=apart_mm)
    return nearest.what, math.floor(apart_mm(nearest))


def surface_of(view: SpecView, one: Chosen, option: Option, hole: Hole) -> str:
    """The surface; where no y tells it, with the side: ``side skin, left``."""
    if hole.surface != _SKIN or view.positions.of_cut(hole, one.choice, option) is not None:
        return hole.surface
    drawn = view.positions.of_cut_drawn(hole, one.choice, option)
    side = one.choice.place if drawn is None else Place.LEFT if drawn.y_mm > 0 else Place.RIGHT
    return f"{hole.surface}, {side}" if side is not None else hole.surface
