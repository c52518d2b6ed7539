"""Claims on the named places of the van: how often the fullest place is claimed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from specbuilder.model.catalogue import Option
from specbuilder.model.ids import Zone
from specbuilder.model.kinds import Place
from specbuilder.model.vans import Van

MOST_STEPS = 20_000
"""Above this many steps the least is no longer proven and the last proven number is given."""


@dataclass(frozen=True, slots=True)
class Claims:
    """What one way of a choice claims and gives back, zone by zone."""

    claims: tuple[tuple[Zone, int], ...] = ()
    frees: tuple[tuple[Zone, int], ...] = ()
    net: Mapping[Zone, int] = field(init=False, compare=False)
    """Claims less what is given back."""

    def __post_init__(self) -> None:
        net = dict(self.claims)
        for zone, times in self.frees:
            net[zone] = net.get(zone, 0) - times
        object.__setattr__(self, "net", net)


NO_CLAIMS = Claims()


def claims_at(option: Option, place: Place | None, count: int) -> Claims:
    """What an option claims at a place; ``@side`` stands for the place. Each of several claims again."""
    if not option.zones and not option.frees_zones:
        return NO_CLAIMS
    zones = Counter(Zone(z.replace("@side", f"@{place.value}")) if place else z for z in option.zones)
    return Claims(
        tuple((zone, times * count) for zone, times in zones.items()),
        tuple(Counter(option.frees_zones).items()),
    )


class Ways:
    """Several ways one thing may go, looked over once."""

    __slots__ = ("all", "claimable", "frees", "most", "zones")

    def __init__(self, ways: Iterable[Claims]) -> None:
        self.all = tuple(sorted(dict.fromkeys(ways), key=lambda way: len(way.claims)))
        """Without doubles, those that claim least first."""
        self.zones = frozenset(zone for way in self.all for zone in way.net)
        self.claimable = frozenset(zone for way in self.all for zone, _ in way.claims)
        nets = {zone: [way.net.get(zone, 0) for way in self.all] for zone in self.zones}
        self.most = {zone: max(net) for zone, net in nets.items()}
        self.frees = {zone: -min(net) for zone, net in nets.items() if min(net) < 0}

    def differs_in(self, zone: Zone) -> bool:
        """True when it depends on the way how often the zone is claimed, or whether it is at all."""
        return len({(way.net.get(zone, 0), any(z == zone for z, _ in way.claims)) for way in self.all}) > 1


def ways_of(option: Option) -> tuple[Claims, ...]:
    """What it may claim while its place is open."""
    return tuple(claims_at(option, place, 1) for place in option.places or (None,))


@dataclass(frozen=True, slots=True)
class Field:
    """All claims on one van: the settled ones, and for everything open the ways it may go."""

    taken: Mapping[Zone, int]
    """Claims of the van and of the settled choices, less what they give back."""
    claimed: frozenset[Zone]
    """Zones that some settled choice claims; others are nobody's quarrel."""
    open: tuple[Ways, ...]

    @property
    def most_by_zone(self) -> Mapping[Zone, int]:
        """The most each zone that can be claimed may come to."""
        total = {zone: self.taken.get(zone, 0) for zone in self.claimed.union(*(w.claimable for w in self.open))}
        for ways in self.open:
            for zone, times in ways.most.items():
                if zone in total:
                    total[zone] += times
        return total

    @property
    def most(self) -> int:
        """The most the fullest zone may come to; what is given back twice is no room to spare."""
        return max((0, *self.most_by_zone.values()))

    @property
    def least(self) -> int:
        """The least the fullest zone can come to over every way."""
        most = self.most
        frees = Counter[Zone]()
        for ways in self.open:
            frees.update(ways.frees)
        low = max((self.taken.get(zone, 0) - frees[zone] for zone in self.claimed), default=0)
        for limit in range(max(low, 0), most):
            if _Search(self, limit).possible():
                return limit
        return most


class _Search:
    """Whether everything open can go some way so that no claimed zone is claimed more than ``limit`` times."""

    def __init__(self, field_: Field, limit: int) -> None:
        self._ways = sorted(field_.open, key=lambda ways: len(ways.all))
        self._limit = limit
        self._taken = dict(field_.taken)
        self._claimed = dict.fromkeys(field_.claimed, 1)
        self._steps = 0
        self._later: list[Mapping[Zone, int]] = [{}]
        for ways in reversed(self._ways):
            frees = dict(self._later[-1])
            for zone, times in ways.frees.items():
                frees[zone] = frees.get(zone, 0) + times
            self._later.append(frees)
        self._later.reverse()

    def possible(self) -> bool:
        """True also when that could not be told within ``MOST_STEPS``: the limit is then the last proven number."""
        return self._fits(tuple(self._claimed), 0) and self._go(0)

    def _go(self, index: int) -> bool:
        self._steps += 1
        if index == len(self._ways) or self._steps > MOST_STEPS:
            return True
        ways = self._ways[index]
        for way in ways.all:
            self._move(way, 1)
            if self._fits(ways.zones, index + 1) and self._go(index + 1):
                return True
            self._move(way, -1)
        return False

    def _move(self, way: Claims, sign: int) -> None:
        for zone, times in way.net.items():
            self._taken[zone] = self._taken.get(zone, 0) + sign * times
        for zone, _ in way.claims:
            self._claimed[zone] = self._claimed.get(zone, 0) + sign

    def _fits(self, zones: Iterable[Zone], index: int) -> bool:
        later = self._later[index]
        for zone in zones:
            if self._claimed.get(zone, 0) > 0 and self._taken.get(zone, 0) - later.get(zone, 0) > self._limit:
                return False
        return True


def field_of(van: Van | None, settled: Sequence[Claims], ways: Iterable[Ways]) -> Field:
    """The claims on one van."""
    taken = dict(Counter(van.zones_taken)) if van else {}
    for way in settled:
        for zone, times in way.net.items():
            taken[zone] = taken.get(zone, 0) + times
    claimed = frozenset(zone for way in settled for zone, _ in way.claims)
    return Field(taken, claimed, tuple(ways))
