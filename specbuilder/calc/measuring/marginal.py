"""What each option would add to a measure on this spec: beside the rest, or in place of what its group holds."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from typing import TypeVar

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import GroupId, LedgerId, OptionId
from specbuilder.model.situation import Situation

from .frame import Asked, Frame
from .measure import Amounts, Measure, Shares, shares
from .outcome import base_span, settings_of, van_frames
from .prepared import Prepared, as_brought, prepared
from .states import Joint

_Key = TypeVar("_Key")


def marginals(measure: Measure, situation: Situation, ledger: LedgerId | None = None) -> Mapping[OptionId, float]:
    """Every option of the catalogue with what it adds to the settled choices, in the measure's unit.

    A choice says what it adds now; an option of a group of one answer what it adds more than the choice there; any
    other what one of it adds. A customer's part counts with its own mass, or the catalogue's until it is weighed.
    """
    prep = prepared(situation)
    share = shares(measure, prep.catalogue, situation.van)
    settings, asked = settings_of(prep, ledger), Asked(situation.facts)
    frames = van_frames(prep, asked, settings) or (Frame(situation, asked, settings),)
    stands = _standing(prep, share)
    by_option, by_group = _sums(share, stands, lambda o: o.id), _sums(share, stands, lambda o: o.group)
    added = dict(_alone(share, prep.catalogue))
    nothing: Amounts = (0, share.neutral)
    for group, there in by_group.items():
        for option in prep.members[group] if prep.pick_one(group) else ():
            if option.id not in by_option:
                added[option.id] = added[option.id] - there[0]
    added.update({option: amount for option, (amount, _) in by_option.items()})
    rest = _least_rest(measure, frames)
    for option_id in _with_state(share, prep, by_group):
        group = prep.catalogue.options[option_id].group
        one = prep.pick_one(group)
        mine = by_option.get(option_id)
        joint = (mine or share.known.get(option_id, nothing))[1]
        there = by_group.get(group, nothing) if one and mine is None else nothing
        left = [s for s in stands if s[0].id != option_id and not (one and s[0].group == group)]
        without = _joint(share, left)
        added[option_id] += rest(share.combine(without, joint)) - rest(share.combine(without, there[1]))
    added.update(_vans(measure, prep, _joint(share, stands), frames))
    return added


def _with_state(share: Shares, prep: Prepared, by_group: Mapping[GroupId, Amounts]) -> Iterable[OptionId]:
    """Options that do more than add: by their own part of the state, or by that of what they take the place of."""
    own = (option for option, (_, joint) in share.known.items() if joint is not share.neutral)
    replacing = (
        option.id
        for group, (_, joint) in by_group.items()
        if joint is not share.neutral and prep.pick_one(group)
        for option in prep.members[group]
    )
    return dict.fromkeys((*own, *replacing))


def _standing(prep: Prepared, share: Shares) -> list[tuple[Option, Amounts]]:
    """Every choice that takes part, with what it adds."""
    found: list[tuple[Option, Amounts]] = []
    for option_id, count, own, placed in prep.settled:
        amounts = share.known.get(option_id) if own is None else share.of(own)
        if amounts is not None:
            found.append((placed.option, share.times(amounts, count)))
    for placed, _ in prep.unweighed:
        if (amounts := share.of(as_brought(placed))) is not None:
            found.append((placed.option, share.times(amounts, placed.count)))
    return found


def _sums(share: Shares, stands: list[tuple[Option, Amounts]], key_of: Callable[[Option], _Key]) -> dict[_Key, Amounts]:
    sums: dict[_Key, Amounts] = {}
    for option, (amount, joint) in stands:
        key = key_of(option)
        known = sums.get(key)
        sums[key] = (amount, joint) if known is None else (known[0] + amount, share.combine(known[1], joint))
    return sums


def _joint(share: Shares, stands: Iterable[tuple[Option, Amounts]]) -> Joint:
    joint = share.neutral
    for _, (_, more) in stands:
        joint = share.combine(joint, more)
    return joint


def _least_rest(measure: Measure, frames: tuple[Frame, ...]) -> Callable[[Joint], float]:
    """The rest under the base van, or the least of all that may still be chosen."""

    def rest(joint: Joint) -> float:
        return min((found for f in frames if (found := measure.told(joint, f)) is not None), default=0)

    return rest


def _vans(measure: Measure, prep: Prepared, joint: Joint, frames: tuple[Frame, ...]) -> Mapping[OptionId, float]:
    """What each base van adds by its papers: by itself where none stands or it is the one, else more than that one."""
    asked = Asked(replace(prep.situation.facts, weighed=None))

    def under(option: Option) -> tuple[float, float]:
        frame = Frame(prep.situation, asked, frames[0].settings, option)
        base, more = measure.base(frame), measure.told(joint, frame) or 0
        return base_span(base).least + more, sum(e.amount.least for e in base if e.option or e.group) + more

    chosen = prep.situation.van
    now = under(chosen)[0] if chosen else 0
    return {
        van.id: under(van)[1] if chosen is None or van.id == chosen.id else under(van)[0] - now
        for van in prep.catalogue.vans
    }


@lru_cache(maxsize=16)
def _alone(share: Shares, catalogue: Catalogue) -> Mapping[OptionId, float]:
    """What one of each option adds by itself. A memo of the catalogue."""
    nothing: Amounts = (0, share.neutral)
    return {o.id: share.known.get(o.id, nothing)[0] for o in catalogue.options.values() if o.van is None}
