"""Laws of what may still be loaded and of the load cases; what is open widens them, what is missing is named."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import fields, replace
from math import inf, nan

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from specbuilder.calc import CALCULATIONS, read_all
from specbuilder.calc.measuring.calculation import Calculation
from specbuilder.calc.weights.load_places import FREE_BEHIND_SEATS, FREE_IN_FOOT_WELL, FREE_IN_STORES, FREE_ON_RACK
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import LedgerId, OptionId, Tag
from specbuilder.model.kinds import Basis, Verdict
from specbuilder.model.parts import Space
from specbuilder.model.situation import Placed
from specbuilder.model.span import point
from specbuilder.model.vans import Van
from tests import worlds
from tests.calc.scene import FENWAIN, base_van, catalogue, situation, theirs
from tests.calc.test_load_cases import SHIPPED, at, beside, value, with_shipped

# --- laws

BALLAST = worlds.option("ballast", "ballast", mass_kg=1)
PLACES: Mapping[Calculation, Callable[[Van], float]] = {
    FREE_IN_FOOT_WELL: lambda _: -850.0,
    FREE_BEHIND_SEATS: lambda _: 250.0,
    FREE_IN_STORES: lambda van: van.rear_sill_x_mm - 550,
    FREE_ON_RACK: lambda van: van.rear_sill_x_mm + 350,
}
LIMITS = tuple(map(LedgerId, ("total-mass", "front-axle", "rear-axle", "front-share")))


def world(van: Van, loads: list[tuple[float, float]], x_mm: float) -> tuple[Catalogue, Option, list[Option]]:
    rack = worlds.option("rack", "outside", gives="bike-rack")
    parts = [worlds.option(f"p{n}", f"p{n}", mass_kg=kg, position=at(x)) for n, (kg, x) in enumerate(loads)]
    more = replace(BALLAST, position=at(x_mm))
    base = base_van("van", van)
    return with_shipped(catalogue([rack, *parts, more], vans=(base,)), {}), base, [rack, *parts]


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    loads=st.lists(st.tuples(st.integers(1, 250), st.integers(-900, 2600)), max_size=5),
    front_share=st.sampled_from([0.3, 0.42, 0.5]),
    calculation=st.sampled_from(list(PLACES)),
)
def test_the_kilograms_that_are_free_at_a_place_keep_every_limit_and_one_more_breaks_one(
    loads: list[tuple[float, float]], front_share: float, calculation: Calculation
) -> None:
    van = replace(FENWAIN, front_min_share=front_share)
    made, base, chosen = world(van, loads, PLACES[calculation](van))
    reading = calculation.read(situation(made, *chosen, van=base))
    assert reading.value is not None
    assert reading.value.settled
    free = reading.value.least
    before = read_all(situation(made, *chosen, van=base))
    if any(before[limit].verdict is not Verdict.HOLDS for limit in LIMITS):
        assert free == 0
        return

    def loaded(kg: float) -> set[Verdict]:
        ballast = theirs(made.options[OptionId("ballast")], kg)
        now = read_all(situation(made, *chosen, ballast, van=base))
        return {now[limit].verdict for limit in LIMITS}

    assert loaded(free - 0.001) == {Verdict.HOLDS} or free < 0.001
    assert Verdict.BROKEN in loaded(free + 1)


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(loads=st.lists(st.tuples(st.integers(1, 300), st.integers(-900, 2600)), max_size=5))
def test_both_axles_of_every_case_carry_the_whole_van(loads: list[tuple[float, float]]) -> None:
    made, base, chosen = world(FENWAIN, loads, 0)
    told = beside(situation(made, *chosen, van=base))
    for case in ("running-order", "all-seats", "least-luggage", "filled-up", "driver-and-rack"):
        assert value(told, f"{case}-front") + value(told, f"{case}-rear") == pytest.approx(value(told, f"{case}-total"))
    for case in ("filled-up", "driver-and-rack"):
        share = value(told, f"{case}-front") - 0.42 * value(told, f"{case}-total")
        assert value(told, f"{case}-share") == pytest.approx(share)
    plate = max(FENWAIN.m_max_kg, value(told, "all-seats-total"))
    assert value(told, "filled-up-total") == pytest.approx(plate)


# --- open and missing


def test_while_the_van_is_open_the_figure_spans_all_that_are_left() -> None:
    heavy = base_van("heavy", replace(FENWAIN, m_max_kg=3300, r_max_kg=1900, f_max_kg=1800))
    light = base_van("light", FENWAIN)
    made = with_shipped(catalogue([], vans=(heavy, light)), {})
    ends = [value(beside(situation(made, van=van)), "free-in-stores") for van in (light, heavy)]
    now = situation(made, van=None, undecided={"base-van": ["heavy", "light"]})
    reading = beside(now)["free-in-stores"]
    assert reading.value is not None
    assert (reading.value.least, reading.value.most) == pytest.approx((min(ends), max(ends)))
    assert [lack.group for lack in reading.lacks] == ["base-van"]
    assert reading.verdict is Verdict.CANNOT_TELL


def test_without_any_van_nothing_is_said_and_the_van_is_asked_for() -> None:
    made = with_shipped(catalogue([], vans=()), {})
    for id_, reading in beside(situation(made, van=None)).items():
        assert reading.value is None or not reading.lacks, id_


@pytest.mark.parametrize(
    ("field", "number", "quantity", "ids"),
    [
        ("f_max_kg", 0, "front axle limit kg", ("all-seats-front", "filled-up-front", "free-in-stores")),
        ("r_max_kg", 0, "rear axle limit kg", ("all-seats-rear", "rest-furthest-back", "free-in-foot-well")),
        ("m_max_kg", 0, "plate kg", ("all-seats-total", "filled-up-rear", "free-behind-seats", "car-licence")),
        ("wheelbase_mm", 0, "wheelbase mm", ("running-order-rear", "weighbridge-front", "free-in-stores")),
        ("height_mm", 0, "closed height mm", ("under-bar-2000",)),
    ],
)
def test_a_missing_number_is_named_and_nothing_is_said(
    field: str, number: float, quantity: str, ids: tuple[str, ...]
) -> None:
    changes: dict[str, float] = {field: number}
    van = base_van("bad", replace(FENWAIN, **changes))  # type: ignore[arg-type]
    made = with_shipped(catalogue([], vans=(van,)), {})
    told = beside(situation(made, van=van))
    for id_ in ids:
        assert told[id_].value is None
        assert told[id_].verdict is Verdict.CANNOT_TELL
        outside = told[id_].outside
        assert outside is not None, id_
        assert outside.quantity == quantity


NUMBERS = [f.name for f in fields(Van) if f.type == "float"]


@pytest.mark.parametrize("field", NUMBERS)
@pytest.mark.parametrize("number", [0.0, -5.0, 1e12, inf, nan])
def test_no_figure_of_weight_fails_whatever_a_van_is_said_to_measure(field: str, number: float) -> None:
    changes: dict[str, float] = {field: number}
    van = base_van("bad", replace(FENWAIN, **changes))  # type: ignore[arg-type]
    made = with_shipped(catalogue([], vans=(van,)), {})
    for calculation in CALCULATIONS:
        if SHIPPED.ledgers[calculation.id].origin.file.endswith("figures-of-weight.toml"):
            calculation.read(situation(made, van=van))


def test_an_open_bench_widens_the_cases_that_count_its_seats() -> None:
    two = worlds.option("two", "bench", mass_kg=80, position=at(600), space=Space(belts=2, seat_x_mm=600))
    none = worlds.option("none", "bench")
    van = base_van("van", FENWAIN)
    made = with_shipped(catalogue([two, none], vans=(van,)), {})
    told = beside(situation(made, van=van, undecided={"bench": ["two", "none"]}))
    found = told["all-seats-total"].value
    assert found is not None
    assert (found.least, found.most) == (1960, 1960 + 80 + 150)
    assert [lack.group for lack in told["all-seats-total"].lacks] == ["bench"]
    filled = told["filled-up-total"].value
    assert filled is not None
    assert filled.least <= 3000 <= filled.most


def test_a_customers_own_part_counts_as_weighed_by_its_sheet() -> None:
    part = worlds.option("part", "part", mass_kg=100, position=at(500))
    van = base_van("van", replace(FENWAIN, basis=Basis.MEASURED))
    made = with_shipped(catalogue([part], vans=(van,)), {})
    mine = beside(situation(made, theirs(part, 120), van=van))["weighbridge-total"].value
    ours = beside(situation(made, Placed(option=part), van=van))["weighbridge-total"].value
    assert mine == point(2080)
    assert ours is not None
    assert ours.most - ours.least == pytest.approx(30)


def test_the_rack_is_the_tag_of_a_choice() -> None:
    assert any(Tag("bike-rack") in option.gives for option in SHIPPED.options.values())
