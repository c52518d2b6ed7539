"""What the choices give, and what the undecided groups may still give: the ground on which rules are judged."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from specbuilder.model.ids import CUSTOMER_PART, GroupId, LedgerId, OptionId, Zone
from specbuilder.model.kinds import Owner
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Placed, Situation

from .clauses import tags_at
from .graph import tags_given


@dataclass(frozen=True, slots=True)
class Standing:
    """A situation with its capabilities looked up."""

    situation: Situation
    readings: Mapping[LedgerId, Reading]
    given: Mapping[str, tuple[OptionId, ...]]
    """Each capability that is given, with the choices that give it (the van among them), in the order taken."""
    may_give: Mapping[str, tuple[GroupId, ...]]
    """Each capability that an undecided group may still give."""
    may_come: Mapping[str, tuple[GroupId, ...]]
    """Each capability that an extra of a step may still bring while a question of that step is undecided."""
    chosen: frozenset[OptionId]
    may_choose: Mapping[OptionId, GroupId]
    """Answers that are still possible in undecided groups."""
    answered: Mapping[GroupId, int]
    """How many different options each group has."""
    claims: Mapping[Zone, tuple[int, tuple[OptionId, ...]]]
    """Zones that choices claim: how often after what is freed, the van's own claims counted, and by which choices."""


def stand(situation: Situation, readings: Mapping[LedgerId, Reading]) -> Standing:
    """Look the capabilities of a situation up."""
    given: dict[str, list[OptionId]] = {}
    answered: dict[GroupId, set[OptionId]] = {}
    for placed in situation.placed:
        answered.setdefault(placed.option.group, set()).add(placed.option.id)
        for tag in _tags(placed):
            if placed.option.id not in (seen := given.setdefault(tag, [])):
                seen.append(placed.option.id)
    may_give: dict[str, list[GroupId]] = {}
    may_choose: dict[OptionId, GroupId] = {}
    for group, options in situation.undecided.items():
        may_choose.update((o.id, group) for o in options)
        for tag in dict.fromkeys(t for o in options for t in tags_given(o)):
            may_give.setdefault(tag, []).append(group)
    return Standing(
        situation,
        readings,
        {tag: tuple(options) for tag, options in given.items()},
        {tag: tuple(groups) for tag, groups in may_give.items()},
        _may_come(situation),
        frozenset(p.option.id for p in situation.placed),
        may_choose,
        {group: len(options) for group, options in answered.items()},
        _claims(situation),
    )


def _may_come(situation: Situation) -> dict[str, tuple[GroupId, ...]]:
    groups = situation.catalogue.groups
    unfinished = {groups[group].step for group in situation.undecided}
    found: dict[str, list[GroupId]] = {}
    for option in situation.free:
        if groups[option.group].step in unfinished:
            for tag in tags_given(option):
                if option.group not in (seen := found.setdefault(tag, [])):
                    seen.append(option.group)
    return {tag: tuple(seen) for tag, seen in found.items()}


def swapped(standing: Standing, out: tuple[Placed, ...], coming: Placed) -> Standing:
    """The standing with some choices replaced by one; readings stay as they were."""
    gone = {p.option.id for p in out}
    given = dict(standing.given)
    for tag in {tag for p in out for tag in _tags(p)}:
        if left := tuple(o for o in given.get(tag, ()) if o not in gone):
            given[tag] = left
        else:
            given.pop(tag, None)
    for tag in _tags(coming):
        given[tag] = (*given.get(tag, ()), coming.option.id)
    placed = (*(p for p in standing.situation.placed if p not in out), coming)
    situation = replace(standing.situation, placed=placed)
    return replace(
        standing,
        situation=situation,
        given=given,
        chosen=(standing.chosen - gone) | {coming.option.id},
        claims=_claims(situation),
    )


def _tags(placed: Placed) -> Iterable[str]:
    tags = tags_at(placed.option, placed.place)
    if placed.owner is Owner.CUSTOMER:
        return (*tags, CUSTOMER_PART)
    return tags


def _claims(situation: Situation) -> dict[Zone, tuple[int, tuple[OptionId, ...]]]:
    """A zone that no choice claims is nobody's quarrel and is left out."""
    counted: dict[Zone, int] = {}
    by: dict[Zone, list[OptionId]] = {}
    for placed in situation.placed:
        if placed.option.zones:
            for zone in zones_at(placed.option.zones, placed.place.value if placed.place else None):
                counted[zone] = counted.get(zone, 0) + placed.count
                by.setdefault(zone, []).append(placed.option.id)
    for zone in situation.van_data.zones_taken if situation.van_data else ():
        if zone in counted:
            counted[zone] += 1
    for placed in situation.placed:
        for zone in placed.option.frees_zones:
            if zone in counted:
                counted[zone] -= 1
    return {zone: (count, tuple(dict.fromkeys(by[zone]))) for zone, count in counted.items()}


def zones_at(zones: tuple[Zone, ...], place: str | None) -> list[Zone]:
    """The zones claimed at a place; ``wall-floor@side`` becomes ``wall-floor@left`` there."""
    return [Zone(z.replace("@side", f"@{place}")) if place else z for z in zones]
