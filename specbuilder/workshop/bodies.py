"""Whether the van is as high and as wide inside as the one for which the catalogue draws its places.

Along the van and on the floor a place holds for every van; at the roof it hangs on the height, at a wall on the width.
"""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.vans import Van

_HANGS_SHARE = 0.85
"""Of the drawn height inside: what has its middle above that hangs from the roof."""
_AT_WALL_MM = 60
"""What ends closer to the drawn wall than this stands at it: its lining and a finger's breadth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """The inside of the van beside the drawn one."""

    height_differs: bool = False
    width_differs: bool = False
    height_mm: float = 0
    """As drawn."""
    width_mm: float = 0

    @property
    def alike(self) -> bool:
        """The places of the catalogue hold as they are."""
        return not (self.height_differs or self.width_differs)

    def z_is_open(self, z_mm: float) -> bool:
        """Something with its middle so high hangs from the roof, and this roof is at another height."""
        return self.height_differs and z_mm > _HANGS_SHARE * self.height_mm

    def y_is_open(self, y_mm: float, wide_mm: float | None) -> bool:
        """Something so far out, and so wide, stands at a wall, and this wall is elsewhere."""
        outer_mm = abs(y_mm) + (wide_mm or 0) / 2
        return self.width_differs and outer_mm > self.width_mm / 2 - _AT_WALL_MM


ALIKE = Body()


def body_of(catalogue: Catalogue, van: Van | None, option: Option) -> Body:
    """The van beside what the option is drawn for: the firm's usual van, or the vans it is made for alone."""
    firm = catalogue.firm
    if van is None or firm.drawn_inside_height_mm is None or firm.drawn_inside_width_mm is None:
        return ALIKE
    if _is_made_for(catalogue, van, option):
        return ALIKE
    return Body(
        height_differs=van.inside_height_mm != firm.drawn_inside_height_mm,
        width_differs=van.inside_width_mm != firm.drawn_inside_width_mm,
        height_mm=firm.drawn_inside_height_mm,
        width_mm=firm.drawn_inside_width_mm,
    )


def _is_made_for(catalogue: Catalogue, van: Van, option: Option) -> bool:
    """It fits vans of this very inside only, so that it is drawn for them."""
    made_for = [catalogue.options[one].van for one in option.fits_vans if one in catalogue.options]
    inside = van.inside_height_mm, van.inside_width_mm
    return bool(made_for) and all(
        other is not None and (other.inside_height_mm, other.inside_width_mm) == inside for other in made_for
    )
