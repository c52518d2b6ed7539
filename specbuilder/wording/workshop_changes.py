"""What changed from one revision to the next, in the words of the floor: no prices."""

from __future__ import annotations

from specbuilder.model.change_order import FreezePoint
from specbuilder.model.comparison import Change, ChangeKind, Piece, PieceChange, PieceKind
from specbuilder.model.holes import HoleLine
from specbuilder.model.kinds import Owner
from specbuilder.model.record import Undone
from specbuilder.model.spec import Choice

from .circuits import amount, cable_words, fuse_words
from .dates import written_day
from .names import listed
from .plain import ended, lowered, raised
from .quantities import hours
from .workshop import hole_place, hole_size

NOTHING = "-"
_KINDS = {
    ChangeKind.ADDED: "Added",
    ChangeKind.REMOVED: "Removed",
    ChangeKind.REPLACED: "Replaced",
    ChangeKind.GONE: "No longer in the catalogue",
    ChangeKind.BACK: "In the catalogue again",
    ChangeKind.MOVED: "Moved",
    ChangeKind.RESIZED: "Re-sized",
    ChangeKind.NOTED: "Other note",
    ChangeKind.RENAMED: "Renamed",
    ChangeKind.REPRICED: "",
    ChangeKind.REWEIGHED: "Other weight",
    ChangeKind.RETIMED: "",
}
"""Empty: nothing of it concerns the floor."""
_PIECES = {PieceKind.HOLE: "Hole", PieceKind.CIRCUIT: "Circuit"}


def part_change(change: Change) -> tuple[str, str, str] | None:
    """``("Moved", "Awning, left", "Awning, right")``; None for what the floor need not know."""
    kind = _KINDS[change.kind]
    if not kind:
        return None
    noted = change.kind is ChangeKind.NOTED
    return kind, _choice(change.name_before, change.before, noted), _choice(change.name_after, change.after, noted)


def piece_change(change: PieceChange) -> tuple[str, str, str, str]:
    """``("Hole added", "fridge-air-kit-h1", "-", "fridge air grille low, 300 wide x 60 high at X 490, ...")``."""
    kind = _KINDS[change.change] or raised(change.change.value)
    return f"{_PIECES[change.kind]} {lowered(kind)}", change.id, _piece(change.before), _piece(change.after)


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


def _choice(name: str, choice: Choice | None, noted: bool) -> str:
    """As it stands on one side: count, name, place, whose it is where it is not ours, and the note where that differs.

    The note is text that somebody typed: a sheet makes it one line.
    """
    if choice is None:
        return NOTHING
    counted = f"{choice.count} x {name}" if choice.count > 1 else name
    sided = f"{counted}, {choice.place.value}" if choice.place else counted
    owned = f"{sided} (the customer's own)" if choice.owner is Owner.CUSTOMER else sided
    return f"{owned}: {choice.note or 'no note'}" if noted else owned
