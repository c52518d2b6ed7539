"""A question of the brief that a group of options answers."""

from __future__ import annotations

from collections.abc import Sequence

from specbuilder.model.brief import BriefLine
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId
from specbuilder.model.kinds import AnswerType
from specbuilder.model.report import Report

from .brief import answer_words, value_word
from .names import listed, option_name
from .states import NOT_KNOWN
from .typed import one_digit


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


def group_hints(catalogue: Catalogue, group: GroupId) -> tuple[tuple[int, str], ...]:
    """The numbered answers: ``1 We supply the van``, ``2 Your own van, already registered``."""
    return tuple((n, f"{n} {option.name}") for n, option in enumerate(catalogue.options_of(group), 1))


def numbered_hints(catalogue: Catalogue, line: BriefLine) -> tuple[tuple[int, str], ...]:
    """The answers one digit gives: ``1 yes``, ``2 no``, or just the numbers; empty where more has to be typed."""
    if line.type in (AnswerType.ONE_OF, AnswerType.LIST):
        return tuple((n, f"{n} {value_word(line, value)}") for n, value in enumerate(line.values, 1))
    if one_digit(line):
        return tuple((n, f"{n}") for n in range(int(line.least), int(line.most) + 1))
    return ()
