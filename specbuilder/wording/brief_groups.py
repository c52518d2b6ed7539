"""A question of the brief that a group of options answers."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import GroupId
from specbuilder.model.report import Report

from .names import listed, option_name
from .states import NOT_KNOWN


def group_answer(catalogue: Catalogue, report: Report, group: GroupId) -> str:
    """What was chosen, or ``not known yet``."""
    choices = report.groups[group].choices
    return listed(option_name(catalogue, c.option) for c in choices) if choices else NOT_KNOWN


def group_hint(catalogue: Catalogue, group: GroupId) -> str:
    """The numbered answers: ``1 We supply the van  2 Your own van, already registered``."""
    options = catalogue.options_of(group)
    return "  ".join(f"{number} {option.name}" for number, option in enumerate(options, 1))
