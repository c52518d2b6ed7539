"""What hangs under the floor where seat bolts come through: somebody must settle which goes first."""

from __future__ import annotations

from specbuilder.wording.names import option_name
from specbuilder.workshop.view import Chosen

from .material import Material


def bolts_above(material: Material, step: str) -> list[str]:
    """A sentence for each pair that overlaps seen from above, at the step that fits what hangs below."""
    view = material.view
    seats = [one for one, option in material.known if option.space.belts]
    below = [one for one in material.parts_of(step) if _hangs_below(material, one)]
    return [
        f"{option_name(view.catalogue, under.choice.option)} hangs under the bolts of "
        f"{option_name(view.catalogue, seat.choice.option)}: the foreman settles before {step} begins which "
        "goes first, so that every nut and plate can be reached and its torque read."
        for under in below
        for seat in seats
        if _overlap(material, under, seat)
    ]


def _hangs_below(material: Material, one: Chosen) -> bool:
    spot = material.view.positions.of_choice(one.choice, one.option) if one.option is not None else None
    return spot is not None and spot.z_mm < 0


def _overlap(material: Material, one: Chosen, other: Chosen) -> bool:
    """Seen from above; what has no size or place is never said to overlap."""
    boxes = [_box(material, each) for each in (one, other)]
    if None in boxes:
        return False
    (ax, ay, al, aw), (bx, by, bl, bw) = (box for box in boxes if box is not None)
    return abs(ax - bx) * 2 < al + bl and abs(ay - by) * 2 < aw + bw


def _box(material: Material, one: Chosen) -> tuple[float, float, float, float] | None:
    """Middle along and across, length and width, in mm."""
    if one.option is None:
        return None
    spot, space = material.view.positions.of_choice(one.choice, one.option), one.option.space
    if spot is None or spot.x_mm is None or space.length_mm is None or space.width_mm is None:
        return None
    return spot.x_mm, spot.y_mm, space.length_mm, space.width_mm
