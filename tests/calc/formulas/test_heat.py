"""Heat through walls and with the air; how strong a heater must be."""

from __future__ import annotations

from functools import partial

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.fuel import burner_l_per_h
from specbuilder.calc.formulas.heat import (
    air_change_loss_w_per_k,
    coldest_held_c,
    heat_load_w,
    heat_missing_kw,
    heater_needed_kw,
    heater_share,
    layer_m2k_per_w,
    rib_factor,
    surface_c,
    surface_loss_w_per_k,
    u_value_w_per_m2k,
)
from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.calc.formulas.figures import significant

layer = layer_m2k_per_w
WALL = u_value_w_per_m2k(0.13, layer(0.025, 0.036), layer(0.004, 0.13), 0.04)
ROOF = u_value_w_per_m2k(0.10, layer(0.025, 0.036), layer(0.004, 0.13), 0.04)
FLOOR = u_value_w_per_m2k(0.17, layer(0.020, 0.035), layer(0.015, 0.13), 0.04)
GLASS = u_value_w_per_m2k(0.13, layer(0.004, 1.0), 0.04)
ACRYLIC = u_value_w_per_m2k(0.13, layer(0.003, 0.19), 0.18, layer(0.003, 0.19), 0.04)
SHELL = u_value_w_per_m2k(0.10, layer(0.003, 0.3), layer(0.005, 0.04), 0.04)
SCREENED = u_value_w_per_m2k(1 / GLASS, 0.20)
CLOTH = 6.0
"""A medium van: heated box 4.2 by 1.65 by 1.35 m, 25 mm of foam, glass in the cab."""
DEGREES = st.floats(-30, 40)
LOSSES = st.floats(1, 300)


def loss_w_per_k(*, roof_up: bool, screens: bool) -> float:
    """What the medium van loses."""
    loss = surface_loss_w_per_k(WALL, 11.595, 1.25) + surface_loss_w_per_k(FLOOR, 6.93)
    loss += surface_loss_w_per_k(SCREENED if screens else GLASS, 3.10) + surface_loss_w_per_k(ACRYLIC, 1.10)
    loss += surface_loss_w_per_k(ROOF, 6.93 - 2.88, 1.25)
    if roof_up:
        loss += surface_loss_w_per_k(SHELL, 2.88) + surface_loss_w_per_k(CLOTH, 3.96)
        return loss + air_change_loss_w_per_k(3, 9.3555 + 1.584)
    return loss + surface_loss_w_per_k(2.0, 2.88) + air_change_loss_w_per_k(1, 9.3555)


def test_what_layers_let_through() -> None:
    found = significant(WALL, ROOF, FLOOR, GLASS, ACRYLIC, SHELL, SCREENED)
    assert found == (1.12, 1.16, 1.12, 5.75, 2.62, 3.64, 2.67)


def test_the_table_of_the_house_says_what_layers_come_to() -> None:
    rows = read_rules(rules_folder()).tables["u-values"].rows
    assert significant(WALL, ROOF, FLOOR, GLASS, ACRYLIC, SHELL, SCREENED, CLOTH) == tuple(u for _, u in rows)


@pytest.mark.parametrize(
    ("roof_up", "screens", "loss", "kw"),
    [
        (False, False, 59.4, (1.19, 1.48, 2.08)),
        (False, True, 49.8, (0.997, 1.25, 1.74)),
        (True, False, 95.7, (1.91, 2.39, 3.35)),
        (True, True, 86.2, (1.72, 2.15, 3.02)),
    ],
)
def test_a_medium_van_in_the_cold(roof_up: bool, screens: bool, loss: float, kw: tuple[float, ...]) -> None:
    found = loss_w_per_k(roof_up=roof_up, screens=screens)
    assert significant(found) == (loss,)
    assert significant(*(heat_load_w(found, 20, outside) / 1000 for outside in (0, -5, -15))) == kw


@pytest.mark.parametrize(("roof_up", "comes_to"), [(False, (0.947, 0.112, 1.01)), (True, (1.71, 0.202, 1.82))])
def test_a_night_of_two_sleepers(roof_up: bool, comes_to: tuple[float, ...]) -> None:
    kw = heat_load_w(loss_w_per_k(roof_up=roof_up, screens=True), 16, -5, gains_w=100) / 1000
    per_h = burner_l_per_h(kw, 0.85, 9.97)
    assert significant(kw, per_h, per_h * 9) == comes_to


def test_inside_surfaces_at_twenty_degrees_and_frost() -> None:
    at = partial(surface_c, inside_film_m2k_per_w=0.13, inside_c=20, outside_c=-5)
    assert significant(at(GLASS), at(ACRYLIC), at(WALL)) == (1.32, 11.5, 16.4)


def test_ribs_cost_a_fifth_of_the_wall() -> None:
    assert significant(rib_factor(0.15, 2.36)) == (1.2,)


@given(st.lists(st.floats(0.01, 5), min_size=1, max_size=6))
def test_layers_in_any_order_and_one_more_only_helps(layers: list[float]) -> None:
    u = u_value_w_per_m2k(*layers)
    assert u == pytest.approx(u_value_w_per_m2k(*reversed(layers)))
    assert u_value_w_per_m2k(*layers, 0.2) < u
    assert 1 / u == pytest.approx(sum(layers))


@given(LOSSES, LOSSES, DEGREES, st.floats(0, 30))
def test_losses_add_and_the_same_cold_asks_the_same(a: float, b: float, outside: float, difference: float) -> None:
    inside = outside + difference
    both = heat_load_w(a, inside, outside) + heat_load_w(b, inside, outside)
    assert heat_load_w(a + b, inside, outside) == pytest.approx(both, abs=1e-6)
    assert heat_load_w(a, outside, outside) == 0


@given(st.floats(0.5, 7), st.floats(0.001, 0.14), DEGREES, DEGREES)
def test_a_surface_is_between_inside_and_outside(u: float, film: float, inside: float, outside: float) -> None:
    assert min(inside, outside) - 1e-9 <= surface_c(u, film, inside, outside) <= max(inside, outside) + 1e-9


@given(st.floats(0.2, 5), st.floats(0.2, 5), st.floats(0.05, 0.2), DEGREES, DEGREES)
def test_heat_through_the_film_is_heat_through_the_wall(
    one: float, other: float, film: float, inside: float, outside: float
) -> None:
    """What flows through the film from the room to the surface flows on through everything behind it."""
    u = u_value_w_per_m2k(film, one, other)
    surface = surface_c(u, film, inside, outside)
    assert (inside - surface) / film == pytest.approx((surface - outside) / (one + other), abs=1e-6)


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: layer(0.02, 0),
        lambda: layer(-0.02, 0.036),
        lambda: u_value_w_per_m2k(),
        lambda: u_value_w_per_m2k(0, 0),
        lambda: u_value_w_per_m2k(0.13, -0.1),
        lambda: rib_factor(1.2, 2),
        lambda: rib_factor(0.1, 0.5),
        lambda: surface_loss_w_per_k(0, 3),
        lambda: surface_loss_w_per_k(1, -3),
        lambda: surface_loss_w_per_k(1, 3, 0.5),
        lambda: air_change_loss_w_per_k(-1, 9),
        lambda: air_change_loss_w_per_k(500, 9),
        lambda: air_change_loss_w_per_k(1, 0),
        lambda: coldest_held_c(2, 0, 20),
        lambda: coldest_held_c(-2, 57, 20),
        lambda: coldest_held_c(2, 57, 99),
        lambda: heater_share(2, 0),
        lambda: heater_share(-1, 900),
        lambda: heat_missing_kw(2, -1),
        lambda: heat_missing_kw(float("nan"), 900),
        lambda: heat_load_w(0, 20, -5),
        lambda: heat_load_w(50, 5, 20),
        lambda: heat_load_w(50, float("nan"), 0),
        lambda: heat_load_w(50, 20, -200),
        lambda: heat_load_w(50, 20, 0, -1),
        lambda: heater_needed_kw(50, 20, 0, 0),
        lambda: heater_needed_kw(-50, 20, 0, 1.2),
        lambda: surface_c(20, 0.13, 20, 0),
        lambda: surface_c(1, 0.13, float("inf"), 0),
    ],
)
def test_absurd_figures_are_named(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()


def test_the_heater_has_its_margin() -> None:
    assert heater_needed_kw(59.4, 20, -5, 1.2) == pytest.approx(1.2 * 59.4 * 25 / 1000)
    assert heater_needed_kw(59.4, 20, 20, 1.2) == 0


@given(kw=st.floats(0, 9), loss=st.floats(20, 300), cold=st.floats(-40, 19))
def test_a_heater_holds_down_to_its_coldest_night_and_lacks_below_it(kw: float, loss: float, cold: float) -> None:
    """Searched by halving, not by the equation."""
    low, high = 20 - 1000 * kw / loss - 50, 20.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if loss * (20 - middle) <= 1000 * kw else (middle, high)
    assert coldest_held_c(kw, loss, 20) == pytest.approx(high, abs=1e-6)
    lost_w = heat_load_w(loss, 20, cold)
    assert kw + heat_missing_kw(kw, lost_w) >= lost_w / 1000 - 1e-9
    assert heater_share(kw, lost_w) * lost_w == pytest.approx(1000 * kw)
