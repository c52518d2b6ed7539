"""The forms of what is written down about a build, each with what is usually meant in its fields."""

from __future__ import annotations

from specbuilder.model.kinds import JobState
from specbuilder.model.life import LifeStep
from specbuilder.model.record import Record, RecordKind
from specbuilder.tui.items import Field
from specbuilder.wording import build as words
from specbuilder.wording.signing import COUNTER
from specbuilder.wording.typed import above_nought, number, plain
from specbuilder.workshop.progress import HoldPoint, PartOfBuild

from .form import FormField
from .page import Host
from .record import RecordForm, RecordPage
from .sign import last_by

_PENCE = 100


def hold_form(host: Host, point: HoldPoint) -> RecordForm:
    """A hold point is passed, with what was read there; one that is passed takes further readings."""
    hold, passed = point.step.hold_point, point.passed is not None
    readings = tuple(
        FormField(field=Field.READING, about=f"{hold} {number_}", own_label=figure.what, needed=False)
        for number_, figure in enumerate(point.figures, 1)
    )
    by = FormField(field=Field.DONE_BY, about=hold, value=last_by(host, RecordKind.PASSED) or words.FOREMAN)
    remarks = () if passed else (FormField(field=Field.REMARKS, about=hold, needed=False),)

    def records(page: RecordPage) -> tuple[Record, ...]:
        now, name = host.now(), page.typed(Field.DONE_BY, hold)
        told = [(one.own_label, page.typed(Field.READING, one.item.about)) for one in readings]
        read = tuple(_reading(now, name, hold, what, text) for what, text in told if text)
        if passed:
            return read
        remark = page.typed(Field.REMARKS, hold)
        return (*read, Record(kind=RecordKind.PASSED, at=now, by=name, about=hold, words=remark))

    return RecordForm(
        title=words.hold_title(point),
        fields=(*readings, *remarks, by),
        take=words.hold_take(point),
        records=records,
        step=None if passed and host.deeds.state is not JobState.DRAFT else LifeStep.PASS,
        hold=hold,
        hints=tuple(
            (one.item, words.must_be(figure.what, figure.must_be))
            for one, figure in zip(readings, point.figures, strict=True)
        ),
        start=readings[0].item if readings else None,
    )


def _reading(now: str, by: str, hold: str, what: str, text: str) -> Record:
    first, *_ = text.split()
    return Record(
        kind=RecordKind.READING, at=now, by=by, about=hold, words=words.read(what, text), figure=number(first)
    )


def supply_form(host: Host, part: PartOfBuild) -> RecordForm:
    """Where a part is, and when it is expected."""
    option, last = part.chosen.choice.option, part.supply
    fields = (
        FormField(field=Field.SUPPLY, about=option, numbered=words.SUPPLIES),
        FormField(field=Field.EXPECTED, about=option, value=last.due if last is not None else "", needed=False),
        FormField(field=Field.DONE_BY, about=option, value=last_by(host, RecordKind.SUPPLY) or COUNTER),
    )

    def records(page: RecordPage) -> tuple[Record, ...]:
        return (
            Record(
                kind=RecordKind.SUPPLY,
                at=host.now(),
                by=page.typed(Field.DONE_BY, option),
                about=option,
                words=page.typed(Field.SUPPLY, option),
                due=page.typed(Field.EXPECTED, option),
            ),
        )

    title = words.supply_title(words.part_name(host.catalogue, part))
    return RecordForm(title=title, fields=fields, take=words.take_line(), records=records)


def deposit_form(host: Host) -> RecordForm:
    """What came in; what is asked for stands there."""
    asked, received = host.deeds.deposit
    expected = plain(max(asked.least - received, 0) / _PENCE) if asked.least == asked.most else ""
    fields = (
        FormField(field=Field.AMOUNT, value=expected if above_nought(expected) else ""),
        FormField(field=Field.TAKEN_BY, value=last_by(host, RecordKind.DEPOSIT) or COUNTER),
    )

    def records(page: RecordPage) -> tuple[Record, ...]:
        pounds = above_nought(page.typed(Field.AMOUNT))
        assert pounds is not None, "the form takes nothing else"
        return (
            Record(kind=RecordKind.DEPOSIT, at=host.now(), by=page.typed(Field.TAKEN_BY), pence=round(pounds * _PENCE)),
        )

    return RecordForm(title=words.deposit_title(), fields=fields, take=words.take_line(), records=records)


def promise_form(host: Host) -> RecordForm:
    """Something said to the customer and relied on."""
    fields = (
        FormField(field=Field.PROMISE),
        FormField(field=Field.SAID_BY, value=last_by(host, RecordKind.PROMISED) or COUNTER),
    )

    def records(page: RecordPage) -> tuple[Record, ...]:
        by, told = page.typed(Field.SAID_BY), page.typed(Field.PROMISE)
        return (Record(kind=RecordKind.PROMISED, at=host.now(), by=by, words=told),)

    return RecordForm(title=words.promise_title(), fields=fields, take=words.take_line(), records=records)


def call_form(host: Host) -> RecordForm:
    """What comes next, and when."""
    fields = (
        FormField(field=Field.CALL_DUE),
        FormField(field=Field.CALL_ABOUT),
        FormField(field=Field.CALLS, value=last_by(host, RecordKind.CALL) or COUNTER),
    )

    def records(page: RecordPage) -> tuple[Record, ...]:
        return (
            Record(
                kind=RecordKind.CALL,
                at=host.now(),
                by=page.typed(Field.CALLS),
                words=page.typed(Field.CALL_ABOUT),
                due=page.typed(Field.CALL_DUE),
            ),
        )

    return RecordForm(title=words.call_title(), fields=fields, take=words.take_line(), records=records)


def built_form(host: Host) -> RecordForm:
    """Handed over as built."""
    spec = host.report.spec
    signed = spec.recorded(RecordKind.SIGNED)
    fields = (
        FormField(field=Field.CUSTOMER_SIGNS, about="built", value=signed[-1].by if signed else spec.customer.name),
        FormField(field=Field.FIRM_SIGNS, about="built", value=signed[-1].words if signed else COUNTER),
    )

    def records(page: RecordPage) -> tuple[Record, ...]:
        by, firm = page.typed(Field.CUSTOMER_SIGNS, "built"), page.typed(Field.FIRM_SIGNS, "built")
        return (Record(kind=RecordKind.BUILT, at=host.now(), by=by, words=firm),)

    return RecordForm(
        title=words.built_title(spec),
        fields=fields,
        take=words.built_take(),
        records=records,
        sentences=words.built_words(),
        step=LifeStep.BUILT,
    )
