"""The campsite plug: a worked overload, the laws, and what the formulas refuse."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas import hookup
from specbuilder.calc.formulas.validity import OutsideValidity

WATTS = st.floats(0, 10_000)


def three(value: float) -> str:
    return f"{value:.3g}"


def test_kettle_heater_and_charger_at_once() -> None:
    charger = hookup.charger_input_w(30, 14.4, 0.88)
    assert three(charger) == "491"
    asked = hookup.at_once_w(850 + charger, 2000)
    assert three(asked) == "3.34e+03"
    assert three(hookup.mains_a(asked)) == "14.5"
    assert [three(hookup.over_w(asked, amps)) for amps in (16, 10, 6)] == ["0", "1.04e+03", "1.96e+03"]
    assert three(hookup.mains_a(asked + 1200)) == "19.7"
    assert hookup.over_w(asked + 1200, 16) > 0


@pytest.mark.parametrize(("amps", "watts"), [(3, 690), (5, 1150), (6, 1380), (10, 2300), (16, 3680)])
def test_what_a_pitch_gives(amps: float, watts: float) -> None:
    assert hookup.site_w(amps) == watts


@given(WATTS, st.floats(0, 32))
def test_what_is_over_is_what_must_go(watts: float, amps: float) -> None:
    over = hookup.over_w(watts, amps)
    assert over >= 0
    assert hookup.over_w(max(watts - over, 0), amps) == pytest.approx(0, abs=1e-6)
    assert (over > 0) == (watts > hookup.site_w(amps))


@pytest.mark.parametrize(
    "absurd",
    [
        lambda: hookup.site_w(-1),
        lambda: hookup.site_w(100),
        lambda: hookup.site_w(16, 12),
        lambda: hookup.charger_input_w(30, 14.4, 0),
        lambda: hookup.charger_input_w(30, 0, 0.88),
        lambda: hookup.at_once_w(-1, 0),
        lambda: hookup.mains_a(100, 0),
        lambda: hookup.over_w(-1, 16),
    ],
)
def test_what_cannot_be_is_named_not_answered(absurd: object) -> None:
    assert callable(absurd)
    with pytest.raises(OutsideValidity):
        absurd()
