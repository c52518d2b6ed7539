"""What cannot run at the same moment: the smallest sets of chosen things on mains that ask for more than there is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from specbuilder.calc.formulas.hookup import site_w
from specbuilder.calc.formulas.inverter import battery_limit_a, mains_allowed_w
from specbuilder.calc.formulas.validity import OutsideValidity, at_least, missing
from specbuilder.calc.measuring.frame import Asked, Frame
from specbuilder.calc.measuring.outcome import all_settings
from specbuilder.calc.measuring.prepared import as_brought
from specbuilder.calc.measuring.unsaid import outside_of
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.ledger import Outside
from specbuilder.model.power import Feed, Together, TooMuch
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span

from .hook_up import MAINS_V, pitch_amps
from .inverter_beside import LEAD_LOADED_V
from .inverter_load import LOADED_V, SEVERAL
from .power_parts import CHARGER, LEAD, PLUG, SITE_AMPS, is_battery, is_inverter, lacks_output, lacks_protection

_HOOK_UP, _CARRIED = LedgerId("hook-up-watts"), LedgerId("mains-for-good")


class Piece(NamedTuple):
    """One thing that draws, by itself."""

    option: OptionId
    watts_w: float


def too_much(pieces: Sequence[Piece], limit_w: float) -> Iterator[tuple[Piece, ...]]:
    """Every set of pieces that asks for more than the limit and none of which could be spared.

    Pieces are added strongest first. The first one that goes over the limit is the weakest of its set, so without any
    one of them the rest stays within it: each set found is smallest, and each smallest set is found once.
    """
    ranked = sorted(pieces, key=lambda piece: -piece.watts_w)
    left = [sum(piece.watts_w for piece in ranked[at:]) for at in range(len(ranked))]

    def grow(taken: tuple[Piece, ...], watts_w: float, start: int) -> Iterator[tuple[Piece, ...]]:
        for at in range(start, len(ranked)):
            if watts_w + left[at] <= limit_w:
                return
            more = (*taken, ranked[at])
            if watts_w + ranked[at].watts_w > limit_w:
                yield more
            else:
                yield from grow(more, watts_w + ranked[at].watts_w, at + 1)

    return grow((), 0.0, 0)


def _sets(pieces: Sequence[Piece], limit_w: float) -> tuple[TooMuch, ...]:
    """The smallest sets, fewest things first; two pieces of one option as one line with its count."""
    found = dict.fromkeys(_told(chosen, limit_w) for chosen in too_much(pieces, limit_w))
    return tuple(sorted(found, key=lambda one: (sum(many for _, many in one.options), -one.watts_w)))


def _told(chosen: tuple[Piece, ...], limit_w: float) -> TooMuch:
    counts = Counter(piece.option for piece in chosen)
    watts = sum(piece.watts_w for piece in chosen)
    return TooMuch(options=tuple(counts.items()), watts_w=watts, over_w=watts - limit_w)


def together_away(situation: Situation) -> Together | None:
    """On the inverter, as far as the battery carries it; None without an inverter.

    Only what is chosen is looked at: what may still come can only add to it.
    """
    inverters = [p.option for p in situation.placed if is_inverter(p.option)]
    if not inverters:
        return None
    if any(is_battery(o) for options in situation.undecided.values() for o in options):
        return Together(feed=Feed.INVERTER, limit_w=None)
    try:
        carried = _carried_w(situation, inverters)
        inverter_w = max(option.power.inverter_w or 0 for option in inverters)
        feed = Feed.BATTERY if carried < inverter_w else Feed.INVERTER
        limit = min(inverter_w, carried)
        return _together(situation, _is_shared, feed, Span(limit, limit), assumed=False)
    except OutsideValidity as fault:
        return Together(feed=Feed.INVERTER, limit_w=None, outside=_outside(fault))


def _carried_w(situation: Situation, inverters: list[Option]) -> float:
    """What the battery carries through the inverter; no battery carries nothing."""
    settings = all_settings(situation.catalogue).get(_CARRIED)
    batteries = [(as_brought(p), p.count) for p in situation.placed if is_battery(p.option)]
    if settings is None or any(lacks_output(option) for option in inverters):
        missing("watts and efficiency of the inverter W")
    if any(lacks_protection(option) for option, _ in batteries):
        missing("continuous amps of the battery A")
    packs = sum((o.power.packs_parallel or 0) * many for o, many in batteries)
    amps = sum((o.power.bms_continuous_a or 0) * (o.power.packs_parallel or 0) * many for o, many in batteries)
    efficiency = min(option.power.inverter_efficiency or 1 for option in inverters)
    limit_a = battery_limit_a(amps / packs, packs, settings[SEVERAL]) if packs else 0.0
    lead = any(o.power.chemistry in LEAD for o, _ in batteries)
    return mains_allowed_w(limit_a, settings[LEAD_LOADED_V if lead else LOADED_V], efficiency)


def together_plugged(situation: Situation) -> Together | None:
    """On the weakest pitch of the brief; None without a campsite plug. Everything that can be plugged in counts."""
    if not any(PLUG in placed.option.gives for placed in situation.placed):
        return None
    settings = all_settings(situation.catalogue).get(_HOOK_UP, {})
    asked = Asked(situation.facts)
    try:
        limits = [site_w(a, settings[MAINS_V]) for a in pitch_amps(Frame(situation, asked, settings))]
        limit = Span(min(limits), max(limits)) if limits else missing("amps of the pitch A")
        return _together(situation, _is_mains, Feed.PITCH, limit, assumed=SITE_AMPS in asked.assumed)
    except OutsideValidity as fault:
        return Together(feed=Feed.PITCH, limit_w=None, outside=_outside(fault))


def _outside(fault: OutsideValidity) -> Outside:
    return outside_of(fault)


def _together(
    situation: Situation, is_one: Callable[[Option], bool], feed: Feed, limit: Span, assumed: bool
) -> Together:
    chosen = [placed for placed in situation.placed if is_one(placed.option)]
    pieces = [piece for placed in chosen for piece in _pieces(as_brought(placed), placed.count)]
    unsure = tuple(dict.fromkeys(placed.option.id for placed in chosen if _unread(placed)))
    return Together(feed=feed, limit_w=limit, sets=_sets(pieces, limit.least), assumed=assumed, unsure=unsure)


def _unread(placed: Placed) -> bool:
    """The customer's own, and nobody has read the watts on it."""
    return placed.owner is Owner.CUSTOMER and (placed.own_part is None or placed.own_part.watts_w is None)


def _pieces(option: Option, count: int) -> list[Piece]:
    watts = option.power.watts_running
    if watts is None:
        missing(f"watts of {option.name} W")
    return [Piece(option.id, at_least(f"watts of {option.name} W", watts))] * count


def _is_shared(option: Option) -> bool:
    """It runs from the inverter as well as from the plug; what charges the battery does not count away."""
    return option.power.bus == "shared" and option.power.ac_role != CHARGER


def _is_mains(option: Option) -> bool:
    """It draws on the plug: what is on mains, and the charger of a combined unit."""
    power = option.power
    return power.bus in ("shared", "hookup-only") or (power.bus == "inverter" and power.ac_role == CHARGER)
