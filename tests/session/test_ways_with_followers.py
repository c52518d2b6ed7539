"""What comes along by itself is no change of the seller's, also where it does so only once something else has gone."""

from __future__ import annotations

from specbuilder.model.edits import LeaveOut, Take
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import RuleKind
from specbuilder.model.spec import Choice, Spec
from specbuilder.model.ways import LetIn
from specbuilder.session.ways_out import ways_out
from tests import worlds

FREEZER, RADIO, BOX = OptionId("freezer"), OptionId("radio"), OptionId("supply-box")
BOXES = worlds.catalogue(
    (worlds.group("cold"), worlds.group("wall"), worlds.group("extras", any_=1)),
    (
        worlds.option("no-cold", "cold"),
        worlds.option("freezer", "cold", needs=("supply",), price_net_pence=7000),
        worlds.option("shelf", "wall", price_net_pence=1000),
        worlds.option("supply-wall", "wall", gives="supply", price_net_pence=5000),
        worlds.option("radio", "extras", price_net_pence=4000),
        worlds.option("supply-box", "extras", gives="supply", price_net_pence=7000),
    ),
    (worlds.rule("needs-are-met", RuleKind.NEEDS_ANY, worlds.tags("supply"), worlds.tags("supply")),),
)


def test_an_extra_that_comes_along_once_its_place_is_free_is_no_change_more() -> None:
    spec = Spec(choices=(Choice(option=OptionId("shelf")), Choice(option=RADIO)))
    *_, found = ways_out(BOXES, spec, LetIn(option=FREEZER))
    best = found.ways[0]
    assert set(best.edits) == {LeaveOut(option=RADIO), Take(option=FREEZER)}
    assert best.brought == (BOX,)
    assert [best.difference.gross_pence, found.ways[1].difference.gross_pence] == [12000, 13200]
