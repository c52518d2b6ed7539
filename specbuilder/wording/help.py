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


def counts_words() -> str:
    """What the figures on the line of steps say."""
    return "kitchen?2!1: at that step two questions are open and one rule is broken"


def go_to_step(step: Step) -> str:
    """``step: kitchen``."""
    return f"step: {step_name(step)}"
