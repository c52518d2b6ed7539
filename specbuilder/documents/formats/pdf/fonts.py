"""The letters of the papers: shipped with the program and embedded in every file, so that all printers agree."""

from __future__ import annotations

import unicodedata
from functools import cache, lru_cache
from pathlib import Path

from reportlab.pdfbase.pdfmetrics import registerFont
from reportlab.pdfbase.ttfonts import TTFont

from specbuilder.documents.formats.wrapping import wrapped
from specbuilder.wording.plain import printable

_FOLDER = Path(__file__).parents[2] / "fonts"
_SIGN = "\N{WHITE SQUARE}"
"""Stands for a character that the letters do not have."""
CAPITAL = 0.72
"""Height of a capital letter, of the size."""


class Face:
    """One cut of the letters, and how wide texts stand in it."""

    def __init__(self, name: str) -> None:
        font = TTFont(name, str(_FOLDER / f"{name}.ttf"), shapable=False)
        registerFont(font)
        self.name = name
        self.characters: dict[int, float] = font.face.charWidths
        self.width = lru_cache(maxsize=1 << 14)(self._width)
        """Width of a text, in units of the size of the letters."""

    def _width(self, text: str) -> float:
        widths = self.characters
        return sum([widths[ord(character)] for character in text]) / 1000

    def lines(self, text: str, size: float, room: float) -> tuple[str, ...]:
        """The text in lines of at most so many points, every character shown or a sign in its place."""
        return wrapped(shown(text), room / size, self.width)


@cache
def plain() -> Face:
    """The letters of running text."""
    return Face("Lato-Regular")


@cache
def strong() -> Face:
    """The letters of headings and of all that calls."""
    return Face("Lato-Bold")


@lru_cache(maxsize=1 << 13)
def shown(text: str) -> str:
    """The text as the letters can show it, without blanks at its ends."""
    if text.isascii() and text.isprintable():
        return text.strip()
    known, known_strong = plain().characters, strong().characters
    composed = unicodedata.normalize("NFC", printable(text)).strip()
    return "".join(c if ord(c) in known and ord(c) in known_strong else _SIGN for c in composed)
