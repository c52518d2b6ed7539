"""Which length of the roof the sun panels take, in rows across its flat part, against the length there is."""

from __future__ import annotations

from collections.abc import Mapping

from specbuilder.calc.formulas.gaps import panel_rows_mm
from specbuilder.calc.formulas.validity import above
from specbuilder.calc.measuring.prepared import prepared
from specbuilder.calc.measuring.told import NOTHING, Found, ToldFigure, of_each_van
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId, Tag
from specbuilder.model.kinds import RoofPart
from specbuilder.model.ledger import Lack
from specbuilder.model.situation import Situation
from specbuilder.model.span import point
from specbuilder.model.vans import Van

_KIT = Tag("roof-kit")
"""Given by a shell that takes the place of the van's own flat roof."""


def _is_panel(option: Option) -> bool:
    on_roof = option.space.roof_part in (RoofPart.TOP, RoofPart.MOVING, RoofPart.FIXED)
    return on_roof and bool(option.power.solar_w)


def _concerns(option: Option) -> bool:
    return _is_panel(option) or _KIT in option.gives


def _flat_mm(situation: Situation, van: Van) -> tuple[float, float]:
    """Length and width of the flat roof: that of the kit, no more than the van's own."""
    length, width = above("roof panel length mm", van.roof_panel_length_mm), van.roof_panel_width_mm
    kit = next((p.option for p in situation.placed if _KIT in p.option.gives), None)
    if kit is None:
        return length, width
    sizes = above("kit length mm", kit.space.length_mm or 0), above("kit width mm", kit.space.width_mm or 0)
    return min(length, sizes[0]), min(width, sizes[1])


def _taken(situation: Situation, _settings: Mapping[str, float]) -> Found:
    open_ = tuple(Lack(group=g) for g, options in prepared(situation).groups if any(map(_concerns, options)))
    panels = [(p.option.space, p.count) for p in situation.placed if _is_panel(p.option)]
    if not panels and not any(lack for lack in open_ if _may_bring_panels(situation, lack)):
        return NOTHING
    if open_:
        return Found(lacks=open_)

    def under(one: Situation, van: Van) -> Found:
        length, width = _flat_mm(one, van)
        rows = [panel_rows_mm(count, s.length_mm or 0, s.width_mm or 0, width) for s, count in panels]
        return Found(value=point(sum(rows)), bound=point(length))

    return of_each_van(situation, under)


def _may_bring_panels(situation: Situation, lack: Lack) -> bool:
    return lack.group is not None and any(map(_is_panel, situation.undecided.get(lack.group, ())))


PANELS_ON_ROOF = ToldFigure(id=LedgerId("panels-on-roof"), find=_taken, looks_at=_concerns)
"""Rows of sun panels on the flat roof."""
