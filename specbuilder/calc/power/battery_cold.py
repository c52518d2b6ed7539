"""What cold does to the battery: how much it still gives, and whether it may be charged."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache

from specbuilder.calc.formulas.energy import cold_share_between, lead_cold_share
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Asked
from specbuilder.calc.measuring.prepared import as_brought
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import BriefKey, Tag
from specbuilder.model.power import ColdCharging, InCold
from specbuilder.model.situation import Situation

from .power_parts import LITHIUM, OUTSIDE, is_battery

COLD = BriefKey("design_temp_c")
_SHARES, _CHARGING, _NEVER_BELOW = "battery-cold", "lithium-charging", "never below"
_HEATED, _CUT_OFF = Tag("battery-heated"), Tag("cold-charge-cut-off")


def share_at(catalogue: Catalogue, battery_c: float, settings: Mapping[str, float]) -> Callable[[Option], float]:
    """What so much cold leaves of each battery: lithium by the table of its kind, lead by the loss of a degree.

    Raises:
        OutsideValidity: from what it gives, for a warmth of which nothing is known.
    """

    def share(battery: Option) -> float:
        chemistry = battery.power.chemistry
        if chemistry in LITHIUM:
            return _between(_points(catalogue).get(chemistry, ()), battery_c)
        return lead_cold_share(battery_c, settings["lead_full_c"], settings["lead_loss_share_per_c"])

    return share


def _between(points: tuple[tuple[float, float], ...], battery_c: float) -> float:
    if not points:
        missing("share of a lithium battery left in the cold")
    if battery_c >= points[-1][0]:
        return points[-1][1]
    above = next((at for at, (warmth, _) in enumerate(points) if warmth > battery_c), 0)
    colder, warmer = points[max(above - 1, 0)], points[max(above, 1)]
    return cold_share_between(battery_c, *colder, *warmer)


@lru_cache(maxsize=4)
def _points(catalogue: Catalogue) -> Mapping[str, tuple[tuple[float, float], ...]]:
    """Warmth and share by kind of battery, coldest first."""
    table = catalogue.tables.get(_SHARES)
    found: dict[str, list[tuple[float, float]]] = {}
    for row in table.rows if table is not None else ():
        chemistry, warmth, share = row
        if isinstance(warmth, int | float) and isinstance(share, int | float):
            found.setdefault(str(chemistry), []).append((warmth, share))
    return {chemistry: tuple(sorted(points)) for chemistry, points in found.items() if len(points) > 1}


def least_charging_c(catalogue: Catalogue) -> float | None:
    """Warmth of the cell below which lithium may not be charged; None where the table says nothing."""
    table = catalogue.tables.get(_CHARGING)
    rows = table.rows if table is not None else ()
    found = [row[1] for row in rows if row[0] == _NEVER_BELOW]
    return next((float(c) for c in found if isinstance(c, int | float)), None)


def charging_in_cold(situation: Situation) -> InCold | None:
    """Whether the chosen battery may be charged at the cold of the brief; None without a battery."""
    chosen = [as_brought(placed) for placed in situation.placed if is_battery(placed.option)]
    if not chosen:
        return None
    asked = Asked(situation.facts)
    cold = asked.number(COLD)
    least_c = least_charging_c(situation.catalogue)
    gives = {tag for placed in situation.placed for tag in placed.option.gives}
    return InCold(
        options=tuple(option.id for option in chosen),
        charging=_charging(chosen, cold.least, cold.most, least_c, gives),
        cold_c=cold,
        least_c=least_c,
        outside=OUTSIDE in gives,
        assumed=bool(asked.assumed),
    )


def _charging(
    chosen: list[Option], coldest_c: float, warmest_c: float, least_c: float | None, gives: set[Tag]
) -> ColdCharging:
    if not any(option.power.chemistry in LITHIUM for option in chosen):
        known = all(option.power.chemistry for option in chosen)
        return ColdCharging.LEAD if known else ColdCharging.UNKNOWN
    if least_c is None:
        return ColdCharging.UNKNOWN
    if coldest_c >= least_c:
        return ColdCharging.MAY
    if warmest_c >= least_c:
        return ColdCharging.UNKNOWN
    if _HEATED in gives:
        return ColdCharging.WARMS_FIRST
    return ColdCharging.STOPS_ITSELF if _CUT_OFF in gives else ColdCharging.MUST_NOT
