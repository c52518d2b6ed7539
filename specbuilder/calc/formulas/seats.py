"""Seats that travel: what their belts pull, and who needs a child seat. No sum replaces a seat's own test report."""

from .validity import above, at_least, within

SHOULDER_KN = 13.5
LAP_KN = 13.5
LAP_ONLY_KN = 22.25
"""Pull on each part of a belt in the static test, passenger cars and light goods vans."""
SEAT_WEIGHTS = 20
"""Weights of the seat that pull with its belts where these are fixed to the seat."""
STANDARD_GRAVITY = 9.81


def belt_test_pull_kn(three_point_places: int, lap_only_places: int, seat_kg: float) -> float:
    """What the static test pulls on a bench with all its places at once. Result in kN.

    Equation: ``(13.5 + 13.5) * three_point_places + 22.25 * lap_only_places + 20 * seat_kg * 9.81 / 1000``; ``seat_kg``
        is the whole seat where the belts are fixed to it, else 0.
    Valid for: vehicles of class M1 and N1, 1 to 9 places; held 0.2 s at least. It shows how much a floor must bear and
        proves no fixing: only a test of this seat in this kind of van, floor and position does.
    Source: UN R14, static test of belt anchorages.
    Confidence: known; loads must be checked against the regulation, the fixing against the seat's own report.

    Raises:
        OutsideValidity: when there is no place, or a number is negative.

    >>> round(belt_test_pull_kn(2, 0, 70), 1)
    67.7
    """
    at_least("three-point places", three_point_places)
    at_least("lap-only places", lap_only_places)
    within("places", three_point_places + lap_only_places, 1, 9)
    belts = (SHOULDER_KN + LAP_KN) * three_point_places + LAP_ONLY_KN * lap_only_places
    return belts + SEAT_WEIGHTS * at_least("seat kg", seat_kg) * STANDARD_GRAVITY / 1000


def child_seat_needed(age_years: float, height_cm: float) -> bool:
    """Whether a child must travel in a child seat. Result in true or false.

    Equation: ``age_years < 12 and height_cm < 135``: the first of both that is reached ends it.
    Valid for: Great Britain, seats with belts; age from 0 to 120 years, height above 0 to 250 cm. The child seat's own
        label says which child it is for.
    Source: British seat-belt law as official guidance quotes it.
    Confidence: verified second hand; other countries differ.

    Raises:
        OutsideValidity: when age or height is nobody's.

    >>> child_seat_needed(8, 130), child_seat_needed(8, 135), child_seat_needed(12, 130)
    (True, False, False)
    """
    age = within("age years", age_years, 0, 120)
    height = within("height cm", above("height cm", height_cm), 0, 250)
    return age < 12 and height < 135
