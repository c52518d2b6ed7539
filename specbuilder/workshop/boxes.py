"""What the parts take up on the floor plan, as far as the catalogue can tell, and what comes close when it moves.

A place is the middle of a mass and no edge. An edge is reckoned from it by half the size, so it is a planning figure;
the front edge of a bench has a figure of its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from specbuilder.model.catalogue import Option
from specbuilder.model.own_parts import FRONT_DOOR, is_theirs, with_sheet

from .placing import other_body
from .positions import Spot
from .view import Chosen, SpecView

_GALLEY, _BENCH = "galley", "bench"
"""Tags of what a turning seat, a door or a drawer comes close to."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """From where to where, on the datum of the job."""

    from_x_mm: float
    to_x_mm: float
    from_y_mm: float
    """The smaller y: further right."""
    to_y_mm: float

    def gap_mm(self, other: Box) -> float:
        """Between the two where one moves past the other; less than nought: by so much they overlap along the van."""
        along = max(self.from_x_mm, other.from_x_mm) - min(self.to_x_mm, other.to_x_mm)
        across = max(self.from_y_mm, other.from_y_mm) - min(self.to_y_mm, other.to_y_mm)
        return along if across < 0 or along >= 0 else across


class Motion(StrEnum):
    """What moves."""

    SEAT = "seat turned"
    DOOR = "door open"
    DRAWER = "pulled out"


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """Two things of which one moves, or both; how far apart they are then."""

    motion: Motion
    one: Chosen
    other: Chosen
    other_turned: bool = False
    """The other one is a seat that is turned."""
    gap_mm: float | None = None
    """None: the catalogue does not know both places and sizes."""


def box_of(view: SpecView, one: Chosen) -> Box | None:
    """What it takes up; None where a size or a place is not known or is measured on the van."""
    option = one.option
    if option is None or one.choice.count > 1 or is_theirs(option, one.choice):
        return None
    spot, space = view.positions.of_choice(one.choice, option), option.space
    if spot is None or spot.x_mm is None or space.length_mm is None or space.width_mm is None:
        return None
    if (option.places and one.choice.place is None) or "width" in other_body(view, option, spot):
        return None
    front_mm = view.front_edge_x_mm(option)
    from_x_mm = spot.x_mm - space.length_mm / 2 if front_mm is None else front_mm
    return Box(
        from_x_mm=from_x_mm,
        to_x_mm=from_x_mm + space.length_mm,
        from_y_mm=spot.y_mm - space.width_mm / 2,
        to_y_mm=spot.y_mm + space.width_mm / 2,
    )


def meetings(view: SpecView) -> Iterator[Meeting]:
    """Turning seat to kitchen, open fridge to turning seat, drawer to bench: what is found out by moving it."""
    parts = [(one, _as_brought(one, one.option)) for one in view.taken if one.option is not None]
    seats = [(one, option) for one, option in parts if option.space.swivel_sweep_x_mm is not None]
    for seat, option in seats:
        turned = _turned(view, seat, option)
        for one in (one for one, other in parts if _GALLEY in other.gives):
            yield Meeting(motion=Motion.SEAT, one=seat, other=one, gap_mm=_gap(turned, box_of(view, one)))
    for fridge, option in parts:
        motion = _motion(option)
        if motion is None:
            continue
        open_ = _opened(view, fridge, option)
        for seat, seat_option in seats:
            gap_mm = _gap(open_, _turned(view, seat, seat_option))
            yield Meeting(motion=motion, one=fridge, other=seat, other_turned=True, gap_mm=gap_mm)
        for one in (one for one, other in parts if _BENCH in other.gives and motion is Motion.DRAWER):
            yield Meeting(motion=motion, one=fridge, other=one, gap_mm=_gap(open_, box_of(view, one)))


def _as_brought(one: Chosen, option: Option) -> Option:
    """Of the customer's own fridge as its sheet says: it may be a drawer."""
    return with_sheet(option, one.choice.own_part) if is_theirs(option, one.choice) else option


def _motion(option: Option) -> Motion | None:
    if option.space.pull_out_mm is not None:
        return Motion.DRAWER
    return Motion.DOOR if FRONT_DOOR in option.gives else None


def _gap(one: Box | None, other: Box | None) -> float | None:
    return None if one is None or other is None else one.gap_mm(other)


def _turned(view: SpecView, seat: Chosen, option: Option) -> Box | None:
    """From its base back to where it reaches when it turns; the seat is wider than its base."""
    box, reach_mm = box_of(view, seat), option.space.swivel_sweep_x_mm
    return None if box is None or reach_mm is None else replace(box, to_x_mm=reach_mm)


def _opened(view: SpecView, fridge: Chosen, option: Option) -> Box | None:
    """The room its door or drawer takes before the unit, towards the middle of the van."""
    spot, box = view.positions.of_choice(fridge.choice, option), box_of(view, fridge)
    out_mm = option.space.pull_out_mm or option.space.swing_mm
    if box is None or spot is None or out_mm is None:
        return None
    return _before(box, spot, out_mm)


def _before(box: Box, spot: Spot, out_mm: float) -> Box:
    if spot.y_mm < 0:
        return replace(box, from_y_mm=box.to_y_mm, to_y_mm=box.to_y_mm + out_mm)
    return replace(box, from_y_mm=box.from_y_mm - out_mm, to_y_mm=box.from_y_mm)
