"""Claims on the named places of the van: how often the fullest place is claimed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from specbuilder.model.catalogue import Option, Van
from specbuilder.model.ids import Zone
from specbuilder.model.kinds import Place

MOST_STEPS = 20_000
"""Above this many steps the least is no longer proven and the last proven number is given."""


@dataclass(frozen=True, slots=True)
class Claims:
    """What one way of a choice claims and gives back, zone by zone."""

    claims: tuple[tuple[Zone, int], ...]
    frees: tuple[tuple[Zone, int], ...]

    @property
    def net(self) -> Counter[Zone]:
        """Claims less what is given back."""
        total = Counter(dict(self.claims))
        total.subtract(dict(self.frees))
        return total


NO_CLAIMS = Claims((), ())


def claims_at(option: Option, place: Place | None, count: int) -> Claims:
    """What an option claims at a place; ``@side`` stands for the place. Each of several claims again."""
    zones = Counter(Zone(z.replace("@side", f"@{place.value}")) if place else z for z in option.zones)
    return Claims(
        tuple((zone, times * count) for zone, times in zones.items()),
        tuple(Counter(option.frees_zones).items()),
    )


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
    open: tuple[tuple[Claims, ...], ...]

    @property
    def most_by_zone(self) -> Mapping[Zone, int]:
        """The most each zone that can be claimed may come to."""
        may = set(self.claimed)
        total = Counter(self.taken)
        for ways in self.open:
            nets = [way.net for way in ways]
            may.update(zone for way in ways for zone, _ in way.claims)
            for zone in {zone for net in nets for zone in net}:
                total[zone] += max(net[zone] for net in nets)
        return {zone: total[zone] for zone in may}

    @property
    def most(self) -> int:
        """The most the fullest zone may come to."""
        return max(self.most_by_zone.values(), default=0)

    @property
    def least(self) -> int:
        """The least the fullest zone can come to over every way."""
        low = max((self.taken.get(zone, 0) - self._may_free(zone) for zone in self.claimed), default=0)
        most = self.most
        for limit in range(max(low, 0), most):
            if _Search(self, limit).possible():
                return limit
        return most

    def _may_free(self, zone: Zone) -> int:
        return sum(max(0, -min(way.net[zone] for way in ways)) for ways in self.open)


class _Search:
    """Whether everything open can go some way so that no claimed zone is claimed more than ``limit`` times."""

    def __init__(self, field: Field, limit: int) -> None:
        self._ways = sorted(field.open, key=len)
        self._limit = limit
        self._taken = dict(field.taken)
        self._claimed = Counter(field.claimed)
        self._steps = 0
        self._later: list[Mapping[Zone, int]] = [{}]
        for ways in reversed(self._ways):
            frees: Counter[Zone] = Counter(self._later[-1])
            for zone in {zone for way in ways for zone, _ in way.frees}:
                frees[zone] += max(0, -min(way.net[zone] for way in ways))
            self._later.append(frees)
        self._later.reverse()

    def possible(self) -> bool:
        """True also when that could not be told within ``MOST_STEPS``: the limit is then the last proven number."""
        return self._fits(self._claimed, 0) and self._go(0)

    def _go(self, index: int) -> bool:
        if index == len(self._ways):
            return True
        self._steps += 1
        if self._steps > MOST_STEPS:
            return True
        ways = self._ways[index]
        zones = {zone for way in ways for zone, _ in (*way.claims, *way.frees)}
        for way in sorted(ways, key=lambda w: len(w.claims)):
            self._move(way, 1)
            if self._fits(zones, index + 1) and self._go(index + 1):
                return True
            self._move(way, -1)
        return False

    def _move(self, way: Claims, sign: int) -> None:
        for zone, times in way.claims:
            self._taken[zone] = self._taken.get(zone, 0) + sign * times
            self._claimed[zone] += sign
        for zone, times in way.frees:
            self._taken[zone] = self._taken.get(zone, 0) - sign * times

    def _fits(self, zones: Iterable[Zone], index: int) -> bool:
        later = self._later[index]
        return all(
            self._claimed[zone] <= 0 or self._taken.get(zone, 0) - later.get(zone, 0) <= self._limit for zone in zones
        )


def field_of(van: Van | None, settled: Sequence[Claims], ways: Iterable[tuple[Claims, ...]]) -> Field:
    """The claims on one van."""
    taken: Counter[Zone] = Counter(van.zones_taken if van else ())
    for way in settled:
        taken.update(dict(way.claims))
        taken.subtract(dict(way.frees))
    claimed = frozenset(zone for way in settled for zone, _ in way.claims)
    return Field(taken, claimed, tuple(ways))
