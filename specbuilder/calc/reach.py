"""How far a measure can go if one option stood in the spec: the widest honest range over all that is still open."""

from __future__ import annotations

from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Place
from specbuilder.model.ledger import Lack
from specbuilder.model.span import Span, hull

from .frame import Asked, Frame
from .measure import Amounts, Measure, Shares, shares, taking
from .outcome import alternatives, base_span, settings_of, span_of, unweighed_slots, van_frames
from .prepared import Prepared
from .states import Chain, Slot, States, add_state


def reach_of(
    measure: Measure, prep: Prepared, asked: Asked, ledger: LedgerId, option: Option, place: Place | None
) -> Span | None:
    """The span if the option stood there; None when some way to finish has nothing to measure."""
    spans: list[Span] = []
    settings = settings_of(prep, ledger)
    if not measure.needs_van:
        frames: tuple[Frame, ...] = (Frame(prep.situation, asked, settings),)
    elif option.van is not None:
        frames = (Frame(prep.situation, asked, settings, option),)
    else:
        frames = van_frames(prep, asked, settings)
    for under in frames:
        share = shares(measure, prep.catalogue, under.option)
        states = _standing_with(measure, prep, under, share, option, place)
        span, absent = span_of(states, measure, under, base_span(measure.base(under)))
        if span is None or absent:
            return None
        spans.append(span)
    return hull(spans)


def _standing_with(
    measure: Measure, prep: Prepared, frame: Frame, share: Shares, option: Option, place: Place | None
) -> States:
    """Every state with the option in the spec."""
    chain = _open_chain(measure, prep, frame, share)
    if option.van is not None:
        return chain.all
    one, placed = prep.pick_one(option.group), prep.situation.placed
    rivals = {p.option.id for p in placed if p.option.group == option.group}
    if rivals == {option.id} if one else any(p.option.id == option.id and place in (None, p.place) for p in placed):
        return chain.all
    states = _counts(share, option, absent=False, most=1 if one else option.max_count)
    return share.folding.merge(chain.without(option.group if one else option.id), states)


def _open_chain(measure: Measure, prep: Prepared, frame: Frame, share: Shares) -> Chain:
    """A slot for each group of one answer, decided or not, and for each free extra. Memoised with the situation."""
    van = frame.option.id if measure.by_van and frame.option else None
    key = measure, van, True
    found = prep.chains.get(key)
    if found is not None:
        return found
    decided: dict[str, Amounts] = {}
    total, joint = 0.0, share.neutral
    for option_id, count, own, placed in taking(prep, share):
        amounts = share.known.get(option_id) if own is None else share.of(own)
        if amounts is None:
            continue
        amounts = share.times(amounts, count)
        group = placed.option.group
        if prep.pick_one(group):
            before = decided.get(group, (0, share.neutral))
            decided[group] = before[0] + amounts[0], share.combine(before[1], amounts[1])
        else:
            total, joint = total + amounts[0], share.combine(joint, amounts[1])
    slots = [*measure.slots(frame), *_unweighed(prep, share)]
    slots += [Slot(group, {state: (amount, amount)}) for group, (amount, state) in decided.items()]
    for group, options in prep.groups:
        if (states := alternatives(share, options)) is not None:
            slots.append(Slot(group, states, Lack(group=group)))
    for extra in prep.situation.free:
        if extra.id in share.known:
            slots.append(Slot(extra.id, _counts(share, extra, absent=True, most=extra.max_count)))
    found = Chain(share.folding, total, joint, _one_each(share, slots))
    prep.chains[key] = found
    return found


def _one_each(share: Shares, slots: list[Slot]) -> list[Slot]:
    """One slot for each key: what stands twice in a group of one answer leaves together."""
    by_key: dict[str, Slot] = {}
    for slot in slots:
        known = by_key.get(slot.key)
        states = share.folding.merge(known.states, slot.states) if known else slot.states
        by_key[slot.key] = slot._replace(states=states)
    return list(by_key.values())


def _unweighed(prep: Prepared, share: Shares) -> list[Slot]:
    """Customer's parts nobody has weighed; in a group of one answer the group's key, so that it can be replaced."""
    placed = {f"{number}:{p.option.id}": p for number, (p, _) in enumerate(prep.unweighed)}
    return [
        slot._replace(key=group) if prep.pick_one(group := placed[slot.key].option.group) else slot
        for slot in unweighed_slots(prep, share)
    ]


def _counts(share: Shares, option: Option, *, absent: bool, most: int) -> States:
    """The states of one to ``most`` of it, and of none where it may stay away."""
    states: States = {share.neutral: (0, 0)} if absent else {}
    for count in range(1, most + 1):
        amount, joint = share.times(share.get(option), count)
        add_state(states, joint, amount, amount)
    return states
