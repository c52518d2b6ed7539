"""One ledger or figure in full: what it comes to, what is told beside it, its entries, and what it stands on."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Sense, Verdict
from specbuilder.model.ledger import Entry, LedgerSpec, Outside, Reading

from . import quantities
from .names import group_name, key_name, lack_name, listed, option_name
from .plain import ended, lowered
from .readings import ESTIMATE, bare, is_estimate, reading_line, shown_value


@dataclass(frozen=True, slots=True)
class DetailLine:
    """One line of a ledger's detail, and the entry it tells, if it tells one."""

    text: str
    entry: Entry | None = None


def reading_detail(
    catalogue: Catalogue, reading: Reading, beside: tuple[Reading, ...] = (), notes: tuple[str, ...] = ()
) -> tuple[DetailLine, ...]:
    """Name, verdict, sum, bound, figures and notes beside it; then every entry; then formula, source, assumptions."""
    spec = catalogue.ledgers[reading.id]
    return (
        DetailLine(f"{spec.name}: {reading_line(catalogue, reading)}"),
        *map(DetailLine, _sum_and_bound(catalogue, reading)),
        *(DetailLine(beside_line(catalogue, one)) for one in beside if one.applies),
        *map(DetailLine, notes),
        *(DetailLine(entry_line(catalogue, spec, entry), entry) for entry in reading.entries),
        *map(DetailLine, _grounds(catalogue, reading)),
    )


def detail_texts(
    catalogue: Catalogue, reading: Reading, beside: tuple[Reading, ...] = (), notes: tuple[str, ...] = ()
) -> tuple[str, ...]:
    """The same as plain lines."""
    return tuple(line.text for line in reading_detail(catalogue, reading, beside, notes))


def _sum_and_bound(catalogue: Catalogue, reading: Reading) -> tuple[str, ...]:
    spec, currency = catalogue.ledgers[reading.id], catalogue.firm.currency
    lines: list[str] = []
    if reading.value is not None and reading.applies:
        lines.append(f"together {shown_value(spec, reading.value, currency)}")
    if reading.bound is not None:
        lines.append(
            f"{_sense_words(reading.sense)} {quantities.span(reading.bound, spec.unit, currency)}: {spec.bound}"
        )
    if reading.outside is not None:
        lines.append(outside_words(catalogue, reading.outside))
    return tuple(lines)


def _grounds(catalogue: Catalogue, reading: Reading) -> tuple[str, ...]:
    """On what it stands: formula, source, estimates, assumptions, and what is still open."""
    spec = catalogue.ledgers[reading.id]
    source = ended(f"Source: {spec.source}")
    lines = [f"Formula: {spec.formula}", ended(f"{source} Confidence: {spec.confidence.value}")]
    if is_estimate(catalogue, reading):
        lines.append(f"{ESTIMATE}: rests on catalogue figures that nobody has measured on this van.")
    if reading.assumed:
        lines.append(f"Assumed: {listed(key_name(catalogue, key) for key in reading.assumed)}.")
    if reading.lacks:
        lines.append(f"Still open: {listed(lack_name(catalogue, lack) for lack in reading.lacks)}.")
    return tuple(lines)


def beside_line(catalogue: Catalogue, reading: Reading) -> str:
    """``Nights without sun: 2.1 nights (ESTIMATE)``: a figure told beside a ledger.

    One that holds against a bound is told with its own amount, as it has no line of its own: ``11.7 V, holds: ...``.
    """
    spec, line = catalogue.ledgers[reading.id], reading_line(catalogue, reading)
    spare = reading.room is not None and reading.room.most > 0
    if reading.verdict is Verdict.HOLDS and reading.value is not None and spare:
        line = f"{quantities.span(reading.value, spec.unit, catalogue.firm.currency)}, {line}"
    return f"{spec.name}: {line}"


def outside_words(catalogue: Catalogue, outside: Outside) -> str:
    """Which number of the data is absurd or missing, whose it is, and what it must be."""
    given = not math.isnan(outside.value)
    told = f"is {quantities.as_written(outside.value)}, but must be {outside.needs}" if given else "is missing"
    what = f"{outside.quantity} {told}"
    if outside.option is None or (option := catalogue.options.get(outside.option)) is None:
        return ended(f"Nothing can be said: {what}")
    if outside.sheet:
        return ended(
            f"Nothing can be said: the customer's sheet of {lowered(option.name)} lacks {bare(outside.quantity)}"
        )
    where = f" ({option.origin.file}, line {option.origin.line})" if option.origin.file else ""
    return ended(f"Nothing can be said: of {lowered(option.name)} {what}{where}")


def entry_line(catalogue: Catalogue, spec: LedgerSpec, entry: Entry) -> str:
    """``Side galley: 92 kg``; an undecided group gives its range, an assumed entry says so."""
    amount = quantities.span(entry.amount, spec.unit, catalogue.firm.currency)
    if entry.group is not None:
        return f"undecided, {lowered(group_name(catalogue, entry.group))}: {amount}"
    name = option_name(catalogue, entry.option, count=entry.count) if entry.option else entry.label
    return f"{name}: {amount}, assumed" if entry.assumed else f"{name}: {amount}"


def _sense_words(sense: Sense) -> str:
    match sense:
        case Sense.AT_MOST:
            return "at most"
        case Sense.AT_LEAST:
            return "at least"
        case Sense.SHOWN:
            return "beside"
        case _:
            assert_never(sense)
