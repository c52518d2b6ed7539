"""One plain click: on a word that means something, or on a line: the cursor goes there, and a second click is Enter."""

from __future__ import annotations

from specbuilder.wording.last_line import again_hint, back_hint

from .counter import Counter
from .items import Item, OnDigit, OnSign, OnStep
from .keys import Act
from .screens.page import Page


def click(counter: Counter, hot: Item | Act | None, item: Item | None, *, side: bool) -> None:
    """A click on the heading, the main page, the last lines, or (``side``) on the page beside it."""
    counter.top.settled = False
    stood, said = (counter.top, counter.top.at), counter.message
    if isinstance(hot, Act | OnDigit | OnSign):
        if item is not None:
            _stand(counter, item, side)
        _click_word(counter, hot)
    elif isinstance(hot, OnStep):
        _leave_text(counter.main)
        counter.walk_to(hot.step, None)
    elif hot is not None:
        click_beside(counter, hot)
    elif counter.top.shut:
        counter.top.stray(None)
    elif item is not None:
        _click_line(counter, item, side)
    counter.lay()
    if (counter.top, counter.top.at) != stood and counter.message == said:
        counter.forget()


def click_beside(counter: Counter, item: Item | None) -> None:
    """A click on what stands beside the walk while no page is open there."""
    if item is not None:
        _leave_text(counter.top)
        counter.go_to(item)
        counter.lay()


def act_of_hint(hint: str) -> Act | None:
    """What the words behind what was done stand for."""
    return {back_hint(): Act.UNDO, again_hint(): Act.REDO}.get(hint)


def _click_word(counter: Counter, hot: Act | OnDigit | OnSign) -> None:
    """A word that is an act, a numbered answer or a sign: as if its key had been pressed."""
    page, at_s = counter.top, counter.pressed_at_s
    match hot:
        case OnDigit(digit):
            counter.press(str(digit), str(digit), at_s)
        case OnSign(sign):
            counter.press(sign, sign if len(sign) == 1 else None, at_s)
        case Act.ENTER | Act.BACK if page.entry is not None or counter.opening is None:
            counter.press("enter" if hot is Act.ENTER else "escape", None, at_s)
        case Act():
            _leave_text(page)
            counter.do(hot)


def _click_line(counter: Counter, item: Item, side: bool) -> None:
    """The cursor goes to the line; where it stands there already, that is Enter."""
    page = counter.top if side or not counter.sides else counter.main
    if page is counter.top and page.at == item and (page.entry is None or page.searches):
        counter.press("enter", None, counter.pressed_at_s)
    else:
        _stand(counter, item, side)


def _stand(counter: Counter, item: Item, side: bool) -> None:
    """The cursor on this line, and nothing open over it."""
    if not side:
        counter.close_all()
    page = counter.top
    if page.at != item or page.entry is not None:
        _leave_text(page)
    page.at = item


def _leave_text(page: Page) -> None:
    """What is being typed stays beside its line, not taken."""
    if not page.searches:
        page.stop_typing()
