"""The customer's copy as it is shown on a screen that is turned round: the same words, on three pages."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table
from specbuilder.model.kinds import Level, Truth, Verdict
from specbuilder.model.papers import Case
from specbuilder.wording import customer_view as words
from specbuilder.wording.customer import part_name, pounds, pounds_range
from specbuilder.wording.glance import van_words

from . import figures
from .contents import contents
from .living import height, living, weight, what_works_where, works_of
from .price import van_in_price
from .told import open_questions, own_parts, safety, told

_HUNDRED = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the three pages hold."""

    price: str
    note: str
    """What is in the price."""
    counts: tuple[str, str, str]
    """Who travels, who sleeps, which van."""
    facts: tuple[tuple[str, str], ...]
    """Weight and height, as in the copy."""
    away: tuple[tuple[str, tuple[str, ...]], ...]
    """What works away from a plug, by its answer."""
    warns: bool
    """Something of what was told stops the build, or wants a word in writing."""
    told: str
    open: str
    open_points: int
    contents: tuple[Block, ...]
    """The second page."""
    priced: tuple[Block, ...]
    """The same with the price of each part before it."""
    words: tuple[Block, ...]
    """The third page."""


def shown(case: Case) -> Shown:
    """The pages of one revision. Nothing of it is private: it is made of what the copy is made of."""
    second = _read((*what_works_where(case), *living(case), *contents(case)))
    asked = tuple(open_questions(case))
    third = _read((*told(case), *asked, *own_parts(case), *safety(case)))
    open_points = sum(len(block.rows) for block in asked if isinstance(block, Table))
    stops, wanted = len(figures.stops(case)), len(case.stand.report.broken(Level.SIGN))
    return Shown(
        price=pounds_range(case.stand.report.price.gross, case.stand.catalogue.firm.currency),
        note=f"{words.VAT_IN} {van_in_price(case)}",
        counts=(
            words.travel(figures.value(case, figures.BELTS)),
            words.sleep(figures.value(case, figures.BERTHS)),
            words.label(van_words(case.stand.catalogue, case.stand.report, short=True)),
        ),
        facts=(*weight(case), *height(case)),
        away=words.away(works_of(case)[1]),
        warns=bool(stops or wanted),
        told=words.told_count(stops, wanted, *_told(case)),
        open=words.open_count(open_points),
        open_points=open_points,
        contents=second,
        priced=(*_prices(case), *second),
        words=third,
    )


def _read(blocks: Iterable[Block]) -> tuple[Block, ...]:
    """To be read, not to be ticked."""
    return tuple(_without_boxes(block) for block in blocks)


def _without_boxes(block: Block) -> Block:
    match block:
        case Items():
            return replace(block, boxes=False)
        case Heading(text=text):
            return replace(block, text=text.partition(":")[0])
        case _:
            return block


def _told(case: Case) -> tuple[int, int]:
    """How many cautions there are, and how many of them were accepted."""
    said = [
        finding
        for finding in case.stand.report.findings
        if finding.verdict is Verdict.BROKEN and finding.level is not Level.STOP
    ]
    return len(said), sum(finding.accepted for finding in said)


def _prices(case: Case) -> Iterator[Block]:
    """Every part that costs something, and the whole; each is rounded by itself."""
    report, firm = case.stand.report, case.stand.catalogue.firm
    yield Heading(text=words.PRICES_HEAD)
    rows = [(name, pounds(_gross(case, net), firm.currency)) for name, net in _parts(case) if net]
    total = ("", pounds_range(report.price.gross, firm.currency))
    yield Table(
        columns=(Column(head="", share=4), Column(head=words.PRICE, right=True)),
        rows=(*rows, total),
        strong=frozenset({len(rows)}),
    )
    if report.undecided:
        yield Paragraph(text="What is still to be chosen is in the range, and in no line above it.")


def _parts(case: Case) -> Iterator[tuple[str, float]]:
    """Name and net price: the van where the house supplies it, what was chosen, work that was undone."""
    catalogue, spec, report = case.stand.catalogue, case.stand.spec, case.stand.report
    van = catalogue.options[report.van].van if report.van in catalogue.options and report.van else None
    if van is not None and report.price.van_included is Truth.YES:
        yield van_words(catalogue, report), van.price_net_supplied_pence
    for choice in spec.choices:
        option = catalogue.options.get(choice.option)
        if option is not None and option.van is None:
            yield part_name(option, choice), option.price_net_pence * choice.count
    yield from ((work.words, work.net_pence) for work in spec.undone)


def _gross(case: Case, net_pence: float) -> int:
    return round(net_pence * (1 + case.stand.catalogue.firm.vat_percent / _HUNDRED))
