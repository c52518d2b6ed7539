"""Lines of text as values: what stands in them, in which ink, and what a press or a click on them means.

Every piece of text is cleaned here, once, so nothing from a catalogue or a customer reaches the terminal as a command.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from rich.cells import cell_len, set_cell_size

from specbuilder.wording.plain import whole_words

from .ink import Ink
from .items import Item
from .keys import Act

CUT = ".."
"""Ends a text that had to be cut."""

_SPACES = (9, 10, 13)
_UNSEEN = (
    *(0xAD, 0x61C, 0x180E, 0xFEFF),
    *(*range(0x200B, 0x2010), *range(0x2028, 0x202F), *range(0x2060, 0x2070), *range(0xFFF9, 0xFFFC)),
    *(*range(0xD800, 0xE000), *range(0x1D173, 0x1D17B), *range(0xE0000, 0xE0080)),
)
_TABLE: dict[int, str] = {
    **dict.fromkeys((*range(32), *range(127, 160), *_UNSEEN), "�"),
    **dict.fromkeys(_SPACES, " "),
}
_LONGEST = 2000
"""No line on any window needs more; a text of any length costs the same."""


def clean(text: str) -> str:
    """The text on one line, without control, bidirectional and unseen characters."""
    if len(text) > _LONGEST:
        text = text[:_LONGEST]
    return text if text.isascii() and text.isprintable() else text.translate(_TABLE)


@dataclass(frozen=True, slots=True)
class Bit:
    """A piece of a line. A click on it means ``hot``, if it has one."""

    text: str
    ink: Ink = Ink.PLAIN
    hot: Item | Act | None = None

    def __post_init__(self) -> None:
        object.__setattr__(self, "text", clean(self.text))


@dataclass(frozen=True, slots=True)
class Line:
    """One line. The cursor may stand on it when it has an ``item``."""

    bits: tuple[Bit, ...] = ()
    item: Item | None = None

    @property
    def text(self) -> str:
        """All that is written in it."""
        return "".join(bit.text for bit in self.bits)


EMPTY = Line()


def line(*bits: Bit | str, item: Item | None = None) -> Line:
    """A line of bits and plain text."""
    return Line(tuple(Bit(b) if isinstance(b, str) else b for b in bits), item)


def width(text: str) -> int:
    """Terminal cells the text takes."""
    return len(text) if text.isascii() else cell_len(text)


def cut(text: str, cells: int) -> str:
    """The text in at most so many cells, ending in two dots where it was cut: behind a word if it can be."""
    text = clean(text)
    if width(text) <= cells:
        return text
    if cells <= len(CUT):
        return set_cell_size(text, max(cells, 0))
    return whole_words(text, len(set_cell_size(text, cells - len(CUT)).rstrip())) + CUT


def left(text: str, cells: int) -> str:
    """Cut and filled to exactly so many cells, text first."""
    text = cut(text, cells)
    return text + " " * (cells - width(text))


def right(text: str, cells: int) -> str:
    """Cut and filled to exactly so many cells, text last."""
    text = cut(text, cells)
    return " " * (cells - width(text)) + text


def leaning(first: int, needs: int, beside: int, both: int) -> int:
    """What the first of two cells of a line takes of so much for both.

    Its own column, unless one of them needs more and the other can spare it. Where there is not enough for both it is
    the other that is cut, if most of it stays.
    """
    if needs + beside > both and (both - needs) * 4 >= beside * 3:
        return needs
    if needs > first:
        return max(first, min(needs, both - beside))
    return min(first, max(needs, both - beside))


def wrapped(text: str, cells: int, at_most: int | None = None) -> list[str]:
    """The text broken between words into lines of at most so many cells; a longer word is cut into pieces."""
    lines: list[str] = []
    here = ""
    for word in _pieces(clean(text).split(), max(cells, 1)):
        joined = f"{here} {word}" if here else word
        if width(joined) <= cells:
            here = joined
        else:
            lines.append(here)
            here = word
    if here:
        lines.append(here)
    if at_most is not None and len(lines) > at_most:
        lines = [*lines[: at_most - 1], cut(" ".join(lines[at_most - 1 :]), cells)] if at_most > 0 else []
    return lines


def parted(text: str, cells: int) -> list[str]:
    """Parts that stand three blanks apart: on one line where they fit, else each on its own lines."""
    if width(text) <= cells:
        return [clean(text)] if text else []
    return [row for part in text.split("   ") for row in wrapped(part, cells)]


def _pieces(words: Iterable[str], cells: int) -> Iterable[str]:
    for word in words:
        while width(word) > cells:
            head = set_cell_size(word, cells).rstrip()
            yield head
            word = word[max(len(head), 1) :]
        yield word


def packed(pieces: Iterable[Bit], cells: int, gap: str = "  ") -> list[Line]:
    """Pieces side by side, none of them broken, in as many lines as they take."""
    rows: list[list[Bit]] = [[]]
    room = cells
    for piece in pieces:
        if rows[-1] and width(piece.text) + len(gap) > room:
            rows.append([])
            room = cells
        room -= width(piece.text) + len(gap)
        rows[-1] += [piece, Bit(gap)]
    return [within(Line(tuple(row)), cells) for row in rows if row]


def within(line_: Line, cells: int) -> Line:
    """The line in at most so many cells; where it was cut it ends in two dots."""
    if width(line_.text) <= cells:
        return line_
    left_over = len(cut(line_.text, cells).removesuffix(CUT))
    bits = list[Bit]()
    for bit in line_.bits:
        bits.append(Bit(bit.text[:left_over], bit.ink, bit.hot))
        left_over -= len(bit.text)
        if left_over <= 0:
            break
    return Line((*bits, Bit(cut(CUT, cells), bits[-1].ink)), line_.item)


def fitted(lines: Sequence[Line], rows: int, cells: int) -> list[Line]:
    """At most so many lines; the last one says by two dots that there is more."""
    if len(lines) <= rows or rows <= 0:
        return list(lines[: max(rows, 0)])
    last = lines[rows - 1]
    text = cut(last.text, cells - len(CUT) - 1)
    more = text if text.endswith(CUT) else f"{text.rstrip()} {CUT}"
    return [*lines[: rows - 1], Line((Bit(more),), last.item)]
