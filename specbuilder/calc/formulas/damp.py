"""When it gets wet inside, how much air carries the water away, and what that air costs in heat."""

from math import exp, log

from .validity import OutsideValidity, above, at_least, within

_MAGNUS, _MAGNUS_C, _MAGNUS_HPA = 17.62, 243.12, 6.112
"""Over water, from -45 to 60 C."""


def dew_point_c(air_c: float, humidity_share: float) -> float:
    """The temperature below which this air wets a surface. Result in C.

    Equation: ``243.12 * g / (17.62 - g)`` with ``g = ln(humidity_share) + 17.62 * air_c / (243.12 + air_c)``.
    Valid for: air from -45 to 60 C, relative humidity above 0 up to 1.
    Source: Magnus formula over water, 17.62 and 243.12.
    Confidence: known.

    Raises:
        OutsideValidity: air outside that range, or humidity that is no share.

    >>> round(dew_point_c(20, 0.6), 1)
    12.0
    """
    air = within("air C", air_c, -45, 60)
    humidity = above("relative humidity", within("relative humidity", humidity_share, 0, 1))
    g = log(humidity) + _MAGNUS * air / (_MAGNUS_C + air)
    return _MAGNUS_C * g / (_MAGNUS - g)


def water_in_air_g_per_m3(air_c: float, humidity_share: float) -> float:
    """Water that a cubic metre of this air holds. Result in g/m3.

    Equation: ``216.7 * humidity_share * 6.112 * exp(17.62 * air_c / (243.12 + air_c)) / (273.15 + air_c)``.
    Valid for: air from -45 to 60 C, relative humidity from 0 to 1.
    Source: Magnus formula over water, and water vapour as a gas.
    Confidence: known.

    Raises:
        OutsideValidity: air outside that range, or humidity that is no share.

    >>> round(water_in_air_g_per_m3(16, 0.7), 2)
    9.52
    """
    air, humidity = within("air C", air_c, -45, 60), within("relative humidity", humidity_share, 0, 1)
    return 216.7 * humidity * _MAGNUS_HPA * exp(_MAGNUS * air / (_MAGNUS_C + air)) / (273.15 + air)


def air_needed_m3_per_h(moisture_g_per_h: float, inside_g_per_m3: float, outside_g_per_m3: float) -> float:
    """Outside air that carries this much water away. Result in m3/h.

    Equation: ``moisture_g_per_h / (inside_g_per_m3 - outside_g_per_m3)``.
    Valid for: outside air that is drier than the inside is to be, else no amount is enough. A sleeper gives 50 g/h.
    Source: balance of water; sleepers 40 to 60 g/h and cooking 600 to 1,500 g/h as published.
    Confidence: verified second hand for the sources of water, known for the balance.

    Raises:
        OutsideValidity: negative water, or outside air that is no drier.

    >>> round(air_needed_m3_per_h(100, 9.52, 2.90), 1)
    15.1
    """
    moisture = at_least("moisture g/h", moisture_g_per_h)
    dry = at_least("water outside g/m3", outside_g_per_m3)
    return moisture / above("drier outside by g/m3", inside_g_per_m3 - dry)


def air_heat_w(air_m3_per_h: float, inside_c: float, outside_c: float) -> float:
    """Heat that leaves with this much air. Result in W.

    Equation: ``0.335 * air_m3_per_h * (inside_c - outside_c)``; 0.335 Wh warm a cubic metre by one degree.
    Valid for: air about as dense as at the sea, the inside no colder than the outside, both between -60 and 60 C.
    Source: heat balance.
    Confidence: known.

    Raises:
        OutsideValidity: negative air, or an inside colder than the outside.

    >>> round(air_heat_w(15.1, 16, -5))
    106
    """
    if within("inside C", inside_c, -60, 60) < within("outside C", outside_c, -60, 60):
        raise OutsideValidity("inside C", inside_c, f"{outside_c:g} or more, as it is outside")
    return 0.335 * at_least("air m3/h", air_m3_per_h) * (inside_c - outside_c)
