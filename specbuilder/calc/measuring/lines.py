"""The lines of a reading: who draws or supplies how much."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from math import isfinite

from specbuilder.model.ledger import Entry
from specbuilder.model.span import ZERO, Span, hull, point

from .frame import Frame
from .measure import Amounts, Measure, Shares, taking
from .prepared import Prepared
from .states import Chain, Fold, Joint, Slot


def lines(
    measure: Measure, prep: Prepared, frame: Frame, share: Shares, base: tuple[Entry, ...], chain: Chain
) -> tuple[Entry, ...]:
    """All lines of a measure under one base van, largest first; what is nought has none."""
    scale = measure.scale(frame) if measure.scale else 1.0
    joint = chain.settled
    signs = measure.signs(joint, frame) if measure.signs else ()
    made = [entry for entry in base if entry.amount.most or entry.amount.least]
    made.extend(_choices(prep, share, joint, signs, scale))
    if chain.slots:
        made.extend(_open(measure, prep, frame, share, chain, signs, scale))
    if measure.rest_entry is not None:
        made.extend(_rest(measure, frame, share, chain, scale))
    return largest_first(made)


def largest_first(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """Lines in the order they are shown."""
    return tuple(sorted(entries, key=_size))


def _size(entry: Entry) -> float:
    least, most = entry.amount.least, entry.amount.most
    return min(-abs(least), -abs(most))


def _choices(prep: Prepared, share: Shares, joint: Joint, signs: tuple[int, ...], scale: float) -> Iterator[Entry]:
    """One line for each settled choice that takes part."""
    known, made = share.known, share.lines
    for option_id, count, own, _ in taking(prep, share):
        if own is None and option_id not in known:
            continue
        key = option_id, count, scale
        if own is None and not signs and key in made:
            yield made[key]
            continue
        amounts = known[option_id] if own is None else share.of(own)
        if amounts is None:
            continue
        amount = _amount(share, share.times(amounts, count), joint, signs) * scale
        if not amount:
            continue
        entry = Entry("", point(amount), option=option_id, count=count)
        if own is None and not signs:
            made[key] = entry
        yield entry


def _amount(share: Shares, amounts: Amounts, joint: Joint, signs: tuple[int, ...]) -> float:
    """What a choice adds to the value: its plain amount, and those of its parts that decide the state."""
    amount, own = amounts
    if own is share.neutral:
        return amount
    for sign, fold, mine, all_in in zip(signs, share.folding.folds, own, joint, strict=False):
        if sign and isfinite(mine) and (fold is Fold.SUM or mine == all_in):
            amount += sign * mine
    return amount


def _open(
    measure: Measure, prep: Prepared, frame: Frame, share: Shares, chain: Chain, signs: tuple[int, ...], scale: float
) -> Iterator[Entry]:
    """One line with its range for each undecided group and each customer's part nobody has weighed."""
    parts = {f"{n}:{placed.option.id}": placed for n, (placed, _) in enumerate(prep.unweighed)}
    stands = measure.told(chain.settled, frame)
    for slot in chain.slots:
        if slot.lack is None or slot.lack.group is None:
            continue
        if signs:
            ranges = [_signed(share, chain.settled, joint, ends, signs) for joint, ends in slot.states.items()]
        else:
            ranges = [_beside(measure, frame, share, chain, stands, joint, e) for joint, e in slot.states.items()]
        amount = hull(ranges)
        if amount is None or not (amount.least or amount.most):
            continue
        amount = amount * scale
        if (placed := parts.get(slot.key)) is not None:
            yield Entry("", amount, option=placed.option.id, count=placed.count)
        else:
            yield Entry("", amount, group=slot.lack.group)


def _signed(share: Shares, settled: Joint, joint: Joint, ends: tuple[float, float], signs: tuple[int, ...]) -> Span:
    """What one way of a slot adds to a figure: the parts of it that would decide the state."""
    more = _amount(share, (0, joint), share.combine(settled, joint), signs)
    return Span(ends[0] + more, ends[1] + more)


def _beside(
    measure: Measure,
    frame: Frame,
    share: Shares,
    chain: Chain,
    stands: float | None,
    joint: Joint,
    ends: tuple[float, float],
) -> Span:
    """What one way of a slot adds to what is settled."""
    after = measure.told(share.combine(chain.settled, joint), frame)
    more = 0.0 if after is None or stands is None else after - stands
    return Span(ends[0] + more, ends[1] + more)


def _rest(measure: Measure, frame: Frame, share: Shares, chain: Chain, scale: float) -> Iterator[Entry]:
    """The line of what does not simply add, from what is settled and from open answers of the brief."""
    states = {chain.settled}
    for slot in chain.slots:
        if _is_answer(slot):
            states = {share.combine(state, joint) for state in states for joint in slot.states}
    rests = (measure.told(state, frame) for state in states)
    found = [rest for rest in rests if rest is not None]
    assert measure.rest_entry is not None
    amount = Span(min(found), max(found)) if found else ZERO
    if amount != ZERO and (line := measure.rest_entry(amount * scale, frame)) is not None:
        yield line


def _is_answer(slot: Slot) -> bool:
    return slot.lack is None or slot.lack.group is None


def joined(found: Iterable[tuple[Entry, ...]]) -> tuple[Entry, ...]:
    """Lines of several base vans as one: the same line once, with the hull of its amounts."""
    by_line: dict[object, Entry] = {}
    for entries in found:
        for entry in entries:
            key = entry.label, entry.option, entry.group, entry.count
            known = by_line.get(key)
            by_line[key] = replace(entry, amount=known.amount.hull(entry.amount)) if known else entry
    return largest_first(by_line.values())
