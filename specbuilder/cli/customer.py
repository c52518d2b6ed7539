"""``customer``: what the customer reads when the screen is turned round, one fact a line."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from specbuilder.documents.formats import spoken_blocks
from specbuilder.documents.sheets.customer.shown import Shown, shown
from specbuilder.model.stand import Stand
from specbuilder.session.life import state_on
from specbuilder.session.papers import case_of
from specbuilder.wording import customer_view as words
from specbuilder.wording.plain import ended, raised

from .answers import Answer
from .asjson_reading import customer_json


def customer(stand: Stand, today: date, *, prices: bool, json: bool) -> Answer:
    """The three pages, one behind the other, or as JSON. Nothing of it is private."""
    content, state = shown(case_of(stand, today)), state_on(stand.spec, today)
    stands = ended(words.stands(state, tried=False))
    blocks = (*(content.priced if prices else content.contents), *content.words)
    lines = (f"{words.YOUR_VAN}: {stands}", *_first(content), *spoken_blocks(blocks))
    return Answer((customer_json(stand, state, content, lines),) if json else lines)


def _first(content: Shown) -> Iterator[str]:
    """The page that is read from afar; it need not say on which page the rest stands."""
    yield ended(raised(f"{words.PRICE}: {content.price}, {content.note}"))
    yield ended(raised(" ".join(", ".join(content.counts).lower().split())))
    yield from (ended(f"{name}: {text}") for name, text in content.facts)
    for answer, names in content.away:
        yield ended(f"{words.AWAY.capitalize()}, {answer.lower()}: {', '.join(names)}")
    yield ended(f"{words.TOLD.capitalize()}: {words.without_page(content.told)}")
    yield ended(f"{words.OPEN.capitalize()}: {words.without_page(content.open)}")
