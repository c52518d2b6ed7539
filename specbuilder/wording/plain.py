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


_LONGEST_WORD = 12
"""So many characters are given up for the sake of a whole word; a text is cut inside a longer one."""


def fitted(text: str, width: int) -> str:
    """The text cut to so many characters, ending in ``..`` where something was cut away: behind a word if it can be."""
    if len(text) <= width:
        return text
    return whole_words(text, max(0, width - 2)) + ".."[:width]


def whole_words(text: str, characters: int) -> str:
    """The beginning of a longer text without the piece of a word at its end, unless much of it would go."""
    head = text[:characters]
    words, _, piece = head.rpartition(" ")
    torn = piece != "" and text[len(head) : len(head) + 1].strip() != ""
    kept = words if torn and len(piece) < min(_LONGEST_WORD, len(words)) else head
    return kept.rstrip().rstrip(",:;") or head.rstrip()


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
