"""Which part of a situation a ledger can see: while that part stays the same, so does everything said of the ledger.

An edit changes a few ledgers of many, so readings are remembered by what they rest on. A memo of pure functions: it
changes what an answer costs, never the answer.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable, Mapping
from functools import lru_cache
from typing import TypeVar

from specbuilder.calc import made
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BASE_VAN_GROUP, LedgerId, OptionId
from specbuilder.model.situation import Situation

_T = TypeVar("_T")
KEPT = 2000
"""Remembered answers for each catalogue; about forty belong to one spec."""


class Memory:
    """Answers by key, the least used forgotten first."""

    def __init__(self) -> None:
        self._kept: OrderedDict[Hashable, object] = OrderedDict()

    def recall(self, key: Hashable, work_out: Callable[[], _T]) -> _T:
        """The remembered answer, or the one worked out now."""
        if key in self._kept:
            self._kept.move_to_end(key)
            return self._kept[key]  # type: ignore[return-value]  # the key names the kind of answer
        answer = self._kept[key] = work_out()
        if len(self._kept) > KEPT:
            self._kept.popitem(last=False)
        return answer


@lru_cache(maxsize=4)
def memory_of(_catalogue: Catalogue) -> Memory:
    """The memory of a catalogue in use."""
    return Memory()


@lru_cache(maxsize=4)
def _touching(catalogue: Catalogue) -> Mapping[LedgerId, frozenset[OptionId]]:
    return {c.id: frozenset(o.id for o in catalogue.options.values() if c.touches(o)) for c in made(catalogue)}


class Relevance:
    """Keys of one situation, ledger by ledger."""

    def __init__(self, situation: Situation) -> None:
        self._touching = _touching(situation.catalogue)
        facts, memory = situation.facts, memory_of(situation.catalogue)
        vans = (situation.van,) if situation.van else situation.undecided.get(BASE_VAN_GROUP, ())
        common = (tuple(o.id for o in vans), tuple(facts.values.items()), facts.assumed, facts.weighed, facts.undone)
        self._common = memory.recall(common, object)
        self._placed = [(p.option.id, p.count, p.place, p.owner, p.own_part) for p in situation.placed]
        self._undecided = [(g, tuple(o.id for o in options)) for g, options in situation.undecided.items()]

    def of(self, ledger: LedgerId) -> Hashable:
        """What the ledger sees."""
        touching = self._touching[ledger]
        return (
            ledger,
            self._common,
            tuple(p for p in self._placed if p[0] in touching or p[4] is not None),  # a sheet may weigh something
            tuple(
                (group, len(live), tuple(o for o in live if o in touching))
                for group, live in self._undecided
                if not touching.isdisjoint(live)
            ),
        )
