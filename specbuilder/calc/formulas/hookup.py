"""The campsite plug: what it gives and what is asked of it at once."""

from __future__ import annotations

from .validity import above, at_least, within


def site_w(site_a: float, mains_v: float = 230) -> float:
    """Watts a pitch gives. Result in W.

    Equation: ``site_a * mains_v``.
    Valid for: pitches of 0 to 32 A (3, 5, 6, 10 and 16 A are met), a mains voltage from 200 to 260 V. A breaker holds
    a little more for a while; nothing is planned on that.
    Source: articles of the caravan press.
    Confidence: verified.

    Raises:
        OutsideValidity: amps or volts outside the range.

    >>> site_w(6), site_w(16)
    (1380, 3680)
    """
    return within("amps of the pitch A", site_a, 0, 32) * within("mains volts V", mains_v, 200, 260)


def charger_input_w(charge_a: float, charge_v: float, efficiency: float) -> float:
    """What a battery charger takes from the plug. Result in W.

    Equation: ``charge_a * charge_v / efficiency``.
    Valid for: 0 A or more, a voltage above 0 (14.4 V at full), an efficiency above 0 up to 1 (0.88).
    Source: converter arithmetic.
    Confidence: known; the charger's plate goes first.

    Raises:
        OutsideValidity: amps below 0, no voltage, an efficiency that is none.

    >>> round(charger_input_w(30, 14.4, 0.88))
    491
    """
    out_w = at_least("charging amps A", charge_a) * above("charging volts V", charge_v)
    return out_w / above("efficiency", within("efficiency", efficiency, 0, 1))


def at_once_w(watts_w: float, largest_cooking_w: float) -> float:
    """Watts on the plug when everything runs that runs together. Result in W.

    Equation: ``watts_w + largest_cooking_w``: of kettle, microwave and the like only the largest, for nobody needs
    two of them at the same moment; charger and water heater count.
    Valid for: 0 W or more.
    Source: house rule; articles of the caravan press.
    Confidence: estimate.

    Raises:
        OutsideValidity: watts below 0.

    >>> at_once_w(850 + 491, 2000)
    3341
    """
    return at_least("watts W", watts_w) + at_least("largest of the cooking things W", largest_cooking_w)


def mains_a(watts_w: float, mains_v: float = 230) -> float:
    """Current that so many watts take from the plug. Result in A.

    Equation: ``watts_w / mains_v``.
    Valid for: 0 W or more, a mains voltage from 200 to 260 V; things that heat, near enough for the rest.
    Source: ordinary trade practice.
    Confidence: known.

    Raises:
        OutsideValidity: watts below 0, volts outside the range.

    >>> round(mains_a(3341), 1)
    14.5
    """
    return at_least("watts W", watts_w) / within("mains volts V", mains_v, 200, 260)


def over_w(watts_w: float, site_a: float, mains_v: float = 230) -> float:
    """How much more is asked than the pitch gives; nought when it suffices. Result in W.

    Equation: ``max(watts_w - site_a * mains_v, 0)``.
    Valid for: as ``site_w``.
    Source: articles of the caravan press.
    Confidence: verified.

    Raises:
        OutsideValidity: watts below 0, amps or volts outside the range.

    >>> over_w(3341, 10), over_w(3341, 16)
    (1041, 0)
    """
    return max(at_least("watts W", watts_w) - site_w(site_a, mains_v), 0)
