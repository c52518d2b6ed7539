"""How much fresh water is on board on the road: one figure, whatever each part says of itself."""

from __future__ import annotations

from dataclasses import dataclass

from .view import SpecView


@dataclass(frozen=True, slots=True, kw_only=True)
class TravelFill:
    """What the tanks of a build hold on the road, together."""

    litres: float
    tanks: int
    stopped: bool
    """A travel-fill stop ends it before the tanks are full."""


def travel_fill(view: SpecView) -> TravelFill:
    """What the tanks are filled to for the road, and no more than the lowest stop lets in."""
    waters = [(one.choice.count, one.option.water) for one in view.taken if one.option is not None]
    filled_l = sum(count * water.fresh_travel_l for count, water in waters)
    stops = [water.fresh_travel_cap_l for _, water in waters if water.fresh_travel_cap_l is not None]
    return TravelFill(
        litres=min((filled_l, *stops)),
        tanks=sum(count for count, water in waters if water.fresh_travel_l),
        stopped=any(stop < filled_l for stop in stops),
    )
