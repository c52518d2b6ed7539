"""A tally as a limit that a search can hold: what each option weighs in it, and how much room there is.

``value <= factor * bound - minus`` (or ``>=``, turned round) becomes ``sum of amounts <= room(state)``. The state folds
what does not simply add: the least allowance, the furthest reach, whether a roof lifts. What nobody knows yet counts at
its kindest end, so a limit that cannot be kept here cannot be kept whatever the answer will be.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from itertools import product
from math import floor, inf, isclose, isfinite

from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.calc.measuring.frame import Asked, Frame
from specbuilder.calc.measuring.measure import Amounts, Measure, Shares, shares, summands
from specbuilder.calc.measuring.outcome import base_span, settings_of
from specbuilder.calc.measuring.prepared import Prepared, prepared
from specbuilder.calc.measuring.states import Fold, Folding, Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.ids import OptionId
from specbuilder.model.rules import WithinBound
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span

from .doubts import is_doubted

_NO_BOUND = Measure()
"""Bounds at nought: of summands only the first meets the bound."""

HIGHEST = 10**12
"""Sums that go through a last step (tax, rounding) are looked for up to this number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """One limit under some base vans: the amounts of what is taken sum to ``room(van, state)`` at most."""

    vans: tuple[OptionId | None, ...]
    """The base vans it is for; ``(None,)``: it does not look at the van."""
    amounts: Mapping[OptionId, float]
    """What one of an option adds; options that add nothing are left out."""
    states: Mapping[OptionId, Joint]
    """Part of the state an option brings; options without one are left out."""
    folding: Folding
    starts: tuple[Joint, ...]
    """States before any choice; several while an answer is unknown: the kindest counts."""
    room: Callable[[OptionId | None, Joint], float]
    """How much the amounts may sum to; infinite where there is nothing to measure or nothing bounds it."""
    beside: tuple[Shape, ...] = ()
    """States that are followed apart, with no amounts of their own; their rooms, always finite, add to this one."""


def shapes_of(tally: Tally, atom: WithinBound, situation: Situation, asked: Asked) -> tuple[Shape, ...]:
    """The limit in the form a search can hold: one shape, or one for each set of base vans under which it differs.

    ``asked`` remembers what it rests on. There is none where nothing bounds it, while the answer that names its
    bound is open, and where the data are absurd.
    """
    try:
        return _shapes_of(tally, atom, situation, asked)
    except OutsideValidity:
        return ()  # nothing can be said of it, so it blocks nothing; its reading names the number


def _shapes_of(tally: Tally, atom: WithinBound, situation: Situation, asked: Asked) -> tuple[Shape, ...]:
    if is_doubted(situation.catalogue, tally.id):
        return ()
    if tally.bound is None or tally.unnamed(situation) or (tally.value.final is not None and not atom.within):
        return ()
    if tally.named_by is not None and not situation.facts.known(tally.named_by):
        return ()
    vans = tuple(van.id for van in situation.catalogue.vans)
    if not (tally.value.needs_van or tally.bound.needs_van):
        return (_shape(tally, tally.bound, atom, situation, asked, (None,)),)
    if tally.value.beside:
        return _alike([_spread(tally, atom, situation, asked, van) for van in vans])
    if not (tally.value.by_van or tally.bound.by_van):
        return (_shape(tally, tally.bound, atom, situation, asked, vans),)
    return _alike([_shape(tally, tally.bound, atom, situation, asked, (van,)) for van in vans])


def _spread(tally: Tally, atom: WithinBound, situation: Situation, asked: Asked, van: OptionId) -> Shape:
    """A limit whose value is a sum of measures, under one base van."""
    main, *others = summands(tally.value, situation.catalogue)
    assert tally.bound is not None, "a limit has a bound"
    shape = _shape(replace(tally, value=main), tally.bound, atom, situation, asked, (van,))
    plain = WithinBound(ledger=atom.ledger, within=atom.within)
    amounts, beside = dict(shape.amounts), []
    for one in others:
        more = _shape(replace(tally, value=one), _NO_BOUND, plain, situation, asked, (van,))
        amounts.update(more.amounts)  # no group takes part in two
        beside.append(replace(more, amounts={}))
    return replace(shape, amounts=amounts, beside=tuple(beside))


def _alike(shapes: list[Shape]) -> tuple[Shape, ...]:
    """One shape for all base vans between which nothing but the room differs."""
    found: list[Shape] = []
    for shape in shapes:
        for at, known in enumerate(found):
            if _outline(known) == _outline(shape):
                beside = zip(known.beside, shape.beside, strict=True)
                found[at] = replace(_together(known, shape), beside=tuple(_together(*two) for two in beside))
                break
        else:
            found.append(shape)
    return tuple(found)


def _outline(shape: Shape) -> tuple[object, ...]:
    return shape.amounts, shape.states, shape.starts, tuple(_outline(piece) for piece in shape.beside)


def _together(one: Shape, other: Shape) -> Shape:
    return replace(one, vans=(*one.vans, *other.vans), room=_joined(one, other))


def _joined(one: Shape, other: Shape) -> Callable[[OptionId | None, Joint], float]:
    return lambda van, joint: (one if van in one.vans else other).room(van, joint)


def _shape(
    tally: Tally,
    bound: Measure,
    atom: WithinBound,
    situation: Situation,
    asked: Asked,
    vans: tuple[OptionId | None, ...],
) -> Shape:
    prep = prepared(situation)
    settings = settings_of(prep, tally.id)
    options = situation.catalogue.options
    frames = {v: Frame(situation, asked, settings, options[v] if v is not None else None) for v in vans}
    sign = 1.0 if atom.within else -1.0
    of_value = _side(tally.value, prep, frames[vans[0]], sign)
    of_bound = _side(bound, prep, frames[vans[0]], -sign * atom.factor)
    neutral = (*of_value.neutral, *of_bound.neutral)
    split = len(of_value.neutral)

    # asked for every van in every state, so each is worked out once for all that it does not look at
    ends = cache(lambda van: _ends(tally.value, bound, frames[van]))
    rest = cache(lambda van, joint: tally.value.told(of_value.whole(joint), frames[van]))
    allowed = cache(lambda van, joint: bound.told(of_bound.whole(joint), frames[van]))

    def room(van: OptionId | None, joint: Joint) -> float:
        told = rest(van, joint[:split]), allowed(van, joint[split:])
        return _room(tally.value, atom, frames[van], ends(van), told)

    states = {
        o: (*of_value.states.get(o, of_value.neutral), *of_bound.states.get(o, of_bound.neutral))
        for o in (*of_value.states, *of_bound.states)
    }
    return Shape(
        vans=vans,
        amounts=_summed(of_value.amounts, of_bound.amounts),
        states=states,
        folding=Folding((*of_value.folds, *of_bound.folds), neutral),
        starts=tuple((*a, *b) for a, b in product(of_value.starts, of_bound.starts)),
        room=room,
    )


def _summed(one: Mapping[OptionId, float], other: Mapping[OptionId, float]) -> Mapping[OptionId, float]:
    both = {o: one.get(o, 0.0) + other.get(o, 0.0) for o in (*one, *other)}
    return {o: amount for o, amount in both.items() if amount}


@dataclass(frozen=True, slots=True)
class _Side:
    """One measure of a limit. Sums of a part that only adds to the value are amounts; the other parts are followed."""

    amounts: Mapping[OptionId, float]
    states: Mapping[OptionId, Joint]
    starts: tuple[Joint, ...]
    neutral: Joint
    folds: tuple[Fold, ...]
    kept: tuple[int, ...]
    """The parts that are followed, by their place in the measure."""
    parts: int

    def whole(self, joint: Joint) -> Joint:
        """A followed state with nought for the parts that became amounts."""
        full = [0.0] * self.parts
        for at, number in zip(self.kept, joint, strict=True):
            full[at] = number
        return tuple(full)


def _side(measure: Measure, prep: Prepared, frame: Frame, factor: float) -> _Side:
    share = shares(measure, prep.catalogue, frame.option)
    own, starts = _own(share, prep), _starts(measure, share, frame)
    slopes = {} if measure.bent else _slopes(measure, frame, starts, [joint for _, joint in own.values()])
    kept = tuple(at for at in range(len(measure.parts)) if at not in slopes)
    neutral = tuple(share.neutral[at] for at in kept)
    amounts: dict[OptionId, float] = {}
    states: dict[OptionId, Joint] = {}
    for option, (amount, joint) in own.items():
        if total := factor * (amount + sum(slope * joint[at] for at, slope in slopes.items())):
            amounts[option] = total
        if (part := tuple(joint[at] for at in kept)) != neutral:
            states[option] = part
    kept_starts = tuple(dict.fromkeys(tuple(start[at] for at in kept) for start in starts))
    folds = tuple(measure.folds[at] for at in kept)
    return _Side(amounts, states, kept_starts, neutral, folds, kept, len(measure.parts))


def _slopes(measure: Measure, frame: Frame, starts: Iterable[Joint], joints: Iterable[Joint]) -> Mapping[int, float]:
    """Parts that are sums and enter the value in proportion, wherever there is something to measure."""
    joints = list(joints)
    found: dict[int, float] = {}
    for at, fold in enumerate(measure.folds):
        ends = sum(min(joint[at], 0) for joint in joints), sum(abs(joint[at]) for joint in joints)
        if fold is not Fold.SUM or not any(ends) or any(start[at] for start in starts):
            continue
        slopes = list(_slopes_of(measure, frame, at, ends, [*starts, *joints]))
        if slopes and isfinite(slopes[0]) and all(isclose(slope, slopes[0], abs_tol=1e-12) for slope in slopes):
            found[at] = slopes[0]
    return found


def _slopes_of(
    measure: Measure, frame: Frame, at: int, ends: tuple[float, float], joints: Iterable[Joint]
) -> Iterator[float]:
    """How the value grows with one part from end to end, beside every number the other parts can take.

    Infinite where it does not grow in proportion.
    """
    least, most = ends
    others = [sorted({joint[i] for joint in joints}) if i != at else [0.0] for i in range(len(measure.parts))]
    for beside in product(*others):
        values = [measure.told((*beside[:at], x, *beside[at + 1 :]), frame) for x in (0.0, 1.0, least, most)]
        known = [value for value in values if value is not None]
        if known and len(known) < len(values):
            yield inf
        elif known:
            slope = known[1] - known[0]
            straight = all(isclose(known[i] - known[0], slope * end) for i, end in ((2, least), (3, most)))
            yield slope if straight else inf


def _own(share: Shares, prep: Prepared) -> Mapping[OptionId, Amounts]:
    """What one of each option adds; a customer's part by its own sheet, or from nothing while nobody has weighed it."""
    share.sound(share.absurd)
    found = dict(share.known)
    for option_id, _, own, _ in prep.brought:
        if own is not None:
            found[option_id] = share.of(own) or (0, share.neutral)
    for placed, variants in prep.unweighed:
        found[placed.option.id] = share.of(variants[0]) or (0, share.neutral)
    return found


def _starts(measure: Measure, share: Shares, frame: Frame) -> list[Joint]:
    slots = [slot.states for slot in measure.slots(frame)]
    return [share.folding.together((share.neutral, *ways)) for ways in product(*slots)]


def _ends(value: Measure, bound: Measure, frame: Frame) -> tuple[Span, Span] | None:
    """What the value and its bound are before any choice; None where nothing can be said of the van."""
    try:
        return base_span(value.base(frame)), base_span(bound.base(frame))
    except OutsideValidity:
        return None


def _room(
    value: Measure,
    atom: WithinBound,
    frame: Frame,
    ends: tuple[Span, Span] | None,
    told: tuple[float | None, float | None],
) -> float:
    """Room for the amounts in one state; without end where nothing can be said of the van."""
    rest, allowed = told
    if ends is None or rest is None or allowed is None:
        return inf
    base, limit = ends
    if atom.within:
        most = atom.factor * (limit.most + allowed) - atom.minus
        return _before_last_step(value, most, frame) - base.least - rest
    least = atom.factor * (limit.least + allowed) - atom.minus
    return base.most + rest - least


def _before_last_step(measure: Measure, most: float, frame: Frame) -> float:
    """The largest whole sum that its last step keeps within ``most``."""
    if measure.final is None:
        return most
    low, high = -1, HIGHEST
    while low < high:
        middle = (low + high + 1) // 2
        if measure.final(middle, frame) <= most:
            low = middle
        else:
            high = middle - 1
    return floor(low)
