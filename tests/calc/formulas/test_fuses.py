"""Fuses: worked cases, and what must hold of every fuse beside its cable."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.formulas.cables import ampacity_a
from specbuilder.calc.formulas.fuses import (
    fuse_in_window_a,
    kind_by_amps,
    kind_that_breaks,
    least_fuse_a,
    packs_short_circuit_ka,
    short_circuit_behind_ka,
    smallest_fused_section,
)
from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.model.catalogue import Catalogue

BLADE = [1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40]
BOLTED = [30, 40, 50, 60, 80, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400]
RATINGS = sorted({*BLADE, *BOLTED})
AMPS_70 = {1: 14, 1.5: 18, 2.5: 25, 4: 35, 6: 45, 10: 65, 16: 90, 25: 110, 35: 137, 50: 167, 70: 216, 95: 264, 120: 308}
AMPS_105 = {1: 20, 2.5: 35, 6: 60, 10: 90, 16: 130, 25: 170, 35: 210, 50: 270, 70: 330, 95: 390, 120: 450}
KINDS = [
    ("blade", 1.0),
    ("bolt-down, large", 2.0),
    ("strip fuse, 32 V", 6.0),
    ("terminal fuse, 14 V", 10.0),
    ("class T, 125 V", 20.0),
]
SECTIONS = sorted(AMPS_70.items())

loads = st.floats(0.05, 500)


# --- worked cases


def test_the_fuse_of_a_fridge() -> None:
    assert least_fuse_a(5.5, 1.25) == pytest.approx(6.88, abs=0.005)
    assert fuse_in_window_a(5.5, 25, BLADE, 1.25) == 7.5


def test_an_empty_window_takes_the_next_cable() -> None:
    """9 A in a bundle of five: 1.5 mm2 carry 10.8 A and the fuse must be 11.25 A or more; 2.5 mm2 take 15 A."""
    bundled = [(area, ampacity_a(amps, 0.6, 1)) for area, amps in SECTIONS]
    assert least_fuse_a(9, 1.25) == 11.25
    assert fuse_in_window_a(9, dict(bundled)[1.5], BLADE, 1.25) is None
    assert fuse_in_window_a(9, dict(bundled)[2.5], BLADE, 1.25) == 15
    assert smallest_fused_section(9, bundled, BLADE, 1.25) == (2.5, 15)


def test_the_fuse_of_a_two_kilowatt_inverter() -> None:
    load_a = 2000 / (12 * 0.88)
    assert least_fuse_a(load_a, 1.25) == pytest.approx(236.7, abs=0.1)
    assert smallest_fused_section(load_a, sorted(AMPS_105.items()), BOLTED, 1.25) == (50, 250)
    assert smallest_fused_section(load_a, SECTIONS, BOLTED, 1.25) == (95, 250)


def test_the_fuse_of_a_charger_between_batteries() -> None:
    load_a = 30 * 14.4 / (0.9 * 12.5)
    assert fuse_in_window_a(load_a, AMPS_70[25], BOLTED, 1.25) == 50


def test_two_packs_break_at_twice_one() -> None:
    bank_ka = packs_short_circuit_ka(6, 2)
    assert bank_ka == 12
    assert kind_that_breaks(bank_ka, KINDS) == "class T, 125 V"
    assert kind_that_breaks(10, KINDS) == "terminal fuse, 14 V"
    assert kind_that_breaks(20.1, KINDS) is None


def test_a_breaker_need_not_stand_above_its_load() -> None:
    assert fuse_in_window_a(16, 20, [6, 10, 16], 1) == 16
    assert fuse_in_window_a(13.1, 20, [6, 10, 16], 1) == 16


def test_the_series_of_a_rating() -> None:
    series = [("blade", 40.0), ("bolt-down", 400.0)]
    assert kind_by_amps(40, series) == "blade"
    assert kind_by_amps(50, series) == "bolt-down"
    assert kind_by_amps(500, series) is None


def test_the_shipped_tables_are_the_ones_of_the_cases(catalogue: Catalogue) -> None:
    rows = catalogue.tables["fuse-ratings"].rows
    assert [row[1] for row in rows if row[0] == "blade"] == BLADE
    assert [row[1] for row in rows if row[0] == "bolt-down"] == BOLTED
    assert {row[0]: row[3] for row in catalogue.tables["conductors"].rows}.items() >= AMPS_105.items()
    assert {row[0]: row[2] for row in catalogue.tables["conductors"].rows}.items() >= AMPS_70.items()


# --- what holds of every fuse


@given(load=loads, carries=loads)
def test_the_fuse_lies_in_its_window_or_there_is_none(load: float, carries: float) -> None:
    fuse = fuse_in_window_a(load, carries, RATINGS, 1.25)
    inside = [r for r in RATINGS if 1.25 * load <= r <= carries]
    assert fuse == (inside[0] if inside else None)


@given(load=loads, share=st.sampled_from([1, 0.7, 0.6, 0.5, 0.4]))
def test_the_section_is_the_smallest_that_has_a_fuse(load: float, share: float) -> None:
    sections = [(area, amps * share) for area, amps in SECTIONS]
    found = smallest_fused_section(load, sections, RATINGS, 1.25)
    thinner = [pair for pair in sections if found is None or pair[0] < found[0]]
    assert not any(1.25 * load <= r <= carries for _, carries in thinner for r in RATINGS)
    if found is not None:
        assert 1.25 * load <= found[1] + 1e-6 <= dict(sections)[found[0]] + 2e-6


@given(load=loads, more=loads)
def test_more_load_never_gets_a_thinner_cable_or_a_smaller_fuse(load: float, more: float) -> None:
    less, more = sorted((load, more))
    first, second = (smallest_fused_section(a, SECTIONS, RATINGS, 1.25) for a in (less, more))
    if second is not None:
        assert first is not None
        assert first[0] <= second[0]
        assert first[1] <= second[1]


@given(source=st.floats(0.1, 50), loop=st.floats(0, 500), more=st.floats(0, 500))
def test_more_cable_never_lets_more_through(source: float, loop: float, more: float) -> None:
    near, far = (short_circuit_behind_ka(source, 12.8, mohm) for mohm in sorted((loop, more)))
    assert far <= near <= source + 1e-9


@given(needed=st.floats(0.01, 30))
def test_the_kind_breaks_what_it_must_and_no_smaller_one_does(needed: float) -> None:
    kind = kind_that_breaks(needed, KINDS)
    able = [name for name, capacity in KINDS if capacity >= needed]
    assert kind == (able[0] if able else None)


# --- outside validity


@pytest.mark.parametrize("bad", [0, -1, math.nan, math.inf, -math.inf, 1e9])
def test_absurd_numbers_are_named_and_never_answered(bad: float) -> None:
    for work in (
        lambda: least_fuse_a(bad, 1.25),
        lambda: least_fuse_a(5, bad),
        lambda: fuse_in_window_a(bad, 25, BLADE, 1.25),
        lambda: fuse_in_window_a(5, bad, BLADE, 1.25),
        lambda: smallest_fused_section(bad, SECTIONS, BLADE, 1.25),
        lambda: packs_short_circuit_ka(bad, 2),
        lambda: packs_short_circuit_ka(6, bad),
        lambda: short_circuit_behind_ka(bad, 12.8, 1),
        lambda: short_circuit_behind_ka(4, bad, 1),
        lambda: kind_that_breaks(bad, KINDS),
        lambda: kind_by_amps(bad, [("blade", 40.0)]),
    ):
        with pytest.raises(OutsideValidity):
            work()


def test_a_loop_of_no_resistance_is_the_source_itself() -> None:
    assert short_circuit_behind_ka(4, 12.8, 0) == pytest.approx(4)
    for loop in (-0.1, math.nan, math.inf):
        with pytest.raises(OutsideValidity):
            short_circuit_behind_ka(4, 12.8, loop)
