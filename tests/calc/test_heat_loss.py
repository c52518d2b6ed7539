"""Heat lost with the roof down and up, what the heaters make of it, and who loses how much."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.parts import Heat
from specbuilder.model.span import Span, point
from tests import worlds
from tests.calc.beside_scene import (
    nothing_told,
    says,
    set_to,
    span,
    spans_its_completions,
    told,
    with_tables,
)
from tests.calc.scene import FENWAIN, SHORT, base_van, facts

OPTIONS = [
    worlds.option("burner", "heater", gives="heater", heat=Heat(heater_kw=2, heater_fuel="diesel")),
    worlds.option("on-the-plug", "heater", gives="heater", heat=Heat(heater_kw=1.8, heater_fuel="hook-up")),
    worlds.option("no-figure", "heater", gives="heater"),
    worlds.option("cold", "heater"),
    worlds.option("lid", "roof", gives="elevating-roof", heat=Heat(heat_loss_down_w_per_k=2, heat_loss_up_w_per_k=36)),
    worlds.option("steel", "roof"),
    worlds.option("screens", "screens", heat=Heat(heat_loss_down_w_per_k=-9)),
    worlds.option("hole", "screens", heat=Heat(heat_loss_down_w_per_k=-900)),
    worlds.option("bare", "screens"),
]
UNFILLED = base_van("unfilled", replace(FENWAIN, ua_w_per_k=0))
RULES = with_tables(OPTIONS, (SHORT, UNFILLED))
DOWN = "heat-loss-down", "heat-loss-down-at-nought", "heat-loss-down-in-frost"
UP = "heat-loss-up", "heat-loss-up-at-nought", "heat-loss-up-in-frost"
AGAINST = "heat-of-loss", "coldest-roof-down", "coldest-roof-up", "heat-missing-down", "heat-missing-up"
ALL = (*DOWN, *UP, *AGAINST, "heat-missing-in-frost")


def test_a_van_of_the_usual_size() -> None:
    """59.4 W/K down and 95.7 up: 1.19, 1.48 and 2.08 kW, and 1.91, 2.39 and 3.35."""
    usual = base_van("usual", replace(FENWAIN, ua_w_per_k=57.4))
    lid = worlds.option(
        "tilt", "roof", gives="elevating-roof", heat=Heat(heat_loss_down_w_per_k=2, heat_loss_up_w_per_k=36.3)
    )
    rules, how = with_tables([lid], (usual,)), {"van": usual, "facts_": facts(design_temp_c=-5)}
    order = "heat-loss-down-at-nought", "heat-loss-down", "heat-loss-down-in-frost"
    assert [round(says(rules, id_, "tilt", **how), 2) for id_ in order] == [1.19, 1.49, 2.08]
    order = "heat-loss-up-at-nought", "heat-loss-up", "heat-loss-up-in-frost"
    assert [round(says(rules, id_, "tilt", **how), 2) for id_ in order] == [1.91, 2.39, 3.35]


@pytest.mark.parametrize(
    ("id_", "choices", "value"),
    [
        ("heat-loss-down", ["lid", "screens"], 50 * 15 / 1000),
        ("heat-loss-up", ["lid", "screens"], 86 * 15 / 1000),
        ("heat-of-loss", ["burner", "lid"], 100 * 2000 / (95 * 15)),
        ("heat-of-loss", ["burner", "steel"], 100 * 2000 / (57 * 15)),
        ("heat-of-loss", ["on-the-plug"], 0),
        ("coldest-roof-down", ["burner", "lid"], 20 - 2000 / 59),
        ("coldest-roof-up", ["burner", "lid"], 20 - 2000 / 95),
        ("coldest-roof-down", ["on-the-plug"], 20),
        ("heat-missing-down", ["burner"], 0),
        ("heat-missing-up", ["on-the-plug", "lid"], 95 * 15 / 1000),
        ("heat-missing-in-frost", ["burner", "lid"], 95 * 35 / 1000 - 2),
    ],
)
def test_settled_builds(id_: str, choices: list[str], value: float) -> None:
    assert says(RULES, id_, *choices) == pytest.approx(value, abs=1e-6)


def test_every_part_has_its_line() -> None:
    reading = told(RULES, "heat-loss-up", "lid", "screens")
    lines = {entry.option: entry.amount for entry in reading.entries}
    assert lines == {"short": point(0.855), "lid": point(0.57), "screens": point(-0.135)}
    assert sum(amount.least for amount in lines.values()) == pytest.approx(reading.value.least)  # type: ignore[union-attr]  # told


@pytest.mark.parametrize("id_", [*UP, "coldest-roof-up", "heat-missing-up", "heat-missing-in-frost"])
def test_a_roof_that_does_not_lift_is_never_up(id_: str) -> None:
    assert not told(RULES, id_, "burner", "steel").applies


@pytest.mark.parametrize("id_", AGAINST)
def test_without_a_heater_nothing_is_held_against_the_loss(id_: str) -> None:
    assert not told(RULES, id_, "cold", "lid").applies


def test_the_plug_nobody_promised_widens() -> None:
    unknown = told(RULES, "coldest-roof-down", "on-the-plug", facts_=facts(unknown=["plugged_every_night"]))
    assert unknown.value == span(20 - 1800 / 57, 20)
    assert [lack.key for lack in unknown.lacks] == ["plugged_every_night"]


def test_the_cold_nobody_named_widens_what_rests_on_it_and_nothing_else() -> None:
    nobody = facts(unknown=["design_temp_c"])
    assert told(RULES, "heat-loss-down", facts_=nobody).value == Span(0.285, 2.28)
    assert [lack.key for lack in told(RULES, "heat-loss-down", facts_=nobody).lacks] == ["design_temp_c"]
    assert says(RULES, "heat-loss-down-in-frost", facts_=nobody) == pytest.approx(57 * 0.035)
    assert told(RULES, "heat-missing-down", "burner", facts_=nobody).value == Span(0, 0.28)
    assert not told(RULES, "heat-missing-in-frost", "burner", "lid", facts_=nobody).lacks


@pytest.mark.parametrize("id_", ALL)
@pytest.mark.parametrize("plug", ["yes", "no"])
def test_undecided_questions_span_their_answers(id_: str, plug: str) -> None:
    ways = {"heater": ["burner", "on-the-plug", "cold"], "roof": ["lid", "steel"], "screens": ["screens", "bare"]}
    spans_its_completions(RULES, id_, ways, facts_=facts(plugged_every_night=plug))


@pytest.mark.parametrize("id_", ALL)
def test_missing_and_absurd_figures_tell_nothing(id_: str) -> None:
    nothing_told(told(RULES, id_, "burner", "lid", van=UNFILLED), "heat loss of the van")
    nothing_told(told(RULES, id_, "burner", "lid", "hole"), "heat loss W/K" if id_ not in AGAINST else "heat")


@pytest.mark.parametrize("id_", [*AGAINST, "heat-missing-in-frost"])
def test_a_heater_nobody_rated_tells_nothing(id_: str) -> None:
    nothing_told(told(RULES, id_, "no-figure", "lid"), "heater kW")


@pytest.mark.parametrize("id_", [*DOWN, *UP, "heat-of-loss", "heat-missing-down", "heat-missing-up"])
def test_an_inside_colder_than_the_outside_tells_nothing(id_: str) -> None:
    nothing_told(told(set_to(RULES, "heat", inside_c=-40), id_, "burner", "lid"), "inside C")


@settings(max_examples=60, deadline=None)
@given(cold=st.integers(-20, 15), kw=st.floats(0.2, 6), more=st.floats(-20, 40), up=st.floats(0, 60))
def test_below_the_coldest_night_heat_is_missing_and_above_it_none(
    cold: int, kw: float, more: float, up: float
) -> None:
    rules = with_tables(
        [
            worlds.option("heater", "heater", gives="heater", heat=Heat(heater_kw=kw, heater_fuel="gas")),
            worlds.option(
                "lid", "roof", gives="elevating-roof", heat=Heat(heat_loss_down_w_per_k=more, heat_loss_up_w_per_k=up)
            ),
        ]
    )
    how = {"facts_": facts(design_temp_c=cold, sleepers_upstairs=2)}
    for roof in ("down", "up"):
        coldest = says(rules, f"coldest-roof-{roof}", "heater", "lid", **how)
        missing = says(rules, f"heat-missing-{roof}", "heater", "lid", **how)
        lost = says(rules, f"heat-loss-{roof}", "heater", "lid", **how)
        assert missing == pytest.approx(max(0, lost - kw), abs=2e-6)
        if abs(cold - coldest) > 1e-3:
            assert (missing > 0) is (cold < coldest)
    assert says(rules, "heat-loss-up", "heater", "lid", **how) >= says(rules, "heat-loss-down", "heater", "lid", **how)
    share = says(rules, "heat-of-loss", "heater", "lid", **how)
    assert share == pytest.approx(100 * kw / says(rules, "heat-loss-up", "heater", "lid", **how), rel=1e-4)
