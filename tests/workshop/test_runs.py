"""A cable run that cannot reach from one part to the other is told, and a breaker that never trips first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import hypot

import pytest

from specbuilder.model.circuits import CircuitCode, CircuitLine, CircuitProblem
from specbuilder.model.ids import OptionId
from specbuilder.model.papers import Stand
from specbuilder.wording.circuits import problem_line
from specbuilder.workshop.positions import Positions, Spot
from specbuilder.workshop.runs import in_place
from tests.documents.cases import NAMES, plain_case

TOO_SHORT, TOO_LARGE = CircuitCode.RUN_BELOW_STRAIGHT_LINE, CircuitCode.BREAKER_ABOVE_FEED
HEATER = "air-heater-petrol-4-c1"
WINTER, PAIR, KETTLE = "winter-walkers", "off-grid-pair", "kettle-on-small-pack"


def _told(lines: tuple[CircuitLine, ...], code: CircuitCode) -> Mapping[str, CircuitProblem]:
    return {line.label: problem for line in lines for problem in line.problems if problem.code is code}


def _spot(stand: Stand, option: str) -> Spot:
    """Where a part of a spec sits."""
    van = stand.catalogue.options[stand.report.van].van if stand.report.van else None
    choice = next(choice for choice in stand.spec.choices if choice.option == option)
    found = Positions(catalogue=stand.catalogue, spec=stand.spec, van=van).of_choice(
        choice, stand.catalogue.options[OptionId(option)]
    )
    assert found is not None
    return found


def _apart_m(one: Spot, other: Spot) -> float:
    assert one.x_mm is not None
    assert other.x_mm is not None
    return hypot(one.x_mm - other.x_mm, one.y_mm - other.y_mm, one.z_mm - other.z_mm) / 1000


def _again(name: str, **metres: float) -> tuple[CircuitLine, ...]:
    """The schedule of an example looked at anew, with other runs by label."""
    stand = plain_case(name).stand
    van = stand.catalogue.options[stand.report.van].van if stand.report.van else None
    lines = tuple(
        replace(line, run_one_way_m=metres.get(line.label.replace("-", "_"), line.run_one_way_m), problems=())
        for line in stand.report.circuits
    )
    return in_place(stand.catalogue, stand.spec, van, lines)


def test_a_heater_further_from_the_battery_than_its_cable_is_long_is_to_be_settled() -> None:
    stand = plain_case(WINTER).stand
    problem = _told(stand.report.circuits, TOO_SHORT)[HEATER]
    battery = next(c.option for c in stand.spec.choices if stand.catalogue.options[c.option].group == "battery")
    assert problem.serious
    assert problem.has == 3
    assert problem.needs == pytest.approx(_apart_m(_spot(stand, "air-heater-petrol-4"), _spot(stand, battery)))
    line = next(line for line in stand.report.circuits if line.label == HEATER)
    assert problem_line(line, problem) == (
        "air heater (air-heater-petrol-4-c1): its run of 3 m is shorter than the straight line between its ends, "
        "3.52 m: measure before it is cut, and the electrician sizes it anew for the length that is measured."
    )


@pytest.mark.parametrize(("run_m", "told"), [(3.51, True), (3.52, False), (6, False)])
def test_a_run_that_reaches_is_left_in_peace(run_m: float, told: bool) -> None:
    assert (HEATER in _told(_again(WINTER, air_heater_petrol_4_c1=run_m), TOO_SHORT)) is told


def test_runs_one_behind_the_other_are_held_against_the_line_from_part_to_part() -> None:
    problem = _told(plain_case(KETTLE).stand.report.circuits, TOO_SHORT)["inverter-2000-c1"]
    assert problem.has == pytest.approx(0.2 + 0.3 + 0.8)
    assert problem.what == "battery-small-c3, battery-small-c1"
    assert "inverter-2000-c1" not in _told(_again(KETTLE, battery_small_c3=1), TOO_SHORT)


@pytest.mark.parametrize("name", NAMES)
def test_only_a_run_with_a_part_at_either_end_is_called_too_short(name: str) -> None:
    stand = plain_case(name).stand
    placed = {choice.option for choice in stand.spec.choices if stand.catalogue.options[choice.option].position}
    told = _told(stand.report.circuits, TOO_SHORT)
    for line in stand.report.circuits:
        if line.label in told:
            assert line.option in placed
            assert told[line.label].has is not None


def test_where_the_battery_is_not_chosen_nothing_is_called_too_short() -> None:
    assert not _told(_again("half-done-family", air_heater_diesel_2_c1=0.1), TOO_SHORT)


def test_a_breaker_larger_than_the_one_of_the_inverter_before_it_is_said() -> None:
    lines = plain_case(WINTER).stand.report.circuits
    found = _told(lines, TOO_LARGE)
    assert {label: (problem.has, problem.needs, problem.what) for label, problem in found.items()} == {
        "changeover-automatic-c2": (16, 10, "inverter-2000-c2")
    }
    line = next(line for line in lines if line.label == "changeover-automatic-c2")
    assert not found[line.label].serious
    assert problem_line(line, found[line.label]) == (
        "inverter to changeover (changeover-automatic-c2): its breaker of 16 A stands behind one of 10 A "
        "(inverter-2000-c2), which trips first: which ratings go in is to be settled by the electrician."
    )


def test_breakers_that_are_no_larger_than_those_before_them_are_left_in_peace() -> None:
    assert not _told(plain_case(PAIR).stand.report.circuits, TOO_LARGE)
