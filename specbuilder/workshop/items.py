"""The number of every part: written on its box and its shelf, so that it is the part's for life.

The first signed revision counts its choices as they were taken. From one signed revision to the next a part keeps its
number, what is new gets the next free one, and what left leaves a gap: its number is never given to anything else.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner, Place
from specbuilder.model.spec import Choice, Spec

Thing: TypeAlias = tuple[OptionId, Owner, Place | None]
"""What is one part on a shelf: of another owner it is another one, at another place it is the same one moved."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Gone:
    """A number that stands on a box and on no list any more."""

    item: int
    choice: Choice
    """As it was last built."""
    revision: int
    """The last one that had it."""


@dataclass(slots=True)
class _Numbers:
    """What was ever given, over the revisions so far."""

    ever: dict[Thing, int] = field(default_factory=dict)
    last: dict[int, tuple[Choice, int]] = field(default_factory=dict)
    """By number: the choice and the revision that last had it."""
    now: tuple[int, ...] = ()
    """Of the choices of the newest revision, in the order they were taken."""

    def add(self, spec: Spec) -> None:
        """The next revision."""
        staying = {thing_of(choice) for choice in spec.choices}
        found: list[int] = []
        for choice in spec.choices:
            item = self._item(choice, staying)
            self.last[item] = choice, spec.revision
            found.append(item)
        self.now = tuple(found)

    def _item(self, choice: Choice, staying: set[Thing]) -> int:
        """Its own number, that of the one it was before it moved, or the next free one."""
        thing = thing_of(choice)
        if thing not in self.ever:
            moved = next((old for old in self.ever if self._moves(old, thing) and old not in staying), None)
            self.ever[thing] = self.ever.pop(moved) if moved else max(self.last, default=0) + 1
        return self.ever[thing]

    def _moves(self, old: Thing, new: Thing) -> bool:
        """The same part, that stood in the newest revision somewhere else."""
        return old[:2] == new[:2] and self.ever[old] in self.now


def thing_of(choice: Choice) -> Thing:
    """What a choice puts on a shelf."""
    return choice.option, choice.owner, choice.place


def item_numbers(signed: Sequence[Spec], spec: Spec) -> tuple[int, ...]:
    """Of the choices of a revision, in the order they were taken, behind the signed ones before it, oldest first."""
    return _counted(signed, spec).now


def items_gone(signed: Sequence[Spec], spec: Spec) -> tuple[Gone, ...]:
    """What has a number from an earlier revision and is not in this one, by its number."""
    numbers = _counted(signed, spec)
    gone = sorted(item for item in numbers.last if item not in numbers.now)
    return tuple(Gone(item=item, choice=numbers.last[item][0], revision=numbers.last[item][1]) for item in gone)


def _counted(signed: Sequence[Spec], spec: Spec) -> _Numbers:
    numbers = _Numbers()
    for each in (*signed, spec):
        numbers.add(each)
    return numbers
