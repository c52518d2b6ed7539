"""The house usual: what this firm would propose for the undecided groups of a step."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue, Group
from specbuilder.model.edits import Take
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import OptionState, Pick, Step
from specbuilder.model.spec import Spec

from .situate import lay


def usual_takes(catalogue: Catalogue, spec: Spec, step: Step) -> tuple[Take, ...]:
    """What the house would take in this step, never over a choice.

    Pick one: the first usual that is not blocked. Pick any: every usual that is not blocked, only while nothing of the
    group is chosen.
    """
    standing = lay(catalogue, spec).stands
    takes: list[Take] = []
    for group in catalogue.groups_of(step):
        if any(catalogue.options[c.option].group == group.id for c in spec.choices if c.option in catalogue.options):
            continue
        takes += _of_group(
            group, [o for o in group.usual if standing[o].state in (OptionState.OPEN, OptionState.FOLLOWS)]
        )
    return tuple(takes)


def _of_group(group: Group, possible: list[OptionId]) -> list[Take]:
    return [Take(option=option) for option in (possible[:1] if group.pick is Pick.ONE else possible)]
