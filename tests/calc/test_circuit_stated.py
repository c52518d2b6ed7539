"""Circuits by figures of a paper: the part's own go before the sum, a customer's sheet before the catalogue."""

from __future__ import annotations

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitBasis, CircuitCode
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.situation import Placed
from specbuilder.model.spec import OwnPart
from tests.calc.circuits_scene import KETTLE, codes, line_of, schedule


def test_the_part_s_own_figures_go_before_the_computed_ones(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, own_area_mm2=10, own_fuse_a=20)
    assert (line.area_mm2, line.fuse_a, line.basis, line.estimate) == (10, 20, CircuitBasis.STATED, False)
    assert not line.serious
    assert line_of(catalogue, KETTLE, own_fuse_a=20).area_mm2 == 4, "in a bundle of five 2.5 mm2 carry 15 A"
    assert line_of(catalogue, KETTLE, own_fuse_a=20).basis is CircuitBasis.FUSE_STATED
    assert line_of(catalogue, KETTLE, own_area_mm2=10).basis is CircuitBasis.SECTION_STATED
    assert line_of(catalogue, KETTLE).basis is CircuitBasis.COMPUTED


def test_a_stated_cable_thinner_than_the_sum_is_warned_of_and_stands(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, own_area_mm2=1.5)
    assert line.area_mm2 == 1.5
    assert codes(line) >= {CircuitCode.OWN_CABLE_SMALLER_THAN_COMPUTED, CircuitCode.DROP_ABOVE_LIMIT}
    (said,) = (p for p in line.problems if p.code is CircuitCode.OWN_CABLE_SMALLER_THAN_COMPUTED)
    assert (said.has, said.needs) == (1.5, 2.5)


def test_a_stated_fuse_that_does_not_protect_the_stated_cable(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, own_area_mm2=4, own_fuse_a=40)
    (said,) = (p for p in line.problems if p.code is CircuitCode.OWN_FUSE_ABOVE_CABLE)
    assert (said.has, said.needs) == (40, pytest.approx(45 * 0.6)), "even of 105 degrees it carries 27 A"


def test_a_stated_fuse_too_small_for_a_steady_load(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, own_fuse_a=5)
    (said,) = (p for p in line.problems if p.code is CircuitCode.OWN_FUSE_BELOW_LOAD)
    assert (said.has, said.needs) == (5, pytest.approx(5.25))
    assert line.fuse_a == 5


def test_a_stated_cable_without_a_fuse_that_protects_it(catalogue: Catalogue) -> None:
    line = line_of(catalogue, KETTLE, own_area_mm2=1, load_a=12, run_one_way_m=0.2)
    assert line.fuse_a is None
    assert CircuitCode.NO_FUSE_IN_WINDOW in codes(line)


def test_a_section_between_two_listed_ones_counts_as_the_thinner(catalogue: Catalogue) -> None:
    odd, listed = (line_of(catalogue, KETTLE, own_area_mm2=area) for area in (3, 2.5))
    assert (odd.area_mm2, odd.carries_a, odd.drop_v) == (3, listed.carries_a, listed.drop_v)
    thin = line_of(catalogue, KETTLE, own_area_mm2=0.4)
    assert CircuitCode.OWN_CABLE_NOT_IN_TABLE in codes(thin)
    assert thin.carries_a is thin.drop_v is None


def test_a_bonding_conductor_carries_no_load_and_needs_its_section(catalogue: Catalogue) -> None:
    bare = {"from_point": "earth bar of the consumer unit", "bus": "230", "load_a": 0, "load_w": 0}
    assert codes(line_of(catalogue, **bare, drop_limit_pct=None)) == {CircuitCode.EARTH_SECTION_MISSING}
    bond = line_of(catalogue, **bare, drop_limit_pct=None, own_area_mm2=4)
    assert (bond.area_mm2, bond.fuse_a, bond.problems) == (4, None, ())


def test_the_sheet_of_an_own_part_sizes_its_circuit(catalogue: Catalogue) -> None:
    fridge = catalogue.options[OptionId("fridge-own")]
    sheet = Placed(option=fridge, owner=Owner.CUSTOMER, own_part=OwnPart(watts_w=120))
    (line,) = (one for one in schedule(catalogue, sheet, KETTLE) if one.option == fridge.id)
    assert (line.load_w, line.load_a) == (120, 10)
    assert CircuitCode.OWN_PART_FIGURES not in codes(line)


def test_an_own_part_without_a_sheet_is_sized_by_the_catalogue_and_says_so(catalogue: Catalogue) -> None:
    fridge = catalogue.options[OptionId("fridge-own")]
    for sheet in (None, OwnPart(mass_kg=20)):
        theirs = Placed(option=fridge, owner=Owner.CUSTOMER, own_part=sheet)
        (line,) = (one for one in schedule(catalogue, theirs, KETTLE) if one.option == fridge.id)
        assert line.load_a == fridge.circuits[0].load_a
        assert CircuitCode.OWN_PART_FIGURES in codes(line)


def test_a_sheet_of_no_watts_is_a_load_that_is_missing(catalogue: Catalogue) -> None:
    theirs = Placed(option=catalogue.options[OptionId("fridge-own")], owner=Owner.CUSTOMER, own_part=OwnPart(watts_w=0))
    (line,) = schedule(catalogue, theirs)
    assert CircuitCode.LOAD_MISSING in codes(line)
