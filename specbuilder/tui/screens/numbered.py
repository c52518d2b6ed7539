"""Numbered answers under a list: what is asked, and each answer with the digit that gives it, for keys and clicks."""

from __future__ import annotations

import re
from collections.abc import Sequence

from specbuilder.model.brief import BriefLine
from specbuilder.model.catalogue import Catalogue
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnDigit
from specbuilder.tui.line import Bit, Line, line, packed, wrapped
from specbuilder.wording.brief import hint
from specbuilder.wording.brief_groups import numbered_hints

_BLANKS = re.compile(r"( {2,})")
_NUMBERED = re.compile(r"\d \S")


def answer_foot(catalogue: Catalogue, known: BriefLine, cells: int) -> list[Line]:
    """The sentence the customer hears, and how to answer it."""
    asked = asked_lines(known.ask, cells)
    if numbered := numbered_hints(catalogue, known):
        return [*asked, *numbered_lines(numbered, cells)]
    return [*asked, *(line(f" {text}") for text in wrapped(hint(catalogue, known), cells - 2))]


def asked_lines(text: str, cells: int) -> list[Line]:
    """A question in full."""
    return [line(" ", Bit(part, Ink.HEAD)) for part in wrapped(text, cells - 2)]


def numbered_bits(text: str) -> list[Bit]:
    """A text in which answers stand behind their digits, two blanks before each; a click on one gives it."""
    parts = _BLANKS.split(text)
    return [Bit(part, hot=OnDigit(int(part[0])) if _NUMBERED.match(part) else None) for part in parts if part]


def numbered_lines(answers: Sequence[tuple[int, str]], cells: int) -> list[Line]:
    """Each answer behind its digit; a click on it gives it."""
    pieces = [Bit(text, hot=OnDigit(digit)) for digit, text in answers]
    return [Line((Bit(" "), *row.bits)) for row in packed(pieces, cells - 2)]
