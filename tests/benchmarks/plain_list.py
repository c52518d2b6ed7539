"""The floor for keys: a list of one-line rows that repaints the two rows an arrow touches and computes nothing."""

from typing import ClassVar

from rich.segment import Segment
from rich.style import Style
from textual.app import App, ComposeResult
from textual.binding import Binding
from textual.geometry import Region
from textual.strip import Strip
from textual.widget import Widget


class PlainList(Widget, can_focus=True):
    BINDINGS: ClassVar = [Binding("down", "move(1)"), Binding("up", "move(-1)")]
    cursor = 0

    def render_line(self, y: int) -> Strip:
        return Strip([Segment(f" row {y} ".ljust(self.size.width), Style(reverse=y == self.cursor))])

    def action_move(self, by: int) -> None:
        old, self.cursor = self.cursor, max(0, min(self.size.height - 1, self.cursor + by))
        self.refresh(*(Region(0, y, self.size.width, 1) for y in (old, self.cursor)))


class Plain(App[None]):
    def compose(self) -> ComposeResult:
        yield PlainList()

    def on_mount(self) -> None:
        self.query_one(PlainList).focus()


if __name__ == "__main__":
    Plain().run()
