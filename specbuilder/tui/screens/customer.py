"""The screen turned round: what the customer may read, and nothing by which a slip of the hand could leave it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from enum import Enum
from typing import ClassVar

from specbuilder.documents.formats import block_lines
from specbuilder.documents.sheets.customer.shown import Shown, shown
from specbuilder.session.papers import case_of
from specbuilder.storage.disk import DiskError
from specbuilder.tui.block_figures import doubled, drawn
from specbuilder.tui.deeds import TROUBLES
from specbuilder.tui.errands import Errand, Stop
from specbuilder.tui.ink import Ink
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, left, line, width, wrapped
from specbuilder.wording import customer_view as words
from specbuilder.wording.dates import day_words
from specbuilder.wording.life import not_current

from .page import Host, Page

PAGES, PRICED = 3, 2
"""How many there are, and which one can show prices."""
MARGIN = "     "
WIDEST_TEXT = 100
"""Columns of a text that is read: longer lines are hard to follow."""
NARROW = 72
"""Below this width the margin goes and what belongs together stands close."""
LABEL_CELLS = 21
GAP = 4
"""So many empty lines at most between what is read from afar."""
LOW = 18
"""In fewer rows the price gives its room to what was told and what is open."""


class Asks(Enum):
    """What waits for a second key."""

    NOTHING = 0
    LEAVE = 1
    COPY = 2


class Size(Enum):
    """How large the price is."""

    LETTERS = 0
    BLOCK = 1
    DOUBLE = 2


def _price(price: str, room: int, size: Size) -> tuple[str, ...]:
    """The price in figures of this size, as far as they fit and there are signs for it; else in letters."""
    block = drawn(price, room if size is Size.BLOCK else room // 2) if size is not Size.LETTERS else ()
    if size is Size.DOUBLE and block:
        return doubled(block)
    return block or drawn(price, room if size is Size.DOUBLE else 0) or (price,)


class CustomerPage(Page):
    """Three pages. Escape, then Enter leads back; every other key stays."""

    where: ClassVar[Where] = Where.CUSTOMER
    full: ClassVar[bool] = True
    shut: ClassVar[bool] = True

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self.page = 1
        self.asks = Asks.NOTHING
        self.priced = False
        self.told = ""
        """What became of the copy that was asked for."""
        self._top = 0
        self._rows: list[Line] = []
        self._shown: tuple[object, Shown] | None = None

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """What it is, in what state, and of which day."""
        deeds = self.host.deeds
        state = words.stands(deeds.state, tried=self.host.trying)
        parts = (words.YOUR_VAN, state, day_words(deeds.paper_day))
        margin = self._margin(cells)
        gap = max(min((cells - len(margin) - sum(map(width, parts)) - 1) // 2, 12), 2)
        return [line(margin, Bit(cut((" " * gap).join(parts), cells - len(margin)), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """As much of the page as there is room for, and below it what the keys do."""
        content = self._content()
        first = self._first(content, cells)
        second = content.priced if self.priced else content.contents
        self._rows = first if self.page == 1 else self._text(second if self.page == PRICED else content.words, cells)
        room = self._room
        self._top = min(self._top, max(len(self._rows) - room, 0))
        seen = self._rows[self._top : self._top + room]
        return [*seen, *[EMPTY] * (room - len(seen)), EMPTY, self._foot(cells)]

    @property
    def _room(self) -> int:
        """Lines above the last two."""
        return max(self.host.rows_high - 2, 1)

    def _content(self) -> Shown:
        stand, day = self.host.deeds.desk.stand, self.host.deeds.paper_day
        key = stand.spec, day
        if self._shown is None or self._shown[0] != key:
            self._shown = key, shown(case_of(stand, day))
        return self._shown[1]

    def _margin(self, cells: int) -> str:
        return MARGIN if cells >= NARROW else MARGIN[:3]

    def _first(self, content: Shown, cells: int) -> list[Line]:
        """Price, who travels and sleeps, weight, height, what works, what was told, what is open."""
        sizes = (self._laid(content, cells, size) for size in (Size.DOUBLE, Size.BLOCK, Size.LETTERS))
        parts = next(parts for parts, fits in sizes if fits)
        spare = self._room - sum(map(len, parts))
        gaps = [spare // len(parts) + (at < spare % len(parts)) if spare > 0 else 0 for at, _ in enumerate(parts)]
        return [row for part, gap in zip(parts, gaps, strict=True) for row in (*[EMPTY] * min(gap, GAP), *part)]

    def _laid(self, content: Shown, cells: int, size: Size) -> tuple[list[list[Line]], bool]:
        """The page with its price that large, and whether the window has room for it.

        Twice the size wants a line between all parts; in a window that is not low the price is in figures anyway.
        """
        parts = [list(part) for part in self._parts(content, cells, size)]
        spare = self._room - sum(map(len, parts))
        fits = {Size.DOUBLE: spare >= len(parts), Size.BLOCK: spare >= 0 or self._room >= LOW, Size.LETTERS: True}
        return parts, fits[size]

    def _parts(self, content: Shown, cells: int, size: Size) -> Iterator[Iterable[Line]]:
        """What stands together, from the top; empty lines go between as far as there are any."""
        margin, marks = self._margin(cells), self.host.marks
        room = cells - len(margin) - 1
        figures = [line(margin, Bit(row, Ink.HEAD)) for row in _price(content.price, room, size)]
        yield [*figures, *(line(margin, text) for text in wrapped(content.note, min(room, WIDEST_TEXT)))]
        yield [line(margin, Bit(cut("      ".join(content.counts), room), Ink.HEAD))]
        for name, text in content.facts:
            yield self._fact(words.label(name), text, cells)
        names = [words.away_line(*each, min(room - LABEL_CELLS, WIDEST_TEXT)) for each in content.away]
        yield [row for at, text in enumerate(names) for row in self._fact("" if at else words.AWAY, text, cells)]
        yield self._fact(words.TOLD, content.told, cells, marks.broken if content.warns else " ")
        yield self._fact(words.OPEN, content.open, cells, marks.doubt if content.open_points else " ")

    def _fact(self, name: str, text: str, cells: int, mark: str = " ") -> Iterator[Line]:
        """A name, and what is so beside it, on as many lines as it takes."""
        margin = self._margin(cells)
        start = f"{margin[:-3]}{mark}  "
        room = cells - len(margin) - LABEL_CELLS - 1
        for number, part in enumerate(wrapped(text, min(room, WIDEST_TEXT))):
            shown_name = name if not number else ""
            yield line(start if not number else margin, left(shown_name, LABEL_CELLS), Bit(part, Ink.HEAD))

    def _text(self, blocks: Sequence[object], cells: int) -> list[Line]:
        margin = self._margin(cells)
        room = min(cells - len(margin) - 1, WIDEST_TEXT)
        rows = block_lines(blocks, room)  # type: ignore[arg-type]
        return [line(margin, Bit(self.host.marks.drawn(row), Ink.PLAIN)) for row in rows]

    def _foot(self, cells: int) -> Line:
        """Which page, and what the keys do; while something waits for a second key, that alone."""
        margin = self._margin(cells)
        asked = {Asks.LEAVE: words.leave_asked(), Asks.COPY: words.copy_asked()}.get(self.asks)
        if asked:
            key, colon, rest = cut(asked, cells - len(margin)).partition(":")
            return line(margin, Bit(key, Ink.HEAD, Act.ENTER), Bit(colon + rest, Ink.HEAD))
        if self.told:
            return line(margin, Bit(cut(self.told, cells - len(margin)), Ink.HEAD))
        ways, room = [self._keys(short=short) for short in (0, 1, 2)], cells - len(margin)
        parts = next((way for way in ways if sum(width(part.text) + 2 for part in way) - 2 <= room), ways[-1])
        gap = " " * max(min((room - sum(width(part.text) for part in parts)) // max(len(parts) - 1, 1), 6), 1)
        bits = [bit for part in parts for bit in (part, Bit(gap))]
        return line(margin, *bits[:-1])

    def _keys(self, *, short: int) -> list[Bit]:
        return [
            Bit(words.page_words(self.page, PAGES, short=short > 1)),
            *([Bit(words.more_below(), hot=Act.DOWN)] if self._top + self._room < len(self._rows) else []),
            *([Bit(words.next_page(short=short), hot=Act.AFTER)] if self.page < PAGES else []),
            *([Bit(words.prices_hint(self.priced), hot=Act.MORE)] if self.page == PRICED else []),
            Bit(words.copy_hint(short=short > 0), hot=Act.PAPERS),
            Bit(words.leave_hint(), hot=Act.BACK),
        ]

    # -- acts ------------------------------------------------------------------------------------------------------

    def stray(self, act: Act | None) -> bool:
        """A key that means nothing here still ends what waits for a second one."""
        if act is None:
            self.asks, self.told = Asks.NOTHING, ""
        return act is None

    def enter(self) -> None:
        """The second key, where one was asked for; else nothing."""
        asks, self.asks, self.told = self.asks, Asks.NOTHING, ""
        if asks is Asks.LEAVE:
            self.host.close()
        elif asks is Asks.COPY:
            self._write()

    def move(self, by: int) -> None:
        """The text of a page that is longer than the window."""
        self._stay()
        self._top = max(self._top + by, 0)

    def move_rows(self, by: int) -> None:
        """The rest of the page, then the next one."""
        self._stay()
        room = self._room
        if (by > 0 and self._top < len(self._rows) - room) or (by < 0 and self._top > 0):
            self._top = max(self._top + (room - 1 if by > 0 else 1 - room), 0)
        else:
            self._turn(1 if by > 0 else -1)

    def act(self, act: Act) -> bool:
        """Turn a page, show prices, ask for the second key. Nothing else leads anywhere."""
        self._stay()
        match act:
            case Act.BACK:
                self.asks = Asks.LEAVE
            case Act.PAPERS:
                self._ask_for_copy()
            case Act.AFTER:
                self._turn(1)
            case Act.BEFORE:
                self._turn(-1)
            case Act.MORE:
                self.priced = not self.priced
                self._turn(PRICED - self.page)
            case Act.GROUND | Act.ACTIONS | Act.KEYS:
                return False
            case _:
                pass
        return True

    def _stay(self) -> None:
        self.asks, self.told = Asks.NOTHING, ""

    def _turn(self, by: int) -> None:
        turned = min(max(self.page + by, 1), PAGES)
        if turned != self.page or by == 0:
            self._top = 0
        self.page = turned

    def _ask_for_copy(self) -> None:
        """What cannot be taken along says so instead of asking."""
        desk = self.host.deeds.desk
        if desk.trying:
            self.told = words.not_of_a_trial()
        elif not desk.session.spec.number:
            self.told = words.no_number_yet()
        else:
            self.asks = Asks.COPY

    def _write(self) -> None:
        """The customer's copy of this revision, beside the screens; one that was replaced is not given out."""
        deeds, stand, day = self.host.deeds, self.host.deeds.desk.stand, self.host.deeds.paper_day
        try:
            later = deeds.replaced_by
        except DiskError as error:
            self.told = words.copy_failed(error.reason.value)
            return
        if later is not None:
            self.told = not_current(stand.spec.number, stand.spec.revision, later)[0]
            return

        def work(stop: Stop) -> Iterator[str]:
            try:
                paths = deeds.print_copy(stand, day)
                yield words.copy_made(path.name for path in paths)
            except DiskError as error:
                yield words.copy_failed(error.reason.value)
            except TROUBLES as error:
                yield str(error)

        self.told = words.copy_begun()
        self.host.send(Errand(spec=stand.spec, work=work, take=self._written))

    def _written(self, told: str) -> None:
        self.told = told
