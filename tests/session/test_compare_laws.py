"""Whatever two builds are: the comparison is turned round from the other side, and its lines add up."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.stand import Stand
from specbuilder.session.compare import compare
from tests.session.compare_scene import CATALOGUE, FINISHED, STANDS, WANTED
from tests.session.edit_runs import FEW_RUNS, runs, stand


def test_a_build_does_not_differ_from_itself() -> None:
    for one in STANDS.values():
        found = compare(one, one)
        assert found.empty
        assert found.same == len(one.spec.choices)


def test_from_the_other_side_all_is_turned_round() -> None:
    for one, other in combinations(STANDS.values(), 2):
        assert compare(one, other).turned == compare(other, one)


MASS = LedgerId("total-mass")


def beside_parts_kg(one: Stand) -> float:
    """People, their luggage and other load; of the water what a fill stop keeps out."""
    lines = {line.label: line.amount.least for line in one.report.readings[MASS].entries if line.label}
    travellers = sum(one.report.facts.number(BriefKey(key)).least for key in ("adults", "children"))
    chosen = [(CATALOGUE.options[choice.option], choice.count) for choice in one.spec.choices]
    tanks_l = sum(option.water.fresh_travel_l * count for option, count in chosen)
    load = lines.get("people", 0) + lines.get("other load", 0)
    return load + 10 * travellers + lines.get("travel water", 0) - tanks_l


def test_between_finished_builds_the_lines_add_up_and_only_people_and_capped_water_are_the_rest() -> None:
    assert len(FINISHED) > 5
    for one, other in combinations(FINISHED, 2):
        rest = compare(one, other).rest
        assert (rest.gross_pence, rest.hours) == (0, 0)
        assert rest.mass_kg == pytest.approx(beside_parts_kg(other) - beside_parts_kg(one), abs=0.02)


@FEW_RUNS
@given(st.data())
def test_whatever_was_done_the_comparison_is_turned_round_and_money_adds_up(data: st.DataObject) -> None:
    one, other = (stand(CATALOGUE, data.draw(runs(CATALOGUE, WANTED.spec, 8))) for _ in range(2))
    found = compare(one, other)
    assert found.turned == compare(other, one)
    assert compare(one, one).empty
    if not (one.report.undecided or other.report.undecided):
        assert abs(found.rest.gross_pence) <= len(found.changes)  # a penny of rounding for each line
