"""The campsite plug: everything that draws on it at once."""

from __future__ import annotations

from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId, Tag
from specbuilder.model.ledger import Entry
from specbuilder.model.span import Span, hull, point
from specbuilder.model.vans import Van

from .formulas.hookup import site_w
from .frame import Frame
from .measure import Measure, lacking, largest
from .power_parts import PLUG, SITE_AMPS, missing
from .states import Joint
from .tally import Tally

_TURNS = "kettle microwave hair-dryer"
BY_TURNS = frozenset(map(Tag, _TURNS.split()))
"""Given by things of which nobody runs two at the same moment: only the largest counts."""
_BUSES = ("hookup-only", "shared", "inverter")
_MAINS_V = "mains_v"


def _on_plug(option: Option) -> bool:
    return option.power.hookup_at_once and option.power.bus in _BUSES


def _by_turns(option: Option) -> bool:
    return not BY_TURNS.isdisjoint(option.gives)


def _together_w(option: Option) -> float:
    return (option.power.watts_running or 0) if _on_plug(option) and not _by_turns(option) else 0


def _turn_w(option: Option, _van: Van | None) -> float | None:
    return option.power.watts_running if _on_plug(option) and _by_turns(option) else None


def _lacks_watts(option: Option) -> bool:
    return _on_plug(option) and option.power.watts_running is None


def _has_plug(option: Option, _van: Van | None) -> float | None:
    return 1 if PLUG in option.gives else None


def _largest(joint: Joint, _frame: Frame) -> float | None:
    plug, watts, lacks = joint
    if not plug:
        return None
    return missing("watts on the plug W") if lacks else watts


def _amps(frame: Frame) -> tuple[float, ...]:
    """Amps of the weakest pitch, or all that may be answered while nobody has."""
    word = frame.asked.word(SITE_AMPS)
    answer = frame.asked.facts.get(SITE_AMPS)
    line = frame.situation.catalogue.brief.get(SITE_AMPS)
    words = (word or answer,) if answer is not None else line.values if line is not None else ()
    return tuple(float(str(w)) for w in words if str(w).replace(".", "", 1).isdigit())


def _pitch(frame: Frame) -> tuple[Entry, ...]:
    watts = hull(point(site_w(amps, frame.settings[_MAINS_V])) for amps in _amps(frame))
    return (frame.entry("pitch", watts or Span(0, 0), SITE_AMPS),)


def _is_pitch(_joint: Joint, frame: Frame) -> float:
    return 0.0 if _amps(frame) else missing("amps of the pitch A")


HOOK_UP_WATTS = Tally(
    id=LedgerId("hook-up-watts"),
    value=Measure(
        amount=_together_w,
        parts=(largest(_has_plug, none=0), largest(_turn_w, none=0), lacking(_lacks_watts)),
        rest=_largest,
        signs=lambda _joint, _frame: (0, 1, 0),
    ),
    bound=Measure(base=_pitch, rest=_is_pitch),
    settings=(_MAINS_V,),
)
"""What draws on the plug at once against the weakest pitch; nothing to measure without a plug."""
