"""``merge``: lines that differ, brought from one variant, revision or file into another."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Iterator
from datetime import datetime
from typing import TypeAlias

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.comparison import AnswerChange, Change, Comparison, VanDataChange
from specbuilder.model.edits import Edit
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand
from specbuilder.office.house import stand_of
from specbuilder.session.compare import compare
from specbuilder.session.merge import merge_edits
from specbuilder.wording.lines import differs_nowhere

from .answers import Answer
from .change import Meaning, Target, changed
from .opening import opened
from .things import GroupThing, LineThing, OptionThing, Thing, Unclear, VanThing, thing

_MANY, _LONGEST = 12, 60
_Line: TypeAlias = Change | AnswerChange | VanDataChange


def merge(target: Target, arguments: Namespace, now: datetime) -> Answer:
    """Each line as one step of undo; what follows from it comes and goes with it.

    Raises:
        StopError: a line does not differ or is refused, or one of the two cannot be had; nothing was changed.
        SpecFaultsError, DiskError, RulesFaults: a file cannot be used, read or written.
    """
    was = opened(arguments.source, target.house)
    source = stand_of(was.catalogue, was.spec)
    at = f"{now:%Y-%m-%d %H:%M}"
    return changed(target, arguments.things, lambda catalogue: _bringing(catalogue, source, at), arguments.trying)


def _bringing(catalogue: Catalogue, source: Stand, at: str) -> Meaning:
    """How a line is brought into a spec: found by what it is about, in what differs there and then."""

    def meaning(spec: Spec, text: str) -> Edit | Unclear:
        into = stand_of(catalogue, spec)
        comparison = compare(into, source)
        meant = thing(catalogue, text)
        if isinstance(meant, Unclear):
            return meant
        line = next((line for line in _lines(comparison) if _is(line, meant)), None)
        if line is None:
            return Unclear(differs_nowhere(text[:_LONGEST], list(map(_name, _lines(comparison)))[:_MANY]))
        return merge_edits(line, into, source, at=at)

    return meaning


def _lines(comparison: Comparison) -> Iterator[_Line]:
    """Every line that was said, and so can be brought over; figures follow."""
    yield from comparison.changes
    yield from comparison.answers
    yield from comparison.van_data


def _is(line: _Line, meant: Thing) -> bool:
    match line, meant:
        case Change(), GroupThing(group):
            return line.group == group
        case Change(), OptionThing(option=option):
            return option in {choice.option for choice in (line.before, line.after) if choice is not None}
        case AnswerChange(key=key), LineThing(asked):
            return key == asked
        case VanDataChange(field=field), VanThing(asked_field):
            return field == asked_field
        case _:
            return False


def _name(line: _Line) -> str:
    """What a line is asked for by."""
    match line:
        case Change(option=option):
            return option
        case AnswerChange(key=key):
            return key
        case VanDataChange(field=field):
            return field
