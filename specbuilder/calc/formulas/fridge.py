"""What a compressor fridge takes in a day as the air around it warms."""

from .validity import above, within


def carnot(inside_c: float, around_c: float) -> float:
    """The best a fridge can do between the two: heat moved for each unit of work. Result in times the work.

    Equation: ``(inside_c - 15 + 273.15) / ((around_c + 15) - (inside_c - 15))``: one end 15 K colder than the inside,
        the other 15 K warmer than the air.
    Valid for: inside from -25 to 15 C, around from the inside up to 60 C.
    Source: Carnot's limit; the 15 K at each end are assumed.
    Confidence: estimate; used as a ratio only.

    Raises:
        OutsideValidity: outside those ranges.

    >>> round(carnot(5, 25), 2)
    5.26
    """
    inside = within("inside C", inside_c, -25, 15)
    around = within("around C", around_c, inside, 60)
    return (inside - 15 + 273.15) / ((around + 15) - (inside - 15))


def fridge_day_wh(at_25_c_wh: float, around_c: float, inside_c: float = 5.0) -> float:
    """Energy of a day at this temperature, from the figure at 25 C. Result in Wh.

    Equation: ``at_25_c_wh * (around_c - inside_c) / (25 - inside_c) * carnot(inside_c, 25) / carnot(inside_c,
        around_c)``.
    Valid for: compressor fridges, doors opened as usual, inside from -25 to 15 C, around from the inside up to 60 C.
    Source: heat gained grows with the difference and the pump gets worse with it; an owner's log of a 90 L one agrees.
    Confidence: estimate; the watts on the plate times 24 h are two to three times too much.

    Raises:
        OutsideValidity: no energy at 25 C, or temperatures outside those ranges.

    >>> round(fridge_day_wh(400, 32)), round(fridge_day_wh(400, 40))
    (616, 910)
    """
    worse = carnot(inside_c, 25) / carnot(inside_c, around_c)
    return above("day at 25 C Wh", at_25_c_wh) * (around_c - inside_c) / (25 - inside_c) * worse
