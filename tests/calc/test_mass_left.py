"""What is left for luggage with every belted seat taken, and the empty van."""

from __future__ import annotations

import pytest

from specbuilder.calc import read_all
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.parts import Space, Water
from specbuilder.model.situation import Placed
from specbuilder.model.span import Span, point
from tests import worlds
from tests.calc.scene import HUSH, SHORT, catalogue, facts, situation, theirs

LEFT, EMPTY = LedgerId("pay-mass"), LedgerId("unladen-mass")
RULES = catalogue(
    [
        worlds.option("cab", "cab", space=Space(belts=2)),
        worlds.option("bench-two", "bench", mass_kg=78, space=Space(belts=2)),
        worlds.option("bench-three", "bench", mass_kg=104, space=Space(belts=3)),
        worlds.option("no-bench", "bench"),
        worlds.option("galley", "galley", mass_kg=92),
        worlds.option("tank", "water", mass_kg=5, water=Water(fresh_full_l=40, fresh_travel_l=40)),
        worlds.option("fill-stop", "extras", water=Water(fresh_travel_cap_l=20)),
        worlds.option("boiler", "extras", mass_kg=18, water=Water(extra_water_l=10)),
        worlds.option("replate", "extras", space=Space(plate_raise_kg=200)),
        worlds.option("stones", "extras", mass_kg=1, max_count=2000),
        worlds.option("bulkhead-out", "extras", mass_kg=-16),
    ],
    [worlds.group("extras", any_=9)],
)
FAMILY = "cab", "bench-two", "galley", "tank"


def read(ledger: LedgerId, *choices: str | Placed, hush: bool = False) -> Reading:
    return read_all(situation(RULES, *choices, van=HUSH if hush else SHORT))[ledger]


def value(ledger: LedgerId, *choices: str | Placed, hush: bool = False) -> float:
    found = read(ledger, *choices, hush=hush).value
    assert found is not None
    assert found.settled
    return found.least


def stones(many: int) -> Placed:
    return Placed(option=RULES.options[OptionId("stones")], count=many)


def test_the_plate_less_van_parts_water_and_everybody_but_the_driver() -> None:
    reading = read(LEFT, *FAMILY)
    assert reading.value == point(3000 - 1960 - 78 - 92 - 5 - 40 - 75 * 3)
    assert reading.bound == point(10 * (4 + 4.93))
    assert reading.verdict is Verdict.HOLDS
    assert sum(e.amount.least for e in reading.entries) == pytest.approx(reading.value.least)
    assert reading.bound_by == ("cab", "bench-two")


def test_a_third_seat_on_the_bench_takes_a_passenger_and_asks_for_luggage() -> None:
    two, three = read(LEFT, *FAMILY), read(LEFT, "cab", "bench-three", "galley", "tank")
    assert two.room is not None
    assert three.room is not None
    assert two.room.least - three.room.least == pytest.approx(75 + 10 + (104 - 78))


def test_who_travels_changes_nothing_for_it_is_belted_seats_that_count() -> None:
    many, few = (
        read_all(situation(RULES, *FAMILY, facts_=facts(adults=a, children=c, extra_load_kg=x)))[LEFT]
        for a, c, x in ((4, 0, 90), (1, 0, 0))
    )
    assert many == few


def test_a_new_plate_leaves_more() -> None:
    assert value(LEFT, *FAMILY, "replate") == value(LEFT, *FAMILY) + 200
    assert value(EMPTY, *FAMILY, "replate") == value(EMPTY, *FAMILY)


def test_a_travel_fill_leaves_more_and_water_that_stays_in_a_part_less() -> None:
    assert value(LEFT, *FAMILY, "fill-stop") == value(LEFT, *FAMILY) + 20
    assert value(LEFT, *FAMILY, "boiler") == value(LEFT, *FAMILY) - 28


def test_what_is_taken_out_leaves_more_and_makes_the_van_lighter() -> None:
    assert value(LEFT, *FAMILY, "bulkhead-out") == value(LEFT, *FAMILY) + 16
    assert value(EMPTY, *FAMILY, "bulkhead-out") == value(EMPTY, *FAMILY) - 16


def test_exactly_the_least_luggage_is_enough_and_a_kilogram_less_is_not() -> None:
    cab = "cab", "bulkhead-out"
    spare = value(LEFT, *cab) - 10 * (2 + 4.93)
    assert spare == pytest.approx(911.7)
    assert read(LEFT, *cab, stones(911)).verdict is Verdict.HOLDS
    assert read(LEFT, *cab, stones(912)).verdict is Verdict.BROKEN
    met = read(LEFT, *cab, theirs(RULES.options[OptionId("galley")], 911.7))
    assert met.room == point(0)
    assert met.verdict is Verdict.HOLDS


def test_an_empty_van_has_no_driver_no_fuel_and_no_water_in_it() -> None:
    assert value(EMPTY) == pytest.approx(1960 - 75 - 0.9 * 80 * 0.84)
    assert value(EMPTY, "tank") == value(EMPTY) + 5
    assert value(EMPTY, "boiler", "fill-stop") == value(EMPTY) + 18
    assert value(EMPTY, hush=True) == 2370 - 75


def test_the_line_of_the_empty_weight_may_be_reached_and_not_passed() -> None:
    on_it = read(EMPTY, stones(2950 - 2295), hush=True)
    assert (on_it.value, on_it.bound, on_it.verdict) == (point(2950), point(2950), Verdict.HOLDS)
    assert read(EMPTY, stones(2951 - 2295), hush=True).verdict is Verdict.BROKEN


def test_an_open_bench_and_a_part_nobody_has_weighed_give_ranges() -> None:
    galley = theirs(RULES.options[OptionId("galley")], None)
    now = situation(RULES, "cab", galley, undecided={"bench": ["bench-two", "bench-three", "no-bench"]})
    left, empty = read_all(now)[LEFT], read_all(now)[EMPTY]
    assert left.value == Span(3000 - 1960 - 75 * 4 - 104 - 184, 3000 - 1960 - 75)
    assert left.bound == Span(10 * (2 + 4.93), 10 * (5 + 4.93))
    assert {lack.group for lack in left.lacks} == {"bench", "galley"}
    assert empty.value is not None
    assert empty.value.most - empty.value.least == pytest.approx(104 + 184)
