"""Openings that never shut: how large they must be, and what flows through them."""

from math import inf, sqrt

from .validity import OutsideValidity, above, at_least, within

_BANDS = ((5, 7500, 1000), (10, 10000, 1500), (15, 12500, 2000), (20, 15000, 3000), (inf, 20000, 5000))
"""Plan area up to m2; high opening in the roof and low opening, mm2: a van with an open flame."""
_SEALED_UP_TO_M2, _SEALED_HIGH_MM2, _SEALED_LOW_MM2 = 10, 1500, 500
"""A van in which nothing burns openly, up to ten square metres."""


def plan_area_m2(length_mm: float, width_mm: float) -> float:
    """The area by which fixed openings go: the whole vehicle, not its floor. Result in m2.

    Equation: ``length_mm * width_mm / 1e6``; overall length and width without mirrors.
    Valid for: lengths from the papers; whole millimetres, so that the edge of a band is met exactly.
    Source: EN 721 as quoted on two French homologation pages.
    Confidence: verified second hand; check against the bought standard.

    Raises:
        OutsideValidity: no length or no width.

    >>> round(plan_area_m2(4904, 1904), 2)
    9.34
    """
    return above("length mm", length_mm) * above("width mm", width_mm) / 1e6


def area_below_edge_pct(area_m2: float, edge_m2: float) -> float:
    """How far a plan area stays below the edge of its row. Result in % of the edge.

    Equation: ``100 * (edge_m2 - area_m2) / edge_m2``.
    Valid for: areas above 0 up to the edge, which belongs to the row.
    Source: EN 721 as quoted: the openings jump at 5, 10, 15 and 20 m2. That 2 % are near is a house setting.
    Confidence: known.

    Raises:
        OutsideValidity: no area, or one beyond the edge.

    >>> round(area_below_edge_pct(9.34, 10), 1)
    6.6
    """
    area = within("plan area m2", above("plan area m2", area_m2), 0, above("edge m2", edge_m2))
    return 100 * (edge_m2 - area) / edge_m2


def high_vent_mm2(length_mm: float, width_mm: float, open_flame: bool) -> float:
    """Free area high up, in the roof. Result in mm2.

    Equation: by plan area up to 5, 10, 15, 20 m2 and beyond: ``7500, 10000, 12500, 15000, 20000``; without an open
        flame and up to 10 m2: ``1500``.
    Valid for: openings in the roof that work with a lifting roof down; an edge belongs to the smaller band. Over 10 m2
        without an open flame the full figures are a careful reading.
    Source: EN 721 as quoted on three homologation pages and in an inspection-body leaflet.
    Confidence: verified second hand; check band edges and the case over 10 m2 against the bought standard.

    Raises:
        OutsideValidity: no length or no width.

    >>> high_vent_mm2(4904, 1904, True), high_vent_mm2(5304, 1904, True), high_vent_mm2(4904, 1904, False)
    (10000, 12500, 1500)
    """
    area_m2 = plan_area_m2(length_mm, width_mm)
    if not open_flame and area_m2 <= _SEALED_UP_TO_M2:
        return _SEALED_HIGH_MM2
    return next(high for most, high, _ in _BANDS if area_m2 <= most)


def high_vent_in_wall_mm2(length_mm: float, width_mm: float, open_flame: bool) -> float:
    """Free area high up when all of it is in the walls. Result in mm2.

    Equation: ``2 * high_vent_mm2(...)``.
    Valid for: openings more than 1,800 mm above the floor and 300 mm above the top mattress, as high as possible.
    Source: EN 721 as quoted on three homologation pages and in an inspection-body leaflet.
    Confidence: verified second hand; check against the bought standard.

    Raises:
        OutsideValidity: no length or no width.

    >>> high_vent_in_wall_mm2(5304, 1904, True)
    25000
    """
    return 2 * high_vent_mm2(length_mm, width_mm, open_flame)


def low_vent_mm2(length_mm: float, width_mm: float, open_flame: bool) -> float:
    """Free area low down. Result in mm2.

    Equation: by plan area up to 5, 10, 15, 20 m2 and beyond: ``1000, 1500, 2000, 3000, 5000``; without an open flame
        and up to 10 m2: ``500``.
    Valid for: openings at most 100 mm above the floor, straight to the outside, clear of every exhaust; edges as above.
    Source: EN 721 as quoted on three homologation pages and in an inspection-body leaflet.
    Confidence: verified second hand; check band edges and the case over 10 m2 against the bought standard.

    Raises:
        OutsideValidity: no length or no width.

    >>> low_vent_mm2(4904, 1904, True), low_vent_mm2(5304, 1904, True), low_vent_mm2(4904, 1904, False)
    (1500, 2000, 500)
    """
    area_m2 = plan_area_m2(length_mm, width_mm)
    if not open_flame and area_m2 <= _SEALED_UP_TO_M2:
        return _SEALED_LOW_MM2
    return next(low for most, _, low in _BANDS if area_m2 <= most)


def needed_mm2(for_flame_mm2: float, for_sealed_mm2: float, open_flame: bool) -> float:
    """Which of a van's two figures for an opening counts. Result in mm2.

    Equation: ``for_flame_mm2`` with an open flame on board, ``for_sealed_mm2`` without.
    Valid for: figures above 0: every van needs some opening, so nought means that nobody filled it in.
    Source: EN 721 as quoted: one table with, one without appliances that burn the air of the room.
    Confidence: verified second hand; check against the bought standard.

    Raises:
        OutsideValidity: the figure that counts is missing.

    >>> needed_mm2(10000, 1500, True), needed_mm2(10000, 1500, False)
    (10000, 1500)
    """
    return above("opening needed mm2", for_flame_mm2 if open_flame else for_sealed_mm2)


def high_vent_met_share(roof_mm2: float, wall_mm2: float, needed_in_roof_mm2: float) -> float:
    """How far openings in roof and walls together meet what is needed high up. Result in parts of one; 1 is enough.

    Equation: ``roof_mm2 / needed_in_roof_mm2 + wall_mm2 / (2 * needed_in_roof_mm2)``: a wall counts half.
    Valid for: walls high enough to count at all.
    Source: EN 721 as quoted: both may be mixed; how they add is the house's reading.
    Confidence: estimate; check against the bought standard.

    Raises:
        OutsideValidity: negative areas, or nothing needed.

    >>> high_vent_met_share(8000, 4000, 10000), round(high_vent_met_share(8000, 3000, 10000), 2)
    (1.0, 0.95)
    """
    needed = above("needed in the roof mm2", needed_in_roof_mm2)
    return at_least("roof mm2", roof_mm2) / needed + at_least("wall mm2", wall_mm2) / (2 * needed)


def stack_flow_m3_per_h(low_mm2: float, high_mm2: float, height_m: float, inside_c: float, outside_c: float) -> float:
    """Air that rises through a low and a high opening because it is warm inside. Result in m3/h.

    Equation: ``3600 * 0.6 * A * sqrt(2 * 9.81 * height_m * (inside_c - outside_c) / T)``; ``A`` in m2 is both openings
        one behind the other, ``1 / sqrt(1 / low**2 + 1 / high**2)``, ``T`` in K the mean of inside and outside.
    Valid for: no wind, free areas, the inside no colder than the outside, both between -60 and 60 C.
    Source: stack effect through sharp-edged openings, discharge 0.6.
    Confidence: known; wind moves far more.

    Raises:
        OutsideValidity: a closed opening, a negative height, or an inside colder than the outside.

    >>> round(stack_flow_m3_per_h(2000, 12500, 1.25, 20, -5), 2)
    6.31
    """
    if within("inside C", inside_c, -60, 60) < within("outside C", outside_c, -60, 60):
        raise OutsideValidity("inside C", inside_c, f"{outside_c:g} or more, as it is outside")
    area_m2 = 1e-6 / sqrt(1 / above("low mm2", low_mm2) ** 2 + 1 / above("high mm2", high_mm2) ** 2)
    mean_k = (inside_c + outside_c) / 2 + 273.15
    lift = 2 * 9.81 * at_least("height m", height_m) * (inside_c - outside_c) / mean_k
    return 3600 * 0.6 * area_m2 * sqrt(lift)
