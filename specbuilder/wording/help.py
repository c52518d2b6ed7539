"""Words of the help and of the list of actions that no key has."""

from __future__ import annotations

from specbuilder.model.kinds import Step

from .states import step_name


def digits_words() -> str:
    """What digits do."""
    return "amount, or the number of an answer"


def marks_words() -> str:
    """Over the marks."""
    return "MARKS"


def go_to_step(step: Step) -> str:
    """``step: kitchen``."""
    return f"step: {step_name(step)}"
