"""What each reading command answers for one spec: lines for stdout and an exit code. Pure but for the report."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Finding
from specbuilder.model.ids import GroupId
from specbuilder.model.kinds import Level, Step, Verdict
from specbuilder.model.report import Report
from specbuilder.wording import brief as brief_words
from specbuilder.wording import findings, spoken
from specbuilder.wording.absurd import absurd_lines
from specbuilder.wording.ledger_detail import detail_texts
from specbuilder.wording.lines import customer_lines, van_lines
from specbuilder.wording.names import group_name, key_name
from specbuilder.wording.plain import ended
from specbuilder.wording.readings import worst_first
from specbuilder.wording.states import step_name

from . import asjson
from .asjson_reading import groups_json, show_json
from .output import Exit, StopError
from .things import (
    GroupThing,
    OptionThing,
    Unclear,
    thing,
)


@dataclass(frozen=True, slots=True)
class Answer:
    """What a command says."""

    lines: tuple[str, ...]
    code: Exit = Exit.FINE
    stands: str = ""
    """What was written and stands, should the answer itself be lost; empty for commands that only read."""


def check(catalogue: Catalogue, report: Report, *, json: bool) -> Answer:
    """Verdict, price, weight, findings, open points, and what is silent."""
    if json:
        return Answer((asjson.check_json(catalogue, report),), verdict_code(report))
    return Answer(tuple(_check_lines(catalogue, report)), verdict_code(report))


def verdict_code(report: Report) -> Exit:
    """What the calling shell learns of a spec."""
    match report.verdict:
        case Verdict.HOLDS:
            return Exit.FINE
        case Verdict.BROKEN:
            return Exit.BROKEN
        case Verdict.CANNOT_TELL:
            return Exit.CANNOT_TELL
        case _:
            assert_never(report.verdict)


def show(catalogue: Catalogue, report: Report, what: str | None, *, json: bool = False) -> Answer:
    """The spec line by line; a step or a group with all its options.

    Raises:
        StopError: if ``what`` is neither.
    """
    if what is None:
        return Answer((show_json(catalogue, report),) if json else spoken.spec_lines(catalogue, report))
    if (step := step_of(what)) is not None:
        return Answer((_step_json(catalogue, report, step),) if json else _step_lines(catalogue, report, step))
    group = _group_of(catalogue, what)
    return Answer((groups_json(catalogue, report, (group,)),) if json else spoken.group_lines(catalogue, report, group))


def step_of(text: str) -> Step | None:
    """The step that is called so."""
    wanted = text.strip().casefold()
    return next((step for step in Step if wanted in (step.value, step_name(step))), None)


def _group_of(catalogue: Catalogue, text: str) -> GroupId:
    match thing(catalogue, _group_text(catalogue, text.strip().casefold())):
        case GroupThing(group):
            return group
        case OptionThing(option=option):
            return catalogue.options[option].group
        case Unclear(words):
            raise StopError(Exit.UNUSABLE, words)
        case _:
            names = ", ".join(step_name(step) for step in Step)
            raise StopError(Exit.UNUSABLE, f'"{text}" is no step and no group. The steps are {names}.')


def brief(catalogue: Catalogue, report: Report) -> Answer:
    """The eleven questions with what was said, what is assumed and what is not known; then customer and note."""
    return Answer((*_brief_lines(catalogue, report), *customer_lines(report.spec)))


def _check_lines(catalogue: Catalogue, report: Report) -> Iterator[str]:
    yield _verdict_line(report)
    yield spoken.standing_line(catalogue, report)
    yield from findings.strangers_words(report)
    told = [f for f in report.findings if f.verdict is not Verdict.HOLDS]
    for finding in told:
        yield from finding_lines(catalogue, report, finding)
    if not told and not report.strangers:
        yield findings.findings_none()
    for group in report.undecided:
        yield f"Undecided: {group_name(catalogue, group)} (step {step_name(catalogue.groups[group].step)})."
    for key in report.unknown:
        yield f"Not known yet: {key_name(catalogue, key)}."
    if not report.spec.van_data.complete:
        yield ended(brief_words.open_thing(catalogue, report, step=Step.BASE_VAN))
    for key in report.assumed:
        yield f"Assumed: {ended(brief_words.assumption(catalogue, report, key))}"
    yield from absurd_lines(catalogue, report)
    if silent := findings.silent_words(catalogue, report):
        yield silent


def _verdict_line(report: Report) -> str:
    """What the exit code says, in words."""
    stop = len(report.broken(Level.STOP)) + len(report.strangers)
    match report.verdict:
        case Verdict.BROKEN:
            return f"Broken: {_things(stop)} at STOP. It cannot be signed or built as it stands."
        case Verdict.CANNOT_TELL:
            return (
                "Cannot tell yet: nothing is broken at STOP, but not everything that could stop it is decided or known."
            )
        case Verdict.HOLDS:
            return "Holds at STOP: nothing that was looked at stops it."
        case _:
            assert_never(report.verdict)


def _things(count: int) -> str:
    return "1 thing" if count == 1 else f"{count} things"


def finding_lines(catalogue: Catalogue, report: Report, finding: Finding) -> Iterator[str]:
    """The finding, and while it is broken what the house offers. The id stands at the end for ``why``."""
    yield f"{findings.finding_line(catalogue, report, finding)} [{finding.rule}]"
    if finding.verdict is Verdict.BROKEN and not finding.accepted:
        for fix in findings.finding_words(catalogue, report, finding).fixes:
            yield f"  offer: {ended(fix)}"


def _step_lines(catalogue: Catalogue, report: Report, step: Step) -> tuple[str, ...]:
    if step is Step.BRIEF:
        return brief(catalogue, report).lines
    if step is Step.BASE_VAN:
        return (*spoken.step_lines(catalogue, report, step), *van_lines(report.spec))
    if step is Step.CHECK:
        return tuple(_check_lines(catalogue, report)) + tuple(_ledger_lines(catalogue, report))
    return spoken.step_lines(catalogue, report, step)


def _step_json(catalogue: Catalogue, report: Report, step: Step) -> str:
    match step:
        case Step.BRIEF:
            return show_json(catalogue, report)
        case Step.CHECK:
            return asjson.check_json(catalogue, report)
        case _:
            return groups_json(catalogue, report, (group.id for group in catalogue.groups_of(step)))


def _ledger_lines(catalogue: Catalogue, report: Report) -> Iterator[str]:
    for reading in worst_first(catalogue, tuple(report.readings.values())):
        yield ended(detail_texts(catalogue, reading)[0])


def _brief_lines(catalogue: Catalogue, report: Report) -> Iterator[str]:
    for number, question in catalogue.questions.items():
        yield ended(f"{number} {question.asks}: {brief_words.question_words(catalogue, report, number)}")


def _group_text(catalogue: Catalogue, wanted: str) -> str:
    """The id of the group of that name, so that a group goes before an option called alike."""
    for group in catalogue.groups.values():
        if wanted in (group.id, group.name.casefold()):
            return group.id
    return wanted
