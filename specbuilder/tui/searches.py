"""What the screens ask to be searched. Loaded when the first question is asked, never before the first frame."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Take
from specbuilder.model.findings import Reasons
from specbuilder.model.ids import OptionId
from specbuilder.model.spec import Spec
from specbuilder.model.ways import Aim, Goal, Proposal, RankBy, Switch, WaysOut

from .errands import Stop

MOST_WAYS = 3
"""So many ways out are looked for: one digit each, and all of them can be seen at once."""


def _ways_out(catalogue: Catalogue, spec: Spec, goal: Goal, rank_by: RankBy, stop: Stop) -> Iterator[WaysOut]:
    from specbuilder.session.ways_out import ways_out

    return ways_out(catalogue, spec, goal, rank_by, MOST_WAYS, stop)


def _finish(catalogue: Catalogue, spec: Spec, aim: Aim, stop: Stop) -> Proposal | None:
    from specbuilder.session.finish import finish

    return finish(catalogue, spec, aim, stop)


def _switch(catalogue: Catalogue, spec: Spec, take: Take, stop: Stop) -> Switch:
    from specbuilder.session.switch import switch

    return switch(catalogue, spec, take, stop)


def _reasons(catalogue: Catalogue, spec: Spec, option: OptionId, most: int) -> Reasons | None:
    from specbuilder.session.explain import reasons

    return reasons(catalogue, spec, option, most)


@dataclass(frozen=True, kw_only=True)
class Searches:
    """The searches of the session, one field each, so that a test can put its own in their place."""

    ways_out: Callable[[Catalogue, Spec, Goal, RankBy, Stop], Iterator[WaysOut]] = _ways_out
    finish: Callable[[Catalogue, Spec, Aim, Stop], Proposal | None] = _finish
    switch: Callable[[Catalogue, Spec, Take, Stop], Switch] = _switch
    reasons: Callable[[Catalogue, Spec, OptionId, int], Reasons | None] = _reasons
