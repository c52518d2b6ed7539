"""What a paper is made of. A sheet makes these, every format sets them, and there is nothing else on a paper.

Texts are plain: no markup, no line ends but where said. A format shows every character or a sign in its place.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias


class Weight(StrEnum):
    """How much a paragraph calls."""

    PLAIN = "plain"
    STRONG = "strong"
    """A line that must not be missed."""
    CAUTION = "caution"
    """A caution: boxed, with a sign and the word in front."""
    SMALL = "small"
    """Sources and notes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """Level 1 begins a part of the paper, 2 a section, 3 a group. It never stands alone at the foot of a page."""

    text: str
    level: int = 2
    new_page: bool = False
    """Begins a new page in formats that have pages."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    """Running text."""

    text: str
    weight: Weight = Weight.PLAIN


@dataclass(frozen=True, slots=True, kw_only=True)
class Big:
    """A figure to be read from afar, with what it is."""

    label: str
    figure: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """Names with what is so; an empty value is a blank to write in."""

    rows: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Items:
    """A list; with ``boxes`` each line has a box to tick."""

    rows: tuple[str, ...]
    boxes: bool = False
    numbered: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of a table."""

    head: str
    share: float = 1
    """Of the width, beside the other columns."""
    right: bool = False
    """Figures stand right."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Rows under heads; the heads are repeated on every page. An empty cell of a column to fill in is a blank line."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    strong: frozenset[int] = frozenset()
    """Rows set strong (sums, what comes last)."""
    blank: frozenset[int] = frozenset()
    """Columns to be filled in by hand: empty cells get a line to write on."""
    empty: str = "None"
    """Stands in place of a table without rows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Signatures:
    """Lines to sign on: one for each role, with date."""

    roles: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Node:
    """A thing in a one-line diagram and what hangs on it."""

    title: str
    note: str = ""
    """Second line, small: section, fuse, load."""
    wire: str = ""
    """What stands at the line that leads to it from above: cable and fuse."""
    below: tuple[Node, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagram:
    """A one-line diagram: trees from left to right, sources first."""

    roots: tuple[Node, ...]
    alt: str
    """What it shows, in a sentence, for whoever cannot see it."""


Block: TypeAlias = Heading | Paragraph | Big | Facts | Items | Table | Signatures | Diagram


@dataclass(frozen=True, slots=True, kw_only=True)
class Running:
    """What stands on every page: nobody holds a page whose job, revision and state he cannot tell."""

    firm: str
    job: str
    """``0147, the Saturday family`` or, for a paper without names, ``0147``."""
    revision: str
    """``revision 2, replaces revision 1``."""
    state: str
    """``ordered 18 April 2031``."""
    banner: str = ""
    """``NOT TO BE BUILT: this is a draft``; empty: none. In capitals, strong, on every page."""
    foot: str = ""
    """Planning figures, terms, checksum: one or two lines."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """One paper, ready to be set."""

    name: str
    """For the file: small letters, digits and hyphens."""
    title: str
    running: Running
    blocks: tuple[Block, ...]
