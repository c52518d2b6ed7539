"""Two axles and two sides: worked vans, laws of the beam, and what is refused."""

from __future__ import annotations

from math import inf, nan

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specbuilder.calc.formulas.axles import (
    all_axle_loads_kg,
    axle_loads_kg,
    centre_x_mm,
    front_share,
    furthest_back_x_mm,
    furthest_forward_x_mm,
    load_before_front_share_kg,
    load_still_free_kg,
    side_difference_kg,
    side_difference_pct,
)
from specbuilder.calc.formulas.validity import OutsideValidity

LONG_MM = 3400
PLATE, FRONT_LIMIT, REAR_LIMIT = 3100, 1550, 1650
PARTS = (
    *((-16, 1750), (-18, 1250), (24, 1250), (38, 3000), (48, 2950), (85, 2550), (24, 2450), (78, 3050), (58, 3100)),
    *((22, 2700), (9, 3050), (14, 3300), (20, 3950), (8, 1450), (25, 1400), (12, 3600), (5, 3600), (14, 2500)),
    *((5, 3850), (5, 3500), (15, 3900), (9, 2900), (19, 2700), (20, 3850)),
)
CONVERTED = ((1980, centre_x_mm(1190, 790, LONG_MM)), *PARTS)
FOUR_ABOARD = (*CONVERTED, (75, 1250), (150, 3050))


def test_centre_of_a_base_van_comes_from_its_weighed_axles() -> None:
    assert (centre_x_mm(1190, 790, LONG_MM), centre_x_mm(1360, 740, 4035)) == pytest.approx((1356.6, 1421.9), rel=5e-4)


def test_a_whole_conversion_with_driver_and_travel_water() -> None:
    front, rear = all_axle_loads_kg(CONVERTED, LONG_MM)
    assert front + rear == pytest.approx(2503)
    assert (front, rear) == pytest.approx((1262.2, 1240.8), rel=5e-4)
    assert front_share(front, front + rear) == pytest.approx(0.504, abs=5e-4)


def test_the_same_with_four_aboard_and_their_least_luggage() -> None:
    assert all_axle_loads_kg(FOUR_ABOARD, LONG_MM) == pytest.approx((1325.0, 1403.0), rel=5e-4)
    front, rear = all_axle_loads_kg([*FOUR_ABOARD, (94.1, 3600)], LONG_MM)
    assert (front, rear) == pytest.approx((1319.5, 1502.6), rel=5e-4)
    assert (PLATE - front - rear, FRONT_LIMIT - front, REAR_LIMIT - rear) == pytest.approx(
        (277.9, 230.5, 147.4), rel=5e-4
    )


def test_a_lawful_total_can_hide_an_overloaded_rear_axle() -> None:
    front, rear = all_axle_loads_kg([*FOUR_ABOARD, (372, 3600)], LONG_MM)
    assert front + rear == pytest.approx(PLATE)
    assert (front, rear, rear - REAR_LIMIT) == pytest.approx((1303.1, 1796.9, 146.9), rel=5e-4)
    assert front_share(front, PLATE) == pytest.approx(0.420, abs=5e-4)


def test_luggage_that_may_still_be_added_is_less_further_back() -> None:
    front, rear = all_axle_loads_kg(FOUR_ABOARD, LONG_MM)
    rooms = PLATE - front - rear, FRONT_LIMIT - front, REAR_LIMIT - rear
    assert rooms[0] == pytest.approx(372)
    free = [load_still_free_kg(x, LONG_MM, *rooms) for x in (3600, 2400)]
    assert free == pytest.approx([233, 350], abs=0.5)
    assert furthest_back_x_mm(372, LONG_MM, rooms[2]) == pytest.approx(2258, abs=1)


@pytest.mark.parametrize(
    ("mass", "x_mm", "front", "rear"),
    [(48, 4650, -17.6, 65.6), (30, 3850, -3.97, 34.0), (25, 1400, 14.7, 10.3), (50, 3850, -6.62, 56.6)],
    ids=["rack-with-bikes", "extra-water", "battery-under-a-front-seat", "whole-tank"],
)
def test_one_thing_on_both_axles(mass: float, x_mm: float, front: float, rear: float) -> None:
    assert axle_loads_kg(mass, x_mm, LONG_MM) == pytest.approx((front, rear), abs=0.05)


def test_a_rack_behind_the_rear_axle_of_a_large_van() -> None:
    items = [(2100, 1421.9), (620, 3050), (75, 1300), (150, 2200), (100, 3900), (250, 4900)]
    front, rear = all_axle_loads_kg(items, 4035)
    assert (front, rear) == pytest.approx((1580.2, 1714.8), rel=5e-4)
    rooms = 3500 - front - rear, 1850 - front, 2000 - rear
    assert rooms[2] * 4035 / 5750 == pytest.approx(200, abs=0.5), "what the rear axle alone would take"
    assert load_still_free_kg(5750, 4035, *rooms) == pytest.approx(200, abs=0.5)
    front, rear = all_axle_loads_kg([*items, (150, 5750)], 4035)
    assert (front, rear) == pytest.approx((1516.4, 1928.6), rel=5e-4)
    assert (3500 - front - rear, 1850 - front, 2000 - rear) == pytest.approx((55, 333.6, 71.4), rel=5e-4)
    assert front_share(front, front + rear) == pytest.approx(0.440, abs=5e-4)


def test_least_front_share_alone_and_with_hitch_load() -> None:
    share = front_share(1020, 3500)
    assert share == pytest.approx(0.291, abs=5e-4)
    solo, with_hitch_load = 0.30, 0.20
    assert with_hitch_load <= share < solo


def test_left_side_heavier_is_positive() -> None:
    off_centre = [(58, 620), (22, 600), (9, 600), (50, 650), (14, 600), (19, -900), (25, -400), (78, -50)]
    difference = side_difference_kg([*off_centre, (75, -420), (75, 420)], 1630)
    assert difference == pytest.approx(79.1, abs=0.05)
    assert side_difference_pct(difference, 2728) == pytest.approx(2.90, abs=5e-3)


kilos = st.floats(0, 4000)
wheelbases = st.floats(1000, 10_000)
places = st.floats(-0.9, 1.9)
"""As parts of the wheelbase."""
things = st.lists(st.tuples(st.floats(-50, 400), places), max_size=12)


@given(things, wheelbases)
def test_both_axles_together_carry_everything(items: list[tuple[float, float]], wheelbase: float) -> None:
    front, rear = all_axle_loads_kg([(kg, part * wheelbase) for kg, part in items], wheelbase)
    assert front + rear == pytest.approx(sum(kg for kg, _ in items), abs=1e-6)


@given(things, wheelbases)
def test_all_together_are_the_sum_of_each(items: list[tuple[float, float]], wheelbase: float) -> None:
    at = [(kg, part * wheelbase) for kg, part in items]
    each = [axle_loads_kg(kg, x, wheelbase) for kg, x in at]
    together = all_axle_loads_kg(at, wheelbase)
    assert together == pytest.approx((sum(f for f, _ in each), sum(r for _, r in each)), abs=1e-6)


@given(kilos, wheelbases, places, places)
def test_moving_a_thing_back_never_lightens_the_rear_axle(kg: float, wheelbase: float, one: float, two: float) -> None:
    ahead, behind = sorted((one, two))
    before, after = (axle_loads_kg(kg, part * wheelbase, wheelbase) for part in (ahead, behind))
    assert after[1] >= before[1] - 1e-9
    assert after[0] <= before[0] + 1e-9


@given(st.floats(1, 4000), wheelbases, st.floats(1.01, 1.9))
def test_a_thing_behind_the_rear_axle_lifts_the_front(kg: float, wheelbase: float, part: float) -> None:
    front, rear = axle_loads_kg(kg, part * wheelbase, wheelbase)
    assert front < 0
    assert rear > kg


@given(st.floats(1, 3000), st.floats(1, 3000), wheelbases)
def test_the_centre_of_a_van_puts_its_own_axles_back(front: float, rear: float, wheelbase: float) -> None:
    x_mm = centre_x_mm(front, rear, wheelbase)
    assert 0 < x_mm < wheelbase
    assert axle_loads_kg(front + rear, x_mm, wheelbase) == pytest.approx((front, rear))


rooms_ = st.tuples(st.floats(1, 2000), st.floats(1, 2000), st.floats(1, 2000))


@given(rooms_, wheelbases, places)
def test_what_is_free_keeps_every_limit_and_one_kilogram_more_breaks_one(
    rooms: tuple[float, float, float], wheelbase: float, part: float
) -> None:
    total, front, rear = rooms
    x_mm = part * wheelbase
    free = load_still_free_kg(x_mm, wheelbase, total, front, rear)

    def over(kg: float) -> float:
        on_front, on_rear = axle_loads_kg(kg, x_mm, wheelbase)
        return max(kg - total, on_front - front, on_rear - rear)

    assert over(free) <= 1e-6
    assert over(free + 1) > 0


@given(st.floats(1, 1000), wheelbases, st.floats(0, 2000))
def test_the_furthest_place_uses_the_rear_room_up(load: float, wheelbase: float, room: float) -> None:
    x_mm = furthest_back_x_mm(load, wheelbase, room)
    assume(x_mm <= 2 * wheelbase)
    assert axle_loads_kg(load, x_mm, wheelbase)[1] == pytest.approx(room, abs=1e-6)


@given(st.floats(1, 1000), wheelbases, st.floats(0, 2000))
def test_the_foremost_place_uses_the_front_room_up(load: float, wheelbase: float, room: float) -> None:
    x_mm = furthest_forward_x_mm(load, wheelbase, room)
    assume(x_mm >= -wheelbase)
    assert axle_loads_kg(load, x_mm, wheelbase)[0] == pytest.approx(room, abs=1e-6)


@given(things, st.floats(1000, 3000))
def test_mirrored_things_turn_the_difference_round(items: list[tuple[float, float]], track: float) -> None:
    at = [(kg, part * track / 2) for kg, part in items]
    mirrored = [(kg, -y) for kg, y in at]
    assert side_difference_kg(mirrored, track) == pytest.approx(-side_difference_kg(at, track))


@pytest.mark.parametrize("rooms", [(-1, 100, 100), (100, -1, 100), (100, 100, -1), (0, 100, 100)])
def test_nothing_is_free_while_a_limit_is_passed_or_met(rooms: tuple[float, float, float]) -> None:
    assert load_still_free_kg(3900, LONG_MM, *rooms) == 0


def test_a_place_on_or_ahead_of_the_front_axle_leaves_the_rear_limit_out() -> None:
    assert load_still_free_kg(0, LONG_MM, 500, 300, 1) == 300
    assert load_still_free_kg(-340, LONG_MM, 500, 330, 1) == pytest.approx(300)


@pytest.mark.parametrize("wheelbase", [0, -3400, 3.4, 34_000, nan])
def test_a_wheelbase_that_is_no_vans_is_refused(wheelbase: float) -> None:
    with pytest.raises(OutsideValidity):
        axle_loads_kg(10, 0, wheelbase)
    with pytest.raises(OutsideValidity):
        all_axle_loads_kg([], wheelbase)
    with pytest.raises(OutsideValidity):
        centre_x_mm(1000, 800, wheelbase)
    with pytest.raises(OutsideValidity):
        furthest_back_x_mm(100, wheelbase, 50)


@pytest.mark.parametrize("x_mm", [-3401, 6801, nan])
def test_a_place_far_off_the_van_is_refused(x_mm: float) -> None:
    with pytest.raises(OutsideValidity, match="distance behind the front axle"):
        axle_loads_kg(10, x_mm, LONG_MM)
    with pytest.raises(OutsideValidity):
        load_still_free_kg(x_mm, LONG_MM, 1, 1, 1)


@pytest.mark.parametrize(("load", "room"), [(0, 10), (-5, 10), (10, -1), (nan, 1), (1, nan)])
def test_no_load_or_an_axle_that_is_over_has_no_furthest_place(load: float, room: float) -> None:
    with pytest.raises(OutsideValidity):
        furthest_back_x_mm(load, LONG_MM, room)
    with pytest.raises(OutsideValidity):
        furthest_forward_x_mm(load, LONG_MM, room)


def test_an_axle_or_a_van_without_weight_is_refused() -> None:
    with pytest.raises(OutsideValidity):
        centre_x_mm(0, 800, LONG_MM)
    with pytest.raises(OutsideValidity):
        front_share(-1, 2000)
    with pytest.raises(OutsideValidity):
        front_share(0, 0)
    with pytest.raises(OutsideValidity):
        front_share(2001, 2000)


def test_sides_of_no_van_are_refused() -> None:
    with pytest.raises(OutsideValidity):
        side_difference_kg([(10, 500)], 1.63)
    with pytest.raises(OutsideValidity):
        side_difference_kg([(10, 1700)], 1630)
    with pytest.raises(OutsideValidity):
        side_difference_pct(10, 0)


@given(st.floats(0, 6000), st.floats(0, 2000), st.floats(0.2, 0.6))
def test_a_load_that_fills_the_room_leaves_the_front_axle_just_its_share(x: float, room: float, share: float) -> None:
    free = load_before_front_share_kg(x, LONG_MM, room, share)
    if free == inf:
        assert 1 - x / LONG_MM >= share
        return
    front, rear = axle_loads_kg(free, x, LONG_MM)
    assert room + front - share * (front + rear) == pytest.approx(0, abs=1e-6 * max(1, free))


def test_while_the_front_share_is_not_kept_nothing_may_be_loaded() -> None:
    assert load_before_front_share_kg(4000, LONG_MM, -1, 0.3) == 0
    assert load_before_front_share_kg(1000, LONG_MM, 5, 0.3) == inf
    for bad in ((4000, 0, 5, 0.3), (4000, LONG_MM, nan, 0.3), (4000, LONG_MM, 5, 1.2), (9000, LONG_MM, 5, 0.3)):
        with pytest.raises(OutsideValidity):
            load_before_front_share_kg(*bad)
