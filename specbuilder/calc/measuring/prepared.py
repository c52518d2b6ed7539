"""A situation sorted for summing: what is settled, what may go several ways, and which base vans are left."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from types import MappingProxyType
from typing import TypeAlias

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import BASE_VAN_GROUP, GroupId, OptionId
from specbuilder.model.kinds import Owner, Pick
from specbuilder.model.own_parts import with_sheet
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.spec import OwnPart

from .states import Chain
from .zones import Ways

UNWEIGHED_FACTORS = (0.0, 2.0)
"""A customer's part nobody has weighed: from nothing to twice what the catalogue's own part weighs or draws."""

Settled: TypeAlias = tuple[OptionId, int, Option | None, Placed]
"""Id, count, the option as the customer brings it (None: as the catalogue has it), and the choice itself."""


@dataclass(frozen=True, slots=True, eq=False)
class Prepared:
    """A situation sorted for summing. Base vans are in none of the lists: their data enter as a van."""

    situation: Situation
    catalogue: Catalogue
    vans: tuple[Option, ...]
    """The base van, or all that may still be chosen."""
    settled: tuple[Settled, ...]
    brought: tuple[Settled, ...]
    """Those of the settled choices that are not as the catalogue has them."""
    unweighed: tuple[tuple[Placed, tuple[Option, ...]], ...]
    """Customer's parts whose mass or watts nobody knows, as they may turn out, least first."""
    groups: tuple[tuple[GroupId, tuple[Option, ...]], ...]
    """Undecided groups with their answers."""
    chains: dict[tuple[object, OptionId | None], Chain]
    """Merged states already worked out, by measure and van."""
    ways: dict[str, Mapping[str, Ways]]
    """What undecided groups may claim."""
    taking: dict[object, list[Settled]]
    """Settled choices that take part, by what they take part in."""

    @property
    def members(self) -> Mapping[GroupId, tuple[Option, ...]]:
        """The options of each group."""
        return _members(self.catalogue)

    def pick_one(self, group: GroupId) -> bool:
        """True when the group takes one answer."""
        return self.catalogue.groups[group].pick is Pick.ONE


@lru_cache(maxsize=4)
def _members(catalogue: Catalogue) -> Mapping[GroupId, tuple[Option, ...]]:
    return MappingProxyType({group: catalogue.options_of(group) for group in catalogue.groups})


def prepared(situation: Situation) -> Prepared:
    """The situation sorted; the same object for the same situation object while it is among the last few."""
    return _prepare(_Same(situation))


class _Same:
    """A situation as a key: the very same object, since its mappings have no hash."""

    __slots__ = ("situation",)

    def __init__(self, situation: Situation) -> None:
        self.situation = situation

    def __hash__(self) -> int:
        return id(self.situation)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other.situation is self.situation


@lru_cache(maxsize=4)
def _prepare(same: _Same) -> Prepared:
    situation = same.situation
    settled: list[Settled] = []
    unweighed: list[tuple[Placed, tuple[Option, ...]]] = []
    for placed in situation.placed:
        option = placed.option
        if option.van is not None:
            continue
        mine = as_brought(placed)
        ways = _ways(mine, placed.own_part) if placed.owner is Owner.CUSTOMER else ()
        if len(ways) > 1:
            unweighed.append((placed, ways))
        else:
            settled.append((option.id, placed.count, None if mine is option else mine, placed))
    undecided = situation.undecided
    return Prepared(
        situation=situation,
        catalogue=situation.catalogue,
        vans=(situation.van,) if situation.van else undecided.get(BASE_VAN_GROUP, ()),
        settled=tuple(settled),
        brought=tuple(choice for choice in settled if choice[2] is not None),
        unweighed=tuple(unweighed),
        groups=tuple((g, o) for g, o in undecided.items() if g != BASE_VAN_GROUP),
        chains={},
        ways={},
        taking={},
    )


def as_brought(placed: Placed) -> Option:
    """The option as the customer's sheet has it; mass and watts the sheet leaves open as in the catalogue.

    What else it leaves open of a battery or a door is not known: there the catalogue's own part says nothing.
    """
    option, sheet = placed.option, placed.own_part
    if sheet is not None and sheet.mass_kg is not None:
        option = weighing(option, sheet.mass_kg)
    if sheet is not None and sheet.watts_w is not None:
        option = drawing(option, sheet.watts_w)
    return with_sheet(option, sheet) if placed.owner is Owner.CUSTOMER else option


def _ways(option: Option, sheet: OwnPart | None) -> tuple[Option, ...]:
    """A customer's part as it may turn out; one way alone when mass and watts are known or there are none."""
    masses: list[float] = [option.mass_kg]
    if option.mass_kg and (sheet is None or sheet.mass_kg is None):
        masses = [option.mass_kg * factor for factor in UNWEIGHED_FACTORS]
    watts_w = option.power.watts_running
    watts = [watts_w]
    if watts_w and (sheet is None or (sheet.watts_w is None and sheet.day_wh is None)):
        watts = [watts_w * factor for factor in UNWEIGHED_FACTORS]
    return tuple(drawing(weighing(option, kg), w) for kg in masses for w in watts)


def drawing(option: Option, watts_w: float | None) -> Option:
    """The option with other watts while it runs; what draws nothing in the catalogue draws nothing."""
    known = option.power.watts_running
    if known is None or known == watts_w:
        return option
    return replace(option, power=replace(option.power, watts_running=watts_w))


def weighing(option: Option, mass_kg: float) -> Option:
    """The option with another mass, in kg; what of it is carried by the roof changes in proportion."""
    share = option.space.roof_mass_kg / option.mass_kg if option.mass_kg else 1.0
    roof_kg = mass_kg * share if option.space.roof_part else 0.0
    return replace(option, mass_kg=mass_kg, space=replace(option.space, roof_mass_kg=roof_kg))
