"""Every ledger says on which figures it rests, by keys that are looked at; a sound catalogue loses no reading to it."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from specbuilder.calc import CALCULATIONS
from specbuilder.calc.limits.doubts import doubts_of, told
from specbuilder.calc.limits.missing import GAPS
from specbuilder.calc.limits.rests_on import RESTS_ON, keys_of
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Verdict
from specbuilder.model.plausible import OPTION_RANGES, VAN_RANGES
from tests.calc.power_scene import RULES, build

ON_NO_FIGURE_BY_ITSELF = {"price-gross", "quote-age", "zone-use"}
"""Money is whole pence of any size, ages and claims are counted."""
_PLACES = {"mass_kg", "position.x_mm", "position.y_mm", "position.z_mm"}


def test_every_ledger_names_its_figures() -> None:
    of_their_own = {ledger.id for ledger in RULES.ledgers.values() if ledger.part_of is None}
    assert of_their_own == set(RESTS_ON) | ON_NO_FIGURE_BY_ITSELF
    for keys in RESTS_ON.values():
        assert keys.options <= set(OPTION_RANGES) | _PLACES
        assert keys.vans <= set(VAN_RANGES)
    assert {ledger for gap in GAPS for ledger in gap.ledgers} <= set(RESTS_ON)


def test_what_is_told_beside_a_ledger_rests_on_what_the_ledger_does() -> None:
    beside = [ledger for ledger in RULES.ledgers.values() if ledger.part_of is not None]
    assert beside
    for ledger in beside:
        assert keys_of(RULES, ledger.id) == keys_of(RULES, ledger.part_of or ledger.id)


def test_in_a_sound_catalogue_nothing_changes() -> None:
    assert not doubts_of(RULES)
    situation = build("battery-lantern", "place-in-galley", "inverter-600", "laptop")
    for calculation in CALCULATIONS:
        plain, reading = calculation.read(situation), told(calculation, situation)
        assert replace(reading, outside=None) == replace(plain, outside=None), calculation.id


def test_what_is_not_there_to_measure_stays_so() -> None:
    """A battery without its amps is no fault of a build without an inverter."""
    battery = RULES.options[OptionId("battery-lantern")]
    poorer = replace(battery, power=replace(battery.power, bms_continuous_a=-1))
    rules = replace(RULES, options=MappingProxyType({**RULES.options, battery.id: poorer}))
    current = next(c for c in CALCULATIONS if c.id == LedgerId("battery-current"))
    alone = told(current, build("battery-lantern", rules=rules))
    assert not alone.applies
    both = told(current, build("battery-lantern", "inverter-600", rules=rules))
    assert (both.value, both.verdict) == (None, Verdict.CANNOT_TELL)
    assert both.outside is not None
    assert (both.outside.quantity, both.outside.option) == ("power.bms_continuous_a", battery.id)
