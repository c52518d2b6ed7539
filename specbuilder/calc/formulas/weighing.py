"""What a weighbridge says beside what was worked out."""

from collections.abc import Iterable
from math import hypot

from .validity import OutsideValidity, above, at_least, within

ROADSIDE_GBP = ((0.0, 100), (10.0, 200), (15.0, 300))
"""Fixed penalty for each limit that is passed: from so many per cent over, so many pounds."""
ROADSIDE_LEEWAY_PCT = 5.0
"""What examiners usually let pass. It is no permission: the van is over its limit all the same."""
ROADSIDE_COURT_PCT = 30.0
"""From here on a court decides."""


def tolerance_band_kg(declared_kg: float, share: float = 0.05) -> tuple[float, float]:
    """Between which masses a declared mass may turn out when weighed. Result in kg, least first.

    Equation: ``declared_kg * (1 - share)`` to ``declared_kg * (1 + share)``.
    Valid for: declared masses in running order; it is no leave to pass the plate. ``share`` from 0 to 1.
    Source: type approval of motor caravans under Regulation (EU) 2021/535: 5 % between declared and weighed.
    Confidence: verified second hand; a weighbridge ticket takes the place of the band.

    Raises:
        OutsideValidity: when there is no mass or the share is not between nothing and all.

    >>> tolerance_band_kg(2500)
    (2375.0, 2625.0)
    """
    off = above("declared kg", declared_kg) * within("tolerance", share, 0, 1)
    return declared_kg - off, declared_kg + off


def errors_together_kg(errors_kg: Iterable[float]) -> float:
    """How far a sum of estimates is off when each may be off by itself. Result in kg, plus or minus.

    Equation: ``sqrt(sum(error_kg ** 2))``.
    Valid for: errors that do not depend on each other; a slip common to all of them adds up instead.
    Source: addition of independent errors in quadrature.
    Confidence: known.

    Raises:
        OutsideValidity: when an error is negative.

    >>> errors_together_kg([3, 4])
    5.0
    """
    return hypot(*(at_least("error kg", error) for error in errors_kg))


def other_axle_kg(total_kg: float, weighed_axle_kg: float) -> float:
    """Load of the axle that did not stand on the weighbridge. Result in kg.

    Equation: ``total_kg - weighed_axle_kg``.
    Valid for: both weighings in the same state of load, on level ground.
    Source: practice of weighing a van on a public weighbridge, as an examiner describes it.
    Confidence: verified second hand; leave a margin and keep the ticket.

    Raises:
        OutsideValidity: when the total is nothing or the axle weighs more than the whole van.

    >>> other_axle_kg(2985, 1480)
    1505
    """
    return total_kg - within("weighed axle kg", weighed_axle_kg, 0, above("total kg", total_kg))


def prediction_error_pct(weighed_kg: float, predicted_kg: float) -> float:
    """How much more the van weighs than was worked out. Result in %; negative when it is lighter.

    Equation: ``100 * (weighed_kg - predicted_kg) / predicted_kg``.
    Valid for: both in the same state of load.
    Source: arithmetic.
    Confidence: known.

    Raises:
        OutsideValidity: when either mass is nothing.

    >>> prediction_error_pct(2525, 2500)
    1.0
    """
    weighed, predicted = above("weighed kg", weighed_kg), above("predicted kg", predicted_kg)
    return 100 * (weighed - predicted) / predicted


def overload_pct(weighed_kg: float, limit_kg: float) -> float:
    """How far a weighed mass is above its limit. Result in % of the limit; 0 when it is not above.

    Equation: ``max(0, 100 * (weighed_kg - limit_kg) / limit_kg)``; total, front and rear each against its own limit.
    Valid for: weighed masses; anything above 0 is over the limit, whatever is usually let pass.
    Source: arithmetic.
    Confidence: known.

    Raises:
        OutsideValidity: when there is no mass or no limit.

    >>> overload_pct(3640, 3500)
    4.0
    """
    weighed, limit = above("weighed kg", weighed_kg), above("limit kg", limit_kg)
    return max(0.0, 100 * (weighed - limit) / limit)


def fixed_penalty_gbp(over_pct: float) -> int:
    """What the roadside practice of Great Britain asks for one limit that is passed. Result in pounds.

    Equation: 0 up to 5 % over, 100 below 10 %, 200 below 15 %, 300 below 30 %.
    Valid for: below 30 % over; from there a court decides. 0 does not say that the load is lawful: any overload is an
        offence.
    Source: a vehicle-weighing guide that quotes the examining agency's penalties.
    Confidence: verified second hand; sums and leeway must be checked with the agency.

    Raises:
        OutsideValidity: when the overload is negative, or one for a court.

    >>> [fixed_penalty_gbp(over) for over in (5, 6, 10, 15)]
    [0, 100, 200, 300]
    """
    if at_least("overload %", over_pct) >= ROADSIDE_COURT_PCT:
        raise OutsideValidity("overload %", over_pct, f"below {ROADSIDE_COURT_PCT:g}")
    if over_pct <= ROADSIDE_LEEWAY_PCT:
        return 0
    return max(pounds for from_pct, pounds in ROADSIDE_GBP if over_pct >= from_pct)
