"""What was told and accepted, what is dangerous, what is still open, and what the customer brings."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table, Weight
from specbuilder.model.findings import Finding
from specbuilder.model.ids import CUSTOMER_PART
from specbuilder.model.kinds import Level, Owner, Verdict
from specbuilder.model.own_parts import blanks_of
from specbuilder.model.papers import Case
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import RecordKind
from specbuilder.model.spec import Acceptance, Choice, OpenQuestion
from specbuilder.wording import customer as words
from specbuilder.wording.brief import assumption
from specbuilder.wording.dates import day_words, written_day
from specbuilder.wording.names import listed
from specbuilder.wording.open_things import VAN_DATA, asked_of, question_text
from specbuilder.wording.own_parts import asked_of_customer
from specbuilder.wording.plain import ended, raised
from specbuilder.workshop.cautions import cautions_of
from specbuilder.workshop.view import view_of

from . import figures

_COPY = "customer copy"
"""Where the cautions of the catalogue say that they belong on this paper."""
CANNOT_BE_BUILT = "It cannot be built as it stands"
_SAID = (Level.SIGN, Level.NOTE)


def told(case: Case) -> Iterator[Block]:
    """Every caution in the words it is said in, with a box to tick; what stops the build before all else."""
    tick = ": please tick each line when we have gone through it" if case.stand.spec.state in figures.UNSIGNED else ""
    yield Heading(text=f"What we told you{tick}")
    stops, rows = tuple(_stops(case)), tuple(_said(case))
    if stops:
        yield Paragraph(text=f"{CANNOT_BE_BUILT}:", weight=Weight.STRONG)
        yield Items(rows=stops)
    if rows:
        yield Items(rows=rows, boxes=True)
    if not (stops or rows):
        waiting = case.stand.report.cannot_tell(*_SAID)
        yield Paragraph(text="Nothing yet: too much is open." if waiting else "There is nothing to be told.")
    if promised := tuple(_promised(case)):
        yield Heading(text="What we promised you besides", level=3)
        yield Items(rows=promised)


def safety(case: Case) -> Iterator[Block]:
    """The cautions that go with the parts that were chosen."""
    stand = case.stand
    cautions = cautions_of(view_of(stand.catalogue, stand.spec, stand.report))
    rows = tuple(caution.text for caution, _ in cautions if _COPY in caution.shown_where)
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
    brought = tuple(_theirs(case))
    if not brought:
        return
    yield Heading(text="What you bring yourself")
    yield Items(rows=tuple(f"{_own_name(case, each)}: here by {_needed_by(case, each)}" for each in brought))
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
    """What is to be said now, then what was accepted and is no longer so: a word once given is not dropped."""
    report, catalogue = case.stand.report, case.stand.catalogue
    accepted = {acceptance.rule: acceptance for acceptance in case.stand.spec.accepted}
    now = [each for each in report.findings if each.verdict is Verdict.BROKEN and each.level in _SAID]
    for finding in now:
        said = words.told_words(catalogue, report, finding)
        because = catalogue.rules[finding.rule].because
        yield " ".join((said, *_accepted(finding, accepted.get(finding.rule), because)))
    still = {finding.rule for finding in now}
    yield from (words.no_longer_words(each) for each in case.stand.spec.accepted if each.rule not in still)


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


def _open(case: Case) -> Iterator[tuple[str, str, str]]:
    """Lines of the brief, groups, the data of the real van, whatever else was asked, and the data of own parts."""
    catalogue, report, spec = case.stand.catalogue, case.stand.report, case.stand.spec
    shown = {text: words.asked(text) for text in (question_text(catalogue, key=key) for key in report.unknown)}
    shown |= {text: text for text in (question_text(catalogue, group=group) for group in report.undecided)}
    shown |= {} if spec.van_data.complete else {VAN_DATA: words.VAN_DATA}
    for question in spec.questions:
        if not question.part:
            shown.setdefault(question.text, one_line(question.text))
    for text, told in shown.items():
        yield (told, *_who_when(asked_of(report, text)))
    for choice in _theirs(case):
        if blanks := listed(_blanks(case, choice)):
            yield f"{_own_name(case, choice)}: {blanks}", *_who_when_part(case, choice)


def _who_when(question: OpenQuestion | None) -> tuple[str, str]:
    if question is None:
        return "to be agreed", "to be agreed"
    who = one_line(question.owner).strip()
    owner = {"customer": "you", "counter": "we", "workshop": "we"}.get(who, who or "to be agreed")
    return owner, written_day(one_line(question.due)) if question.due else "to be agreed"


def _theirs(case: Case) -> Iterator[Choice]:
    """What the customer brings."""
    for choice in case.stand.spec.choices:
        option = case.stand.catalogue.options.get(choice.option)
        if choice.owner is Owner.CUSTOMER or (option is not None and CUSTOMER_PART in option.gives):
            yield choice


def _own_name(case: Case, choice: Choice) -> str:
    option = case.stand.catalogue.options.get(choice.option)
    return option.name if option is not None else raised(words.NOT_LISTED)


def _needed_by(case: Case, choice: Choice) -> str:
    """The day on which the step begins that needs it."""
    for step in case.plan.steps:
        if any(arrival.option == choice.option for arrival in step.arrivals):
            return day_words(step.needed_by)
    return "to be agreed"


def _who_when_part(case: Case, choice: Choice) -> tuple[str, str]:
    """As it was agreed for the first of its blanks; else the customer, before the step that needs it."""
    asked = [q for q in case.stand.spec.questions if q.part.partition(" ")[0] == choice.option and q.owned]
    first = min(asked, key=lambda question: question.due, default=None)
    return _who_when(first) if first is not None else ("you", _needed_by(case, choice))


def _blanks(case: Case, choice: Choice) -> Iterator[str]:
    """What its sheet still lacks; of a part that has left the catalogue nobody knows what it should say."""
    option = case.stand.catalogue.options.get(choice.option)
    if option is not None:
        yield from (asked_of_customer(line) for line in blanks_of(option, choice.own_part))
