"""The cuts of a build: which may be made by their figures, and which not yet."""

from __future__ import annotations

from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Owner
from specbuilder.model.parts import Hole

from .view import Chosen, SpecView


def unsettled(view: SpecView, one: Chosen, option: Option, hole: Hole) -> list[str]:
    """Why a hole is not to be cut yet; nothing when it may be."""
    spot = view.positions.of_cut(hole, one.choice, option)
    if spot is None:
        why = [f"measure on the van: {hole.measure or 'its place is drawn beside other parts'}"]
    else:
        why = ["x is not known before the base van is decided"] if spot.x_mm is None else []
        why += [f"NO-DRILL ZONE: {box}" for box in view.positions.boxes_hit(hole, spot)]
    why += ["its side is not decided"] if option.places and one.choice.place is None else []
    why += ["the customer's own part: measure the part"] if one.choice.owner is Owner.CUSTOMER else []
    return why + (["more than one: places of the others are measured"] if one.choice.count > 1 else [])
