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


def fitted(text: str, width: int) -> str:
    """The text cut to so many characters, ending in ``..`` where something was cut away."""
    if len(text) <= width:
        return text
    return text[: max(0, width - 2)].rstrip() + ".."[:width]


def lowered(name: str) -> str:
    """The name inside a sentence: ``Cooking`` becomes ``cooking``, ``USB pair`` and ``CO alarm`` stay."""
    return name[:1].lower() + name[1:] if name[1:2].islower() else name


def raised(sentence: str) -> str:
    """The sentence with a capital first letter."""
    return sentence[:1].upper() + sentence[1:]


def ended(sentence: str) -> str:
    """The sentence with its full stop."""
    sentence = sentence.rstrip()
    return (
        sentence
        if sentence.endswith((".", "?", ":", ".\N{RIGHT DOUBLE QUOTATION MARK}", '."', '?"'))
        else sentence + "."
    )
