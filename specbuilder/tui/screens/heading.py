"""The lines over the list of jobs, and the hints under every page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specbuilder.tui.ink import Ink
from specbuilder.tui.keys import WALKED, Act, KeyLine, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, width
from specbuilder.wording.forms import form_title
from specbuilder.wording.hints import digits_begin, keep_not_taken, letters_begin
from specbuilder.wording.trial_hints import keep_it, to_the_job

from .jobs import heads

if TYPE_CHECKING:
    from specbuilder.tui.counter import Counter

    from .page import Page

GAP = "  "
_CHANGES = frozenset({Act.ENTER, Act.LESS, Act.USUAL, Act.UNDO, Act.FINISH, Act.ACCEPT, Act.WHAT_IF, Act.HAND_OVER})
"""Not offered on what is only looked at."""
_GOES_ON = frozenset({Act.NEXT, Act.NEW, Act.VARIANT})
"""What one key means on one page each."""


def jobs_heading(counter: Counter, cells: int) -> list[Line]:
    """The name of the list, and of the firm once it is known; over jobs the names of the columns."""
    firm = counter.catalogue.firm if counter.opening is not None else None
    title = form_title("jobs") if firm is None else f"{form_title('jobs')}   {firm.name}, {firm.town}"
    columns = heads(counter.main_cells) if counter.jobs.rows and not counter.sides else EMPTY
    return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD)), columns]


def hints(page: Page, cells: int) -> Line:
    """As many hints as fit for the line under the cursor; always help, the way back from a page, and what goes on.

    One key means a new job on the list of jobs, a new variant side by side and the next open thing elsewhere: what it
    means here is said in every window.
    """
    told = _typing(page) if page.entry is not None and not page.searches else _told(page)
    last = [hint for hint in told if hint.hot in (Act.KEYS, Act.ACTIONS)]
    rest = [hint for hint in told if hint not in last]
    back = {Act.BACK} if page.where not in WALKED and page.where is not Where.JOBS else set()
    kept = [hint for hint in rest if hint.hot in back | _GOES_ON] + last[:1]
    bits, room = list[Bit](), cells - 1 - sum(width(hint.text) + len(GAP) for hint in kept)
    for hint in (*rest, *last[1:]):
        if hint in kept:
            bits += [hint, Bit(GAP)]
        elif width(hint.text) + len(GAP) <= room:
            room -= width(hint.text) + len(GAP)
            bits += [hint, Bit(GAP)]
    return Line((Bit(" "), *bits, *last[:1]))


def _typing(page: Page) -> list[Bit]:
    return [Bit(f"Enter {page.typing_hint()}", hot=Act.ENTER), Bit(f"Esc {keep_not_taken()}", hot=Act.BACK)]


def _told(page: Page) -> list[Bit]:
    begins = page.takes_text() and page.entry is None
    text = begins or page.entry is not None
    read_only = page.where in WALKED and _is_read_only(page)
    digits = (digits_begin() if page.letters() else letters_begin()) if begins else page.digit_hint()
    told = [Bit(digits)] if digits and not read_only else []
    for entry in page.host.keyboard.hints_of(page.where, text):
        if read_only and entry.act in _CHANGES:
            continue
        words = page.hint_of(entry.act)
        if words is None:
            words = _in_trial(page, entry)
        if words:
            keys = entry.shown.split()
            key = next((key for key in keys if len(key) > 1), keys[0]) if text else keys[0]
            if entry.act is Act.AFTER and page.where in WALKED:
                key = _both_ways(page, key)
            told.append(Bit(f"{key} {words}", hot=entry.act))
    return told


def _is_read_only(page: Page) -> bool:
    """What another counter has, or what is looked at as it was."""
    desk = page.host.deeds.desk
    return desk.read_only or desk.looked_at is not None


def _both_ways(page: Page, key: str) -> str:
    """The key of the step before stands with that of the step after."""
    before = next((e.shown.split()[0] for e in page.host.keyboard.lines_of(page.where) if e.act is Act.BEFORE), "")
    return f"{before} {key}".strip()


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
