"""The sums of the example builds, worked out a second time from the data alone, so that a slip in the program shows.

Imports nothing of the program. ``python tests/independent/sums.py [NAME...]`` prints a table; ``results(name)`` gives
value and bound of each sum. A value of None means that the sum does not apply, a bound of None that there is none.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path

if __package__ in (None, ""):  # run as a file: the folder above the tests is not on the path then
    sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.independent import air_water_beside, living, power, power_beside, warmth_beside, weights
from tests.independent.build import Build, Reading, build

NAMES = [
    "saturday-family",
    "winter-walkers",
    "nurse-under-two-metres",
    "hush-family",
    "off-grid-pair",
    "wheelchair-day-van",
    "wide-bench-wrong-roof",
    "kettle-on-small-pack",
    "vanload-on-hushwain",
    "right-door-muddle",
]


def van_is_supplied(b: Build) -> bool:
    return any(part.id == "van-from-firm" for part in b.parts)


def price_gross(b: Build) -> Reading:
    """Rounded once, on the total, half up; in whole pence so that no fraction of a penny is lost to binary."""
    net = sum(part.option.get("price_net_pence", 0) * part.count for part in b.parts)
    if van_is_supplied(b) and b.brief["van_in_ceiling"] == "yes":
        net += b.van["price_net_supplied_pence"]
    return (net * 12 + 5) // 10, b.brief["ceiling_gross_pence"] or None  # a ceiling of 0 is none


def lead_weeks(b: Build) -> Reading:
    weeks = [part.option.get("lead_weeks", 0) for part in b.parts]
    if van_is_supplied(b):
        weeks.append(b.van["lead_weeks"])
    return max(weeks), b.brief["weeks_wanted"] or None  # 0 weeks wanted is any time


SUMS: dict[str, Callable[[Build], Reading]] = {
    "total-mass": weights.total_mass,
    "rear-axle": weights.rear_axle,
    "front-axle": weights.front_axle,
    "front-share": weights.front_share,
    "pay-mass": weights.pay_mass,
    "unladen-mass": weights.unladen_mass,
    "side-balance": weights.side_balance,
    "roof-load-closed": weights.roof_load_closed,
    "roof-load-raised": weights.roof_load_raised,
    "roof-bed-load": weights.roof_bed_load,
    "closed-height": weights.closed_height,
    "heat": living.heat,
    "high-vents": lambda b: living.vents(b, "high"),
    "low-vents": lambda b: living.vents(b, "low"),
    "waste-share": living.waste_share,
    "fresh-water-days": living.fresh_water_days,
    "heater-nights": living.heater_nights,
    "hook-up-watts": power.hook_up_watts,
    "alternator-input": power.alternator_input,
    "charge-rate": power.charge_rate,
    "daily-energy": power.daily_energy,
    "battery-nights": power.battery_nights,
    "battery-current": power.battery_current,
    "inverter-largest-load": power.inverter_largest_load,
    "lead-draw": power.lead_draw,
    "solar-voltage": power.solar_voltage,
    **power_beside.SUMS,
    "price-gross": price_gross,
    "lead-weeks": lead_weeks,
    **warmth_beside.SUMS,
    **air_water_beside.SUMS,
}


@cache
def results(name: str) -> dict[str, Reading]:
    """Value and bound of every sum of an example."""
    return {ledger: work_out(build(name)) for ledger, work_out in SUMS.items()}


def main(names: list[str]) -> None:
    for name in names or NAMES:
        print(name)
        for ledger, reading in results(name).items():
            print(f"  {ledger:24}", *(f"{'-' if x is None else f'{x:.2f}':>14}" for x in reading))


if __name__ == "__main__":
    main(sys.argv[1:])
