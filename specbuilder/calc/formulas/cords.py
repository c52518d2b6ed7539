"""Mains cords at 230 V: what they lose and carry. Lengths are ONE WAY."""

from collections.abc import Sequence

from .validity import above, within


def cord_drop_v(load_a: float, length_m: float, drop_mv_per_a_m: float) -> float:
    """Volts that a mains cord loses, there and back. Result in V.

    Equation: ``drop_mv_per_a_m * load_a * length_m / 1000``; the table's figure counts both conductors already.
    Valid for: single phase, 0 to 125 A, 0 to 200 m of cord, 0 to 100 mV/A/m (1.5 mm2 32, 2.5 mm2 19 at 60 degrees).
    Source: BS 7671 table 4F3B, as reproduced.
    Confidence: verified; to be checked against the bought standard.

    Raises:
        OutsideValidity: a value of 0, below it or beyond its range.

    >>> round(cord_drop_v(16, 25, 19), 1)
    7.6
    """
    above("load A", within("load A", load_a, 0, 125))
    above("length m", within("length m", length_m, 0, 200))
    above("drop mV/A/m", within("drop mV/A/m", drop_mv_per_a_m, 0, 100))
    return drop_mv_per_a_m * load_a * length_m / 1000


def warmth_share(ambient_c: float, shares: Sequence[tuple[float, float]]) -> float:
    """What is left of a cord's amps in warm surroundings. Result as a share of 1.

    Equation: the share of the first row of ``shares`` (degrees C, share) that is as warm as ``ambient_c`` or warmer;
    between two rows the warmer one counts.
    Valid for: from -20 degrees to the warmest row (50 degrees for cord of 60); cooler than the first row gives no more
    than that row.
    Source: BS 7671 (0.91 at 35, 0.82 at 40, 0.71 at 45, 0.58 at 50 degrees), as reproduced.
    Confidence: verified; to be checked against the bought standard.

    Raises:
        OutsideValidity: warmer than the warmest row.

    >>> warmth_share(38, [(30, 1), (35, 0.91), (40, 0.82)])
    0.82
    """
    within("warmth around the cord C", ambient_c, -20, max((degrees for degrees, _ in shares), default=-21))
    return min((degrees, share) for degrees, share in shares if degrees >= ambient_c)[1]


def cord_ampacity_a(cord_a: float, wall_a: float | None, warmth_share: float, bundle_share: float) -> float:
    """What a mains cord carries behind a panel of the van. Result in A.

    Equation: ``min(cord_a, wall_a) * warmth_share * bundle_share``; ``cord_a`` in free air at 30 degrees, ``wall_a``
    that of the same section in an insulated wall (None where it lies in none).
    Valid for: 0 to 125 A, shares above 0 up to 1. Surrounded by insulation on all sides it carries less than in a wall:
    give that column as ``wall_a`` then.
    Source: BS 7671 tables 4F3A (cord) and 4D5 (flat cable in insulated walls), as reproduced.
    Confidence: verified; 4D5 is for flat cable, so for cord in a wall it is the nearest table and to be checked.

    Raises:
        OutsideValidity: a value of 0, below it or beyond its range.

    >>> round(cord_ampacity_a(16, 14.5, 0.82, 1), 2)
    11.89
    """
    carried = above("cord A", within("cord A", cord_a, 0, 125))
    if wall_a is not None:
        carried = min(carried, above("cord in the wall A", within("cord in the wall A", wall_a, 0, 125)))
    warm = _share("share left by the warmth", warmth_share)
    return carried * warm * _share("share left in the bundle", bundle_share)


def _share(quantity: str, share: float) -> float:
    return above(quantity, within(quantity, share, 0, 1))
