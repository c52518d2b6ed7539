"""What it costs, how long that holds, and between whom."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from specbuilder.documents.blocks import Big, Block, Facts, Paragraph, Weight
from specbuilder.documents.sheets.running import revision_words
from specbuilder.model.ids import VAN_SUPPLY_GROUP
from specbuilder.model.kinds import JobState, Truth
from specbuilder.model.papers import Case
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import RecordKind
from specbuilder.model.report import Pence
from specbuilder.model.stand import Stand
from specbuilder.wording.customer import percent, pounds, pounds_range
from specbuilder.wording.dates import day_words, written_day
from specbuilder.wording.glance import van_words
from specbuilder.wording.plain import ended

from . import figures

_VAN = {
    Truth.YES: "The van is in this price.",
    Truth.NO: "The van itself is not in this price.",
    Truth.MAYBE: "Whether the van is in this price is still open.",
}
_HUNDRED = 100


def price_blocks(case: Case) -> Iterator[Block]:
    """The price in large type, what it is made of, and until when it holds."""
    report, currency = case.stand.report, case.stand.catalogue.firm.currency
    yield Big(
        label="Price, VAT included",
        figure=pounds_range(report.price.gross, currency),
        note=" ".join(_made_of(case)),
    )
    if figures.stops(case) or report.strangers:
        yield Paragraph(
            text="It cannot be built as it stands. What has to change first is listed below, under what we told you.",
            weight=Weight.CAUTION,
        )
    yield Facts(rows=(*_deposit(case), *_validity(case), *_parties(case)))


def when_due(case: Case) -> str:
    """The firm's own sentence about the deposit; empty where its terms have none."""
    return next((term for term in case.stand.catalogue.firm.terms if "deposit" in term.lower()), "")


def deposit_pence(case: Case) -> Pence:
    """The firm's share of the price, in whole units of money."""
    return deposit_of(case.stand)


def deposit_of(stand: Stand) -> Pence:
    """The same of a revision alone."""
    gross, share = stand.report.price.gross, stand.catalogue.firm.deposit_percent
    return Pence(least=_whole(gross.least * share / _HUNDRED), most=_whole(gross.most * share / _HUNDRED))


def received_pence(case: Case) -> int:
    """What has come in as deposit."""
    return sum(record.pence or 0 for record in case.stand.spec.recorded(RecordKind.DEPOSIT))


def van_in_price(case: Case) -> str:
    """Whether the van itself is in the price."""
    return _VAN[case.stand.report.price.van_included]


def _made_of(case: Case) -> Iterator[str]:
    """Net and VAT, what of it is for undoing, whether the van is in it, and why it is a range."""
    report, firm = case.stand.report, case.stand.catalogue.firm
    price, currency = report.price, firm.currency
    net, vat = pounds_range(price.net, currency), pounds_range(price.vat, currency)
    yield f"{net} without VAT, and {vat} VAT at {percent(firm.vat_percent)}."
    undone = sum(each.net_pence for each in case.stand.spec.undone)
    if undone:
        gross = round(undone * (1 + firm.vat_percent / _HUNDRED))
        yield f"{pounds(gross, currency)} of it is for undoing work that was already done."
    yield van_in_price(case)
    if price.gross.least != price.gross.most:
        yield "It is a range because some things are still open; they are listed below."


def _deposit(case: Case) -> Iterator[tuple[str, str]]:
    """What is paid when: the sums, and the firm's own sentence about them."""
    firm, gross = case.stand.catalogue.firm, case.stand.report.price.gross
    received, asked = received_pence(case), deposit_pence(case)
    if received:
        records = case.stand.spec.recorded(RecordKind.DEPOSIT)
        days = " and ".join(dict.fromkeys(written_day(record.day) for record in records))
        told = f"{pounds(received, firm.currency)} received on {days}"
        rest = Pence(least=gross.least - received, most=gross.most - received)
    else:
        told = f"{pounds_range(asked, firm.currency)} ({percent(firm.deposit_percent)})"
        rest = Pence(least=gross.least - asked.least, most=gross.most - asked.most)
    told = f"{told}; the rest: {pounds_range(rest, firm.currency)}"
    due = when_due(case)
    yield "Deposit", f"{told}. {ended(due)}" if due and not received else told


def _validity(case: Case) -> Iterator[tuple[str, str]]:
    spec, days = case.stand.spec, case.stand.catalogue.firm.quote_valid_days
    if spec.state not in figures.UNSIGNED:
        return
    if spec.state is JobState.DRAFT:
        until = day_words(case.today + timedelta(days=days))
        yield "Valid until", f"a draft is no offer; quoted today, it would hold until {until}"
    elif spec.valid_until:
        ran_out = ", and has run out: ask for a new price" if spec.state is JobState.EXPIRED else ""
        yield "Valid until", f"{written_day(one_line(spec.valid_until))}{ran_out}"


def _parties(case: Case) -> Iterator[tuple[str, str]]:
    """Who offers, who is offered, which job, which van; a name nobody knows is a blank to write in."""
    firm, spec = case.stand.catalogue.firm, case.stand.spec
    ask_for, vat_number = one_line(firm.ask_for), one_line(firm.vat_number)
    told = [f"{firm.name}, {one_line(firm.address) or firm.town}"]
    told += [f"Ask for {ask_for}"] if ask_for else []
    told.append(f"VAT number: {vat_number or 'still to be filled in by the firm'}")
    yield "From", ". ".join(told)
    yield "For", one_line(spec.customer.name).strip()
    yield "Job", f"{one_line(spec.number) or 'not numbered yet'}, {revision_words(spec)}, {day_words(case.today)}"
    yield "The van", _van(case)


def _van(case: Case) -> str:
    """Which van, its number plate, whose it is and who brings it."""
    catalogue, report, spec = case.stand.catalogue, case.stand.report, case.stand.spec
    plate = one_line(spec.van_data.registration).strip()
    told = [ended(van_words(catalogue, report)) if report.van else "Not chosen yet."]
    supply = next((choice for choice in spec.choices if choice.option in _supplies(case)), None)
    option = catalogue.options.get(supply.option) if supply else None
    told += [ended(option.name), option.description] if option is not None else []
    told.append(f"Registration: {plate}." if plate else "Registration not known yet.")
    return " ".join(part for part in told if part)


def _supplies(case: Case) -> frozenset[str]:
    return frozenset(option.id for option in case.stand.catalogue.options_of(VAN_SUPPLY_GROUP))


def _whole(pence: float) -> int:
    """To whole units of money, half up."""
    return int(pence / _HUNDRED + 0.5) * _HUNDRED
