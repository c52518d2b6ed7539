"""A customer's battery or fridge counts by its own sheet; what is blank there is never the house's own figure."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import Any

import pytest

from specbuilder.calc import CALCULATIONS
from specbuilder.calc.circuits.circuit_schedule import circuit_schedule
from specbuilder.calc.limits.doubts import told
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitCode
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Owner, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.own_parts import SheetLine, blanks_of, kinds_of, lines_of
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import point
from specbuilder.model.spec import OwnPart
from tests.calc.power_scene import RULES, build

SUMS = {calculation.id: calculation for calculation in CALCULATIONS}
WHOLE = OwnPart(
    mass_kg=14,
    cut_out_mm="330 x 175",
    arrives="2031-06-03",
    continuous_a=100,
    capacity_ah=100,
    chemistry="LFP",
)
"""The same in all figures as the house's own small pack."""
BESIDE = ("place-in-galley", "inverter-600", "dcdc-30", "mains-charger-15", "hook-up-bundle", "fridge-drawer")


def theirs(option: str, sheet: OwnPart | None, rules: Catalogue = RULES) -> Placed:
    return Placed(option=rules.options[OptionId(option)], owner=Owner.CUSTOMER, own_part=sheet)


def says(id_: str, now: Situation) -> Reading:
    return told(SUMS[LedgerId(id_)], now)


def battery(sheet: OwnPart | None, rules: Catalogue = RULES) -> Situation:
    return build(theirs("battery-own", sheet, rules), *BESIDE, answers={"nights_off_grid": 2}, rules=rules)


def with_figures(option: str, **power: Any) -> Catalogue:
    known = RULES.options[OptionId(option)]
    other = replace(known, power=replace(known.power, **power))
    return replace(RULES, options=MappingProxyType({**RULES.options, known.id: other}))


BY_LINE = {
    SheetLine.AMPS: ("battery-current",),
    SheetLine.CAPACITY: ("battery-nights", "charge-rate", "battery-box"),
    SheetLine.KIND: ("battery-nights", "charge-rate"),
}


@pytest.mark.parametrize("id_", ["battery-current", "battery-nights", "charge-rate", "battery-box"])
def test_a_battery_with_the_figures_of_the_small_pack_counts_as_the_small_pack(id_: str) -> None:
    own = says(id_, battery(WHOLE))
    ours = says(id_, build("battery-small", *BESIDE, answers={"nights_off_grid": 2}))
    assert own.value is not None
    assert (own.value, own.bound, own.verdict) == (ours.value, ours.bound, ours.verdict)


@pytest.mark.parametrize("mass_kg", [14, None])
@pytest.mark.parametrize("line", BY_LINE)
def test_a_blank_on_the_sheet_of_a_battery_is_never_told_as_a_number(line: SheetLine, mass_kg: float | None) -> None:
    blank: dict[str, Any] = {line.value: getattr(OwnPart(), line.value)}
    now = battery(replace(WHOLE, mass_kg=mass_kg, **blank))
    for id_ in ("battery-current", "battery-nights", "charge-rate", "battery-box"):
        reading = says(id_, now)
        if id_ in BY_LINE[line]:
            assert reading.verdict is Verdict.CANNOT_TELL, id_
            assert reading.value is None or reading.bound is None, id_
            assert reading.outside is not None, id_
            assert (reading.outside.option, reading.outside.sheet) == ("battery-own", True), id_
            assert [lack.group for lack in reading.lacks] == ["battery"], id_
        else:
            assert reading.verdict is not Verdict.CANNOT_TELL, id_


@pytest.mark.parametrize("sheet", [None, OwnPart(), WHOLE])
def test_what_the_catalogue_says_of_a_customers_battery_changes_nothing(sheet: OwnPart | None) -> None:
    wild = with_figures("battery-own", battery_ah=900, bms_continuous_a=900, short_circuit_ka=40, packs_parallel=3)
    for id_ in ("battery-current", "battery-nights", "charge-rate", "battery-box"):
        one, other = says(id_, battery(sheet)), says(id_, battery(sheet, wild))
        assert (one.value, one.bound, one.verdict) == (other.value, other.bound, other.verdict), id_


def test_an_inverter_is_held_against_the_amps_of_the_label() -> None:
    inverter = RULES.options[OptionId("inverter-600")].power
    assert inverter.inverter_w
    assert inverter.inverter_efficiency
    asks_a = inverter.inverter_w / 12 / inverter.inverter_efficiency
    enough, too_few = (says("battery-current", battery(replace(WHOLE, continuous_a=asks_a + by))) for by in (0.5, -0.5))
    assert (enough.verdict, too_few.verdict) == (Verdict.HOLDS, Verdict.BROKEN)
    assert too_few.bound is not None
    assert too_few.bound.least == pytest.approx(asks_a - 0.5)


def test_a_battery_of_another_kind_than_its_place_has_rules_for_is_a_blank() -> None:
    option = RULES.options[OptionId("battery-own")]
    assert kinds_of(option) == ("LFP",)
    assert blanks_of(option, replace(WHOLE, chemistry="AGM")) == (SheetLine.KIND,)
    assert says("battery-nights", battery(replace(WHOLE, chemistry="AGM"))).verdict is Verdict.CANNOT_TELL
    assert set(kinds_of(RULES.options[OptionId("battery-lantern")])) == {"AGM", "gel", "wet lead"}


def test_a_battery_too_large_for_its_place_is_told_by_its_label() -> None:
    assert says("battery-box", battery(replace(WHOLE, capacity_ah=401))).verdict is Verdict.BROKEN


def test_the_main_cable_of_a_customers_battery_carries_what_its_label_says() -> None:
    def main(sheet: OwnPart | None) -> tuple[float, set[CircuitCode]]:
        lines = circuit_schedule(battery(sheet))
        line = next(line for line in lines if line.id == "battery-own-c1")
        return line.load_a, {problem.code for problem in line.problems}

    load_a, codes = main(replace(WHOLE, continuous_a=180))
    assert load_a == 180
    assert CircuitCode.OWN_PART_FIGURES not in codes
    assert CircuitCode.SHORT_CIRCUIT_UNKNOWN in codes, "no label says what it drives into a fault"
    assert CircuitCode.OWN_PART_FIGURES in main(replace(WHOLE, continuous_a=None))[1]


# --- the fridge


def fridge(sheet: OwnPart | None, *beside: str, **answers: Any) -> Situation:
    return build(theirs("fridge-own", sheet), *beside, answers=answers)


@pytest.mark.parametrize("door_mm", [380.0, 420.0, 480.0])
def test_the_gap_to_the_bench_goes_by_the_door_of_the_customers_fridge(door_mm: float) -> None:
    """Half as much nearer as the door is longer, for the middle of the fridge stays where it is drawn."""
    usual = says("fridge-door-gap", build("fridge-own", "bench-two")).value
    own = says("fridge-door-gap", fridge(OwnPart(door_mm=door_mm), "bench-two")).value
    assert usual is not None
    assert own == point(usual.least - (door_mm - 420) / 2)


def test_a_door_nobody_measured_is_told_as_unknown_and_a_drawer_needs_no_room() -> None:
    blank = says("fridge-door-gap", fridge(OwnPart(mass_kg=16, watts_w=45), "bench-two"))
    assert blank.verdict is Verdict.CANNOT_TELL
    assert blank.outside is not None
    assert (blank.outside.option, blank.outside.sheet) == ("fridge-own", True)
    assert not says("fridge-door-gap", fridge(OwnPart(door_mm=0), "bench-two")).applies
    assert not says("fridge-door-gap", fridge(OwnPart())).applies, "without a bench there is nothing in its way"


@pytest.mark.parametrize(("season", "share"), [("summer", 1.0), ("winter", 0.3 / 0.45)])
def test_the_day_of_its_paper_goes_before_watts_and_hours_of_the_house(season: str, share: float) -> None:
    for watts in (None, 45.0, 10.0):
        now = fridge(OwnPart(mass_kg=16, watts_w=watts, day_wh=400), season=season)
        value = says("daily-energy", now).value
        assert value is not None
        assert value.settled, "its watts are not asked for the day any more"
        assert value.least == pytest.approx(33 + 48 + 400 * share), watts


def test_a_sheet_asks_only_what_such_a_part_has() -> None:
    def asked(option: str) -> tuple[SheetLine, ...]:
        return lines_of(RULES.options[OptionId(option)])

    assert SheetLine.WATTS not in asked("battery-own")
    assert {SheetLine.DOOR, SheetLine.DAY} <= set(asked("fridge-own"))
    assert SheetLine.DOOR not in asked("fridge-drawer")
    assert SheetLine.DAY not in blanks_of(RULES.options[OptionId("fridge-own")], None), "a day may stay blank"
