"""The lines that never move: job, glance, steps, and at the bottom the last thing said and the hints."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specbuilder.model.kinds import STEPS, Step
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnStep
from specbuilder.tui.keys import Act, KeyLine, Where, hints_of
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, width
from specbuilder.wording.forms import form_title
from specbuilder.wording.glance import glance, head
from specbuilder.wording.states import step_tab, step_title

from .page import Host

if TYPE_CHECKING:
    from specbuilder.tui.counter import Counter

GAP = "  "


def heading(host: Host, step: Step, cells: int, told: str) -> list[Line]:
    """Job, glance, steps and the question of the step."""
    catalogue, report = host.catalogue, host.report
    return [
        line(" ", cut(head(catalogue, report, cells - 2, told), cells - 2)),
        line(" ", Bit(cut(glance(catalogue, report, cells - 2), cells - 2), Ink.HEAD, Act.OPEN_THINGS)),
        steps_line(host, step, cells),
        line(" ", Bit(cut(step_title(step), cells - 2), Ink.HEAD)),
    ]


def jobs_heading(counter: Counter, cells: int) -> list[Line]:
    """The name of the list, and of the firm once it is known."""
    firm = counter.catalogue.firm if counter.opening is not None else None
    title = form_title("jobs") if firm is None else f"{form_title('jobs')}   {firm.name}, {firm.town}"
    return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD)), EMPTY, EMPTY, EMPTY]


def steps_line(host: Host, here: Step, cells: int) -> Line:
    """Every step with its counts; the current one in capitals. Can be clicked."""
    tabs = [step_tab(host.report.steps[step]) for step in STEPS]
    room = cells - 1 - sum(width(tab) for tab in tabs)
    gap = " " * max(min(room // len(tabs), 5), 1)
    bits = [Bit(" ")]
    for step, tab in zip(STEPS, tabs, strict=True):
        current = step is here
        bits += [Bit(tab.upper() if current else tab, Ink.HERE if current else Ink.PLAIN, OnStep(step)), Bit(gap)]
    return Line(tuple(bits))


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
