"""The two lines that never move: which job, and where it stands."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BASE_VAN_GROUP, BriefKey, LedgerId
from specbuilder.model.kinds import JobState, OptionState, Truth
from specbuilder.model.ledger import Reading
from specbuilder.model.report import Pence, Price, Report
from specbuilder.model.span import Span

from . import quantities
from .brief_terms import key_words
from .names import listed, option_name
from .plain import fitted
from .readings import ESTIMATE
from .states import job_state_word, verdict_word

WEIGHT = LedgerId("total-mass")
"""The ledger behind *weight left*."""
CEILING = LedgerId("price-gross")
"""The ledger behind *ceiling*."""
NOT_SETTLED = "weight not settled"
"""In a small window, while the van may turn out over its plate or under it: half a range would be misread."""
ABOUT = "about "
"""Before an estimate where there is no room for the word."""
_CEILING_KEY = BriefKey("ceiling_gross_pence")
_NO_NAME = "no name yet"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Style:
    """One way of writing the glance line; the line takes the first that fits."""

    gap: int
    tight: bool = False
    """Ranges with a dash."""
    merged: bool = False
    """Undecided and not known told together as *open*."""
    estimate: bool = False
    """With the word ESTIMATE; else the estimate is told as *about*."""
    ceiling: bool = False
    without: bool = False
    """*without van* in place of *van not included*."""
    bare: bool = False
    """Without *VAT in*, *left* and what was accepted: below 80 columns."""


_STYLES = (
    _Style(gap=6, estimate=True, ceiling=True),
    _Style(gap=3, estimate=True, ceiling=True),
    _Style(gap=3, estimate=True),
    _Style(gap=3),
    _Style(gap=2),
    _Style(gap=2, tight=True),
    _Style(gap=2, tight=True, merged=True),
    _Style(gap=2, tight=True, merged=True, without=True),
    _Style(gap=2, tight=True, merged=True, without=True, bare=True),
    _Style(gap=1, tight=True, merged=True, without=True, bare=True),
)


def glance(catalogue: Catalogue, report: Report, width: int) -> str:
    """Price or range, weight left, undecided, not known, broken: always in this order, shortened to fit ``width``.

    Shortened in this order: the ceiling, the word ESTIMATE to *about*, the gaps, the ranges, then undecided and not
    known together as *open*, what is said of the van, and below 80 columns the words *VAT in* and *left*. Two cells
    stay between the parts from 64 columns on, so that no figure is read with the words of its neighbour. What is open
    and broken is never cut away: a price of millions gives way.
    """
    lines = [_glance(catalogue, report, style) for style in _STYLES]
    return next((line for line in lines if len(line) <= width), _cut(lines[-1], width))


def head(
    catalogue: Catalogue,
    report: Report,
    width: int,
    saved: str = "",
    counter: str = "",
    state: tuple[str, str] | None = None,
) -> str:
    """Job, customer, state, revision, base van, ``saved 10:42``, counter: shortened to fit ``width`` columns.

    ``state``: where the job stands, in full and in short, where the word of its state does not say it.

    What is dropped first is the counter, then the van's fuel and doors, then the revision; the customer's name gives
    way last and is cut.
    """
    number = report.spec.number or "new job"
    name = report.spec.customer.name or _NO_NAME
    told, word = state or (state_words(report.spec.state), job_state_word(report.spec.state))
    revision = f"rev {report.spec.revision}"
    full, short = van_words(catalogue, report), van_words(catalogue, report, short=True)
    if report.van is None:
        full = short = _vans_possible(catalogue, report) or full
    for parts in (
        (told, revision, full, saved, counter),
        (told, revision, full, saved),
        (told, revision, short, saved),
        (told, short, saved),
        *([(told, saved), (told,)] if state is not None else []),
        (word, short, saved),
        (word, saved),
    ):
        line = _spaced((f"{number} {name}", *parts), 3)
        if len(line) <= width:
            return line
    room = width - len(_spaced((f"{number} ", word, saved), 3))
    return fitted(_spaced((f"{number} {fitted(name, max(room, 4))}", word, saved), 3), width)


def state_words(state: JobState) -> str:
    """``draft, not quoted``; other states are their own word."""
    return f"{job_state_word(state)}, not quoted" if state is JobState.DRAFT else job_state_word(state)


def van_words(catalogue: Catalogue, report: Report, *, short: bool = False) -> str:
    """``Fenwain Short, diesel, door left``; ``van not known`` while it is undecided."""
    if report.van is None:
        return "van not known"
    name = option_name(catalogue, report.van)
    van = catalogue.options[report.van].van if report.van in catalogue.options else None
    if short:
        return name.partition(",")[0]
    if van is None:
        return name
    doors = listed(place.value for place in van.sliding_doors)
    more = (van.fuel, f"door {doors}" if doors and " door" not in name else "")
    return ", ".join((name, *(word for word in more if word and word not in name)))


def _vans_possible(catalogue: Catalogue, report: Report) -> str:
    """``4 of 9 vans possible``; empty while nothing keeps one out."""
    vans = [report.options.get(van.id) for van in catalogue.options_of(BASE_VAN_GROUP)]
    live = sum(van is None or van.state is not OptionState.BLOCKED for van in vans)
    return f"{live} of {len(vans)} vans possible" if 0 < live < len(vans) else ""


def price_words(catalogue: Catalogue, price: Price, *, tight: bool = False) -> str:
    """``£17,532 to £24,024 VAT in, van not included``."""
    currency = catalogue.firm.currency
    amount = (
        quantities.money_range_tight(price.gross, currency) if tight else quantities.money_range(price.gross, currency)
    )
    return f"{amount} VAT in, {van_included(price.van_included)}"


def van_included(included: Truth) -> str:
    """``van included``, ``van not included``, ``van not settled``."""
    return {Truth.YES: "van included", Truth.NO: "van not included", Truth.MAYBE: "van not settled"}[included]


def weight_words(catalogue: Catalogue, report: Report, *, tight: bool = False, about: bool = True) -> str:
    """``about 218 to 294 kg left``, ``about 12 kg over``, ``weight: cannot tell``.

    *about* stands where the sum rests on an estimate; without it the caller marks the estimate.
    """
    room = room_of(report.readings.get(WEIGHT))
    if room is None:
        return "weight: cannot tell"
    sign = ABOUT if about and catalogue.ledgers[WEIGHT].estimate else ""
    if room.least >= 0:
        return f"{sign}{_kilograms(room, tight)} left"
    if room.most < 0:
        return f"{sign}{_kilograms(room * -1, tight)} over"
    over = quantities.kilograms(-room.least)
    over = over.removesuffix(" kg") if tight else over
    return f"{sign}{over} over to {quantities.kilograms(room.most)} left"


def room_of(reading: Reading | None) -> Span | None:
    """What is left, None while that cannot be told."""
    return reading.room if reading is not None and reading.applies else None


def ceiling_words(catalogue: Catalogue, report: Report) -> str:
    """``ceiling £21,000: cannot tell``; empty while no ceiling is named."""
    reading = report.readings.get(CEILING)
    if reading is None or reading.bound is None or not report.facts.known(_CEILING_KEY):
        return ""
    amount = quantities.span(reading.bound, quantities.PENCE, catalogue.firm.currency)
    told = f"{key_words(_CEILING_KEY).removeprefix('price ')} {amount}: {verdict_word(reading.verdict)}"
    gross = report.price.gross
    if reading.value is None or (reading.value.least, reading.value.most) == (gross.least, gross.most):
        return told
    # The van is in the price and not in the ceiling: say what is held against it.
    held = Pence(least=round(reading.value.least), most=round(reading.value.most))
    return f"without van {quantities.money_range(held, catalogue.firm.currency)}, {told}"


def counts(report: Report) -> tuple[int, int, int, int]:
    """Undecided, not known, broken, accepted: as the step line counts them."""
    steps = report.steps.values()
    return (
        sum(step.undecided for step in steps),
        sum(step.unknown for step in steps),
        sum(step.broken for step in steps) + len(report.strangers),
        sum(finding.accepted for finding in report.findings),
    )


def _glance(catalogue: Catalogue, report: Report, style: _Style) -> str:
    undecided, unknown, broken, accepted = counts(report)
    price = price_words(catalogue, report.price, tight=style.tight)
    if style.ceiling and (ceiling := ceiling_words(catalogue, report)):
        price += f"  ({ceiling})"
    weight = weight_words(catalogue, report, tight=style.tight, about=not style.estimate)
    if style.estimate and room_of(report.readings.get(WEIGHT)) is not None and catalogue.ledgers[WEIGHT].estimate:
        weight += f" ({ESTIMATE})"
    state = [f"{undecided + unknown} open"] if style.merged else [f"{undecided} undecided", f"{unknown} not known"]
    end = f"{broken} broken" + (f", {accepted} accepted" if accepted and not style.bare else "")
    if style.without:
        price = price.replace("van not included", "without van")
    if style.bare:
        price = price.replace(" VAT in", "")
        room = room_of(report.readings.get(WEIGHT))
        either_way = room is not None and room.least < 0 <= room.most
        weight = NOT_SETTLED if either_way else weight.removesuffix(" left")
    return _spaced((price, weight, *state, end), style.gap)


def _cut(line: str, width: int) -> str:
    """A line that no style brings into its window, with its last four words whole: what is open, what is broken."""
    start, end = line.rsplit(" ", 4)[0], " ".join(line.split(" ")[-4:])
    return f"{fitted(start, width - len(end) - 1)} {end}"


def _kilograms(room: Span, tight: bool) -> str:
    return quantities.span_tight(room, "kg", "") if tight else quantities.span(room, "kg", "")


def _spaced(parts: tuple[str, ...], gap: int) -> str:
    return (" " * gap).join(part for part in parts if part)
