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
NOTE, LONGEST_NAME = 18, 50
"""The note has so many cells, the name the rest; a longer name than that gives its cells back to the note."""
LEAST_NAMED = 40
"""With less room for name and note there is no note: the sentence below the list says all of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """Widths of an option row's cells: mark, state word, name, money, mass, note."""

    name: int
    note: int
    state: int = 9
    money: int = 8
    mass: int = 10

    @staticmethod
    def of(cells: int) -> Columns:
        """The widths for rows of so many cells: the same for every row of a page, so that its figures stand in line."""
        rest = max(cells - MARK_CELLS - 1 - 9 - 8 - 10 - 2, 0)
        if rest < LEAST_NAMED:
            return Columns(name=max(rest, 4), note=0)
        name = min(rest - NOTE, LONGEST_NAME)
        return Columns(name=name, note=rest - name)

    @property
    def note_cells(self) -> int:
        """What a note may take: a cell stays free before the edge."""
        return max(self.note - 1, 0)

    def row(self, mark: str, ink: Ink, words: RowWords, item: Item, more: bool = False, asks: bool = False) -> Line:
        """A row of the walk.

        With ``more`` its end can be clicked for one more or one fewer, with ``asks`` its state for why it is so.
        """
        bits = [
            Bit(f" {mark} ", ink),
            Bit(left(words.state, self.state), ink, Act.WHY if asks else None),
            Bit(left(cut(words.name, self.name - 1), self.name), Ink.PLAIN),
            Bit(right(words.money, self.money) + right(words.mass, self.mass) + "  "),
        ]
        if more and self.note > 8:
            bits += [Bit(left(words.note, self.note - 5)), Bit("+", hot=Act.MORE), Bit(" "), Bit("-", hot=Act.LESS)]
        elif self.note:
            bits.append(Bit(cut(words.note, self.note_cells)))
        return Line(tuple(bits), item)
