"""Words about what happens around the running program: the clipboard, a slow disk, rules that are edited meanwhile."""

from __future__ import annotations

from .quantities import number_text, quantity


def pasted_too_long(taken: int, pasted: int, most: int) -> str:
    """``The first 500 of 100,000 pasted characters stand here; 500 is the most a line holds.``"""
    first, given, room = (number_text(number, "") for number in (taken, pasted, most))
    return f"The first {first} of {given} pasted characters stand here; {room} is the most a line holds."


def nothing_pasted() -> str:
    """Said where only figures may stand and none were pasted."""
    return "Nothing of what was pasted may stand on this line. Enter or Esc leaves it as it was"


def slow_folder(seconds: float) -> str:
    """Said once a job, when the jobs folder takes so long to write one key down."""
    return f"The jobs folder is slow: {quantity(seconds, 's', '')} to write this. It is saved, and later keys are kept"


def slow_save(number: str, seconds: float) -> str:
    """Said on the list when it took that long to write a job whole."""
    return f"Job {number} is saved. The jobs folder is slow: that took {quantity(seconds, 's', '')}."


def rules_changed(where: str) -> str:
    """Said when the folder of rules is no longer what the program works with."""
    return f"Rules edited since this program read them count from its next start on: {where}"
