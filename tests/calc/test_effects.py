"""What a row says it adds is what taking it adds: the whole build summed twice."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from specbuilder.calc.order.effects import effects
from specbuilder.calc.order.price import gross_effects, price
from specbuilder.calc.weights.mass import TOTAL_MASS, mass_effects
from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Pick, Truth
from specbuilder.model.situation import Situation
from tests import worlds
from tests.calc.completions import finished
from tests.calc.plain import PLAIN, Build, Piece
from tests.calc.random_worlds import situations
from tests.calc.scene import HUSH, KNOWN, SHORT, catalogue, situation

BRIEF: Mapping[str, Answer] = {**KNOWN, "van_in_ceiling": "yes"}


def _build(pieces: list[Piece]) -> Build:
    assert SHORT.van is not None
    return Build(SHORT.van, pieces, BRIEF)


def _before_and_after(now: Situation, option: Option) -> tuple[Build, Build]:
    pieces = [Piece(p.option, p.count) for p in now.placed if p.option.van is None]
    mine = [p for p in pieces if p.option.id == option.id]
    if mine:
        return _build([p for p in pieces if p not in mine]), _build(pieces)
    one = now.catalogue.groups[option.group].pick is Pick.ONE
    left = [p for p in pieces if not (one and p.option.group == option.group)]
    return _build(pieces), _build([*left, Piece(option)])


@given(situations())
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
def test_effects_are_the_difference_of_two_builds(drawn: Situation) -> None:
    van = drawn.catalogue.options[SHORT.id]
    now = replace(drawn, van=van, placed=tuple(p for p in drawn.placed if p.option.van is None))
    found = effects(now)
    for option in now.catalogue.options.values():
        if option.van is not None:
            continue
        before, after = _before_and_after(now, option)
        kg = [PLAIN["total-mass"](build)[0] or 0 for build in (before, after)]
        pence = [PLAIN["price-gross"](build)[0] or 0 for build in (before, after)]
        assert found[option.id].mass_kg == pytest.approx(kg[1] - kg[0])
        assert found[option.id].gross_pence == pytest.approx(pence[1] - pence[0])
        assert mass_effects(now)[option.id] == found[option.id].mass_kg
        assert gross_effects(now)[option.id] == found[option.id].gross_pence
        if option not in [p.option for p in now.placed] and now.catalogue.groups[option.group].pick is Pick.ANY:
            assert TOTAL_MASS.amount(now, option, None) == pytest.approx(kg[1] - kg[0])


@given(situations())
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
def test_the_price_spans_every_finished_build(now: Situation) -> None:
    totals = [
        PLAIN["price-gross"](f.build._replace(brief={**f.build.brief, "van_in_ceiling": "yes"}))[0]
        for f in finished(now)
    ]
    gross = [round(t) for t in totals if t is not None]
    found = price(now)
    assert (found.gross.least, found.gross.most) == (min(gross), max(gross))
    assert found.net.least + found.vat.least == found.gross.least
    assert found.net.most + found.vat.most == found.gross.most
    assert bool(found.lacks) == (min(gross) != max(gross))


FIRM = worlds.option("from-us", "supply", gives="firm-supplies-van")
OWN = worlds.option("your-own", "supply", price_net_pence=18_000)
BENCH = worlds.option("bench", "seats", price_net_pence=198_000, mass_kg=78)
STOOLS = worlds.option("stools", "seats", price_net_pence=99_999, mass_kg=30)
RULES = catalogue([FIRM, OWN, BENCH, STOOLS])


def test_the_van_is_in_the_price_when_the_house_supplies_it() -> None:
    ours = price(situation(RULES, "from-us", "bench"))
    assert ours.van_included is Truth.YES
    assert ours.net.least == 2_845_000 + 198_000
    theirs = price(situation(RULES, "your-own", "bench"))
    assert theirs.van_included is Truth.NO
    assert theirs.gross.least == (18_000 + 198_000) * 6 // 5


def test_while_the_supply_is_open_the_price_is_a_range() -> None:
    found = price(situation(RULES, "bench", undecided={"supply": ["from-us", "your-own"]}))
    assert found.van_included is Truth.MAYBE
    assert (found.net.least, found.net.most) == (216_000, 3_043_000)
    assert [lack.group for lack in found.lacks] == ["supply"]


def test_without_any_van_left_the_choices_still_have_a_price() -> None:
    found = price(situation(RULES, "from-us", "bench", van=None))
    assert found.net.least == found.net.most == 198_000
    assert [lack.group for lack in found.lacks] == ["base-van"]


def test_another_base_van_costs_and_weighs_the_difference() -> None:
    found = effects(situation(RULES, "from-us", "bench"))
    assert found[SHORT.id].gross_pence == 3_414_000
    assert found[HUSH.id].gross_pence == (4_410_000 - 2_845_000) * 6 // 5
    assert found[HUSH.id].mass_kg == pytest.approx(2370 - 1960 + 0.1 - 6.72)
    assert effects(situation(RULES, "your-own"))[HUSH.id].gross_pence == 0


def test_a_row_in_a_decided_group_says_the_difference() -> None:
    found = effects(situation(RULES, "bench"))
    assert found[OptionId("bench")].gross_pence == 237_600
    assert found[OptionId("stools")].gross_pence == -117_601
    assert found[OptionId("stools")].mass_kg == -48
    assert effects(situation(RULES))[OptionId("stools")].gross_pence == 119_999
