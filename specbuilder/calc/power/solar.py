"""Panels on a cold bright morning against what their controller takes."""

from __future__ import annotations

from math import inf

from specbuilder.calc.formulas.charging import cold_panel_v
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, lacking, largest, smallest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Entry
from specbuilder.model.span import Span
from specbuilder.model.vans import Van

from .power_parts import is_controller, is_panel, lacks_volts

_RISE, _COLDER, _IN_SERIES = "rise_share_per_c", "colder_by_c", "in_series_above_v"


def _panel(option: Option, _van: Van | None) -> float | None:
    return 1 if is_panel(option) else None


def _open_v(option: Option, _van: Van | None) -> float | None:
    return option.power.panel_voc_v if is_panel(option) else None


def _most_v(option: Option, _van: Van | None) -> float | None:
    return option.power.solar_controller_max_v if is_controller(option) else None


def _cold_v(joint: Joint, frame: Frame) -> float | None:
    """Of several controllers the one that takes least counts; of different panels in a row the highest voltage."""
    panels, open_v, most_v, lacks = joint
    if panels < 1:
        return None
    if lacks:
        missing("volts of panel or controller V")
    in_series = panels if most_v > frame.settings[_IN_SERIES] else 1
    return cold_panel_v(in_series, open_v, frame.settings[_RISE], frame.settings[_COLDER])


def _line(amount: Span, frame: Frame) -> Entry:
    panels = [p for p in frame.situation.placed if is_panel(p.option)]
    if len(panels) == 1:
        return Entry("", amount, option=panels[0].option.id, count=panels[0].count)
    return frame.entry("panels", amount)


def _allowed(joint: Joint, _frame: Frame) -> float | None:
    most_v, lacks = joint
    if lacks:
        missing("volts of panel or controller V")
    return None if most_v == inf else most_v


SOLAR_VOLTAGE = Tally(
    id=LedgerId("solar-voltage"),
    value=Measure(
        parts=(summed(_panel), largest(_open_v, none=0), smallest(_most_v), lacking(lacks_volts)),
        rest=_cold_v,
        rest_entry=_line,
        bent=True,
    ),
    bound=Measure(parts=(smallest(_most_v), lacking(lacks_volts)), rest=_allowed),
    settings=(_RISE, _COLDER, _IN_SERIES),
)
"""Open voltage of the panels in frost against the most the controller takes; side by side on a weak controller."""
