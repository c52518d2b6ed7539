"""The days we expect, what could move them, and until when a change costs nothing that is made already."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from specbuilder.documents.blocks import Block, Heading, Paragraph
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import JobState
from specbuilder.model.papers import Case
from specbuilder.model.plain_text import one_line
from specbuilder.model.plan import PlannedStep
from specbuilder.model.record import RecordKind
from specbuilder.wording.brief import line_words
from specbuilder.wording.customer import NOT_LISTED, working_days
from specbuilder.wording.dates import day_words, written_day
from specbuilder.wording.names import group_name, listed, option_name
from specbuilder.wording.plain import lowered
from specbuilder.wording.quantities import weeks

from . import figures

_WISH = BriefKey("weeks_wanted")
_IF_TODAY = " These days hold if you order today; if you order later, they come later, too."
_DAYS_OF_WEEK = 7


def expected(case: Case) -> Iterator[tuple[str, str]]:
    """When it can begin and when it is ready; of a finished van when it was handed over."""
    handed = case.stand.spec.recorded(RecordKind.BUILT)
    if handed:
        last = handed[-1]
        yield "Handed over", f"{written_day(one_line(last.day))}, to {one_line(last.by) or 'you'}"
    else:
        yield from _rows(case)


def changes(case: Case) -> Iterator[Block]:
    """How something is changed after signing, and what is made by when."""
    if case.stand.spec.state is JobState.AS_BUILT:
        return
    signed = case.stand.spec.state not in figures.UNSIGNED
    yield Heading(text="If you change your mind about something")
    first = (
        "After you have signed"
        if signed
        else "Until you sign, you can change anything, and the price follows. After that"
    )
    yield Paragraph(
        text=f"{first}, a change is written down with its price, its weeks and the work it undoes, and both of us sign "
        "it; until then we build what you signed last. Once these things are done, changing them means undoing work, "
        f"and some of it cannot be undone: {'; '.join(_freezes(case))}.{'' if signed else _IF_TODAY}"
    )


def _rows(case: Case) -> Iterator[tuple[str, str]]:
    plan, unsigned = case.plan, case.stand.spec.state in figures.UNSIGNED
    begun = any(step.passed for step in plan.steps)
    if begun:
        yield "Work began", day_words(plan.first_day)
    else:
        when = f"{day_words(plan.first_day)}{', if you order today' if unsigned else ''}"
        yield "The van comes in", f"on the day that we agree with you; the days here count from {when}"
    told = [f"about {day_words(plan.finish)}"]
    told += [f"{_weeks_from(case.today, plan.finish)} from today, if you order today"] if unsigned else []
    wish = case.stand.report.facts.get(_WISH)
    told += [f"you wished for it {_wished(case)}"] if isinstance(wish, int) and wish > 0 else []
    yield "Ready", "; ".join(told)
    moved = " ".join(_movers(case))
    if moved:
        yield "What could move it", moved


def _wished(case: Case) -> str:
    return line_words(case.stand.catalogue, case.stand.report, _WISH)


def _weeks_from(today: date, day: date) -> str:
    """Begun weeks count: nobody is told too few."""
    return weeks(-(-max((day - today).days, 0) // _DAYS_OF_WEEK))


def _movers(case: Case) -> Iterator[str]:
    plan, catalogue = case.plan, case.stand.catalogue
    if plan.moved_by is not None and plan.days_moved > 0:
        names = listed(_name(case, option) for option in (plan.moved_by, *plan.moved_with))
        yield (
            f"The longest wait is for {names}: if it is late, so is the van; if it came at once, the van would be "
            f"ready {working_days(plan.days_moved)} earlier."
        )
    if plan.dates_open:
        yield f"Nobody has named a day yet for {listed(_name(case, option) for option in plan.dates_open)}."
    if plan.groups_open:
        open_groups = listed(lowered(group_name(catalogue, group)) for group in plan.groups_open)
        yield f"What is not chosen yet may take longer: {open_groups}."


def _name(case: Case, option: OptionId) -> str:
    catalogue = case.stand.catalogue
    return option_name(catalogue, option) if option in catalogue.options else NOT_LISTED


def _freezes(case: Case) -> Iterator[str]:
    """``roof type, windows and vents (about 30 May 2031)``: what is done on one day together."""
    done: dict[str, list[str]] = {}
    for step in sorted(case.plan.steps, key=lambda step: step.last_day):
        work = case.stand.catalogue.work.get(step.step)
        if work is not None and work.freezes:
            done.setdefault(_day(case, step), []).extend(work.freezes)
    yield from (f"{listed(things)} ({day})" for day, things in done.items())


def _day(case: Case, step: PlannedStep) -> str:
    """``about 30 May``, with the year where it is another one than on this paper; of the first day that it is that."""
    if not step.passed and step.last_day <= case.plan.first_day:
        return "on the day work begins"
    day = day_words(step.last_day).removesuffix(f" {case.today.year}")
    return f"done on {day}" if step.passed else f"about {day}"
