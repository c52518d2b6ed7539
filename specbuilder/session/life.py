"""The life of a job: draft, quoted, ordered or changed, as built. Which steps are legal, and what each of them needs.

The state follows from the records (``written``). What left the house stays as it was: a quoted revision takes no other
choices and no other brief, a signed one nothing but records; whatever shall be different makes the next revision.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import (
    Accept,
    AnswerLine,
    CloseQuestion,
    Edit,
    FillVanData,
    NameCustomer,
    PutQuestion,
    Together,
    Withdraw,
    Write,
    WriteNote,
)
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import JobState, Level
from specbuilder.model.life import Hindrance, HindranceCode, LifeStep
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec

from .evaluate import evaluate

SIGNED_STATES = (JobState.ORDERED, JobState.CHANGED, JobState.AS_BUILT)
PLACES = ("premises", "home", "distance")
_SIGNING, _PLACE, _AGE = BriefKey("signing"), BriefKey("contract_place"), BriefKey("age_days")
_CHANGED, _ORDER, _LATE = BriefKey("changed_after_signing"), BriefKey("change_order"), BriefKey("past_freeze")
SIGNING = "signing"
"""What an open question may stop, besides a step of the build."""


def frozen(catalogue: Catalogue, spec: Spec, edit: Edit) -> bool:
    """Whether the state of the job keeps this edit out of the revision."""
    match edit:
        case Together(edits=edits):
            return any(frozen(catalogue, spec, each) for each in edits)
        case Write() | WriteNote():
            return False
        case _ if spec.state in SIGNED_STATES:
            return True
        case Accept() | Withdraw() | PutQuestion() | CloseQuestion() | FillVanData() | NameCustomer():
            return False
        case AnswerLine(key=key):
            line = catalogue.brief.get(key)
            return spec.state is not JobState.DRAFT and line is not None and line.question is not None
        case _:
            return spec.state is not JobState.DRAFT


def written(catalogue: Catalogue, spec: Spec, record: Record) -> Spec:
    """The spec with the record, in the state it leads to."""
    spec = replace(spec, records=(*spec.records, record))
    match record.kind:
        case RecordKind.QUOTED:
            return replace(spec, state=JobState.QUOTED)
        case RecordKind.SIGNED:
            change = spec.changes_signed
            answers = {_SIGNING: "yes", _PLACE: record.about} | ({_ORDER: "signed"} if change else {})
            given = spec.answers
            for key, value in answers.items():
                given = given.with_answer(key, value) if key in catalogue.brief else given
            return replace(spec, state=JobState.CHANGED if change else JobState.ORDERED, answers=given)
        case RecordKind.BUILT:
            return replace(spec, state=JobState.AS_BUILT)
        case _:
            return spec


def next_revision(catalogue: Catalogue, spec: Spec) -> Spec:
    """The draft that begins where this revision ends; acceptances and questions go with it, and so does the log.

    It replaces what the workshop builds: the newest revision that was signed, where there is one.
    """
    signed = (record.revision for record in spec.recorded(RecordKind.SIGNED) if record.revision <= spec.revision)
    answers = spec.answers
    if spec.state in SIGNED_STATES and {_CHANGED, _ORDER} <= set(catalogue.brief):
        answers = answers.with_answer(_CHANGED, "yes").with_answer(_ORDER, "open")
    return replace(
        spec,
        revision=spec.revision + 1,
        replaces=max(signed, default=spec.revision),
        state=JobState.DRAFT,
        answers=answers,
        reason="",
    )


def state_on(spec: Spec, today: date) -> JobState:
    """The state of the job on a day: a quote that has run out has expired."""
    until = _date(spec.valid_until)
    if spec.state is JobState.QUOTED and until is not None and today > until:
        return JobState.EXPIRED
    return spec.state


def place_of(spec: Spec) -> str:
    """Where it is signed (one of ``PLACES``), as it was said already; empty while nobody has said it."""
    said = spec.answers.get(_PLACE)
    return said if isinstance(said, str) and said in PLACES else ""


def quote_record(catalogue: Catalogue, report: Report, at: str, by: str) -> Record:
    """What is written down when a quote goes out. ``at`` is ``YYYY-MM-DD HH:MM``."""
    until = date.fromisoformat(at[:10]) + timedelta(days=catalogue.firm.quote_valid_days)
    gross = report.price.gross
    return Record(
        kind=RecordKind.QUOTED,
        at=at,
        by=by,
        pence=gross.least,
        figure=gross.most,
        due=until.isoformat(),
        revision=report.spec.revision,
    )


def at_signing(catalogue: Catalogue, spec: Spec, today: date, *, place: str = "", late: bool = False) -> Spec:
    """The spec as it would stand when it is signed today.

    ``place`` is where (one of ``PLACES``; empty: as the spec says); ``late``: its change comes after a freeze point.
    """
    answers = spec.answers
    quotes = spec.recorded(RecordKind.QUOTED)
    aged = _date(quotes[-1].day) if quotes and not spec.changes_signed else None
    given: dict[BriefKey, str | int] = {_SIGNING: "yes", _AGE: max((today - aged).days, 0) if aged else 0}
    if place:
        given[_PLACE] = place
    if spec.changes_signed:
        given |= {_CHANGED: "yes", _ORDER: "signed", _LATE: "yes" if late else "no"}
    for key, value in given.items():
        answers = answers.with_answer(key, value) if key in catalogue.brief else answers
    return replace(spec, answers=answers)


def hindrances(
    catalogue: Catalogue, spec: Spec, step: LifeStep, now: str, *, hold: str = "", place: str = "", late: bool = False
) -> tuple[Hindrance, ...]:
    """What stands in the way of a step at this time (``YYYY-MM-DD HH:MM``); nothing: it may be taken.

    ``hold`` is the hold point to be passed; ``place`` and ``late`` are as for ``at_signing``.
    """
    today = date.fromisoformat(now[:10])
    found = [*_clock(spec, now), *_state(spec, step, today)]
    match step:
        case LifeStep.QUOTE:
            found += _to_quote(spec)
        case LifeStep.ORDER:
            found += _to_order(catalogue, spec, today, place=place, late=late)
        case LifeStep.PASS:
            found += _to_pass(catalogue, spec, hold)
        case LifeStep.BUILT:
            passed = {record.about for record in spec.recorded(RecordKind.PASSED)}
            holds = [work.hold_point for work in catalogue.work.values() if work.hold_point]
            again = _to_pass_again(catalogue, spec)
            open_ = [each for each in holds if each not in passed or each in again]
            found += [Hindrance(code=HindranceCode.HOLD_OPEN, text=each) for each in open_]
    return tuple(found)


def _clock(spec: Spec, now: str) -> Iterator[Hindrance]:
    latest = max((record.at for record in spec.records), default="")
    if now < latest:
        yield Hindrance(code=HindranceCode.EARLIER, text=latest)


def _state(spec: Spec, step: LifeStep, today: date) -> Iterator[Hindrance]:
    """Only legal steps: a quote of a draft, an order of a quote, a change of what was signed."""
    change = spec.changes_signed
    legal = {
        LifeStep.QUOTE: (JobState.DRAFT,),
        LifeStep.ORDER: (JobState.DRAFT, JobState.QUOTED) if change else (JobState.QUOTED,),
        LifeStep.PASS: (JobState.ORDERED, JobState.CHANGED),
        LifeStep.BUILT: (JobState.ORDERED, JobState.CHANGED),
    }[step]
    state = state_on(spec, today)
    if state is JobState.EXPIRED and step is LifeStep.ORDER:
        yield Hindrance(code=HindranceCode.QUOTE_RAN_OUT, text=spec.valid_until)
    elif state not in legal:
        yield Hindrance(code=HindranceCode.WRONG_STATE, text=state.value)


def _to_quote(spec: Spec) -> Iterator[Hindrance]:
    if not spec.customer.name.strip():
        yield Hindrance(code=HindranceCode.NAMELESS)
    if not spec.choices:
        yield Hindrance(code=HindranceCode.EMPTY)


def _to_order(catalogue: Catalogue, spec: Spec, today: date, *, place: str, late: bool) -> Iterator[Hindrance]:
    """Nothing unknown at STOP, what is broken at SIGN accepted in writing, a person and a date for what is open."""
    report = evaluate(catalogue, at_signing(catalogue, spec, today, place=place, late=late))
    code = HindranceCode
    yield from _to_quote(spec)
    yield from (Hindrance(code=code.STRANGER, option=option) for option in report.strangers)
    yield from (Hindrance(code=code.STOP_BROKEN, rule=f.rule) for f in report.broken(Level.STOP))
    yield from (Hindrance(code=code.STOP_UNKNOWN, rule=f.rule) for f in report.cannot_tell(Level.STOP))
    yield from (Hindrance(code=code.NOT_ACCEPTED, rule=f.rule) for f in report.broken(Level.SIGN))
    for group in report.undecided:
        if catalogue.groups[group].compulsory_before_signing:
            yield Hindrance(code=code.NOT_CHOSEN, group=group)
    asked = {question.text for question in spec.questions if question.owned}
    for key in report.unknown:
        if catalogue.brief[key].ask not in asked:
            yield Hindrance(code=code.NOBODY_ASKED, key=key)
    for question in spec.questions:
        if question.stops.strip().lower() == SIGNING:
            yield Hindrance(code=code.QUESTION_STOPS, text=question.text)


def _to_pass(catalogue: Catalogue, spec: Spec, hold: str) -> Iterator[Hindrance]:
    """In an order in which the work can be done, each once; after a signed change again, for what it asks to redo."""
    step = next((work for work in catalogue.work.values() if work.hold_point == hold and hold), None)
    if step is None:
        yield Hindrance(code=HindranceCode.HOLD_UNKNOWN, text=hold)
        return
    passed = {record.about for record in spec.recorded(RecordKind.PASSED)}
    if hold in passed and not _may_pass_again(spec, hold):
        yield Hindrance(code=HindranceCode.HOLD_PASSED, text=hold)
    for before in _before(catalogue, step.id):
        point = catalogue.work[before].hold_point
        if point and point not in passed:
            yield Hindrance(code=HindranceCode.HOLD_OPEN, text=point)


def _may_pass_again(spec: Spec, hold: str) -> bool:
    """It was passed before the newest change was signed, and not since."""
    last = max(record.at for record in spec.recorded(RecordKind.PASSED) if record.about == hold)
    signed = [record.at for record in spec.recorded(RecordKind.SIGNED)]
    return spec.state is JobState.CHANGED and last <= max(signed, default="")


def _to_pass_again(catalogue: Catalogue, spec: Spec) -> frozenset[str]:
    """Hold points of holes that a signed change closed, and that were not passed since: nobody has read them again."""
    signed = [record.at for record in spec.recorded(RecordKind.SIGNED)]
    steps = {hole.id: hole.freeze_step for option in catalogue.options.values() for hole in option.holes}
    found: set[str] = set()
    for work in spec.undone:
        since = signed[work.order] if work.order < len(signed) else ""
        for step in {steps[hole] for hole in work.holes if hole in steps}:
            point = catalogue.work[step].hold_point if step in catalogue.work else ""
            passed = [record.at for record in spec.recorded(RecordKind.PASSED) if record.about == point]
            if point and max(passed, default="") <= since:
                found.add(point)
    return frozenset(found)


def _before(catalogue: Catalogue, step: str) -> tuple[str, ...]:
    """All steps before this one, in file order."""
    found: set[str] = set()
    ahead = [step]
    while ahead:
        for before in catalogue.work[ahead.pop()].predecessors:
            if before in catalogue.work and before not in found:
                found.add(before)
                ahead.append(before)
    return tuple(each for each in catalogue.work if each in found)


def _date(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def fresh(spec: Spec) -> Spec:
    """What a new job begins with when it begins like another: all that was said, nothing that happened."""
    answers = spec.answers
    for key in (_AGE, _CHANGED, _ORDER, _LATE):
        answers = answers.with_answer(key, None)
    draft = replace(spec, number="", revision=1, replaces=None, state=JobState.DRAFT, answers=answers)
    return replace(draft, records=(), undone=(), accepted=(), note="", reason="")


def variant_of(spec: Spec) -> Spec:
    """What a variant of a job begins with: all that was said and promised, and nothing that left the house."""
    promised = tuple(replace(record, revision=1) for record in spec.recorded(RecordKind.PROMISED))
    return replace(fresh(spec), number=spec.number, accepted=spec.accepted, note=spec.note, reason="", records=promised)
