"""What somebody may have meant who mistyped a word."""

from __future__ import annotations

import difflib
from collections.abc import Iterable

from specbuilder.wording.names import listed

_SOME = 3


def nearest(typed: str, known: Iterable[str]) -> str:
    """``check or change``: the known words most like it; empty where none is."""
    return listed(difflib.get_close_matches(typed, list(known), n=_SOME), "or")
