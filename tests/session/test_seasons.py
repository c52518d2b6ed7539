"""The same spec in every season: what is told of each is what a report would say then."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.spec import Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.session.power_notes import never_together, power_notes
from specbuilder.session.seasons import by_season
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.storage.spec_files import read_spec_file
from tests.independent.build import ROOT

SEASON = BriefKey("season")
DAY, NIGHTS = LedgerId("daily-energy"), LedgerId("battery-nights")
NAMES = ("saturday-family", "winter-walkers", "hush-family", "kettle-on-small-pack", "half-done-family")


@pytest.fixture(scope="module")
def rules() -> Catalogue:
    return read_rules(rules_folder())


def spec_of(name: str, rules: Catalogue) -> Spec:
    return read_spec_file(ROOT / "examples" / f"{name}.toml", rules).spec


@pytest.mark.parametrize("name", NAMES)
def test_each_season_is_what_a_report_says_with_that_season(name: str, rules: Catalogue) -> None:
    spec = spec_of(name, rules)
    found = by_season(rules, spec)
    assert list(found) == ["summer", "three-season", "winter"]
    for season, (day, nights) in found.items():
        then = replace(spec, answers=spec.answers.with_answer(SEASON, season))
        report = evaluate(rules, then, exact=False)
        assert (day, nights) == (report.readings[DAY], report.readings[NIGHTS])


def test_the_season_of_the_brief_is_among_them(rules: Catalogue) -> None:
    spec = spec_of("winter-walkers", rules)
    report = evaluate(rules, spec, exact=False)
    assert by_season(rules, spec)["winter"] == (report.readings[DAY], report.readings[NIGHTS])


def test_the_spec_stays_as_it_was(rules: Catalogue) -> None:
    spec = spec_of("saturday-family", rules)
    before = replace(spec)
    by_season(rules, spec)
    assert spec == before


def test_an_empty_spec_has_its_seasons_too(rules: Catalogue) -> None:
    for day, nights in by_season(rules, Spec()).values():
        assert day.value is not None
        assert nights.value is not None


def test_without_seasons_in_the_brief_there_are_none(rules: Catalogue) -> None:
    bare = replace(rules, brief=MappingProxyType({k: v for k, v in rules.brief.items() if k != SEASON}))
    assert by_season(bare, Spec()) == {}
    unsummed = replace(rules, ledgers=MappingProxyType({k: v for k, v in rules.ledgers.items() if k != NIGHTS}))
    assert by_season(unsummed, Spec()) == {}


def test_each_ledger_has_its_own_notes(rules: Catalogue) -> None:
    spec = spec_of("winter-walkers", rules)
    day, nights = power_notes(rules, spec, DAY), power_notes(rules, spec, NIGHTS)
    assert day.seasons == nights.seasons == by_season(rules, spec)
    assert len(nights.months) == 12
    assert nights.in_cold is not None
    assert (day.months, day.in_cold, day.together) == ((), None, None)
    current = power_notes(rules, spec, LedgerId("battery-current"))
    plug = power_notes(rules, spec, LedgerId("hook-up-watts"))
    assert (current.together, plug.together) == never_together(rules, spec)
    other = power_notes(rules, spec, LedgerId("total-mass"))
    assert (dict(other.seasons), other.months, other.in_cold, other.together) == ({}, (), None, None)
