"""Air for those who sleep, against what the fixed openings give; wet glass."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.kinds import Verdict
from specbuilder.model.parts import Heat
from specbuilder.model.span import Span
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
from tests.calc.scene import facts

OPTIONS = [
    worlds.option("full", "vents", heat=Heat(vent_high_mm2=12_500, vent_low_mm2=2000)),
    worlds.option("small", "vents", heat=Heat(vent_high_mm2=1500, vent_low_mm2=500)),
    worlds.option("high-only", "vents", heat=Heat(vent_high_mm2=1500)),
    worlds.option("in-cloth", "vents", gives="vents-only-roof-up", heat=Heat(vent_high_mm2=12_500, vent_low_mm2=2000)),
    worlds.option("none", "vents"),
]
RULES = with_tables(OPTIONS)
FROST = facts(sleepers=2, design_temp_c=-5)


def test_openings_carry_six_cubic_metres_at_twenty_degrees() -> None:
    warm = set_to(RULES, "night-air", night_c=20)
    assert round(says(warm, "night-air", "full", facts_=FROST), 2) == 6.31
    assert round(says(RULES, "night-air", "full", facts_=FROST), 2) == 5.8, "less at sixteen"


def test_two_sleepers_need_more_than_the_openings_give() -> None:
    reading = told(RULES, "night-air", "full", facts_=FROST)
    assert reading.bound is not None
    assert round(reading.bound.least, 1) == 15.1
    assert reading.verdict is Verdict.BROKEN
    assert round(says(RULES, "night-air-heat", facts_=FROST)) == 106


def test_glass_at_twenty_degrees_and_frost() -> None:
    """Dew at 12.0, glass at 1.32."""
    assert round(says(RULES, "dew-point"), 1) == 12.0
    assert says(RULES, "wet-glass", facts_=FROST) == pytest.approx(12.01 - 1.32, abs=0.01)
    assert says(RULES, "wet-glass", facts_=facts(design_temp_c=15)) < 0, "dry on a mild night"


def test_shut_openings_give_no_air_and_cloth_does_not_count() -> None:
    for vents in ("none", "high-only", "in-cloth"):
        assert says(RULES, "night-air", vents, facts_=FROST) == 0


def test_nobody_asleep_needs_no_air() -> None:
    nobody = facts(sleepers=0)
    assert not told(RULES, "night-air", "full", facts_=nobody).applies
    assert not told(RULES, "night-air-heat", facts_=nobody).applies


@settings(max_examples=60, deadline=None)
@given(sleepers=st.integers(1, 6), cold=st.integers(-20, 9))
def test_air_carries_the_water_of_every_sleeper(sleepers: int, cold: int) -> None:
    """Balanced hour by hour: what the air takes out, less what it brings in, is what they breathe out."""
    now = facts(sleepers=sleepers, design_temp_c=cold)
    reading = told(RULES, "night-air", "full", facts_=now)
    assert reading.bound is not None
    alone = told(RULES, "night-air", "full", facts_=facts(sleepers=1, design_temp_c=cold)).bound
    assert alone is not None
    assert reading.bound.least == pytest.approx(sleepers * alone.least, rel=1e-5)
    colder = told(RULES, "night-air", "full", facts_=facts(sleepers=sleepers, design_temp_c=cold - 1))
    assert colder.bound is not None
    assert colder.bound.least < reading.bound.least, "colder air is drier"
    assert number(colder) > number(reading), "and rises faster"
    heat = says(RULES, "night-air-heat", facts_=now)
    assert heat == pytest.approx(0.335 * reading.bound.least * (16 - cold), rel=1e-4)


def test_what_nobody_named_widens() -> None:
    who = told(RULES, "night-air-heat", facts_=facts(unknown=["sleepers"], design_temp_c=-5))
    assert who.value is not None
    assert who.value.most == pytest.approx(6 / 2 * says(RULES, "night-air-heat", facts_=FROST), rel=1e-5)
    assert [lack.key for lack in who.lacks] == ["sleepers"]
    glass = told(RULES, "wet-glass", facts_=facts(unknown=["design_temp_c"]))
    cold, mild = (says(RULES, "wet-glass", facts_=facts(design_temp_c=c)) for c in (-20, 15))
    assert glass.value == Span(mild, cold)
    assert [lack.key for lack in glass.lacks] == ["design_temp_c"]


def test_undecided_openings_span_their_answers() -> None:
    spans_its_completions(RULES, "night-air", {"vents": ["full", "small", "none"]}, facts_=FROST)


def test_where_it_is_no_drier_outside_nothing_is_said() -> None:
    damp = facts(sleepers=2, design_temp_c=14)
    nothing_told(told(RULES, "night-air-heat", facts_=damp), "drier outside")
    reading = told(RULES, "night-air", "full", facts_=damp)
    assert reading.verdict is Verdict.CANNOT_TELL
    assert reading.outside is not None


def test_missing_tables_and_absurd_settings_tell_nothing() -> None:
    nothing_told(told(without_table(RULES, "people-heat"), "night-air-heat", facts_=FROST), "people-heat")
    nothing_told(told(without_table(RULES, "u-values"), "wet-glass", facts_=FROST), "u-values")
    nothing_told(told(set_to(RULES, "night-air", night_c=-30), "night-air", "full", facts_=FROST), "inside C")
    nothing_told(told(set_to(RULES, "night-air", vents_apart_m=-1), "night-air", "full", facts_=FROST), "height m")
    nothing_told(told(set_to(RULES, "dew-point", humidity_share=0), "dew-point"), "humidity")
    nothing_told(told(set_to(RULES, "wet-glass", inside_film_m2k_per_w=1), "wet-glass"), "film")
