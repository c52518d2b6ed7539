"""Nothing is said of power where a figure or a table is missing or absurd; what a customer brings is open."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

import pytest

from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner, Verdict
from specbuilder.model.situation import Placed
from tests.calc.power_beside_scene import read
from tests.calc.power_scene import RULES, build

GAPS: list[tuple[str, str, Mapping[str, float | str | None]]] = [
    ("usable-new", "battery-kettle", {"depth_of_discharge": None}),
    ("usable-in-cold", "battery-kettle", {"chemistry": "dilithium"}),
    ("refill-road", "dcdc-30", {"engine_charge_a": None}),
    ("refill-road", "dcdc-30", {"engine_charge_a": -30}),
    ("road-charge", "dcdc-30", {"engine_charge_a": -30}),
    ("refill-plug", "mains-charger-30", {"mains_charge_a": None}),
    ("refill-plug", "mains-charger-30", {"mains_charge_a": -15}),
    ("sun-summer", "solar-flush-100", {"solar_w": None}),
    ("sun-worst-month", "solar-flush-100", {"solar_w": -100}),
    ("winter-energy", "laptop", {"hours_winter": None}),
    ("summer-energy", "laptop", {"hours_summer": 30}),
    ("day-balance", "laptop", {"hours_winter": None}),
    ("inverter-left-on", "inverter-2000", {"inverter_idle_w": None}),
    ("mains-for-good", "battery-kettle", {"bms_continuous_a": None}),
    ("mains-in-hand", "inverter-2000", {"inverter_efficiency": 3}),
    ("inverter-start", "inverter-2000", {"inverter_surge_w": None}),
    ("inverter-start", "laptop", {"watts_peak": 60 * 26}),
    ("left-on-weak-pitch", "laptop", {"watts_running": None}),
]
WHOLE = (
    "battery-kettle",
    "place-in-galley",
    "dcdc-30",
    "mains-charger-30",
    "solar-flush-100",
    "laptop",
    "inverter-2000",
    "hook-up-bundle",
)


@pytest.mark.parametrize(("figure", "option", "figures"), GAPS, ids=[f"{f}-{o}-{next(iter(x))}" for f, o, x in GAPS])
def test_nothing_is_said_where_a_figure_is_missing_or_absurd(
    figure: str, option: str, figures: Mapping[str, float | str | None]
) -> None:
    known = RULES.options[OptionId(option)]
    spoilt = replace(known, power=replace(known.power, **figures))  # type: ignore[arg-type]
    rules = replace(RULES, options=MappingProxyType({**RULES.options, known.id: spoilt}))
    assert read(figure, build(*WHOLE)).value is not None
    reading = read(figure, build(*WHOLE, rules=rules, answers={"season": "winter", "drive_h_per_day": 1}))
    assert reading.value is None
    assert reading.verdict is Verdict.CANNOT_TELL
    assert reading.outside is not None
    assert reading.outside.quantity


@pytest.mark.parametrize("table", ["sun-hours", "sun-hours-by-month", "battery-cold"])
def test_nothing_is_said_without_its_table(table: str) -> None:
    rules = replace(RULES, tables=MappingProxyType({k: v for k, v in RULES.tables.items() if k != table}))
    figure = {"sun-hours": "sun-winter", "sun-hours-by-month": "sun-best-month"}.get(table, "usable-in-cold")
    reading = read(figure, build(*WHOLE, rules=rules))
    assert reading.value is None
    assert reading.outside is not None


def test_a_customers_own_thing_of_unknown_watts_is_open() -> None:
    theirs = Placed(option=RULES.options[OptionId("laptop")], owner=Owner.CUSTOMER)
    reading = read("inverter-start", build("inverter-2000", theirs))
    assert reading.value is not None
    assert not reading.value.settled
    assert [lack.group for lack in reading.lacks] == ["appliances"]
