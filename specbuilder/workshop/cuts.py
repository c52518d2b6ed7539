"""The cuts of a build: which may be made by their figures, and which not yet."""

from __future__ import annotations

from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Owner, Place
from specbuilder.model.parts import Hole

from .view import Chosen, SpecView

OTHER_BODY = "drawn for a van of another height or width: measure on the van"
_SKIN = "side skin"
"""A surface that does not say on which side it is."""


def unsettled(view: SpecView, one: Chosen, option: Option, hole: Hole) -> list[str]:
    """Why a hole is not to be cut yet; nothing when it may be."""
    spot = view.positions.of_cut(hole, one.choice, option)
    if hole.measure or not view.positions.is_drawn(option):
        why = [f"measure on the van: {hole.measure or 'its place is drawn beside other parts'}"]
    elif spot is None:
        why = [OTHER_BODY]
    else:
        why = ["x is not known before the base van is decided"] if spot.x_mm is None else []
        why += [f"NO-DRILL ZONE: {box}" for box in view.positions.boxes_hit(hole, spot)]
    why += ["its side is not decided"] if option.places and one.choice.place is None else []
    why += ["the customer's own part: measure the part"] if one.choice.owner is Owner.CUSTOMER else []
    return why + (["more than one: places of the others are measured"] if one.choice.count > 1 else [])


def surface_of(view: SpecView, one: Chosen, option: Option, hole: Hole) -> str:
    """The surface; where no y tells it, with the side: ``side skin, left``."""
    if hole.surface != _SKIN or view.positions.of_cut(hole, one.choice, option) is not None:
        return hole.surface
    drawn = view.positions.of_cut_drawn(hole, one.choice, option)
    side = one.choice.place if drawn is None else Place.LEFT if drawn.y_mm > 0 else Place.RIGHT
    return f"{hole.surface}, {side}" if side is not None else hole.surface
