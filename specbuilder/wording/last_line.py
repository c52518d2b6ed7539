"""Hints behind what was just said."""

from __future__ import annotations

from collections.abc import Sequence

from .key_names import pressed

_FEW = 3
"""As many places are named; of a key that works in more it is enough that it does not here."""


def back_hint() -> str:
    """Behind what was done."""
    return f"{pressed('undo')} takes it back"


def again_hint() -> str:
    """Behind what was undone."""
    return f"{pressed('redo')} puts it back"


def nothing_here(sign: str, places: Sequence[str]) -> str:
    """``s does nothing here, only on: check, papers, paper. F1 lists what works here.``"""
    only = f", only on: {', '.join(places)}" if 0 < len(places) <= _FEW else ""
    return f"{sign} does nothing here{only}. {pressed('keys')} lists what works here."


def own_mistake(what: str) -> str:
    """Said when the program met a mistake of its own."""
    return f"That key met a mistake of the program and did nothing; what was said stands and is saved. ({what[:80]})"


def reading_catalogue() -> str:
    """While the catalogue is being read; keys are kept."""
    return "checking: the catalogue is being read, keys are kept"


def type_letters() -> str:
    """What stands where nothing is typed to look for yet."""
    return "Type a few letters of a part, a question, a ledger, a rule or a field. Enter goes to what is found."


def nothing_found() -> str:
    """Said when nothing holds the words typed."""
    return "Nothing has these letters. Fewer letters find more."
