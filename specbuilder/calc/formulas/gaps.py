"""Heights, gaps and reaches inside and above the van. All lengths in mm."""

from math import ceil, floor

from .validity import OutsideValidity, above, at_least, within


def x_from_datum_mm(x_mm: float, anchor_x_mm: float) -> float:
    """Distance behind the datum, the rear face of the left door pillar. Result in mm.

    Equation: ``anchor_x_mm + x_mm``; ``anchor_x_mm`` is the anchor's own distance behind the datum.
    Valid for: lengths along the van, back positive.
    Source: the job datum of the workshop.
    Confidence: known.

    >>> x_from_datum_mm(-300, 2520)
    2220
    """
    return anchor_x_mm + x_mm


def above_steel_mm(kit_mm: float, highest_on_kit_mm: float, highest_fixed_mm: float) -> float:
    """How far the highest thing stands above the van's own roof when all is closed. Result in mm.

    Equation: ``max(kit_mm + highest_on_kit_mm, highest_fixed_mm)``: a thing on the kit adds to it, a fixed one not.
    Valid for: 0 where there is none of a kind.
    Source: height summed over what stands on top of each other; a house rule.
    Confidence: known; heights of kits are estimates until measured, so measure again on collection day.

    >>> above_steel_mm(75, 55, 50)
    130
    """
    return max(kit_mm + highest_on_kit_mm, highest_fixed_mm)


def gap_to_bench_mm(bench_front_x_mm: float, bench_shift_mm: float, reach_x_mm: float) -> float:
    """Clear length between what reaches back and the front edge of the bench; negative when they meet. Result in mm.

    Equation: ``bench_front_x_mm + bench_shift_mm - reach_x_mm``, all measured back from the datum.
    Valid for: a bench that faces forward; the shift moves the bench back.
    Source: house measure for turning seats and fridge doors.
    Confidence: known; drawings of seat and bench go first, try it before anything is bolted.

    >>> gap_to_bench_mm(720, 0, 650)
    70
    """
    return bench_front_x_mm + bench_shift_mm - reach_x_mm


def longest_bed_mm(longest_own_mm: float, longest_bench_mm: float, bench_shift_mm: float) -> float:
    """Length of the longest bed. Result in mm.

    Equation: ``max(longest_own_mm, longest_bench_mm - bench_shift_mm)``: a bench set back leaves a shorter bed.
    Valid for: minus infinity where there is no bed of a kind.
    Source: house measure of clear lying length.
    Confidence: known; drawings of bench and bed go first.

    >>> longest_bed_mm(1740, 1830, 80)
    1750
    """
    return max(longest_own_mm, longest_bench_mm - bench_shift_mm)


def barrier_room_mm(closed_height_mm: float, barrier_mm: float, spare_mm: float) -> float:
    """What is left below a height bar with a little to spare. Result in mm; negative: do not drive under it.

    Equation: ``barrier_mm - closed_height_mm - spare_mm``.
    Valid for: the closed van at its highest ride height; heights of 1,000 to 5,000 mm, 0 or more to spare.
    Source: bars of British car parks are 1.9 to 2.2 m by no standard; what to spare is a house setting.
    Confidence: estimate; measure the finished van, and the sign at the bar goes first.

    Raises:
        OutsideValidity: when a height is no van's or bar's, or the spare is negative.

    >>> barrier_room_mm(2055, 2200, 50)
    95
    """
    height = within("closed height mm", closed_height_mm, 1000, 5000)
    return within("barrier mm", barrier_mm, 1000, 5000) - height - at_least("spare mm", spare_mm)


def panel_rows_mm(panels: int, length_mm: float, width_mm: float, roof_width_mm: float) -> float:
    """Least length of roof that alike panels take, lying in rows across it. Result in mm.

    Equation: the least of ``ceil(k / abreast) * length_mm + ceil((panels - k) / abreast_turned) * width_mm`` over ``k``
        panels that lie along the roof; ``abreast = floor(roof_width_mm / width_mm)``, turned
        ``floor(roof_width_mm / length_mm)``.
    Valid for: 0 to 12 panels of 100 to 4,000 mm; the roof as wide as its flat part; no gaps, no overhang. Feet, cable
        glands, fans and windows ask for more.
    Source: rectangles counted in rows; a house measure.
    Confidence: known; draw it on the real roof, its ribs and bows decide.

    Raises:
        OutsideValidity: when a size is no panel's, or a panel is wider than the roof both ways.

    >>> panel_rows_mm(2, 1150, 540, 1300), panel_rows_mm(3, 1480, 680, 1340)
    (1080, 4440)
    """
    count = int(within("panels", panels, 0, 12))
    sizes = [within(name, mm, 100, 4000) for name, mm in (("panel length mm", length_mm), ("panel width mm", width_mm))]
    roof = above("roof width mm", roof_width_mm)
    along, turned = floor(roof / sizes[1]), floor(roof / sizes[0])
    if not (along or turned):
        raise OutsideValidity("roof width mm", roof_width_mm, f"at least {min(sizes):g} for this panel")
    found = [
        (ceil(k / along) * sizes[0] if k else 0) + (ceil((count - k) / turned) * sizes[1] if count > k else 0)
        for k in range(count + 1)
        if (along or not k) and (turned or k == count)
    ]
    return min(found)
