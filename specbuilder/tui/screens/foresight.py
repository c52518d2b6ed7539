"""What would come of taking an option, looked at before anything is changed."""

from __future__ import annotations

from specbuilder.model.edits import Take
from specbuilder.model.findings import Finding
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Level, OptionState, Pick, Step
from specbuilder.model.report import Report

from .page import Host

SWITCHED = frozenset({Step.BASE_VAN, Step.ROOF})
"""Steps whose answers so much else rests on that another one is shown as a table first."""


def newly_broken(before: Report, after: Report) -> tuple[Finding, ...]:
    """What is broken at STOP or SIGN afterwards and was not before."""
    was = {finding.rule for finding in before.broken(Level.STOP, Level.SIGN)}
    return tuple(finding for finding in after.broken(Level.STOP, Level.SIGN) if finding.rule not in was)


def would_break(host: Host, option: OptionId, count: int = 1) -> tuple[Finding, ...]:
    """What would be broken at STOP or SIGN if this open option were taken so many times, and is not now."""
    report = host.report
    if report.options[option].state is not OptionState.OPEN or report.spec.has(option):
        return ()
    return newly_broken(host.editable, host.would_be(Take(option=option, count=count)))


def may_switch(host: Host, option: OptionId) -> bool:
    """True for another answer to a question about van or roof that has one."""
    catalogue, report = host.catalogue, host.report
    group = catalogue.groups[catalogue.options[option].group]
    one = group.pick is Pick.ONE and group.step in SWITCHED
    return one and not report.spec.has(option) and bool(report.groups[group.id].choices)


def switches(host: Host, option: OptionId) -> bool:
    """True where another van or roof does not go with all that is chosen."""
    if not may_switch(host, option):
        return False
    after = host.would_be(Take(option=option))
    return bool(newly_broken(host.editable, after)) or host.report.options[option].state is OptionState.BLOCKED
