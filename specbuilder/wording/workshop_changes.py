"""What changed from one revision to the next, in the words of the floor: no prices."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.change_order import FreezePoint
from specbuilder.model.comparison import ChangeKind, Piece, PieceChange, PieceKind
from specbuilder.model.holes import HoleLine
from specbuilder.model.record import Undone
from specbuilder.workshop.items import Gone

from .circuits import amount, cable_words, fuse_words
from .dates import written_day
from .names import listed, part_name
from .plain import ended
from .quantities import hours
from .workshop import hole_place, hole_size

NOTHING = "-"
ITEMS_STAY = (
    "Every other part keeps its item number. A number that is gone goes to nothing else: take its box off the shelf."
)
_KINDS = {
    ChangeKind.ADDED: "added",
    ChangeKind.REMOVED: "removed",
    ChangeKind.MOVED: "moved",
    ChangeKind.RESIZED: "re-sized",
}
"""What can become of a hole or circuit."""
_PIECES = {PieceKind.HOLE: "Hole", PieceKind.CIRCUIT: "Circuit"}


def piece_change(change: PieceChange) -> tuple[str, str, str, str]:
    """``("Hole added", "fridge-air-kit-hole1", "-", "fridge air grille low, 300 wide x 60 high at X 490, ...")``."""
    kind = _KINDS.get(change.change, change.change.value)
    return f"{_PIECES[change.kind]} {kind}", change.id, _piece(change.before), _piece(change.after)


def items_cell(gone: int | None, here: int | None) -> str:
    """``22 gone, now 55``, ``27 gone``, ``51``: what to look for on the boxes."""
    if gone is None or gone == here:
        return NOTHING if here is None else f"{here}"
    return f"{gone} gone" if here is None else f"{gone} gone, now {here}"


def gone_line(catalogue: Catalogue, gone: Gone) -> str:
    """``27, Buzzer in the cab while the roof is open: not built any more, last in revision 1.``"""
    choice = gone.choice
    name = part_name(catalogue, choice.option, choice.place, choice.count)
    return f"{gone.item}, {name}: not built any more, last in revision {gone.revision}."


def undone_line(work: Undone) -> str:
    """``Change order 1: blank the roof vent, 1.5 hours (ESTIMATE).``"""
    return ended(f"Change order {work.order}: {work.words.rstrip('.')}, {hours(work.hours)} (ESTIMATE)")


def late_line(point: FreezePoint, work: str) -> str:
    """A step that was passed before the change, with what is done there already."""
    done = f"; done already: {listed(point.done)}" if point.done else ""
    return ended(f"{work} was passed on {written_day(point.passed)}. It touches {listed(point.touched)}{done}")


def _piece(piece: Piece | None) -> str:
    """A hole with surface, size and centre; a circuit with both ends, run, cable and fuse."""
    if piece is None:
        return NOTHING
    if isinstance(piece, HoleLine):
        counted = f"{piece.count} x " if piece.count > 1 else ""
        return f"{counted}{piece.what}: {piece.surface}, {hole_size(piece)}, {hole_place(piece)}"
    ends = f"{piece.from_point} to {piece.to_point}, {amount(piece.run_one_way_m, 'm')}"
    return f"{piece.circuit}: {ends}, {cable_words(piece)}, fuse {fuse_words(piece)}"
