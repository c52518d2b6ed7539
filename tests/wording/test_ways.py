"""Ways out in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.edits import Edit, LeaveOut, Move, SetCount, Take, Together
from specbuilder.model.ids import LedgerId, OptionId, RuleId
from specbuilder.model.kinds import Place
from specbuilder.model.spec import Spec
from specbuilder.model.ways import ClearFindings, Difference, Goal, LetIn, RankBy, WayOut, WaysOut
from specbuilder.wording import ways
from specbuilder.wording.differences import difference_cells, difference_heads, difference_short, difference_spoken
from specbuilder.wording.names import rule_name
from tests.wording.scene import CATALOGUE, choice, spec

NOTHING = Difference(gross_pence=0, mass_kg=0, hours=0, weeks=0)
BEFORE = spec(
    choice("fenwain-short"),
    choice("side-galley", place=Place.RIGHT),
    choice("gas-bundle"),
    choice("co-alarm", came_with=(OptionId("gas-bundle"),)),
    choice("usb-pair", count=3),
    choice("solar"),
)
ROOF, HEIGHT, ALARM = RuleId("roof-not-too-heavy"), RuleId("height-under-barrier"), RuleId("flame-needs-alarm")


def way(*edits: Edit, after: Spec = BEFORE, difference: Difference = NOTHING, **more: tuple[str, ...]) -> WayOut:
    return WayOut(edits=edits, spec=after, difference=difference, **more)  # type: ignore[arg-type]


def option(id_: str) -> OptionId:
    return OptionId(id_)


CLEAR: Goal = ClearFindings(rules=(ROOF,))
LET_POD: Goal = LetIn(option=option("pod-galley"))


@pytest.mark.parametrize(
    ("edits", "title", "whole"),
    [
        ((Take(option=option("pod-galley")),), "Pod galley instead", "Pod galley instead of Side galley."),
        ((Take(option=option("long-roof")),), "Larchlid tilting roof, long", "Larchlid tilting roof, long."),
        (
            (LeaveOut(option=option("solar")), Take(option=option("long-roof"))),
            "Larchlid tilting roof, long, instead",
            "Larchlid tilting roof, long, instead of Solar 160 W, framed.",
        ),
        ((LeaveOut(option=option("solar")),), "leave out Solar 160 W, framed", "leave out Solar 160 W, framed."),
        ((SetCount(option=option("usb-pair"), count=2),), "2 x USB pair, not 3", "2 x USB pair, not 3."),
        ((SetCount(option=option("usb-pair"), count=0),), "leave out USB pair", "leave out USB pair."),
        ((Move(option=option("side-galley"), to=Place.LEFT),), "Side galley on the left instead", None),
        (
            (Take(option=option("fuel-hob")), Take(option=option("pod-galley"))),
            "Fuel hob bundle instead, and Pod galley instead",
            "Fuel hob bundle instead of Gas bundle, and Pod galley instead of Side galley.",
        ),
        (
            (Together(edits=(Take(option=option("fuel-hob")), LeaveOut(option=option("solar")))),),
            "Fuel hob bundle instead; and leave out Solar 160 W, framed",
            None,
        ),
        ((Take(option=option("side-galley"), place=Place.LEFT),), "Side galley on the left", None),
    ],
)
def test_a_way_is_titled_by_what_one_would_do(edits: tuple[Edit, ...], title: str, whole: str | None) -> None:
    assert ways.way_title(CATALOGUE, BEFORE, CLEAR, way(*edits)) == title
    if whole is not None:
        assert ways.way_spoken(CATALOGUE, BEFORE, CLEAR, way(*edits))[0] == whole


def test_what_was_asked_for_stands_in_for_nothing() -> None:
    found = way(Take(option=option("pod-galley")), Take(option=option("fuel-hob")))
    assert ways.way_title(CATALOGUE, BEFORE, LET_POD, found) == "Pod galley, and Fuel hob bundle instead"


@pytest.mark.parametrize("width", [12, 20, 30, 45, 80])
def test_a_title_fits_the_width_and_loses_what_follows_the_comma_first(width: int) -> None:
    found = way(LeaveOut(option=option("solar")), Take(option=option("long-roof")))
    title = ways.way_title(CATALOGUE, BEFORE, CLEAR, found, width)
    assert len(title) <= width
    if width == 30:
        assert title == "Larchlid tilting roof instead"


def test_what_a_way_clears_brings_and_loses() -> None:
    goal = ClearFindings(rules=(ROOF, HEIGHT))
    found = way(
        Take(option=option("pod-galley")),
        clears=(ROOF, HEIGHT, ALARM),
        breaks=("nights-short",),
        brought=("usb-pair",),
        left=("side-galley", "co-alarm"),
    )
    words = ways.way_words(CATALOGUE, BEFORE, goal, found)
    assert words.under == (
        "clears both",
        'clears "You cannot smell it." as well',
        'SIGN, in writing: "By the second evening the fridge is off."',
        "brings USB pair",
        "lost: Side galley and CO alarm",
    )
    told = ways.way_spoken(CATALOGUE, BEFORE, goal, found)
    assert told[0] == "Pod galley instead of Side galley."
    assert told[-1] == "lost: CO alarm."


@pytest.mark.parametrize(
    ("asked", "clears", "words"),
    [
        ((ROOF,), (ROOF,), ("clears it",)),
        ((ROOF, HEIGHT, ALARM), (ROOF, HEIGHT, ALARM), ("clears all 3",)),
        (
            (ROOF, HEIGHT),
            (ROOF,),
            ("clears roof load", 'stays broken: "It would not go under your barrier."'),
        ),
    ],
)
def test_what_is_cleared_of_what_was_asked(
    asked: tuple[RuleId, ...], clears: tuple[RuleId, ...], words: tuple[str, ...]
) -> None:
    found = way(Take(option=option("pod-galley")), clears=clears)
    assert ways.way_words(CATALOGUE, BEFORE, ClearFindings(rules=asked), found).under == words


def test_a_rule_is_named_by_its_ledger_or_its_sentence() -> None:
    assert rule_name(CATALOGUE, ROOF) == "roof load"
    assert rule_name(CATALOGUE, ALARM) == '"You cannot smell it."'
    assert rule_name(CATALOGUE, RuleId("gone")) == '"gone" (not in this catalogue)'
    assert LedgerId("roof-load") in CATALOGUE.ledgers


def test_many_changes_are_told_one_a_line() -> None:
    found = way(
        Take(option=option("pod-galley")),
        Take(option=option("fuel-hob")),
        LeaveOut(option=option("solar")),
        SetCount(option=option("usb-pair"), count=1),
    )
    assert ways.way_spoken(CATALOGUE, BEFORE, CLEAR, found)[:5] == (
        "four changes:",
        "Pod galley instead of Side galley.",
        "Fuel hob bundle instead of Gas bundle.",
        "leave out Solar 160 W, framed.",
        "1 x USB pair, not 3.",
    )


def test_differences_in_columns_and_aloud() -> None:
    less = Difference(gross_pence=-62_400, mass_kg=-25, hours=-14, weeks=0)
    mixed = Difference(gross_pence=46_800, mass_kg=-4.5, hours=0.5, weeks=-1)
    assert difference_heads() == "    price     kg   hours   weeks"
    assert difference_cells(less).columns == "     -624    -25     -14       0"
    assert difference_cells(mixed).columns == "     +468   -4.5    +0.5      -1"
    assert difference_cells(NOTHING).columns == "        0      0       0       0"
    assert (
        difference_spoken(CATALOGUE, less)
        == "takes off 624 pounds, 25 kilograms and 14 hours; parts take as long as before"
    )
    assert (
        difference_spoken(CATALOGUE, mixed)
        == "adds 468 pounds and 0.5 hours, takes off 4.5 kilograms; parts take 1 week less"
    )
    assert difference_spoken(CATALOGUE, replace(NOTHING, weeks=2)) == (
        "changes neither price nor mass nor hours; parts take 2 weeks longer"
    )
    assert difference_short(CATALOGUE, mixed) == "+£468, -4.5 kg, +0.5 hours, -1 week"
    assert difference_short(CATALOGUE, NOTHING) == "+£0, +0 kg"


def test_what_would_be_written_as_nought_is_no_change() -> None:
    hair = Difference(gross_pence=20, mass_kg=0.01, hours=0.01, weeks=-0.01)
    assert difference_cells(hair).columns == difference_cells(NOTHING).columns
    assert difference_spoken(CATALOGUE, hair) == difference_spoken(CATALOGUE, NOTHING)


def _list(found: int, *, within: int = 3, finished: bool = True, complete: bool = True) -> WaysOut:
    some = tuple(way(Take(option=option("pod-galley"))) for _ in range(found))
    return WaysOut(
        goal=CLEAR, rank_by=RankBy.PRICE, ways=some, within=within, finished=finished, complete=complete and finished
    )


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (_list(0), "No way found within three changes. The reasons are above."),
        (_list(0, within=0), "No change of the choices is a way out. The reasons are above."),
        (_list(1, within=1), "No second way within one change. All kinds of change were tried."),
        (_list(2), "No third way within three changes. All kinds of change were tried."),
        (_list(3), "No other way goes before these. All kinds of change were tried."),
        (_list(2, within=12), "No third way within 12 changes. All kinds of change were tried."),
        (_list(0, within=0, complete=False),
         "No way found yet; the search stopped before it knew whether there is one."),
        (_list(2, within=2, complete=False),
         "The search stopped before it knew whether there are better ones. "
         "Every way of up to two changes was looked at."),
        (_list(2, finished=False), "looking for ways out"),
    ],
)  # fmt: skip
def test_how_far_was_looked(found: WaysOut, words: str) -> None:
    assert ways.ways_closing(found) == words


def test_a_way_that_is_not_there() -> None:
    assert ways.no_such_way(2, _list(0)) == "There is no way 2: no way out was found."
    assert ways.no_such_way(2, _list(1)) == "There is no way 2: way 1 is the only one."
    assert ways.no_such_way(9, _list(3)) == "There is no way 9: ways 1 to 3 can be taken."


def test_what_is_said_once_a_way_is_taken() -> None:
    after = spec(choice("pod-galley"), choice("fuel-hob"))
    found = way(
        Take(option=option("pod-galley")),
        Take(option=option("fuel-hob")),
        after=after,
        left=("side-galley", "gas-bundle", "co-alarm"),
    )
    assert ways.way_taken(CATALOGUE, BEFORE, found) == (
        "Took Pod galley; took Fuel hob bundle, instead of Side galley, Gas bundle and CO alarm"
    )


def test_the_line_over_the_list_says_what_the_order_goes_by() -> None:
    assert [ways.ranked_by(rank) for rank in RankBy] == [
        "fewest changes first, then price",
        "fewest changes first, then kg",
        "fewest changes first, then hours",
        "fewest changes first, then weeks",
    ]
