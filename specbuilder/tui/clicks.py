"""One plain click: on a word that means something, or on a line: the cursor goes there, and a second click is Enter."""

from __future__ import annotations

from .counter import Counter
from .items import Item, OnDigit, OnStep
from .keys import Act
from .screens.page import Page


def click(counter: Counter, hot: Item | Act | None, item: Item | None, *, side: bool) -> None:
    """A click on the heading, the main page, the last lines, or (``side``) on the page beside it."""
    counter.top.settled = False
    if isinstance(hot, Act):
        counter.do(hot)
    elif isinstance(hot, OnStep):
        counter.walk_to(hot.step, None)
    elif isinstance(hot, OnDigit):
        counter.press(str(hot.digit), str(hot.digit))
    elif hot is not None:
        click_beside(counter, hot)
    elif item is not None and (side or not counter.sides):
        _click_line(counter, counter.top, item)
    elif item is not None:
        counter.close_all()
        _click_line(counter, counter.main, item)
    counter.lay()


def click_beside(counter: Counter, item: Item | None) -> None:
    """A click on what stands beside the walk while no page is open there."""
    if item is not None:
        counter.go_to(item)
        counter.lay()


def _click_line(counter: Counter, page: Page, item: Item) -> None:
    if page.at == item and page.entry is None:
        counter.do(Act.ENTER)
        return
    if not page.searches:
        page.stop_typing()
    page.at = item
