"""The customer's copy: the whole job on one to three pages, for the person who was not in the room.

Plain words, no code, nothing private: no cost, no margin, no note of the house, no other job.
"""

from __future__ import annotations

from dataclasses import replace

from specbuilder.documents.blocks import Paper, Running
from specbuilder.documents.sheets.running import running
from specbuilder.model.kinds import JobState
from specbuilder.model.papers import Case

from .contents import contents, not_included, what_is_different
from .days import changes
from .living import living, what_works_where
from .price import price_blocks
from .terms import signatures, terms
from .told import open_questions, own_parts, safety, told

_TITLES = {JobState.ORDERED: "Your order", JobState.CHANGED: "Your order", JobState.AS_BUILT: "What we built"}
_PARTS = (
    price_blocks,
    what_is_different,
    contents,
    not_included,
    what_works_where,
    living,
    told,
    safety,
    open_questions,
    own_parts,
    changes,
    terms,
    signatures,
)


def customer_copy(case: Case) -> Paper:
    """Quote, order or what was built, by the state of the job."""
    return Paper(
        name="customer",
        title=_TITLES.get(case.stand.spec.state, "Quote"),
        running=_running(case),
        blocks=tuple(block for part in _PARTS for block in part(case)),
    )


def _running(case: Case) -> Running:
    """As on every paper; but a quote that holds says what it is in its title and needs no banner."""
    every = running(case, private=False)
    holds = case.stand.spec.state is JobState.QUOTED and case.replaced_by is None
    return replace(every, banner="") if holds else every
