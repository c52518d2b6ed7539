"""The place of a battery: worked openings and forces, the laws, and what the formulas refuse."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas import battery_place
from specbuilder.calc.formulas.validity import OutsideValidity


def three(value: float) -> str:
    return f"{value:.3g}"


@pytest.mark.parametrize(("gas_a", "flow", "opening"), [(1, "0.6", "16.8"), (2, "1.2", "33.6")])
def test_air_for_a_lead_battery(gas_a: float, flow: str, opening: str) -> None:
    found = battery_place.gas_flow_m3_per_h(6, gas_a, 200)
    assert three(found) == flow
    assert three(battery_place.vent_cm2(found)) == opening


@pytest.mark.parametrize(("mass", "times", "force"), [(22, 20, "4.32e+03"), (22, 8, "1.73e+03"), (60, 20, "1.18e+04")])
def test_what_the_fixing_holds(mass: float, times: float, force: str) -> None:
    assert three(battery_place.fixing_n(mass, times)) == force


@given(st.floats(1, 1000), st.floats(0.5, 6), st.floats(1, 5))
def test_air_grows_with_capacity(capacity: float, gas: float, times: float) -> None:
    one, more = (battery_place.gas_flow_m3_per_h(6, gas, c) for c in (capacity, capacity * times))
    assert more == pytest.approx(one * times)


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: battery_place.gas_flow_m3_per_h(0, 1, 200),
        lambda: battery_place.gas_flow_m3_per_h(6, 11, 200),
        lambda: battery_place.gas_flow_m3_per_h(6, 1, 0),
        lambda: battery_place.vent_cm2(-1),
        lambda: battery_place.fixing_n(0, 20),
        lambda: battery_place.fixing_n(20, 0),
    ],
)
def test_what_cannot_be_is_named_not_answered(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()
