"""The wiring as trees: every run once, on the source that feeds it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitLine
from specbuilder.model.ids import OptionId
from specbuilder.model.report import Report
from specbuilder.workshop.wiring import WirePoint, Wiring, wiring
from tests.documents.cases import NAMES, plain_case
from tests.scenes.cable import PUMP

_STARTS = "cable-starts"


def _line(label: str, from_point: str, to_point: str, bus: str = "dc", option: str = "") -> CircuitLine:
    return replace(
        PUMP,
        id=label,
        label=label,
        option=OptionId(option or label),
        circuit=label,
        from_point=from_point,
        to_point=to_point,
        bus=bus,
    )


def _wired(catalogue: Catalogue, *lines: CircuitLine) -> Wiring:
    report: Report = replace(plain_case(NAMES[0]).stand.report, circuits=lines)
    return wiring(catalogue, report)


def _points(trees: tuple[WirePoint, ...]) -> Iterator[WirePoint]:
    for tree in trees:
        yield tree
        yield from _points(tree.below)


def _above(trees: tuple[WirePoint, ...]) -> Mapping[str, WirePoint]:
    """By label of a run: the point it hangs on."""
    return {one.line.label: point for point in _points(trees) for one in point.below if one.line is not None}


@pytest.mark.parametrize("name", NAMES)
def test_every_run_of_the_schedule_stands_in_the_trees_of_its_side_once(name: str) -> None:
    stand = plain_case(name).stand
    both = wiring(stand.catalogue, stand.report)
    for trees, mains in ((both.low, False), (both.mains, True)):
        found = sorted(line.label for tree in trees for line in tree.lines())
        assert found == sorted(line.label for line in stand.report.circuits if line.is_mains is mains)


@pytest.mark.parametrize("name", NAMES)
def test_a_run_hangs_on_the_place_it_starts_from_or_on_its_source(name: str) -> None:
    stand = plain_case(name).stand
    both = wiring(stand.catalogue, stand.report)
    for label, point in (*_above(both.low).items(), *_above(both.mains).items()):
        line = next(line for line in stand.report.circuits if line.label == label)
        assert point.name == line.from_point, label


def test_what_the_panel_feeds_hangs_on_the_run_that_ends_at_the_panel(catalogue: Catalogue) -> None:
    both = _wired(catalogue, _line("fridge", "12 V panel", "fridge"), _line("main", "isolator", "12 V panel"))
    panel = _above(both.low)["fridge"]
    assert panel.line is not None
    assert panel.line.label == "main"


def test_a_charger_that_fills_the_fuse_block_does_not_feed_what_starts_there(catalogue: Catalogue) -> None:
    block = "leisure battery fuse block"
    both = _wired(
        catalogue,
        _line("in", "starter battery", "charger", "vehicle", "charger"),
        _line("out", "charger", block, "dc", "charger"),
        _line("heater", block, "heater under seat"),
    )
    assert [tree.name for tree in both.low] == ["starter battery", block]
    assert _above(both.low)["heater"].line is None


def test_two_chargers_of_one_name_are_fed_apart(catalogue: Catalogue) -> None:
    both = _wired(
        catalogue,
        _line("road-in", "starter battery", "charger", "vehicle", "road"),
        _line("road-out", "charger", "fuse block", "dc", "road"),
        _line("plug-in", "consumer unit", "charger", "230", "plug"),
        _line("plug-out", "charger", "fuse block", "dc", "plug"),
    )
    assert _above(both.low)["road-out"].line is not None
    plug = _above(both.low)["plug-out"]
    assert plug.line is None
    assert plug.fed_by is not None
    assert plug.fed_by.label == "plug-in"


def test_an_inverter_is_a_source_of_the_mains_side_and_says_what_feeds_it(catalogue: Catalogue) -> None:
    both = _wired(
        catalogue,
        _line("feed", "inverter fuse", "inverter", "dc", "inverter"),
        _line("output", "inverter", "safety switch behind the inverter", "230", "inverter"),
        _line("socket", "safety switch behind the inverter", "socket", "230"),
    )
    [inverter] = both.mains
    assert inverter.name == "inverter"
    assert inverter.fed_by is not None
    assert inverter.fed_by.label == "feed"
    assert {line.label for line in inverter.lines()} == {"output", "socket"}


def test_a_fuse_that_stands_on_the_busbar_hangs_on_the_run_that_ends_there(catalogue: Catalogue) -> None:
    both = _wired(
        catalogue,
        _line("main", "leisure battery +", "main fuse", option="battery"),
        _line("on", "main fuse", "isolator", option="battery"),
        _line("feed", "inverter fuse", "inverter", option="inverter"),
        _line("heater", "leisure battery fuse block", "heater"),
    )
    [battery] = both.low
    assert [line.label for line in battery.lines()] == ["main", "on", "feed", "heater"]
    [fuse] = battery.below
    isolator, block = fuse.below
    assert [(point.name, point.line) for point in isolator.below] == [("inverter fuse", None)]
    assert (block.name, block.line) == ("leisure battery fuse block", None)


_BATTERIES = {
    "battery-small": (
        _line("main", "leisure battery +", "main fuse", option="battery"),
        _line("on", "main fuse", "isolator", option="battery"),
    ),
    "battery-twin": (
        _line("main", "first pack +", "main fuse of the first pack", option="battery"),
        _line("second", "second pack +", "main fuse of the second pack", option="battery"),
        _line("on", "both main fuses", "isolator", option="battery"),
    ),
}


@pytest.mark.parametrize("battery", _BATTERIES)
def test_what_the_fuse_block_feeds_never_goes_through_the_isolator(catalogue: Catalogue, battery: str) -> None:
    heater = _line("heater", "leisure battery fuse block", "heater")
    both = _wired(catalogue, *_BATTERIES[battery], _line("panel", "isolator", "12 V panel"), heater)
    isolator = next(point for point in _points(both.low) if point.name == "isolator")
    assert {line.label for line in isolator.lines()} == {"on", "panel"}
    main = next(point for point in _points(both.low) if point.line is not None and point.line.label == "main")
    assert "heater" in {line.label for line in main.lines()}


def test_a_second_pack_leads_to_where_it_is_joined_with_the_first(catalogue: Catalogue) -> None:
    both = _wired(catalogue, *_BATTERIES["battery-twin"])
    fuse = next(point for point in _points(both.low) if point.name == "main fuse of the second pack")
    [joined] = fuse.below
    assert joined.name == "both main fuses"
    assert joined.drawn_at is not None
    assert joined.drawn_at.label == "main"


def test_all_that_the_battery_negative_carries_goes_through_the_shunt(catalogue: Catalogue) -> None:
    both = _wired(
        catalogue,
        _line("negative", "leisure battery -", "negative busbar", option="battery"),
        _line("earth", "negative busbar", "earth point on the body", option="battery"),
        _line("monitor", "battery negative shunt", "display"),
    )
    shunt = next(point for point in _points(both.low) if point.name == "battery negative shunt")
    assert shunt.in_series
    assert shunt.line is not None
    assert shunt.line.label == "negative"
    assert [point.name for point in shunt.below] == ["negative busbar", "display"]
    busbar = _above(both.low)["earth"]
    assert busbar.name == "negative busbar"


def test_without_a_monitor_the_battery_negative_leads_to_its_busbar(catalogue: Catalogue) -> None:
    both = _wired(
        catalogue,
        _line("negative", "leisure battery -", "negative busbar", option="battery"),
        _line("earth", "negative busbar", "earth point on the body", option="battery"),
    )
    busbar = _above(both.low)["earth"]
    assert busbar.line is not None
    assert (busbar.line.label, busbar.in_series) == ("negative", False)


def test_what_works_on_both_hangs_below_the_changeover_and_that_on_plug_and_inverter(catalogue: Catalogue) -> None:
    both = _wired(
        catalogue,
        _line("plug", "consumer unit", "changeover", "230", "changeover"),
        _line("away", "safety switch behind the inverter", "changeover", "230", "changeover"),
        _line("hob", "changeover", "hob", "230"),
    )
    assert {tree.name for tree in both.mains} == {"consumer unit", "safety switch behind the inverter"}
    changeover = _above(both.mains)["hob"]
    assert changeover.line is not None
    assert changeover.line.label == "plug"


def test_runs_in_a_circle_are_not_lost(catalogue: Catalogue) -> None:
    both = _wired(catalogue, _line("there", "here", "there"), _line("back", "there", "here"))
    assert sorted(line.label for tree in both.low for line in tree.lines()) == ["back", "there"]


def test_without_the_table_of_starts_every_place_to_start_is_a_source(catalogue: Catalogue) -> None:
    tables = {key: table for key, table in catalogue.tables.items() if key != _STARTS}
    bare = replace(catalogue, tables=MappingProxyType(tables))
    both = _wired(bare, _line("fridge", "12 V panel", "fridge"), _line("heater", "fuse block", "heater"))
    assert {tree.name for tree in both.low} == {"12 V panel", "fuse block"}


def test_a_build_without_a_cable_has_no_tree(catalogue: Catalogue) -> None:
    assert _wired(catalogue) == Wiring(low=(), mains=())
