"""The plans of the house's own builds: the examples, parts the customer brings, work to be undone."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Owner
from specbuilder.model.own_parts import is_theirs
from specbuilder.model.spec import OwnPart, Spec, Undone
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.spec_files import read_spec_file
from specbuilder.workshop.hours import step_hours
from specbuilder.workshop.plan import build_plan
from specbuilder.workshop.view import SpecView, view_of

from .build_worlds import START
from .judging_plans import assert_days_hold, assert_in_order, assert_longest

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))
SATURDAY = next(path for path in EXAMPLES if path.stem == "saturday-family")
BY_NAME = pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)


def example(path: Path, catalogue: Catalogue) -> SpecView:
    return seen(read_spec_file(path, catalogue).spec, catalogue)


def seen(spec: Spec, catalogue: Catalogue) -> SpecView:
    return view_of(catalogue, spec, evaluate(catalogue, spec))


@BY_NAME
def test_the_plan_of_an_example_can_be_worked_and_its_critical_path_is_the_longest(
    path: Path, catalogue: Catalogue
) -> None:
    work = tuple(catalogue.work.values())
    view = example(path, catalogue)
    plan = build_plan(view, START)
    assert_in_order(plan, work)
    assert_longest(plan, work)
    assert_days_hold(plan, work)
    assert plan.hours_known
    assert set(plan.dates_open) == {one.choice.option for one in view.taken if is_theirs(one.option, one.choice)}


@BY_NAME
def test_hours_of_the_steps_hold_the_whole(path: Path, catalogue: Catalogue) -> None:
    view = example(path, catalogue)
    plan = build_plan(view, START)
    hours = step_hours(view)
    assert hours is not None
    assert plan.whole_h == hours.whole
    assert sum(one.hours.most for one in plan.steps) >= plan.whole_h.most - 1e-6
    assert sum(one.hours.least for one in plan.steps) <= plan.whole_h.least + 1e-6
    if not plan.groups_open:
        assert {one.step: one.hours for one in plan.steps} == hours.steps


@BY_NAME
def test_every_part_that_takes_weeks_has_its_day(path: Path, catalogue: Catalogue) -> None:
    view = example(path, catalogue)
    plan = build_plan(view, START)
    arrivals = {arrival.option: arrival for one in plan.steps for arrival in one.arrivals}
    for one in view.taken:
        assert one.option is not None
        if one.option.van is None and one.option.lead_weeks:
            due = START + timedelta(weeks=one.option.lead_weeks)
            assert arrivals[one.option.id].on == due
            assert arrivals[one.option.id].step == one.option.build_step


@BY_NAME
def test_no_hold_point_is_dated_before_what_it_looks_at_is_here(path: Path, catalogue: Catalogue) -> None:
    """Seats with their plates and report at H3; where a cut comes later (windows at H1) the place alone is agreed."""
    view = example(path, catalogue)
    planned = {one.step: one for one in build_plan(view, START).steps}
    holds = {step.hold_point: step.id for step in catalogue.work.values()}
    for one in view.taken:
        assert one.option is not None
        for at in one.option.hold_points:
            cut_at = [hole.freeze_step for hole in one.holes]
            if at != "H1" or "B1" in cut_at:
                assert planned[holds[at]].last_day >= START + timedelta(weeks=one.option.lead_weeks)


def test_seats_hold_up_the_floor_and_windows_do_not_hold_up_the_marking(catalogue: Catalogue) -> None:
    plan = {one.step: one for one in build_plan(example(SATURDAY, catalogue), START).steps}
    bench = START + timedelta(weeks=5)
    assert (plan["B3"].waits_for, plan["B3"].first_day) == ("bench-two", date(2031, 5, 26))
    assert bench <= plan["B3"].first_day <= plan["B6"].first_day
    assert plan["B1"].waits_for is None
    assert plan["B1"].arrivals == ()
    assert "awning-body-rail" in [arrival.option for arrival in plan["B2"].arrivals]


def own(path: Path, catalogue: Catalogue, arrives: str) -> tuple[SpecView, str]:
    """An example whose fridge the customer brings, with the id of that."""
    spec = read_spec_file(path, catalogue).spec
    choice = next(one for one in spec.choices if catalogue.options[one.option].heat.fridge_air_cm2)
    brought = replace(choice, owner=Owner.CUSTOMER, own_part=OwnPart(arrives=arrives))
    spec = replace(spec, choices=tuple(brought if one == choice else one for one in spec.choices))
    return seen(spec, catalogue), choice.option


@pytest.mark.parametrize("arrives", ["", "soon"])
def test_a_part_of_the_customer_without_a_date_is_named(arrives: str, catalogue: Catalogue) -> None:
    view, option = own(SATURDAY, catalogue, arrives)
    plan = build_plan(view, START)
    assert plan.dates_open == (option,)
    assert plan.moved_by != option


def test_a_part_of_the_customer_that_comes_late_moves_the_date(catalogue: Catalogue) -> None:
    view, option = own(SATURDAY, catalogue, "2031-09-01")
    plan = build_plan(view, START)
    assert (plan.moved_by, plan.dates_open) == (option, ())
    (fridge_step,) = (one for one in plan.steps if any(arrival.option == option for arrival in one.arrivals))
    assert (fridge_step.first_day, fridge_step.waits_for) == (date(2031, 9, 1), option)


def test_undoing_comes_before_the_work_that_is_left(catalogue: Catalogue) -> None:
    plain = read_spec_file(SATURDAY, catalogue).spec
    undone = replace(plain, undone=(Undone(words="Take the hob out", hours=7.5, net_pence=39000, order=1),))
    before, after = build_plan(seen(plain, catalogue), START), build_plan(seen(undone, catalogue), START)
    assert after.steps[0].first_day == date(2031, 4, 22)
    assert (after.critical_h, after.whole_h.most) == (before.critical_h + 7.5, before.whole_h.most + 7.5)
    assert [one.hours.most for one in after.steps] == pytest.approx([one.hours.most for one in before.steps])


def test_hours_that_are_not_known_are_said_to_be(catalogue: Catalogue) -> None:
    view = example(SATURDAY, catalogue)
    silent = {key: one for key, one in view.report.readings.items() if key != "workshop-hours"}
    plan = build_plan(replace(view, report=replace(view.report, readings=silent)), START)
    assert not plan.hours_known
    assert [one.step for one in plan.steps] == list(catalogue.work)


def test_an_empty_job_has_a_plan(catalogue: Catalogue) -> None:
    plan = build_plan(seen(Spec(), catalogue), START)
    assert plan.groups_open
    assert plan.finish > START
