"""Heat, fresh air, water and heater fuel: what counts when, and what is said where figures are missing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

import pytest

from specbuilder.calc import CALCULATIONS, read_all
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import LedgerKind, Sense, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.parts import Heat, Water
from specbuilder.model.rules import WithinBound
from specbuilder.model.situation import Placed
from specbuilder.model.span import Span, point
from specbuilder.rulegraph.truth import truth_of
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests import worlds
from tests.calc.scene import FENWAIN, FUEL_ENERGY, LIVING, base_van, catalogue, facts, situation

DIESEL = Heat(heater_kw=2, heater_fuel="diesel", fuel_l_per_h=0.24)
GAS_KIT = Heat(vent_high_mm2=10_000, vent_low_mm2=1500)
OPTIONS = [
    worlds.option("air-heater", "heater", gives="heater fuel-line", heat=DIESEL),
    worlds.option("petrol-heater", "heater", gives="heater fuel-line", heat=replace(DIESEL, heater_fuel="petrol")),
    worlds.option("wood-heater", "heater", gives="heater fuel-line", heat=replace(DIESEL, heater_fuel="wood")),
    worlds.option("plug-heater", "heater", gives="heater", heat=Heat(heater_kw=1.8, heater_fuel="hook-up")),
    worlds.option("cold", "heater"),
    worlds.option("no-figure", "heater", gives="heater fuel-line", heat=Heat(heater_fuel="diesel", fuel_l_per_h=0.24)),
    worlds.option("no-rate", "heater", gives="heater fuel-line", heat=replace(DIESEL, fuel_l_per_h=0)),
    worlds.option(
        "lid", "roof", gives="elevating-roof", heat=Heat(heat_loss_down_w_per_k=1.6, heat_loss_up_w_per_k=36)
    ),
    worlds.option("steel", "roof"),
    worlds.option("liner", "cloth", heat=Heat(heat_loss_up_w_per_k=-11)),
    worlds.option("screens", "screens", heat=Heat(heat_loss_down_w_per_k=-9.5)),
    worlds.option("hole", "screens", heat=Heat(heat_loss_down_w_per_k=-900)),
    worlds.option("gas-kit", "cooking", gives="open-flame", heat=GAS_KIT),
    worlds.option("fuel-hob", "cooking", heat=Heat(cooker_fuel="diesel")),
    worlds.option("plate", "cooking"),
    worlds.option("small-set", "vents", heat=Heat(vent_high_mm2=1500, vent_low_mm2=500)),
    worlds.option("tank", "fresh", gives="fresh-water", water=Water(fresh_full_l=40)),
    worlds.option("can", "fresh", gives="fresh-water", water=Water(fresh_full_l=20)),
    worlds.option("dry-tank", "fresh", gives="fresh-water"),
    worlds.option("no-water", "fresh"),
    worlds.option("waste-tank", "waste", gives="waste-tank", water=Water(waste_l=20, waste_fixed=True)),
    worlds.option("waste-can", "waste", water=Water(waste_l=20)),
    worlds.option("waste-unmeasured", "waste", gives="waste-tank", water=Water(waste_fixed=True)),
    worlds.option("own-tank", "takeoff", gives="own-fuel-tank", heat=Heat(own_tank_l=9)),
    worlds.option("own-tank-unmeasured", "takeoff", gives="own-fuel-tank"),
    worlds.option("tap", "takeoff"),
]
NO_FIGURES = replace(FENWAIN, vent_high_flame_mm2=0, vent_low_sealed_mm2=0, ua_w_per_k=0, tank_l=0)
UNFILLED = base_van("unfilled", NO_FIGURES)
SHORT = base_van("short", FENWAIN)
RULES = catalogue(OPTIONS, vans=(SHORT, UNFILLED))
SHIPPED = read_rules(rules_folder())
HERE = "heat", "high-vents", "low-vents", "waste-share", "fresh-water-days", "heater-nights"


def read(id_: str, *choices: str | Placed, rules: Catalogue = RULES, **how: object) -> Reading:
    """One ledger of these choices."""
    return read_all(situation(rules, *choices, **how))[LedgerId(id_)]  # type: ignore[arg-type]  # as situation() takes them


def set_to(id_: str, **changed: float) -> Catalogue:
    """The same rules with other house settings."""
    spec = RULES.ledgers[LedgerId(id_)]
    other = replace(spec, settings=MappingProxyType({**spec.settings, **changed}))
    return replace(RULES, ledgers=MappingProxyType({**RULES.ledgers, spec.id: other}))


@pytest.mark.parametrize(
    ("ledger", "choices", "value", "bound", "verdict"),
    [
        ("heat", ["air-heater", "steel"], 2, 57 * 0.018, Verdict.HOLDS),
        ("heat", ["air-heater", "lid"], 2, (57 + 1.6 + 36) * 0.018, Verdict.HOLDS),
        ("heat", ["air-heater", "liner"], 2, 57 * 0.018, Verdict.HOLDS),
        ("heat", ["air-heater", "lid", "liner", "screens"], 2, (57 + 1.6 + 36 - 11 - 9.5) * 0.018, Verdict.HOLDS),
        ("heat", ["plug-heater"], 0, 57 * 0.018, Verdict.BROKEN),
        ("high-vents", ["gas-kit"], 10_000, 10_000, Verdict.HOLDS),
        ("high-vents", ["small-set"], 1500, 1500, Verdict.HOLDS),
        ("high-vents", ["plate"], 0, 1500, Verdict.BROKEN),
        ("low-vents", ["gas-kit"], 1500, 1500, Verdict.HOLDS),
        ("low-vents", [], 0, 500, Verdict.BROKEN),
        ("waste-share", ["tank", "waste-tank"], 0.5, 0.5, Verdict.HOLDS),
        ("fresh-water-days", ["tank"], 1, 2, Verdict.BROKEN),
        ("heater-nights", ["air-heater"], 20 * 0.85 * 9.97 / 8.1, 2, Verdict.HOLDS),
        ("heater-nights", ["petrol-heater"], 20 * 0.85 * 8.8 / 8.1, 2, Verdict.HOLDS),
        ("heater-nights", ["air-heater", "own-tank"], 9 * 0.85 * 9.97 / 8.1, 2, Verdict.HOLDS),
        ("heater-nights", ["air-heater", "fuel-hob"], 20 / (8.1 / 0.85 / 9.97 + 0.12), 2, Verdict.HOLDS),
    ],
)
def test_settled_builds(ledger: str, choices: list[str], value: float, bound: float, verdict: Verdict) -> None:
    reading = read(ledger, *choices)
    assert reading.value is not None
    assert reading.bound is not None
    assert (reading.value.least, reading.value.most) == pytest.approx((value, value), abs=1e-6)
    assert (reading.bound.least, reading.bound.most) == pytest.approx((bound, bound), abs=1e-6)
    assert reading.verdict is verdict
    assert not reading.lacks


@pytest.mark.parametrize(
    ("ledger", "choices"),
    [
        ("heat", ["cold"]),
        ("waste-share", ["tank", "waste-can"]),
        ("waste-share", ["no-water", "waste-tank"]),
        ("fresh-water-days", ["no-water"]),
        ("heater-nights", ["plug-heater", "fuel-hob"]),
    ],
)
def test_with_nothing_to_measure_nothing_breaks(ledger: str, choices: list[str]) -> None:
    reading = read(ledger, *choices)
    assert not reading.applies
    assert reading.verdict is Verdict.HOLDS


def test_the_roof_counts_down_unless_somebody_sleeps_upstairs() -> None:
    nobody = read("heat", "air-heater", "lid", facts_=facts(sleepers_upstairs=0))
    assert nobody.bound == point(round((57 + 1.6) * 0.018, 6))
    unknown = read("heat", "air-heater", "lid", facts_=facts(unknown=["sleepers_upstairs"]))
    assert unknown.bound == Span(round((57 + 1.6) * 0.018, 6), round((57 + 1.6 + 36) * 0.018, 6))
    assert [lack.key for lack in unknown.lacks] == ["sleepers_upstairs"]
    assert not read("heat", "air-heater", "steel", facts_=facts(unknown=["sleepers_upstairs"])).lacks


def test_a_roof_of_the_van_lifts_too() -> None:
    lifting = base_van("short", FENWAIN, "elevating-roof")
    rules = catalogue(OPTIONS, vans=(lifting,))
    found = read("heat", "air-heater", "liner", rules=rules, van=lifting)
    assert found.bound == point(round((57 - 11) * 0.018, 6))


def test_an_electric_heater_counts_on_the_plug_every_night() -> None:
    plugged = read("heat", "plug-heater", facts_=facts(plugged_every_night="yes"))
    assert (plugged.value, plugged.verdict) == (point(1.8), Verdict.HOLDS)
    assert [(e.option, e.amount) for e in plugged.entries] == [("plug-heater", point(1.8))]
    unknown = read("heat", "plug-heater", facts_=facts(unknown=["plugged_every_night"]))
    assert (unknown.value, unknown.verdict) == (Span(0, 1.8), Verdict.CANNOT_TELL)
    assert [lack.key for lack in unknown.lacks] == ["plugged_every_night"]
    assert not read("heat", "air-heater", facts_=facts(unknown=["plugged_every_night"])).lacks


def test_the_cold_nobody_named_widens() -> None:
    found = read("heat", "air-heater", facts_=facts(unknown=["design_temp_c"]))
    assert found.bound == Span(round(1.2 * 57 * 5 / 1000, 6), round(1.2 * 57 * 40 / 1000, 6))
    assert [lack.key for lack in found.lacks] == ["design_temp_c"]


def test_travellers_nobody_counted_widen_and_no_tank_has_a_line_of_its_own() -> None:
    found = read("fresh-water-days", "tank", facts_=facts(unknown=["children"]))
    assert found.value == Span(round(40 / 60, 6), 2)
    assert [lack.key for lack in found.lacks] == ["children"]
    assert not found.entries
    counted = read("fresh-water-days", "tank")
    assert [(e.option, e.amount) for e in counted.entries] == [("tank", point(1))]


def test_an_electric_van_has_no_fuel_to_park_with() -> None:
    electric = base_van(
        "electric", replace(FENWAIN, fuel="electric", tank_l=0, fuel_density_kg_per_l=0, fuel_reserve_l=0)
    )
    rules = catalogue(OPTIONS, vans=(electric,))
    assert read("heater-nights", "air-heater", rules=rules, van=electric).value == point(0)
    own = read("heater-nights", "air-heater", "own-tank", rules=rules, van=electric)
    assert own.value is not None
    assert own.value.least == pytest.approx(9 * 0.85 * 9.97 / 8.1, abs=1e-6)


@pytest.mark.parametrize(
    ("ledger", "choices"),
    [
        ("heat", ["no-figure"]),
        ("heat", ["air-heater", "hole"]),
        ("waste-share", ["dry-tank", "waste-tank"]),
        ("waste-share", ["tank", "waste-unmeasured"]),
        ("fresh-water-days", ["dry-tank"]),
        ("heater-nights", ["no-rate"]),
        ("heater-nights", ["wood-heater"]),
        ("heater-nights", ["air-heater", "own-tank-unmeasured"]),
    ],
)
def test_where_a_part_lacks_its_figure_nothing_can_be_told(ledger: str, choices: list[str]) -> None:
    _nothing_told(read(ledger, *choices))


@pytest.mark.parametrize(
    ("ledger", "choices"),
    [
        ("heat", ["air-heater"]),
        ("high-vents", ["gas-kit"]),
        ("low-vents", ["small-set"]),
        ("heater-nights", ["air-heater"]),
    ],
)
def test_where_the_van_lacks_its_figure_nothing_can_be_told(ledger: str, choices: list[str]) -> None:
    _nothing_told(read(ledger, *choices, van=UNFILLED))
    open_ = read(ledger, *choices, van=None, undecided={"base-van": ["short", "unfilled"]})
    _nothing_told(open_)
    assert "base-van" in [lack.group for lack in open_.lacks]


@pytest.mark.parametrize(
    ("ledger", "choices", "changed"),
    [
        ("heat", ["air-heater"], {"inside_c": -10}),
        ("heat", ["air-heater"], {"margin_share": 0}),
        ("fresh-water-days", ["tank"], {"per_person_day_l": 0}),
        ("heater-nights", ["air-heater"], {"mean_kw": 0}),
        ("heater-nights", ["air-heater", "fuel-hob"], {"mean_kw": 0}),
        ("heater-nights", ["air-heater"], {"night_h": 0}),
        ("heater-nights", ["air-heater"], {"burner_share": 0}),
        ("heater-nights", ["air-heater"], {"tank_share": 1.5}),
    ],
)
def test_absurd_house_settings_tell_nothing(ledger: str, choices: list[str], changed: Mapping[str, float]) -> None:
    _nothing_told(read(ledger, *choices, rules=set_to(ledger, **changed)))


@pytest.mark.parametrize("row", [("diesel", 0, 9.7, 10.4), ("diesel", 99.7, 9.7, 10.4), ("petrol", 8.8, 8.4, 9.2)])
def test_an_absurd_or_missing_litre_tells_nothing(row: tuple[str | float, ...]) -> None:
    table = replace(FUEL_ENERGY, rows=(row,))
    reading = read("heater-nights", "air-heater", rules=replace(RULES, tables=MappingProxyType({table.id: table})))
    _nothing_told(reading)
    assert reading.outside is not None
    assert "diesel" in reading.outside.quantity


def _nothing_told(reading: Reading) -> None:
    """No verdict, no number to compare, and no rule takes it for good."""
    assert reading.applies
    assert reading.verdict is Verdict.CANNOT_TELL
    assert reading.value is None or reading.bound is None


def test_one_answer_without_figures_leaves_the_whole_question_open() -> None:
    for answers in (["air-heater", "no-figure"], ["no-figure", "air-heater"], ["cold", "no-figure"]):
        reading = read("heat", undecided={"heater": answers})
        _nothing_told(reading)
        assert [lack.group for lack in reading.lacks] == ["heater"]


@pytest.mark.parametrize("id_", HERE)
def test_a_rule_never_takes_a_missing_figure_for_good(id_: str) -> None:
    """Whichever side of the limit is missing."""
    atom = WithinBound(ledger=LedgerId(id_), within=False)
    for value, bound in ((None, point(1)), (point(1), None), (None, None)):
        told = Reading(id=LedgerId(id_), value=value, bound=bound, verdict=Verdict.CANNOT_TELL, sense=Sense.AT_LEAST)
        standing = _Readings({LedgerId(id_): told})
        assert truth_of(atom, standing, None).name == "MAYBE"  # type: ignore[arg-type]  # only its readings are asked


class _Readings:
    def __init__(self, readings: Mapping[LedgerId, Reading]) -> None:
        self.readings = readings


def test_what_one_more_adds_counts_the_plug() -> None:
    heat = next(c for c in CALCULATIONS if c.id == "heat")
    plug = RULES.options[OptionId("plug-heater")]
    assert heat.amount(situation(RULES, "air-heater", facts_=facts(plugged_every_night="yes")), plug, None) == 1.8
    assert heat.amount(situation(RULES, "air-heater"), plug, None) == 0


def test_all_six_are_there_and_ask_for_at_least_their_bound() -> None:
    assert set(HERE) == set(LIVING)
    for id_ in HERE:
        spec = SHIPPED.ledgers[LedgerId(id_)]
        assert spec.sense is Sense.AT_LEAST
        assert spec.kind is (LedgerKind.FIGURE if id_.endswith(("days", "nights")) else LedgerKind.LEDGER)
