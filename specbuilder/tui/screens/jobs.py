"""The list of jobs, and notices about one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnJob, OnText
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, left, line, width, wrapped
from specbuilder.wording.guide import new_here
from specbuilder.wording.jobs import JOB_HEADS, leave_hint, no_job_found, no_jobs, others_hidden
from specbuilder.wording.last_line import nothing_found

from .page import Host, Page

NUMBER_CELLS, STATE_CELLS, CHANGED_CELLS = 7, 12, 17
DAY_CELLS = 11
"""In a narrow window the day of the last change has no hour, and the van is left out: the name needs the room."""
WITH_VAN = 72
"""Columns from which the van is named."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JobCells:
    """The cells of one line of the list."""

    number: str
    name: str
    state: str
    van: str
    changed: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JobRow:
    """A job of the list: its number, and what stands in its file once that was read."""

    name: str
    cells: JobCells | None = None
    notice: str = ""
    """Why it cannot be read, or who has it."""


class JobsPage(Page):
    """Every job of the folder. After work on one of them only that one is shown until the cursor is moved.

    The customer of that job may be looking on; a key that moves shows the others and moves as it always does.
    """

    where: ClassVar[Where] = Where.JOBS

    def __init__(self, host: Host, rows: Sequence[JobRow]) -> None:
        super().__init__(host)
        self.rows = tuple(rows)
        self.alone: OnJob | None = None
        self._made: dict[str, tuple[JobRow, int, list[Line]]] = {}
        """The lines of each job as last made: there may be thousands, and every key lays the page."""
        self.wanted = ""
        self._cells = 78

    def lines(self, cells: int) -> Sequence[Line]:
        """One line a job, one more for a notice."""
        self._cells = cells
        rows = [row for row in self.rows if self.alone in (None, OnJob(row.name))]
        wanted = self.wanted.casefold().split()
        shown = [row for row in rows if not wanted or all(word in _said_of(row) for word in wanted)]
        result = [part for row in shown for part in self._lines_of(row, cells)]
        if self.alone is not None and result and len(self.rows) > 1:
            result += [EMPTY, line("   ", Bit(cut(others_hidden(len(self.rows)), cells - 4), hot=Act.DOWN))]
        empty = (nothing_found(),) if self.rows else (no_jobs(), new_here())
        return result or [line(f"   {part}") for text in empty for part in wrapped(text, cells - 4)]

    def _lines_of(self, row: JobRow, cells: int) -> list[Line]:
        made = self._made.get(row.name)
        if made is None or made[0] is not row or made[1] != cells:
            made = self._made[row.name] = row, cells, [_job(row, cells), *_notice(row, cells)]
        return made[2]

    def move(self, by: int) -> None:
        """The others are shown again, and the cursor goes where it would have gone among them."""
        self._show_all()
        super().move(by)

    def move_rows(self, by: int) -> None:
        """The same by pages."""
        self._show_all()
        super().move_rows(by)

    def _show_all(self) -> None:
        if self.alone is not None:
            self.alone = None
            self.lay(self._cells)

    def hint_of(self, act: Act) -> str | None:
        """Without a job there is none to open or to look for."""
        return "" if not self.rows and act in (Act.ENTER, Act.PAPERS, Act.EARLIER, Act.FIND) else None

    def act(self, act: Act) -> bool:
        """Escape stays; find narrows the list."""
        match act:
            case Act.BACK:
                self.wanted, self.alone = "", None
                self.host.say(leave_hint())
            case Act.FIND:
                self.host.show(JobFindPage(self.host, self))
            case _:
                return False
        return True


class JobFindPage(Page):
    """Narrows the list of jobs while letters are typed."""

    where: ClassVar[Where] = Where.FIND
    searches: ClassVar[bool] = True
    tall: ClassVar[bool] = True

    def __init__(self, host: Host, jobs: JobsPage) -> None:
        super().__init__(host)
        self.jobs = jobs
        jobs.alone = None
        self.start_typing()

    def head(self, cells: int) -> Sequence[Line]:
        """The letters."""
        typed = self.entry.bits(cells - 4) if self.entry is not None else ()
        return [line(" / ", *typed)]

    def lines(self, cells: int) -> Sequence[Line]:
        """The jobs that have them."""
        rows = [row for row in self.jobs.lines(cells) if isinstance(row.item, OnJob)]
        return rows or [line(f"   {no_job_found()}")]

    def hint_of(self, act: Act) -> str | None:
        """Enter only where a job is found; there is no customer to turn the screen to."""
        return "" if act is Act.CUSTOMER or (act is Act.ENTER and self.at is None) else None

    def stop_typing(self) -> None:
        """Closed by Escape: every job is listed again."""
        super().stop_typing()
        self.jobs.wanted = ""

    def searched(self) -> None:
        """Look again."""
        self.jobs.wanted = self.entry.text if self.entry is not None else ""
        self.at = None

    def enter(self) -> None:
        """Put the cursor of the list there."""
        self.jobs.at = self.at
        self.jobs.wanted = ""
        self.host.close()


class NoticePage(Page):
    """Sentences instead of a screen: faults of the rules, a job that cannot be read."""

    where: ClassVar[Where] = Where.NOTICE

    def __init__(self, host: Host, sentences: Sequence[str], stays: bool = False) -> None:
        super().__init__(host)
        self.sentences = tuple(sentences)
        self.stays = stays

    def lines(self, cells: int) -> Sequence[Line]:
        """The sentences; the first as a heading."""
        result: list[Line] = []
        for number, sentence in enumerate(self.sentences):
            ink = Ink.HEAD if number == 0 else Ink.PLAIN
            parts = wrapped(sentence, cells - 3)
            result += [line(" ", Bit(part, ink), item=OnText(len(result) + i)) for i, part in enumerate(parts)]
        return result

    def enter(self) -> None:
        """Go on, where there is something to go on to."""
        if not self.stays:
            self.host.close()


def _job(row: JobRow, cells: int) -> Line:
    item: Item = OnJob(row.name)
    if row.cells is None:
        return line(f"   {cut(row.name, cells - 4)}", item=item)
    words, (name, van, changed) = row.cells, _widths(cells)
    return line(
        f"   {left(_indented(words.number), NUMBER_CELLS)}",
        Bit(left(words.name, name - 2) + "  ", Ink.HEAD),
        left(words.state, STATE_CELLS),
        left(_fitting(words.van, van - 1), van) if van else "",
        words.changed[:changed].rstrip(),
        item=item,
    )


def heads(cells: int) -> Line:
    """The names of the columns."""
    number, customer, state, base_van, last_change = JOB_HEADS
    name, van, changed = _widths(cells)
    start = left(number, NUMBER_CELLS), left(customer, name), left(state, STATE_CELLS)
    return line("   ", *start, left(base_van, van) if van else "", cut(last_change, changed + 1))


def _widths(cells: int) -> tuple[int, int, int]:
    """Columns of the name, the van and the last change."""
    if cells < WITH_VAN:
        return max(cells - 3 - NUMBER_CELLS - STATE_CELLS - DAY_CELLS, 8), 0, DAY_CELLS - 1
    rest = cells - 3 - NUMBER_CELLS - STATE_CELLS - CHANGED_CELLS
    return rest * 3 // 5, rest - rest * 3 // 5, CHANGED_CELLS - 1


def _fitting(van: str, cells: int) -> str:
    """The van, or where there is no room for all of its name what stands before the first comma."""
    return van if width(van) <= cells else cut(van.partition(",")[0], cells)


def _said_of(row: JobRow) -> str:
    """What a job is found by: all of its words, also those for which the window has no room."""
    cells = row.cells
    told = (cells.number, cells.name, cells.state, cells.van, cells.changed) if cells is not None else (row.name,)
    return " ".join(told).casefold()


def _indented(number: str) -> str:
    """A variant stands under its job, a little to the right."""
    return number if number.isdecimal() else f" {number}"


def _notice(row: JobRow, cells: int) -> list[Line]:
    return [line(" " * (3 + NUMBER_CELLS), Bit(cut(row.notice, cells - 10), Ink.DOUBT))] if row.notice else []
