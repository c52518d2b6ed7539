"""The inverter: what it asks of the battery, and whether it carries what must run away from the plug."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from specbuilder.calc.formulas.inverter import battery_limit_a, input_current_a, lead_limit_a
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, Part, lacking, largest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId, Tag
from specbuilder.model.ledger import Entry
from specbuilder.model.span import Span
from specbuilder.model.vans import Van

from .power_parts import LEAD, MUST_RUN, is_battery, is_inverter, lacks_output, lacks_protection, lacks_size

_SAME = "kettle microwave hair-dryer induction e-bike laptop"
ASKED: Mapping[str, Tag] = {**{word: Tag(word) for word in _SAME.split()}, "medical": Tag("medical-device")}
"""What the brief calls a thing that must run away from the plug, with the capability such a thing gives."""
SEVERAL, LOADED_V = "several_packs_share", "loaded_v"


def stands(is_one: Callable[[Option], bool]) -> Part:
    """1 when one of them stands there, else 0."""
    return largest(lambda option, _van: 1 if is_one(option) else None, none=0)


def _battery_w(option: Option, _van: Van | None) -> float | None:
    """What it draws from the battery at full power, W."""
    if not is_inverter(option) or lacks_output(option):
        return None
    return input_current_a(option.power.inverter_w or 0, 1, option.power.inverter_efficiency or 0)


def _current(joint: Joint, frame: Frame) -> float | None:
    stands, battery_w, lacks = joint
    if not stands:
        return None
    if lacks:
        missing("watts and efficiency of the inverter W")
    return input_current_a(battery_w, frame.settings[LOADED_V], 1)


def _current_line(amount: Span, frame: Frame) -> Entry:
    chosen = [p for p in frame.situation.placed if is_inverter(p.option)]
    if len(chosen) == 1:
        return Entry("", amount, option=chosen[0].option.id)
    return frame.entry("inverter at full power", amount)


_CURRENT = Measure(
    parts=(stands(is_inverter), summed(_battery_w), lacking(lacks_output)), rest=_current, rest_entry=_current_line
)
"""Current of the inverter at full power, A; nothing to measure without one."""


def pack_amps(option: Option, _van: Van | None) -> float | None:
    """Amps of all its packs together, before what several of them lose, A."""
    power = option.power
    return None if lacks_protection(option) else (power.bms_continuous_a or 0) * (power.packs_parallel or 0) or None


def packs(option: Option, _van: Van | None) -> float | None:
    """Packs of a battery, side by side."""
    return option.power.packs_parallel if is_battery(option) else None


def _battery_limit(joint: Joint, frame: Frame) -> float:
    many, amps, lacks = joint
    if lacks:
        missing("continuous amps of the battery A")
    return battery_limit_a(amps / many, many, frame.settings[SEVERAL]) if many > 0 else 0.0


def _lead_ah(option: Option, _van: Van | None) -> float | None:
    return option.power.battery_ah if option.power.chemistry in LEAD else None


def _lead_limit(joint: Joint, frame: Frame) -> float | None:
    capacity_ah, lacks = joint
    if lacks:
        missing("amp-hours and kind of the battery Ah")
    return lead_limit_a(capacity_ah, frame.settings["capacity_share"]) if capacity_ah else None


def _watts_of(tag: Tag) -> Part:
    return largest(lambda option, _van: option.power.watts_running if tag in option.gives else None, none=0)


def _silent_about_watts(option: Option) -> bool:
    return option.power.watts_running is None and not set(ASKED.values()).isdisjoint(option.gives)


def _named(frame: Frame) -> tuple[bool, ...] | None:
    words = frame.asked.words(MUST_RUN)
    return None if words is None else tuple(word in words for word in ASKED)


def _largest_load(joint: Joint, frame: Frame) -> float | None:
    *watts, lacks = joint
    if not any(watts) and not lacks:
        return None
    named = _named(frame)
    if named is None:
        missing("what must run away from the plug")
    if lacks:
        missing("watts of what must run W")
    return max((w for w, asked in zip(watts, named, strict=True) if asked), default=0) or None


def _load_signs(joint: Joint, frame: Frame) -> tuple[int, ...]:
    *watts, _lacks = joint
    named = _named(frame) or ()
    most = max((w for w, asked in zip(watts, named, strict=False) if asked), default=0)
    return tuple(1 if asked and w == most else 0 for w, asked in zip(watts, named, strict=False))


def _output_w(option: Option, _van: Van | None) -> float | None:
    return option.power.inverter_w if is_inverter(option) else None


def _output(joint: Joint, _frame: Frame) -> float | None:
    stands, watts, lacks = joint
    if not stands:
        return None
    return missing("watts of the inverter W") if lacks else watts


BATTERY_CURRENT = Tally(
    id=LedgerId("battery-current"),
    value=_CURRENT,
    bound=Measure(parts=(summed(packs), summed(pack_amps), lacking(lacks_protection)), rest=_battery_limit),
    settings=(LOADED_V, SEVERAL),
)
"""The inverter at full power against what the battery gives before it switches itself off; none carries nothing."""

LEAD_DRAW = Tally(
    id=LedgerId("lead-draw"),
    value=Measure(parts=_CURRENT.parts, rest=_current, rest_entry=_current_line),
    bound=Measure(parts=(summed(_lead_ah), lacking(lacks_size)), rest=_lead_limit),
    settings=(LOADED_V, "capacity_share"),
)
"""The inverter at full power against what a lead battery gives without harm; nothing bounds it without lead."""

INVERTER_LARGEST_LOAD = Tally(
    id=LedgerId("inverter-largest-load"),
    value=Measure(
        parts=(*(_watts_of(tag) for tag in ASKED.values()), lacking(_silent_about_watts)),
        rest=_largest_load,
        signs=_load_signs,
        bent=True,
    ),
    bound=Measure(parts=(stands(is_inverter), summed(_output_w), lacking(lacks_output)), rest=_output),
)
"""The strongest of the things that must run away from the plug, each by itself, against the inverter's watts."""
