"""Claims on named places."""

from __future__ import annotations

from collections.abc import Iterable

import pytest

from specbuilder.calc import read_all
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Place, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Placed
from specbuilder.model.span import Span, point
from tests import worlds
from tests.calc.scene import catalogue, situation

ZONES = LedgerId("zone-use")
WINDOW = worlds.option("window", "windows", zones="window@side", places="left right", max_count=2)
RULES = catalogue(
    [
        WINDOW,
        worlds.option("tank", "tank", zones="underfloor-rear"),
        worlds.option("tank-in", "tank"),
        worlds.option("wheel-out", "survey", frees="underfloor-rear"),
        worlds.option("galley", "galley", zones="wall@side", places="left right"),
        worlds.option("tail", "galley", zones="rear"),
        worlds.option("sofa", "bench", zones="wall@left"),
    ],
    [worlds.group("windows", any_=6), worlds.group("survey", any_=6)],
)


def read(*choices: str | Placed, undecided: dict[str, Iterable[str]] | None = None) -> Reading:
    return read_all(situation(RULES, *choices, undecided=undecided))[ZONES]


def test_what_the_van_takes_counts_once_a_choice_wants_it() -> None:
    assert read().value == point(0)
    taken = read("tank")
    assert (taken.value, taken.verdict) == (point(2), Verdict.BROKEN)
    assert [(e.option, e.amount) for e in taken.entries] == [("short", point(1)), ("tank", point(1))]
    assert read("tank", "wheel-out").verdict is Verdict.HOLDS


def test_the_side_makes_the_place() -> None:
    left, right = (Placed(option=WINDOW, place=place) for place in (Place.LEFT, Place.RIGHT))
    assert read(left, right).value == point(1)
    assert read(Placed(option=WINDOW, place=Place.LEFT, count=2)).value == point(2)
    galley = RULES.options[next(o for o in RULES.options if o == "galley")]
    assert read("sofa", Placed(option=galley, place=Place.LEFT)).verdict is Verdict.BROKEN
    assert read("sofa", Placed(option=galley, place=Place.RIGHT)).verdict is Verdict.HOLDS


def test_an_open_place_may_still_be_the_good_one() -> None:
    reading = read("sofa", undecided={"galley": ["galley", "tail"]})
    assert reading.value == Span(1, 2)
    assert reading.verdict is Verdict.CANNOT_TELL
    assert [lack.group for lack in reading.lacks] == ["galley"]
    assert read("sofa", undecided={"tank": ["tank-in"]}).verdict is Verdict.HOLDS


@pytest.mark.parametrize("groups", [14])
def test_many_groups_that_want_the_same_places_stay_quick_and_honest(groups: int) -> None:
    wants = [
        worlds.option(f"{group}-{number}", f"g{group}", zones=f"z{(group * 5 + number * 3) % 13}")
        for group in range(groups)
        for number in range(3)
    ]
    rules = catalogue(wants)
    undecided = {f"g{group}": [f"{group}-{number}" for number in range(3)] for group in range(groups)}
    reading = read_all(situation(rules, undecided=undecided))[ZONES]
    assert reading.value is not None
    assert reading.value.least == 2  # fourteen claims on thirteen places
    assert reading.value.most > 2
