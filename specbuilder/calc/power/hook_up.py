"""The campsite plug: everything that draws on it at once."""

from __future__ import annotations

from specbuilder.calc.formulas.hookup import site_w
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, lacking, largest
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId, Tag
from specbuilder.model.ledger import Entry
from specbuilder.model.span import Span, hull, point
from specbuilder.model.vans import Van

from .power_parts import PLUG, SITE_AMPS

_TURNS = "kettle microwave hair-dryer"
BY_TURNS = frozenset(map(Tag, _TURNS.split()))
"""Given by things of which nobody runs two at the same moment: only the largest counts."""
_BUSES = ("hookup-only", "shared", "inverter")
MAINS_V = "mains_v"


def on_plug(option: Option) -> bool:
    """It draws on the plug at the same moment as the others."""
    return option.power.hookup_at_once and option.power.bus in _BUSES


def by_turns(option: Option) -> bool:
    """Nobody runs two of these at the same moment."""
    return not BY_TURNS.isdisjoint(option.gives)


def together_w(option: Option) -> float:
    """Watts of what runs beside everything else, W."""
    return (option.power.watts_running or 0) if on_plug(option) and not by_turns(option) else 0


def turn_w(option: Option, _van: Van | None) -> float | None:
    """Watts of what runs by turns, W."""
    return option.power.watts_running if on_plug(option) and by_turns(option) else None


def lacks_plug_watts(option: Option) -> bool:
    """It draws on the plug, and nobody knows how much."""
    return on_plug(option) and option.power.watts_running is None


def has_plug(option: Option, _van: Van | None) -> float | None:
    """1 for a campsite plug."""
    return 1 if PLUG in option.gives else None


def _largest(joint: Joint, _frame: Frame) -> float | None:
    plug, watts, lacks = joint
    if not plug:
        return None
    return missing("watts on the plug W") if lacks else watts


def pitch_amps(frame: Frame) -> tuple[float, ...]:
    """Amps of the weakest pitch, or all that may be answered while nobody has."""
    word = frame.asked.word(SITE_AMPS)
    answer = frame.asked.facts.get(SITE_AMPS)
    line = frame.situation.catalogue.brief.get(SITE_AMPS)
    words = (word or answer,) if answer is not None else line.values if line is not None else ()
    return tuple(float(str(w)) for w in words if str(w).replace(".", "", 1).isdigit())


def _pitch(frame: Frame) -> tuple[Entry, ...]:
    watts = hull(point(site_w(amps, frame.settings[MAINS_V])) for amps in pitch_amps(frame))
    return (frame.entry("pitch", watts or Span(0, 0), SITE_AMPS),)


def _is_pitch(_joint: Joint, frame: Frame) -> float:
    return 0.0 if pitch_amps(frame) else missing("amps of the pitch A")


HOOK_UP_WATTS = Tally(
    id=LedgerId("hook-up-watts"),
    value=Measure(
        amount=together_w,
        parts=(largest(has_plug, none=0), largest(turn_w, none=0), lacking(lacks_plug_watts)),
        rest=_largest,
        signs=lambda _joint, _frame: (0, 1, 0),
    ),
    bound=Measure(base=_pitch, rest=_is_pitch),
    settings=(MAINS_V,),
)
"""What draws on the plug at once against the weakest pitch; nothing to measure without a plug."""
