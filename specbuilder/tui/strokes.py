"""What a key means beside the table of keys: letters on a line for text, and what follows an answer of one digit."""

from __future__ import annotations

from typing import Protocol

from .keys import Act
from .screens.page import Page

DIGITS = frozenset("0123456789")


class Keyed(Protocol):
    """What the keys are pressed on."""

    def back(self) -> None:
        """One step back."""
        ...

    def do(self, act: Act) -> None:
        """What an act means on the page that has the keys."""
        ...


def begins_text(page: Page, act: Act | None, character: str | None) -> bool:
    """True when this key begins a text where the cursor stands. Minus empties the line instead."""
    if character is None or len(character) != 1 or not character.isprintable():
        return False
    return page.takes_text() and character not in DIGITS and act is not Act.LESS


def swallowed(page: Page, act: Act | None) -> bool:
    """True when this key belonged to the answer before: the Enter behind an answer of one digit."""
    if not page.settled:
        return False
    page.settled = False
    return act is Act.ENTER


def type_on(counter: Keyed, page: Page, key: str, character: str | None, act: Act | None) -> None:
    """One key while something is typed."""
    assert page.entry is not None
    if act is Act.ENTER:
        page.enter() if page.searches else page.take_typed()
    elif act is Act.BACK:
        counter.back() if page.searches else page.stop_typing()
    elif act is not None:
        if not page.searches:
            page.stop_typing()
        counter.do(act)
    elif page.searches and key in ("home", "end"):
        counter.do(Act.FIRST if key == "home" else Act.LAST)
    elif (edited := page.entry.edited(key)) is not None:
        page.entry = edited
        page.searched()
    elif character is not None and len(character) == 1 and character.isprintable():
        page.type_text(character)
