"""The pieces of a build that two of its revisions are compared by: every hole and every cable run, as schedule lines.

Two lines of one id are the same piece; where it is and how large it is tells them apart.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator

from specbuilder.model.comparison import Piece
from specbuilder.model.holes import HoleLine
from specbuilder.model.parts import Hole

from .cuts import surface_of
from .view import Chosen, SpecView


def pieces(view: SpecView) -> tuple[Piece, ...]:
    """The holes, then the circuits."""
    return (*hole_lines(view), *view.report.circuits)


def hole_lines(view: SpecView) -> tuple[HoleLine, ...]:
    """The hole schedule, in build order."""
    return tuple(_holes(view))


def place_of(piece: Piece) -> Hashable:
    """Where it is: surface and centre of a hole, both ends of a circuit."""
    if isinstance(piece, HoleLine):
        return piece.surface, piece.measured, piece.x_mm, piece.y_mm, piece.z_mm
    return piece.from_point, piece.to_point


def size_of(piece: Piece) -> Hashable:
    """How large it is: a hole as it is cut, a circuit with load, run, cable and fuse."""
    if isinstance(piece, HoleLine):
        sides = piece.width_mm, piece.height_mm, piece.diameter_mm, piece.corner_radius_mm
        return *sides, piece.cut_from, piece.count
    cable = piece.run_one_way_m, piece.area_mm2, piece.side_by_side, piece.insulation_c
    return piece.load_a, *cable, piece.fuse_a, piece.fuse_kind, piece.fuse_place


def _holes(view: SpecView) -> Iterator[HoleLine]:
    for one in view.in_build_order():
        for hole in one.holes:
            yield hole_line(view, one, hole)


def hole_line(view: SpecView, one: Chosen, hole: Hole) -> HoleLine:
    """One line of the hole schedule."""
    assert one.option is not None, "what has left the catalogue has no holes"
    spot = view.positions.of_cut(hole, one.choice, one.option)
    return HoleLine(
        id=hole.id,
        option=one.option.id,
        what=hole.what,
        surface=surface_of(view, one, one.option, hole),
        measured=spot is None,
        x_mm=spot.x_mm if spot else None,
        y_mm=spot.y_mm if spot else None,
        z_mm=spot.z_mm if spot else None,
        width_mm=hole.width_mm,
        height_mm=hole.height_mm,
        diameter_mm=hole.diameter_mm,
        corner_radius_mm=hole.corner_radius_mm,
        cut_from=hole.cut_from,
        count=one.choice.count,
    )
