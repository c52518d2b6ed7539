"""Holes and circuits of two stands, paired: what is cut or run on one side only, elsewhere, or in another size."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.circuits import CircuitLine
from specbuilder.model.comparison import ChangeKind, Piece, PieceChange, PieceKind
from specbuilder.model.holes import HoleLine
from specbuilder.model.stand import Stand
from specbuilder.workshop.pieces import pieces, place_of, size_of
from specbuilder.workshop.view import view_of

from .compare_order import WalkOrder

_KINDS = ((PieceKind.HOLE, HoleLine), (PieceKind.CIRCUIT, CircuitLine))


def piece_changes(before: Stand, after: Stand, order: WalkOrder) -> tuple[PieceChange, ...]:
    """Every hole, then every circuit that differs, in the order of the walk."""
    was, now = _by_id(before), _by_id(after)
    found: list[PieceChange] = []
    for kind, of in _KINDS:
        ids = {key[1] for key in (*was, *now) if key[0] is of}
        changes = [c for id_ in ids for c in _changes(kind, id_, was.get((of, id_), []), now.get((of, id_), []))]
        found += sorted(changes, key=lambda change: (_rank(change, order), change.id))
    return tuple(found)


def _by_id(stand: Stand) -> dict[tuple[type, str], list[Piece]]:
    found: dict[tuple[type, str], list[Piece]] = {}
    for piece in pieces(view_of(stand.catalogue, stand.spec, stand.report)):
        found.setdefault((type(piece), piece.id), []).append(piece)
    return found


def _changes(kind: PieceKind, id_: str, was: list[Piece], now: list[Piece]) -> Iterator[PieceChange]:
    """Alike ones belong together, then the rest in order; what is left came or went."""
    left, rest = list(now), list[Piece]()
    for piece in was:
        at = next((n for n, other in enumerate(left) if _alike(piece, other)), None)
        if at is None:
            rest.append(piece)
        else:
            left.pop(at)
    for number in range(max(len(rest), len(left))):
        before = rest[number] if number < len(rest) else None
        after = left[number] if number < len(left) else None
        yield PieceChange(kind=kind, change=_kind(before, after), id=id_, before=before, after=after)


def _alike(one: Piece, other: Piece) -> bool:
    return place_of(one) == place_of(other) and size_of(one) == size_of(other)


def _kind(before: Piece | None, after: Piece | None) -> ChangeKind:
    if before is None or after is None:
        return ChangeKind.ADDED if before is None else ChangeKind.REMOVED
    return ChangeKind.RESIZED if place_of(before) == place_of(after) else ChangeKind.MOVED


def _rank(change: PieceChange, order: WalkOrder) -> list[tuple[int, int, str]]:
    return sorted(order.option(piece.option) for piece in (change.before, change.after) if piece is not None)
