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
LEAST_NOTE = 14


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """Widths of an option row's cells: mark, state word, name, money, mass, note."""

    name: int
    note: int
    state: int = 8
    money: int = 8
    mass: int = 10

    @staticmethod
    def of(cells: int, longest_name: int = 0) -> Columns:
        """The widths for rows of so many cells.

        The name gets what the longest one needs, within bounds; the note has the rest, for the sentence below the list
        says all of it again.
        """
        rest = max(cells - MARK_CELLS - 1 - 8 - 8 - 10 - 2, 0)
        name = min(max(longest_name + 1, rest * 4 // 7), max(rest - LEAST_NOTE, rest * 4 // 7))
        return Columns(name=max(name, 4), note=max(rest - name, 0))

    def row(self, mark: str, ink: Ink, words: RowWords, item: Item, more: bool = False, asks: bool = False) -> Line:
        """A row of the walk.

        With ``more`` its end can be clicked for one more or one fewer, with ``asks`` its state for why it is so.
        """
        bits = [
            Bit(f" {mark} ", ink),
            Bit(left(words.state, self.state), ink, Act.WHY if asks else None),
            Bit(left(words.name, self.name), Ink.PLAIN),
            Bit(right(words.money, self.money) + right(words.mass, self.mass) + "  "),
        ]
        if more and self.note > 8:
            bits += [Bit(left(words.note, self.note - 4)), Bit("+", hot=Act.MORE), Bit(" "), Bit("-", hot=Act.LESS)]
        elif self.note:
            bits.append(Bit(cut(words.note, self.note)))
        return Line(tuple(bits), item)
