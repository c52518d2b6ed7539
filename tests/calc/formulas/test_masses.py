"""Masses as papers name them: worked vans, laws, and what is refused."""

from __future__ import annotations

from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.masses import (
    TYRE_KG,
    board_kg,
    dry_mass_kg,
    least_pay_mass_kg,
    passengers_allowed,
    pay_mass_kg,
    rack_allowance_kg,
    running_order_kg,
    speed_limits_mph,
    tyre_pair_room_kg,
    unladen_kg,
)
from specbuilder.calc.formulas.validity import OutsideValidity


@pytest.mark.parametrize(
    ("kerb", "driver", "fuel", "dry", "running"),
    [(1905, 0, 1.0, 1846.2, 1974.1), (1980, 75, 0.9, 1852.1, 1980.0)],
    ids=["no-driver-full-tank", "as-in-running-order"],
)
def test_kerb_masses_counted_differently_become_alike(
    kerb: float, driver: float, fuel: float, dry: float, running: float
) -> None:
    found = dry_mass_kg(kerb, driver, fuel, 70, 0.84)
    assert found == pytest.approx(dry, abs=0.05)
    assert running_order_kg(found, 70, 0.84) == pytest.approx(running, abs=0.05)


@pytest.mark.parametrize(("seats", "left", "least", "margin"), [(4, 125, 94.1, 30.9), (5, 50, 104.1, -54.1)])
def test_one_more_belted_seat_can_use_up_the_luggage(seats: int, left: float, least: float, margin: float) -> None:
    found = pay_mass_kg(3100, 2610, 140, seats), least_pay_mass_kg(seats, 5.41)
    assert found == pytest.approx((left, least))
    assert found[0] - found[1] == pytest.approx(margin)


@pytest.mark.parametrize(("seats", "length_m", "kg"), [(4, 7.45, 114.5), (4, 7, 110), (9, 5.4, 144)])
def test_least_luggage_as_published(seats: int, length_m: float, kg: float) -> None:
    assert least_pay_mass_kg(seats, length_m) == pytest.approx(kg)


@pytest.mark.parametrize(
    ("plate", "running", "options", "length_m", "belts", "people"),
    [
        (3500, 2890, 150, 5.99, 9, 4),
        (2800, 2440, 60, 4.97, 9, 2),
        (3100, 2503, 0, 5.41, 9, 6),
        (3100, 2503, 0, 5.41, 4, 3),
    ],
    ids=["large", "short", "long-by-mass", "long-by-belts"],
)
def test_passengers_the_mass_allows(
    plate: float, running: float, options: float, length_m: float, belts: int, people: int
) -> None:
    assert passengers_allowed(plate, running, options, length_m, belts) == people


def test_luggage_left_of_the_long_van_with_four_belts() -> None:
    assert pay_mass_kg(3100, 2503, 0, 4) == 372


@pytest.mark.parametrize(("running", "empty", "limits"), [(3235, 3050.96, (70, 60, 50)), (3120, 2935.96, (70, 70, 60))])
def test_a_kilogram_over_the_line_lowers_the_speed_limits(
    running: float, empty: float, limits: tuple[int, int, int]
) -> None:
    found = unladen_kg(running, 0.9 * 90 * 0.84, 20 + 11 + 10)
    assert found == pytest.approx(empty, abs=0.005)
    assert speed_limits_mph(found) == limits


def test_exactly_on_the_line_is_not_above_it() -> None:
    assert speed_limits_mph(3050) == (70, 70, 60)
    assert speed_limits_mph(3050.01) == (70, 60, 50)


def test_the_battery_that_drives_the_van_is_not_unladen_weight() -> None:
    assert unladen_kg(3200, 0, 20, 400) == unladen_kg(3200, 0, 20) - 400


def test_poplar_saves_a_fifth_of_a_set_of_birch_boards() -> None:
    poplar, birch = board_kg(6.2, 15, 520), board_kg(6.2, 15, 675)
    assert (board_kg(1, 15, 520), board_kg(1, 15, 675)) == pytest.approx((7.80, 10.1), abs=0.05)
    assert (poplar, birch, birch - poplar) == pytest.approx((48.4, 62.8, 14.4), abs=0.05)


def test_tyres_must_carry_the_plated_axle() -> None:
    assert tyre_pair_room_kg(109, 2000) == 60
    assert tyre_pair_room_kg(107, 2000) == -50
    assert list(TYRE_KG.values()) == sorted(set(TYRE_KG.values())), "a higher index carries more"
    rule_of_thumb = {index: 45 * 10 ** (index / 80) for index in TYRE_KG}
    assert dict(TYRE_KG) == pytest.approx(rule_of_thumb, rel=0.025), "each index carries about 2.9 % more than the last"


def test_what_a_closed_lifting_roof_may_carry_goes_before_the_feet_of_a_carrier() -> None:
    on_roof = 22 + 14 + 19
    assert rack_allowance_kg(4, 25, 150) == 100
    assert rack_allowance_kg(4, 25, 50) == 50 < on_roof


lengths, plates = st.floats(4, 8), st.floats(2500, 4250)
built = st.floats(1800, 2600)


@given(plates, built, st.floats(0, 300), lengths, st.integers(1, 9))
def test_the_passengers_allowed_leave_the_least_luggage_and_one_more_does_not(
    plate: float, running: float, options: float, length_m: float, belts: int
) -> None:
    def spare(seats: int) -> float:
        return pay_mass_kg(plate, running, options, seats) - least_pay_mass_kg(seats, length_m)

    if spare(1) < -1e-5:
        with pytest.raises(OutsideValidity, match="driver alone"):
            passengers_allowed(plate, running, options, length_m, belts)
    elif spare(1) > 1e-5:
        people = passengers_allowed(plate, running, options, length_m, belts)
        assert 0 <= people < belts
        assert spare(people + 1) >= -1e-5
        assert people == belts - 1 or spare(people + 2) < 1e-5


@given(st.floats(1500, 3000), st.floats(0, 100), st.floats(0.7, 0.9))
def test_running_order_taken_apart_again_is_the_dry_mass(dry: float, tank: float, density: float) -> None:
    running = running_order_kg(dry, tank, density)
    assert dry_mass_kg(running, 75, 0.9, tank, density) == pytest.approx(dry)
    assert unladen_kg(running, 0.9 * tank * density, 0) == pytest.approx(dry)


@given(st.integers(1, 8), lengths)
def test_each_seat_takes_75_kg_and_asks_for_ten_more(seats: int, length_m: float) -> None:
    assert pay_mass_kg(3500, 2600, 0, seats) - pay_mass_kg(3500, 2600, 0, seats + 1) == pytest.approx(75)
    assert least_pay_mass_kg(seats + 1, length_m) - least_pay_mass_kg(seats, length_m) == pytest.approx(10)


@pytest.mark.parametrize("seats", [0, -1, 10])
def test_seats_of_no_motor_caravan_are_refused(seats: int) -> None:
    with pytest.raises(OutsideValidity, match="belted seats"):
        pay_mass_kg(3500, 2600, 0, seats)
    with pytest.raises(OutsideValidity, match="belted seats"):
        least_pay_mass_kg(seats, 6)
    with pytest.raises(OutsideValidity, match="belted seats"):
        passengers_allowed(3500, 2600, 0, 6, seats)


@pytest.mark.parametrize("length_m", [0, 5410, nan])
def test_a_length_in_the_wrong_unit_is_refused(length_m: float) -> None:
    with pytest.raises(OutsideValidity, match="overall length"):
        least_pay_mass_kg(4, length_m)


def test_masses_that_cannot_be_are_refused() -> None:
    for kerb, driver, share, tank in ((100, 75, 1, 70), (1900, -75, 1, 70), (1900, 75, 1.2, 70), (1900, 75, 1, -70)):
        with pytest.raises(OutsideValidity):
            dry_mass_kg(kerb, driver, share, tank, 0.84)
    with pytest.raises(OutsideValidity):
        running_order_kg(0, 70, 0.84)
    with pytest.raises(OutsideValidity):
        pay_mass_kg(0, 2600, 0, 4)
    with pytest.raises(OutsideValidity):
        unladen_kg(100, 68, 41)
    with pytest.raises(OutsideValidity):
        unladen_kg(3000, -1, 0)
    with pytest.raises(OutsideValidity):
        speed_limits_mph(nan)


def test_boards_and_tyres_that_cannot_be_are_refused() -> None:
    for area, thickness, density in ((-1, 15, 520), (1, 0.015, 0.52), (1, 150, 520), (1, -15, 520)):
        with pytest.raises(OutsideValidity):
            board_kg(area, thickness, density)
    for feet, per_foot, roof in ((0, 25, 120), (4, -25, 120), (4, 25, -1)):
        with pytest.raises(OutsideValidity):
            rack_allowance_kg(feet, per_foot, roof)
    for index, limit in ((79, 1600), (125, 1600), (109, 0), (109, inf)):
        with pytest.raises(OutsideValidity):
            tyre_pair_room_kg(index, limit)
