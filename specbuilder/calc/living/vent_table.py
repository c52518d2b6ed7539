"""Told beside the fixed openings: the plan area, its row of the table and how near the next row is."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from specbuilder.calc.formulas.fresh_air import area_below_edge_pct, high_vent_met_share, needed_mm2, plan_area_m2
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.table_cells import columns
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId, Tag
from specbuilder.model.ledger import Entry
from specbuilder.model.vans import Van

from .fresh_air import OPEN_FLAME, high_area_mm2

IN_WALL = Tag("vent-in-wall")
"""Given by openings high in the walls: their catalogue figure is already half of what they open."""
_OPEN, _SEALED = "vents-open-flame", "vents-sealed"
_COLUMNS = "plan_area_up_to_m2", "high_in_roof_mm2", "low_mm2"


class Row(NamedTuple):
    """One row of the table."""

    up_to_m2: float
    high_mm2: float
    low_mm2: float
    last: bool
    """No larger van has another one."""


def _area_m2(frame: Frame) -> float:
    return plan_area_m2(frame.van.length_mm, frame.van.width_mm)


def _as_row(cells: tuple[float, ...], last: bool) -> Row:
    up_to_m2, high_mm2, low_mm2 = cells
    return Row(up_to_m2, high_mm2, low_mm2, last)


def _row(open_flame: bool, frame: Frame) -> Row:
    """The row this van falls in; its edge belongs to it.

    Raises:
        OutsideValidity: no length, no width, or no row that reaches so far.
    """
    area_m2, catalogue = _area_m2(frame), frame.situation.catalogue
    full, sealed = (sorted(columns(catalogue, table, *_COLUMNS)) for table in (_OPEN, _SEALED))
    rows = [] if open_flame else [_as_row(row, last=False) for row in sealed]
    rows += [_as_row(row, last=at == len(full)) for at, row in enumerate(full, 1)]
    for row in rows:
        if area_m2 <= row.up_to_m2:
            return row
    return missing(f"row of {area_m2:g} m2 in the table {_OPEN}")


def _flame(option: Option, _van: Van | None) -> float | None:
    return 1 if OPEN_FLAME in option.gives else None


def _of_row(id_: str, of: Callable[[Row, Frame], float | None], bound: Measure | None = None) -> Tally:
    def rest(joint: Joint, frame: Frame) -> float | None:
        return of(_row(bool(joint[0]) or OPEN_FLAME in frame.van.gives, frame), frame)

    return Tally(
        id=LedgerId(id_),
        value=Measure(parts=(largest(_flame, none=0),), rest=rest, needs_van=True),
        bound=bound,
        settings=() if bound is None else ("least_pct",),
    )


def _below_edge_pct(row: Row, frame: Frame) -> float | None:
    return None if row.last else area_below_edge_pct(_area_m2(frame), row.up_to_m2)


def _least_pct(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("least", frame.settings["least_pct"]),)


PLAN_AREA = Tally(id=LedgerId("plan-area"), value=Measure(rest=lambda _joint, frame: _area_m2(frame), needs_van=True))
"""Overall length times overall width, without mirrors."""
PLAN_AREA_ROW = _of_row("plan-area-row", lambda row, _frame: None if row.last else row.up_to_m2)
BELOW_NEXT_ROW = _of_row("plan-area-to-next-row", _below_edge_pct, bound=Measure(base=_least_pct))
"""So near the edge a bumper or an awning rail may lift the van into the next row; the last row has no edge."""
HIGH_BY_TABLE = _of_row("high-vents-by-table", lambda row, _frame: row.high_mm2)
LOW_BY_TABLE = _of_row("low-vents-by-table", lambda row, _frame: row.low_mm2)


def _in_roof_mm2(option: Option, _van: Van | None) -> float | None:
    return None if IN_WALL in option.gives else high_area_mm2(option) or None


def _in_wall_mm2(option: Option, _van: Van | None) -> float | None:
    return 2 * high_area_mm2(option) or None if IN_WALL in option.gives else None


def _met_pct(joint: Joint, frame: Frame) -> float | None:
    roof_mm2, wall_mm2, flame = joint
    if not wall_mm2:
        return None
    van = frame.van
    open_flame = bool(flame) or OPEN_FLAME in van.gives
    needed = needed_mm2(van.vent_high_flame_mm2, van.vent_high_sealed_mm2, open_flame)
    return 100 * high_vent_met_share(roof_mm2, wall_mm2, needed)


ROOF_AND_WALL = Tally(
    id=LedgerId("high-vents-mixed"),
    value=Measure(
        parts=(summed(_in_roof_mm2), summed(_in_wall_mm2), largest(_flame, none=0)), rest=_met_pct, needs_van=True
    ),
)
"""Openings in roof and walls together; nothing to measure while none is in a wall."""
