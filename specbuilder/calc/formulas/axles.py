"""Where the weight of a van rests: two axles, two sides. Lengths in mm, ``x_mm`` back from the front axle.

A van on its axles is a beam on two supports. Masses that were taken out count negative.
"""

from collections.abc import Iterable

from .validity import above, at_least, within

_SHORTEST_MM, _LONGEST_MM = 1000, 10_000
"""Wheelbases outside are slips of unit, not vans."""


def _wheelbase(wheelbase_mm: float) -> float:
    return within("wheelbase mm", wheelbase_mm, _SHORTEST_MM, _LONGEST_MM)


def _place(x_mm: float, wheelbase_mm: float) -> float:
    wheelbase = _wheelbase(wheelbase_mm)
    return within("distance behind the front axle mm", x_mm, -wheelbase, 2 * wheelbase)


def axle_loads_kg(mass_kg: float, x_mm: float, wheelbase_mm: float) -> tuple[float, float]:
    """What one thing puts on the front and on the rear axle. Result in kg, front first.

    Equation: ``rear = mass_kg * x_mm / wheelbase_mm``, ``front = mass_kg - rear``; ``x_mm`` is the centre of the thing
        behind the front axle. Behind the rear axle the front part is negative: it lifts the front.
    Valid for: wheelbases of 1,000 to 10,000 mm; things up to one wheelbase ahead of the front or behind the rear axle.
    Source: statics of a beam on two supports, as in body builders' manuals.
    Confidence: known; the place of a thing is as good as its measurement, so weigh the finished van.

    Raises:
        OutsideValidity: when wheelbase or place is no van's.

    >>> axle_loads_kg(25, 850, 3400)
    (18.75, 6.25)
    """
    rear = mass_kg * _place(x_mm, wheelbase_mm) / _wheelbase(wheelbase_mm)
    return mass_kg - rear, rear


def all_axle_loads_kg(items: Iterable[tuple[float, float]], wheelbase_mm: float) -> tuple[float, float]:
    """What many things together put on the front and on the rear axle. Result in kg, front first.

    Equation: ``rear = sum(mass_kg * x_mm) / wheelbase_mm``, ``front = sum(mass_kg) - rear`` over pairs of ``mass_kg``
        and ``x_mm``.
    Valid for: as for one thing; the base van is a thing at its own centre; no things give no load.
    Source: statics of a beam on two supports, as in body builders' manuals.
    Confidence: known; the place of a thing is as good as its measurement, so weigh the finished van.

    Raises:
        OutsideValidity: when the wheelbase or a place is no van's.

    >>> all_axle_loads_kg([(2000, 1360), (100, 3400)], 3400)
    (1200.0, 900.0)
    """
    wheelbase = _wheelbase(wheelbase_mm)
    total, moment = 0.0, 0.0
    for mass_kg, x_mm in items:
        total += mass_kg
        moment += mass_kg * _place(x_mm, wheelbase)
    return total - moment / wheelbase, moment / wheelbase


def centre_x_mm(front_kg: float, rear_kg: float, wheelbase_mm: float) -> float:
    """Distance of the centre of a weighed van behind its front axle. Result in mm.

    Equation: ``rear_kg * wheelbase_mm / (front_kg + rear_kg)``, both axles as weighed.
    Valid for: two axles that both carry load, on level ground.
    Source: statics of a beam on two supports, as in body builders' manuals.
    Confidence: known.

    Raises:
        OutsideValidity: when an axle carries nothing, or the wheelbase is no van's.

    >>> centre_x_mm(1200, 800, 3400)
    1360.0
    """
    front, rear = above("front axle kg", front_kg), above("rear axle kg", rear_kg)
    return rear * _wheelbase(wheelbase_mm) / (front + rear)


def load_still_free_kg(
    x_mm: float, wheelbase_mm: float, total_room_kg: float, front_room_kg: float, rear_room_kg: float
) -> float:
    """How much may still be put at one place before the plate or an axle limit is reached. Result in kg.

    Equation: ``min(total_room_kg, rear_room_kg * wheelbase_mm / x_mm, front_room_kg / (1 - x_mm / wheelbase_mm))``; a
        room is limit less load. A thing at or behind the rear axle leaves the front limit out, one at or ahead of the
        front axle the rear limit. 0 while any limit is passed already.
    Valid for: a load whose centre is at ``x_mm``; the least share of the front axle is a limit of its own, see
        ``front_share``.
    Source: statics of a beam on two supports; total and each axle bind on their own.
    Confidence: known; weigh the loaded van.

    Raises:
        OutsideValidity: when wheelbase or place is no van's, or a room is no number.

    >>> load_still_free_kg(3400, 3400, 372, 275, 247)
    247.0
    """
    share_rear = _place(x_mm, wheelbase_mm) / _wheelbase(wheelbase_mm)
    rooms = [
        above(name, room, float("-inf"))
        for name, room in (
            ("total room kg", total_room_kg),
            ("front room kg", front_room_kg),
            ("rear room kg", rear_room_kg),
        )
    ]
    if min(rooms) <= 0:
        return 0.0
    total, front, rear = rooms
    free = [total]
    if share_rear > 0:
        free.append(rear / share_rear)
    if share_rear < 1:
        free.append(front / (1 - share_rear))
    return min(free)


def load_before_front_share_kg(x_mm: float, wheelbase_mm: float, share_room_kg: float, least_share: float) -> float:
    """How much may still be put at one place before the front axle has less than its least share. Result in kg.

    Equation: ``share_room_kg / (x_mm / wheelbase_mm - 1 + least_share)``; the room is front load less ``least_share``
        times the total. Infinite where a load at that place gives the front axle its share or more; 0 while the share
        is not kept already.
    Valid for: a least share of the loaded van's own mass, from 0 to 1.
    Source: statics of a beam on two supports; EU masses rules ask for a least share on the front axle.
    Confidence: known; the van maker's own least share goes first, weigh the loaded van.

    Raises:
        OutsideValidity: when wheelbase, place or share is no van's, or the room is no number.

    >>> round(load_before_front_share_kg(4300, 3440, 66, 0.41), 3)
    100.0
    """
    room = above("room to the least front share kg", share_room_kg, float("-inf"))
    share_rear = _place(x_mm, wheelbase_mm) / _wheelbase(wheelbase_mm)
    takes = share_rear - 1 + within("least front share", least_share, 0, 1)
    if room <= 0:
        return 0.0
    return room / takes if takes > 0 else float("inf")


def furthest_back_x_mm(load_kg: float, wheelbase_mm: float, rear_room_kg: float) -> float:
    """How far behind the front axle the centre of a load may lie before the rear axle is over. Result in mm.

    Equation: ``rear_room_kg * wheelbase_mm / load_kg``; the room is rear limit less rear load without it.
    Valid for: a load above 0 and a rear axle that is not over yet; a result behind the van says that any place will do.
    Source: statics of a beam on two supports, turned round.
    Confidence: known; weigh the loaded van.

    Raises:
        OutsideValidity: when there is no load, the rear axle is over already, or the wheelbase is no van's.

    >>> round(furthest_back_x_mm(372, 3400, 247), 1)
    2257.5
    """
    return at_least("rear room kg", rear_room_kg) * _wheelbase(wheelbase_mm) / above("load kg", load_kg)


def furthest_forward_x_mm(load_kg: float, wheelbase_mm: float, front_room_kg: float) -> float:
    """How near to the front axle the centre of a load may lie before the front axle is over. Result in mm behind it.

    Equation: ``wheelbase_mm * (1 - front_room_kg / load_kg)``; the room is front limit less front load without it.
    Valid for: a load above 0 and a front axle that is not over yet; a negative result says that any place in the van
        will do.
    Source: statics of a beam on two supports, turned round.
    Confidence: known; weigh the loaded van.

    Raises:
        OutsideValidity: when there is no load, the front axle is over already, or the wheelbase is no van's.

    >>> furthest_forward_x_mm(400, 3400, 300)
    850.0
    """
    return _wheelbase(wheelbase_mm) * (1 - at_least("front room kg", front_room_kg) / above("load kg", load_kg))


def front_share(front_kg: float, of_kg: float) -> float:
    """What part of a mass rests on the front axle. Result in parts of one.

    Equation: ``front_kg / of_kg``; ``of_kg`` is the total, or the plated mass where a least share is asked for.
    Valid for: a front axle between nothing and the whole mass; a load that lifts the front has no share.
    Source: EU masses rules for M1 and N1 vans: 0.30 of the plated mass alone, 0.20 with hitch load.
    Confidence: known; which instrument holds the two figures must be checked, and the van maker's own least share goes
        first.

    Raises:
        OutsideValidity: when there is no mass, or the front axle carries less than nothing or more than all.

    >>> front_share(1020, 3400)
    0.3
    """
    return within("front axle kg", front_kg, 0, above("mass kg", of_kg)) / of_kg


def side_difference_kg(items: Iterable[tuple[float, float]], track_mm: float) -> float:
    """How much more the left wheels carry than the right ones. Result in kg; negative when the right is heavier.

    Equation: ``2 * sum(mass_kg * y_mm) / track_mm`` over pairs of ``mass_kg`` and ``y_mm``, the distance from the
        centre line, left positive.
    Valid for: a base van that is even by itself; tracks of 1,000 to 3,000 mm; things no further out than one track.
    Source: moments about the centre line; handbooks ask for balance, how much is a house setting.
    Confidence: known; weigh wheel by wheel where it matters.

    Raises:
        OutsideValidity: when the track is no van's or a thing is further out than one track.

    >>> side_difference_kg([(58, 620), (25, -400)], 1600)
    32.45
    """
    track = within("track mm", track_mm, 1000, 3000)
    return 2 * sum(mass * within("distance from the centre line mm", y, -track, track) for mass, y in items) / track


def side_difference_pct(difference_kg: float, total_kg: float) -> float:
    """The difference between left and right as a part of the whole van. Result in %.

    Equation: ``100 * abs(difference_kg) / total_kg``.
    Valid for: a total above 0 and a difference that is not more than the total.
    Source: moments about the centre line; 4 % is the house's own line for a word of advice.
    Confidence: estimate.

    Raises:
        OutsideValidity: when there is no mass, or more difference than mass.

    >>> side_difference_pct(-80, 2000)
    4.0
    """
    return 100 * within("difference kg", abs(difference_kg), 0, above("total kg", total_kg)) / total_kg
