"""The lines over the list of jobs, and the hints under every page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specbuilder.tui.ink import Ink
from specbuilder.tui.keys import Act, KeyLine, Where, hints_of
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, width
from specbuilder.wording.forms import form_title

if TYPE_CHECKING:
    from specbuilder.tui.counter import Counter

GAP = "  "


def jobs_heading(counter: Counter, cells: int) -> list[Line]:
    """The name of the list, and of the firm once it is known."""
    firm = counter.catalogue.firm if counter.opening is not None else None
    title = form_title("jobs") if firm is None else f"{form_title('jobs')}   {firm.name}, {firm.town}"
    return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD)), EMPTY]


def hints(where: Where, typing: bool, cells: int) -> Line:
    """As many hints as fit; help and actions always."""
    entries = list(hints_of(where, typing))
    last = [entry for entry in entries if entry.act in (Act.KEYS, Act.ACTIONS)]
    rest = [entry for entry in entries if entry not in last]
    bits, room = list[Bit](), cells - 1 - sum(width(_hint(e)) + len(GAP) for e in last[:1])
    for entry in (*rest, *last[1:]):
        if width(_hint(entry)) + len(GAP) <= room:
            room -= width(_hint(entry)) + len(GAP)
            bits += [Bit(_hint(entry), hot=entry.act), Bit(GAP)]
    bits += [Bit(_hint(entry), hot=entry.act) for entry in last[:1]]
    return Line((Bit(" "), *bits))


def _hint(entry: KeyLine) -> str:
    return f"{entry.shown.split()[0]} {entry.hint}"


def rule(cells: int, mark: str) -> Line:
    """A line across."""
    return line(mark * cells)
