"""The order of work in a spec's file: hours for each step, steps with their hold points, papers that others sign."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from specbuilder.model.catalogue import WorkStep
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.ledger import Entry, Reading
from specbuilder.model.span import ZERO, Span

from .spec_sums import ends
from .spec_view import Chosen, SpecView
from .toml_out import Value, Values, comment, item, rows, table

_HOURS = LedgerId("workshop-hours")
_SIGNED = ("signed", "date")
_STEPS = """\
SEQUENCE. A hold point stops the work until its figures are read and it is signed. This file is written again by the
program: signed and date stay empty here, and what was built, read and signed stands on paper. Computed."""
_PAPERS = "PAPERS that others sign, by the hold point at which they must be there. Computed."


def work(view: SpecView, chosen: tuple[Chosen, ...]) -> Iterator[str]:
    """Hours, sequence, papers."""
    plan = _plan(view)
    yield _hours(view, plan)
    yield "\n" + comment(_STEPS)
    yield from (_step(view, chosen, step, plan) for step in view.catalogue.work.values())
    papers = tuple(_papers(view, chosen))
    yield "\n" + comment(_PAPERS if papers else f"{_PAPERS} None.")
    yield from papers


@dataclass(frozen=True, slots=True, kw_only=True)
class _Plan:
    """Hours of a build; its steps and what is open add up to the whole."""

    whole: Span
    steps: Mapping[str, Span]
    open: tuple[Entry, ...]
    """What no step can be named for: groups that are not chosen yet, parts without a step."""


def _plan(view: SpecView) -> _Plan | None:
    """None when the hours are not summed, or not by line."""
    reading = view.report.readings.get(_HOURS)
    if reading is None or reading.value is None or not reading.entries:
        return None
    steps = view.catalogue.work
    hours = {step.id: Span(step.hours_fixed, step.hours_fixed) for step in steps.values()}
    cables = _cables(reading, steps)
    for step in steps.values():
        hours[step.id] += cables * step.hours_per_circuit
    left: list[Entry] = []
    for entry in reading.entries:
        option = view.catalogue.options.get(entry.option) if entry.option else None
        at = view.build_step(option) if option else ""
        if at in hours:
            hours[at] += entry.amount
        elif entry.option or entry.group:
            left.append(entry)
    return _Plan(whole=reading.value, steps=hours, open=tuple(left))


def _cables(reading: Reading, steps: Mapping[str, WorkStep]) -> Span:
    """How many cable runs the hours count: what is left of the lines of no part once the steps have theirs."""
    of_no_part = ZERO
    for entry in reading.entries:
        if entry.option is None and entry.group is None:
            of_no_part += entry.amount
    each_h = sum(step.hours_per_circuit for step in steps.values())
    fixed_h = sum(step.hours_fixed for step in steps.values())
    return (of_no_part - fixed_h) * (1 / each_h) if each_h else ZERO


def _hours(view: SpecView, plan: _Plan | None) -> str:
    remark = "HOURS, an estimate for the workshop's plan: fixed work, cable runs and parts of each step. Computed."
    if plan is None:
        return table("hours", {"said": "NOT SUMMED BY STEP"}, remark=remark)
    lines: list[Values] = [
        {"step": step.id, **ends("work", plan.steps[step.id], "h"), "what": step.work}
        for step in view.catalogue.work.values()
    ]
    lines += [{"step": "not settled", **ends("work", e.amount, "h"), "what": view.line_name(e)} for e in plan.open]
    return table("hours", ends("whole", plan.whole, "h"), remark=remark) + rows("line", lines)


def _step(view: SpecView, chosen: tuple[Chosen, ...], step: WorkStep, plan: _Plan | None) -> str:
    known = [(one, one.option) for one in chosen if one.option is not None]
    here = [option.id for _, option in known if view.build_step(option) == step.id]
    held = [o.id for _, o in known if step.hold_point in o.hold_points and o.id not in here]
    cuts = [hole.id for one in chosen for hole in one.holes if hole.freeze_step == step.id]
    values: dict[str, Value | None] = {
        "id": step.id,
        "work": step.work,
        "after": ", ".join(step.predecessors),
        **(ends("work", plan.steps[step.id], "h") if plan else {}),
        "parts": _names(view, here),
        "holes": ", ".join(dict.fromkeys(cuts)),
        "freezes": "; ".join(step.freezes),
    }
    if not step.hold_point:
        return item("step", values)
    values |= {
        "hold_point": step.hold_point,
        "hold": step.hold_text,
        "held_here_too": _names(view, held),
        "pass": step.pass_figures.split("; ") if step.pass_figures else None,
        **dict.fromkeys(_SIGNED, ""),
    }
    return item("step", values, always=_SIGNED)


def _names(view: SpecView, options: list[OptionId]) -> list[str] | None:
    return list(dict.fromkeys(view.name(option) for option in options)) or None


def _papers(view: SpecView, chosen: tuple[Chosen, ...]) -> Iterator[str]:
    """Each once with everything it is about."""
    order = {step.hold_point: (n, step.id) for n, step in enumerate(view.catalogue.work.values()) if step.hold_point}
    last = len(order), ""
    parts = [one.option for one in chosen if one.option is not None]
    papers = sorted(view.catalogue.papers.items(), key=lambda found: order.get(found[1].at_hold_point, last))
    for key, paper in papers:
        concerned = [option.id for option in parts if key in option.papers]
        if concerned:
            values: dict[str, Value | None] = {
                "hold_point": paper.at_hold_point,
                "step": order.get(paper.at_hold_point, last)[1],
                "name": paper.name,
                "signed_by": paper.signed_by,
                "for": view.names(concerned),
                **dict.fromkeys(_SIGNED, ""),
            }
            yield item("paper", values, always=_SIGNED)
