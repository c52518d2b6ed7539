"""Lifting a tilting roof: the push at its front edge while it is shut, and what holds it up when it is raised.

Both count everything that rides on the moving part, and the struts as weak as the cold of the brief makes them. A roof
that rises level has no hinge: nothing here speaks of it. Figures show where to look; the kit's own paper and a trial
with the real load decide.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import NamedTuple

from specbuilder.calc.formulas.lifting_roof import (
    push_at_edge_n,
    strut_at_temperature_n,
    strut_moment_nm,
    up_force_n,
    weight_moment_nm,
)
from specbuilder.calc.measuring.positions import position_behind_front_axle_mm
from specbuilder.calc.measuring.prepared import prepared
from specbuilder.calc.measuring.table_cells import cell
from specbuilder.calc.measuring.told import NOTHING, Found, ToldFigure, of_each_van
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import BriefKey, LedgerId, OptionId
from specbuilder.model.kinds import RoofPart
from specbuilder.model.ledger import Lack
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span, point
from specbuilder.model.vans import Van

from .roof import LIFTS

_TILTING, _LEVEL, _STRUTS = "tilting-roofs", "level-roofs", "roof-struts"
_COLD = BriefKey("design_temp_c")
_MOVES = RoofPart.MOVING, RoofPart.TOP


class Roof(NamedTuple):
    """A tilting roof as its table has it."""

    moving_kg: float
    centre_m: float
    hinge_to_edge_m: float
    hinge_x_mm: float
    struts: float
    strut_n: float
    pick_up_m: float
    strut_closed_deg: float
    opens_deg: float
    strut_open_deg: float


def tilting_roof(catalogue: Catalogue, roof: OptionId) -> Roof:
    """The row of a roof.

    Raises:
        OutsideValidity: when a figure of it is missing.
    """
    return Roof(*(cell(catalogue, _TILTING, roof, column) for column in Roof._fields))


def _rows(catalogue: Catalogue, table: str) -> tuple[OptionId, ...]:
    """The options a table speaks of."""
    found = catalogue.tables.get(table)
    return tuple(OptionId(str(row[0])) for row in found.rows) if found is not None else ()


def rides(option: Option) -> bool:
    """It goes up with a lifting roof."""
    return option.space.roof_part in _MOVES


def _shut(roof: Roof, load: list[tuple[float, float]], strut_n: float) -> float:
    weight = weight_moment_nm([(roof.moving_kg, roof.centre_m), *load], 0)
    struts = strut_moment_nm(int(roof.struts), strut_n, roof.pick_up_m, roof.strut_closed_deg)
    return push_at_edge_n(weight, struts, roof.hinge_to_edge_m)


def _raised(roof: Roof, load: list[tuple[float, float]], strut_n: float) -> float:
    weight = weight_moment_nm([(roof.moving_kg, roof.centre_m), *load], roof.opens_deg)
    struts = strut_moment_nm(int(roof.struts), strut_n, roof.pick_up_m, roof.strut_open_deg)
    return up_force_n(weight, struts, roof.hinge_to_edge_m)


def _figure(
    force: Callable[[Roof, list[tuple[float, float]], float], float], setting: str, *, id: LedgerId
) -> ToldFigure:
    def find(situation: Situation, settings: Mapping[str, float]) -> Found:
        lacks = _open(situation)
        if lacks:
            return Found(lacks=lacks)
        lifting = next((p.option for p in situation.placed if LIFTS in p.option.gives), None)
        if lifting is None or lifting.id in _rows(situation.catalogue, _LEVEL):
            return NOTHING
        roof = tilting_roof(situation.catalogue, lifting.id)
        bound = point(settings[setting])
        return of_each_van(situation, lambda one, van: _ends(one, van, roof, force, bound))

    return ToldFigure(id=id, find=find, looks_at=_concerns, settings=(setting,))


def _ends(
    situation: Situation,
    van: Van,
    roof: Roof,
    force: Callable[[Roof, list[tuple[float, float]], float], float],
    bound: Span,
) -> Found:
    """Over all the cold that is asked for, and all that a part nobody has weighed may weigh."""
    more = {row: cell(situation.catalogue, _STRUTS, row, "more_n") for row in _rows(situation.catalogue, _STRUTS)}
    rated = roof.strut_n + sum(more.get(p.option.id, 0) * p.count for p in situation.placed)
    cold = situation.facts.number(_COLD)
    struts = [strut_at_temperature_n(rated, c) for c in (cold.least, cold.most)]
    loads = _riding(situation, roof, van)
    found = [force(roof, [(ways[at], x) for ways, x in loads], n) for at in (0, 1) for n in struts]
    unweighed = [Lack(group=p.option.group) for p, _ in prepared(situation).unweighed if rides(p.option)]
    unknown = [] if situation.facts.known(_COLD) else [Lack(key=_COLD)]
    return Found(
        value=Span(min(found), max(found)),
        bound=bound,
        lacks=tuple(dict.fromkeys((*unweighed, *unknown))),
        assumed=(_COLD,) if _COLD in situation.facts.assumed else (),
    )


def _riding(situation: Situation, roof: Roof, van: Van) -> list[tuple[tuple[float, float], float]]:
    """Least and most kilograms of each thing on the moving part, and its distance from the hinge in metres."""
    prep = prepared(situation)
    found: list[tuple[tuple[float, float], float]] = []
    for _, count, own, placed in prep.settled:
        option = own or placed.option
        if rides(option):
            kg = option.space.roof_mass_kg * count
            found.append(((kg, kg), _from_hinge_m(option, roof, van)))
    for placed, variants in prep.unweighed:
        if rides(placed.option):
            each = [option.space.roof_mass_kg * placed.count for option in variants]
            found.append(((min(each), max(each)), _from_hinge_m(placed.option, roof, van)))
    return found


def _from_hinge_m(option: Option, roof: Roof, van: Van) -> float:
    at_mm = position_behind_front_axle_mm(van, option.position) - van.datum_from_front_axle_mm
    return (roof.hinge_x_mm - at_mm) / 1000


def _open(situation: Situation) -> tuple[Lack, ...]:
    """Questions still open that bring a lifting roof or something on it."""
    return tuple(Lack(group=g) for g, options in prepared(situation).groups if any(map(_concerns, options)))


def _concerns(option: Option) -> bool:
    return LIFTS in option.gives or rides(option)


ROOF_PUSH = _figure(_shut, "most_n", id=LedgerId("roof-push"))
"""The push at the front edge that starts the shut roof, against what one person pushes overhead."""
ROOF_HOLD = _figure(_raised, "least_n", id=LedgerId("roof-hold"))
"""What the struts push the raised roof up by at its front edge, beyond everything on it."""
