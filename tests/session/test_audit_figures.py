"""What the audit says of figures that cannot be right and of those a sum cannot do without."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import Any

import pytest

from specbuilder.model.audit import LintCode
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Anchor
from specbuilder.model.parts import Position
from specbuilder.session.audit_figures import figure_lints
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.wording.audit import lint_line

RULES = read_rules(rules_folder())


def without(option: Option) -> Catalogue:
    """The catalogue of the house with this option in place of its own."""
    return replace(RULES, options=MappingProxyType({**RULES.options, option.id: option}))


def said(option: Option) -> list[str]:
    """What the audit says, without the place of the table and the name of the option."""
    world = without(option)
    place = f"{option.origin} {option.id} ({option.name}): "
    lines = [lint_line(world, lint) for lint in figure_lints(world)]
    assert all(place in line or "circuit" in line or "-c1" in line for line in lines)
    return [line.replace(place, "") for line in lines]


def changed(option: str, table: str = "", **figures: Any) -> Option:
    """An option of the house with other figures."""
    known = RULES.options[OptionId(option)]
    if not table:
        return replace(known, **figures)
    return replace(known, **{table: replace(getattr(known, table), **figures)})


def test_the_house_has_none() -> None:
    assert list(figure_lints(RULES)) == []


@pytest.mark.parametrize(
    ("option", "table", "figures", "words"),
    [
        ("battery-twin", "power", {"bms_continuous_a": None}, "lacks power.bms_continuous_a"),
        ("battery-twin", "power", {"packs_parallel": None}, "lacks power.packs_parallel"),
        ("battery-lantern", "power", {"depth_of_discharge": None}, "lacks power.depth_of_discharge"),
        ("battery-lantern", "power", {"chemistry": "strange"}, "lacks power.battery_ah, power.chemistry"),
        ("inverter-600", "power", {"inverter_efficiency": None}, "lacks power.inverter_efficiency"),
        ("inverter-600", "power", {"inverter_idle_w": None}, "lacks power.inverter_idle_w"),
        ("air-heater-diesel-2", "heat", {"fuel_l_per_h": None}, "lacks heat.fuel_l_per_h"),
        ("air-heater-diesel-2", "heat", {"heater_kw": None}, "lacks heat.heater_kw"),
        ("gas-air-heater-2", "heat", {"gas_kw_gross": None}, "lacks heat.gas_kw_gross"),
        ("solar-light-120", "power", {"panel_voc_v": None}, "lacks power.panel_voc_v"),
        ("solar-light-120", "power", {"solar_w": None}, "lacks power.solar_w"),
        ("gas-one-small", "heat", {"gas_kg": 0}, "lacks heat.gas_kg"),
        ("waste-underslung-35", "water", {"waste_l": 0}, "lacks water.waste_l"),
        ("laptop", "power", {"hours_winter": None}, "lacks power.hours_winter"),
    ],
)
def test_a_figure_a_sum_cannot_do_without(option: str, table: str, figures: dict[str, Any], words: str) -> None:
    found = said(changed(option, table, **figures))
    assert any(line.startswith(f"figure-missing {words}") for line in found), found
    assert all("its sums cannot be made without it" in line for line in found)


@pytest.mark.parametrize(
    ("option", "table", "figures", "words"),
    [
        ("side-galley", "", {"mass_kg": 1e9}, "mass_kg is 1e+09, expected 0 to 1000"),
        ("side-galley", "", {"mass_kg": -5}, "mass_kg is -5, expected 0 to 1000"),
        ("spare-wheel-given-up", "", {"mass_kg": -500}, "mass_kg is -500, expected -100 to 1000"),
        ("water-inside-70", "water", {"fresh_travel_l": 90}, "water.fresh_travel_l is 90, expected 0 to 70"),
        ("solar-light-120", "power", {"panel_voc_v": -1}, "power.panel_voc_v is -1, expected above 0 and up to 300"),
        ("battery-twin", "power", {"battery_ah": 1e9}, "power.battery_ah is 1e+09, expected above 0 and up to 5000"),
        ("fenwain-long", "van", {"r_max_kg": 0}, "r_max_kg is 0, expected 300 to 8000"),
        ("fenwain-long", "van", {"f_max_kg": -1}, "f_max_kg is -1, expected 300 to 8000"),
        ("fenwain-long", "van", {"wheelbase_mm": 0}, "wheelbase_mm is 0, expected 1000 to 10000"),
        ("fenwain-long", "van", {"track_mm": 16}, "track_mm is 16, expected 1000 to 3000"),
        ("fenwain-long", "van", {"front_min_share": 0.7}, "front_min_share is 0.7, expected 0 to 0.6"),
        ("fenwain-long", "van", {"front_min_share": -0.1}, "front_min_share is -0.1, expected 0 to 0.6"),
    ],
)
def test_a_figure_that_cannot_be_right(option: str, table: str, figures: dict[str, Any], words: str) -> None:
    assert f"implausible {words}" in said(changed(option, table, **figures))


def test_what_takes_mass_out_may_weigh_less_than_nothing() -> None:
    assert RULES.options[OptionId("spare-wheel-given-up")].mass_kg < 0
    assert said(changed("spare-wheel-given-up", mass_kg=-30)) == []


@pytest.mark.parametrize(
    ("figures", "key"),
    [
        ({"x_mm": 9_000}, "x_mm"),
        ({"x_mm": -4_000}, "x_mm"),
        ({"anchor": Anchor.REAR, "x_mm": 900}, "x_mm"),
        ({"anchor": Anchor.AXLE_REAR, "x_mm": 2_500}, "x_mm"),
        ({"y_mm": 2_000}, "y_mm"),
        ({"y_mm": -2_000}, "y_mm"),
        ({"z_mm": 4_000}, "z_mm"),
        ({"z_mm": -1_500}, "z_mm"),
    ],
)
def test_a_place_beyond_every_van_it_fits(figures: dict[str, Any], key: str) -> None:
    known = RULES.options[OptionId("side-galley")].position
    assert known is not None
    assert [
        line
        for line in said(changed("side-galley", position=replace(known, **figures)))
        if f"position.{key} is" in line
    ]


def test_a_place_counts_for_the_vans_it_fits_only() -> None:
    """Behind the short van and still inside the long one."""
    short, long = RULES.options[OptionId("fenwain-short")].van, RULES.options[OptionId("tormwain-right")].van
    assert short is not None
    assert long is not None
    there = Position(anchor=Anchor.DATUM, x_mm=long.rear_sill_x_mm + 500, y_mm=0, z_mm=100)
    galley = changed("side-galley", position=there)
    assert said(galley) == []
    assert said(replace(galley, fits_vans=(OptionId("fenwain-short"),))) != []


@pytest.mark.parametrize(
    ("figures", "words"),
    [
        ({"run_one_way_m": 0}, "run_one_way_m is 0, expected above 0 and up to 30"),
        ({"run_one_way_m": -2}, "run_one_way_m is -2, expected above 0 and up to 30"),
        ({"load_a": 0, "own_fuse_a": 10}, "load_a is 0, expected above 0 and up to 1000"),
        ({"load_a": 0, "drop_limit_pct": 3}, "load_a is 0, expected above 0 and up to 1000"),
        ({"own_fuse_a": -5}, "own_fuse_a is -5, expected above 0 and up to 1000"),
        ({"own_area_mm2": 0}, "own_area_mm2 is 0, expected above 0 and up to 500"),
    ],
)
def test_a_circuit_that_is_none(figures: dict[str, Any], words: str) -> None:
    battery = RULES.options[OptionId("battery-twin")]
    first, *others = battery.circuits
    world = without(replace(battery, circuits=(replace(first, **figures), *others)))
    (lint,) = figure_lints(world)
    assert lint.code is LintCode.IMPLAUSIBLE
    assert lint_line(world, lint) == (
        f"implausible {first.origin} battery-twin ({battery.name}): battery-twin-c1.{words}"
    )


def test_a_bond_to_earth_needs_no_load() -> None:
    battery = RULES.options[OptionId("battery-twin")]
    first, *others = battery.circuits
    bond = replace(first, load_a=0, drop_limit_pct=None, own_fuse_a=None)
    assert list(figure_lints(without(replace(battery, circuits=(bond, *others))))) == []
