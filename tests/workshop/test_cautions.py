"""Which cautions a build has, what they are about, and where on the floor they are said."""

from __future__ import annotations

import pytest

from specbuilder.model.catalogue import Catalogue, Caution
from specbuilder.model.ids import CautionId
from specbuilder.workshop.cautions import cautions_of, forbids, is_for_the_floor, steps_of
from specbuilder.workshop.view import view_of
from tests.documents.cases import NAMES, plain_case


def _caution(text: str, shown_where: str = "customer copy") -> Caution:
    return Caution(id=CautionId("one"), text=text, shown_where=shown_where, who_must_do_or_sign="fitter")


@pytest.mark.parametrize("name", NAMES)
def test_every_caution_of_what_is_chosen_is_there_once_with_all_it_is_about(name: str) -> None:
    stand = plain_case(name).stand
    view = view_of(stand.catalogue, stand.spec, stand.report)
    found = {caution.id: set(about) for caution, about in cautions_of(view)}
    wanted: dict[CautionId, set[str]] = {}
    for one in view.taken:
        for caution in one.option.cautions if one.option else ():
            wanted.setdefault(caution, set()).add(one.choice.option)
    assert found == wanted
    assert len(cautions_of(view)) == len(found)


@pytest.mark.parametrize(
    ("text", "forbidden"),
    [
        ("Never cover the vents.", True),
        ("Nobody travels on the sideways bench.", True),
        ("A lithium battery must not be charged below freezing.", True),
        ("Do not rely on this van alone.", True),
        ("We fit the part you bring; we do not warrant it.", False),
        ("Behind the skin lie ribs, belts and wires: look before cutting.", False),
    ],
)
def test_a_caution_that_forbids_is_told_from_one_that_warns(text: str, forbidden: bool) -> None:
    assert forbids(_caution(text)) is forbidden


def test_a_caution_is_said_at_every_step_whose_sheet_shows_it() -> None:
    caution = _caution("Gas kills.", "cooking; workshop sheets B3, B7, B9; customer copy")
    assert steps_of(caution) == ("B3", "B7", "B9")
    assert is_for_the_floor(caution)
    assert not is_for_the_floor(_caution("Never cook under it.", "awning choice; customer copy; hand-over"))


def test_no_caution_is_shown_at_a_step_that_does_not_exist(catalogue: Catalogue) -> None:
    named = {step for caution in catalogue.cautions.values() for step in steps_of(caution)}
    assert named <= catalogue.work.keys()
