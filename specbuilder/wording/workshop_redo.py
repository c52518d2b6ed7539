"""What is done again at a passed step, in the words of the floor. How holes are closed is an ESTIMATE of the house."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.holes import HoleLine
from specbuilder.workshop.redo import SOUND_MM, Closing, Redo
from specbuilder.workshop.view import Chosen

from .dates import written_day
from .names import listed, part_name
from .plain import ended
from .quantities import millimetres
from .workshop import counted, hole_place, hole_size

_BODY = ("roof", "side skin", "floor", "front wing")
"""How the surfaces begin that are the body of the van."""
_LARGE_MM = 600
"""A cut that is larger both ways takes strength out of the body: no patch gives it back."""
PATCH = (
    "Patch: a plate of the body's own metal with 30 mm overlap all round (ESTIMATE), bonded and sealed, primer on both "
    "sides and on the cut edge; below the floor underseal over it. The body maker's repair paper goes first."
)
SKIN = (
    "New skin: no patch. A body shop puts metal and frame back in by the body maker's repair paper; nobody drives the "
    "van before that. Ask the foreman for date and paper."
)
BOARD = "Board: a new front or a plug of the same board, glued flush, edges sealed."
SHELL = "Shell: by the repair paper of the roof's maker, bonded and sealed on both sides."
BY_PAPER = (
    "Fixings of seats, belts and tie-downs: the report of the seat says whether a closed hole may lie beside a new "
    "fixing."
)


def hole_words(hole: HoleLine) -> str:
    """``3 x window opening: side skin, 860 wide x 430 high, at X 510, Y 860 left, Z 900``."""
    number = f"{hole.count} x " if hole.count > 1 else ""
    return f"{number}{hole.what.partition('; ')[0]}: {hole.surface}, {hole_size(hole)}, {_centre(hole)}"


def _centre(hole: HoleLine) -> str:
    if hole.measured or hole.y_mm is None:
        return "its centre as it was measured and written down"
    return hole_place(hole)


def how(hole: HoleLine) -> str:
    """How it is closed, in full."""
    if hole.surface == "roof shell":
        return SHELL
    if not hole.surface.startswith(_BODY):
        return BOARD
    if min(hole.width_mm or 0, hole.height_mm or 0) >= _LARGE_MM:
        return SKIN
    return PATCH


def how_short(hole: HoleLine) -> str:
    """``Patch``: its first word, for a column."""
    return how(hole).partition(":")[0]


def mind(closing: Closing) -> str:
    """What a new hole beside it asks for; a dash where nothing is near."""
    said = []
    if closing.near:
        said.append(
            f"{listed(closing.near)} overlaps it or lies within {millimetres(SOUND_MM)}: cut through sound metal only: "
            "settle with the counter before cutting"
        )
    if closing.unsure:
        said.append(
            f"{listed(closing.unsure)} is measured: where it overlaps or lies within {millimetres(SOUND_MM)}, settle "
            "with the counter before cutting"
        )
    return "; ".join(said) or "-"


def again_for(catalogue: Catalogue, redo: Redo) -> str:
    """What a hold point is passed again for: ``1 hole closed (fridge-hole1), 2 holes cut (...)``."""
    said = []
    if redo.close:
        labels = listed(dict.fromkeys(one.hole.id for one in redo.close))
        said.append(f"{_holes(sum(one.hole.count for one in redo.close))} closed ({labels})")
    if redo.cut:
        labels = listed(dict.fromkeys(hole.id for hole in redo.cut))
        said.append(f"{_holes(sum(hole.count for hole in redo.cut))} newly cut ({labels})")
    said += redo.out
    if redo.fit:
        parts = listed(part_name(catalogue, one.choice.option, one.choice.place) for one in redo.fit)
        said.append(f"{parts} fitted")
    if redo.circuits:
        said.append(f"{counted(len(redo.circuits), 'cable', 'cables')} changed")
    return "; ".join(said)


def again_line(catalogue: Catalogue, redo: Redo) -> str:
    """``Passed on 2 June 2031 for revision 1; to be passed again for: ...``; once it was, that it was."""
    passed = f"Passed on {written_day(redo.passed.at)} for revision {redo.revision}"
    if redo.again is not None:
        return ended(f"{passed}; passed again on {written_day(redo.again.at)} for: {again_for(catalogue, redo)}")
    return ended(f"{passed}; to be passed again for: {again_for(catalogue, redo)}")


def fit_line(catalogue: Catalogue, one: Chosen) -> str:
    """``Fit item 12: Side galley, right``."""
    choice = one.choice
    return f"Fit item {one.item}: {part_name(catalogue, choice.option, choice.place, choice.count)}"


def _holes(number: int) -> str:
    return counted(number, "hole", "holes")
