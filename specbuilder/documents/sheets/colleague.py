"""The colleague's page: one page of the house that answers the customer on the telephone in fifteen seconds.

What was promised, what is in the van, what is open, what comes next. It is private: it never leaves the house.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from specbuilder.documents.blocks import Block, Column, Facts, Heading, Items, Paper, Paragraph, Table, Weight
from specbuilder.model.kinds import JobState, Step
from specbuilder.model.papers import Case
from specbuilder.model.plain_text import one_line
from specbuilder.model.plan import PlannedStep
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Choice
from specbuilder.wording import colleague as words
from specbuilder.wording.customer import pounds_range
from specbuilder.wording.dates import day_words, written_day
from specbuilder.wording.glance import van_words, weight_words
from specbuilder.wording.names import choice_name
from specbuilder.wording.open_things import VAN_DATA, asked_of, question_text, who_and_when
from specbuilder.wording.plain import ended
from specbuilder.wording.states import step_title
from specbuilder.workshop.handed import handed_line
from specbuilder.workshop.view import view_of

from .customer.price import deposit_pence, received_pence
from .running import running

_LATEST = 5
"""So many last decisions, and so many last records, are told."""
_LOGGED = (
    RecordKind.QUOTED,
    RecordKind.SIGNED,
    RecordKind.DEPOSIT,
    RecordKind.PASSED,
    RecordKind.READING,
    RecordKind.BUILT,
)
"""Records told as what happened last; promises, parts and calls have places of their own."""
_AREAS = tuple(step for step in Step if step not in (Step.BRIEF, Step.CHECK))


def colleague_page(case: Case) -> Paper:
    """The page of this case."""
    parts = (_at_a_glance, _promised, _what_is_in_it, _open, _parts, _lately, _note)
    return Paper(
        name="colleague",
        title="For a colleague",
        running=running(case, private=True),
        blocks=(
            Paragraph(text="For the house only. Not for the customer.", weight=Weight.STRONG),
            *(block for part in parts for block in part(case)),
        ),
    )


def _at_a_glance(case: Case) -> Iterator[Block]:
    catalogue, report, spec = case.stand.catalogue, case.stand.report, case.stand.spec
    currency = catalogue.firm.currency
    rows = [
        ("Next call", _next_call(case)),
        ("Reached at", one_line(spec.customer.contact).strip() or "nothing noted"),
        ("Van", van_words(catalogue, report)),
        ("Price, VAT in", f"{pounds_range(report.price.gross, currency)}, {_deposit(case)}"),
        ("Weight", weight_words(catalogue, report).removeprefix("weight: ")),
    ]
    if spec.valid_until and spec.state in (JobState.QUOTED, JobState.EXPIRED):
        rows.append(("Quote valid until", written_day(one_line(spec.valid_until))))
    rows.append(("Ready", f"about {day_words(case.plan.finish)}, as expected today"))
    yield Facts(rows=tuple(rows))


def _next_call(case: Case) -> str:
    calls = case.stand.spec.recorded(RecordKind.CALL)
    return words.call_words(calls[-1]) if calls else "none agreed"


def _deposit(case: Case) -> str:
    received = received_pence(case)
    return words.deposit_words(received, deposit_pence(case), case.stand.catalogue.firm.currency)


def _promised(case: Case) -> Iterator[Block]:
    """Every promise, on which side things are, and what was accepted: none of it may get lost."""
    yield Heading(text="What we promised")
    spec = case.stand.spec
    promises = [words.promise_words(record) for record in reversed(spec.recorded(RecordKind.PROMISED))]
    accepted = [words.acceptance_words(acceptance) for acceptance in spec.accepted]
    yield Items(rows=tuple(promises or ["No promise is written down."]))
    view = view_of(case.stand.catalogue, spec, case.stand.report)
    yield Paragraph(text=words.sides(handed_line(view)))
    if accepted:
        yield Heading(text="What they accepted in writing", level=3)
        yield Items(rows=tuple(accepted))


def _what_is_in_it(case: Case) -> Iterator[Block]:
    """Names alone, by area: enough to answer what was agreed about the heater."""
    yield Heading(text="What is in it")
    rows = [(step_title(step).partition(":")[0], text) for step in _AREAS if (text := _area(case, step))]
    yield Facts(rows=tuple(rows)) if rows else Paragraph(text="Nothing is chosen yet.")


def _area(case: Case, step: Step) -> str:
    catalogue = case.stand.catalogue
    order = {option: number for number, option in enumerate(catalogue.options)}
    chosen = [
        choice
        for choice in case.stand.spec.choices
        if choice.option in order and catalogue.groups[catalogue.options[choice.option].group].step is step
    ]
    chosen.sort(key=lambda choice: order[choice.option])
    return "; ".join(words.chosen_words(catalogue, choice) for choice in chosen)


def _open(case: Case) -> Iterator[Block]:
    yield Heading(text="What nobody knows yet")
    catalogue, report, spec = case.stand.catalogue, case.stand.report, case.stand.spec
    texts = [question_text(catalogue, key=key) for key in report.unknown]
    texts += [question_text(catalogue, group=group) for group in report.undecided]
    texts += [] if spec.van_data.complete else [VAN_DATA]
    texts += [question.text for question in spec.questions]
    rows = [(one_line(text), words.dated(who_and_when(asked_of(report, text)))) for text in dict.fromkeys(texts)]
    yield Table(columns=(Column(head="", share=3), Column(head="Who, by when")), rows=tuple(rows), empty="Nothing.")


def _parts(case: Case) -> Iterator[Block]:
    """What is ordered and what is late; nothing while nothing was written down of parts."""
    rows = tuple(_part_rows(case))
    if not rows:
        return
    yield Heading(text="Parts")
    columns = (Column(head="", share=3), Column(head="Status"), Column(head="Expected"), Column(head=""))
    late = frozenset(number for number, row in enumerate(rows) if row[-1])
    yield Table(columns=columns, rows=rows, strong=late)


def _part_rows(case: Case) -> Iterator[tuple[str, str, str, str]]:
    """The last record of each part, what is late first."""
    latest = {record.about: record for record in case.stand.spec.recorded(RecordKind.SUPPLY)}
    needed: dict[str, PlannedStep] = {arrival.option: step for step in case.plan.steps for arrival in step.arrivals}
    rows = []
    for about, record in latest.items():
        late = words.late_words(record, case.today, needed.get(about))
        rows.append((words.part_name(case.stand.catalogue, about), *words.supply_words(record), late))
    yield from sorted(rows, key=lambda row: not row[-1])


def _lately(case: Case) -> Iterator[Block]:
    """The last decisions and what was written down last, the newest first."""
    yield Heading(text="What happened last")
    catalogue, currency = case.stand.catalogue, case.stand.catalogue.firm.currency
    decided = [words.decided_words(choice.at, choice_name(catalogue, choice)) for choice in _newest(case)]
    logged = [words.record_words(record, currency) for record in _records(case)]
    yield Items(rows=tuple(logged + decided) or ("Nothing is written down.",))


def _newest(case: Case) -> Iterator[Choice]:
    """What was chosen last, without what only came along."""
    dated = [choice for choice in case.stand.spec.choices if choice.at and not choice.came_with]
    yield from islice(sorted(dated, key=lambda choice: choice.at, reverse=True), _LATEST)


def _records(case: Case) -> Iterator[Record]:
    yield from islice(reversed(case.stand.spec.recorded(*_LOGGED)), _LATEST)


def _note(case: Case) -> Iterator[Block]:
    notes = [one_line(case.stand.spec.note).strip()]
    notes += [
        f"{choice_name(case.stand.catalogue, choice)}: {one_line(choice.note)}"
        for choice in case.stand.spec.choices
        if choice.note.strip()
    ]
    told = [ended(note) for note in notes if note]
    if told:
        yield Heading(text="Our notes")
        yield Items(rows=tuple(told))
