"""Where a text is broken into lines, whatever it is measured in: columns of a terminal or points on paper."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TypeAlias

Measure: TypeAlias = Callable[[str], float]
"""How wide a text stands."""

_BREAKS_AFTER = "-/_,;:.@\\"
"""Where a word that is wider than a whole line is broken, before it is broken anywhere."""
_UNIT = 3
"""A word of up to so many characters behind a number is taken for its unit and stands in the line of the number."""
_PUNCTUATION = ",;:.)"
_FIXED_BLANK = "\N{NO-BREAK SPACE}"
_BY = frozenset("x\N{MULTIPLICATION SIGN}")
"""Between two measures."""
_SLACK = 1e-6
"""Sums of widths are rounded; a line that fits exactly must not be broken for that."""


def wrapped(text: str, room: float, measure: Measure) -> tuple[str, ...]:
    """The text in lines no wider than the room; a text without words is one empty line.

    Blanks run together. A word wider than the room is broken. One character always fits, or nothing could be shown.
    """
    words = [word for word in text.split(" ") if word]
    whole = " ".join(words)
    if measure(whole) <= room + _SLACK:
        return (whole,)
    return tuple(_lines(_glued(words, room, measure), room + _SLACK, measure))


def longest_word(text: str, measure: Measure) -> float:
    """What the room must be so that no word is broken."""
    return max((measure(word) for word in text.split(" ")), default=0.0)


def _glued(words: list[str], room: float, measure: Measure) -> Iterator[str]:
    """The words, those that belong together as one: ``10 A``, ``900 x 450``."""
    held = ""
    for word in words:
        if held and _belong(held, word) and measure(f"{held} {word}") <= room:
            held = f"{held} {word}"
            continue
        if held:
            yield held
        held = word
    if held:
        yield held


def _belong(before: str, word: str) -> bool:
    last = before[before.rfind(" ") + 1 :]
    if last in _BY:
        return " " in before and word[0].isdigit()
    unit = word.partition(_FIXED_BLANK)[0].rstrip(_PUNCTUATION)
    return last[-1].isdigit() and 0 < len(unit) <= _UNIT and not unit[0].isdigit()


def _lines(words: Iterator[str], room: float, measure: Measure) -> Iterator[str]:
    blank = measure(" ")
    line: list[str] = []
    used = 0.0
    for word in words:
        for piece in _pieces(word, room, measure):
            width = measure(piece)
            if line and used + blank + width > room:
                yield " ".join(line)
                line, used = [], 0.0
            used += width + (blank if line else 0.0)
            line.append(piece)
    if line:
        yield " ".join(line)


def _pieces(word: str, room: float, measure: Measure) -> Iterator[str]:
    """The word in pieces that fit; one piece where it fits whole."""
    while measure(word) > room and len(word) > 1:
        end = _end(word, room, measure)
        yield word[:end]
        word = word[end:]
    if word:
        yield word


def _end(word: str, room: float, measure: Measure) -> int:
    """How much of the word stands in one line: as much as fits, or up to a hyphen or the like not far before."""
    used = 0.0
    end = 0
    while end < len(word) and used + measure(word[end]) <= room:
        used += measure(word[end])
        end += 1
    for i in range(end, max(end // 2, 1), -1):
        if word[i - 1] in _BREAKS_AFTER:
            return i
    return max(end, 1)
