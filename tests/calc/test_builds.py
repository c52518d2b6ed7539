"""Whole builds on the rules that come with the program; the figures were worked out apart from it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from specbuilder.calc import read_all
from specbuilder.calc.order.effects import effects
from specbuilder.calc.order.price import price
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Pick, Place, Verdict
from specbuilder.model.situation import Placed, Situation
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.calc.scene import facts, situation
from tests.calc.whole_builds import FAMILY, NURSE, VANLOAD, WALKERS, Build


@pytest.fixture(scope="module")
def rules() -> Catalogue:
    return read_rules(rules_folder())


def placed(rules: Catalogue, words: str) -> Iterator[Placed]:
    """Choices as they are told: ``option/place*count``."""
    for word in words.split():
        name, _, count = word.partition("*")
        option, _, place = name.partition("/")
        yield Placed(
            option=rules.options[OptionId(option)], count=int(count or 1), place=Place(place) if place else None
        )


def told(rules: Catalogue, build: Build) -> Situation:
    van = rules.options[OptionId(build.van)]
    return situation(rules, *placed(rules, build.choices), van=van, facts_=facts(build.brief))


@pytest.mark.parametrize("build", [FAMILY, NURSE, WALKERS, VANLOAD], ids=["family", "nurse", "walkers", "vanload"])
def test_a_whole_build(rules: Catalogue, build: Build) -> None:
    now = told(rules, build)
    readings = read_all(now)
    for id_, pair in build.comes_to.items():
        reading = next(r for r in readings.values() if r.id == id_)
        if pair is None:
            assert not reading.applies, id_
            continue
        value, bound = pair
        assert reading.value is not None, id_
        assert reading.value.settled, id_
        assert reading.value.least == pytest.approx(value), id_
        assert (reading.bound.least if reading.bound else None) == bound, id_
    broken = {r.id for r in readings.values() if r.verdict is Verdict.BROKEN}
    assert broken - {"filled-up-rear"} == set(build.broken.split())
    assert ("filled-up-rear" in broken) is (build is not WALKERS), "the load cases have a test of their own"
    assert not any(r.lacks for r in readings.values())
    total = price(now)
    assert (total.gross.least, total.gross.most) == (build.gross_pence, build.gross_pence)


def test_rows_of_the_family(rules: Catalogue) -> None:
    found = effects(told(rules, FAMILY))
    galley = found[OptionId("side-galley")]
    assert (galley.gross_pence, galley.mass_kg) == (280_800, 92)
    assert found[OptionId("travel-fill-stop")].mass_kg == pytest.approx(-19.6)
    for group in rules.groups.values():
        if group.pick is Pick.ONE:
            assert all(o.id in found for o in rules.options_of(group.id))


def test_every_group_taken_back_leaves_a_range_around_the_whole(rules: Catalogue) -> None:
    whole = told(rules, FAMILY)
    settled = read_all(whole)
    for group in {p.option.group for p in whole.placed if rules.groups[p.option.group].pick is Pick.ONE}:
        if group == "base-van":
            continue
        answers = [o.id for o in rules.options_of(group)]
        left = [p for p in whole.placed if p.option.group != group and p.option.van is None]
        open_ = situation(rules, *left, van=whole.van, undecided={group: answers}, facts_=whole.facts)
        for id_, reading in read_all(open_).items():
            value, before = reading.value, settled[id_].value
            if before is not None:
                assert value is not None, (group, id_)
                assert value.least <= before.least <= value.most, (group, id_)
            assert [lack.group for lack in reading.lacks] in ([], [group])
