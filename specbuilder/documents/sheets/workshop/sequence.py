"""The steps of the build with hours, dates, hold points, and where each is signed."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Facts, Heading, Items, Paragraph, Signatures, Table, Weight
from specbuilder.model.catalogue import Paper, WorkStep
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.span import Span
from specbuilder.wording.circuits import sides
from specbuilder.wording.dates import day_short, day_words, written_day
from specbuilder.wording.names import group_name, listed, option_name
from specbuilder.wording.plain import ended
from specbuilder.wording.workshop import caution_words, counted, told
from specbuilder.wording.workshop_redo import again_line
from specbuilder.workshop.cautions import cautions_of, said_at
from specbuilder.workshop.passing import pass_figures

from .flames import no_cloth
from .marking import marked
from .material import Material, item_number
from .under_seats import bolts_above

_HOURS = "h"


def sequence(material: Material) -> tuple[Block, ...]:
    """All steps at a glance, then a sheet for each."""
    return (
        Heading(text="Sequence and hold points"),
        Paragraph(
            text="A hold point stops the work until its figures are read and it is signed. Planned figures stand in "
            "the lists of this pack: holes, clearances, fuses, openings, mass budget. Figures of the parts and of the "
            "code in force go first."
        ),
        _overview(material),
        *_plan_words(material),
        *(block for step in material.steps for block in _step(material, step)),
    )


def _overview(material: Material) -> Table:
    columns = (
        Column(head="Step", share=0.6),
        Column(head="Work", share=3),
        Column(head="Hours", share=0.9, right=True),
        Column(head="Begins", share=1.8),
        Column(head="Done", share=1.8),
        Column(head="After", share=0.9),
        Column(head="Hold point", share=1),
    )
    rows = (*(_glance(material, step) for step in material.steps), *_undoing(material))
    critical = frozenset(number for number, step in enumerate(material.steps) if step.id in material.case.plan.critical)
    return Table(columns=columns, rows=rows, strong=critical)


def _undoing(material: Material) -> Iterator[tuple[str, ...]]:
    """Of no step, so that the rows add up to the whole."""
    hours_h = material.case.plan.undone_h
    if hours_h:
        work = "Undoing what a signed change made useless, before work goes on"
        yield "-", work, told(Span(hours_h, hours_h), _HOURS, estimate=True), "-", "-", "-", "-"


def _glance(material: Material, step: WorkStep) -> tuple[str, ...]:
    planned = material.planned(step.id)
    hours, begins, done = "-", "-", "-"
    if planned is not None:
        hours = told(planned.hours, _HOURS, estimate=True)
        begins, done = day_short(planned.first_day), day_short(planned.last_day)
        if planned.passed:
            again = any(one.again is None for one in material.redone_at(step.id))
            done = f"passed {done}, TO BE PASSED AGAIN" if again else f"passed {done}"
    return step.id, step.work, hours, begins, done, ", ".join(step.predecessors) or "-", step.hold_point or "-"


def _plan_words(material: Material) -> Iterator[Block]:
    """The longest path, the finish, and what moves it."""
    plan, catalogue = material.case.plan, material.catalogue
    yield Facts(
        rows=(
            ("Hours in all", told(plan.whole_h, _HOURS, estimate=True) if plan.hours_known else "not known"),
            ("Longest path (strong above)", ", ".join(plan.critical)),
            ("First day", day_words(plan.first_day)),
            ("Earliest finish", f"{day_words(plan.finish)}, a planned date"),
        )
    )
    said: list[str] = []
    if plan.moved_by is not None and plan.days_moved:
        parts = listed(option_name(catalogue, option) for option in (plan.moved_by, *plan.moved_with))
        days = counted(plan.days_moved, "working day", "working days")
        said.append(f"Waiting for {parts} moves the finish by {days}.")
    if plan.dates_open:
        parts = listed(option_name(catalogue, option) for option in plan.dates_open)
        said.append(f"No date is known for {parts}: the finish is told as if it came in time.")
    if plan.groups_open:
        groups = listed(group_name(catalogue, group) for group in plan.groups_open)
        said.append(f"Not chosen yet: {groups}. Hours and dates may still grow.")
    if plan.undone_h:
        said.append("Undoing what a change made useless comes before the work goes on; it is in the hours.")
    if said:
        yield Items(rows=tuple(said))


def _step(material: Material, step: WorkStep) -> Iterator[Block]:
    yield Heading(text=material.view.work_name(step.id))
    yield Facts(rows=tuple(_facts(material, step)))
    yield from _cautions(material, step)
    if step.hold_point:
        yield from _hold(material, step)


def _cautions(material: Material, step: WorkStep) -> Iterator[Block]:
    """In full at the first step that has it, named at those after."""
    again: list[str] = []
    for caution, about in cautions_of(material.view):
        said = said_at(material.view, caution, about)
        at = [one.id for one in material.steps if one.id in said]
        if at and at[0] == step.id:
            yield Paragraph(text=caution_words(caution, material.view.names(about)), weight=Weight.CAUTION)
        elif step.id in at:
            again.append(f"Caution, as at {at[0]}: {ended(caution.text)}")
    again += (*no_cloth(material, step.id), *bolts_above(material, step.id))
    if again:
        yield Items(rows=tuple(again))


def _facts(material: Material, step: WorkStep) -> Iterator[tuple[str, str]]:
    planned, catalogue = material.planned(step.id), material.catalogue
    if planned is not None and not planned.passed:
        hours = told(planned.hours, _HOURS, estimate=True)
        first, last = day_short(planned.first_day), day_short(planned.last_day)
        yield "Hours, days planned", f"{hours}, {first}" if first == last else f"{hours}, {first} to {last}"
        if planned.waits_for is not None:
            yield "Waits for", option_name(catalogue, planned.waits_for)
    yield "Hours, days as built", ""
    items = [item_number(one) for one in material.parts_of(step.id)]
    yield "Items", ", ".join(items) or "none"
    cuts = dict.fromkeys(hole.id for _, _, hole in material.holes_of(step.id))
    if cuts:
        yield "Holes frozen here", ", ".join(cuts)
    yield from marked(material, step)
    if step.hours_per_circuit:
        low, mains = (len(side) for side in sides(material.view.report.circuits))
        yield (
            "Circuits",
            f"{counted(low, 'run', 'runs')} of 12 V, {counted(mains, 'run', 'runs')} of 230 V, by the lists",
        )
    if step.freezes:
        yield "Frozen once passed", ", ".join(step.freezes)


def _hold(material: Material, step: WorkStep) -> Iterator[Block]:
    """What stops the work until it is read and signed; once passed, by whom and when."""
    yield Heading(text=f"Hold point {step.hold_point}: {step.hold_text}", level=3)
    here = material.parts_of(step.id)
    held = [option.id for one, option in material.known if step.hold_point in option.hold_points and one not in here]
    if held:
        yield Paragraph(text=f"Parts of other steps that are looked at here: {material.view.names(held)}.")
    columns = (
        Column(head="What", share=2),
        Column(head="Must be", share=3),
        Column(head="Read", share=1.6),
        Column(head="By", share=1),
    )
    figures = tuple((figure.what, figure.must_be, "", "") for figure in pass_figures(material.view, step))
    yield Table(columns=columns, rows=figures, blank=frozenset({2, 3}))
    papers = [(paper.name, paper.signed_by) for paper in _papers(material, step.hold_point)]
    if papers:
        yield Items(rows=tuple(f"There, signed by {by}: {name}" for name, by in papers), boxes=True)
    spec = material.spec
    passed = [record for record in spec.recorded(RecordKind.PASSED) if record.about == step.hold_point]
    read = [record for record in spec.recorded(RecordKind.READING) if record.about == step.hold_point]
    said = (*(_passed(record) for record in passed), *(_read(record) for record in read))
    if said:
        yield Items(rows=said)
    redone = material.redone_at(step.id)
    for one in redone:
        yield Paragraph(text=again_line(material.catalogue, one), weight=Weight.STRONG)
    if not passed:
        yield Signatures(roles=(f"{step.hold_point} passed, signed",))
    elif any(one.again is None for one in redone):
        yield Signatures(roles=(f"{step.hold_point} passed again, signed",))


def _papers(material: Material, hold_point: str) -> Iterator[Paper]:
    """Papers that others sign, of what is chosen, which must be there at this hold point."""
    named = {key for _, option in material.known for key in option.papers}
    papers = material.catalogue.papers.items()
    return (paper for key, paper in papers if key in named and paper.at_hold_point == hold_point)


def _passed(record: Record) -> str:
    remark = f": {one_line(record.words)}" if record.words else ""
    return ended(f"PASSED {written_day(one_line(record.at))} by {one_line(record.by)}{remark}")


def _read(record: Record) -> str:
    return ended(f"Read {written_day(one_line(record.at))} by {one_line(record.by)}: {one_line(record.words)}")
