"""Days on a tank, the waste it makes, and the pump."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.calc.formulas.water import least_waste_l, pump_ah, pump_min, waste_share, water_a_day_l, water_days
from tests.calc.formulas.figures import significant

LITRES = st.floats(1, 300)


def test_two_people_and_fifty_litres() -> None:
    assert significant(water_days(50, 2, 10), least_waste_l(50, 0.5)) == (2.5, 25)
    assert significant(pump_min(20, 7), pump_ah(20, 7, 4)) == (2.86, 0.19)


@given(LITRES, st.integers(1, 6), st.floats(1, 50))
def test_so_many_days_use_the_tank_up(litres: float, people: int, each: float) -> None:
    assert water_days(litres, people, each) * people * each == pytest.approx(litres)
    assert water_days(litres, people, each) * water_a_day_l(people, each) == pytest.approx(litres)
    for absurd in ((0, each), (people, 0), (-1, each), (float("nan"), each)):
        with pytest.raises(OutsideValidity):
            water_a_day_l(*absurd)


@given(LITRES, st.floats(0.1, 1))
def test_the_least_waste_tank_just_meets_its_share(fresh: float, share: float) -> None:
    assert waste_share(least_waste_l(fresh, share), fresh) == pytest.approx(share)


@given(LITRES, st.floats(1, 25), st.floats(0, 10))
def test_the_pump_takes_its_current_for_its_minutes(litres: float, flow: float, amps: float) -> None:
    assert pump_min(litres, flow) * flow == pytest.approx(litres)
    assert pump_ah(litres, flow, amps) * 60 == pytest.approx(amps * pump_min(litres, flow))


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: water_days(0, 2, 10),
        lambda: water_days(50, 0, 10),
        lambda: water_days(50, 2, 0),
        lambda: waste_share(30, 0),
        lambda: waste_share(0, 40),
        lambda: waste_share(-3, 40),
        lambda: least_waste_l(50, 0),
        lambda: pump_min(20, 0),
        lambda: pump_min(-20, 7),
        lambda: pump_ah(20, 7, -4),
    ],
)
def test_absurd_figures_are_named(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()
