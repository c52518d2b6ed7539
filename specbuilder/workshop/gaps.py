"""How much of a surface stays between two cuts."""

from __future__ import annotations

import math

from specbuilder.model.holes import HoleLine

_FLAT_ALONG_FIRST, _FLAT_ACROSS_FIRST, _UPRIGHT = "floor", "roof", "side skin"
"""The surfaces whose two directions are known: of a floor the first size lies along, of a roof the second."""


def gap_mm(one: HoleLine, other: HoleLine) -> float | None:
    """Between the edges, mm; nought where they overlap, no end on different surfaces.

    A round hole counts as the square about it. None: a centre is measured on the van, so nobody can tell.
    """
    if _surface(one) != _surface(other):
        return math.inf
    first, second = _middle(one), _middle(other)
    if first is None or second is None:
        return None
    half, other_half = _half(one), _half(other)
    apart = (abs(a - b) - h - k for a, b, h, k in zip(first, second, half, other_half, strict=True))
    return math.hypot(*(max(0.0, gap) for gap in apart))


def _surface(hole: HoleLine) -> tuple[str, str]:
    """Its kind, and of a wall the side."""
    if not hole.surface.startswith(_UPRIGHT):
        return hole.surface, ""
    named = hole.surface.removeprefix(_UPRIGHT).strip(", ")
    if named or hole.y_mm is None:
        return _UPRIGHT, named
    return _UPRIGHT, "left" if hole.y_mm > 0 else "right"


def _middle(hole: HoleLine) -> tuple[float, float] | None:
    if hole.x_mm is None or hole.y_mm is None or hole.z_mm is None:
        return None
    if hole.surface.startswith(_UPRIGHT):
        return hole.x_mm, hole.z_mm
    flat = hole.surface.startswith((_FLAT_ALONG_FIRST, _FLAT_ACROSS_FIRST))
    return (hole.x_mm, hole.y_mm) if flat else None


def _half(hole: HoleLine) -> tuple[float, float]:
    """Half its size in both directions."""
    if hole.diameter_mm is not None:
        return hole.diameter_mm / 2, hole.diameter_mm / 2
    first, second = (hole.width_mm or 0) / 2, (hole.height_mm or 0) / 2
    return (second, first) if hole.surface.startswith(_FLAT_ACROSS_FIRST) else (first, second)
