"""A figure told beside a ledger that is no sum of its own: it is worked out from ledgers, sizes or tables."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BASE_VAN_GROUP, BriefKey, LedgerId
from specbuilder.model.kinds import Place, Sense, Verdict
from specbuilder.model.ledger import Entry, Lack, Reading
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span, hull
from specbuilder.model.vans import Van

from .calculation import Calculation
from .outcome import all_settings
from .prepared import prepared
from .unsaid import unsaid
from .verdicts import verdict_of

_DECIMALS = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What a figure says of one situation."""

    value: Span | None = None
    """None: nothing can be said yet, see ``lacks``; or there is nothing to measure."""
    bound: Span | None = None
    lacks: tuple[Lack, ...] = ()
    """While there are any, the value may still move."""
    assumed: tuple[BriefKey, ...] = ()
    applies: bool = True
    open_ended: bool = False
    """It may still turn out otherwise, or that there is nothing to measure: no verdict yet."""
    entries: tuple[Entry, ...] = ()


NOTHING = Found(applies=False)
"""There is nothing here to measure."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ToldFigure:
    """The figure; ``find`` is given its settings and raises ``OutsideValidity`` where data are missing or absurd."""

    id: LedgerId
    find: Callable[[Situation, Mapping[str, float]], Found]
    rests_on: tuple[Calculation, ...] = ()
    """What it is worked out from."""
    looks_at: Callable[[Option], bool] = lambda _option: False
    """What else of an option it looks at."""
    settings: tuple[str, ...] = ()
    gaps: Callable[[Situation], Iterable[Lack]] = lambda _situation: ()
    """What may bring another number where one is absurd or missing."""

    def touches(self, option: Option) -> bool:
        """True when the option itself changes value or bound."""
        return self.looks_at(option) or any(one.touches(option) for one in self.rests_on)

    def amount(self, situation: Situation, option: Option, place: Place | None) -> float | None:
        """None: it is a figure."""
        return None

    def read(self, situation: Situation) -> Reading:
        """Value, bound and verdict for this situation."""
        sense = situation.catalogue.ledgers[self.id].sense
        try:
            found = self.find(situation, all_settings(situation.catalogue)[self.id])
        except OutsideValidity as fault:
            return unsaid(self.id, sense, fault, self.gaps(situation))
        value, bound = _rounded(found.value), _rounded(found.bound)
        return Reading(
            id=self.id,
            value=value,
            bound=bound,
            verdict=_verdict(sense, found, value, bound),
            lacks=found.lacks,
            entries=found.entries,
            applies=found.applies,
            assumed=found.assumed,
            sense=sense,
        )


def _rounded(span: Span | None) -> Span | None:
    return None if span is None else Span(round(span.least, _DECIMALS), round(span.most, _DECIMALS))


def _verdict(sense: Sense, found: Found, value: Span | None, bound: Span | None) -> Verdict:
    if not found.applies:
        return Verdict.HOLDS
    if value is None or found.open_ended:
        return Verdict.CANNOT_TELL
    if bound is None:
        return Verdict.CANNOT_TELL if found.lacks else Verdict.HOLDS
    return verdict_of(sense, value, bound)


def found_of(reading: Reading) -> Found:
    """What another calculation says, to work on with.

    Raises:
        OutsideValidity: it says nothing because of missing or absurd data.
    """
    if reading.outside is not None:
        raise OutsideValidity(reading.outside.quantity, reading.outside.value, reading.outside.needs)
    return Found(
        value=reading.value,
        bound=reading.bound,
        lacks=reading.lacks,
        assumed=reading.assumed,
        applies=reading.applies,
    )


def of_each_van(situation: Situation, find: Callable[[Situation, Van], Found]) -> Found:
    """What is said under each base van that may still be chosen, as one; where one says nothing, all do.

    Raises:
        OutsideValidity: one of them has missing or absurd data.
    """
    found = [find(one, van) for one, van in _with_each_van(situation)]
    if not found:
        return Found(lacks=(Lack(group=BASE_VAN_GROUP),))
    if len(found) == 1:
        return found[0]
    told = [one for one in found if one.applies]
    if not told:
        return found[0]
    widens = len(told) < len(found) or any((one.value, one.bound) != (told[0].value, told[0].bound) for one in told)
    lacks = merged(((Lack(group=BASE_VAN_GROUP),) if widens else ()), *(one.lacks for one in told))
    values, bounds = [one.value for one in told], [one.bound for one in told]
    return Found(
        value=hull(v for v in values if v is not None) if None not in values else None,
        bound=hull(b for b in bounds if b is not None) if None not in bounds else None,
        lacks=lacks,
        assumed=tuple(dict.fromkeys(key for one in told for key in one.assumed)),
    )


def merged(*lacks: Iterable[Lack]) -> tuple[Lack, ...]:
    """Each lack once, in order."""
    return tuple(dict.fromkeys(lack for some in lacks for lack in some))


def _with_each_van(situation: Situation) -> Iterator[tuple[Situation, Van]]:
    if situation.van is not None and situation.van.van is not None:
        yield situation, situation.van.van
        return
    undecided = MappingProxyType({g: o for g, o in situation.undecided.items() if g != BASE_VAN_GROUP})
    for option in prepared(situation).vans:
        if option.van is not None:
            placed = (Placed(option=option), *situation.placed)
            yield replace(situation, van=option, placed=placed, undecided=undecided), option.van
