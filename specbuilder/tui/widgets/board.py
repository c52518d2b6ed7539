"""A board of lines that paints only what changed. The one widget of the screens.

Ready-made lists repaint whole and read ``[brackets]`` as markup; a board paints single rows of plain text.
"""

from __future__ import annotations

from collections.abc import Sequence

from rich.segment import Segment
from rich.style import Style
from textual import events
from textual.geometry import Offset, Region
from textual.message import Message
from textual.strip import Strip
from textual.widget import Widget

from specbuilder.tui.ink import DARK, Ink, Look
from specbuilder.tui.items import Item
from specbuilder.tui.keys import Act
from specbuilder.tui.line import Bit, Line, width
from specbuilder.tui.marks import SHAPES, Marks

WHEEL_LINES = 3


class Board(Widget):
    """Lines of text, with or without a cursor. Its owner says what stands on it."""

    ALLOW_SELECT = False

    class Clicked(Message):
        """A click on a line, or on a piece of it that means something of its own."""

        def __init__(self, board: Board, hot: Item | Act | None, item: Item | None) -> None:
            super().__init__()
            self.board = board
            self.hot = hot
            self.item = item

        @property
        def control(self) -> Board:
            """The board that was clicked."""
            return self.board

    class Wheeled(Message):
        """The wheel was turned over a board on which nothing can be scrolled."""

        def __init__(self, rows: int) -> None:
            super().__init__()
            self.rows = rows

    class Resized(Message):
        """The board has another size and wants its lines anew."""

    def __init__(self, *, id: str, scrolls: bool = False) -> None:
        super().__init__(id=id)
        self.look: Look = DARK
        self.marks: Marks = SHAPES
        self._lines: tuple[Line, ...] = ()
        self._cursor: int | None = None
        self._top = 0
        self._scrolls = scrolls

    @property
    def cells(self) -> int:
        """Terminal cells a line may take."""
        return max(self.size.width - (1 if self._scrolls else 0), 1)

    def show(self, lines: Sequence[Line], cursor: int | None = None, *, fresh: bool = False, kept: int = 0) -> None:
        """Put these lines on the board; rows that stay the same are not painted again.

        ``fresh``: it is another page, which begins at its first line. ``kept``: so many lines under the cursor's stay
        in view with it.
        """
        old, old_cursor, old_top = self._lines, self._cursor, self._top
        if fresh:
            self._top = 0
        self._lines, self._cursor = tuple(lines), cursor
        self._top = self._top_for(cursor, kept)
        if self._top != old_top or (self._scrolls and self._thumb_moves(len(old))):
            self.refresh()
            return
        changed = {i for i in (old_cursor, cursor) if i is not None} if old_cursor != cursor else set[int]()
        for index in range(self._top, self._top + self.size.height):
            before = old[index] if index < len(old) else None
            after = self._lines[index] if index < len(self._lines) else None
            if before is not after and before != after:
                changed.add(index)
        rows = [Region(0, i - self._top, self.size.width, 1) for i in sorted(changed) if self._seen(i)]
        if rows:
            self.refresh(*rows)

    def caret(self) -> Offset | None:
        """Where the caret or the cursor stands on the screen, for the terminal's own cursor; None without one."""
        if self._cursor is None or not self._seen(self._cursor):
            return None
        column = 0
        for bit in self._lines[self._cursor].bits:
            if bit.ink is Ink.CARET:
                return self.region.offset + Offset(column, self._cursor - self._top)
            column += width(bit.text)
        return self.region.offset + Offset(0, self._cursor - self._top)

    def repaint(self, look: Look, marks: Marks) -> None:
        """Paint everything in another look."""
        self.look, self.marks = look, marks
        self.refresh()

    def render_line(self, y: int) -> Strip:
        """One row of the board."""
        index = y + self._top
        if index >= len(self._lines):
            return Strip.blank(self.size.width, self.look.styles[Ink.PLAIN])
        here = index == self._cursor
        segments = [Segment(bit.text, self._style(bit, here)) for bit in self._bits(self._lines[index], here)]
        strip = Strip(segments).adjust_cell_length(self.cells, self._style(Bit(""), here)).simplify()
        if self._scrolls:
            strip = Strip([*strip, Segment(self._thumb(y), self.look.styles[Ink.PLAIN])])
        return strip

    def on_click(self, event: events.Click) -> None:
        """Say which line was clicked, and which piece of it."""
        index = event.y + self._top
        if index < len(self._lines):
            line = self._lines[index]
            self.post_message(self.Clicked(self, _hot_at(line, event.x), line.item))

    def on_mouse_scroll_down(self, event: events.MouseScrollDown) -> None:
        """Move the lines, not the cursor."""
        event.stop()
        self._scroll_by(WHEEL_LINES)

    def on_mouse_scroll_up(self, event: events.MouseScrollUp) -> None:
        """Move the lines, not the cursor."""
        event.stop()
        self._scroll_by(-WHEEL_LINES)

    def on_resize(self) -> None:
        """Ask for lines of the new width."""
        self.post_message(self.Resized())

    def _scroll_by(self, rows: int) -> None:
        last = max(len(self._lines) - self.size.height, 0)
        top = min(max(self._top + rows, 0), last)
        if not last:
            self.post_message(self.Wheeled(rows))
        elif top != self._top and self._scrolls:
            self._top = top
            self.refresh()

    def _top_for(self, cursor: int | None, kept: int) -> int:
        """First line shown: the cursor's line and what heads it stay in view; with the last one what follows it."""
        rows = max(self.size.height, 1)
        top = min(self._top, max(len(self._lines) - rows, 0))
        if cursor is None or not self._scrolls:
            return top if self._scrolls else 0
        first = cursor
        while first > 0 and cursor - first < min(3, rows - 1) and self._lines[first - 1].item is None:
            first -= 1
        if first < top:
            return first
        last = cursor + kept
        if all(line.item is None for line in self._lines[cursor + 1 :]):
            last = min(len(self._lines) - 1, first + rows - 1)
        return max(top, min(last - rows + 1, cursor))

    def _seen(self, index: int) -> bool:
        return self._top <= index < self._top + self.size.height

    def _bits(self, line: Line, here: bool) -> tuple[Bit, ...]:
        if not here or not line.bits:
            return line.bits
        first = line.bits[0]
        return (Bit(self.marks.cursor), Bit(first.text[1:], first.ink, first.hot), *line.bits[1:])

    def _style(self, bit: Bit, here: bool) -> Style:
        return self.look.styles[Ink.HERE if here and bit.ink is not Ink.CARET else bit.ink]

    def _thumb_moves(self, old_length: int) -> bool:
        rows = self.size.height
        return old_length != len(self._lines) and max(old_length, len(self._lines)) > rows

    def _thumb(self, y: int) -> str:
        rows, all_ = self.size.height, len(self._lines)
        if all_ <= rows or rows == 0:
            return " "
        start = self._top * rows // all_
        return self.marks.thumb if start <= y <= start + rows * rows // all_ else " "


def _hot_at(line: Line, x: int) -> Item | Act | None:
    for bit in line.bits:
        x -= width(bit.text)
        if x < 0:
            return bit.hot
    return None
