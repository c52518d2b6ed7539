"""Protection of the 230 V side in words."""

from __future__ import annotations

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.mains import MainsCode, MainsPoint, MainsStand
from specbuilder.wording.mains import CAUTION, TITLE, mains_line, mains_lines


def test_title_first_and_caution_last_and_nothing_where_nothing_is_at_230_v(catalogue: Catalogue) -> None:
    point = MainsPoint(code=MainsCode.ONE_EARTH_LINK, stand=MainsStand.HOLDS)
    told = mains_lines(catalogue, (point,))
    assert (told[0], told[-1], len(told)) == (TITLE, CAUTION, 3)
    assert mains_lines(catalogue, ()) == ()
    assert "electrician" in CAUTION
    assert all(word in CAUTION for word in ("inspects", "tests", "signs"))


@pytest.mark.parametrize("code", MainsCode)
@pytest.mark.parametrize("stand", MainsStand)
def test_every_point_has_a_sentence_however_it_stands(code: MainsCode, stand: MainsStand, catalogue: Catalogue) -> None:
    for by, has in (((OptionId("hook-up-bundle"),), 4.0), ((), None)):
        said = mains_line(catalogue, MainsPoint(code=code, stand=stand, by=by, circuits=("x-c1",), has=has, needs=4))
        first = {MainsStand.HOLDS: "Holds: ", MainsStand.BY_PAPER: "Mind: ", MainsStand.TO_SETTLE: "To settle: "}
        assert said.startswith(first[stand])
        assert said.endswith(".")
        assert "None" not in said
        assert "  " not in said


def test_the_words_of_the_trade_are_in_it(catalogue: Catalogue) -> None:
    by = (OptionId("hook-up-bundle"),)
    switch = MainsPoint(code=MainsCode.PLUG_RESIDUAL_CURRENT, stand=MainsStand.HOLDS, by=by)
    assert "30 mA two-pole residual-current switch (RCD), type A" in mains_line(catalogue, switch)
    assert mains_line(catalogue, switch).endswith("brought by Campsite plug kit.")
    breakers = MainsPoint(
        code=MainsCode.TWO_POLE_BREAKERS, stand=MainsStand.TO_SETTLE, circuits=("a-c1", "b-c2"), has=3, needs=5
    )
    assert mains_line(catalogue, breakers).endswith("3 of 5, not a-c1 and b-c2.")
