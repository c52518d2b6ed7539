"""The plan area, its row of the openings table, and openings in roof and walls together."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Verdict
from specbuilder.model.parts import Heat
from tests import worlds
from tests.calc.beside_scene import (
    SHIPPED,
    nothing_told,
    number,
    says,
    spans_its_completions,
    told,
    with_tables,
    without_table,
)
from tests.calc.scene import FENWAIN, base_van

OPTIONS = [
    worlds.option("gas", "cooking", gives="open-flame", heat=Heat(vent_high_mm2=10_000, vent_low_mm2=1500)),
    worlds.option("plate", "cooking"),
    worlds.option("in-roof", "vents", heat=Heat(vent_high_mm2=8000)),
    worlds.option("in-wall", "vents", gives="vent-in-wall", heat=Heat(vent_high_mm2=2000)),
    worlds.option("in-cloth", "vents", gives="vents-only-roof-up", heat=Heat(vent_high_mm2=9000)),
    worlds.option("more-wall", "more", gives="vent-in-wall", heat=Heat(vent_high_mm2=1500)),
    worlds.option("none", "more"),
]
TABLE = "plan-area-row", "plan-area-to-next-row", "high-vents-by-table", "low-vents-by-table"


def van(length_mm: float, width_mm: float) -> Option:
    return base_van("van", replace(FENWAIN, length_mm=length_mm, width_mm=width_mm))


def found(length_mm: float, width_mm: float, cooking: str) -> tuple[float, ...]:
    one = van(length_mm, width_mm)
    rules = with_tables(OPTIONS, (one,))
    return tuple(says(rules, id_, cooking, van=one) for id_ in ("plan-area-row", *TABLE[2:]))


@pytest.mark.parametrize(
    ("length", "width", "cooking", "row"),
    [
        (4904, 1904, "gas", (10, 10_000, 1500)),
        (5304, 1904, "gas", (15, 12_500, 2000)),
        (4904, 1904, "plate", (10, 1500, 500)),
        (5000, 2000, "gas", (10, 10_000, 1500)),
        (5000, 2000.01, "gas", (15, 12_500, 2000)),
        (5304, 1904, "plate", (15, 12_500, 2000)),
    ],
)
def test_rows_of_the_table(length: float, width: float, cooking: str, row: tuple[float, ...]) -> None:
    assert found(length, width, cooking) == row


def test_plan_area_goes_by_the_whole_vehicle() -> None:
    one = van(4904, 1904)
    assert round(says(with_tables(OPTIONS, (one,)), "plan-area", van=one), 2) == 9.34


@pytest.mark.parametrize(
    ("length", "verdict"),
    [(4904, Verdict.HOLDS), (5140, Verdict.HOLDS), (5150, Verdict.BROKEN), (5250, Verdict.BROKEN)],
)
def test_near_the_next_row_it_is_said(length: float, verdict: Verdict) -> None:
    """9.8 m2 is the last that is not near 10."""
    one = van(length, 1904)
    reading = told(with_tables(OPTIONS, (one,)), "plan-area-to-next-row", "gas", van=one)
    assert reading.verdict is verdict
    assert number(reading) == pytest.approx(100 - length * 1904 / 1e5, abs=1e-6)


def test_the_last_row_has_no_next_one() -> None:
    one = van(9000, 2500)
    rules = with_tables(OPTIONS, (one,))
    assert not told(rules, "plan-area-to-next-row", "gas", van=one).applies
    assert not told(rules, "plan-area-row", "gas", van=one).applies
    assert says(rules, "high-vents-by-table", "gas", van=one) == 20_000


@settings(max_examples=80, deadline=None)
@given(length=st.integers(2000, 9000), width=st.integers(1500, 2500), flame=st.booleans())
def test_a_row_holds_the_area_and_the_one_before_does_not(length: int, width: int, flame: bool) -> None:
    one = van(length, width)
    rules, cooking = with_tables(OPTIONS, (one,)), "gas" if flame else "plate"
    edge = told(rules, "plan-area-row", cooking, van=one)
    area = length * width
    rows = [
        float(r[0]) * 1e6 for r in SHIPPED.tables["vents-open-flame" if flame or area > 1e7 else "vents-sealed"].rows
    ]
    if area > 2e7:
        assert not edge.applies
    else:
        assert number(edge) * 1e6 == min(e for e in rows if area <= e)
    one_more = van(length + 1, width)
    more = says(with_tables(OPTIONS, (one_more,)), "high-vents-by-table", cooking, van=one_more)
    assert more >= says(rules, "high-vents-by-table", cooking, van=one)


@pytest.mark.parametrize(
    ("choices", "pct"),
    [
        (["gas", "in-wall"], 120),
        (["plate", "in-wall"], 100 * 2000 / 1500),
        (["plate", "in-wall", "more-wall"], 100 * 3500 / 1500),
    ],
)
def test_a_wall_counts_half_of_what_it_opens(choices: list[str], pct: float) -> None:
    one = van(4904, 1904)
    assert says(with_tables(OPTIONS, (one,)), "high-vents-mixed", *choices, van=one) == pytest.approx(pct, abs=1e-4)


def test_roof_and_wall_as_they_are_mixed() -> None:
    """8,000 in the roof and 4,000 in the wall do for 10,000; 3,000 in the wall do not."""
    one = van(4904, 1904)
    for wall, pct in ((2000, 100), (1500, 95)):
        flame = worlds.option("flame", "cooking", gives="open-flame", heat=Heat(vent_high_mm2=8000))
        walls = worlds.option("wall", "vents", gives="vent-in-wall", heat=Heat(vent_high_mm2=wall))
        rules = with_tables([flame, walls], (one,))
        assert says(rules, "high-vents-mixed", "flame", "wall", van=one) == pytest.approx(pct)
    assert not told(with_tables(OPTIONS, (one,)), "high-vents-mixed", "gas", "in-roof", van=one).applies


@pytest.mark.parametrize("id_", ["plan-area", *TABLE, "high-vents-mixed"])
def test_undecided_questions_span_their_answers(id_: str) -> None:
    one = van(4904, 1904)
    ways = {"cooking": ["gas", "plate"], "vents": ["in-roof", "in-wall", "in-cloth"], "more": ["more-wall", "none"]}
    spans_its_completions(with_tables(OPTIONS, (one,)), id_, ways, van=one)


@pytest.mark.parametrize("id_", ["plan-area", *TABLE])
def test_a_van_without_length_or_a_table_that_lacks_tells_nothing(id_: str) -> None:
    none = van(0, 1904)
    nothing_told(told(with_tables(OPTIONS, (none,)), id_, "gas", van=none), "length mm")
    endless = van(60_000, 3000)
    rules = with_tables(OPTIONS, (endless,))
    if id_ != "plan-area":
        nothing_told(told(rules, id_, "gas", van=endless), "vents-open-flame")
        nothing_told(told(without_table(rules, "vents-open-flame"), id_, "gas", van=endless), "vents-open-flame")


def test_a_van_without_its_own_figure_tells_nothing_of_the_mix() -> None:
    unfilled = base_van("unfilled", replace(FENWAIN, vent_high_sealed_mm2=0))
    rules = with_tables(OPTIONS, (unfilled,))
    nothing_told(told(rules, "high-vents-mixed", "plate", "in-wall", van=unfilled), "opening needed mm2")
