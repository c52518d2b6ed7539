"""A question of the brief that a group of options answers."""

from __future__ import annotations

from collections.abc import Sequence

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId
from specbuilder.model.report import Report

from .brief import answer_words
from .names import listed, option_name
from .states import NOT_KNOWN


def group_answer(catalogue: Catalogue, report: Report, group: GroupId) -> str:
    """What was chosen, or ``not known yet``."""
    choices = report.groups[group].choices
    return listed(option_name(catalogue, c.option) for c in choices) if choices else NOT_KNOWN


def assumed_words(catalogue: Catalogue, report: Report, keys: Sequence[BriefKey]) -> str:
    """``assumed: steering on the right, licence B``: what is used until somebody says otherwise."""
    told = (answer_words(catalogue, catalogue.brief[key], report.facts.get(key)) for key in keys)
    return f"assumed: {', '.join(told)}"


def assumed_hint() -> str:
    """What Enter does on such a row."""
    return "Used until somebody says otherwise. Enter opens it, line by line."


def group_hint(catalogue: Catalogue, group: GroupId) -> str:
    """The numbered answers: ``1 We supply the van  2 Your own van, already registered``."""
    options = catalogue.options_of(group)
    return "  ".join(f"{number} {option.name}" for number, option in enumerate(options, 1))
