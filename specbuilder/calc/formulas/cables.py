"""Copper cables at low voltage: what they lose, how thick they must be and what they carry.

Lengths are ONE WAY along the route; both conductors are counted inside the equations.
"""

from collections.abc import Sequence

from .validity import above, within

COPPER_PER_K = 0.00393
"""Share by which the resistance of copper grows for each degree, counted from 20 degrees C."""
_ROUNDING = 1e-9
"""A figure that meets its bound but for rounding meets it."""


def area_for_drop_mm2(load_a: float, run_one_way_m: float, drop_v: float, rho_ohm_mm2_per_m: float) -> float:
    """Least copper section that loses no more than so many volts, by the plain resistivity. Result in mm2.

    Equation: ``rho_ohm_mm2_per_m * 2 * run_one_way_m * load_a / drop_v``; the 2 counts the return conductor.
    Valid for: 0 to 2,000 A, 0 to 100 m one way, 0 to 50 V, resistivity 0.015 to 0.03 ohm mm2/m (copper from -20 to
    110 degrees); direct current, the return of the same section. A length given as the whole loop doubles the answer.
    Source: EN 1648-2 (formula and 0.01989 ohm mm2/m at 50 degrees, read second hand).
    Confidence: verified; to be checked against the bought standard.

    Raises:
        OutsideValidity: a value of 0, below it or beyond its range.

    >>> round(area_for_drop_mm2(60, 5, 0.2, 0.01989), 1)
    59.7
    """
    loss = _rho(rho_ohm_mm2_per_m) * 2 * _run(run_one_way_m) * _load(load_a)
    return loss / _volts(drop_v)


def drop_by_resistivity_v(load_a: float, run_one_way_m: float, area_mm2: float, rho_ohm_mm2_per_m: float) -> float:
    """Volts a cable loses there and back, by the plain resistivity. Result in V.

    Equation: ``rho_ohm_mm2_per_m * 2 * run_one_way_m * load_a / area_mm2``.
    Valid for: as ``area_for_drop_mm2``, sections from 0.3 to 500 mm2. Bought cable may resist more: see ``drop_v``.
    Source: EN 1648-2 (read second hand).
    Confidence: verified; to be checked against the bought standard.

    Raises:
        OutsideValidity: a value of 0, below it or beyond its range.

    >>> round(drop_by_resistivity_v(5.5, 4, 2.5, 0.01989), 3)
    0.35
    """
    return _rho(rho_ohm_mm2_per_m) * 2 * _run(run_one_way_m) * _load(load_a) / _area(area_mm2)


def most_amps_for_drop_a(area_mm2: float, run_one_way_m: float, drop_v: float, rho_ohm_mm2_per_m: float) -> float:
    """Largest load that a section feeds within so many volts. Result in A.

    Equation: ``area_mm2 * drop_v / (rho_ohm_mm2_per_m * 2 * run_one_way_m)``.
    Valid for: as ``area_for_drop_mm2``. It says nothing of what the cable carries without growing too warm.
    Source: EN 1648-2 (read second hand).
    Confidence: verified; to be checked against the bought standard.

    Raises:
        OutsideValidity: a value of 0, below it or beyond its range.

    >>> round(most_amps_for_drop_a(6, 5, 0.8, 0.01989), 1)
    24.1
    """
    return _area(area_mm2) * _volts(drop_v) / (_rho(rho_ohm_mm2_per_m) * 2 * _run(run_one_way_m))


def resistance_mohm_per_m(r20_mohm_per_m: float, temperature_c: float) -> float:
    """Resistance of one metre of one conductor at its own warmth. Result in mohm/m.

    Equation: ``r20_mohm_per_m * (1 + 0.00393 * (temperature_c - 20))``, from the resistance at 20 degrees.
    Valid for: copper from -40 to 120 degrees C; 0 to 100 mohm/m at 20 degrees (0.35 mm2 and more).
    Source: IEC 60228 (greatest resistances at 20 degrees, two reproductions; its factor 1/0.833 at 70 degrees agrees).
    Confidence: verified.

    Raises:
        OutsideValidity: a warmth or a resistance beyond its range.

    >>> round(resistance_mohm_per_m(0.554, 70), 3)
    0.663
    """
    warm = within("temperature of the conductor C", temperature_c, -40, 120) - 20
    return _mohm(r20_mohm_per_m) * (1 + COPPER_PER_K * warm)


def drop_by_resistance_v(load_a: float, run_one_way_m: float, mohm_per_m: float) -> float:
    """Volts a cable loses there and back, from what one metre of its conductor resists. Result in V.

    Equation: ``2 * run_one_way_m * load_a * mohm_per_m / 1000``.
    Valid for: 0 to 2,000 A, 0 to 100 m one way, 0 to 150 mohm/m.
    Source: Ohm's law.
    Confidence: known.

    Raises:
        OutsideValidity: a value of 0, below it or beyond its range.

    >>> round(drop_by_resistance_v(200, 1.5, 0.663), 3)
    0.398
    """
    return 2 * _run(run_one_way_m) * _load(load_a) * _mohm(mohm_per_m, 150) / 1000


def drop_v(
    load_a: float,
    run_one_way_m: float,
    area_mm2: float,
    r20_mohm_per_m: float,
    rho_ohm_mm2_per_m: float,
    temperature_c: float,
) -> float:
    """Volts a bought fine-stranded cable may lose there and back: the worse of two sums. Result in V.

    Equation: ``max(drop_by_resistivity_v(...), drop_by_resistance_v(...))``, the second with the greatest resistance
    that class 5 allows at ``temperature_c``, the warmth for which the resistivity holds too (50 degrees).
    Valid for: as the two. The second is 7 to 12 % above the first from 1.5 to 120 mm2, so it decides in practice.
    Source: EN 1648-2 (read second hand) and IEC 60228 class 5.
    Confidence: verified; to be checked against the bought standard.

    Raises:
        OutsideValidity: a value of 0, below it or beyond its range.

    >>> round(drop_v(5.5, 4, 2.5, 7.98, 0.01989, 50), 3)
    0.393
    """
    plain = drop_by_resistivity_v(load_a, run_one_way_m, area_mm2, rho_ohm_mm2_per_m)
    return max(plain, drop_by_resistance_v(load_a, run_one_way_m, resistance_mohm_per_m(r20_mohm_per_m, temperature_c)))


def smallest_area_mm2(least_mm2: float, areas_mm2: Sequence[float]) -> float | None:
    """The thinnest section that can be bought and is thick enough; None when the list has none. Result in mm2.

    Equation: ``min(area for area in areas_mm2 if area >= least_mm2)``.
    Valid for: sections from 0 to 100,000 mm2, in any order.
    Source: IEC 60228 (the sections that exist).
    Confidence: known.

    Raises:
        OutsideValidity: ``least_mm2`` is 0, below it or no number.

    >>> smallest_area_mm2(59.7, [50, 70, 95])
    70
    """
    above("area mm2", within("area mm2", least_mm2, 0, 100_000))
    return min((area for area in areas_mm2 if area >= least_mm2 - _ROUNDING), default=None)


def bundle_share(cables: float, shares: Sequence[tuple[float, float]]) -> float:
    """What is left of the amps of a cable that lies in a bundle. Result as a share of 1.

    Equation: the share of the last row of ``shares`` (cables from, share) that ``cables`` reaches.
    Valid for: 1 to 99 cables that carry current together; rows in any order, one of them from 1 cable.
    Source: bundle factors of boat-wiring rules (0.7 from 3, 0.6 from 4, 0.5 from 7, 0.4 from 25), as reproduced.
    Confidence: verified; those rules waive it under 50 V, here it is kept.

    Raises:
        OutsideValidity: fewer than 1 cable, or fewer than the first row begins with.

    >>> bundle_share(5, [(1, 1), (3, 0.7), (4, 0.6), (7, 0.5)])
    0.6
    """
    within("cables in the bundle", cables, max(1, min((least for least, _ in shares), default=99)), 99)
    return max((least, share) for least, share in shares if cables >= least)[1]


def ampacity_a(table_a: float, bundle_share: float, place_share: float) -> float:
    """What a cable carries for long where it lies. Result in A.

    Equation: ``table_a * bundle_share * place_share``: the table's amps in free air at 30 degrees, times what bundle
    and place (warmth, insulation around it) leave of them.
    Valid for: the table that belongs to the cable's own insulation; shares above 0 up to 1.
    Source: ISO 10133/13297 and IEC 60364-5-52 (table), boat-wiring rules and BS 7671 523.9 (shares), second hand.
    Confidence: known; the same 1.5 mm2 is 12 to 27 A by table, so the table is kept with the cable.

    Raises:
        OutsideValidity: amps of 0 or below, a share that is not above 0 up to 1.

    >>> round(ampacity_a(18, 0.6, 1), 2)
    10.8
    """
    above("share left in the bundle", bundle_share)
    above("share left by the place", place_share)
    shares = within("share left in the bundle", bundle_share, 0, 1) * within(
        "share left by the place", place_share, 0, 1
    )
    return _load(table_a) * shares


def load_of_each_a(load_a: float, cables: int) -> float:
    """What each of several equal cables side by side carries, or must carry, of a load or of a fuse. Result in A.

    Equation: ``load_a / cables``: like conductors share the current alike.
    Valid for: 2 to 4 cables of the same section, metal, insulation and length, on one route, with the same lugs and
    both ends on the same two points; nothing may branch off any of them. One that is longer or looser leaves more to
    the others, and one that comes off leaves them all of it: the fuse then protects them no more.
    Source: BS 7671 433.4.1 / IEC 60364-4-43 433.4.1 (conductors in parallel that share equally).
    Confidence: known; to be checked against the bought standard.

    Raises:
        OutsideValidity: a load of 0, below it or beyond its range; fewer than 2 cables or more than 4.

    >>> load_of_each_a(500, 2)
    250.0
    """
    return _load(load_a) / within("cables side by side", cables, 2, 4)


def charger_input_a(output_a: float, output_v: float, efficiency: float, input_v: float) -> float:
    """What a charger or an inverter draws on its input. Result in A.

    Equation: ``output_a * output_v / (efficiency * input_v)``.
    Valid for: efficiency 0.3 to 1; volts above 0 up to 500, with the input as it is under load (12.0 V lithium, 11.5 V
    lead, 12.5 V behind a variable alternator). Cable and fuse of the input follow this, not the output.
    Source: conservation of energy; efficiency 0.90 of chargers between batteries, 0.88 of inverters, house figures.
    Confidence: known; the part's own input figure goes first.

    Raises:
        OutsideValidity: a value of 0, below it or beyond its range.

    >>> round(charger_input_a(30, 14.4, 0.90, 12.5), 1)
    38.4
    """
    power_w = _load(output_a) * _volts(output_v, 500)
    return power_w / (within("efficiency", efficiency, 0.3, 1) * _volts(input_v, 500))


def start_voltage_v(battery_v: float, start_a: float, run_one_way_m: float, mohm_per_m: float) -> float:
    """Voltage at a heater while it lights, behind its own cable. Result in V.

    Equation: ``battery_v - 2 * run_one_way_m * start_a * mohm_per_m / 1000``.
    Valid for: the battery's voltage under load; a cable that loses less than all of it. Joints and switches on the way
    lose more: measure at the heater.
    Source: Ohm's law; heaters that failed to light for want of volts are reported by owners.
    Confidence: known; the least voltage stands in the heater's manual.

    Raises:
        OutsideValidity: a value of 0 or beyond its range, or a cable that would lose the whole voltage.

    >>> round(start_voltage_v(12, 20.4, 3, 3.69), 2)
    11.55
    """
    lost_v = drop_by_resistance_v(start_a, run_one_way_m, mohm_per_m)
    return above("voltage left at the heater V", _volts(battery_v) - lost_v)


def _load(load_a: float) -> float:
    return above("load A", within("load A", load_a, 0, 2000))


def _run(run_one_way_m: float) -> float:
    return above("one-way run m", within("one-way run m", run_one_way_m, 0, 100))


def _area(area_mm2: float) -> float:
    return within("section mm2", area_mm2, 0.3, 500)


def _volts(volts: float, most: float = 50) -> float:
    return above("voltage V", within("voltage V", volts, 0, most))


def _rho(rho_ohm_mm2_per_m: float) -> float:
    return within("resistivity ohm mm2/m", rho_ohm_mm2_per_m, 0.015, 0.03)


def _mohm(mohm_per_m: float, most: float = 100) -> float:
    return above("resistance mohm/m", within("resistance mohm/m", mohm_per_m, 0, most))
