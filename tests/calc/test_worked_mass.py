"""The house's worked example: a family of four in the short van, and the same in the electric one."""

from __future__ import annotations

import pytest

from specbuilder.calc import read_all
from specbuilder.calc.weights.mass import mass_effects
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Verdict
from specbuilder.model.parts import Water
from specbuilder.model.span import point
from tests import worlds
from tests.calc.scene import HUSH, catalogue, facts, situation, theirs

MASS = LedgerId("total-mass")
KIT_KG = {
    "roof": 96,
    "roof-bed": 26,
    "bench": 78,
    "galley": 92,
    "heater": 12,
    "gas-kit": 21,
    "fridge": 17,
    "battery": 19,
    "charger": 2,
    "hook-up": 6,
    "windows": 24,
    "turning-seats": 22,
    "awning": 21,
    "lining": 85,
}
TANK = worlds.option("tank-40", "water", water=Water(fresh_full_l=40, fresh_travel_l=40))
FILL_STOP = worlds.option("fill-stop", "water-extras", water=Water(fresh_travel_cap_l=20))
RULES = catalogue(
    [*(worlds.option(name, f"{name}-group", mass_kg=kg) for name, kg in KIT_KG.items()), TANK, FILL_STOP],
    [worlds.group("water-extras", any_=8)],
)


def test_the_kit_weighs_561_kg_and_248_are_left() -> None:
    reading = read_all(situation(RULES, *KIT_KG, "tank-40"))[MASS]
    kit = sum(e.amount.least for e in reading.entries if e.label in ("", "travel water") and e.option != "short")
    assert kit == 561
    assert reading.value is not None
    assert reading.room is not None
    assert reading.room.settled
    assert reading.room.least == pytest.approx(247.98)
    assert reading.verdict is Verdict.HOLDS
    assert reading.lacks == ()


def test_the_electric_van_without_its_heater_has_7_kg_left() -> None:
    kit = [name for name in KIT_KG if name != "heater"]
    room = read_all(situation(RULES, *kit, "tank-40", van=HUSH))[MASS].room
    assert room is not None
    assert room.least == pytest.approx(6.6)
    two_bikes = facts(extra_load_kg=30)
    reading = read_all(situation(RULES, *kit, "tank-40", van=HUSH, facts_=two_bikes))[MASS]
    assert reading.verdict is Verdict.BROKEN


def test_lines_say_who_draws_and_add_up() -> None:
    reading = read_all(situation(RULES, *KIT_KG, "tank-40"))[MASS]
    assert reading.value is not None
    assert sum(e.amount.least for e in reading.entries) == pytest.approx(reading.value.least)
    sizes = [e.amount.most for e in reading.entries]
    assert sizes == sorted(sizes, reverse=True)
    by_label = {e.label: e.amount.least for e in reading.entries if e.label}
    assert by_label == pytest.approx(
        {"van with driver": 1960, "people": 135, "luggage": 89.3, "travel water": 40, "last tenth of fuel": 6.72}
    )


def test_a_travel_fill_caps_the_water() -> None:
    full = situation(RULES, *KIT_KG, "tank-40")
    capped = situation(RULES, *KIT_KG, "tank-40", "fill-stop")
    room, more = read_all(full)[MASS].room, read_all(capped)[MASS].room
    assert room is not None
    assert more is not None
    assert more.least - room.least == pytest.approx(20)
    assert mass_effects(full)[OptionId("fill-stop")] == -20
    assert mass_effects(capped)[OptionId("fill-stop")] == -20
    assert mass_effects(capped)[OptionId("tank-40")] == 20
    assert mass_effects(situation(RULES, "fill-stop"))[OptionId("tank-40")] == 20
    assert mass_effects(situation(RULES))[OptionId("tank-40")] == 40


def test_a_customers_part_counts_with_its_own_mass() -> None:
    fridge = RULES.options[OptionId("fridge")]
    weighed = read_all(situation(RULES, theirs(fridge, 25)))[MASS]
    assert [e.amount for e in weighed.entries if e.option == "fridge"] == [point(25)]
    unweighed = read_all(situation(RULES, theirs(fridge, None)))[MASS]
    [line] = [e.amount for e in unweighed.entries if e.option == "fridge"]
    assert (line.least, line.most) == (0, 34)
    assert [lack.group for lack in unweighed.lacks] == ["fridge-group"]
    assert unweighed.value is not None
    assert not unweighed.value.settled
