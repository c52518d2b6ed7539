"""A way out has no change in it that nothing asked for, unless that change leaves less to be signed."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.edits import Edit, Take
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.spec import Spec
from specbuilder.model.ways import Difference, LetIn, WayOut
from specbuilder.session.ways_out import is_padded, ways_out
from specbuilder.storage.spec_files import read_spec_file
from tests.journeys.bench import catalogue

PANEL, ROOF, BUZZER = (
    Take(option=OptionId(name)) for name in ("roof-cover-panel", "larchlid-short", "roof-open-buzzer")
)
WARNING, PRICE, HEIGHT = RuleId("roof-open-warning"), RuleId("price-under-ceiling"), RuleId("parking-height")


def nurse() -> Spec:
    example = Path(__file__).parents[2] / "examples" / "nurse-under-two-metres.toml"
    return read_spec_file(example, catalogue()).spec


def way(*edits: Edit, breaks: tuple[RuleId, ...] = (), clears: tuple[RuleId, ...] = ()) -> WayOut:
    nothing = Difference(gross_pence=0, mass_kg=0, hours=0, weeks=0)
    return WayOut(edits=edits, spec=nurse(), difference=nothing, breaks=breaks, clears=clears)


def test_changes_more_for_nothing_are_padding() -> None:
    assert is_padded(way(PANEL, ROOF, BUZZER), way(PANEL, ROOF))
    assert is_padded(way(PANEL, ROOF, BUZZER, breaks=(PRICE,)), way(PANEL, ROOF, breaks=(HEIGHT,)))


def test_changes_more_that_leave_less_to_be_signed_are_a_way_of_their_own() -> None:
    assert not is_padded(way(PANEL, ROOF, BUZZER), way(PANEL, ROOF, breaks=(WARNING,)))
    assert not is_padded(way(PANEL, ROOF, BUZZER, clears=(PRICE,)), way(PANEL, ROOF))


def test_other_changes_are_another_way_and_not_padding() -> None:
    assert not is_padded(way(PANEL, BUZZER), way(PANEL, ROOF))
    assert not is_padded(way(PANEL), way(PANEL))


@pytest.mark.parametrize("blocked", ["roof-bed-sprung", "roof-cover-panel", "roof-net-and-ladder", "bench-side-parked"])
def test_no_way_offered_is_another_one_with_strangers(blocked: str) -> None:
    *_, found = ways_out(catalogue(), nurse(), LetIn(option=OptionId(blocked)))
    assert found.ways
    for at, later in enumerate(found.ways):
        for before in found.ways[:at]:
            if set(before.edits) < set(later.edits):
                assert set(later.breaks) < set(before.breaks) or set(later.clears) > set(before.clears)
