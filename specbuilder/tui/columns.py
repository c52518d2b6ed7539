"""Where the cells of a row stand in so many columns."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.wording.rows import RowWords

from .ink import Ink
from .items import Item
from .keys import Act
from .line import Bit, Line, cut, left, right

MARK_CELLS = 2
"""One for the cursor, one for the mark."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """Widths of an option row's cells: mark, state word, name, money, mass, note."""

    name: int
    note: int
    state: int = 8
    money: int = 8
    mass: int = 10

    @staticmethod
    def of(cells: int) -> Columns:
        """The widths for rows of so many cells; the note gives way first, then the name."""
        rest = max(cells - MARK_CELLS - 1 - 8 - 8 - 10 - 2, 0)
        note = min(max(rest - 28, 0), 21) if rest < 58 else min(rest - 34, 34)
        return Columns(name=max(rest - note, 4), note=note)

    def row(self, mark: str, ink: Ink, words: RowWords, item: Item, more: bool = False) -> Line:
        """A row of the walk; with ``more`` its end can be clicked for one more or one fewer."""
        bits = [
            Bit(f" {mark} ", ink),
            Bit(left(words.state, self.state), ink),
            Bit(left(words.name, self.name), Ink.PLAIN),
            Bit(right(words.money, self.money) + right(words.mass, self.mass) + "  "),
        ]
        if more and self.note > 8:
            bits += [Bit(left(words.note, self.note - 4)), Bit("+", hot=Act.MORE), Bit(" "), Bit("-", hot=Act.LESS)]
        elif self.note:
            bits.append(Bit(cut(words.note, self.note)))
        return Line(tuple(bits), item)
