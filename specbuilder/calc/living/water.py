"""How long the fresh water lasts, and whether the waste tank takes enough of it."""

from __future__ import annotations

from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.calc.formulas.water import waste_share, water_days
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest, summed
from specbuilder.calc.measuring.states import Joint, Slot
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, Tag
from specbuilder.model.ledger import Entry, Lack
from specbuilder.model.vans import Van

FRESH, WASTE_TANK = Tag("fresh-water"), Tag("waste-tank")
"""Given by what holds fresh water, and by a fixed waste tank."""
_NONE, _MEASURED, _UNMEASURED = 0, 1, 2
"""There is no such tank; it has its litres; nobody wrote them down."""
_TRAVELLERS = BriefKey("adults"), BriefKey("children")
_NIGHTS = BriefKey("nights_off_grid")


def _fresh_l(option: Option, _van: Van | None) -> float | None:
    return option.water.fresh_full_l or None


def _fresh(option: Option, _van: Van | None) -> float | None:
    if option.water.fresh_full_l > 0:
        return _MEASURED
    return _UNMEASURED if FRESH in option.gives else None


def _fixed_waste_l(option: Option, _van: Van | None) -> float | None:
    return option.water.waste_l or None if option.water.waste_fixed else None


def _waste(option: Option, _van: Van | None) -> float | None:
    if option.water.waste_fixed and option.water.waste_l > 0:
        return _MEASURED
    return _UNMEASURED if option.water.waste_fixed or WASTE_TANK in option.gives else None


def _measured(*tanks: float) -> bool:
    """Whether there are such tanks.

    Raises:
        OutsideValidity: when there are, but the litres of one are missing.
    """
    if _NONE in tanks:
        return False
    if _UNMEASURED in tanks:
        raise OutsideValidity("tank L", 0, "above 0")
    return True


def _share(joint: Joint, _frame: Frame) -> float | None:
    waste_l, waste, fresh_l, fresh = joint
    return waste_share(waste_l, fresh_l) if _measured(waste, fresh) else None


def _unknown_travellers(frame: Frame) -> tuple[Slot, ...]:
    slots: list[Slot] = []
    for key in _TRAVELLERS:
        number = frame.asked.number(key)
        if not frame.asked.facts.known(key):
            slots.append(Slot(key, {(0, 0, n): (0, 0) for n in (number.least, number.most)}, Lack(key=key)))
    return tuple(slots)


def _known_travellers(frame: Frame) -> float:
    facts = frame.asked.facts
    return sum(facts.number(key).least for key in _TRAVELLERS if facts.known(key))


def _days(joint: Joint, frame: Frame) -> float | None:
    fresh_l, fresh, travellers = joint
    if not _measured(fresh):
        return None
    return water_days(fresh_l, travellers + _known_travellers(frame), frame.settings["per_person_day_l"])


def _of_a_litre(frame: Frame) -> float:
    """Days that one litre lasts, for the line of each tank."""
    return water_days(1, _known_travellers(frame), frame.settings["per_person_day_l"])


def _day_lines(_joint: Joint, frame: Frame) -> tuple[int, ...]:
    """A line for each tank, as long as it is known who drinks from it."""
    return (int(all(frame.asked.facts.known(key) for key in _TRAVELLERS)), 0, 0)


def _nights(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("nights off the plug", frame.asked.number(_NIGHTS), _NIGHTS),)


def _least(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("least", frame.settings["least_share"]),)


WASTE_SHARE = Tally(
    id=LedgerId("waste-share"),
    value=Measure(
        parts=(summed(_fixed_waste_l), largest(_waste, none=_NONE), summed(_fresh_l), largest(_fresh, none=_NONE)),
        rest=_share,
    ),
    bound=Measure(base=_least),
    settings=("least_share",),
)
"""Fixed waste tanks as a part of the fresh water; nothing to measure without either."""

FRESH_WATER_DAYS = Tally(
    id=LedgerId("fresh-water-days"),
    value=Measure(
        parts=(summed(_fresh_l), largest(_fresh, none=_NONE), summed(lambda _option, _van: None)),
        rest=_days,
        signs=_day_lines,
        slots=_unknown_travellers,
        scale=lambda frame: _of_a_litre(frame) if any(_day_lines((), frame)) else 1,
    ),
    bound=Measure(base=_nights),
    settings=("per_person_day_l",),
)
"""Days the fresh water lasts everybody who travels, against the nights off the plug; nothing to measure without any."""
