"""From value and bound to one of the three answers."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.kinds import Sense, Verdict
from specbuilder.model.span import Span


def verdict_of(sense: Sense, value: Span, bound: Span) -> Verdict:
    """Holds when every value keeps every bound, broken when none keeps any; meeting the bound keeps it."""
    match sense:
        case Sense.AT_MOST:
            return _keeps(value.most <= bound.least, value.least > bound.most)
        case Sense.AT_LEAST:
            return _keeps(value.least >= bound.most, value.most < bound.least)
        case Sense.SHOWN:
            return Verdict.HOLDS
        case _:
            assert_never(sense)


def _keeps(always: bool, never: bool) -> Verdict:
    if always:
        return Verdict.HOLDS
    return Verdict.BROKEN if never else Verdict.CANNOT_TELL
