"""Told beside the inverter: what the battery carries through it, and the strongest start on it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product
from math import inf

from specbuilder.calc.formulas.inverter import battery_limit_a, mains_allowed_w, start_w
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, lacking, smallest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Lack
from specbuilder.model.span import Span
from specbuilder.model.vans import Van

from .energy_day import Use
from .hook_up import by_turns
from .inverter_load import LOADED_V, SEVERAL, pack_amps, packs, stands
from .power_parts import LEAD, is_battery, is_inverter, is_load, lacks_output, lacks_protection
from .told_power import NOTHING, Outlook, Told, power_figure

_IN_HAND, LEAD_LOADED_V = "in_hand_share", "lead_loaded_v"

Chosen = Sequence[tuple[Option, int]]


def _efficiency(option: Option, _van: Van | None) -> float | None:
    return option.power.inverter_efficiency if is_inverter(option) and not lacks_output(option) else None


def _is_lead(option: Option) -> bool:
    return is_battery(option) and option.power.chemistry in LEAD


_PARTS = (
    stands(is_battery),
    stands(_is_lead),
    summed(packs),
    summed(pack_amps),
    lacking(lacks_protection),
    smallest(_efficiency),
    lacking(lacks_output),
)


def _carried(joint: Joint, frame: Frame, share: float) -> float | None:
    battery, lead, many, amps, lacks_amps, efficiency, lacks_watts = joint
    if not battery or (efficiency == inf and not lacks_watts):
        return None
    if lacks_amps:
        missing("continuous amps of the battery A")
    if lacks_watts:
        missing("watts and efficiency of the inverter W")
    limit_a = battery_limit_a(amps / many, many, frame.settings[SEVERAL])
    return mains_allowed_w(limit_a, frame.settings[LEAD_LOADED_V if lead else LOADED_V], efficiency, share)


def _for_good(joint: Joint, frame: Frame) -> float | None:
    return _carried(joint, frame, 1)


def _with_some_left(joint: Joint, frame: Frame) -> float | None:
    return _carried(joint, frame, frame.settings[_IN_HAND])


MAINS_FOR_GOOD = Tally(
    id=LedgerId("mains-for-good"),
    value=Measure(parts=_PARTS, rest=_for_good, bent=True),
    settings=(LOADED_V, LEAD_LOADED_V, SEVERAL),
)
"""Mains watts the battery carries for as long as it lasts; nothing to measure without battery or inverter."""

MAINS_IN_HAND = Tally(
    id=LedgerId("mains-in-hand"),
    value=Measure(parts=_PARTS, rest=_with_some_left, bent=True),
    settings=(LOADED_V, LEAD_LOADED_V, SEVERAL, _IN_HAND),
)
"""The same with a fifth in hand."""


def _is_shared(option: Option) -> bool:
    return option.power.bus == "shared" and is_load(option)


def _takes_part(option: Option) -> bool:
    return is_inverter(option) or _is_shared(option)


def _largest_start(outlook: Outlook) -> Told:
    """Of every way it may turn out: the start, and the watts the inverter gives for it; None where none starts."""
    uses = outlook.uses(_takes_part)
    counts = [use.many for use in uses]
    ways = [tuple(zip(chosen, counts, strict=True)) for chosen in product(*(use.options for use in uses))]
    found = [start_and_surge(chosen) for chosen in ways]
    known = [pair for pair in found if pair is not None]
    if not known:
        return NOTHING
    starts, surges = zip(*known, strict=True)
    return Told(
        Span(min(starts), max(starts)),
        _lacks(uses),
        len(known) < len(found),
        bound=Span(min(surges), max(surges)),
    )


def start_and_surge(chosen: Chosen) -> tuple[float, float] | None:
    """The strongest start of one thing beside all that runs with it, and what the inverter gives for a moment, W.

    A thing that is stronger than the inverter never runs on it and does not count; of things used by turns the one
    that starts runs alone.
    """
    inverters = [option for option, _ in chosen if is_inverter(option)]
    if not inverters:
        return None
    if any(lacks_output(option) or option.power.inverter_surge_w is None for option in inverters):
        missing("watts and surge watts of the inverter W")
    most_w = max(option.power.inverter_w or 0 for option in inverters)
    carried = [(o, many) for o, many in chosen if _is_shared(o) and (o.power.watts_running or 0) <= most_w]
    starts = [_start(option, carried) for option, _ in carried]
    if not starts:
        return None
    return max(starts), max(option.power.inverter_surge_w or 0 for option in inverters)


def _start(option: Option, carried: Chosen) -> float:
    """Its own start beside the rest; without a peak on its plate it starts with what it runs on."""
    running = option.power.watts_running or 0
    rest = sum((o.power.watts_running or 0) * many for o, many in carried if not by_turns(o))
    beside = rest if by_turns(option) else rest - running
    peak = max(option.power.watts_peak or running, running)
    return start_w(running, peak / running, beside) if running else beside


def _lacks(uses: Sequence[Use]) -> Iterator[Lack]:
    """Every one that still may go several ways that differ in what they ask or give."""

    def told(option: Option) -> tuple[float | None, ...]:
        power = option.power
        own = (power.inverter_w, power.inverter_surge_w) if is_inverter(option) else ()
        return (*own, *((power.watts_running, power.watts_peak) if _is_shared(option) else ()))

    yield from (use.lack for use in uses if len({told(option) for option in use.options}) > 1)


INVERTER_START = power_figure(ledger=LedgerId("inverter-start"), value=_largest_start)
"""The strongest start on the inverter against what it gives for a moment."""
