"""The lines that never move in a job: which job, where it stands, the steps, and the question of the step."""

from __future__ import annotations

from specbuilder.model.kinds import STEPS, Step
from specbuilder.model.report import Report
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnStep
from specbuilder.tui.keys import Act
from specbuilder.tui.line import Bit, Line, cut, left, line, width
from specbuilder.wording.glance import glance, head
from specbuilder.wording.narrow import narrow_glance
from specbuilder.wording.papers import change_head_short, looked_at_head
from specbuilder.wording.states import job_state_word, step_tab, step_tab_short, step_title
from specbuilder.wording.what_if import trial_glance, trial_head

from .page import Host

LETTERS = (6, 4, 3)
"""What is left of a step's name in the narrowest windows."""
NARROW = 76
"""Below this width the glance line says only what must never be cut."""


def heading(host: Host, step: Step, cells: int, told: str, job: Report | None = None) -> list[Line]:
    """Job, glance, steps and the question of the step. ``job``: the job itself, while a what-if is on."""
    catalogue, report = host.catalogue, host.report
    first = (
        line(" ", cut(head(catalogue, report, cells - 2, told, state=_state(host)), cells - 2)),
        line(" ", Bit(cut(_glance(host, cells - 2), cells - 2), Ink.HEAD, Act.OPEN_THINGS)),
    )
    return [
        *(first if job is None else _banner(host, job, cells)),
        steps_line(host, step, cells),
        line(" ", Bit(_title(step, cells - 2), Ink.HEAD)),
    ]


def _title(step: Step, cells: int) -> str:
    """The question of the step, in a narrow window as many of its parts as fit whole."""
    parts = step_title(step).split(",")
    ways = (",".join(parts[:number]) for number in range(len(parts), 0, -1))
    return next((way for way in ways if width(way) <= cells), cut(step_title(step), cells))


def _state(host: Host) -> tuple[str, str] | None:
    """Where the job stands, in full and in short, where its own state does not say it."""
    deeds, spec = host.deeds, host.report.spec
    base = deeds.desk.session.base
    if deeds.desk.looked_at is not None:
        return looked_at_head(deeds.state)
    if deeds.changing and base is not None:
        return change_head_short(base.spec, deeds.change_number)
    return (job_state_word(deeds.state),) * 2 if deeds.state is not spec.state else None


def _banner(host: Host, job: Report, cells: int) -> tuple[Line, Line]:
    """Where job and glance stand else: what was tried, and what it does to the job."""
    catalogue, tried = host.catalogue, host.report
    head_ = trial_head(catalogue, job.spec, tried.spec, cells - 2)
    glance_ = trial_glance(catalogue, job, tried, cells - 2)
    return (
        line(Bit(left(f" {head_}", cells), Ink.TRIAL)),
        line(Bit(left(f" {glance_}", cells), Ink.TRIAL, Act.OPEN_THINGS)),
    )


def _glance(host: Host, cells: int) -> str:
    told = narrow_glance if cells < NARROW else glance
    return told(host.catalogue, host.report, cells)


def steps_line(host: Host, here: Step, cells: int) -> Line:
    """Every step with its counts; the current one in capitals. Can be clicked."""
    statuses = [host.report.steps[step] for step in STEPS]
    ways = (
        [step_tab(status) for status in statuses],
        [step_tab_short(status) for status in statuses],
        *([step_tab_short(status, letters) for status in statuses] for letters in LETTERS),
    )
    tabs = next((tabs for tabs in ways if sum(width(tab) + 1 for tab in tabs) < cells), ways[-1])
    room = cells - 1 - sum(width(tab) for tab in tabs)
    gap = " " * max(min(room // len(tabs), 5), 1)
    bits = [Bit(" ")]
    for step, tab in zip(STEPS, tabs, strict=True):
        current = step is here
        bits += [Bit(tab.upper() if current else tab, Ink.HERE if current else Ink.PLAIN, OnStep(step)), Bit(gap)]
    return Line(tuple(bits))
