"""Where the cells of a row stand in so many columns."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from specbuilder.wording.rows import RowWords

from .ink import Ink
from .items import Item
from .keys import Act
from .line import Bit, Line, cut, left, right, width

MARK_CELLS = 2
"""One for the cursor, one for the mark."""
NOTE, LONGEST_NAME = 19, 50
"""The note has so many cells at most, the name the rest; a longer name than that gives its cells back to the note."""
LEAST_NAMED = 40
"""With less room for name and note there is no note: the sentence below the list says all of it."""
STATE, GAP = 9, 2
"""Cells of the word of a state, and the blanks before a note."""
MORE_LESS = 4
"""Cells of the two signs behind a note that are clicked for one more and one fewer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A row of the walk before anybody knows where its cells stand.

    With ``more`` its end can be clicked for one more or one fewer, with ``asks`` its state for why it is so.
    """

    mark: str
    ink: Ink
    words: RowWords
    item: Item
    more: bool = False
    asks: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """Widths of an option row's cells: mark, state word, name, money, mass, note."""

    name: int
    note: int
    money: int = 8
    mass: int = 10

    @staticmethod
    def of(cells: int, rows: Iterable[Row] = ()) -> Columns:
        """The widths for rows of so many cells: the same for every row of a page, so that its figures stand in line.

        Figures and notes take what the longest of them needs, names the rest.
        """
        words = [row.words for row in rows]
        money = max((width(each.money) for each in words), default=7)
        mass = 2 + max((width(each.mass) for each in words), default=8)
        rest = max(cells - MARK_CELLS - 1 - STATE - money - mass - GAP, 0)
        if rest < LEAST_NAMED:
            return Columns(name=max(rest, 4), note=0, money=money, mass=mass)
        note = min(NOTE, 1 + max((_note_width(row) for row in rows), default=NOTE))
        longest = 1 + max((width(each.name) for each in words), default=LONGEST_NAME)
        name = min(rest - note, longest, LONGEST_NAME)
        return Columns(name=name, note=rest - name, money=money, mass=mass)

    @property
    def note_cells(self) -> int:
        """What a note may take: a cell stays free before the edge."""
        return max(self.note - 1, 0)

    def row(self, row: Row) -> Line:
        """The line of a row."""
        words = row.words
        bits = [
            Bit(f" {row.mark} ", row.ink),
            Bit(left(words.state, STATE), row.ink, Act.WHY if row.asks else None),
            Bit(left(cut(words.name, self.name - 1), self.name), Ink.PLAIN),
            Bit(right(words.money, self.money) + right(words.mass, self.mass) + " " * GAP),
        ]
        if row.more and self.note > MORE_LESS:
            bits += [
                Bit(left(words.note, self.note_cells - MORE_LESS) + " "),
                Bit("+", hot=Act.MORE),
                Bit(" "),
                Bit("-", hot=Act.LESS),
            ]
        elif self.note:
            bits.append(Bit(cut(words.note, self.note_cells)))
        return Line(tuple(bits), row.item)


def drawn(cells: int, rows: Callable[[int], Iterable[Row]]) -> Mapping[Item, Line]:
    """The rows of a page as lines; ``rows`` makes them for notes of so many cells, as wide as they turn out to be."""
    columns = Columns.of(cells, rows(NOTE - 1))
    return {row.item: columns.row(row) for row in rows(columns.note_cells)}


def _note_width(row: Row) -> int:
    return width(row.words.note) + (MORE_LESS if row.more else 0)
