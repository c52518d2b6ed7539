"""How long the gas on board lasts, and the openings of its store."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.kinds import Verdict
from specbuilder.model.parts import Heat
from tests import worlds
from tests.calc.beside_scene import (
    nothing_told,
    number,
    says,
    set_to,
    spans_its_completions,
    told,
    with_tables,
    without_table,
)

HOB = Heat(cooker_fuel="gas", gas_kw_gross=2.8, gas_locker_floor_mm2=90_000, gas_locker_vent_mm2=10_300)
OPTIONS = [
    worlds.option("kit", "cooking", heat=HOB),
    worlds.option("plate", "cooking"),
    worlds.option("hob-without-watts", "cooking", heat=Heat(cooker_fuel="gas")),
    worlds.option("one-small", "store", heat=Heat(gas_bottles=1, gas_kg=2.75)),
    worlds.option("two-small", "store", heat=Heat(gas_bottles=2, gas_kg=5.5, gas_locker_floor_mm2=135_000)),
    worlds.option(
        "two-large",
        "store",
        heat=Heat(gas_bottles=2, gas_kg=12, gas_locker_floor_mm2=585_000, gas_locker_vent_mm2=11_699),
    ),
    worlds.option("unweighed", "store", heat=Heat(gas_bottles=1)),
    worlds.option("tank", "store", heat=Heat(gas_kg=8)),
    worlds.option("no-floor", "store", heat=Heat(gas_bottles=1, gas_kg=5, gas_locker_vent_mm2=12_000)),
    worlds.option("no-gas", "store"),
    worlds.option("gas-heater", "heater", gives="heater", heat=Heat(heater_kw=2, heater_fuel="gas", gas_kw_gross=2.3)),
    worlds.option("no-heater", "heater"),
]
RULES = with_tables(OPTIONS)
BURNT = "gas-cooking-days", "gas-nights"
ALL = (*BURNT, "gas-store-vent", "gas-store-duct")


def test_a_small_bottle_cooks_for_a_month() -> None:
    """2.75 kg of butane, 95 % of it, 1.12 kWh of flame a day: 32 days; as the vector of 1.125 kWh gives 31.9."""
    assert says(RULES, "gas-cooking-days", "kit", "one-small") == pytest.approx(
        2.75 * 0.95 * 13.74 / (2.8 * 0.4), abs=1e-5
    )
    as_given = set_to(RULES, "gas-cooking-days", hob_h_per_day=1.125 / 2.8)
    assert round(says(as_given, "gas-cooking-days", "kit", "one-small"), 1) == 31.9


def test_gas_that_heats_is_gone_in_a_week() -> None:
    """0.9 kW for 9 h at 0.90 beside the cooking: 6.6 nights of 5.5 kg, by the poorer gas."""
    night_kg = 8.1 / 0.9 / 12.69 + 1.12 / 13.74
    assert says(RULES, "gas-nights", "kit", "two-small", "gas-heater") == pytest.approx(5.5 * 0.95 / night_kg, abs=1e-5)
    assert says(RULES, "gas-nights", "plate", "two-small", "gas-heater") == pytest.approx(
        5.5 * 0.95 / (8.1 / 0.9 / 12.69), abs=1e-5
    )


@pytest.mark.parametrize(
    ("choices", "vent", "bound", "verdict"),
    [
        (["kit", "one-small"], 10_300, 10_000, Verdict.HOLDS),
        (["plate", "two-large"], 11_699, 11_700, Verdict.BROKEN),
        (["kit", "two-large"], 21_999, 23_400, Verdict.BROKEN),
        (["kit", "two-small"], 10_300, 10_000, Verdict.HOLDS),
    ],
)
def test_openings_of_the_store(choices: list[str], vent: float, bound: float, verdict: Verdict) -> None:
    reading = told(RULES, "gas-store-vent", *choices)
    assert number(reading) == vent
    assert reading.bound is not None
    assert (reading.bound.least, reading.verdict) == (bound, verdict)


def test_small_bottles_may_have_a_duct() -> None:
    assert says(RULES, "gas-store-duct", "kit", "two-small") == 20
    for larger in ("two-large", "tank", "no-gas"):
        assert not told(RULES, "gas-store-duct", "kit", larger).applies


def test_without_gas_there_is_nothing_to_measure() -> None:
    for id_ in ALL:
        assert not told(RULES, id_, "plate", "no-gas", "no-heater").applies
    assert says(RULES, "gas-cooking-days", "kit", "no-gas") == 0
    assert not told(RULES, "gas-nights", "kit", "one-small", "no-heater").applies


@settings(max_examples=60, deadline=None)
@given(kg=st.floats(0.5, 16), kw=st.floats(0.5, 6), hours=st.floats(0.1, 3), usable=st.floats(0.5, 1))
def test_what_is_burnt_in_all_days_is_what_was_usable(kg: float, kw: float, hours: float, usable: float) -> None:
    rules = with_tables(
        [
            worlds.option("hob", "cooking", heat=Heat(cooker_fuel="gas", gas_kw_gross=kw)),
            worlds.option("bottle", "store", heat=Heat(gas_bottles=1, gas_kg=kg)),
        ]
    )
    rules = set_to(rules, "gas-cooking-days", hob_h_per_day=hours, usable_share=usable)
    days = says(rules, "gas-cooking-days", "hob", "bottle")
    assert days * kw * hours == pytest.approx(kg * usable * 13.74, rel=1e-4)


@pytest.mark.parametrize("id_", ALL)
def test_undecided_questions_span_their_answers(id_: str) -> None:
    ways = {
        "cooking": ["kit", "plate"],
        "store": ["one-small", "two-small", "two-large", "tank", "no-gas"],
        "heater": ["gas-heater", "no-heater"],
    }
    spans_its_completions(RULES, id_, ways)


def test_missing_and_absurd_figures_tell_nothing() -> None:
    for id_ in BURNT:
        nothing_told(told(RULES, id_, "kit", "unweighed", "gas-heater"), "gas content")
        nothing_told(told(RULES, id_, "hob-without-watts", "one-small", "gas-heater"), "gas hob kW")
        nothing_told(told(without_table(RULES, "gases"), id_, "kit", "one-small", "gas-heater"), "gases")
        for absurd in (25, -1):
            rules = set_to(RULES, "gas-cooking-days", hob_h_per_day=absurd)
            nothing_told(told(rules, id_, "kit", "one-small", "gas-heater"), "full flame")
        nothing_told(
            told(set_to(RULES, "gas-cooking-days", usable_share=2), id_, "kit", "one-small", "gas-heater"), "usable"
        )
    nothing_told(told(RULES, "gas-store-duct", "kit", "unweighed"), "gas content")
    nothing_told(told(set_to(RULES, "gas-nights", gas_burner_share=0), "gas-nights", "gas-heater"), "efficiency")
    for rules, choice, about in ((RULES, "no-floor", "floor"), (without_table(RULES, "gas-store"), "kit", "gas-store")):
        reading = told(rules, "gas-store-vent", choice)
        assert reading.verdict is Verdict.CANNOT_TELL
        assert reading.outside is not None
        assert about in reading.outside.quantity
