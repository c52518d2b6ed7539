"""What the finished van may weigh, and what the weighbridge must show before it is handed over.

The van of the weighbridge is in running order: every part, water at its travel fill, nine tenths of fuel, the driver,
nothing else. Each part may be off by itself, so errors add in quadrature; what was weighed is not off.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from specbuilder.calc.formulas.validity import above
from specbuilder.calc.formulas.weighing import errors_together_kg, tolerance_band_kg
from specbuilder.calc.measuring.positions import position_behind_front_axle_mm
from specbuilder.calc.measuring.prepared import as_brought
from specbuilder.calc.measuring.tally import Tally
from specbuilder.calc.measuring.told import Found, ToldFigure, found_of, of_each_van
from specbuilder.model.ids import GroupId, LedgerId
from specbuilder.model.kinds import Basis
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span
from specbuilder.model.vans import Van

from .axles import Share, on_front, on_rear, stands_elsewhere
from .load_cases import RUNNING_ORDER_FRONT, RUNNING_ORDER_REAR, RUNNING_ORDER_TOTAL, whole
from .mass import part_mass_kg

_PLACE = GroupId("battery-place")
_SETTINGS = "part_error_share", "van_error_kg"


def _x_mm(situation: Situation, placed: Placed, van: Van) -> float:
    """Behind the front axle; a battery stands where its place is."""
    position = placed.option.position
    if stands_elsewhere(placed.option):
        place = next((p.option for p in situation.placed if p.option.group == _PLACE), None)
        position = place.position if place is not None else None
    return position_behind_front_axle_mm(van, position)


def _was_weighed(placed: Placed) -> bool:
    sheet = placed.own_part
    return placed.option.basis is Basis.MEASURED or (sheet is not None and sheet.mass_kg is not None)


def _errors_kg(situation: Situation, van: Van, share: Share, settings: Mapping[str, float]) -> Iterator[float]:
    """How far each thing may be off in what is weighed. Several of a kind are off together."""
    if van.basis is not Basis.MEASURED and situation.facts.weighed is None:
        centre_mm = van.wheelbase_mm * van.mro_rear_kg / above("running order kg", van.mro_kg)
        yield settings["van_error_kg"] * abs(share(centre_mm, van))
    for placed in situation.placed:
        kg = part_mass_kg(as_brought(placed)) * placed.count
        if placed.option.van is None and kg and not _was_weighed(placed):
            yield settings["part_error_share"] * abs(kg * share(_x_mm(situation, placed, van), van))


def _must_show(predicted: Tally, share: Share, *, id: LedgerId) -> ToldFigure:
    def find(situation: Situation, settings: Mapping[str, float]) -> Found:
        def under(one: Situation, van: Van) -> Found:
            found = found_of(predicted.read(one))
            if found.value is None:
                return found
            off = errors_together_kg(_errors_kg(one, van, share, settings))
            value = Span(found.value.least - off, found.value.most + off)
            return Found(value=value, lacks=found.lacks, assumed=found.assumed)

        return of_each_van(situation, under)

    return ToldFigure(id=id, find=find, rests_on=(predicted,), settings=_SETTINGS)


def _band(situation: Situation, settings: Mapping[str, float]) -> Found:
    found = found_of(RUNNING_ORDER_TOTAL.read(situation))
    if found.value is None:
        return Found(lacks=found.lacks)
    share = settings["tolerance_share"]
    ends = tolerance_band_kg(found.value.least, share)[0], tolerance_band_kg(found.value.most, share)[1]
    return Found(value=Span(*ends), lacks=found.lacks, assumed=found.assumed)


WEIGHBRIDGE_TOTAL = _must_show(RUNNING_ORDER_TOTAL, whole, id=LedgerId("weighbridge-total"))
"""The whole van."""
WEIGHBRIDGE_FRONT = _must_show(RUNNING_ORDER_FRONT, on_front, id=LedgerId("weighbridge-front"))
"""Its front axle."""
WEIGHBRIDGE_REAR = _must_show(RUNNING_ORDER_REAR, on_rear, id=LedgerId("weighbridge-rear"))
"""Its rear axle."""
FINISHED_WEIGHT_BAND = ToldFigure(
    id=LedgerId("finished-weight-band"), find=_band, rests_on=(RUNNING_ORDER_TOTAL,), settings=("tolerance_share",)
)
"""Between which masses a declared one may turn out."""
