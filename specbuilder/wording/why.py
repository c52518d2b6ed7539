"""Titles and small sentences of the page that says why."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Finding
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Level, OptionState, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.report import Report

from .key_names import pressed
from .names import listed, option_name
from .plain import fitted
from .states import level_words, state_word, to_be_said, verdict_word

_LONGEST_NAME = 60


def why_title(catalogue: Catalogue, report: Report, option: OptionId) -> str:
    """``WHY Bench Three is blocked``; a choice that clashes is told as such."""
    status = report.options[option]
    name = fitted(option_name(catalogue, option), _LONGEST_NAME)
    if status.clashes and report.spec.has(option):
        return f"WHY {name} clashes"
    word = state_word(status.state)
    return f"WHY {name} {word}" if status.state is OptionState.FOLLOWS else f"WHY {name} is {word}"


def why_finding_title(catalogue: Catalogue, finding: Finding) -> str:
    """``WHY it is broken   STOP: cannot be signed``; what holds or is only said has no words of stopping."""
    word = verdict_word(finding.verdict, finding.accepted)
    if finding.verdict is Verdict.HOLDS:
        return f"WHY it {word}"
    if finding.verdict is Verdict.BROKEN and finding.level is Level.NOTE and not finding.accepted:
        return f"WHY: {to_be_said()}   {finding.level.value}: {level_words(finding.level)}"
    told = f"WHY it is {word}" if word in ("broken", "accepted") else f"WHY: {word}"
    return f"{told}   {finding.level.value}: {level_words(finding.level)}"


def offers_head() -> str:
    """Over what the house offers."""
    return "WHAT WE CAN DO"


def nothing_in_the_way(catalogue: Catalogue, report: Report, option: OptionId) -> str:
    """What is said of an option that is plainly open or chosen."""
    if report.spec.has(option):
        return (
            f"{option_name(catalogue, option)} was taken and clashes with nothing. "
            f"{pressed('undo')} takes the last thing out again."
        )
    return f"Nothing is in the way of {option_name(catalogue, option)}. Enter takes it."


def why_needs_nothing(catalogue: Catalogue, reading: Reading) -> str:
    """Said where why is asked of a ledger with which nothing is broken: ``Roof load holds: nothing to explain``."""
    name = catalogue.ledgers[reading.id].name
    if reading.verdict is Verdict.HOLDS:
        return f"{name}: it holds, nothing needs explaining"
    return f"{name}: no rule asks for more than stands here"


def nothing_broken_here() -> str:
    """Said where why is asked of a line with which nothing is broken."""
    return "Nothing is broken here"


def cannot_accept() -> str:
    """Said when something cannot be accepted in writing."""
    return "Only what is broken at SIGN or NOTE can be accepted in writing; a STOP cannot"


def reason_number(number: int, of: int) -> str:
    """Over one of several reasons; empty where there is one only."""
    return f"Reason {number} of {of}, enough by itself:" if of > 1 else ""


def perhaps_more_reasons() -> str:
    """Said when the search for reasons stopped before it had all."""
    return "There may be more reasons than these."


def asked_for(catalogue: Catalogue, report: Report, option: OptionId) -> str:
    """``You took it, 2031-04-14 10:31. With it came CO alarm.``; empty for what was not asked for."""
    taken = [choice for choice in report.spec.chosen(option) if not choice.came_with]
    if not taken:
        return ""
    when = listed(choice.at for choice in taken if choice.at)
    said = f"You took it, {when}." if when else "You took it."
    came = listed(option_name(catalogue, c.option) for c in report.spec.choices if option in c.came_with)
    return f"{said} With it came {came}." if came else said
