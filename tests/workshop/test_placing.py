"""What is open about a place is said: a figure that is missing or not to be relied on is no silent blank."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.spec import Choice
from specbuilder.workshop.placing import open_about
from specbuilder.workshop.view import SpecView, view_of
from tests.documents.cases import NAMES, case, plain_case, spec_of

_FAMILY = "saturday-family"


def _view(*choices: Choice) -> SpecView:
    stand = case(_FAMILY, choices=choices).stand
    return view_of(stand.catalogue, stand.spec, stand.report)


def _told(option: str, *choices: Choice) -> str:
    view = _view(*choices)
    return next(open_about(view, one) for one in view.taken if one.choice.option == option)


def test_a_part_whose_place_is_settled_has_nothing_open() -> None:
    assert _told("side-galley", *spec_of(_FAMILY).choices) == ""


def test_of_more_than_one_the_places_are_measured() -> None:
    assert _told("socket-usb-pair", *spec_of(_FAMILY).choices) == "measure on the van: more than one"


def test_a_side_that_nobody_decided_is_not_given_as_settled() -> None:
    choices = (replace(c, place=None) if c.option == "side-galley" else c for c in spec_of(_FAMILY).choices)
    assert _told("side-galley", *choices) == "side NOT DECIDED; shown for the usual one"


def test_what_sits_beside_a_door_waits_for_the_base_van() -> None:
    choices = (c for c in spec_of(_FAMILY).choices if c.option != "fenwain-short")
    assert _told("window-mid-opening", *choices) == "x is NOT KNOWN before the base van is decided"


def test_what_sits_at_something_that_is_not_chosen_says_what_is_missing() -> None:
    choices = (c for c in spec_of(_FAMILY).choices if c.option != "place-in-galley")
    assert _told("battery-small", *choices) == "NOT DECIDED: Battery place"


@pytest.mark.parametrize("name", NAMES)
def test_a_missing_figure_of_a_part_with_a_place_is_always_explained(name: str) -> None:
    stand = plain_case(name).stand
    view = view_of(stand.catalogue, stand.spec, stand.report)
    for one in view.taken:
        if one.option is None or one.option.position is None:
            continue
        spot = view.positions.of_choice(one.choice, one.option)
        if spot is None or spot.x_mm is None:
            assert open_about(view, one), one.choice.option
