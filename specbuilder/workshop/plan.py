"""The plan of a build: its steps as a graph, run over the working days of the firm.

A step begins when the steps before it are done and its parts are here. Steps that do not depend on each other run side
by side, so the house needs a pair of hands for each: two, where its table of work forks in two. Hours are taken at
their most and parts at their day, since a date that comes too early helps nobody.

networkx is imported where it is used: it would hold up the first frame of the app.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, TypeAlias

from specbuilder.model.catalogue import Option, WorkStep
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import OptionState
from specbuilder.model.ledger import Entry
from specbuilder.model.plan import Arrival, BuildPlan, PlannedStep
from specbuilder.model.record import RecordKind
from specbuilder.model.span import ZERO, Span

from .arrivals import arrivals_of, day_of
from .days import WorkDays, seconds, work_days
from .hours import StepHours, step_hours
from .view import SpecView

if TYPE_CHECKING:
    import networkx as nx

    Tasks: TypeAlias = "nx.DiGraph[str | Arrival]"
    """Steps by their id, and the arrivals that feed them."""

_NOBODY: frozenset[OptionId] = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Build:
    """What a plan is worked out from."""

    tasks: Tasks
    order: tuple[str | Arrival, ...]
    """All tasks, each behind those it waits for."""
    hours: Mapping[str, Span]
    """Of every step, passed or not."""
    passed: Mapping[str, date]
    days: WorkDays
    undone_h: float

    @property
    def steps(self) -> tuple[str, ...]:
        """The steps in order."""
        return tuple(task for task in self.order if isinstance(task, str))

    def arrivals(self, step: str) -> tuple[Arrival, ...]:
        """What feeds a step, the latest first and what has no date before it."""
        feeding = [task for task in self.tasks.pred[step] if isinstance(task, Arrival)]
        return tuple(sorted(feeding, key=lambda arrival: -(arrival.on or date.max).toordinal()))

    def left_s(self, step: str) -> int:
        """Seconds of work that are still to be done, at most."""
        return 0 if step in self.passed else seconds(self.hours[step].most)


def build_plan(view: SpecView, start: date, ordered: Mapping[OptionId, date] | None = None) -> BuildPlan:
    """The plan of a build that begins on this day; works for half-known builds as well.

    Parts are ordered on that day too, but for those ``ordered`` names with a day of their own.

    Raises:
        networkx.NetworkXUnfeasible: if the steps run in a circle, which the reader of the rules refuses.
    """
    build = _build(view, start, ordered or {})
    clock = _clock(build)
    path = _longest_path(build)
    moved_by = _moved_by(build)
    steps = tuple(_planned(build, clock, step, path) for step in build.steps)
    hours = step_hours(view)
    waited_for = dict.fromkeys(arrival for step in steps for arrival in step.arrivals)
    return BuildPlan(
        steps=steps,
        critical=path,
        critical_h=sum(build.left_s(step) for step in path) / seconds(1) + build.undone_h,
        whole_h=hours.whole if hours else ZERO,
        first_day=min((step.first_day for step in steps), default=build.days.first),
        finish=_finish(build, clock),
        moved_by=moved_by[0] if moved_by else None,
        days_moved=_days_earlier(build, frozenset(moved_by)),
        dates_open=tuple(arrival.option for arrival in waited_for if arrival.on is None and not arrival.here),
        moved_with=moved_by[1:],
        groups_open=view.report.undecided,
        undone_h=build.undone_h,
        hours_known=hours is not None,
    )


def _build(view: SpecView, start: date, ordered: Mapping[OptionId, date]) -> _Build:
    firm, work = view.catalogue.firm, view.catalogue.work
    passed = _passed(view, start)
    hours = step_hours(view)
    tasks = _graph(work, arrivals_of(view, start, passed, ordered))
    return _Build(
        tasks=tasks,
        order=_ordered(tasks, work),
        hours=_with_open(view, hours) if hours else dict.fromkeys(work, ZERO),
        passed=passed,
        days=work_days(firm.work_days, firm.hours_per_day, start),
        undone_h=hours.undone_h if hours and len(passed) < len(work) else 0,
    )


def _passed(view: SpecView, start: date) -> dict[str, date]:
    """Steps that are done: their hold point was passed, or they have none and a step after them was."""
    work = view.catalogue.work
    on = {record.about: day_of(record.day) or start for record in reversed(view.spec.recorded(RecordKind.PASSED))}
    passed = {step.id: on[step.hold_point] for step in work.values() if step.hold_point in on}
    for _ in work:
        for step in work.values():
            if step.id not in passed and not step.hold_point:
                after = [passed[one.id] for one in work.values() if step.id in one.predecessors and one.id in passed]
                passed |= {step.id: min(after)} if after else {}
    return passed


def _with_open(view: SpecView, hours: StepHours) -> dict[str, Span]:
    """The hours of each step, with what the answers of an open group that may still be chosen would add there."""
    steps = dict(hours.steps)
    for entry in hours.open:
        options = _live(view, entry)
        for step in view.catalogue.work.values() if options else ():
            added = [_hours_at(step, option) for option in options]
            steps[step.id] += Span(min(added), max(added))
        if not options and steps:
            steps[list(steps)[-1]] += entry.amount
    return steps


def _live(view: SpecView, entry: Entry) -> list[Option]:
    """The answers that a group which is not decided still has."""
    if entry.group is None:
        return []
    known = view.report.options
    options = view.catalogue.options_of(entry.group)
    return [one for one in options if one.id not in known or known[one.id].state is not OptionState.BLOCKED]


def _hours_at(step: WorkStep, option: Option) -> float:
    own_h = option.labour_h if option.build_step == step.id else 0
    return own_h + len(option.circuits) * step.hours_per_circuit


def _graph(work: Mapping[str, WorkStep], arrivals: tuple[Arrival, ...]) -> Tasks:
    import networkx as nx

    tasks: Tasks = nx.DiGraph()
    tasks.add_nodes_from(work)
    tasks.add_edges_from((before, step.id) for step in work.values() for before in step.predecessors)
    tasks.add_edges_from((arrival, step) for arrival in arrivals for step in (arrival.step, *arrival.also_at))
    return tasks


def _ordered(tasks: Tasks, work: Mapping[str, WorkStep]) -> tuple[str | Arrival, ...]:
    """An order in which everything can be done; among equals as the table of work has them."""
    import networkx as nx

    place = {step: number for number, step in enumerate(work)}

    def key(task: str | Arrival) -> tuple[int, str]:
        return (place[task], "") if isinstance(task, str) else (-1, task.option)

    return tuple(nx.lexicographical_topological_sort(tasks, key=key))


def _clock(build: _Build, ignoring: frozenset[OptionId] = _NOBODY) -> dict[str | Arrival, tuple[int, int]]:
    """When every task begins and ends, in seconds of work; what is passed lies at the end of its day.

    Args:
        build: the tasks.
        ignoring: parts taken to be there on the first day.
    """
    clock: dict[str | Arrival, tuple[int, int]] = {}
    for task in build.order:
        if isinstance(task, Arrival):
            waits = task.on is not None and not task.here and task.option not in ignoring
            clock[task] = (build.days.morning_s(task.on),) * 2 if waits and task.on else (0, 0)
        elif task in build.passed:
            clock[task] = (build.days.evening_s(build.passed[task]),) * 2
        else:
            begin_s = max((clock[before][1] for before in build.tasks.pred[task]), default=0)
            begin_s = max(begin_s, seconds(build.undone_h))
            clock[task] = begin_s, begin_s + build.left_s(task)
    return clock


def _days_of(build: _Build, clock: Mapping[str | Arrival, tuple[int, int]], step: str) -> tuple[date, date]:
    """First and last day of a step; a step without work takes no day of its own."""
    if step in build.passed:
        return build.passed[step], build.passed[step]
    begin_s, end_s = clock[step]
    first = build.days.begun(begin_s)
    return first, max(first, build.days.ended(end_s))


def _finish(build: _Build, clock: Mapping[str | Arrival, tuple[int, int]]) -> date:
    return max((_days_of(build, clock, step)[1] for step in build.steps), default=build.days.first)


def _longest_path(build: _Build) -> tuple[str, ...]:
    """The steps that take the most hours one after the other; of equals those earlier in the order."""
    longest_s: dict[str, int] = {}
    came_by: dict[str, str | None] = {}
    for step in build.steps:
        before = [one for one in build.steps if one in build.tasks.pred[step]]
        came_by[step] = max(before, key=longest_s.__getitem__, default=None)
        longest_s[step] = build.left_s(step) + max((longest_s[one] for one in before), default=0)
    path: list[str] = []
    at = max(reversed(build.steps), key=longest_s.__getitem__, default=None)
    while at is not None:
        path.append(at)
        at = came_by[at]
    return tuple(reversed(path))


def _moved_by(build: _Build) -> tuple[OptionId, ...]:
    """The parts that hold the last day: each of them alone does, so only without all of their waits is it earlier."""
    finish = _finish(build, _clock(build))
    waits = dict.fromkeys(task.option for task in build.order if isinstance(task, Arrival))
    every = frozenset(waits)
    if _finish(build, _clock(build, every)) == finish:
        return ()
    return tuple(one for one in waits if _finish(build, _clock(build, every - {one})) == finish)


def _days_earlier(build: _Build, ignoring: frozenset[OptionId]) -> int:
    """How many working days earlier it is finished when these parts need no waiting for."""
    finish = _finish(build, _clock(build))
    return build.days.between(_finish(build, _clock(build, ignoring)), finish)


def _planned(
    build: _Build, clock: Mapping[str | Arrival, tuple[int, int]], step: str, path: tuple[str, ...]
) -> PlannedStep:
    first_day, last_day = _days_of(build, clock, step)
    return PlannedStep(
        step=step,
        hours=build.hours[step],
        arrivals=build.arrivals(step),
        first_day=first_day,
        last_day=last_day,
        critical=step in path,
        passed=build.passed[step].isoformat() if step in build.passed else "",
        waits_for=_waits_for(build, clock, step),
    )


def _waits_for(build: _Build, clock: Mapping[str | Arrival, tuple[int, int]], step: str) -> OptionId | None:
    """The part that comes after everything else a step waits for."""
    if step in build.passed:
        return None
    steps = [clock[before][1] for before in build.tasks.pred[step] if isinstance(before, str)]
    others_s = max([seconds(build.undone_h), *steps])
    arrivals = build.arrivals(step)
    last = max(arrivals, key=lambda arrival: clock[arrival][1], default=None)
    return last.option if last is not None and clock[last][1] > others_s else None
