"""What was told and accepted, what is dangerous, what is still open, and what the customer brings."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Facts, Heading, Items, Paragraph, Table, Weight
from specbuilder.model.catalogue import Caution, Option
from specbuilder.model.findings import Finding
from specbuilder.model.ids import CUSTOMER_PART
from specbuilder.model.kinds import Level, Owner, Verdict
from specbuilder.model.papers import Case
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import RecordKind
from specbuilder.model.spec import Acceptance, Choice, OpenQuestion
from specbuilder.wording import customer as words
from specbuilder.wording.brief import assumption
from specbuilder.wording.dates import day_words, written_day
from specbuilder.wording.names import listed
from specbuilder.wording.open_things import VAN_DATA, asked_of, question_text
from specbuilder.wording.plain import ended, raised

from . import figures

_COPY = "customer copy"
"""Where the cautions of the catalogue say that they belong on this paper."""
CANNOT_BE_BUILT = "It cannot be built as it stands"
_SAID = (Level.SIGN, Level.NOTE)


def told(case: Case) -> Iterator[Block]:
    """Every caution in the words it is said in, with a box to tick; what stops the build before all else."""
    yield Heading(text="What we told you: please tick each line when we have gone through it")
    stops, rows = tuple(_stops(case)), tuple(_said(case))
    if stops:
        yield Paragraph(text=f"{CANNOT_BE_BUILT}:", weight=Weight.STRONG)
        yield Items(rows=stops)
    if rows:
        yield Items(rows=rows, boxes=True)
    if not (stops or rows):
        yield Paragraph(text="There is nothing to be told.")
    if promised := tuple(_promised(case)):
        yield Heading(text="What we promised you besides", level=3)
        yield Items(rows=promised)


def safety(case: Case) -> Iterator[Block]:
    """The cautions that go with the parts that were chosen."""
    rows = tuple(dict.fromkeys(caution.text for caution in _cautions(case) if _COPY in caution.shown_where))
    if rows:
        yield Heading(text="For your safety")
        yield Items(rows=rows)


def open_questions(case: Case) -> Iterator[Block]:
    """What nobody knows yet, who finds it out and by when, and what we took for granted meanwhile."""
    yield Heading(text="Still open")
    yield Table(
        columns=(Column(head="", share=4), Column(head="Who finds out", share=1.3), Column(head="By when", share=1.2)),
        rows=tuple(_open(case)),
        empty="Nothing is open.",
    )
    report = case.stand.report
    if waiting := words.waiting_words(case.stand.catalogue, report):
        yield Paragraph(text=waiting)
    if report.assumed:
        assumed = listed(assumption(case.stand.catalogue, report, key) for key in report.assumed)
        yield Paragraph(
            text=f"Nobody has told us these, so we reckoned with them; say so if it is otherwise: {assumed}.",
            weight=Weight.SMALL,
        )


def own_parts(case: Case) -> Iterator[Block]:
    """What the customer brings: by when, and what we answer for."""
    brought = [choice for choice in case.stand.spec.choices if _is_theirs(case, choice)]
    if not brought:
        return
    yield Heading(text="What you bring yourself")
    yield Facts(rows=tuple(_brought(case, choice) for choice in brought))
    yield Paragraph(
        text="We fit what you bring; we do not warrant it. Its warranty stays with whoever sold it to you. We make no "
        "hole for it before it is here and measured. If it comes late or does not fit, days and price may change.",
    )


def _stops(case: Case) -> Iterator[str]:
    report = case.stand.report
    yield from (words.stop_words(case.stand.catalogue, report, finding) for finding in figures.stops(case))
    if report.strangers:
        yield f"{raised(words.NOT_LISTED)}."


def _said(case: Case) -> Iterator[str]:
    report, catalogue = case.stand.report, case.stand.catalogue
    accepted = {acceptance.rule: acceptance for acceptance in case.stand.spec.accepted}
    for finding in report.findings:
        if finding.verdict is Verdict.BROKEN and finding.level in _SAID:
            said = words.told_words(catalogue, report, finding)
            yield " ".join(
                (said, *_accepted(finding, accepted.get(finding.rule), catalogue.rules[finding.rule].because))
            )


def _accepted(finding: Finding, acceptance: Acceptance | None, because: str) -> Iterator[str]:
    if acceptance is not None:
        yield words.accepted_words(acceptance)
        if because not in acceptance.words:
            yield words.in_the_words(acceptance)
    elif finding.level is Level.SIGN:
        yield "This needs your word in writing."


def _promised(case: Case) -> Iterator[str]:
    for record in case.stand.spec.recorded(RecordKind.PROMISED):
        yield f"{ended(one_line(record.words))} Said on {written_day(one_line(record.day))}."


def _cautions(case: Case) -> Iterator[Caution]:
    catalogue = case.stand.catalogue
    for choice in case.stand.spec.choices:
        option = catalogue.options.get(choice.option)
        if option is not None:
            of_van = option.van.cautions if option.van else ()
            yield from (catalogue.cautions[key] for key in (*option.cautions, *of_van) if key in catalogue.cautions)


def _open(case: Case) -> Iterator[tuple[str, str, str]]:
    """Open lines of the brief, groups not chosen, the data of the real van, then whatever else was asked."""
    catalogue, report, spec = case.stand.catalogue, case.stand.report, case.stand.spec
    shown = {text: words.asked(text) for text in (question_text(catalogue, key=key) for key in report.unknown)}
    shown |= {text: text for text in (question_text(catalogue, group=group) for group in report.undecided)}
    shown |= {} if spec.van_data.complete else {VAN_DATA: words.VAN_DATA}
    for question in spec.questions:
        shown.setdefault(question.text, one_line(question.text))
    for text, told in shown.items():
        yield (told, *_who_when(asked_of(report, text)))


def _who_when(question: OpenQuestion | None) -> tuple[str, str]:
    if question is None:
        return "to be agreed", "to be agreed"
    who = one_line(question.owner).strip()
    owner = {"customer": "you", "counter": "we", "workshop": "we"}.get(who, who or "to be agreed")
    return owner, written_day(one_line(question.due)) if question.due else "to be agreed"


def _is_theirs(case: Case, choice: Choice) -> bool:
    option = case.stand.catalogue.options.get(choice.option)
    return choice.owner is Owner.CUSTOMER or (option is not None and CUSTOMER_PART in option.gives)


def _brought(case: Case, choice: Choice) -> tuple[str, str]:
    option = case.stand.catalogue.options.get(choice.option)
    name = option.name if option is not None else raised(words.NOT_LISTED)
    told = [f"Here by {_needed_by(case, option)}." if option is not None else ""]
    told.append(f"Still needed from you: {listed(_blanks(choice))}." if any(_blanks(choice)) else "")
    return name, " ".join(part for part in told if part)


def _needed_by(case: Case, option: Option) -> str:
    """The day on which the step begins that needs it."""
    for step in case.plan.steps:
        if any(arrival.option == option.id for arrival in step.arrivals):
            return day_words(step.needed_by)
    return "a day we agree"


def _blanks(choice: Choice) -> Iterator[str]:
    part = choice.own_part
    if part is None or part.mass_kg is None:
        yield "what it weighs"
    if part is None or part.watts_w is None:
        yield "how many watts it draws"
    if part is None or not part.cut_out_mm:
        yield "the size of its hole, from its paper"
    if part is None or not part.arrives:
        yield "the day you bring it"
