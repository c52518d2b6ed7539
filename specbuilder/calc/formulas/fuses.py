"""Fuses: the window between load and cable, the next cable when it is empty, and what a fuse must be able to break."""

from collections.abc import Sequence

from .validity import above, within

_ROUNDING = 1e-9


def least_fuse_a(load_a: float, over_load: float) -> float:
    """Smallest rating that carries a steady load for long. Result in A.

    Equation: ``over_load * load_a``; 1.25 for fuses, 1 for circuit breakers.
    Valid for: 0 to 2,000 A; ``over_load`` from 1 to 2.
    Source: inverter and battery guides (125 %, read in two); BS 7671 433.1 for breakers.
    Confidence: verified for fuses, known for breakers.

    Raises:
        OutsideValidity: a value of 0, below it or beyond its range.

    >>> least_fuse_a(5.5, 1.25)
    6.875
    """
    return _amps("load A", load_a) * within("fuse over load", over_load, 1, 2)


def fuse_in_window_a(load_a: float, carries_a: float, ratings_a: Sequence[float], over_load: float) -> float | None:
    """The smallest rating that carries the load and still protects the cable; None when there is none. Result in A.

    Equation: ``min(r for r in ratings_a if over_load * load_a <= r <= carries_a)``.
    Valid for: ``carries_a`` after bundle and place. None means the next thicker cable, never a larger fuse.
    Source: as ``least_fuse_a``; ISO 8820 (ratings). Rules that allow 150 % of the conductor are not followed.
    Confidence: verified; the part's own rating goes first where the cable carries it.

    Raises:
        OutsideValidity: amps of 0, below it or beyond its range.

    >>> fuse_in_window_a(5.5, 25, [5, 7.5, 10], 1.25)
    7.5
    >>> fuse_in_window_a(9, 10.8, [5, 7.5, 10, 15], 1.25) is None
    True
    """
    least = least_fuse_a(load_a, over_load)
    most = _amps("amps the cable carries", carries_a)
    return min((r for r in ratings_a if least - _ROUNDING <= r <= most + _ROUNDING), default=None)


def smallest_fused_section(
    load_a: float, sections: Sequence[tuple[float, float]], ratings_a: Sequence[float], over_load: float
) -> tuple[float, float] | None:
    """The thinnest section with a fuse in its window, and that fuse; None when no section has one. Result in mm2 and A.

    Equation: the first of ``sections`` (mm2, amps it carries) in rising order whose ``fuse_in_window_a`` is not None.
    Valid for: sections that keep the drop already; each with its amps after bundle and place.
    Source: as ``fuse_in_window_a``.
    Confidence: verified.

    Raises:
        OutsideValidity: amps of 0, below it or beyond its range.

    >>> smallest_fused_section(9, [(1.5, 10.8), (2.5, 15)], [5, 7.5, 10, 15], 1.25)
    (2.5, 15)
    """
    for area_mm2, carries_a in sorted(sections):
        rating_a = fuse_in_window_a(load_a, carries_a, ratings_a, over_load)
        if rating_a is not None:
            return area_mm2, rating_a
    return None


def packs_short_circuit_ka(pack_ka: float, packs: float) -> float:
    """What a short circuit may draw from packs side by side. Result in kA.

    Equation: ``packs * pack_ka``; packs in series would not add.
    Valid for: like packs in parallel, 0 to 50 kA each, 1 to 8 of them.
    Source: article on fuses off grid.
    Confidence: verified; the maker's short-circuit current of the whole bank goes first.

    Raises:
        OutsideValidity: a value beyond its range.

    >>> packs_short_circuit_ka(6, 2)
    12
    """
    above("short circuit kA", within("short circuit kA", pack_ka, 0, 50))
    return within("packs", packs, 1, 8) * pack_ka


def short_circuit_behind_ka(source_ka: float, open_v: float, loop_mohm: float) -> float:
    """What a short circuit may still draw behind a length of cable. Result in kA.

    Equation: ``open_v / (open_v / source_ka + loop_mohm)``: the source's own resistance and that of both conductors, in
    mohm, in a row.
    Valid for: 0 to 100 kA, 0 to 60 V, 0 to 1,000 mohm; cold copper, since that draws most. Joints only lessen it.
    Source: Ohm's law.
    Confidence: known.

    Raises:
        OutsideValidity: a value beyond its range.

    >>> round(short_circuit_behind_ka(4, 12.8, 1.42), 2)
    2.77
    """
    above("short circuit kA", within("short circuit kA", source_ka, 0, 100))
    above("open voltage V", within("open voltage V", open_v, 0, 60))
    return open_v / (open_v / source_ka + within("loop mohm", loop_mohm, 0, 1000))


def kind_that_breaks(needed_ka: float, kinds: Sequence[tuple[str, float]]) -> str | None:
    """The first kind of fuse that can break so much; None when no kind can.

    Equation: the kind of least capacity with ``capacity >= needed_ka`` out of ``kinds`` (kind, kA).
    Valid for: 0 to 100 kA at the voltage for which the capacities hold.
    Source: article on fuses off grid (blade 1 kA, bolt-down 2 kA); terminal 10 kA, strip 6 kA, class T 20 kA.
    Confidence: known; the figure printed on the fuse goes first.

    Raises:
        OutsideValidity: ``needed_ka`` is 0, below it or beyond its range.

    >>> kind_that_breaks(6, [("bolt-down, large", 2), ("strip fuse, 32 V", 6), ("class T, 125 V", 20)])
    'strip fuse, 32 V'
    """
    above("short circuit kA", within("short circuit kA", needed_ka, 0, 100))
    able = [(capacity, kind) for kind, capacity in kinds if capacity >= needed_ka - _ROUNDING]
    return min(able)[1] if able else None


def kind_by_amps(rating_a: float, kinds: Sequence[tuple[str, float]]) -> str | None:
    """The series in which a rating is bought; None when no series goes so high.

    Equation: the kind of least ``most`` with ``rating_a <= most`` out of ``kinds`` (kind, largest rating in A).
    Valid for: 0 to 2,000 A.
    Source: ISO 8820 (blade to 40 A, bolt-down to 400 A).
    Confidence: known.

    Raises:
        OutsideValidity: ``rating_a`` is 0, below it or beyond its range.

    >>> kind_by_amps(50, [("blade", 40), ("bolt-down", 400)])
    'bolt-down'
    """
    _amps("fuse A", rating_a)
    able = [(most, kind) for kind, most in kinds if rating_a <= most]
    return min(able)[1] if able else None


def _amps(quantity: str, amps: float) -> float:
    return above(quantity, within(quantity, amps, 0, 2000))
