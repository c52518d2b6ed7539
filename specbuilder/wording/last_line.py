"""Hints behind what was just said."""

from __future__ import annotations

from .plain import ended


def back_hint(told: str) -> str:
    """``Took Gas bundle, with CO alarm. u takes it out again``."""
    return f"{ended(told)} u takes it back"


def again_hint(told: str) -> str:
    """``Undone: awning. r puts it back``."""
    return f"{ended(told)} r puts it back"


def reading_catalogue() -> str:
    """While the catalogue is being read; keys are kept."""
    return "checking: the catalogue is being read, keys are kept"
