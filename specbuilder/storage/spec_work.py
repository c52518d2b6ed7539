"""The order of work in a spec's file: hours for each step, steps with their hold points, papers that others sign."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.catalogue import WorkStep
from specbuilder.model.ids import OptionId
from specbuilder.workshop.hours import StepHours, step_hours
from specbuilder.workshop.passing import pass_figures
from specbuilder.workshop.view import Chosen, SpecView

from .spec_sums import ends
from .toml_out import Value, Values, comment, figure, item, rows, table

_SIGNED = ("signed", "date")
_STEPS = """\
SEQUENCE. A hold point stops the work until its figures are read and it is signed. This file is written again by the
program: signed and date stay empty here, and what was built, read and signed stands on paper. Computed."""
_PAPERS = "PAPERS that others sign, by the hold point at which they must be there. Computed."


def work(view: SpecView, chosen: tuple[Chosen, ...]) -> Iterator[str]:
    """Hours, sequence, papers."""
    plan = step_hours(view)
    yield _hours(view, plan)
    yield "\n" + comment(_STEPS)
    yield from (_step(view, chosen, step, plan) for step in view.catalogue.work.values())
    papers = tuple(_papers(view, chosen))
    yield "\n" + comment(_PAPERS if papers else f"{_PAPERS} None.")
    yield from papers


def _hours(view: SpecView, plan: StepHours | None) -> str:
    remark = "HOURS, an estimate for the workshop's plan: fixed work, cable runs and parts of each step. Computed."
    if plan is None:
        return table("hours", {"said": "NOT SUMMED BY STEP"}, remark=remark)
    lines: list[Values] = [
        {"step": step.id, **ends("work", plan.steps[step.id], "h"), "what": step.work}
        for step in view.catalogue.work.values()
    ]
    lines += [{"step": "not settled", **ends("work", e.amount, "h"), "what": view.line_name(e)} for e in plan.open]
    if plan.undone_h:
        lines.append({"step": "undoing", "work_h": figure(plan.undone_h), "what": "what signed changes made useless"})
    return table("hours", ends("whole", plan.whole, "h"), remark=remark) + rows("line", lines)


def _step(view: SpecView, chosen: tuple[Chosen, ...], step: WorkStep, plan: StepHours | None) -> str:
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
        "pass": [figure.words for figure in pass_figures(view, step)] or None,
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
