"""What burns openly in a build, what cloth hangs there, and which windows the flame is beside."""

from __future__ import annotations

from specbuilder.model.ids import GroupId, Tag

from .view import Chosen, SpecView

_FLAME, _WINDOWS = Tag("open-flame"), GroupId("windows")
_CLOTH = frozenset({Tag("curtains"), Tag("pleated-blinds")})
_REACH_MM = 300
"""Along the wall from the edge of the hob, as far as a curtain blows: an ESTIMATE, and the foreman looks on the van."""


def flames(view: SpecView) -> tuple[Chosen, ...]:
    """What burns openly."""
    return tuple(one for one in view.taken if one.option is not None and _FLAME in one.option.gives)


def hangs_cloth(view: SpecView) -> tuple[Chosen, ...]:
    """Curtains and blinds."""
    return tuple(one for one in view.taken if one.option is not None and not _CLOTH.isdisjoint(one.option.gives))


def at_flame(view: SpecView) -> tuple[Chosen, ...]:
    """Windows on the side of a flame, and along the wall within reach of it."""
    windows = (one for one in view.taken if one.option is not None and one.option.group == _WINDOWS)
    return tuple(one for one in windows if any(_is_beside(view, one, flame) for flame in flames(view)))


def _is_beside(view: SpecView, window: Chosen, flame: Chosen) -> bool:
    if window.option is None or flame.option is None:
        return False
    hob = view.positions.of_choice(flame.choice, flame.option)
    for hole in window.holes:
        cut = view.positions.of_cut_drawn(hole, window.choice, window.option)
        if hob is None or cut is None or hob.x_mm is None or cut.x_mm is None or cut.y_mm * hob.y_mm <= 0:
            continue
        half_mm = ((hole.width_mm or 0) + (flame.option.space.length_mm or 0)) / 2
        if abs(cut.x_mm - hob.x_mm) <= half_mm + _REACH_MM:
            return True
    return False
