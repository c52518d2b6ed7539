"""The list of jobs, and notices about one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnJob, OnText
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, left, line, wrapped
from specbuilder.wording.guide import new_here
from specbuilder.wording.jobs import leave_hint, no_job_found, no_jobs, others_hidden
from specbuilder.wording.last_line import nothing_found

from .page import Host, Page

NUMBER_CELLS = 7
STATE_CELLS = 12
CHANGED_CELLS = 17


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
    """Every job of the folder. After work on one of them only that one is shown until Down is pressed."""

    where: ClassVar[Where] = Where.JOBS

    def __init__(self, host: Host, rows: Sequence[JobRow]) -> None:
        super().__init__(host)
        self.rows = tuple(rows)
        self.alone: OnJob | None = None
        self.wanted = ""

    def lines(self, cells: int) -> Sequence[Line]:
        """One line a job, one more for a notice."""
        rows = [row for row in self.rows if self.alone in (None, OnJob(row.name))]
        wanted = self.wanted.casefold().split()
        lines = [(row, _job(row, cells)) for row in rows]
        shown = [(row, text) for row, text in lines if all(w in text.text.casefold() for w in wanted)]
        result = [part for row, text in shown for part in (text, *_notice(row, cells))]
        if self.alone is not None and result and len(self.rows) > 1:
            result += [EMPTY, line("   ", Bit(cut(others_hidden(len(self.rows)), cells - 4), hot=Act.DOWN))]
        empty = (nothing_found(),) if self.rows else (no_jobs(), new_here())
        return result or [line(f"   {part}") for text in empty for part in wrapped(text, cells - 4)]

    def move(self, by: int) -> None:
        """Down shows the others again."""
        if self.alone is not None:
            self.alone = None
            return
        super().move(by)

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
    words, rest = row.cells, cells - 3 - NUMBER_CELLS - STATE_CELLS - CHANGED_CELLS
    name = max(rest * 3 // 5, 8)
    return line(
        f"   {left(_indented(words.number), NUMBER_CELLS)}",
        Bit(left(words.name, name - 2) + "  ", Ink.HEAD),
        left(words.state, STATE_CELLS),
        left(cut(words.van, max(rest - name - 1, 0)), max(rest - name, 0)),
        cut(words.changed, CHANGED_CELLS),
        item=item,
    )


def _indented(number: str) -> str:
    """A variant stands under its job, a little to the right."""
    return number if number.isdecimal() else f" {number}"


def _notice(row: JobRow, cells: int) -> list[Line]:
    return [line(" " * (3 + NUMBER_CELLS), Bit(cut(row.notice, cells - 10), Ink.DOUBT))] if row.notice else []
