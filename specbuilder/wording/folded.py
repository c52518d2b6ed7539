"""A group told in one row: what was chosen in it and how many answers are folded away."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import GroupId
from specbuilder.model.report import Report

from . import quantities
from .names import choice_name, group_name, listed
from .rows import RowWords
from .states import clash_count, group_state

_FEW = 2


def folded_words(catalogue: Catalogue, report: Report, group: GroupId) -> RowWords:
    """The cells of a folded group: ``Fridge: front door``, ``£648``, ``17 kg``, ``5 folded``."""
    status = report.groups[group]
    if not status.choices:
        return RowWords(
            state="",
            name=f"{group_name(catalogue, group)}: {group_state(catalogue, status)}",
            money="",
            mass="",
            note=f"{len(catalogue.options_of(group))} folded",
        )
    names = listed((choice_name(catalogue, c) for c in status.choices), most=_FEW)
    others = len(catalogue.options_of(group)) - len({c.option for c in status.choices})
    note = f"{others} folded"
    return RowWords(
        state="chosen",
        name=f"{group_name(catalogue, group)}: {names}",
        money=quantities.money(status.gross_added.least, catalogue.firm.currency),
        mass=quantities.kilograms(status.mass_added_kg.least),
        note=clash_count(len(status.clashes)) if status.clashes else note,
    )
