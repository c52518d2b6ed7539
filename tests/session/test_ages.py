"""A child whose age nobody said may need a seat: how many are small is then not known."""

from __future__ import annotations

import pytest

from specbuilder.model.brief import Answers
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey
from specbuilder.model.spec import Spec
from specbuilder.session.facts import facts_of


@pytest.mark.parametrize(
    ("children", "ages", "small"), [(2, (9, 6), 2), (2, (6,), None), (1, (9, 6), None), (None, (6,), 1), (2, (), None)]
)
def test_small_children_are_counted_when_every_age_is_known(
    catalogue: Catalogue, children: int | None, ages: tuple[int, ...], small: int | None
) -> None:
    answers = Answers().with_answer(BriefKey("child_ages"), ages)
    if children is not None:
        answers = answers.with_answer(BriefKey("children"), children)
    assert facts_of(catalogue, Spec(answers=answers)).get("children_under_135cm") == small
