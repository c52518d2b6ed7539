"""What is still open, in the order it is walked."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId, RuleId
from specbuilder.model.kinds import STEPS, Level, Step
from specbuilder.model.report import Report

from .facts import open_lines
from .usual import usual_takes


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenThing:
    """One thing to decide, find out or mend. Exactly one of the ids is set; none for missing van data."""

    step: Step
    group: GroupId | None = None
    key: BriefKey | None = None
    rule: RuleId | None = None
    question: str | None = None


def open_things(catalogue: Catalogue, report: Report) -> tuple[OpenThing, ...]:
    """Unknown answers, undecided groups, broken findings that nobody accepted, and open questions."""
    things: list[OpenThing] = [OpenThing(step=Step.BRIEF, key=key) for key in report.unknown]
    if not report.spec.van_data.complete:
        things.append(OpenThing(step=Step.BASE_VAN))
    things += (OpenThing(step=catalogue.groups[g].step, group=g) for g in report.undecided)
    things += (OpenThing(step=f.step, rule=f.rule) for f in report.broken(Level.STOP, Level.SIGN))
    things += (OpenThing(step=Step.CHECK, question=q.text) for q in report.spec.questions)
    return tuple(sorted(things, key=lambda thing: STEPS.index(thing.step)))


__all__ = ["OpenThing", "open_lines", "open_things", "usual_takes"]
