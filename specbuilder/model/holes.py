"""The hole schedule: every cut of a spec with its centre on the datum of the job and its size."""

from __future__ import annotations

from dataclasses import dataclass

from .ids import OptionId


@dataclass(frozen=True, slots=True, kw_only=True)
class HoleLine:
    """One cut, or so many alike ones of one choice; lengths in mm. A figure that is None does not apply or is open."""

    id: str
    """The hole's id in the catalogue."""
    option: OptionId
    what: str
    surface: str
    measured: bool
    """Its place is found on the van: there is no centre to cut by."""
    x_mm: float | None
    """None as well while the base van is open."""
    y_mm: float | None
    z_mm: float | None
    width_mm: float | None
    height_mm: float | None
    diameter_mm: float | None
    corner_radius_mm: float | None
    cut_from: str
    count: int = 1
