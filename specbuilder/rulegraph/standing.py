"""What the choices give, and what the undecided groups may still give: the ground on which rules are judged."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from specbuilder.model.ids import BASE_VAN_GROUP, CUSTOMER_PART, GroupId, LedgerId, OptionId, Zone
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
    chosen: frozenset[OptionId]
    may_choose: Mapping[OptionId, GroupId]
    """Answers that are still possible in undecided groups."""
    answered: Mapping[GroupId, int]
    """How many different options each group has."""


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
        frozenset(p.option.id for p in situation.placed),
        may_choose,
        {group: len(options) for group, options in answered.items()},
    )


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
    return replace(
        standing,
        situation=replace(standing.situation, placed=placed),
        given=given,
        chosen=(standing.chosen - gone) | {coming.option.id},
    )


def _tags(placed: Placed) -> Iterable[str]:
    tags = tags_at(placed.option, placed.place)
    if placed.owner is Owner.CUSTOMER:
        return (*tags, CUSTOMER_PART)
    return tags


def zone_claims(situation: Situation, zone: Zone) -> tuple[int, tuple[OptionId, ...]]:
    """How often a zone is claimed after what is freed, and the choices that claim it.

    The van's own claims count; a zone that no choice claims is nobody's quarrel and counts 0.
    """
    claims, by = 0, list[OptionId]()
    for placed in situation.placed:
        here = zones_at(placed.option.zones, placed.place.value if placed.place else None).count(zone)
        if here:
            claims += here * placed.count
            by.append(placed.option.id)
    if not by:
        return 0, ()
    van = situation.van_data
    claims += van.zones_taken.count(zone) if van else 0
    claims -= sum(p.option.frees_zones.count(zone) for p in situation.placed)
    return claims, tuple(by)


def zones_at(zones: tuple[Zone, ...], place: str | None) -> list[Zone]:
    """The zones claimed at a place; ``wall-floor@side`` becomes ``wall-floor@left`` there."""
    return [Zone(z.replace("@side", f"@{place}")) if place else z for z in zones]


def undecided_van(situation: Situation) -> bool:
    """True while the base van is not chosen."""
    return situation.van is None and BASE_VAN_GROUP in situation.undecided
