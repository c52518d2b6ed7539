"""Words of the signs that a hand on the mouse clicks."""

from __future__ import annotations

SPACE = "space"
RUB_OUT = "del"


def shift_words(chosen: int) -> str:
    """What the next set of signs is."""
    return ("ABC", "123", "abc")[chosen]
