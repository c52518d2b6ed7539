"""What set and drop change is understood by the words of the screens as well as by its key."""

from __future__ import annotations

import pytest

from specbuilder.cli.things import LineThing, OptionThing, Unclear, VanThing, settable
from specbuilder.model.ids import BriefKey, OptionId
from tests.journeys.bench import catalogue


@pytest.mark.parametrize(
    ("said", "key"),
    [
        ("child_ages", "child_ages"),
        ("ages", "child_ages"),
        ("Ages of the children", "child_ages"),
        ("barrier height", "parking_limit_mm"),
        ("on a plug every night", "plugged_every_night"),
    ],
)
def test_a_line_of_the_brief_goes_by_its_label(said: str, key: str) -> None:
    assert settable(catalogue(), said) == LineThing(BriefKey(key))


def test_data_of_the_van_go_by_their_words() -> None:
    assert settable(catalogue(), "paint code") == VanThing("paint_code")
    assert settable(catalogue(), "end of the chassis number") == VanThing("vin_tail")


def test_an_option_goes_before_a_label_that_only_holds_its_word() -> None:
    assert settable(catalogue(), "Table on a wall rail") == OptionThing(option=OptionId("table-rail"))
    assert isinstance(settable(catalogue(), "weight"), OptionThing)


def test_a_word_of_several_labels_names_them_with_their_keys() -> None:
    found = settable(catalogue(), "sleepers")
    assert found == LineThing(BriefKey("sleepers")), "the whole label goes before one that holds it"
    several = settable(catalogue(), "weight of")
    assert several == Unclear(
        '"weight of" could be weight of a child (child_mass_kg) or weight of the sleepers upstairs '
        "(sleepers_upstairs_kg): type one of the names in brackets.",
        several=True,
    )
