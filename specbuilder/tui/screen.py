"""The one screen of the toolkit: it hands keys and clicks to the counter and paints what lies on it."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager

from textual import events
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.message import Message
from textual.screen import Screen

from .clicks import act_of_hint, click, click_beside
from .counter import Counter
from .errands import Piece
from .ink import Ink, Look
from .items import OnDigit, OnSign
from .line import EMPTY, Bit, Line, cut, fitted, line, wrapped
from .pad import SHIFT, Pad
from .screens.heading import jobs_heading, rule
from .screens.page import Page
from .widgets.board import Board

NARROWEST, LOWEST = 60, 18
WIDE, WIDEST, VAST = 100, 160, 190
"""From so many columns on there are two panes, three, and three even while a page is read."""
LOW = 22
"""With fewer rows a page that is opened takes the place of the one below it."""
HEADING_ROWS = 4
ROOMY, ROOMIEST = 120, 140
"""From so many columns on a page that is opened beside the walk gets half the window, and more than half."""
TRACE = "SPECBUILDER_TRACE"
"""Set by developers who want the traceback of a mistake in the program."""


class CounterScreen(Screen[None]):
    """Boards and nothing else: heading, main page, its foot, the page beside it, the third pane, the last lines."""

    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (WIDE, "-wide"), (WIDEST, "-widest")]  # noqa: RUF012
    VERTICAL_BREAKPOINTS = [(0, "-low"), (22, "-high")]  # noqa: RUF012
    AUTO_FOCUS = ""

    def __init__(self, counter: Counter, look: Look, window: Callable[[int, int], Sequence[str]]) -> None:
        super().__init__()
        self.counter = counter
        self.look = look
        self._window_words = window
        self._beside: Page | None = None
        self.pad = Pad()
        self.boards = {
            name: Board(id=name, scrolls=name in ("main", "side", "third"))
            for name in ("small", "heading", "main", "foot", "across", "side-heading", "side", "third", "tail")
        }

    def compose(self) -> ComposeResult:
        """Lay the boards out; the style sheet says which are seen at which size."""
        boards = self.boards
        yield boards["small"]
        yield boards["heading"]
        with Horizontal(id="middle"):
            with Vertical(id="left"):
                yield boards["main"]
                yield boards["foot"]
            yield boards["across"]
            with Vertical(id="right"):
                yield boards["side-heading"]
                yield boards["side"]
            yield boards["third"]
        yield boards["tail"]

    def on_mount(self) -> None:
        """Put the look on every board."""
        self.wear(self.look)

    def wear(self, look: Look) -> None:
        """Paint everything in this look."""
        self.look = look
        for board in self.boards.values():
            board.repaint(look, self.counter.marks)
        self.paint()

    # -- what comes in ---------------------------------------------------------------------------------------------

    def on_key(self, event: events.Key) -> None:
        """Every key, in order."""
        if event.key in ("ctrl+q", "ctrl+c"):
            return
        event.stop()
        event.prevent_default()
        self.pad.in_use = False
        with self._last_floor():
            self.counter.press(event.key, event.character if event.is_printable else None, event.time)
            self.paint()

    def on_paste(self, event: events.Paste) -> None:
        """Text from the clipboard."""
        event.stop()
        with self._last_floor():
            self.counter.paste(event.text)
            self.paint()

    def on_board_clicked(self, event: Board.Clicked) -> None:
        """A click on any board."""
        event.stop()
        self.pad.in_use = True
        with self._last_floor():
            self.counter.pressed_at_s = event.time
            self._click(event)
            self.paint()

    def on_board_wheeled(self, event: Board.Wheeled) -> None:
        """A page that turns its own lines is turned by the wheel as well."""
        event.stop()
        if self.counter.shut and self.counter.top.shut:
            self.counter.top.move(event.rows)
            self.paint()

    def _click(self, event: Board.Clicked) -> None:
        name = event.board.id
        if event.hot == OnSign(SHIFT):
            self.pad.turn()
        elif name in ("side", "third", "foot") and not (name == "side" and self.counter.sides):
            if event.hot is not None:
                if name == "foot" and isinstance(event.hot, OnDigit):
                    self.counter.close_all()  # the answers below the walk are those of the walk
                click(self.counter, event.hot, None, side=False)
            else:
                click_beside(self.counter, event.item)
        else:
            click(self.counter, event.hot, event.item, side=name == "side")

    @contextmanager
    def _last_floor(self) -> Iterator[None]:
        """A mistake of the program costs the one key that met it: it is said, and everything stands as it was."""
        try:
            yield
        except Exception as mistake:
            if os.environ.get(TRACE):
                raise
            self.counter.mistaken(mistake)
            self._paint_tail(self.boards["tail"])

    def take_in(self, piece: Piece) -> None:
        """What a search brought."""
        with self._last_floor():
            piece()
            self.paint()

    def on_board_resized(self, event: Board.Resized) -> None:
        """A board has another size."""
        event.stop()
        self.paint()

    # -- what goes out ---------------------------------------------------------------------------------------------

    def paint(self) -> None:
        """Put on every board what it should show; only what changed is painted."""
        counter, boards = self.counter, self.boards
        small = self.size.width < NARROWEST or self.size.height < LOWEST
        self.set_class(small, "-too-small")
        self.set_class(bool(counter.sides), "-side")
        self.set_class(bool(counter.sides) and self._tall(counter.top), "-tall")
        self.set_class(counter.top.heads > 1, "-two-heads")
        self.set_class(self.size.width >= VAST, "-vast")
        self.set_class(counter.full, "-full")
        self.set_class(counter.top.shut, "-shut")
        self.set_class(bool(counter.sides) and self.size.width >= ROOMY, "-reading")
        self.set_class(self.size.width >= ROOMIEST, "-roomiest")
        self.set_class(counter.walk is None, "-jobs")
        if small:
            texts = [
                part
                for text in self._window_words(self.size.width, self.size.height)
                for part in wrapped(text, max(self.size.width - 2, 1))
            ]
            boards["small"].show([line(f" {text}") for text in texts])
            return
        self._measure()
        counter.lay()
        if not counter.full:
            self._paint_heading(boards["heading"])
        boards["main"].show(counter.main.shown, None if counter.sides else counter.main.cursor())
        boards["foot"].show(self._foot(boards["foot"]))
        boards["across"].show([self._across(boards["across"])] * boards["across"].size.height)
        self._paint_side()
        self._paint_tail(boards["tail"])
        if (caret := boards["side" if counter.sides else "main"].caret()) is not None:
            self.app.cursor_position = caret
        if counter.top.unseen:
            self.call_after_refresh(self._painted)

    def _painted(self) -> None:
        """The frame is out: what stands on it may be taken by the keys pressed from now on."""
        self.counter.painted(Message().time)

    def _tall(self, page: Page) -> bool:
        """A page that is read by itself, in a window in which two would be too narrow or too low."""
        return self.size.width < ROOMY and (page.tall or self.size.height < LOW)

    def _measure(self) -> None:
        """Tell the counter how wide and high its pages are; a board that is not shown has no size and says nothing."""
        counter, main, side = self.counter, self.boards["main"], self.boards["side"]
        if main.size.width:
            counter.main_cells, counter.window_cells = main.cells, self.size.width
        if side.size.width:
            counter.side_cells = side.cells
        counter.rows_high = max((side if counter.sides else main).size.height, 1)

    def _paint_heading(self, board: Board) -> None:
        counter = self.counter
        walk = counter.walk
        lines = walk.heading(board.cells) if walk is not None else jobs_heading(counter, board.cells)
        board.show([*lines[:HEADING_ROWS], rule(board.cells, counter.marks.line)])

    def _foot(self, board: Board) -> list[Line]:
        walk, rows = self.counter.walk, board.size.height
        told = list(self.counter.main.foot(board.cells))
        if walk is None or self.size.width >= WIDE:
            return [rule(board.cells, self.counter.marks.line), *fitted(told, rows - 1, board.cells)]
        return walk.foot(told, board.cells, rows)

    def _across(self, board: Board) -> Line:
        marks = self.counter.marks
        return line(marks.side) if self.size.width >= WIDE else rule(board.cells, marks.line)

    def _paint_side(self) -> None:
        counter, boards = self.counter, self.boards
        heading, side, third = boards["side-heading"], boards["side"], boards["third"]
        walk, rows = counter.walk, side.size.height
        if counter.sides:
            page = counter.top
            heading.show(list(page.head(heading.cells)))
            foot = list(page.foot(side.cells))
            fresh = page is not self._beside
            self._beside = page if rows else None  # without a size yet it has not begun
            side.show([*page.shown, *([EMPTY, *foot] if foot else [])], page.cursor(), fresh=fresh, kept=page.kept())
        elif walk is not None and self.size.width >= WIDE:
            heading.show([walk.beside_heading(heading.cells)])
            side.show(walk.beside(side.cells, rows, third=self.size.width >= WIDEST))
        else:
            heading.show([])
            side.show([])
        third.show(self._third(third))

    def _third(self, board: Board) -> list[Line]:
        """What is open, behind a line that parts it from the ledgers."""
        walk = self.counter.walk
        if walk is None or self.size.width < WIDEST:
            return []
        rows, side = walk.third(board.cells - 2), self.counter.marks.side
        blank = [EMPTY] * (board.size.height - len(rows))
        return [Line((Bit(f"{side}"), *row.bits), row.item) for row in (*rows, *blank)]

    def _paint_tail(self, board: Board) -> None:
        counter = self.counter
        hint = f"  {counter.hint}" if counter.hint and not counter.shut else ""
        message = "" if counter.shut else counter.message
        last = line(" ", cut(message, board.cells - 2 - len(hint)), Bit(hint, hot=act_of_hint(counter.hint)))
        board.show([*self._guiding(board.cells), last, self.pad.line(counter.top, board.cells)])

    def _guiding(self, cells: int) -> list[Line]:
        """What the guided job says, in as many lines as it takes; the lines below make room for them."""
        guide, tail = self.counter.guide, self.boards["tail"]
        if guide is not None:
            guide.look(self.counter)
        told = wrapped(guide.told(), max(cells - 2, 1)) if guide is not None else []
        if tail.size.height != 2 + len(told):
            tail.styles.height = 2 + len(told)
        return [line(" ", Bit(text, Ink.HEAD)) for text in told]
