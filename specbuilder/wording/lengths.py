"""Heights and what a van must pass under, as customers read them: rounded to the side on which nobody hits the beam."""

from __future__ import annotations

import math
from collections.abc import Callable

from .quantities import metres, number_text

_MM_PER_INCH = 25.4
_MM_PER_CM = 10.0


def feet_and_inches(length_mm: float) -> str:
    """Of a height, for customers, to the next inch up: ``6 ft 6 in``. It is never told lower than it is."""
    return _feet(length_mm, math.ceil)


def feet_and_inches_below(length_mm: float) -> str:
    """Of what something must pass under, to the next inch down."""
    return _feet(length_mm, math.floor)


def metres_up(length_mm: float) -> str:
    """Of a height, to the next centimetre up: ``2.04 m``."""
    return metres(_whole_steps(length_mm, _MM_PER_CM, math.ceil) * _MM_PER_CM)


def metres_below(length_mm: float) -> str:
    """Of what something must pass under, to the next centimetre down."""
    return metres(_whole_steps(length_mm, _MM_PER_CM, math.floor) * _MM_PER_CM)


def _feet(length_mm: float, rounded: Callable[[float], int]) -> str:
    inches = _whole_steps(length_mm, _MM_PER_INCH, rounded)
    if not math.isfinite(inches):
        return number_text(inches, "")
    sign = "-" if inches < 0 else ""
    feet, rest = divmod(int(abs(inches)), 12)
    return f"{sign}{feet} ft {rest} in"


def _whole_steps(length_mm: float, step_mm: float, rounded: Callable[[float], int]) -> float:
    """A length in whole steps; what is a whole number but for the noise of its last digits stays it."""
    steps = round(length_mm / step_mm, 6)
    return rounded(steps) if math.isfinite(steps) else steps
