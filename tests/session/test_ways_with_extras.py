"""Extras in ways out: what comes along by itself is no change of the seller's, and each stands where it serves."""

from __future__ import annotations

from specbuilder.model.edits import LeaveOut, Take
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Place, RuleKind
from specbuilder.model.spec import Choice, Spec
from specbuilder.model.ways import ClearFindings, LetIn
from specbuilder.session.ways_out import ways_out
from tests import worlds

FREEZER, RADIO, BOX = OptionId("freezer"), OptionId("radio"), OptionId("supply-box")
COLD = "family-needs-cold"
BOXES = worlds.catalogue(
    (worlds.group("who"), worlds.group("cold", any_=1), worlds.group("wall"), worlds.group("extras", any_=1)),
    (
        worlds.option("family", "who", gives="family"),
        worlds.option("freezer", "cold", gives="cold", needs=("supply",), price_net_pence=7000),
        worlds.option("cold-room", "cold", gives="cold", price_net_pence=90_000),
        worlds.option("shelf", "wall", price_net_pence=1000),
        worlds.option("supply-wall", "wall", gives="supply", price_net_pence=5000),
        worlds.option("radio", "extras", price_net_pence=4000),
        worlds.option("supply-box", "extras", gives="supply", price_net_pence=7000),
    ),
    (worlds.rule(COLD, RuleKind.NEEDS_ANY, worlds.tags("family"), worlds.tags("cold")),),
)


def test_an_extra_that_comes_along_once_its_place_is_free_is_no_change_more() -> None:
    standing = ("family", "shelf", "radio")
    spec = Spec(choices=tuple(Choice(option=OptionId(name)) for name in standing))
    *_, found = ways_out(BOXES, spec, ClearFindings(rules=(RuleId(COLD),)))
    dearest, best, second = found.ways  # one change goes before two
    assert set(best.edits) == {LeaveOut(option=RADIO), Take(option=FREEZER)}
    assert best.brought == (BOX,)
    assert [way.difference.gross_pence for way in (dearest, best, second)] == [108_000, 12_000, 13_200]


def test_an_extra_is_taken_at_the_place_where_it_serves() -> None:
    lamps = worlds.catalogue(
        (worlds.group("who"), worlds.group("lamps", any_=2)),
        (
            worlds.option("reader", "who", gives="reader"),
            worlds.option("lamp", "lamps", gives="light@side", places="left right"),
        ),
        (worlds.rule("reader-sits-right", RuleKind.NEEDS_ANY, worlds.tags("reader"), worlds.tags("light@right")),),
    )
    spec = Spec(choices=(Choice(option=OptionId("reader")),))
    *_, found = ways_out(lamps, spec, ClearFindings(rules=(RuleId("reader-sits-right"),)))
    assert [way.edits for way in found.ways] == [(Take(option=OptionId("lamp"), place=Place.RIGHT),)]


def test_what_serves_in_place_of_an_extra_is_the_same_thing_and_no_other() -> None:
    world = worlds.catalogue(
        (worlds.group("sun", any_=2), worlds.group("appliances", any_=2)),
        (
            worlds.option("framed-panel", "sun", gives="solar heavy"),
            worlds.option("light-panel", "sun", gives="solar"),
            worlds.option("laptop", "appliances", gives="laptop pure-sine"),
            worlds.option("microwave", "appliances", gives="microwave pure-sine"),
        ),
        (
            worlds.rule("nothing-heavy", RuleKind.EXCLUDES, worlds.tags("heavy"), worlds.tags("heavy")),
            worlds.rule("no-laptop", RuleKind.EXCLUDES, worlds.tags("laptop"), worlds.tags("laptop")),
        ),
    )
    *_, panels = ways_out(world, Spec(), LetIn(option=OptionId("framed-panel")))
    assert [way.edits for way in panels.ways] == [(Take(option=OptionId("light-panel")),)]
    *_, laptops = ways_out(world, Spec(), LetIn(option=OptionId("laptop")))
    assert laptops.ways == ()
