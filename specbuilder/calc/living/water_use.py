"""Told beside the water: what a day takes, what the pump takes for it, what a full tank weighs, what stands outside."""

from __future__ import annotations

from specbuilder.calc.formulas.loads import travel_water_kg
from specbuilder.calc.formulas.validity import OutsideValidity, above
from specbuilder.calc.formulas.water import least_waste_l, pump_ah, pump_min, water_a_day_l
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest, smallest, summed
from specbuilder.calc.measuring.states import Joint, Slot
from specbuilder.calc.measuring.tally import Tally
from specbuilder.calc.weights.mass import travel_cap_l, travel_water_l
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, Tag
from specbuilder.model.ledger import Lack
from specbuilder.model.vans import Van

from .water import FRESH, WASTE_TANK

PUMP, OUTSIDE = Tag("pump"), Tag("tank-outside")
"""Given by what pumps the fresh water, and by a tank that hangs in the cold."""
_TRAVELLERS = BriefKey("adults"), BriefKey("children")


def _holds(option: Option, _van: Van | None) -> float | None:
    return 1 if FRESH in option.gives or option.water.fresh_full_l else None


def _pump_w(option: Option, _van: Van | None) -> float | None:
    return option.power.watts_running or None if PUMP in option.gives else None


def _pump_without_w(option: Option, _van: Van | None) -> float | None:
    return 1 if PUMP in option.gives and (option.power.watts_running or 0) <= 0 else None


def _unknown_travellers(frame: Frame) -> tuple[Slot, ...]:
    slots: list[Slot] = []
    for key in _TRAVELLERS:
        number = frame.asked.number(key)
        if not frame.asked.facts.known(key):
            slots.append(Slot(key, {(0, 0, 0, n): (0, 0) for n in (number.least, number.most)}, Lack(key=key)))
    return tuple(slots)


def _day_l(joint: Joint, frame: Frame) -> float | None:
    """What everybody who travels uses in a day; None without fresh water."""
    if not joint[0]:
        return None
    facts = frame.asked.facts
    known = sum(facts.number(key).least for key in _TRAVELLERS if facts.known(key))
    return water_a_day_l(known + joint[3], frame.settings["per_person_day_l"])


def _pumped_l(joint: Joint, frame: Frame) -> float | None:
    """What the pump moves in a day; None without one."""
    _, watts, without_watts, _ = joint
    return _day_l(joint, frame) if watts or without_watts else None


def _minutes(joint: Joint, frame: Frame) -> float | None:
    litres = _pumped_l(joint, frame)
    return None if litres is None else pump_min(litres, frame.settings["pump_l_per_min"])


def _amp_hours(joint: Joint, frame: Frame) -> float | None:
    litres = _pumped_l(joint, frame)
    if litres is None:
        return None
    _, watts, without_watts, _ = joint
    load_a = above("pump W", 0 if without_watts else watts) / above("volts at the pump V", frame.settings["pump_v"])
    return pump_ah(litres, frame.settings["pump_l_per_min"], load_a)


_DAY = largest(_holds, none=0), largest(_pump_w, none=0), largest(_pump_without_w, none=0), summed(lambda _o, _v: None)

WATER_A_DAY = Tally(
    id=LedgerId("water-a-day"),
    value=Measure(parts=_DAY, rest=_day_l, slots=_unknown_travellers),
    settings=("per_person_day_l",),
)
PUMP_MINUTES = Tally(
    id=LedgerId("pump-minutes"),
    value=Measure(parts=_DAY, rest=_minutes, slots=_unknown_travellers),
    settings=("per_person_day_l", "pump_l_per_min"),
)
PUMP_ENERGY = Tally(
    id=LedgerId("pump-energy"),
    value=Measure(parts=_DAY, rest=_amp_hours, slots=_unknown_travellers),
    settings=("per_person_day_l", "pump_l_per_min", "pump_v"),
)
"""What the pump takes from the battery in a day; nothing to measure without one."""


def _fresh_without_l(option: Option, _van: Van | None) -> float | None:
    return 1 if FRESH in option.gives and option.water.fresh_full_l <= 0 else None


def _beyond_travel_kg(joint: Joint, _frame: Frame) -> float | None:
    full_l, without_l, travel_l, cap_l = joint
    if without_l:
        return above("fresh water L", 0)
    if not full_l:
        return None
    on_the_road_kg = travel_water_kg(travel_l, cap_l)
    if on_the_road_kg > full_l:
        raise OutsideValidity("travel water L", travel_l, f"{full_l:g} or less, as the tanks hold no more")
    return full_l - on_the_road_kg


BEYOND_TRAVEL = Tally(
    id=LedgerId("water-beyond-travel"),
    value=Measure(
        parts=(
            summed(lambda option, _van: option.water.fresh_full_l or None),
            largest(_fresh_without_l, none=0),
            summed(travel_water_l),
            smallest(travel_cap_l),
        ),
        rest=_beyond_travel_kg,
    ),
)
"""What the tanks weigh more when they are full than on the road."""


def _outside_l(option: Option) -> float:
    """Water of a tank in the cold; a can that stands inside is none."""
    return option.water.fresh_full_l + option.water.waste_l if OUTSIDE in option.gives else 0


def _outside(joint: Joint, _frame: Frame) -> float | None:
    stands, without_litres = joint
    if not stands:
        return None
    return 0 if not without_litres else above("tank L", 0)


WATER_OUTSIDE = Tally(
    id=LedgerId("water-outside"),
    value=Measure(
        amount=_outside_l,
        parts=(
            largest(lambda option, _van: 1 if OUTSIDE in option.gives else None, none=0),
            largest(lambda option, _van: 1 if OUTSIDE in option.gives and _outside_l(option) <= 0 else None, none=0),
        ),
        rest=_outside,
    ),
)
"""Water that frost reaches, with a line for each tank; nothing to measure where all of it stands inside."""


def _is_waste(option: Option, _van: Van | None) -> float | None:
    return 1 if option.water.waste_l or WASTE_TANK in option.gives else None


def _waste_without_l(option: Option, _van: Van | None) -> float | None:
    fixed = option.water.waste_fixed or WASTE_TANK in option.gives
    return 1 if fixed and option.water.waste_l <= 0 else None


def _waste_on_board(joint: Joint, _frame: Frame) -> float | None:
    is_waste, without_l = joint
    if without_l:
        return above("waste L", 0)
    return 0 if is_waste else None


def _waste_needed_l(joint: Joint, frame: Frame) -> float | None:
    fresh_l, holds = joint
    return least_waste_l(fresh_l, frame.settings["least_share"]) if holds else None


WASTE_NEEDED = Tally(
    id=LedgerId("waste-needed"),
    value=Measure(
        parts=(summed(lambda option, _van: option.water.fresh_full_l or None), largest(_holds, none=0)),
        rest=_waste_needed_l,
    ),
    settings=("least_share",),
)
"""The smallest fixed waste tank for this much fresh water."""

WASTE_ON_BOARD = Tally(
    id=LedgerId("waste-on-board"),
    value=Measure(
        amount=lambda option: option.water.waste_l,
        parts=(largest(_is_waste, none=0), largest(_waste_without_l, none=0)),
        rest=_waste_on_board,
    ),
)
"""What fixed tanks and cans take together."""
