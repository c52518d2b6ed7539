"""The closed van under the height bars that are common, whatever bar the brief names."""

from __future__ import annotations

from collections.abc import Mapping

from specbuilder.calc.formulas.gaps import barrier_room_mm
from specbuilder.calc.measuring.told import Found, ToldFigure, found_of
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span, point

from .height import CLOSED_HEIGHT

_LIMIT = BriefKey("parking_limit_mm")


def _under(situation: Situation, settings: Mapping[str, float]) -> Found:
    height = found_of(CLOSED_HEIGHT.read(situation))
    lacks = tuple(lack for lack in height.lacks if lack.key != _LIMIT)
    if height.value is None:
        return Found(lacks=lacks)
    bar, spare = settings["bar_mm"], settings["spare_mm"]
    ends = [bar - barrier_room_mm(mm - spare, bar, spare) for mm in (height.value.least, height.value.most)]
    return Found(value=Span(*ends), bound=point(bar), lacks=lacks)


def _bar(*, id: LedgerId) -> ToldFigure:
    return ToldFigure(id=id, find=_under, rests_on=(CLOSED_HEIGHT,), settings=("bar_mm", "spare_mm"))


UNDER_BAR_2000 = _bar(id=LedgerId("under-bar-2000"))
"""A bar of 2.0 m."""
UNDER_BAR_2100 = _bar(id=LedgerId("under-bar-2100"))
"""A bar of 2.1 m."""
UNDER_BAR_2200 = _bar(id=LedgerId("under-bar-2200"))
"""A bar of 2.2 m."""
