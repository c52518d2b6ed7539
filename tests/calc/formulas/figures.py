"""How worked values are compared."""

from __future__ import annotations


def significant(*numbers: float, figures: int = 3) -> tuple[float, ...]:
    """The numbers to so many significant figures."""
    return tuple(float(f"{number:.{figures}g}") for number in numbers)
