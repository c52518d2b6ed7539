"""What ``fix FILE THING`` is to reach: which findings to clear, or which option to let in."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Finding
from specbuilder.model.ids import LedgerId, RuleId
from specbuilder.model.kinds import Level, OptionState, Verdict
from specbuilder.model.report import Report
from specbuilder.model.ways import ClearFindings, Goal, LetIn
from specbuilder.wording.findings import finding_head
from specbuilder.wording.names import ledger_name, option_name
from specbuilder.wording.readings import silent_line
from specbuilder.wording.ways import nothing_to_mend

from .output import Exit, StopError
from .things import (
    CustomerThing,
    GroupThing,
    LedgerThing,
    LineThing,
    NoteThing,
    OptionThing,
    RuleThing,
    Unclear,
    VanThing,
    thing,
)

_MENDED = (Level.STOP, Level.SIGN)


def goal_of(catalogue: Catalogue, report: Report, text: str | None) -> Goal | str:
    """The goal, or the sentence that says why nothing need be done.

    Raises:
        StopError: if nothing or more than one thing is called so, or nothing of the kind can be mended.
    """
    if text is None:
        return _clearing(report.broken(*_MENDED)) or nothing_to_mend()
    meant = thing(catalogue, text)
    match meant:
        case Unclear(words):
            raise StopError(Exit.UNUSABLE, words)
        case OptionThing():
            return _of_option(catalogue, report, meant)
        case RuleThing(rule):
            return _of_rule(catalogue, report, rule)
        case LedgerThing(ledger):
            return _of_ledger(catalogue, report, ledger)
        case GroupThing() | LineThing() | VanThing() | CustomerThing() | NoteThing():
            words = f"{text} can be answered, not mended: name an option, a ledger, or a rule in brackets from check."
            raise StopError(Exit.UNUSABLE, words)
        case _:
            assert_never(meant)


def asked_findings(report: Report, goal: Goal) -> tuple[Finding, ...]:
    """The findings that are to be cleared, worst first."""
    match goal:
        case ClearFindings(rules=rules):
            return tuple(finding for finding in report.findings if finding.rule in rules)
        case LetIn():
            return ()
        case _:
            assert_never(goal)


def _of_option(catalogue: Catalogue, report: Report, meant: OptionThing) -> Goal | str:
    status, name = report.options[meant.option], option_name(catalogue, meant.option)
    if report.spec.has(meant.option):
        broken = tuple(finding for finding in report.broken(*_MENDED) if finding.rule in status.clashes)
        return _clearing(broken) or f"{name} is in and clashes with nothing."
    if status.state is OptionState.BLOCKED:
        return LetIn(option=meant.option, place=meant.place)
    return f"Nothing is in the way of {name}: set takes it."


def _of_rule(catalogue: Catalogue, report: Report, rule: RuleId) -> Goal | str:
    finding = next((finding for finding in report.findings if finding.rule == rule), None)
    if finding is None:
        return f"Nothing can be said of {rule}: it is {silent_line()}."
    if finding.verdict is Verdict.BROKEN and not finding.accepted:
        return ClearFindings(rules=(rule,))
    return f"Nothing to mend: {finding_head(catalogue, report, finding)}"


def _of_ledger(catalogue: Catalogue, report: Report, ledger: LedgerId) -> Goal | str:
    broken = tuple(finding for finding in report.broken(*_MENDED) if finding.reading == ledger)
    return _clearing(broken) or f"{ledger_name(catalogue, ledger)}: nothing is broken there."


def _clearing(findings: tuple[Finding, ...]) -> Goal | None:
    return ClearFindings(rules=tuple(finding.rule for finding in findings)) if findings else None
