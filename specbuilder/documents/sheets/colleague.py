"""The colleague's page: one page of the house that answers the customer on the telephone in fifteen seconds.

What was promised, what is in the van, what is open, what comes next. It is private: it never leaves the house.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from specbuilder.documents.blocks import Block, Facts, Heading, Items, Paper, Paragraph, Weight
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BASE_VAN_GROUP
from specbuilder.model.kinds import JobState, Step
from specbuilder.model.papers import Case
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Choice
from specbuilder.wording import colleague as words
from specbuilder.wording.customer import pounds_range
from specbuilder.wording.dates import day_words, written_day
from specbuilder.wording.glance import van_words, weight_words
from specbuilder.wording.names import choice_name
from specbuilder.wording.open_things import VAN_DATA, asked_of, question_text, who_and_when
from specbuilder.wording.plain import raised
from specbuilder.wording.states import step_name
from specbuilder.workshop.handed import handed_line
from specbuilder.workshop.view import view_of

from .customer.price import deposit_pence, received_pence
from .running import running

_LATEST = 4
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


def colleague_page(case: Case) -> Paper:
    """The page of this case."""
    parts = (_at_a_glance, _promised, _open, _what_is_in_it, _lately)
    return Paper(
        name="colleague",
        title="Colleague's page",
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
    if spec.state is not JobState.AS_BUILT:
        rows.append(("Ready", f"about {day_words(case.plan.finish)}, as expected today"))
    rows += _parts(case)
    if note := one_line(spec.note).strip():
        rows.append(("Our note", note))
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
    yield Items(rows=(*(promises or ["No promise is written down."]), *accepted))
    view = view_of(case.stand.catalogue, spec, case.stand.report)
    yield Paragraph(text=words.sides(handed_line(view)))


def _what_is_in_it(case: Case) -> Iterator[Block]:
    """Names alone, by area: enough to answer what was agreed about the heater."""
    yield Heading(text="What is in it")
    for step in Step:
        if text := _area(case, step):
            yield Paragraph(text=f"{raised(step_name(step))}: {text}.", weight=Weight.SMALL)
    if not case.stand.spec.choices:
        yield Paragraph(text="Nothing is chosen yet.")


def _area(case: Case, step: Step) -> str:
    catalogue = case.stand.catalogue
    order = {
        option.id: number for number, option in enumerate(catalogue.options.values()) if _is_in(case, option, step)
    }
    chosen = [choice for choice in case.stand.spec.choices if choice.option in order]
    chosen.sort(key=lambda choice: order[choice.option])
    return "; ".join(words.chosen_words(catalogue, choice) for choice in chosen)


def _is_in(case: Case, option: Option, step: Step) -> bool:
    """The base van stands at the head of the page."""
    return case.stand.catalogue.groups[option.group].step is step and option.group != BASE_VAN_GROUP


def _open(case: Case) -> Iterator[Block]:
    yield Heading(text="What nobody knows yet")
    catalogue, report, spec = case.stand.catalogue, case.stand.report, case.stand.spec
    texts = [question_text(catalogue, key=key) for key in report.unknown]
    texts += [question_text(catalogue, group=group) for group in report.undecided]
    texts += [] if spec.van_data.complete else [VAN_DATA]
    texts += [question.text for question in spec.questions]
    rows = [words.open_words(text, who_and_when(asked_of(report, text))) for text in dict.fromkeys(texts)]
    yield Items(rows=tuple(rows or ["Nothing is open."]))


def _parts(case: Case) -> Iterator[tuple[str, str]]:
    """What is late, then what is waited for; what is here needs no telling."""
    rows: dict[str, list[str]] = {words.LATE: []}
    for about, record in {record.about: record for record in case.stand.spec.recorded(RecordKind.SUPPLY)}.items():
        if not words.is_here(record):
            late = words.is_late(record, case.today)
            name = words.part_words(case.stand.catalogue, about, record)
            rows.setdefault(words.LATE if late else words.supply_words(record), []).append(name)
    yield from ((status, "; ".join(names)) for status, names in rows.items() if names)


def _lately(case: Case) -> Iterator[Block]:
    """The last decisions and what was written down last, the newest first."""
    yield Heading(text="What happened last")
    catalogue = case.stand.catalogue
    decided = [words.decided_words(choice.at, choice_name(catalogue, choice)) for choice in _newest(case)]
    logged = [words.record_words(catalogue, record) for record in _records(case)]
    rows = (("Chosen", "; ".join(decided)), ("Written down", "; ".join(logged)))
    told = tuple(row for row in rows if row[1])
    yield Facts(rows=told) if told else Paragraph(text="Nothing is written down.")


def _newest(case: Case) -> Iterator[Choice]:
    """What was chosen last, without what only came along."""
    dated = [choice for choice in case.stand.spec.choices if choice.at and not choice.came_with]
    yield from islice(sorted(dated, key=lambda choice: choice.at, reverse=True), _LATEST)


def _records(case: Case) -> Iterator[Record]:
    yield from islice(reversed(case.stand.spec.recorded(*_LOGGED)), _LATEST)
