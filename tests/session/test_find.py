"""Find: what a thing is called goes before what only tells it apart, beginnings before middles, names before text."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.session.find import Hit, HitKind, find


def first(catalogue: Catalogue, text: str) -> Hit:
    return find(catalogue, text)[0]


@pytest.mark.parametrize(
    ("letters", "option"),
    [
        ("ind", "induction-single"),
        ("fra", "solar-framed-160"),
        ("tor", "tormwain-left"),
        ("lon", "fenwain-long"),
        ("pod", "pod-galley"),
        ("awn", "awning-body-rail"),
    ],
)
def test_three_letters_find_what_is_called_so(catalogue: Catalogue, letters: str, option: str) -> None:
    assert first(catalogue, letters).id == option


def test_what_stands_behind_a_comma_goes_behind_what_a_thing_is_called(catalogue: Catalogue) -> None:
    one, other, *_ = catalogue.options.values()
    options = {
        one.id: replace(one, name="Zither stand, walnut"),
        other.id: replace(other, name="Walnut zither"),
    }
    found = [hit.id for hit in find(replace(catalogue, options=options), "wal") if hit.kind is HitKind.OPTION]
    assert found == [other.id, one.id]


def test_beginnings_go_before_middles_and_names_before_text(catalogue: Catalogue) -> None:
    one, two, three, *_ = catalogue.options.values()
    options = {
        one.id: replace(one, name="Stand", description="For a zither"),
        two.id: replace(two, name="Abzither"),
        three.id: replace(three, name="Stand, zither"),
    }
    found = [hit.id for hit in find(replace(catalogue, options=options), "zith") if hit.kind is HitKind.OPTION]
    assert found == [three.id, two.id, one.id]


def test_all_words_must_be_met(catalogue: Catalogue) -> None:
    assert not find(catalogue, "pod zeppelin")
    assert not find(catalogue, "   ")
