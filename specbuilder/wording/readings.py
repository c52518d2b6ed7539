"""Ledgers and figures in words: one line, a bar, or every entry."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Level, Sense, Verdict
from specbuilder.model.ledger import LedgerSpec, Reading
from specbuilder.model.span import Span

from . import quantities
from .names import lack_name, listed

ESTIMATE = "ESTIMATE"
ESTIMATED = "e"
"""Beside a short name where there is no room for the word."""
LARGEST = 3
"""So many entries of a ledger are told in a chain of reasons; its own page has them all."""
BROKEN, NOTED = "broken", "note"
"""What is said of a bound that is not kept: at level NOTE it stops nothing and is not called broken."""
FAR_PAST = 1_000.0
"""So many times the bound, and more is drawn as that."""
_FEW = 2
"""So many lacking things are named in one line; the rest is counted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """What a bar needs: shares of the bound, and the words beside it."""

    short: str
    """At most 12 characters."""
    used: float | None
    """Least value over the bound, 0 or more; None: no bar can be drawn."""
    may: float | None
    """Most value over the bound; above 1 it reaches past the bound (or, for *at least*, well over it)."""
    amount: str
    """``13 of 8 kg``, ``1,374-1,432 of 1,550 kg``."""
    verdict: Verdict
    words: str
    """``holds: 218 kg spare``, ``cannot tell: barrier height``."""
    shorter: tuple[str, ...]
    """The same for less room, the longer ones first: ``needs barrier height``, ``cannot tell``."""
    level: str
    """``STOP`` or ``SIGN`` when broken at that level, else empty."""
    estimate: bool
    """Rests on an estimate: say so near the bar."""


def estimated_legend() -> str:
    """What the sign beside a short name means."""
    return f"{ESTIMATED}: ESTIMATE"


def bar_legends() -> tuple[str, ...]:
    """What the signs of a bar mean, the fullest first."""
    estimate = estimated_legend()
    return f"full: used   hollow: may come   {estimate}", f"full: used  hollow: may  {estimate}", estimate


def reading_line(catalogue: Catalogue, reading: Reading) -> str:
    """``holds: 218 kg spare``, ``broken: 13 of 8 kg, over by 5 kg``, ``note: 1 of 2 days, short by 1 day``.

    ``ESTIMATE`` follows where the figure rests on one.
    """
    return _marked(catalogue, reading, _words(catalogue, reading))


def reading_measure(catalogue: Catalogue, reading: Reading) -> str:
    """The line without its first word, where that stands beside it already: ``13 of 8 kg, over by 5 kg``."""
    return reading_line(catalogue, reading).removeprefix(f"{not_kept(catalogue, reading)}: ")


def is_noted(catalogue: Catalogue, reading: Reading) -> bool:
    """True where the bound is not kept and that is only to be said."""
    return reading.verdict is Verdict.BROKEN and catalogue.ledgers[reading.id].level is Level.NOTE


def not_kept(catalogue: Catalogue, reading: Reading) -> str:
    """``broken``; at level NOTE ``note``."""
    return NOTED if catalogue.ledgers[reading.id].level is Level.NOTE else BROKEN


def reading_bar(catalogue: Catalogue, reading: Reading) -> Bar:
    """Numbers and words for a bar."""
    spec = catalogue.ledgers[reading.id]
    used, may = _shares(reading)
    broken = reading.verdict is Verdict.BROKEN and not is_noted(catalogue, reading)
    return Bar(
        short=spec.short,
        used=used,
        may=may,
        amount=reading_amount(catalogue, reading),
        verdict=reading.verdict,
        words=_short_words(catalogue, reading),
        shorter=_shorter_words(catalogue, reading),
        level=spec.level.value if broken else "",
        estimate=is_estimate(catalogue, reading),
    )


def reading_amount(catalogue: Catalogue, reading: Reading) -> str:
    """The value against its bound: ``13 of 8 kg``, ``£17,532-24,024 of £21,000``; empty while nothing can be said."""
    if not reading.applies or reading.value is None:
        return ""
    spec, currency = catalogue.ledgers[reading.id], catalogue.firm.currency
    if reading.bound is None:
        if is_below_nought(spec, reading.value):
            return shown_value(spec, reading.value, currency)
        return quantities.span_tight(reading.value, spec.unit, currency)
    return _value_of_bound(reading.value, reading.bound, spec.unit, currency)


def is_below_nought(spec: LedgerSpec, value: Span) -> bool:
    """Whether it may be a minus for which the ledger has words of its own."""
    return bool(spec.below_nought) and value.least < 0


def shown_value(spec: LedgerSpec, value: Span, currency: str) -> str:
    """A value by itself; a minus in the words of its ledger: ``too much, over by 620 W``."""
    if not is_below_nought(spec, value):
        return quantities.span(value, spec.unit, currency)
    if value.most <= 0:
        return f"{spec.below_nought} {quantities.span(value * -1, spec.unit, currency)}"
    under, above = (quantities.quantity(end, spec.unit, currency) for end in (-value.least, value.most))
    return f"{spec.below_nought} up to {under}, or up to {above}"


def silent_line() -> str:
    """What is said of a ledger whose sum is not made."""
    return "not summed yet: nothing is known about it"


def is_estimate(catalogue: Catalogue, reading: Reading) -> bool:
    """Whether the figure rests on an estimate."""
    return reading.applies and catalogue.ledgers[reading.id].estimate


def _marked(catalogue: Catalogue, reading: Reading, words: str) -> str:
    """With ESTIMATE behind it when it shows a figure that rests on one."""
    shown = reading.value is not None and not (reading.verdict is Verdict.CANNOT_TELL and reading.lacks)
    return f"{words} ({ESTIMATE})" if shown and is_estimate(catalogue, reading) else words


def _short_words(catalogue: Catalogue, reading: Reading) -> str:
    """As few words as a bar has room for."""
    if reading.applies and reading.verdict is Verdict.BROKEN:
        return f"{not_kept(catalogue, reading)}: {reading_amount(catalogue, reading)}".rstrip(": ")
    if reading.applies and reading.verdict is Verdict.CANNOT_TELL:
        return _cannot_tell(catalogue, reading, asking="", most=1)
    return _words(catalogue, reading)


def _shorter_words(catalogue: Catalogue, reading: Reading) -> tuple[str, ...]:
    """Never a word that is cut: what is lacking first, at last the verdict alone."""
    if not reading.applies:
        return ()
    if reading.verdict is not Verdict.CANNOT_TELL:
        word = "holds" if reading.verdict is Verdict.HOLDS else not_kept(catalogue, reading)
        words = _short_words(catalogue, reading)
        if not words.startswith(f"{word}:"):
            return ()
        return tuple(dict.fromkeys((bare(words.removesuffix(" spare")), word))) if " of " in words else (word,)
    names = tuple(dict.fromkeys(lack_name(catalogue, lack) for lack in reading.lacks))
    more = f"{names[0]}, {len(names) - 1} more" if len(names) > 1 else ""
    needs = (f"cannot tell: {more}", f"needs {more}") if more else ()
    return (*needs, *(f"needs {name}" for name in names[:1]), "cannot tell")


def _words(catalogue: Catalogue, reading: Reading) -> str:
    if not reading.applies:
        return "nothing here to measure"
    match reading.verdict:
        case Verdict.HOLDS:
            return _holds(catalogue, reading)
        case Verdict.BROKEN:
            return _broken(catalogue, reading)
        case Verdict.CANNOT_TELL:
            return _cannot_tell(catalogue, reading, asking="needs ", most=_FEW)
        case _:
            assert_never(reading.verdict)


def _holds(catalogue: Catalogue, reading: Reading) -> str:
    spec, currency = catalogue.ledgers[reading.id], catalogue.firm.currency
    if reading.value is None:
        return "cannot tell"
    if reading.room is None:
        value = shown_value(spec, reading.value, currency)
        return value if reading.sense is Sense.SHOWN else f"{value}, no bound named"
    if reading.room.most <= 0:
        return f"holds: {reading_amount(catalogue, reading)}"
    if math.isinf(reading.room.least):
        return f"holds: {quantities.NO_END}"
    return f"holds: {quantities.span(reading.room, spec.unit, currency)} spare"


def _broken(catalogue: Catalogue, reading: Reading) -> str:
    spec, currency = catalogue.ledgers[reading.id], catalogue.firm.currency
    room = reading.room
    if room is None:
        return not_kept(catalogue, reading)
    missing = quantities.span(_fine(room * -1, spec.unit), spec.unit, currency)
    by = f"short by {missing}" if reading.sense is Sense.AT_LEAST else f"over by {missing}"
    return f"{not_kept(catalogue, reading)}: {reading_amount(catalogue, reading)}, {by}"


def _cannot_tell(catalogue: Catalogue, reading: Reading, *, asking: str, most: int) -> str:
    lacks = listed((lack_name(catalogue, lack) for lack in reading.lacks), most=most)
    if asking and reading.outside is not None and reading.outside.sheet:
        return f"cannot tell: {asking}{bare(reading.outside.quantity)}, from the customer's sheet"
    if lacks:
        return f"cannot tell: {asking}{lacks}"
    amount = reading_amount(catalogue, reading)
    return f"cannot tell: {amount}" if amount else "cannot tell"


def bare(quantity: str) -> str:
    """Without the unit that stands last: ``continuous amps of the battery A``."""
    words, _, last = quantity.rpartition(" ")
    return words if quantities.is_unit(last) else quantity


def _fine(missing: Span, unit: str) -> Span:
    """What is missing, never less than the smallest amount its unit is written with.

    A broken bound is over by something.
    """
    if unit == quantities.PENCE:
        return Span(max(missing.least, 100), max(missing.most, 100))
    smallest = quantities.smallest(unit)
    return Span(max(missing.least, smallest), max(missing.most, smallest))


def _value_of_bound(value: Span, bound: Span, unit: str, currency: str) -> str:
    """``13 of 8 kg``; different numbers never read the same."""
    if value.settled and bound.settled:
        one, other = quantities.tell_apart(value.least, bound.least, unit)
        if unit == quantities.PENCE:
            return f"{currency}{one} of {currency}{other}"
        if one != quantities.NO_END:
            return f"{one} of {other} {quantities.unit_text(unit, other)}".rstrip()
    if unit == quantities.PENCE:
        tight = quantities.span_tight(value, unit, currency)
        return f"{tight} of {quantities.span_tight(bound, unit, currency)}"
    numbers = quantities.span_number(value, unit)
    return f"{numbers} of {quantities.span_tight(bound, unit, currency)}"


def _shares(reading: Reading) -> tuple[float | None, float | None]:
    """Least and most value over the (least) bound."""
    if reading.value is None or reading.bound is None or not reading.applies:
        return None, None
    bound = reading.bound.least
    if bound <= 0:
        past = 2.0 if reading.value.most > bound else 1.0
        return (past if reading.value.least > bound else 0.0), past
    return _share(reading.value.least, bound), _share(reading.value.most, bound)


def _share(value: float, bound: float) -> float:
    """A part of the bound that a bar can be drawn of: what has no end is drawn as far past it."""
    return min(max(0.0, value / bound), FAR_PAST)


def worst_first(catalogue: Catalogue, readings: tuple[Reading, ...]) -> tuple[Reading, ...]:
    """Broken before cannot tell before holds; within each, STOP before SIGN before NOTE, then the fuller first."""
    verdicts = (Verdict.BROKEN, Verdict.CANNOT_TELL, Verdict.HOLDS)
    levels = tuple(Level)

    def key(reading: Reading) -> tuple[bool, int, int, float]:
        level = levels.index(catalogue.ledgers[reading.id].level)
        return not reading.applies, verdicts.index(reading.verdict), level, -_tightness(reading)

    return tuple(sorted(readings, key=key))


def _tightness(reading: Reading) -> float:
    """How much of the bound is used: 1 is just full."""
    room = reading.room
    if room is None or reading.bound is None or reading.bound.most == 0:
        return 0.0
    return 1 - room.least / abs(reading.bound.most)
