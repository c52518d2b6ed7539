"""A part the customer brings: what its sheet asks, what is blank on it, and the part as the sheet has it.

What may hurt somebody is never taken from the part the house would have sold: an amp or an amp-hour nobody has read is
not known.
"""

from __future__ import annotations

from dataclasses import replace
from enum import StrEnum
from types import MappingProxyType

from .catalogue import Option
from .ids import CUSTOMER_PART, Tag
from .kinds import Owner
from .parts import LEAD, LITHIUM
from .plausible import OPTION_RANGES, OWN_MASS, Range
from .spec import Choice, OwnPart

BATTERY, FRIDGE, FRONT_DOOR = Tag("battery"), Tag("fridge"), Tag("front-door-fridge")
"""Given by a leisure battery, by a fridge, and by one whose door swings out to the front."""
_DAY_H = 24


class SheetLine(StrEnum):
    """What the sheet asks, by the field of ``OwnPart``."""

    MASS = "mass_kg"
    WATTS = "watts_w"
    CUT_OUT = "cut_out_mm"
    ARRIVES = "arrives"
    DOOR = "door_mm"
    DAY = "day_wh"
    AMPS = "continuous_a"
    CAPACITY = "capacity_ah"
    KIND = "chemistry"


RANGES = MappingProxyType(
    {
        SheetLine.MASS: OWN_MASS,
        SheetLine.WATTS: OPTION_RANGES["power.watts_running"],
        SheetLine.DOOR: Range(0, 2_000),
        SheetLine.DAY: Range(0, 10_000, open=True),
        SheetLine.AMPS: OPTION_RANGES["power.bms_continuous_a"],
        SheetLine.CAPACITY: OPTION_RANGES["power.battery_ah"],
    }
)
"""What a figure of a sheet can be at all."""
_MAY_STAY_BLANK = frozenset({SheetLine.DAY})
"""Without it the day is reckoned from its watts and the hours of the house, as that of every other thing."""


def lines_of(option: Option) -> tuple[SheetLine, ...]:
    """What the sheet of a part in this option's place asks, in the order it is asked."""
    battery = is_battery(option)
    found = [SheetLine.MASS] if battery else [SheetLine.MASS, SheetLine.WATTS]
    found += [SheetLine.CUT_OUT, SheetLine.ARRIVES]
    found += [SheetLine.AMPS, SheetLine.CAPACITY, SheetLine.KIND] if battery else []
    found += [SheetLine.DOOR] if FRONT_DOOR in option.gives else []
    found += [SheetLine.DAY] if FRIDGE in option.gives else []
    return tuple(found)


def blanks_of(option: Option, sheet: OwnPart | None) -> tuple[SheetLine, ...]:
    """What of it nobody has said yet; a battery of another kind than the option's is as good as unknown."""
    asked = (line for line in lines_of(option) if line not in _MAY_STAY_BLANK)
    return tuple(line for line in asked if sheet is None or _is_blank(option, sheet, line))


def kinds_of(option: Option) -> tuple[str, ...]:
    """The kinds of battery that may stand in this option's place: other kinds have other rules."""
    family = LITHIUM if option.power.chemistry in LITHIUM else LEAD
    return (option.power.chemistry, *sorted(family - {option.power.chemistry}))


def is_theirs(option: Option | None, choice: Choice) -> bool:
    """Whether the customer brings it: it was said so, or the option is nothing else."""
    return choice.owner is Owner.CUSTOMER or is_brought(option)


def owner_of(option: Option | None) -> Owner:
    """Whose part it is when it is taken."""
    return Owner.CUSTOMER if is_brought(option) else Owner.HOUSE


def is_brought(option: Option | None) -> bool:
    """Whether the option is a part the customer brings, whatever is said: the house has none of it to offer."""
    return option is not None and CUSTOMER_PART in option.gives


def is_battery(option: Option) -> bool:
    """A leisure battery."""
    return BATTERY in option.gives or option.power.battery_ah is not None


def with_sheet(option: Option, sheet: OwnPart | None) -> Option:
    """The option with what the customer's sheet says of battery, door and day; what is blank there is not known.

    Mass and watts, of which a blank is only a range, are no part of this.
    """
    sheet = sheet or OwnPart()
    if is_battery(option):
        option = _battery(option, sheet)
    if FRONT_DOOR in option.gives:
        option = _door(option, sheet.door_mm)
    return _day(option, sheet) if sheet.day_wh is not None and option.power.duty_summer else option


def _is_blank(option: Option, sheet: OwnPart, line: SheetLine) -> bool:
    if line is SheetLine.KIND:
        return sheet.chemistry not in kinds_of(option)
    return getattr(sheet, line.value) in (None, "")


def _battery(option: Option, sheet: OwnPart) -> Option:
    """Depth and volts go by the kind and stay; whether it breaks off a fault stands on no label."""
    known = sheet.chemistry in kinds_of(option)
    power = replace(
        option.power,
        battery_ah=sheet.capacity_ah,
        bms_continuous_a=sheet.continuous_a,
        bms_peak_a=None,
        packs_parallel=1,
        short_circuit_ka=None,
        chemistry=sheet.chemistry if known else "",
    )
    gives = option.gives if BATTERY in option.gives else (*option.gives, BATTERY)
    return replace(option, power=power, gives=gives)


def _door(option: Option, door_mm: float | None) -> Option:
    """The door is as long as the fridge is along the wall; one of nought is a drawer or a lid."""
    if door_mm == 0:
        gives = tuple(tag for tag in option.gives if tag != FRONT_DOOR)
        return replace(option, gives=gives, space=replace(option.space, swing_mm=None))
    return replace(option, space=replace(option.space, length_mm=door_mm, swing_mm=door_mm))


def _day(option: Option, sheet: OwnPart) -> Option:
    """The day of its paper in summer; in winter as much less as with the house's own."""
    power, day_wh = option.power, sheet.day_wh or 0
    watts_w = max(sheet.watts_w or 0, day_wh / _DAY_H)
    duty = day_wh / _DAY_H / watts_w if watts_w else 0
    colder = (power.duty_winter or 0) / power.duty_summer if power.duty_summer and power.duty_winter else 1
    told = replace(
        power,
        watts_running=watts_w,
        hours_summer=_DAY_H,
        hours_winter=_DAY_H,
        duty_summer=duty,
        duty_winter=min(duty * colder, 1),
    )
    return replace(option, power=told)
