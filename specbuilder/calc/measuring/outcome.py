"""A measure over a situation: its span over everything undecided, what widens it, and the lines it is made of."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import lru_cache
from math import nan
from types import MappingProxyType
from typing import NamedTuple

from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import BASE_VAN_GROUP, LedgerId
from specbuilder.model.ledger import Entry, Lack, Outside
from specbuilder.model.span import Span, hull

from .frame import Asked, Frame
from .lines import joined, largest_first, lines
from .measure import Measure, Shares, shares, summands, taking
from .prepared import Prepared
from .states import Chain, Joint, Slot, States, add_state
from .unsaid import outside_of

_UNSAID = nan
"""Of a state of which nothing can be said; always this one object, so that it equals itself in a set."""
_DECIMALS = 6
"""Ends of a span are rounded so that a sum of decimals meets its bound exactly."""


class Outcome(NamedTuple):
    """What a measure says of a situation."""

    span: Span | None
    """None: nothing can be said, or there is nothing to measure."""
    absent: bool = False
    """In some way to finish this build there is nothing to measure; in all of them when ``span`` is None too."""
    lacks: tuple[Lack, ...] = ()
    entries: tuple[Entry, ...] = ()
    outside: Outside | None = None
    """The number for which an equation says nothing, where that is why nothing can be said."""

    @property
    def unsaid(self) -> bool:
        """Nothing can be said yet."""
        return self.span is None and not self.absent


def frames_of(measure: Measure, prep: Prepared, asked: Asked, ledger: LedgerId | None) -> tuple[Frame, ...]:
    """One frame for each base van the measure may be of; none while it needs a van and none is left."""
    settings = settings_of(prep, ledger)
    if not measure.needs_van or (measure.van_unseen is not None and measure.van_unseen(prep)):
        return (Frame(prep.situation, asked, settings),)
    return van_frames(prep, asked, settings)


def settings_of(prep: Prepared, ledger: LedgerId | None) -> Mapping[str, float]:
    """The house settings of a ledger, and those it takes from others.

    Nought for a ledger without a table: what an option adds is asked all the same, and in a difference they cancel.
    """
    return all_settings(prep.catalogue).get(ledger, _NOUGHT) if ledger else _NONE


class _Nought(dict[str, float]):
    def __missing__(self, key: str) -> float:
        return 0.0


_NONE: Mapping[str, float] = MappingProxyType({})
_NOUGHT: Mapping[str, float] = MappingProxyType(_Nought())


@lru_cache(maxsize=4)
def all_settings(catalogue: Catalogue) -> Mapping[LedgerId, Mapping[str, float]]:
    """The settings that hold for each ledger of a catalogue."""
    return {
        ledger.id: MappingProxyType(
            {
                name: number
                for one in (*ledger.settings_as, ledger.id)
                if one in catalogue.ledgers
                for name, number in catalogue.ledgers[one].settings.items()
            }
        )
        for ledger in catalogue.ledgers.values()
    }


def van_frames(prep: Prepared, asked: Asked, settings: Mapping[str, float]) -> tuple[Frame, ...]:
    """One frame for each base van that may still be chosen."""
    return tuple([Frame(prep.situation, asked, settings, van) for van in prep.vans])


def outcome(measure: Measure, prep: Prepared, asked: Asked, ledger: LedgerId | None, listed: bool = True) -> Outcome:
    """The measure over everything undecided; extras that nobody has to take are not counted."""
    frames = frames_of(measure, prep, asked, ledger)
    if not frames:
        return Outcome(None, lacks=(Lack(group=BASE_VAN_GROUP),))
    lacks: dict[Lack, None] = {}
    found = [_under(measure, prep, frame, listed, lacks) for frame in frames]
    if len(found) == 1:
        return found[0]
    widens = any(one.span != found[0].span or one.absent != found[0].absent for one in found)
    lacking = (Lack(group=BASE_VAN_GROUP), *lacks) if widens else tuple(lacks)
    if any(one.unsaid for one in found):
        return Outcome(None, lacks=lacking, outside=next((one.outside for one in found if one.outside), None))
    return Outcome(
        hull(one.span for one in found if one.span is not None),
        any(one.absent for one in found),
        lacking,
        joined(one.entries for one in found),
    )


def _under(measure: Measure, prep: Prepared, frame: Frame, listed: bool, lacks: dict[Lack, None]) -> Outcome:
    """The measure under one base van; what widens it is added to ``lacks``."""
    if measure.beside:
        return _added([_under(one, prep, frame, listed, lacks) for one in summands(measure, prep.catalogue)])
    share = shares(measure, prep.catalogue, frame.option)
    chain = chain_of(measure, prep, frame, share)
    base = measure.base(frame)
    start = base_span(base)
    try:
        span, absent = span_of(chain.all, measure, frame, start)
    except OutsideValidity as fault:
        _note_unsaid(measure, prep, share, lacks)
        _note_lacks(chain, measure, frame, share, lacks)
        outside = outside_of(fault)
        return Outcome(None, lacks=tuple(lacks), outside=outside)
    if span is None:
        return Outcome(None, absent, tuple(lacks))
    if absent or not span.settled:
        _note_lacks(chain, measure, frame, share, lacks)
    entries = lines(measure, prep, frame, share, base, chain) if listed else ()
    return Outcome(span, absent, tuple(lacks), entries)


def _added(found: list[Outcome]) -> Outcome:
    """Outcomes of summands as one; where one of them has nothing to measure it adds nought."""
    if any(one.unsaid for one in found):
        return Outcome(None, lacks=found[-1].lacks, outside=next((one.outside for one in found if one.outside), None))
    total = Span(0.0, 0.0)
    for one in found:
        total = total + one.span if one.span is not None else total
    total = Span(round(total.least, _DECIMALS), round(total.most, _DECIMALS))
    entries = largest_first(entry for one in found for entry in one.entries)
    return Outcome(total, False, found[-1].lacks, entries)


def chain_of(measure: Measure, prep: Prepared, frame: Frame, share: Shares) -> Chain:
    """Settled choices, then one slot for each thing still open, in the order of the walk; a memo of the situation."""
    van = frame.option.id if measure.by_van and frame.option else None
    key = measure, van
    answers = measure.slots(frame)
    found = prep.chains.get(key)
    if found is None:
        amount, joint = standing(prep, share)
        slots = [*answers, *unweighed_slots(prep, share)]
        for group, options in prep.groups:
            states = alternatives(share, options)
            if states is not None:
                slots.append(Slot(group, states, Lack(group=group)))
        found = Chain(share.folding, amount, joint, slots)
        prep.chains[key] = found
    return found


def standing(prep: Prepared, share: Shares) -> tuple[float, Joint]:
    """The plain amount and the state of all settled choices.

    Raises:
        OutsideValidity: nothing can be said of one of them.
    """
    share.sound(settled[0] for settled in prep.settled)
    total, joints = 0.0, list[Joint]()
    known, neutral = share.known, share.neutral
    for option_id, count, own, _ in taking(prep, share):
        amounts = known.get(option_id) if own is None else share.of(own)
        if amounts is not None:
            amount, joint = amounts if count == 1 else share.times(amounts, count)
            total += amount
            if joint is not neutral:
                joints.append(joint)
    return total, share.folding.together(joints)


def unweighed_slots(prep: Prepared, share: Shares) -> list[Slot]:
    """One slot for each customer's part nobody has weighed."""
    slots: list[Slot] = []
    for number, (placed, variants) in enumerate(prep.unweighed):
        states: States = {}
        for option in variants:
            amount, joint = share.times(share.of(option) or (0, share.neutral), placed.count)
            add_state(states, joint, amount, amount)
        if states != {share.neutral: (0, 0)}:
            slots.append(Slot(f"{number}:{placed.option.id}", states, Lack(group=placed.option.group)))
    return slots


def alternatives(share: Shares, options: Iterable[Option]) -> States | None:
    """The states one of these options may bring; None when none of them adds anything."""
    options = tuple(options)
    share.sound(option.id for option in options)
    states: States = {}
    touched = False
    for option in options:
        amounts = share.known.get(option.id)
        touched = touched or amounts is not None
        amount, joint = amounts or (0, share.neutral)
        add_state(states, joint, amount, amount)
    return states if touched else None


def base_span(base: Iterable[Entry]) -> Span:
    """The labelled lines together."""
    least, most = 0.0, 0.0
    for entry in base:
        least, most = least + entry.amount.least, most + entry.amount.most
    return Span(least, most)


def span_of(states: States, measure: Measure, frame: Frame, base: Span) -> tuple[Span | None, bool]:
    """Least and most over these states, and whether some of them have nothing to measure.

    Raises:
        OutsideValidity: nothing can be said of one of them, and so nothing of all.
    """
    least, most, absent, rest, final = None, None, False, measure.rest, measure.final
    for joint, (low, high) in states.items():
        more = rest(joint, frame)
        if more is None:
            absent = True
            continue
        low, high = low + more, high + more
        least = low if least is None or low < least else least
        most = high if most is None or high > most else most
    if least is None or most is None:
        return None, absent
    least, most = base.least + least, base.most + most
    if final is not None:
        least, most = final(least, frame), final(most, frame)
    least, most = round(least, _DECIMALS), round(most, _DECIMALS)
    return Span(least, most), absent


def _note_unsaid(measure: Measure, prep: Prepared, share: Shares, lacks: dict[Lack, None]) -> None:
    """Add the choices that lack a figure the measure needs."""
    needed = [at for at, part in enumerate(measure.parts) if part.lacking]
    for option_id, _, own, placed in taking(prep, share):
        amounts = share.of(own) if own is not None else share.known.get(option_id)
        if amounts is not None and any(amounts[1][at] != share.neutral[at] for at in needed):
            lacks[Lack(group=placed.option.group)] = None
    for placed, variants in prep.unweighed:
        joints = (share.of(option) or (0, share.neutral) for option in variants)
        if any(joint[at] != share.neutral[at] for _, joint in joints for at in needed):
            lacks[Lack(group=placed.option.group)] = None


def _note_lacks(chain: Chain, measure: Measure, frame: Frame, share: Shares, lacks: dict[Lack, None]) -> None:
    """Add what widens it: slots of which two ways differ beside some way of the others."""

    def rest(joint: Joint) -> float | None:
        try:
            return measure.rest(joint, frame)
        except OutsideValidity:
            return _UNSAID

    for slot in chain.slots:
        if slot.lack is None or slot.lack in lacks:
            continue
        if _differs(slot.states, chain, slot.key, share, rest):
            lacks[slot.lack] = None


def _differs(states: States, chain: Chain, key: str, share: Shares, rest: Callable[[Joint], float | None]) -> bool:
    amounts = {amount for ends in states.values() for amount in ends}
    if len(states) == 1:
        return len(amounts) > 1
    for beside in chain.without(key):
        found = {rest(share.combine(beside, joint)) for joint in states}
        if len(found) > 1 or (len(amounts) > 1 and not found <= {None, _UNSAID}):
            return True
    return False
