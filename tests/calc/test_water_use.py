"""Water of a day, its pump, full tanks, what stands outside, and the waste."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.parts import Power, Water
from specbuilder.model.span import Span, point
from tests import worlds
from tests.calc.beside_scene import nothing_told, says, set_to, spans_its_completions, told, with_tables
from tests.calc.scene import facts

OPTIONS = [
    worlds.option("tank", "fresh", gives="fresh-water", water=Water(fresh_full_l=50, fresh_travel_l=50)),
    worlds.option("can", "fresh", gives="fresh-water", water=Water(fresh_full_l=20, fresh_travel_l=20)),
    worlds.option("below", "fresh", gives="fresh-water tank-outside", water=Water(fresh_full_l=60, fresh_travel_l=60)),
    worlds.option("dry", "fresh", gives="fresh-water"),
    worlds.option("dry-below", "fresh", gives="tank-outside"),
    worlds.option("swelling", "fresh", gives="fresh-water", water=Water(fresh_full_l=20, fresh_travel_l=30)),
    worlds.option("no-water", "fresh"),
    worlds.option("galley", "kitchen", gives="pump", power=Power(bus="dc", watts_running=48)),
    worlds.option("dead-pump", "kitchen", gives="pump"),
    worlds.option("no-galley", "kitchen"),
    worlds.option("stop", "extras", water=Water(fresh_travel_cap_l=20)),
    worlds.option("waste-below", "waste", gives="waste-tank tank-outside", water=Water(waste_l=35, waste_fixed=True)),
    worlds.option("waste-can", "waste", water=Water(waste_l=20)),
    worlds.option("waste-unmeasured", "waste", gives="waste-tank", water=Water(waste_fixed=True)),
    worlds.option("no-waste", "waste"),
]
RULES = with_tables(OPTIONS)
PUMPED = "pump-minutes", "pump-energy"
ALL = ("water-a-day", *PUMPED, "water-beyond-travel", "water-outside", "waste-needed", "waste-on-board")
TWO = facts(adults=2, children=0)


def test_two_people_and_a_small_pump() -> None:
    """20 L a day: 2.86 minutes at 7 L and 0.190 Ah at 4 A; half of 50 L is waste."""
    found = [says(RULES, id_, "tank", "galley", facts_=TWO) for id_ in ("water-a-day", *PUMPED, "waste-needed")]
    assert [round(x, 3) for x in found] == [20, 2.857, 0.19, 25]


def test_full_tanks_weigh_what_the_travel_fill_leaves_out() -> None:
    assert says(RULES, "water-beyond-travel", "tank", "stop") == 30
    assert says(RULES, "water-beyond-travel", "tank") == 0
    assert says(RULES, "water-beyond-travel", "can", "stop") == 0


def test_every_tank_outside_has_its_line() -> None:
    reading = told(RULES, "water-outside", "below", "waste-below")
    assert reading.value == point(95)
    assert [(e.option, e.amount) for e in reading.entries] == [("below", point(60)), ("waste-below", point(35))]
    assert not told(RULES, "water-outside", "tank", "waste-can").applies


def test_cans_count_on_board_but_not_as_fixed() -> None:
    assert says(RULES, "waste-on-board", "waste-can") == 20
    assert says(RULES, "waste-on-board", "waste-below") == 35
    assert not told(RULES, "waste-on-board", "no-waste").applies


def test_without_water_or_pump_there_is_nothing_to_measure() -> None:
    for id_ in ALL:
        assert not told(RULES, id_, "no-water", "no-galley", "no-waste").applies
    for id_ in PUMPED:
        assert not told(RULES, id_, "tank", "no-galley").applies
        assert not told(RULES, id_, "no-water", "galley").applies


def test_travellers_nobody_counted_widen() -> None:
    reading = told(RULES, "water-a-day", "tank", facts_=facts(unknown=["children"]))
    assert reading.value == Span(20, 60)
    assert [lack.key for lack in reading.lacks] == ["children"]


@settings(max_examples=60, deadline=None)
@given(people=st.integers(1, 6), litres=st.floats(1, 40), flow=st.floats(1, 25), watts=st.floats(5, 200))
def test_the_pump_by_its_energy(people: int, litres: float, flow: float, watts: float) -> None:
    """Watt-hours over the voltage, not amps times minutes."""
    pump = worlds.option("pump", "kitchen", gives="pump", power=Power(bus="dc", watts_running=watts))
    rules = with_tables([OPTIONS[0], pump])
    rules = set_to(set_to(rules, "fresh-water-days", per_person_day_l=litres), "pump-minutes", pump_l_per_min=flow)
    now = facts(adults=people, children=0)
    minutes = says(rules, "pump-minutes", "tank", "pump", facts_=now)
    assert minutes * flow == pytest.approx(says(rules, "water-a-day", "tank", "pump", facts_=now), rel=1e-4)
    amp_hours = says(rules, "pump-energy", "tank", "pump", facts_=now)
    assert amp_hours * 12 == pytest.approx(watts * minutes / 60, rel=1e-4, abs=1e-4)


@pytest.mark.parametrize("id_", ALL)
def test_undecided_questions_span_their_answers(id_: str) -> None:
    ways = {
        "fresh": ["tank", "can", "below", "no-water"],
        "kitchen": ["galley", "no-galley"],
        "waste": ["waste-below", "waste-can", "no-waste"],
    }
    spans_its_completions(RULES, id_, ways)


@pytest.mark.parametrize(
    ("id_", "choices", "about"),
    [
        ("pump-energy", ["tank", "dead-pump"], "pump W"),
        ("water-beyond-travel", ["dry"], "fresh water L"),
        ("water-beyond-travel", ["swelling"], "travel water L"),
        ("water-outside", ["dry-below"], "tank L"),
        ("waste-needed", ["dry"], "fresh L"),
        ("waste-on-board", ["waste-unmeasured"], "waste L"),
    ],
)
def test_where_a_part_lacks_its_figure_nothing_can_be_told(id_: str, choices: list[str], about: str) -> None:
    nothing_told(told(RULES, id_, *choices), about)


def test_absurd_settings_tell_nothing() -> None:
    for id_ in ("water-a-day", *PUMPED):
        nothing_told(told(set_to(RULES, "fresh-water-days", per_person_day_l=0), id_, "tank", "galley"), "person")
    for id_ in PUMPED:
        nothing_told(told(set_to(RULES, "pump-minutes", pump_l_per_min=0), id_, "tank", "galley"), "flow")
    nothing_told(told(set_to(RULES, "pump-energy", pump_v=0), "pump-energy", "tank", "galley"), "volts")
    nothing_told(told(set_to(RULES, "waste-share", least_share=0), "waste-needed", "tank"), "share")
