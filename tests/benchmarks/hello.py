"""The floor for the first paint: the smallest app of the toolkit."""

from textual.app import App, ComposeResult
from textual.widgets import Static


class Hello(App[None]):
    def compose(self) -> ComposeResult:
        yield Static("hello there")


if __name__ == "__main__":
    Hello().run()
