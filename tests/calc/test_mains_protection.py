"""What protects the 230 V side: what is brought, what only the part's paper tells, what nothing brings."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from specbuilder.calc.circuits.circuit_schedule import circuit_schedule
from specbuilder.calc.circuits.mains_protection import mains_protection
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import OptionId
from specbuilder.model.mains import MainsCode, MainsPoint, MainsStand
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.spec_files import read_spec_file
from tests.calc.circuits_scene import KETTLE, ROOT, without_table
from tests.calc.scene import situation

HOLDS, PAPER, SETTLE = MainsStand.HOLDS, MainsStand.BY_PAPER, MainsStand.TO_SETTLE
HOOK_UP, SHARED = "hook-up-bundle", (KETTLE, "inverter-2000", "hook-up-bundle", "socket-both")
EXAMPLES = sorted((ROOT / "examples").glob("*.toml"))


def points(catalogue: Catalogue, *choices: Option | str) -> dict[MainsCode, MainsPoint]:
    scene = situation(catalogue, *choices, van=None)
    return {point.code: point for point in mains_protection(scene, circuit_schedule(scene))}


def stands(catalogue: Catalogue, *choices: Option | str) -> dict[MainsCode, MainsStand]:
    return {code: point.stand for code, point in points(catalogue, *choices).items()}


def test_without_plug_inverter_or_mains_circuit_there_is_nothing_to_protect(catalogue: Catalogue) -> None:
    assert not points(catalogue, KETTLE, "fridge-front-door", "socket-usb-pair")


def test_a_plug_alone(catalogue: Catalogue) -> None:
    found = points(catalogue, HOOK_UP, "socket-plug-only")
    assert {code: point.stand for code, point in found.items()} == {
        MainsCode.PLUG_RESIDUAL_CURRENT: HOLDS,
        MainsCode.TWO_POLE_BREAKERS: HOLDS,
        MainsCode.BONDING: HOLDS,
        MainsCode.ONE_EARTH_LINK: HOLDS,
    }
    assert found[MainsCode.PLUG_RESIDUAL_CURRENT].by == (HOOK_UP,)
    assert (found[MainsCode.TWO_POLE_BREAKERS].has, found[MainsCode.TWO_POLE_BREAKERS].needs) == (3, 3)
    bond = found[MainsCode.BONDING]
    assert (bond.circuits, bond.has, bond.needs) == (("hook-up-bundle-c3",), 4, 4)


def test_the_switch_of_the_plug_does_not_look_behind_the_inverter(catalogue: Catalogue) -> None:
    assert stands(catalogue, *SHARED, "changeover-manual")[MainsCode.INVERTER_RESIDUAL_CURRENT] is SETTLE
    done = points(catalogue, *SHARED, "changeover-manual", "inverter-protection-set")
    assert done[MainsCode.INVERTER_RESIDUAL_CURRENT].by == ("inverter-protection-set",)
    assert not [point for point in done.values() if point.stand is SETTLE]


def test_an_inverter_without_a_plug_leaves_link_and_bonding_to_its_paper(catalogue: Catalogue) -> None:
    assert stands(catalogue, KETTLE, "inverter-600", "socket-away-only") == {
        MainsCode.INVERTER_RESIDUAL_CURRENT: HOLDS,
        MainsCode.TWO_POLE_BREAKERS: HOLDS,
        MainsCode.BONDING: PAPER,
        MainsCode.EARTH_LINK_CHANGES: PAPER,
    }


def test_what_both_sources_feed_asks_for_a_changeover_and_what_each_has_alone_for_none(catalogue: Catalogue) -> None:
    assert stands(catalogue, *SHARED)[MainsCode.CHANGEOVER] is SETTLE
    assert points(catalogue, *SHARED, "changeover-automatic")[MainsCode.CHANGEOVER].by == ("changeover-automatic",)
    apart = stands(catalogue, KETTLE, "inverter-600", HOOK_UP, "socket-away-only", "socket-plug-only")
    assert apart[MainsCode.SOURCES_APART] is HOLDS
    assert MainsCode.CHANGEOVER not in apart


@pytest.mark.parametrize(
    ("charger", "stand"),
    [("mains-charger-15", HOLDS), ("mains-charger-30", HOLDS), ("mains-charger-on-inverter", SETTLE)],
)
def test_an_inverter_never_feeds_the_charger_of_its_own_battery(
    charger: str, stand: MainsStand, catalogue: Catalogue
) -> None:
    point = points(catalogue, *SHARED, charger)[MainsCode.CHARGER_BEFORE_CHANGEOVER]
    assert (point.stand, point.by) == (stand, (charger,))


def test_a_charger_is_not_spoken_of_where_no_inverter_could_feed_it(catalogue: Catalogue) -> None:
    assert MainsCode.CHARGER_BEFORE_CHANGEOVER not in points(catalogue, KETTLE, HOOK_UP, "mains-charger-15")


@pytest.mark.parametrize("area", [2.5, None])
def test_a_bonding_conductor_that_is_too_thin_or_has_no_section_is_to_be_settled(
    area: float | None, catalogue: Catalogue
) -> None:
    kit = catalogue.options[OptionId(HOOK_UP)]
    circuits = tuple(replace(c, own_area_mm2=area) if c.circuit == "bonding" else c for c in kit.circuits)
    point = points(catalogue, replace(kit, circuits=circuits))[MainsCode.BONDING]
    assert (point.stand, point.has) == (SETTLE, area)


def test_a_plug_without_a_bonding_conductor_is_to_be_settled(catalogue: Catalogue) -> None:
    kit = catalogue.options[OptionId(HOOK_UP)]
    bare = replace(kit, circuits=tuple(c for c in kit.circuits if c.circuit != "bonding"))
    assert points(catalogue, bare)[MainsCode.BONDING].stand is SETTLE


def test_a_circuit_nobody_can_size_has_no_breaker(catalogue: Catalogue) -> None:
    kit = catalogue.options[OptionId(HOOK_UP)]
    bad = replace(kit, circuits=tuple(replace(c, run_one_way_m=0) if c.load_a == 10 else c for c in kit.circuits))
    point = points(catalogue, bad)[MainsCode.TWO_POLE_BREAKERS]
    assert (point.stand, point.circuits, point.has, point.needs) == (SETTLE, ("hook-up-bundle-c2",), 1, 2)


def test_without_its_tables_nothing_is_told_to_hold(catalogue: Catalogue) -> None:
    bare = without_table(catalogue, "cable-starts")
    found = stands(bare, HOOK_UP)
    assert found[MainsCode.TWO_POLE_BREAKERS] is SETTLE
    assert found[MainsCode.BONDING] is SETTLE


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_example_with_a_plug_or_an_inverter_is_told(path: Path, catalogue: Catalogue) -> None:
    report = evaluate(catalogue, read_spec_file(path, catalogue).spec)
    given = {tag for c in report.spec.choices for tag in catalogue.options[c.option].gives}
    codes = {point.code for point in report.mains}
    assert (MainsCode.INVERTER_RESIDUAL_CURRENT in codes) is ("inverter" in given)
    assert (MainsCode.PLUG_RESIDUAL_CURRENT in codes) >= ("hook-up" in given)
    assert bool(codes) is any(line.is_mains for line in report.circuits)


def test_only_the_examples_that_break_rules_have_something_to_settle_on_that_side(catalogue: Catalogue) -> None:
    settle = {
        path.stem
        for path in EXAMPLES
        if any(p.stand is SETTLE for p in evaluate(catalogue, read_spec_file(path, catalogue).spec).mains)
    }
    assert settle == {"kettle-on-small-pack", "right-door-muddle"}
