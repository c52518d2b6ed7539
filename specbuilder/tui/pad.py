"""What a hand on the mouse finds on the last line: signs to click where something is typed, and the way to all acts.

It stands there from the first click on and goes with the next key, so that whoever has a keyboard never sees it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from string import ascii_lowercase, ascii_uppercase, digits

from specbuilder.wording.pad import RUB_OUT, SPACE, shift_words

from .entry import WHOLE
from .items import OnDigit, OnSign
from .keys import Act
from .line import Bit, Line, width
from .screens.heading import GAP, hints
from .screens.page import Page

BACKSPACE, SHIFT = "backspace", "shift"
"""Signs that are no characters."""
_SETS = (ascii_lowercase, ascii_uppercase, f"{digits}.,:-'/@&()")
FOOT_ROWS = 2
"""So many lines of a foot can be read in every window."""
_EVERYTHING = 10_000
"""Cells in which every hint has room."""


@dataclass
class Pad:
    """Whether the mouse is in use, and which signs are shown to it."""

    in_use: bool = False
    chosen: int = 0

    def turn(self) -> None:
        """The next set of signs: small letters, capitals, figures and points."""
        self.chosen = (self.chosen + 1) % len(_SETS)

    def line(self, page: Page, cells: int) -> Line:
        """The last line under a page: hints, and while the mouse is in use what it needs beside them."""
        if not self.in_use:
            return hints(page, cells)
        signs, told = self._signs(page, cells), list(hints(page, _EVERYTHING).bits)
        told = [bit for bit in told if bit.hot is not None]
        always = (Act.ACTIONS, Act.BACK) if page.entry is None else (Act.ENTER, Act.BACK)
        kept = [bit for bit in told if bit.hot in always]
        if page.entry is not None:
            kept = told = _short(kept, signs, cells)
        room = cells - 1 - sum(_cells(bit) + len(GAP) for bit in kept) - sum(map(_cells, signs))
        shown: list[Bit] = []
        for bit in told:
            if bit in kept:
                shown.append(bit)
            elif _cells(bit) + len(GAP) <= room:
                room -= _cells(bit) + len(GAP)
                shown.append(bit)
        return Line((Bit(" "), *(part for bit in shown for part in (bit, Bit(GAP))), *signs))

    def _signs(self, page: Page, cells: int) -> tuple[Bit, ...]:
        if page.entry is None:
            return _row(digits) if (page.digit_hint() or page.letters()) and not _has_answers(page, cells) else ()
        allowed = page.letters()
        if allowed:
            return (*_row("".join(sorted(allowed - {" "}))), *_space(allowed), _rub_out())
        return (*_row(_SETS[self.chosen]), Bit(" "), _shift(self.chosen), *_space(WHOLE | {" "}), _rub_out())


def _has_answers(page: Page, cells: int) -> bool:
    """True where the answers stand behind their digits already, in the row or right below the list."""
    row = page.cursor()
    seen = [*([page.shown[row]] if row is not None else []), *page.foot(cells)[:FOOT_ROWS]]
    return any(isinstance(bit.hot, OnDigit) for line in seen for bit in line.bits)


def _cells(bit: Bit) -> int:
    return width(bit.text)


def _short(told: Sequence[Bit], signs: Sequence[Bit], cells: int) -> list[Bit]:
    """While a text is typed the keys alone, where there is no room for what they do."""
    if sum(_cells(bit) + len(GAP) for bit in told) + sum(map(_cells, signs)) + 1 <= cells:
        return list(told)
    return [Bit(bit.text.split()[0], bit.ink, bit.hot) for bit in told]


def _row(signs: str) -> tuple[Bit, ...]:
    gap = () if len(signs) > len(WHOLE) + 4 else (Bit(" "),)
    return tuple(bit for sign in signs for bit in (Bit(sign, hot=OnSign(sign)), *gap))


def _space(allowed: frozenset[str]) -> tuple[Bit, ...]:
    return (Bit(" "), Bit(SPACE, hot=OnSign(" "))) if " " in allowed else ()


def _rub_out() -> Bit:
    return Bit(f" {RUB_OUT}", hot=OnSign(BACKSPACE))


def _shift(chosen: int) -> Bit:
    return Bit(shift_words(chosen), hot=OnSign(SHIFT))
