"""A chain of reasons as numbered lines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import OptionId
from specbuilder.model.report import Report

from . import ledger_detail, readings
from .brief import line_words
from .names import (
    choice_name,
    chosen_name,
    group_name,
    key_name,
    ledger_name,
    listed,
    option_name,
    short_name,
    tag_name,
    zone_name,
)
from .plain import lowered

NO_WAY = "no way to finish"
"""Of what is blocked by so much together that no few words tell it."""


def reasons(catalogue: Catalogue, report: Report, cause: Cause) -> tuple[str, ...]:
    """``1. you took Side galley, right`` ...: what it rests on first, the conclusion last.

    The sentence that ``reason_head`` gives is not repeated.
    """
    return tuple(line for line, _ in reasons_about(catalogue, report, cause))


def reasons_about(catalogue: Catalogue, report: Report, cause: Cause) -> tuple[tuple[str, Cause], ...]:
    """The same lines, each with the node of the chain it tells."""
    head = reason_head(catalogue, report, cause)
    told: dict[str, Cause] = {}
    for node in _from_below(cause):
        for line in _lines(catalogue, report, node):
            if line != f'"{head}"':
                told.setdefault(line, node)
    return tuple((f"{number}. {line}", node) for number, (line, node) in enumerate(told.items(), 1))


def reason_head(catalogue: Catalogue, report: Report, cause: Cause) -> str:
    """The sentence the customer hears, of the first rule or need in the chain; empty when none takes part."""
    for node in _from_above(cause):
        if because := _because(catalogue, node):
            return because
    return ""


def _because(catalogue: Catalogue, node: Cause) -> str:
    if node.rule is not None:
        rule = catalogue.rules.get(node.rule)
        return rule.because if rule else ""
    if node.kind is CauseKind.NEEDS and node.option is not None:
        option = catalogue.options.get(node.option)
        return option.needs_because if option else ""
    return ""


def first_taken(catalogue: Catalogue, report: Report, cause: Cause) -> str:
    """``First taken: Side galley, right.`` when two choices or more take part, else empty."""
    nodes = _from_above(cause)
    return first_of(catalogue, report, [n.option for n in nodes if n.kind is CauseKind.CHOICE and n.option])


def first_of(catalogue: Catalogue, report: Report, options: Sequence[OptionId]) -> str:
    """``First taken: Side galley, right.`` when two choices or more are among these, else empty."""
    taken = [choice for choice in report.spec.choices if choice.option in options]
    return f"First taken: {choice_name(catalogue, taken[0])}." if len(taken) > 1 else ""


def culprit(catalogue: Catalogue, cause: Cause, option: OptionId, width: int = 200) -> str:
    """The main thing in the way of ``option``, in a few words: ``not with Side galley``, ``brief: gas``."""
    nodes = tuple(_from_above(cause))
    for node in nodes:
        match node.kind:
            case CauseKind.FITS:
                return "made for another van"
            case CauseKind.LEDGER:
                return f"clash: {_short(catalogue, node)}"
            case CauseKind.ZONE:
                taken = _taken(nodes, option)
                return _with_name(catalogue, "place: ", taken, width) if taken else "its place is taken"
            case _:
                continue
    if taken := _taken(nodes, option):
        return _with_name(catalogue, "not with ", taken, width)
    for node in nodes:
        if node.kind is CauseKind.ANSWER and node.key is not None:
            return f"brief: {key_name(catalogue, node.key)}"
        if node.kind is CauseKind.VAN:
            return "not in this van"
        if node.kind is CauseKind.NOTHING_GIVES and node.tag is not None:
            return f"needs {tag_name(node.tag)}"
    return NO_WAY


def _with_name(catalogue: Catalogue, words: str, option: OptionId, width: int) -> str:
    return words + short_name(catalogue, option, width - len(words))


def source_of(catalogue: Catalogue, cause: Cause, option: OptionId, width: int = 200) -> str:
    """From what an option follows, in a few words: a choice, an answer of the brief or the van; empty when unclear."""
    nodes = tuple(_from_above(cause))
    if taken := _taken(nodes, option):
        return short_name(catalogue, taken, width)
    for node in nodes:
        if node.kind is CauseKind.ANSWER and node.key is not None:
            return f"brief: {key_name(catalogue, node.key)}"
        if node.kind is CauseKind.VAN:
            return "the van"
    return ""


def _taken(nodes: tuple[Cause, ...], option: OptionId | None) -> OptionId | None:
    """The choice nearest to the conclusion that is not the option itself."""
    return next((n.option for n in nodes if n.kind is CauseKind.CHOICE and n.option not in (None, option)), None)


def _short(catalogue: Catalogue, node: Cause) -> str:
    known = catalogue.ledgers.get(node.ledger) if node.ledger else None
    return lowered(known.short) if known else "a limit"


def _from_above(cause: Cause) -> Iterator[Cause]:
    """Breadth first: what stands nearest to the conclusion comes first."""
    level = [cause]
    while level:
        yield from level
        level = [below for node in level for below in node.because]


def _from_below(cause: Cause) -> Iterator[Cause]:
    for below in cause.because:
        yield from _from_below(below)
    yield cause


def _lines(catalogue: Catalogue, report: Report, node: Cause) -> Iterator[str]:
    """One node; a ledger is followed by its largest entries and by what would go past its bound."""
    yield _line(catalogue, report, node)
    if node.kind is not CauseKind.LEDGER or node.ledger is None:
        return
    reading = report.readings.get(node.ledger)
    spec = catalogue.ledgers[node.ledger]
    for entry in reading.entries[: readings.LARGEST] if reading else ():
        yield f"of it, {ledger_detail.entry_line(catalogue, spec, entry)}"
    if node.option is not None and not report.spec.has(node.option):
        yield f"{option_name(catalogue, node.option)} would go past what may be"


def _line(catalogue: Catalogue, report: Report, node: Cause) -> str:
    """One node without what it rests on. A node lacking the part its kind speaks of is told in general words."""
    option = chosen_name(catalogue, report.spec, node.option) if node.option else "this"
    match node.kind:
        case CauseKind.CHOICE:
            return _choice_line(catalogue, report, node, option)
        case CauseKind.ANSWER:
            return _answer_line(catalogue, report, node)
        case CauseKind.VAN:
            return f"the van is {option}" + (f": {tag_name(node.tag)}" if node.tag else "")
        case CauseKind.RULE:
            rule = catalogue.rules.get(node.rule) if node.rule else None
            return f'"{rule.because}"' if rule else "a rule stands against it"
        case CauseKind.NEEDS:
            return _needs_line(catalogue, node)
        case CauseKind.FITS:
            return f"{option} is not made for {_van(catalogue, report)}"
        case CauseKind.ONE_ANSWER:
            group = group_name(catalogue, node.group) if node.group else "this question"
            return f"{group} has one answer only"
        case CauseKind.GIVES:
            return f"{option} gives {tag_name(node.tag)}" if node.tag else f"{option} is in"
        case CauseKind.NOTHING_GIVES:
            return f"nothing else is left that gives {tag_name(node.tag)}" if node.tag else "nothing else is left"
        case CauseKind.LEDGER:
            return _ledger_line(catalogue, report, node)
        case CauseKind.ZONE:
            return f"one place for one thing: {zone_name(node.tag)}" if node.tag else "two things want the same place"
        case CauseKind.TOGETHER:
            return "together they leave no way to finish the build" if node.because else "no way to finish it has this"
        case _:
            assert_never(node.kind)


def _choice_line(catalogue: Catalogue, report: Report, node: Cause, option: str) -> str:
    choice = next((c for c in report.spec.choices if c.option == node.option and node.place in (None, c.place)), None)
    if choice is None:
        return f"if {option} is taken"
    name = choice_name(catalogue, choice)
    if choice.came_with:
        return f"{name} came with {listed(option_name(catalogue, o) for o in choice.came_with)}"
    return f"you took {name}" + (f", {choice.at[-5:]}" if choice.at else "")


def _answer_line(catalogue: Catalogue, report: Report, node: Cause) -> str:
    if node.key is None:
        return "an answer of the brief"
    return f"{key_name(catalogue, node.key)}: {line_words(catalogue, report, node.key)}"


def _needs_line(catalogue: Catalogue, node: Cause) -> str:
    option = catalogue.options.get(node.option) if node.option else None
    if option is None:
        return "a part needs another one"
    wanted = listed((tag_name(tag) for need in option.needs for tag in need.any_of), "or")
    needs = f"{option.name} needs {wanted}" if wanted else f"{option.name} needs more"
    return f'{needs}: "{option.needs_because}"' if option.needs_because else needs


def _ledger_line(catalogue: Catalogue, report: Report, node: Cause) -> str:
    if node.ledger is None:
        return "a limit is reached"
    name = ledger_name(catalogue, node.ledger)
    reading = report.readings.get(node.ledger)
    return f"{name}: {readings.reading_line(catalogue, reading)}" if reading else f"{name} is at its limit"


def _van(catalogue: Catalogue, report: Report) -> str:
    return option_name(catalogue, report.van) if report.van else "this van"
