"""What a key means beside the table of keys: letters on a line for text, and what follows an answer of one digit."""

from __future__ import annotations

from specbuilder.wording.hints import answered_already

from .keys import Act
from .screens.page import Page

DIGITS = frozenset("0123456789")


def begins_text(page: Page, act: Act | None, character: str | None) -> bool:
    """True when this key begins a text where the cursor stands. Minus empties the line instead."""
    if character is None or len(character) != 1 or not character.isprintable():
        return False
    return page.takes_text() and character not in DIGITS and act is not Act.LESS


def swallowed(page: Page, act: Act | None, character: str | None) -> bool:
    """True when this key belonged to the answer before: the Enter or the digit behind an answer of one digit."""
    if not page.settled:
        return False
    page.settled = False
    if act is Act.ENTER:
        return True
    if character not in DIGITS:
        return False
    page.settled = True
    page.host.say(answered_already())
    return True
