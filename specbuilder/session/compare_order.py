"""The order in which a comparison lists things: that of the walk, the same from whichever side one looks."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import TypeVar

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId
from specbuilder.model.kinds import Pick, Place

_LAST = 1_000_000
"""Behind everything that a catalogue knows."""
_PLACES = MappingProxyType({place: number for number, place in enumerate((None, *Place))})
_Key = TypeVar("_Key", bound=str)


class WalkOrder:
    """Ranks of the things of two catalogues. What only one of them knows stands where that one has it."""

    def __init__(self, before: Catalogue, after: Catalogue) -> None:
        self._catalogues = before, after
        self._groups = _ranks(before.groups, after.groups)
        self._options = _ranks(before.options, after.options)
        self._brief = _ranks(before.brief, after.brief)
        self._ledgers = _ranks(before.ledgers, after.ledgers)

    def option(self, option: OptionId) -> tuple[int, int, str]:
        """By group, then as the group lists it."""
        group = self.group_of(option)
        rank = _LAST if group is None else self._groups.get(group, _LAST)
        return rank, self._options.get(option, _LAST), option

    def answer(self, key: BriefKey) -> tuple[int, str]:
        """As the brief asks."""
        return self._brief.get(key, _LAST), key

    def ledger(self, ledger: LedgerId) -> tuple[int, str]:
        """As the catalogues list them."""
        return self._ledgers.get(ledger, _LAST), ledger

    def group_of(self, option: OptionId) -> GroupId | None:
        """The group of an option; of two the first of the walk, None when it has left both catalogues."""
        found = {c.options[option].group for c in self._catalogues if option in c.options}
        return min(found, key=lambda group: (self._groups.get(group, _LAST), group), default=None)

    def one_answer(self, group: GroupId) -> bool:
        """True when every catalogue that knows the group takes one answer there."""
        known = [c.groups[group] for c in self._catalogues if group in c.groups]
        return bool(known) and all(one.pick is Pick.ONE for one in known)


def place_rank(place: Place | None) -> int:
    """Left, right, rear; without a place first."""
    return _PLACES[place]


def _ranks(one: Iterable[_Key], other: Iterable[_Key]) -> Mapping[_Key, int]:
    """The places in both lists added, so that neither goes first; what stands in one alone counts twice there."""
    first = {key: number for number, key in enumerate(one)}
    second = {key: number for number, key in enumerate(other)}
    return {key: first.get(key, second.get(key, 0)) + second.get(key, first.get(key, 0)) for key in first | second}
