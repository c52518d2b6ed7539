"""How long a text of a spec may be. What is longer was pasted by mistake, and no screen or paper shows it whole."""

from __future__ import annotations

from specbuilder.model.plain_text import hidden_character

NAME_LONGEST = 120
"""The customer's name."""
CONTACT_LONGEST = 300
VIN_TAIL_LONGEST = 17
"""A whole chassis number; its last six characters are what is asked for."""
VAN_TEXT_LONGEST = 500
"""Any other text about the real van."""
NOTE_LONGEST = 2000
"""The note of a job or of a choice."""


def too_long(text: str, longest: int) -> str | None:
    """What is said of a text with more characters than that; None when it is short enough."""
    if len(text) <= longest:
        return None
    return f"the text has {len(text):,} characters, and {longest:,} is the most: shorten it."


def text_fault(text: str, longest: int, *, lines: bool = False) -> str | None:
    """Why this text cannot be taken, as one sentence; None when it can. With ``lines`` it may have several."""
    hidden = hidden_character(text, lines=lines)
    return f"the text holds {hidden}: take it out." if hidden else too_long(text, longest)


def cut(text: str, longest: int) -> str:
    """The text as a file takes it: one that is too long all the same must not make a file that cannot be read."""
    return text if len(text) <= longest else text[: longest - 3] + "..."
