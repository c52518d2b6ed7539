"""The last gate before a terminal: text that a person typed cannot move the cursor or turn the reading direction."""

from __future__ import annotations

import unicodedata


def printable(text: str) -> str:
    """The text with control, direction and other invisible format characters replaced; line ends become spaces."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(_shown(character) for character in text)


def _shown(character: str) -> str:
    if character in "\n\r\t\x0b\x0c\x85\u2028\u2029":
        return " "
    category = unicodedata.category(character)
    return "\N{REPLACEMENT CHARACTER}" if category in ("Cc", "Cf", "Cs", "Co", "Cn") else character
