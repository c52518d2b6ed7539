"""Lifting a hinged roof by hand: moments about the hinge, push and up-force at the free edge. Lengths in m.

A roof may drop on hands: figures show where to look, the kit's own paper and a trial with the real load decide.
"""

from collections.abc import Iterable
from math import cos, radians, sin

from .validity import above, at_least, within

STANDARD_GRAVITY = 9.81
ZERO_CELSIUS_K = 273.15
RATED_AT_C = 20.0
"""Temperature at which gas struts are rated."""


def weight_moment_nm(items: Iterable[tuple[float, float]], roof_angle_deg: float) -> float:
    """How hard the weight of a roof and what lies on it turns it down about its hinge. Result in N m.

    Equation: ``9.81 * sum(mass_kg * x_m) * cos(roof_angle_deg)`` over pairs of ``mass_kg`` and ``x_m``, the distance of
        each thing from the hinge along the roof.
    Valid for: roof angles from 0 (closed) to 90 degrees; masses and distances of 0 or more; a van on level ground.
    Source: statics of a hinged lid.
    Confidence: known.

    Raises:
        OutsideValidity: when angle, mass or distance is no roof's.

    >>> weight_moment_nm([(50, 1)], 0)
    490.5
    """
    angle = radians(within("roof angle deg", roof_angle_deg, 0, 90))
    moment = sum(at_least("mass kg", mass) * at_least("distance from the hinge m", x) for mass, x in items)
    return STANDARD_GRAVITY * moment * cos(angle)


def strut_moment_nm(struts: int, strut_n: float, pick_up_m: float, strut_angle_deg: float) -> float:
    """How hard the gas struts turn the roof up about its hinge. Result in N m.

    Equation: ``struts * strut_n * pick_up_m * sin(strut_angle_deg)``; ``pick_up_m`` from hinge to where a strut holds
        the roof, the angle between strut and roof.
    Valid for: alike struts; angles from 0 (along the roof, no lift) to 90 degrees; the force printed on them at 20
        degrees C.
    Source: gas strut explanation pages; statics of a hinged lid.
    Confidence: known; the kit's own paper says which struts.

    Raises:
        OutsideValidity: when a number is negative or the angle no strut's.

    >>> strut_moment_nm(2, 1000, 0.5, 90)
    1000.0
    """
    arm = at_least("pick-up m", pick_up_m) * sin(radians(within("strut angle deg", strut_angle_deg, 0, 90)))
    return at_least("struts", struts) * at_least("strut force N", strut_n) * arm


def push_at_edge_n(weight_nm: float, strut_nm: float, hinge_to_edge_m: float) -> float:
    """Push at the free edge that lifts the roof or holds it. Result in N; negative: the struts push up by so much.

    Equation: ``(weight_nm - strut_nm) / hinge_to_edge_m``.
    Valid for: both moments at the same roof angle; a push square to the roof at its edge; friction is left out.
    Source: statics of a hinged lid.
    Confidence: known; try it with the real load.

    Raises:
        OutsideValidity: when a moment is negative or the roof has no length.

    >>> push_at_edge_n(650, 390, 2.6)
    100.0
    """
    down, up = at_least("weight moment N m", weight_nm), at_least("strut moment N m", strut_nm)
    return (down - up) / above("hinge to edge m", hinge_to_edge_m)


def up_force_n(weight_nm: float, strut_nm: float, hinge_to_edge_m: float) -> float:
    """How hard the struts push the raised roof up at its free edge. Result in N; negative: it comes down.

    Equation: ``(strut_nm - weight_nm) / hinge_to_edge_m``.
    Valid for: both moments at the same roof angle; friction is left out.
    Source: statics of a hinged lid.
    Confidence: known; try it with the real load, and never stand under a roof that struts alone hold.

    Raises:
        OutsideValidity: when a moment is negative or the roof has no length.

    >>> up_force_n(600, 1120, 2.6)
    200.0
    """
    return -push_at_edge_n(weight_nm, strut_nm, hinge_to_edge_m) + 0.0


def added_push_n(mass_kg: float, x_m: float, hinge_to_edge_m: float) -> float:
    """How much harder a thing on the closed roof makes it to lift. Result in N at the free edge.

    Equation: ``9.81 * mass_kg * x_m / hinge_to_edge_m``; ``x_m`` is its distance from the hinge.
    Valid for: a closed roof; things between hinge and free edge.
    Source: statics of a hinged lid.
    Confidence: known.

    Raises:
        OutsideValidity: when the mass is negative, the roof has no length, or the thing is not on it.

    >>> round(added_push_n(10, 1.3, 2.6), 2)
    49.05
    """
    edge = above("hinge to edge m", hinge_to_edge_m)
    return STANDARD_GRAVITY * at_least("mass kg", mass_kg) * within("distance from the hinge m", x_m, 0, edge) / edge


def strut_at_temperature_n(rated_n: float, temp_c: float) -> float:
    """What is left of a gas strut's force in the cold. Result in N.

    Equation: ``rated_n * (temp_c + 273.15) / (20 + 273.15)``: about a third of a per cent for each degree.
    Valid for: -30 to 80 degrees C; new struts. Old ones have lost gas besides.
    Source: gas law at constant volume; strut makers name 0.3 to 0.4 % a degree.
    Confidence: known; the kit's own paper goes first.

    Raises:
        OutsideValidity: when the force is negative or the temperature out of range.

    >>> round(strut_at_temperature_n(1000, 0))
    932
    """
    kelvin = within("temperature deg C", temp_c, -30, 80) + ZERO_CELSIUS_K
    return at_least("rated force N", rated_n) * kelvin / (RATED_AT_C + ZERO_CELSIUS_K)
