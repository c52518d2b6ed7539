"""What the heaters give, against what the van loses at the cold the customer named."""

from __future__ import annotations

from collections.abc import Callable
from math import inf

from specbuilder.calc.formulas.heat import heater_needed_kw
from specbuilder.calc.formulas.validity import OutsideValidity, above
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, Part, largest, smallest, summed
from specbuilder.calc.measuring.states import Joint, Slot
from specbuilder.calc.measuring.tally import Tally
from specbuilder.calc.weights.roof import LIFTS
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, Tag
from specbuilder.model.ledger import Lack
from specbuilder.model.vans import Van

HEATER = Tag("heater")
"""Given by whatever warms the van."""
ON_THE_PLUG = "hook-up"
"""Fuel of a heater that runs on the campsite plug only."""
_NO_HEATER, _RATED, _UNRATED = 0, 1, 2
_PLUGGED, _UPSTAIRS, _COLD = BriefKey("plugged_every_night"), BriefKey("sleepers_upstairs"), BriefKey("design_temp_c")
_YES = "yes"


def _electric(option: Option) -> bool:
    return option.heat.heater_fuel == ON_THE_PLUG


def burner_kw(option: Option) -> float:
    """What it gives without a plug, kW."""
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


def plug_slots(frame: Frame) -> tuple[Slot, ...]:
    """Whether there is a plug every night, while nobody said."""
    if _about(frame, _electric):
        frame.asked.word(_PLUGGED)
    if frame.asked.facts.known(_PLUGGED):
        return ()
    return (Slot(_PLUGGED, {(0, way, 0): (0, 0) for way in (0, 1)}, Lack(key=_PLUGGED)),)


def _on_the_plug(joint: Joint, frame: Frame) -> bool:
    return bool(joint[1]) or frame.asked.facts.get(_PLUGGED) == _YES


def given_kw(joint: Joint, frame: Frame) -> float | None:
    """What electric heaters give; None without any heater. ``joint`` is of ``GIVEN_PARTS``.

    Raises:
        OutsideValidity: a heater nobody wrote the output of.
    """
    plug_kw, _, rated = joint
    if rated == _NO_HEATER:
        return None
    if rated == _UNRATED:
        raise OutsideValidity("heater kW", 0, "above 0")
    return plug_kw if _on_the_plug(joint, frame) else 0


def _lets_heat_up(option: Option) -> bool:
    return bool(option.heat.heat_loss_up_w_per_k)


def cold_slots(frame: Frame) -> tuple[Slot, ...]:
    """Who sleeps upstairs and how cold it gets, while nobody said."""
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


def loss_w_per_k(joint: Joint, frame: Frame, roof_up: bool) -> float:
    """What the van loses for each degree; with the roof up only where one lifts. ``joint`` is of ``LOSS_PARTS``."""
    down, up, *_ = joint
    loss = above("heat loss of the van W/K", frame.van.ua_w_per_k) + down
    return loss + up if roof_up and has_lifting_roof(joint, frame) else loss


def has_lifting_roof(joint: Joint, frame: Frame) -> bool:
    """A roof that can stand up. ``joint`` is of ``LOSS_PARTS``."""
    return bool(joint[2]) or LIFTS in frame.van.gives


def as_slept_w_per_k(joint: Joint, frame: Frame) -> float:
    """What the van loses for each degree with the roof as people sleep in it. ``joint`` is of ``LOSS_PARTS``."""
    return loss_w_per_k(joint, frame, _sleeps_upstairs(joint, frame))


def named_cold_c(joint: Joint, frame: Frame) -> float:
    """The cold the customer named, C. ``joint`` is of ``LOSS_PARTS``."""
    outside_c = joint[4]
    return frame.asked.facts.number(_COLD).least if outside_c == inf else outside_c


def _needed_kw(joint: Joint, frame: Frame) -> float:
    setting = frame.settings
    loss = as_slept_w_per_k(joint, frame)
    return heater_needed_kw(loss, setting["inside_c"], named_cold_c(joint, frame), setting["margin_share"])


GIVEN_PARTS: tuple[Part, ...] = (summed(_plug_kw), largest(_answer, none=0), largest(_rated, none=_NO_HEATER))
"""What electric heaters give, whether there is a plug every night, and whether there are heaters with figures."""
LOSS_PARTS: tuple[Part, ...] = (
    summed(lambda option, _van: option.heat.heat_loss_down_w_per_k or None),
    summed(lambda option, _van: option.heat.heat_loss_up_w_per_k or None),
    largest(lambda option, _van: 1 if LIFTS in option.gives else None, none=0),
    largest(_answer, none=0),
    smallest(_answer),
)
"""What parts lose with the roof down and more with it up, whether it lifts, who sleeps upstairs, the cold outside."""

HEAT = Tally(
    id=LedgerId("heat"),
    value=Measure(
        amount=burner_kw,
        parts=GIVEN_PARTS,
        rest=given_kw,
        signs=lambda joint, frame: (1 if _on_the_plug(joint, frame) else 0, 0, 0),
        slots=plug_slots,
    ),
    bound=Measure(
        parts=LOSS_PARTS,
        rest=_needed_kw,
        slots=cold_slots,
        needs_van=True,
        by_van=True,
    ),
    settings=("margin_share", "inside_c"),
)
"""The heaters, electric ones only for whoever is on a plug every night, against the loss of the van and its parts.

What a lifting roof loses counts while somebody sleeps upstairs. Nothing to measure without a heater.
"""
