"""How many columns of a terminal a text takes, and how it is laid into them."""

from __future__ import annotations

import unicodedata
from functools import lru_cache

from specbuilder.documents.formats.wrapping import wrapped

_TWO_WIDE = ((0x2630, 0x2637), (0x268A, 0x268F), (0x4DC0, 0x4DFF), (0x1D300, 0x1D37F))
"""Signs that newer terminals show two columns wide, though the tables of this Python do not say so."""
BLANK = "_"
"""A blank to write in is a line of these."""


@lru_cache(maxsize=8192)
def cells(text: str) -> int:
    """Columns that the text takes."""
    return len(text) if text.isascii() else sum(_width(character) for character in text)


def _width(character: str) -> int:
    if unicodedata.category(character) in ("Mn", "Me"):
        return 0
    code = ord(character)
    if unicodedata.east_asian_width(character) in "WF" or any(first <= code <= last for first, last in _TWO_WIDE):
        return 2
    return 1


def broken(text: str, width: int) -> tuple[str, ...]:
    """The text in lines of at most so many columns."""
    return wrapped(text, width, cells)


def padded(text: str, width: int, *, right: bool = False) -> str:
    """The text filled up with blanks."""
    blanks = " " * (width - cells(text))
    return f"{blanks}{text}" if right else f"{text}{blanks}"


def hanging(first: str, text: str, width: int) -> list[str]:
    """The text behind a sign, its further lines below its own beginning."""
    rest = " " * cells(first)
    lines = broken(text, width - cells(first))
    return [f"{first}{lines[0]}", *(f"{rest}{line}" for line in lines[1:])]


def boxed(texts: list[str], width: int, edges: str) -> list[str]:
    """Lines in a box; ``edges`` are its corners from top left clockwise, then the level and the upright line."""
    top_left, top_right, bottom_right, bottom_left, level, upright = tuple(edges)
    inner = width - 4
    lines = [line for text in texts for line in broken(text, inner)]
    return [
        f"{top_left}{level * (inner + 2)}{top_right}",
        *(f"{upright} {padded(line, inner)} {upright}" for line in lines),
        f"{bottom_left}{level * (inner + 2)}{bottom_right}",
    ]
