"""One line of a comparison brought from the one spec into the other, as one step of undo."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.comparison import AnswerChange, Change, VanDataChange
from specbuilder.model.edits import (
    AnswerLine,
    Edit,
    FillVanData,
    LeaveOut,
    Move,
    SetCount,
    SetNote,
    SetOwner,
    Take,
    Together,
)
from specbuilder.model.own_parts import owner_of
from specbuilder.model.spec import Choice
from specbuilder.model.stand import Stand


def merge_edits(change: Change | AnswerChange | VanDataChange, into: Stand, from_: Stand, *, at: str = "") -> Edit:
    """The edit after which ``into`` stands in this line as ``from_`` does; what follows comes and goes with it.

    A line that differs in the catalogue alone leaves nothing to do. Where the catalogue of ``into`` does not know the
    option, or a follower stands as long as its cause does, the edit is refused when it is applied.

    Args:
        change: a line of ``compare(into, from_)``; one of ``compare(from_, into)`` is turned first.
        into: what is changed.
        from_: what it is taken from.
        at: when it is taken, ``YYYY-MM-DD HH:MM``.
    """
    match change:
        case AnswerChange(key=key):
            return AnswerLine(key=key, value=from_.spec.answers.get(key))
        case VanDataChange(field=field):
            known = getattr(from_.spec.van_data, field)
            return FillVanData(van_data=replace(into.spec.van_data, **{field: known}))
        case Change():
            edits = tuple(_edits(change, into.catalogue, at))
            return edits[0] if len(edits) == 1 else Together(edits=edits)


def _edits(change: Change, catalogue: Catalogue, at: str) -> Iterator[Edit]:
    was, now = change.before, change.after
    if now is None:
        assert was is not None, "a change has at least one side"
        yield LeaveOut(option=was.option, place=was.place)
    elif was is None or was.option != now.option:
        yield Take(option=now.option, place=now.place, count=now.count, at=at)
        yield from _made(Choice(option=now.option, owner=owner_of(catalogue.options.get(now.option))), now)
    else:
        if was.place is not now.place and now.place is not None:
            yield Move(option=now.option, to=now.place, place=was.place)
        if was.count != now.count:
            yield SetCount(option=now.option, count=now.count, place=now.place)
        yield from _made(was, now)


def _made(was: Choice, now: Choice) -> Iterator[Edit]:
    """Whose part it is, with its sheet, and the note on it."""
    if (was.owner, was.own_part) != (now.owner, now.own_part):
        yield SetOwner(option=now.option, owner=now.owner, own_part=now.own_part, place=now.place)
    if was.note != now.note:
        yield SetNote(option=now.option, note=now.note, place=now.place)
