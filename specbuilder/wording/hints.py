"""Words of the hint line that depend on the line under the cursor."""

from __future__ import annotations


def at_once(least: int, most: int) -> str:
    """``1-3 answer``: one digit is the whole answer, and nothing need follow it."""
    return f"{least}-{most} answer" if least != most else f"{least} answer"


def digits_begin() -> str:
    """A number of several digits: digits begin it and Enter takes it."""
    return "0-9 type"


def number_begins() -> str:
    """The same where the number may lie below nought."""
    return "0-9 - type"


def forget_it() -> str:
    """Enter behind a minus alone."""
    return "not known yet"


def letters_begin() -> str:
    """Any letter begins the text and Enter takes it."""
    return "A-Z type"


def only_figures() -> str:
    """Said when a letter was typed where a number or a date is wanted."""
    return "Only figures are typed here: the letter was left out."


def type_it() -> str:
    """Enter begins a text."""
    return "type"


def take_it() -> str:
    """Enter takes what stands there."""
    return "take"


def keep_not_taken() -> str:
    """Escape leaves a text that was typed."""
    return "keep as not taken"


def next_line() -> str:
    """Enter on what is answered."""
    return "next line"


def type_anew() -> str:
    """A digit where a number was typed and not taken."""
    return "0-9 type anew"


def go_on_typing() -> str:
    """Enter where something was typed and not taken."""
    return "go on with it"


def typed_gone() -> str:
    """Minus where something was typed and not taken."""
    return "What was typed is gone; there is no answer yet, as before."


def open_it() -> str:
    """Enter opens what is folded."""
    return "open"


def open_by_number(last: int) -> str:
    """``1-3 open``: a digit opens the line it stands before."""
    return f"1-{last} {open_it()}"


def why_it() -> str:
    """Enter tells why."""
    return "why"


def go_there() -> str:
    """Enter goes to the line it is about."""
    return "go there"


def go_back() -> str:
    """Enter on a line that only is to be read."""
    return "go back"
