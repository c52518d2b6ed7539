"""How a line of the brief or of the job state is answered by keys."""

from __future__ import annotations

from specbuilder.model.brief import BriefLine
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Finding
from specbuilder.model.ids import GroupId
from specbuilder.model.kinds import AnswerType, Level, Verdict
from specbuilder.model.report import Report
from specbuilder.tui.entry import LISTED, NUMBER, SIGNED, WHOLE, Entry
from specbuilder.tui.items import Item, OnAnswer, OnGroup
from specbuilder.wording.hints import (
    at_once,
    digits_begin,
    forget_it,
    go_on_typing,
    next_line,
    number_begins,
    take_it,
    type_anew,
    type_it,
)
from specbuilder.wording.typed import below_nought, forgets, one_digit


def letters_for(known: BriefLine) -> frozenset[str]:
    """Characters an answer to this line is typed with."""
    match known.type:
        case AnswerType.ONE_OF:
            return WHOLE
        case AnswerType.LIST | AnswerType.AGES:
            return LISTED
        case AnswerType.WHOLE | AnswerType.DECIMAL:
            return SIGNED if below_nought(known) else NUMBER


def digits_for(known: BriefLine, half_typed: bool) -> str:
    """What a digit does on this line, for the hint line."""
    if half_typed:
        return type_anew()
    if not one_digit(known):
        return number_begins() if below_nought(known) else digits_begin()
    if known.type is AnswerType.ONE_OF:
        return at_once(1, len(known.values))
    return at_once(int(known.least), int(known.most))


def digits_for_group(catalogue: Catalogue, group: GroupId) -> str:
    """What a digit does on a line that a group answers."""
    return at_once(1, len(catalogue.options_of(group)))


def enter_for(report: Report, known: BriefLine, half_typed: bool) -> str:
    """What Enter does on this line, for the hint line; empty where it does nothing."""
    if half_typed:
        return go_on_typing()
    if report.spec.answers.get(known.key) is not None:
        return next_line()
    if known.key in report.facts.assumed and report.facts.get(known.key) is not None:
        return take_it()
    return "" if one_digit(known) else type_it()


def enter_typing(catalogue: Catalogue, item: Item | None, entry: Entry | None) -> str:
    """What Enter does with what is being typed: a minus alone makes an answer not known again."""
    if entry is not None and isinstance(item, OnAnswer) and forgets(catalogue.brief[item.key], entry.text):
        return forget_it()
    return take_it()


def broken_about(report: Report, item: Item | None) -> Finding | None:
    """The first thing that is broken at STOP or SIGN about a group or an answer."""
    broken = [f for f in report.findings if f.verdict is Verdict.BROKEN and f.level is not Level.NOTE]
    match item:
        case OnGroup(group):
            return next((f for f in broken if f.rule in report.groups[group].clashes), None)
        case OnAnswer(key):
            return next((f for f in broken if key in f.keys), None)
        case _:
            return None


def is_unknown(report: Report, item: Item) -> bool:
    """True of a line of the brief that nobody has answered."""
    match item:
        case OnAnswer(key):
            return key in report.unknown
        case OnGroup(group):
            return not report.groups[group].decided
        case _:
            return False
