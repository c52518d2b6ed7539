"""Ways out on a page: searched beside it, shown as they come, taken by a digit."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from specbuilder.model.edits import Edit, Take, Together
from specbuilder.model.ids import BriefKey
from specbuilder.model.ways import ClearFindings, Goal, LetIn, RankBy, WayOut, WaysOut
from specbuilder.session.asked_first import asked_first
from specbuilder.tui.errands import Stop
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnText, OnWay
from specbuilder.tui.line import EMPTY, Bit, Line, left, line, right, wrapped
from specbuilder.tui.searches import MOST_WAYS
from specbuilder.wording.differences import COLUMNS_WIDTH, difference_cells, difference_heads
from specbuilder.wording.ways import (
    breaks_legend,
    its_sheet,
    looking,
    no_such_way,
    nothing_changed_yet,
    way_taken,
    ways_closing,
)
from specbuilder.wording.what_if import not_seen_yet, way_short, way_told, ways_title

from .page import Host
from .question import Question

SIDE_BY_SIDE = 66
"""From this width on the four figures stand behind the name; below it under the name."""
FACT_ROWS, FACT_ROWS_NARROW = 3, 6
"""Lines for what the way under the cursor clears, brings and loses."""
CLOSING = OnText(-1)
OWN_PARTS = BriefKey("own_parts")
"""The state of the sheets of parts that the customer brings."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Subject:
    goal: Goal
    rank_by: RankBy


class WaysList:
    """The ways out of one page."""

    def __init__(self, host: Host) -> None:
        self.host = host
        self.rank_by = RankBy.PRICE
        self.goal: Goal | None = None
        self.question: Question[WaysOut] = Question(host, size=lambda found: len(found.ways))

    # -- searching -------------------------------------------------------------------------------------------------

    def look(self, goal: Goal | None) -> None:
        """Look for ways to this goal, unless that is done already."""
        self.goal = goal
        if goal is None:
            self.question.drop()
            return
        host, rank_by = self.host, self.rank_by
        search, catalogue, spec = host.searches.ways_out, host.catalogue, host.editable.spec

        def work(stop: Stop) -> Iterator[WaysOut]:
            shown: tuple[WayOut, ...] = ()
            for found in search(catalogue, spec, goal, rank_by, stop):
                shown = _appended(shown, found.ways)
                yield replace(found, ways=shown)

        self.question.ask(_Subject(goal=goal, rank_by=rank_by), work)

    def rank_by_next(self) -> None:
        """Rank by the next of price, kg, hours and weeks, and search anew."""
        self.rank_by = self.next_rank

    @property
    def next_rank(self) -> RankBy:
        """What the ways are ranked by after the next press."""
        ranks = tuple(RankBy)
        return ranks[(ranks.index(self.rank_by) + 1) % len(ranks)]

    @property
    def ways(self) -> tuple[WayOut, ...]:
        """The ways found so far, in the order they were found best."""
        return self.question.answer.ways if self.question.answer is not None else ()

    @property
    def searching(self) -> bool:
        """True while more may come."""
        return self.goal is not None and (self.question.answer is None or not self.question.answer.finished)

    # -- taking ----------------------------------------------------------------------------------------------------

    def seen(self, number: int) -> bool:
        """True when this way is there and stood on the screen before the key was pressed."""
        return 0 < number <= len(self.ways) and self.question.seen(number)

    def edit_of(self, number: int) -> tuple[Edit, str] | None:
        """A way as one edit, and what is said once it is done. None, with the reason said: nobody can have read it."""
        if not self.seen(number):
            self.host.say(self._why_not(number))
            return None
        way, now = self.ways[number - 1], self.host.now()
        if isinstance(self.goal, LetIn):
            edits = asked_first(self.host.catalogue, self.host.editable.spec, way.edits, self.goal.option)
            way = replace(way, edits=edits)
        edits = tuple(stamped(edit, now) for edit in way.edits)
        told = way_taken(self.host.catalogue, self.host.editable.spec, way)
        return edits[0] if len(edits) == 1 else Together(edits=edits), told

    def _why_not(self, number: int) -> str:
        if self.searching or 0 < number <= len(self.ways):
            return not_seen_yet()
        found = self.question.answer
        return no_such_way(number, found) if found is not None else not_seen_yet()

    # -- lines -----------------------------------------------------------------------------------------------------

    def height(self, cells: int) -> int:
        """Lines to keep free for three ways, so that nothing above them has to move when they come."""
        head, each = (1, 1) if cells >= SIDE_BY_SIDE else (2, 3)
        return head + MOST_WAYS * each + _fact_rows(cells) + 1

    def lines(self, cells: int, at: Item | None) -> list[Line]:
        """Head, ways, the facts of the way under the cursor, and how far was looked."""
        rows = self._head(cells)
        for number, _ in enumerate(self.ways, 1):
            rows += self._way(number, cells)
        if self.searching:
            rows.append(line("   ", Bit(looking(), Ink.DOUBT), item=OnWay(len(self.ways) + 1)))
            rows += [EMPTY] * (self.height(cells) - len(rows) - 1 - _fact_rows(cells))
        rows += self._facts(cells, at)
        return [*rows, *self._closing(cells)]

    def _head(self, cells: int) -> list[Line]:
        text, heads = ways_title(self.rank_by), difference_heads()
        if cells < SIDE_BY_SIDE:
            return [line(" ", Bit(text, Ink.HEAD)), line(Bit(right(heads, cells - 1), Ink.HEAD))]
        return [line(" ", Bit(left(text, cells - 2 - COLUMNS_WIDTH) + heads, Ink.HEAD))]

    def _way(self, number: int, cells: int) -> list[Line]:
        assert self.goal is not None
        catalogue, spec, way = self.host.catalogue, self.host.editable.spec, self.ways[number - 1]
        mark = self.host.marks.broken if way.breaks else " "
        start = f" {mark}{number} "
        figures = difference_cells(way.difference).columns
        if cells >= SIDE_BY_SIDE:
            room = cells - len(start) - 1 - COLUMNS_WIDTH
            title = way_short(catalogue, spec, self.goal, way, room - 1, self.ways)
            return [line(start, left(title, room), figures, item=OnWay(number))]
        title = way_short(catalogue, spec, self.goal, way, 2 * (cells - len(start) - 4), self.ways)
        first, *rest = wrapped(title, cells - len(start), 2) or [""]
        return [
            line(start, first, item=OnWay(number)),
            *(line("    ", text) for text in rest),
            line(right(figures, cells - 1)),
        ]

    def _facts(self, cells: int, at: Item | None) -> list[Line]:
        """Always as many lines, so that moving the cursor moves nothing else."""
        number = at.number if isinstance(at, OnWay) and at.number <= len(self.ways) else 0
        rows = _fact_rows(cells)
        if not number:
            return [EMPTY] * rows if self.ways or self.searching else []
        assert self.goal is not None
        told = way_told(self.host.catalogue, self.host.editable.spec, self.goal, self.ways[number - 1])
        facts = wrapped(told, cells - 5, rows)
        return [*(line("    ", text) for text in facts), *[EMPTY] * (rows - len(facts))]

    def _closing(self, cells: int) -> list[Line]:
        found = self.question.answer
        told = nothing_changed_yet() if found is None or self.searching else ways_closing(found, MOST_WAYS)
        legend = [breaks_legend(self.host.marks.broken)] if any(way.breaks for way in self.ways) else []
        sheet = [its_sheet()] if self._asks_for_a_sheet() else []
        first, *rest = [part for text in (*legend, told, *sheet) for part in wrapped(text, cells - 2)]
        return [line(f" {first}", item=CLOSING), *(line(f" {text}") for text in rest)]

    def _asks_for_a_sheet(self) -> bool:
        """True where no choice clears it, but what is known of a part of theirs."""
        asked = self.goal.rules if isinstance(self.goal, ClearFindings) else ()
        return any(f.rule in asked and OWN_PARTS in f.keys for f in self.host.report.findings)


def _fact_rows(cells: int) -> int:
    return FACT_ROWS if cells >= SIDE_BY_SIDE else FACT_ROWS_NARROW


def _appended(shown: tuple[WayOut, ...], found: Sequence[WayOut]) -> tuple[WayOut, ...]:
    """What is shown stays where it is, whatever comes; what is new comes after it."""
    return (*shown, *(way for way in found if way not in shown))[:MOST_WAYS]


def stamped(edit: Edit, now: str) -> Edit:
    """The edit with the time it was taken."""
    match edit:
        case Take():
            return replace(edit, at=now)
        case Together(edits=edits):
            return Together(edits=tuple(stamped(one, now) for one in edits))
        case _:
            return edit
