"""A measured quantity, written once as data: a base, what each option adds, and the little that does not simply add."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from functools import lru_cache
from math import inf
from typing import TypeAlias, TypedDict

from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.ledger import Entry
from specbuilder.model.span import Span
from specbuilder.model.vans import Van

from .frame import Frame
from .prepared import Prepared, Settled
from .states import Fold, Folding, Joint, Slot

Amounts: TypeAlias = tuple[float, Joint]
"""What one of an option adds, and its part of the state."""


@dataclass(frozen=True, slots=True, eq=False)
class Part:
    """One number of an option that does not simply add to the value: ``of`` is None where it has none."""

    of: Callable[[Option, Van | None], float | None]
    fold: Fold
    neutral: float
    lacking: bool = False
    """Any other number than the neutral one says that a choice lacks a figure the measure needs."""


def summed(of: Callable[[Option, Van | None], float | None]) -> Part:
    """The sum over the choices."""
    return Part(of, Fold.SUM, 0)


def smallest(of: Callable[[Option, Van | None], float | None]) -> Part:
    """The least over the choices; infinite where none has it."""
    return Part(of, Fold.LEAST, inf)


def largest(of: Callable[[Option, Van | None], float | None], none: float = -inf) -> Part:
    """The most over the choices; ``none`` where none has it."""
    return Part(of, Fold.MOST, none)


def lacking(of: Callable[[Option], bool]) -> Part:
    """1 when a choice lacks a figure the measure needs, else 0; ``rest`` must then raise ``OutsideValidity``."""
    return Part(lambda option, _van: 1 if of(option) else None, Fold.MOST, 0, lacking=True)


def _no_entries(_frame: Frame) -> tuple[Entry, ...]:
    return ()


def _no_slots(_frame: Frame) -> tuple[Slot, ...]:
    return ()


def _nothing(_option: Option) -> float:
    return 0


def _no_rest(_joint: Joint, _frame: Frame) -> float | None:
    return 0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Measure:
    """value = ``final``(sum of ``base`` + sum of count * ``amount`` + ``rest``(folded ``parts``))."""

    base: Callable[[Frame], tuple[Entry, ...]] = _no_entries
    """Labelled lines that are no choice."""
    amount: Callable[[Option], float] = _nothing
    """What one of an option adds."""
    amount_in: Callable[[Option, Van], float] | None = None
    """The same where it differs from van to van: it goes before ``amount``, which then only says who takes part. The
    measure is ``by_van``."""
    parts: tuple[Part, ...] = ()
    rest: Callable[[Joint, Frame], float | None] = _no_rest
    """What the folded parts add; None: there is nothing to measure. It goes one way with each of its numbers.

    It may raise ``OutsideValidity`` where figures are missing or absurd: then nothing can be said.
    """
    rest_entry: Callable[[Span, Frame], Entry | None] | None = None
    """The line of ``rest``, or of what in it is no part of a choice's own line."""
    signs: Callable[[Joint, Frame], tuple[int, ...]] | None = None
    """For figures: +1 or -1 for each part that enters the value, 0 for one that does not: it makes their lines."""
    slots: Callable[[Frame], tuple[Slot, ...]] = _no_slots
    """What besides the choices enters the parts: the van, or an answer of the brief."""
    bent: bool = False
    """True when no part enters ``rest`` in proportion; a search then need not look whether one does."""
    final: Callable[[float, Frame], float] | None = None
    """Last step, growing with its number; lines are scaled by ``scale``."""
    scale: Callable[[Frame], float] | None = None
    needs_van: bool = False
    """True when base, rest, final or slots look at the van."""
    van_unseen: Callable[[Prepared], bool] | None = None
    """When it says so, no value of a reading looks at the van after all."""
    by_van: bool = False
    """True when amounts, parts or slots differ from van to van."""
    beside: tuple[Measure, ...] = ()
    """Measures of a few groups each, whose values add to this one; of them only parts, rest and its line count.

    Each is folded by itself, which keeps the states few. That is exact as long as no group takes part in two of them.
    """

    @property
    def folds(self) -> tuple[Fold, ...]:
        """How each part is folded."""
        return tuple(part.fold for part in self.parts)

    def told(self, joint: Joint, frame: Frame) -> float | None:
        """``rest``; None as well where nothing can be said."""
        try:
            return self.rest(joint, frame)
        except OutsideValidity:
            return None


@dataclass(frozen=True, slots=True, eq=False)
class Shares:
    """What every option of a catalogue adds to one measure, under one van where that matters."""

    measure: Measure
    van: Van | None
    folding: Folding
    neutral: Joint
    known: dict[OptionId, Amounts]
    """Only options that add something."""
    absurd: dict[OptionId, OutsideValidity]
    """Options of which nothing can be said: their figures are absurd."""
    lines: dict[tuple[OptionId, int, float], Entry]
    """Entries already made, by option, count and scale."""

    def of(self, option: Option) -> Amounts | None:
        """What one of an option that is not as the catalogue has it adds; None for nothing."""
        joint = tuple([p.neutral if (x := p.of(option, self.van)) is None else x for p in self.measure.parts])
        amount = self.amount(option)
        if joint == self.neutral:
            return (amount, self.neutral) if amount else None
        return amount, joint

    def amount(self, option: Option) -> float:
        """The plain amount of one of an option."""
        if self.measure.amount_in is None:
            return self.measure.amount(option)
        return self.measure.amount_in(option, self.van) if self.van is not None else 0.0

    def get(self, option: Option) -> Amounts:
        """What one of an option of the catalogue adds."""
        return self.known.get(option.id) or (0, self.neutral)

    def sound(self, options: Iterable[OptionId]) -> None:
        """Say that nothing can be said where one of these is absurd.

        Raises:
            OutsideValidity: one of them is.
        """
        if self.absurd:
            for option in options:
                if option in self.absurd:
                    raise self.absurd[option]

    def times(self, amounts: Amounts, count: int) -> Amounts:
        """So many of it: sums grow, leasts and mosts do not."""
        return (amounts[0] * count, self.folding.times(amounts[1], count)) if count != 1 else amounts

    def combine(self, one: Joint, other: Joint) -> Joint:
        """Two states folded into one."""
        return self.folding.combine(one, other)


def shares(measure: Measure, catalogue: Catalogue, van: Option | None) -> Shares:
    """What each option adds to a measure. A pure memo of the catalogue: worked out once."""
    if not measure.by_van:
        van = None
    shelf = _shelf(catalogue)
    key = measure, van.id if van else None
    found = shelf.get(key)
    if found is None:
        neutral = tuple(part.neutral for part in measure.parts)
        found = Shares(measure, van.van if van else None, Folding(measure.folds, neutral), neutral, {}, {}, {})
        for option in catalogue.options.values():
            if option.van is not None:
                continue
            try:
                amounts = found.of(option)
            except OutsideValidity as fault:
                found.absurd[option.id] = fault
                continue
            if amounts is not None:
                found.known[option.id] = amounts
        shelf[key] = found
    return found


def taking(prep: Prepared, share: Shares) -> list[Settled]:
    """The settled choices that take part in a measure. A memo of the situation."""
    found: list[Settled] | None = prep.taking.get(share)
    if found is None:
        known = share.known
        settled = prep.settled if known else prep.brought
        found = prep.taking[share] = [s for s in settled if s[0] in known or s[2] is not None]
    return found


def summands(measure: Measure, catalogue: Catalogue) -> tuple[Measure, ...]:
    """The measures whose values add up to a measure, each with the plain amounts of the groups that take part in it.

    A memo of the catalogue; a measure with nothing beside it is its own only summand.
    """
    if not measure.beside:
        return (measure,)
    shelf = _summands(catalogue)
    found = shelf.get(measure)
    if found is None:
        found = shelf[measure] = _split(measure, catalogue)
    return found


def _split(measure: Measure, catalogue: Catalogue) -> tuple[Measure, ...]:
    owner: dict[GroupId, int] = {}
    vans = [van.van for van in catalogue.vans] or [None]
    for option in catalogue.options.values():
        for at, one in enumerate(measure.beside):
            if any(part.of(option, vans[0]) not in (None, part.neutral) for part in one.parts):
                owner.setdefault(option.group, at)
    mine = [frozenset(g for g, at in owner.items() if at == n) for n in range(len(measure.beside))]
    rest = frozenset(catalogue.groups) - frozenset(owner)
    return (
        replace(measure, beside=(), **_amounts_of(measure, rest)),
        *(
            replace(one, needs_van=True, by_van=measure.by_van, **_amounts_of(measure, groups))
            for one, groups in zip(measure.beside, mine, strict=True)
        ),
    )


def _amounts_of(measure: Measure, groups: frozenset[GroupId]) -> _Amounting:
    """The plain amounts of a measure, of these groups only."""
    amount, amount_in = measure.amount, measure.amount_in
    return {
        "amount": lambda option: amount(option) if option.group in groups else 0.0,
        "amount_in": (lambda option, van: amount_in(option, van) if option.group in groups else 0.0)
        if amount_in is not None
        else None,
    }


class _Amounting(TypedDict):
    amount: Callable[[Option], float]
    amount_in: Callable[[Option, Van], float] | None


@lru_cache(maxsize=4)
def _summands(_catalogue: Catalogue) -> dict[Measure, tuple[Measure, ...]]:
    return {}


@lru_cache(maxsize=4)
def _shelf(_catalogue: Catalogue) -> dict[tuple[Measure, OptionId | None], Shares]:
    return {}
