"""What is said of a house's own keys that cannot be used."""

from __future__ import annotations

from collections.abc import Collection


def no_such_act(end: str) -> str:
    """``end``: the nearest act, or where all of them stand."""
    return f"nothing the screens do is called that: {end}"


def where_acts_stand() -> str:
    """The cure where no act is near."""
    return "specbuilder keys lists them all."


def fixed_act() -> str:
    """Enter, Escape and the arrows lead about on every screen."""
    return "its keys stay as they are, so that every screen can be left: take the line out."


def no_such_key(key: str) -> str:
    """``key`` as written, cut and cleaned."""
    what = f'"{key}" is no key that can be chosen' if key else "no key is named"
    return f"{what}: write one character that is no digit, or f1 to f9."


def two_acts(key: str, other: str, where: Collection[str]) -> str:
    """One key would do two things on a page, or on several."""
    pages = ", ".join(sorted(where)[:3]) + (", ..." if len(where) > 3 else "")
    return f'"{key}" does {other} already on {pages}: choose another key, or give {other} another one too.'


def without_the_file() -> str:
    """Behind the faults of the file."""
    return "Mend the file, or put it elsewhere: without it the keys are those of the program."
