"""Places at roof and walls hold for the van they are drawn for: on another body nobody cuts by them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import OptionId
from specbuilder.model.vans import Van
from specbuilder.workshop.bodies import ALIKE, body_of
from specbuilder.workshop.cuts import OTHER_BODY, unsettled
from specbuilder.workshop.view import SpecView, view_of
from tests.documents.cases import plain_case, the_catalogue

LOW, HIGH = "off-grid-pair", "winter-walkers"


def view(name: str) -> SpecView:
    stand = plain_case(name).stand
    return view_of(stand.catalogue, stand.spec, stand.report)


def waiting(found: SpecView) -> set[tuple[str, bool]]:
    """The surface of every hole, and whether it waits because of the body."""
    return {
        (hole.surface, OTHER_BODY in unsettled(found, one, one.option, hole))
        for one in found.taken
        if one.option is not None
        for hole in one.holes
        if not hole.measure
    }


def van(catalogue: Catalogue, name: str) -> Van:
    found = catalogue.options[OptionId(name)].van
    assert found is not None
    return found


def test_in_a_high_van_nothing_is_cut_by_figures_in_roof_and_side_skin_and_all_else_is() -> None:
    found = waiting(view(HIGH))
    assert {surface for surface, waits in found if waits} == {"roof", "side skin"}
    assert {"roof", "side skin"}.isdisjoint(surface for surface, waits in found if not waits)
    assert ("floor", False) in found


def test_in_the_van_it_is_drawn_for_every_place_holds() -> None:
    assert not any(waits for _, waits in waiting(view(LOW)))


def test_the_drawn_van_is_one_of_the_house() -> None:
    catalogue = the_catalogue()
    firm = catalogue.firm
    insides = {(o.van.inside_height_mm, o.van.inside_width_mm) for o in catalogue.vans if o.van is not None}
    assert (firm.drawn_inside_height_mm, firm.drawn_inside_width_mm) in insides
    assert len(insides) > 1


def test_what_hangs_from_the_roof_and_stands_at_the_wall_is_open_and_the_rest_is_not() -> None:
    catalogue = the_catalogue()
    body = body_of(catalogue, van(catalogue, "tormwain-left"), catalogue.options[OptionId("lights-basic")])
    assert body.z_is_open(1360)
    assert not body.z_is_open(900)
    assert body.y_is_open(-585, 440)
    assert not body.y_is_open(0, 440)


@pytest.mark.parametrize("drawn", [None, 1390.0])
def test_a_part_made_for_this_very_van_is_drawn_for_it_and_a_catalogue_without_figures_asks_nothing(
    drawn: float | None,
) -> None:
    catalogue = the_catalogue()
    option: Option = catalogue.options[OptionId("lights-basic")]
    if drawn is None:
        catalogue = replace(catalogue, firm=replace(catalogue.firm, drawn_inside_height_mm=None))
    else:
        option = replace(option, fits_vans=(OptionId("tormwain-left"),))
    assert body_of(catalogue, van(the_catalogue(), "tormwain-left"), option) == ALIKE
