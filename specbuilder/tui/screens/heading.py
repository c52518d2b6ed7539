"""The lines over the list of jobs, and the hints under every page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specbuilder.tui.ink import Ink
from specbuilder.tui.keys import WALKED, Act, KeyLine
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, width
from specbuilder.wording.forms import form_title
from specbuilder.wording.hints import keep_not_taken, letters_begin
from specbuilder.wording.trial_hints import keep_it, to_the_job

if TYPE_CHECKING:
    from specbuilder.tui.counter import Counter

    from .page import Page

GAP = "  "


def jobs_heading(counter: Counter, cells: int) -> list[Line]:
    """The name of the list, and of the firm once it is known."""
    firm = counter.catalogue.firm if counter.opening is not None else None
    title = form_title("jobs") if firm is None else f"{form_title('jobs')}   {firm.name}, {firm.town}"
    return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD)), EMPTY]


def hints(page: Page, cells: int) -> Line:
    """As many hints as fit for the line under the cursor; help always."""
    told = _typing(page) if page.entry is not None and not page.searches else _told(page)
    last = [hint for hint in told if hint.hot in (Act.KEYS, Act.ACTIONS)]
    rest = [hint for hint in told if hint not in last]
    bits, room = list[Bit](), cells - 1 - sum(width(hint.text) + len(GAP) for hint in last[:1])
    for hint in (*rest, *last[1:]):
        if width(hint.text) + len(GAP) <= room:
            room -= width(hint.text) + len(GAP)
            bits += [hint, Bit(GAP)]
    return Line((Bit(" "), *bits, *last[:1]))


def _typing(page: Page) -> list[Bit]:
    return [Bit(f"Enter {page.typing_hint()}", hot=Act.ENTER), Bit(f"Esc {keep_not_taken()}", hot=Act.BACK)]


def _told(page: Page) -> list[Bit]:
    text = page.takes_text() and page.entry is None
    digits = letters_begin() if text else page.digit_hint()
    told = [Bit(digits)] if digits else []
    for entry in page.host.keyboard.hints_of(page.where, page.entry is not None or text):
        words = page.hint_of(entry.act)
        if words is None:
            words = _in_trial(page, entry)
        if words:
            keys = entry.shown.split()
            key = next((key for key in keys if len(key) > 1), keys[0]) if text else keys[0]
            told.append(Bit(f"{key} {words}", hot=entry.act))
    return told


def _in_trial(page: Page, entry: KeyLine) -> str:
    """Some keys say something else while a what-if is on, and *keep* is said only then."""
    trying = page.host.trying
    match entry.act:
        case Act.KEEP:
            return keep_it() if trying else ""
        case Act.BACK if trying and page.where in WALKED:
            return to_the_job()
        case Act.WHAT_IF:
            return "" if trying else entry.hint
        case _:
            return entry.hint


def rule(cells: int, mark: str) -> Line:
    """A line across."""
    return line(mark * cells)
