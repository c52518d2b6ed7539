"""Figures of the workshop's papers: places, sizes, masses and estimates, as a fitter reads them off a tape."""

from __future__ import annotations

from specbuilder.model.catalogue import Caution, Option
from specbuilder.model.holes import HoleLine
from specbuilder.model.kinds import Sense, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.parts import Hole
from specbuilder.model.span import Span
from specbuilder.workshop.positions import Spot

from .plain import ended
from .quantities import number_text, quantity, span, span_number
from .readings import ESTIMATED, estimated_legend

NOT_KNOWN = "not known"
ON_THE_VAN = "measure"
"""In place of a figure that the body of the van decides."""
ESTIMATE_FOOT = f"{estimated_legend()}, from the catalogue and not measured on this van."
"""Under a table that holds estimates."""
_ROUND = "diameter"
_ALONG, _ACROSS, _WIDE, _HIGH, _DEEP = "along", "across", "wide", "high", "deep"
_SIZES = {
    "roof": (_ACROSS, _ALONG),
    "roof shell": (_ACROSS, _ALONG),
    "floor": (_ALONG, _ACROSS),
    "worktop": (_WIDE, _DEEP),
}
"""Which way the two sizes of a cut lie, by its surface; on anything upright they are width and height."""


def x_text(spot: Spot | None) -> str:
    """``1,080``; x is open while the base van is."""
    if spot is None:
        return ON_THE_VAN
    return NOT_KNOWN if spot.x_mm is None else number_text(spot.x_mm, "mm")


def y_text(spot: Spot | None) -> str:
    """``860 left``, or that it is measured."""
    return ON_THE_VAN if spot is None else across_text(spot.y_mm)


def across_text(y_mm: float) -> str:
    """``860 left``, ``860 right``, ``0``: a sign alone is read the wrong way round too easily."""
    figure = number_text(abs(y_mm), "mm")
    if figure == "0":
        return figure
    return f"{figure} left" if y_mm > 0 else f"{figure} right"


def from_to(from_mm: float, to_mm: float) -> str:
    """``275 - 2,225``; a minus is told from the dash by the spaces."""
    return f"{number_text(from_mm, 'mm')} - {number_text(to_mm, 'mm')}"


def from_to_across(right_mm: float, left_mm: float) -> str:
    """``365 to 805 right``, ``295 right to 805 left``: nearer the middle, or further right, first."""
    if right_mm >= 0:
        return f"{number_text(right_mm, 'mm')} to {across_text(left_mm)}"
    if left_mm <= 0:
        return f"{number_text(-left_mm, 'mm')} to {across_text(right_mm)}"
    return f"{across_text(right_mm)} to {across_text(left_mm)}"


def z_text(spot: Spot | None) -> str:
    """``1,390``, or ``-250`` below the floor."""
    return ON_THE_VAN if spot is None else number_text(spot.z_mm, "mm")


def spot_text(spot: Spot, other_body: tuple[str, ...] = ()) -> str:
    """``X 250, Y 800 right, Z -250``: in a sentence. What hangs on a body that is other than drawn is measured."""
    y = ON_THE_VAN if "width" in other_body else y_text(spot)
    z = ON_THE_VAN if "height" in other_body else z_text(spot)
    return f"X {x_text(spot)}, Y {y}, Z {z}"


def hole_size(hole: Hole | HoleLine) -> str:
    """``diameter 92``, ``1,180 across x 2,060 along``; as its template says where the catalogue has no size."""
    if hole.diameter_mm is not None:
        return f"{_ROUND} {number_text(hole.diameter_mm, 'mm')}"
    if hole.width_mm is None or hole.height_mm is None:
        return "by its template"
    first, second = _SIZES.get(hole.surface, (_WIDE, _HIGH))
    return f"{number_text(hole.width_mm, 'mm')} {first} x {number_text(hole.height_mm, 'mm')} {second}"


def hole_place(hole: HoleLine) -> str:
    """``at X 510, Y 860 left, Z 900``."""
    if hole.measured or hole.y_mm is None or hole.z_mm is None:
        return "its place is measured on the van"
    return f"at {spot_text(Spot(x_mm=hole.x_mm, y_mm=hole.y_mm, z_mm=hole.z_mm))}"


def near_words(near: tuple[str, float] | None) -> str:
    """``62 mm from the hybrid battery box``: by the plan, seen from above; the edge is what counts."""
    return "" if near is None else f"its edge is {quantity(near[1], 'mm', '')} from the no-drill box: {near[0]}"


def hole_radius(hole: Hole) -> str:
    """``, radius 80``; nothing for a round hole."""
    return "" if hole.corner_radius_mm is None else f", radius {number_text(hole.corner_radius_mm, 'mm')}"


def tolerance_text(hole: Hole) -> str:
    """``2``: so many mm either way."""
    return number_text(hole.tolerance_mm, "mm")


def part_size(option: Option) -> str:
    """``1,950 x 440 x 900``: length, width, height; only those that are known."""
    space = option.space
    sizes = (space.length_mm, space.width_mm, space.height_mm)
    return " x ".join("?" if size is None else number_text(size, "mm") for size in sizes) if any(sizes) else "-"


def mm(value: float | None) -> str:
    """``650 mm``."""
    return NOT_KNOWN if value is None else quantity(value, "mm", "")


def kg(value: Span | float | None, *, estimate: bool = False) -> str:
    """``92``, ``9 e`` for an estimate, ``1,374-1,432`` while open: bare numbers for a column of kg."""
    if value is None:
        return NOT_KNOWN
    figure = span_number(value, "kg") if isinstance(value, Span) else number_text(value, "kg")
    return estimated(figure) if estimate else figure


def bare(value: float | None, unit: str) -> str:
    """A bare number for a column whose head names the unit."""
    return NOT_KNOWN if value is None else number_text(value, unit)


def told(value: Span | None, unit: str, *, estimate: bool = False) -> str:
    """A figure with its unit: ``70 mm e``."""
    if value is None:
        return NOT_KNOWN
    return estimated(span(value, unit, "")) if estimate else span(value, unit, "")


def must_be(reading: Reading, unit: str) -> str:
    """``at least 40 mm``, and that the plan does not keep it where it does not; a dash where nothing bounds it."""
    if reading.bound is None or reading.sense is Sense.SHOWN:
        return "-"
    kept = ": NOT KEPT" if reading.verdict is Verdict.BROKEN else ""
    return f"{reading.sense.value} {span(reading.bound, unit, '')}{kept}"


def caution_words(caution: Caution, about: str) -> str:
    """A caution in full: its text, who does or signs it, and the parts it is about."""
    return f"{ended(caution.text)} By: {caution.who_must_do_or_sign}. About: {about}."


def amount(value: float | None, unit: str) -> str:
    """``2 kW``; empty for what is not declared."""
    return quantity(value, unit, "") if value else ""


def estimated(figure: str) -> str:
    """The figure with the sign that it is an estimate; a line is never broken between the two."""
    return f"{figure}\N{NO-BREAK SPACE}{ESTIMATED}"


def counted(number: int, one: str, many: str) -> str:
    """``1 hole``, ``3 holes``."""
    return f"{number} {one if number == 1 else many}"
