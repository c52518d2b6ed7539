"""A change in figures: the build as it was signed beside the one it becomes, and what works elsewhere than before."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table
from specbuilder.model.change_order import ChangeOrder
from specbuilder.model.ids import LedgerId
from specbuilder.model.papers import Case
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import RecordKind
from specbuilder.model.report import Pence
from specbuilder.model.stand import Stand
from specbuilder.wording import customer as words
from specbuilder.wording.dates import day_words, written_day
from specbuilder.wording.quantities import span
from specbuilder.wording.works_changes import works_changes
from specbuilder.workshop.arrivals import day_of
from specbuilder.workshop.plan import build_plan
from specbuilder.workshop.view import view_of

from .customer import figures
from .customer.living import works_of
from .customer.price import received_pence

_WEEKS = LedgerId("lead-weeks")


def works(case: Case) -> Iterator[Block]:
    """What works elsewhere than before: nobody shall find out on the first evening."""
    if case.before is None:
        return
    old = replace(case, stand=case.before, beside=case.beside_before)
    rows = works_changes(works_of(old)[1], works_of(case)[1])
    if rows:
        yield Heading(text="What works elsewhere than before")
        yield Items(rows=rows)


def before_after(case: Case, order: ChangeOrder) -> Iterator[Block]:
    """Price, what is still to pay, weight, nights, waits and the day it is ready."""
    yield Heading(text="Before and after")
    yield Table(
        columns=(Column(head=""), Column(head="Before"), Column(head="After")),
        rows=tuple(_measures(case, order)),
        strong=frozenset({0}),
    )
    yield Paragraph(text=_deposit(case, order))


def _deposit(case: Case, order: ChangeOrder) -> str:
    """What came in, and that a change asks for none."""
    currency, received = case.stand.catalogue.firm.currency, received_pence(case)
    none = "This change asks for no further deposit, unless we say so here in writing."
    if not received:
        return f"Deposit: none is received yet; the one agreed with revision {order.of_revision} stays due. {none}"
    days = dict.fromkeys(written_day(one_line(each.day)) for each in case.stand.spec.recorded(RecordKind.DEPOSIT))
    return f"Deposit: {words.pounds(received, currency)} received on {' and '.join(days)}. {none}"


def _measures(case: Case, order: ChangeOrder) -> Iterator[tuple[str, str, str]]:
    currency, comparison = case.stand.catalogue.firm.currency, order.comparison
    was, now = comparison.gross_before, comparison.gross_after
    yield "Price, VAT included", words.pounds_range(was, currency), words.pounds_range(now, currency)
    if received := received_pence(case):
        yield "Still to pay", _rest(was, received, currency), _rest(now, received, currency)
    before = case.before
    if before is None:
        return
    yield "Weight you may still load", _weight_left(before), _weight_left(case.stand)
    for ledger, name in ((figures.NIGHTS, "Nights away from a plug"), (_WEEKS, "Longest wait for a part")):
        old, new = _told(before, ledger), _told(case.stand, ledger)
        if old or new:
            yield name, old or "-", new or "-"
    yield (
        "Ready, as expected",
        f"about {day_words(_finish_before(case, before))}",
        f"about {day_words(case.plan.finish)}",
    )


def _finish_before(case: Case, before: Stand) -> date:
    """When the build as it was signed would be ready, with what has been recorded since."""
    spec = replace(before.spec, records=case.stand.spec.records)
    start = day_of(before.spec.signed_on) or case.today
    return build_plan(view_of(before.catalogue, spec, before.report), start).finish


def _rest(gross: Pence, received: int, currency: str) -> str:
    return words.pounds_range(Pence(least=gross.least - received, most=gross.most - received), currency)


def _weight_left(stand: Stand) -> str:
    reading = stand.report.readings.get(figures.WEIGHT)
    return words.weight_left(reading.room if reading is not None and reading.applies else None)


def _told(stand: Stand, ledger: LedgerId) -> str:
    """The figure with its unit; empty where there is nothing to measure."""
    reading, spec = stand.report.readings.get(ledger), stand.catalogue.ledgers.get(ledger)
    if reading is None or spec is None or not reading.applies or reading.value is None:
        return ""
    if ledger == figures.NIGHTS:
        return words.nights(reading.value)
    return span(reading.value, spec.unit, stand.catalogue.firm.currency)
