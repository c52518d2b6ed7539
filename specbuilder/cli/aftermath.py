"""What ``set`` says of what it broke, and of the way out that ``fix`` would offer first."""

from __future__ import annotations

import time
from collections.abc import Iterator

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, Take
from specbuilder.model.kinds import Level, Pick, Step
from specbuilder.model.report import Report
from specbuilder.model.ways import ClearFindings, RankBy
from specbuilder.session.evaluate import evaluate
from specbuilder.session.state import Session
from specbuilder.wording.findings import now_broken
from specbuilder.wording.plain import ended
from specbuilder.wording.ways import first_offer, more_in_fix

_SECONDS = 1.0
"""No longer than this is looked for a way out that nobody asked for."""


def aftermath(catalogue: Catalogue, session: Session, edits: tuple[Edit, ...]) -> tuple[str, ...]:
    """What the last edits broke at STOP or SIGN; behind another base van or roof the first way out as well."""
    if not edits:
        return ()
    before = evaluate(catalogue, session.past[-len(edits)].before)
    after = evaluate(catalogue, session.spec)
    broken = now_broken(catalogue, before, after)
    if not broken:
        return ()
    lines = (f"{ended(broken)} {more_in_fix()}",)
    if any(_is_switch(catalogue, edit) for edit in edits):
        return (*lines, *_offers(catalogue, before, after))
    return lines


def _is_switch(catalogue: Catalogue, edit: Edit) -> bool:
    """Whether it takes a base van or a roof."""
    option = catalogue.options.get(edit.option) if isinstance(edit, Take) else None
    group = catalogue.groups[option.group] if option else None
    return group is not None and group.pick is Pick.ONE and group.step in (Step.BASE_VAN, Step.ROOF)


def _offers(catalogue: Catalogue, before: Report, after: Report) -> Iterator[str]:
    from specbuilder.session.ways_out import ways_out  # a search is loaded only where one is made

    was = {finding.rule for finding in before.broken(Level.STOP)}
    goal = ClearFindings(rules=tuple(f.rule for f in after.broken(Level.STOP) if f.rule not in was))
    end = time.monotonic() + _SECONDS
    if not goal.rules:
        return
    for found in ways_out(catalogue, after.spec, goal, RankBy.PRICE, 1, lambda: time.monotonic() > end):
        if found.ways:
            yield first_offer(catalogue, after.spec, goal, found.ways[0])
            return
