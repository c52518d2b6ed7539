"""Charging: what is taken from the van while it drives, and how fast the battery is filled."""

from __future__ import annotations

from specbuilder.calc.formulas.charging import charge_limit_a, engine_input_limit_a
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, lacking, largest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.vans import Van

from .power_parts import LEAD, LITHIUM, charge_a, lacks_charge, lacks_input, lacks_size


def _input(joint: Joint, _frame: Frame) -> float:
    return missing("amps the engine's charger takes A") if joint[0] else 0.0


def _half_the_alternator(_joint: Joint, frame: Frame) -> float:
    return engine_input_limit_a(frame.van.alternator_a, frame.settings["alternator_share"])


def _charge(option: Option, _van: Van | None) -> float | None:
    return charge_a(option)


def _fastest(joint: Joint, _frame: Frame) -> float:
    amps, lacks = joint
    return missing("amps a charger gives A") if lacks else amps


def _lithium_ah(option: Option, _van: Van | None) -> float | None:
    return option.power.battery_ah if option.power.chemistry in LITHIUM else None


def _lead_ah(option: Option, _van: Van | None) -> float | None:
    return option.power.battery_ah if option.power.chemistry in LEAD else None


def _allowed(joint: Joint, frame: Frame) -> float | None:
    lithium_ah, lead_ah, lacks = joint
    if lacks:
        missing("amp-hours and kind of the battery Ah")
    if not (lithium_ah or lead_ah):
        return None
    share = frame.settings
    return charge_limit_a(lithium_ah, share["lithium_share"]) + charge_limit_a(lead_ah, share["lead_share"])


ALTERNATOR_INPUT = Tally(
    id=LedgerId("alternator-input"),
    value=Measure(
        amount=lambda option: option.power.engine_input_a or 0,
        parts=(lacking(lacks_input),),
        rest=_input,
    ),
    bound=Measure(rest=_half_the_alternator, needs_van=True),
    settings=("alternator_share",),
)
"""What the engine's charger takes against what the van's own charging spares."""

CHARGE_RATE = Tally(
    id=LedgerId("charge-rate"),
    value=Measure(
        parts=(largest(_charge, none=0), lacking(lacks_charge)),
        rest=_fastest,
        signs=lambda _joint, _frame: (1, 0),
    ),
    bound=Measure(parts=(summed(_lithium_ah), summed(_lead_ah), lacking(lacks_size)), rest=_allowed),
    settings=("lithium_share", "lead_share"),
)
"""The faster of engine and plug charger against what the battery takes; nothing to hold it against without one."""
