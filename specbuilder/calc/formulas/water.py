"""How long fresh water lasts, what waste it becomes, and what the pump takes for it."""

from .validity import above, at_least


def water_days(fresh_l: float, people: float, per_person_day_l: float) -> float:
    """How many days the fresh water lasts. Result in days.

    Equation: ``fresh_l / (people * per_person_day_l)``.
    Valid for: water above 0 L: a tank without litres is one nobody filled in. 10 L each without shower, 25 L with it.
    Source: caravan clubs: 3 to 5 L to drink and cook, 5 to 10 L to wash up for all, 10 L and more to wash.
    Confidence: estimate; 10 L is a house setting.

    Raises:
        OutsideValidity: no water, nobody who uses it, or nothing used.

    >>> water_days(50, 2, 10)
    2.5
    """
    use_l = above("people", people) * above("a person and day L", per_person_day_l)
    return above("fresh water L", fresh_l) / use_l


def water_a_day_l(people: float, per_person_day_l: float) -> float:
    """What everybody together uses in a day. Result in L.

    Equation: ``people * per_person_day_l``.
    Valid for: 10 L each without shower, 25 L with it.
    Source: caravan clubs: 3 to 5 L to drink and cook, 5 to 10 L to wash up for all, 10 L and more to wash.
    Confidence: estimate; 10 L is a house setting.

    Raises:
        OutsideValidity: nobody who uses it, or nothing used.

    >>> water_a_day_l(2, 10)
    20
    """
    return above("people", people) * above("a person and day L", per_person_day_l)


def waste_share(waste_l: float, fresh_l: float) -> float:
    """How much of the fresh water the fixed waste tank takes. Result in parts of one; half is enough.

    Equation: ``waste_l / fresh_l``.
    Valid for: tanks above 0 L, fixed ones only: a can that is carried out does not count.
    Source: EN 1646-1 as reported: fixed waste about half of fresh.
    Confidence: verified second hand; check against the bought standard.

    Raises:
        OutsideValidity: a tank without litres.

    >>> waste_share(35, 70)
    0.5
    """
    return above("waste L", waste_l) / above("fresh L", fresh_l)


def least_waste_l(fresh_l: float, share: float) -> float:
    """The smallest fixed waste tank for this much fresh water. Result in L.

    Equation: ``share * fresh_l``.
    Valid for: a share above 0, half by the standard.
    Source: EN 1646-1 as reported: fixed waste about half of fresh.
    Confidence: verified second hand; check against the bought standard.

    Raises:
        OutsideValidity: no fresh water, or no share.

    >>> least_waste_l(50, 0.5)
    25.0
    """
    return above("share", share) * above("fresh L", fresh_l)


def pump_min(litres_l: float, flow_l_per_min: float) -> float:
    """How long the pump runs for this much water. Result in min.

    Equation: ``litres_l / flow_l_per_min``.
    Valid for: flow at the tap, not the pump's largest; about 7 L/min for a small diaphragm pump.
    Source: flow.
    Confidence: known; the pump's own data go first.

    Raises:
        OutsideValidity: negative water or no flow.

    >>> round(pump_min(20, 7), 2)
    2.86
    """
    return at_least("water L", litres_l) / above("flow L/min", flow_l_per_min)


def pump_ah(litres_l: float, flow_l_per_min: float, load_a: float) -> float:
    """What the pump takes from the battery for this much water. Result in Ah.

    Equation: ``load_a * litres_l / flow_l_per_min / 60``.
    Valid for: as its minutes; about 4 A for a small diaphragm pump.
    Source: current times time.
    Confidence: known; the pump's own data go first.

    Raises:
        OutsideValidity: negative water or current, or no flow.

    >>> round(pump_ah(20, 7, 4), 2)
    0.19
    """
    return at_least("load A", load_a) * pump_min(litres_l, flow_l_per_min) / 60
