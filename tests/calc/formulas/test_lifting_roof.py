"""A hinged roof lifted by hand."""

from __future__ import annotations

from math import nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.lifting_roof import (
    added_push_n,
    push_at_edge_n,
    strut_at_temperature_n,
    strut_moment_nm,
    up_force_n,
    weight_moment_nm,
)
from specbuilder.calc.formulas.validity import OutsideValidity

EDGE_M = 2.6
ROOF, PANEL = (52, 1.3), (13, 1.6)


def test_a_panel_makes_the_closed_roof_harder_to_lift() -> None:
    struts = strut_moment_nm(2, 1100, 0.55, 18)
    assert (weight_moment_nm([ROOF], 0), struts) == pytest.approx((663, 374), abs=0.5)
    bare = push_at_edge_n(weight_moment_nm([ROOF], 0), struts, EDGE_M)
    loaded = push_at_edge_n(weight_moment_nm([ROOF, PANEL], 0), struts, EDGE_M)
    assert (bare, loaded) == pytest.approx((111, 190), abs=0.5)
    assert added_push_n(*PANEL, EDGE_M) == pytest.approx(78.5, abs=0.05)
    assert loaded - bare == pytest.approx(added_push_n(*PANEL, EDGE_M))


def test_a_panel_takes_from_what_holds_the_raised_roof_up() -> None:
    struts = strut_moment_nm(2, 1100, 0.55, 70)
    assert struts == pytest.approx(1137, abs=0.5)
    forces = [up_force_n(weight_moment_nm(items, 25), struts, EDGE_M) for items in ([ROOF], [ROOF, PANEL])]
    assert forces == pytest.approx([206, 135], abs=0.5)


def test_struts_lose_about_a_third_of_a_per_cent_a_degree() -> None:
    assert strut_at_temperature_n(1100, 20) == 1100
    lost = 1 - strut_at_temperature_n(1100, -10) / 1100
    assert 0.003 * 30 < lost < 0.004 * 30


moments, metres = st.floats(0, 3000), st.floats(0.5, 4)


@given(moments, moments, metres)
def test_push_and_up_force_are_the_same_force_seen_from_both_sides(weight: float, strut: float, edge: float) -> None:
    assert push_at_edge_n(weight, strut, edge) == -up_force_n(weight, strut, edge)
    assert (push_at_edge_n(weight, strut, edge) > 0) == (weight > strut)


@given(st.lists(st.tuples(st.floats(0, 100), st.floats(0, 4)), max_size=6), st.floats(0, 90), st.floats(0, 90))
def test_a_roof_weighs_less_on_the_hand_the_higher_it_is(
    items: list[tuple[float, float]], one: float, two: float
) -> None:
    low, high = sorted((one, two))
    assert weight_moment_nm(items, high) <= weight_moment_nm(items, low) + 1e-9


@given(st.floats(0, 100), metres, st.floats(0, 1))
def test_a_thing_at_the_edge_needs_its_whole_weight_and_none_at_the_hinge(kg: float, edge: float, part: float) -> None:
    push = added_push_n(kg, part * edge, edge)
    assert added_push_n(kg, 0, edge) == 0
    assert 0 <= push <= added_push_n(kg, edge, edge) * (1 + 1e-9)
    assert added_push_n(kg, edge, edge) == pytest.approx(9.81 * kg)


def test_roofs_that_cannot_be_are_refused() -> None:
    for items, angle in (([ROOF], -1), ([ROOF], 91), ([(-1, 1.3)], 0), ([(52, -1)], 0), ([(nan, 1)], 0)):
        with pytest.raises(OutsideValidity):
            weight_moment_nm(items, angle)
    for struts, force, arm, angle in ((-1, 1100, 0.5, 20), (2, -1, 0.5, 20), (2, 1100, -1, 20), (2, 1100, 0.5, 100)):
        with pytest.raises(OutsideValidity):
            strut_moment_nm(struts, force, arm, angle)
    for edge in (0, -2.6, nan):
        with pytest.raises(OutsideValidity, match="hinge to edge"):
            push_at_edge_n(600, 400, edge)
    with pytest.raises(OutsideValidity):
        up_force_n(-1, 400, EDGE_M)
    with pytest.raises(OutsideValidity):
        added_push_n(13, 2.7, EDGE_M)
    for temp_c in (-31, 81, 293, nan):
        with pytest.raises(OutsideValidity):
            strut_at_temperature_n(1100, temp_c)
