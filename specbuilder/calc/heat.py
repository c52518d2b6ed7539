"""What the heaters give, against what the van loses at the cold the customer named."""

from __future__ import annotations

from collections.abc import Callable
from math import inf

from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, Tag
from specbuilder.model.ledger import Lack
from specbuilder.model.vans import Van

from .formulas.heat import heater_needed_kw
from .formulas.validity import OutsideValidity, above
from .frame import Frame
from .measure import Measure, largest, smallest, summed
from .roof import LIFTS
from .states import Joint, Slot
from .tally import Tally

HEATER = Tag("heater")
"""Given by whatever warms the van."""
ON_THE_PLUG = "hook-up"
"""Fuel of a heater that runs on the campsite plug only."""
_NO_HEATER, _RATED, _UNRATED = 0, 1, 2
_PLUGGED, _UPSTAIRS, _COLD = BriefKey("plugged_every_night"), BriefKey("sleepers_upstairs"), BriefKey("design_temp_c")
_YES = "yes"


def _electric(option: Option) -> bool:
    return option.heat.heater_fuel == ON_THE_PLUG


def _burner_kw(option: Option) -> float:
    return 0 if _electric(option) else option.heat.heater_kw or 0


def _plug_kw(option: Option, _van: Van | None) -> float | None:
    return option.heat.heater_kw or None if _electric(option) else None


def _rated(option: Option, _van: Van | None) -> float | None:
    """Whether it is a heater, and whether anybody wrote down what it gives."""
    if (option.heat.heater_kw or 0) > 0:
        return _RATED
    return _UNRATED if HEATER in option.gives else None


def _answer(_option: Option, _van: Van | None) -> float | None:
    """Of a part that only the brief fills."""
    return None


def _about(frame: Frame, of: Callable[[Option], bool]) -> bool:
    """Whether something of the kind stands or may still be an answer: else nobody needs to be asked about it."""
    situation = frame.situation
    return any(of(p.option) for p in situation.placed) or any(of(o) for g in situation.undecided.values() for o in g)


def _plug_slots(frame: Frame) -> tuple[Slot, ...]:
    if _about(frame, _electric):
        frame.asked.word(_PLUGGED)
    if frame.asked.facts.known(_PLUGGED):
        return ()
    return (Slot(_PLUGGED, {(0, way, 0): (0, 0) for way in (0, 1)}, Lack(key=_PLUGGED)),)


def _on_the_plug(joint: Joint, frame: Frame) -> bool:
    return bool(joint[1]) or frame.asked.facts.get(_PLUGGED) == _YES


def _given_kw(joint: Joint, frame: Frame) -> float | None:
    plug_kw, _, rated = joint
    if rated == _NO_HEATER:
        return None
    if rated == _UNRATED:
        raise OutsideValidity("heater kW", 0, "above 0")
    return plug_kw if _on_the_plug(joint, frame) else 0


def _lets_heat_up(option: Option) -> bool:
    return bool(option.heat.heat_loss_up_w_per_k)


def _cold_slots(frame: Frame) -> tuple[Slot, ...]:
    slots: list[Slot] = []
    facts = frame.asked.facts
    if _about(frame, _lets_heat_up):
        frame.asked.number(_UPSTAIRS)
    if not facts.known(_UPSTAIRS):
        ways = {float(end > 0) for end in (facts.number(_UPSTAIRS).least, facts.number(_UPSTAIRS).most)}
        slots.append(Slot(_UPSTAIRS, {(0, 0, 0, way, inf): (0, 0) for way in sorted(ways)}, Lack(key=_UPSTAIRS)))
    cold = frame.asked.number(_COLD)
    if not facts.known(_COLD):
        slots.append(Slot(_COLD, {(0, 0, 0, 0, end): (0, 0) for end in (cold.least, cold.most)}, Lack(key=_COLD)))
    return tuple(slots)


def _sleeps_upstairs(joint: Joint, frame: Frame) -> bool:
    facts = frame.asked.facts
    return bool(joint[3]) or (facts.known(_UPSTAIRS) and facts.number(_UPSTAIRS).least > 0)


def _needed_kw(joint: Joint, frame: Frame) -> float:
    down, up, lifts, _, outside_c = joint
    loss_w_per_k = above("heat loss of the van W/K", frame.van.ua_w_per_k) + down
    if _sleeps_upstairs(joint, frame) and (lifts or LIFTS in frame.van.gives):
        loss_w_per_k += up
    if outside_c == inf:
        outside_c = frame.asked.facts.number(_COLD).least
    setting = frame.settings
    return heater_needed_kw(loss_w_per_k, setting["inside_c"], outside_c, setting["margin_share"])


HEAT = Tally(
    id=LedgerId("heat"),
    value=Measure(
        amount=_burner_kw,
        parts=(summed(_plug_kw), largest(_answer, none=0), largest(_rated, none=_NO_HEATER)),
        rest=_given_kw,
        signs=lambda joint, frame: (1 if _on_the_plug(joint, frame) else 0, 0, 0),
        slots=_plug_slots,
    ),
    bound=Measure(
        parts=(
            summed(lambda option, _van: option.heat.heat_loss_down_w_per_k or None),
            summed(lambda option, _van: option.heat.heat_loss_up_w_per_k or None),
            largest(lambda option, _van: 1 if LIFTS in option.gives else None, none=0),
            largest(_answer, none=0),
            smallest(_answer),
        ),
        rest=_needed_kw,
        slots=_cold_slots,
        needs_van=True,
        by_van=True,
    ),
    settings=("margin_share", "inside_c"),
)
"""The heaters, electric ones only for whoever is on a plug every night, against the loss of the van and its parts.

What a lifting roof loses counts while somebody sleeps upstairs. Nothing to measure without a heater.
"""
