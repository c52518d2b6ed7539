"""The plan of a build: a valid order, the true longest path, and days on which the work can be done."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from itertools import chain, combinations

from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.plan import BuildPlan
from specbuilder.workshop.plan import build_plan

from .build_worlds import HOURS, START, World, part, passed, step, supply, worlds
from .judging_plans import assert_days_hold, assert_in_order, assert_longest
from .test_days import walked


def plan_of(world: World) -> BuildPlan:
    return build_plan(world.view(), START)


# --- laws, over builds of any shape


@given(worlds())
def test_every_step_comes_behind_those_it_waits_for(world: World) -> None:
    assert_in_order(plan_of(world), world.steps)


@given(worlds())
def test_the_critical_path_is_the_longest_of_all_paths(world: World) -> None:
    assert_longest(plan_of(world), world.steps)


@given(worlds())
def test_no_step_begins_before_its_parts_and_the_steps_before_it(world: World) -> None:
    assert_days_hold(plan_of(world), world.steps)


@given(worlds())
def test_days_agree_with_a_calendar_walked_day_by_day(world: World) -> None:
    """Each step begins when the last thing it waits for is there, to the minute of the working day."""
    plan = {one.step: one for one in plan_of(world).steps}
    calendar = walked(list(world.week), START, 400)
    by_id = {one.id: one for one in world.steps}
    ends: dict[str, float] = {}

    def end_of(id_: str) -> float:
        if id_ not in ends:
            mornings = [
                sum(day < START + timedelta(days=days) for day in calendar) * world.hours_per_day
                for at, days in world.parts
                if at == id_
            ]
            begin = max([0.0, *mornings, *(end_of(before) for before in by_id[id_].predecessors)])
            ends[id_] = round(begin + by_id[id_].hours_fixed, 6)
            first = calendar[int(round(begin / world.hours_per_day, 6))]
            assert plan[id_].first_day == first
            last = calendar[max(0, -int(-ends[id_] / world.hours_per_day // 1) - 1)]
            assert plan[id_].last_day == max(first, last)
        return ends[id_]

    for id_ in by_id:
        end_of(id_)


@given(worlds(), st.integers(0, 3), st.integers(1, 30))
def test_a_later_part_makes_nothing_earlier(world: World, number: int, days: int) -> None:
    later = tuple((at, on + days * (n == number)) for n, (at, on) in enumerate(world.parts))
    assert_nothing_earlier(world, replace(world, parts=later))


@given(worlds(), st.integers(0, 6), HOURS)
def test_more_hours_make_nothing_earlier(world: World, number: int, more_h: float) -> None:
    longer = tuple(
        replace(one, hours_fixed=one.hours_fixed + more_h * (n == number)) for n, one in enumerate(world.steps)
    )
    assert_nothing_earlier(world, replace(world, steps=longer))


def assert_nothing_earlier(world: World, worse: World) -> None:
    before, after = plan_of(world), plan_of(worse)
    first = {one.step: one.first_day for one in before.steps}
    assert before.finish <= after.finish
    assert all(first[one.step] <= one.first_day for one in after.steps)


@given(worlds())
def test_the_part_named_is_the_one_without_which_it_is_finished_earliest(world: World) -> None:
    """By trying every set of parts: the smallest one that helps, and of single parts the one that helps most."""
    plan = plan_of(world)
    numbers = range(len(world.parts))
    gains: dict[tuple[int, ...], int] = {}
    for taken in chain.from_iterable(combinations(numbers, many) for many in range(1, len(numbers) + 1)):
        without = world
        for number in taken:
            without = without.without(number)
        finish = plan_of(without).finish
        gains[taken] = len([day for day in walked(list(world.week), finish, 400) if finish < day <= plan.finish])
    helpful = [taken for taken, gain in gains.items() if gain]
    if not helpful:
        assert (plan.moved_by, plan.moved_with, plan.days_moved) == (None, (), 0)
        return
    smallest = min(helpful, key=lambda taken: (len(taken), -gains[taken]))
    named = tuple(number for number in numbers if part(number) in (plan.moved_by, *plan.moved_with))
    assert len(named) == len(smallest)
    assert plan.days_moved == gains[named] == gains[smallest]


@given(worlds())
def test_the_same_build_gives_the_same_plan(world: World) -> None:
    assert plan_of(world) == plan_of(world)


@given(worlds(), st.data())
def test_what_is_passed_costs_no_more_hours(world: World, data: st.DataObject) -> None:
    holds = [one.hold_point for one in world.steps if one.hold_point]
    signed = data.draw(st.lists(st.sampled_from(holds), unique=True)) if holds else []
    done = replace(world, records=tuple(passed(hold, "2031-04-18") for hold in signed))
    plan = plan_of(done)
    assert_in_order(plan, world.steps)
    assert_longest(plan, world.steps)
    assert plan.finish <= plan_of(world).finish
    for one, planned in ((one, planned) for one in world.steps for planned in plan.steps if planned.step == one.id):
        if one.hold_point in signed:
            assert (planned.passed, planned.first_day, planned.last_day) == ("2031-04-18", *[date(2031, 4, 18)] * 2)


# --- single things


def test_equals_stand_as_the_table_of_work_has_them() -> None:
    world = World(steps=(step("Z", 1), step("M", 1, "Z"), step("A", 1, "Z"), step("E", 1, "A", "M")))
    assert [one.step for one in plan_of(world).steps] == ["Z", "M", "A", "E"]


def test_a_step_that_fills_the_day_ends_on_it_and_the_next_begins_tomorrow() -> None:
    """0.35 hours for each of 20 cables and half an hour: in floating point a little more than 7.5."""
    world = World(steps=(step("B0", sum([0.35] * 20) + 0.5), step("B1", 7.5, "B0"), step("B2", 7.6, "B1")))
    monday = date(2031, 4, 21)
    days = [(one.first_day - monday, one.last_day - monday) for one in plan_of(world).steps]
    assert days == [(timedelta(days=first), timedelta(days=last)) for first, last in [(0, 0), (1, 1), (2, 3)]]


def test_a_step_without_a_hold_point_is_done_when_a_later_one_is_passed() -> None:
    steps = (step("B4", 9, hold="H4"), step("B5", 30, "B4"), step("B6", 9, "B5", hold="H5"))
    plan = plan_of(World(steps=steps, records=(passed("H4", "2031-04-10"), passed("H5", "2031-04-17"))))
    assert [one.passed for one in plan.steps] == ["2031-04-10", "2031-04-17", "2031-04-17"]
    assert (plan.critical_h, plan.finish) == (0, date(2031, 4, 17))


def test_work_goes_on_the_day_after_a_hold_point_was_passed() -> None:
    steps = (step("B0", 4, hold="H0"), step("B1", 4, "B0"))
    plan = plan_of(World(steps=steps, records=(passed("H0", "2031-04-23"),)))
    assert plan.steps[1].first_day == date(2031, 4, 24)


def test_a_part_in_store_is_waited_for_no_more() -> None:
    world = World(steps=(step("B0", 4),), parts=(("B0", 30),))
    assert plan_of(world).steps[0].waits_for == part(0)
    spec = replace(world.view().spec, records=(*world.view().spec.records, supply(0, "in store", "2031-04-18")))
    plan = build_plan(replace(world.view(), spec=spec), START)
    assert plan.steps[0].arrivals[0].here
    assert (plan.steps[0].waits_for, plan.moved_by, plan.finish) == (None, None, date(2031, 4, 21))


def test_two_parts_that_hold_the_same_day_are_named_together() -> None:
    plan = plan_of(World(steps=(step("B0", 4),), parts=(("B0", 9), ("B0", 2), ("B0", 9))))
    assert (plan.moved_by, plan.moved_with, plan.days_moved) == (part(0), (part(2),), 5)
