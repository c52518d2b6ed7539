"""The few words that only the screen turned round has; every sentence on it is one of the customer's copy."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from specbuilder.model.kinds import JobState
from specbuilder.model.span import Span

from .names import listed
from .plain import fitted, lowered
from .quantities import NO_NUMBER, number_text, span
from .works_where import FILLING, Works, WorksWhere

YOUR_VAN = "YOUR VAN"
VAT_IN = "VAT IN."
TOLD, OPEN, AWAY = "TOLD AND ACCEPTED", "STILL OPEN", "AWAY FROM A PLUG"
PRICE = "price"
PRICES_HEAD = "What each part costs, VAT included"
_STATES = {
    JobState.DRAFT: "draft, no offer yet",
    JobState.QUOTED: "quote, not signed",
    JobState.EXPIRED: "quote, has run out",
    JobState.ORDERED: "order, signed",
    JobState.CHANGED: "order, changed and signed",
    JobState.AS_BUILT: "as built",
}


def stands(state: JobState, *, tried: bool) -> str:
    """What it is that the customer reads: ``quote, not signed``."""
    return "only tried out, not kept" if tried else _STATES[state]


def travel(belts: Span | None) -> str:
    """``4 TRAVEL``."""
    return f"{_count(belts)} TRAVEL"


def sleep(berths: Span | None) -> str:
    """``4 SLEEP``."""
    return f"{_count(berths)} SLEEP"


def label(text: str) -> str:
    """The name of a line as it stands on the screen: ``YOU MAY STILL LOAD``."""
    return text.upper()


def away(lines: Iterable[WorksWhere]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """What works away from a plug, by its answer: ``("YES", ("fridge", "ceiling lights"))``."""
    told = [line for line in lines if FILLING not in line.names]
    answers = ((works, [_short(name) for line in told if line.away is works for name in line.names]) for works in Works)
    return tuple((works.value.upper(), tuple(names)) for works, names in answers if names)


def away_line(answer: str, names: Sequence[str], room: int) -> str:
    """``YES: fridge, ceiling lights, 2 more``, with as many names as there is room for."""
    for most in range(len(names), 0, -1):
        rest = f", {_number(len(names) - most)} more" if most < len(names) else ""
        line = f"{answer}: {', '.join(names[:most])}{rest}"
        if len(line) <= room:
            return line
    rest = f", {_number(len(names) - 1)} more" if len(names) > 1 else ""
    return f"{answer}: {fitted(names[0], room - len(answer) - 2 - len(rest))}{rest}"


def told_count(stops: int, wanted: int, told: int, accepted: int) -> str:
    """How much was told, and what of it waits; the sentences stand on the third page."""
    if stops:
        return f"it cannot be built as it stands: {_things(stops)}, see page 3"
    parts = [f"{_things(told)} told"] if told else ["nothing to be told"]
    parts += [f"{_number(accepted)} accepted"] if accepted else []
    parts += [f"{_number(wanted)} to be accepted in writing"] if wanted else []
    return f"{', '.join(parts)}{', see page 3' if told else ''}"


def open_count(count: int) -> str:
    """``4 questions, see page 3``."""
    if not count:
        return "nothing"
    return f"{_number(count)} question{'s' if count > 1 else ''}, see page 3"


def without_page(text: str) -> str:
    """Where everything stands below each other, no page is named."""
    return text.replace(", see page 3", "")


def page_words(page: int, pages: int, *, short: bool) -> str:
    """``page 1 of 3``."""
    return f"{'' if short else 'page '}{page} of {pages}"


def more_below() -> str:
    """The page is longer than the window."""
    return "Down more"


def next_page(*, short: int) -> str:
    """What Right does, the shorter the less room there is."""
    return ("-> next page", "-> next", "->")[short]


def prices_hint(shown: bool) -> str:
    """What plus does."""
    return "+ no prices" if shown else "+ prices"


def copy_hint(*, short: bool) -> str:
    """What p does."""
    return "p copy" if short else "p take a copy"


def leave_hint() -> str:
    """How the seller's screens come back: two keys, so that no slip does it."""
    return "Esc, then Enter: back"


def leave_asked() -> str:
    """After Escape."""
    return "Enter: back to the seller's screens. Any other key stays."


def copy_asked() -> str:
    """After p."""
    return "Enter: write your copy, PDF and text. Any other key: not now."


def copy_made(names: Iterable[str]) -> str:
    """Once it is written."""
    return f"Your copy is written: {listed(names)}"


def copy_begun() -> str:
    """While it is written."""
    return "Your copy is being written."


def copy_failed(why: str) -> str:
    """It could not be written; where stands on the seller's screens."""
    return f"Your copy could not be written: {why}."


def not_of_a_trial() -> str:
    """A what-if is no revision that could be taken along."""
    return "This is only tried out: keep it first, then take a copy."


def no_number_yet() -> str:
    """A job of which nothing was said has no number and no copy."""
    return "There is nothing to take along yet."


def _count(value: Span | None) -> str:
    return "? " if value is None else span(value, "", "").replace(NO_NUMBER, "?")


def _number(count: int) -> str:
    return number_text(count, "")


def _things(count: int) -> str:
    return f"{_number(count)} thing{'s' if count > 1 else ''}"


def _short(name: str) -> str:
    """The main part of a name: ``compressor fridge``."""
    return lowered(re.split("[,:]| with ", name)[0])
