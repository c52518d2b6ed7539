"""The sheets: from a case to a paper made of blocks. One file or folder a sheet, and its line here.

A sheet is loaded when it is made: the list of papers is on the screen before.
"""

from __future__ import annotations

from specbuilder.documents.blocks import Paper
from specbuilder.model.kinds import JobState
from specbuilder.model.papers import Case

from .sheet import Sheet


def _customer(case: Case) -> Paper:
    from .customer import customer_copy

    return customer_copy(case)


def _change_order(case: Case) -> Paper:
    from .change_order import change_order_paper

    return change_order_paper(case)


def _workshop(case: Case) -> Paper:
    from .workshop import workshop_pack

    return workshop_pack(case)


def _handover(case: Case) -> Paper:
    from .handover import handover_pack

    return handover_pack(case)


def _colleague(case: Case) -> Paper:
    from .colleague import colleague_page

    return colleague_page(case)


_ALL = frozenset(JobState)
_TO_BUILD = frozenset({JobState.ORDERED, JobState.CHANGED})

SHEETS: tuple[Sheet, ...] = (
    Sheet(
        name="customer",
        title="Customer's copy",
        about="price, what is in it, what works where, what was told",
        make=_customer,
        states=_ALL,
        private=False,
    ),
    Sheet(
        name="workshop",
        title="Workshop pack",
        about="all the floor builds from, in build order",
        make=_workshop,
        states=_TO_BUILD,
        private=True,
    ),
    Sheet(
        name="handover",
        title="Hand-over pack",
        about="readings, certificates, the walk round on collection day",
        make=_handover,
        states=_TO_BUILD | {JobState.AS_BUILT},
        private=False,
    ),
    Sheet(
        name="colleague",
        title="Colleague's page",
        about="last decisions, promises, unknowns, next call",
        make=_colleague,
        states=_ALL,
        private=True,
    ),
    Sheet(
        name="change-order",
        title="Change order",
        about="what a change adds and takes away, what is already done, both signatures",
        make=_change_order,
        states=frozenset({JobState.DRAFT, JobState.QUOTED, JobState.CHANGED}),
        private=False,
        needs_change=True,
    ),
)
