"""Limits of heat, fresh air, water and heater fuel as a search holds them say of every build what the sums say."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.calc import CALCULATIONS
from specbuilder.calc.limits.shape import shapes_of
from specbuilder.calc.measuring.frame import Asked
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Pick
from specbuilder.model.rules import WithinBound
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.calc.plain import PLAIN, Build, Piece
from tests.calc.scene import KNOWN, LIVING, facts, situation

SHIPPED = read_rules(rules_folder())
TAKING_PART = [
    o for o in SHIPPED.options.values() if any(c.touches(o) for c in CALCULATIONS if c.id in LIVING) and o.van is None
]
ANSWERS: Mapping[str, tuple[Answer, ...]] = {
    "sleepers_upstairs": (0, 2),
    "design_temp_c": (-15, 0, 12),
    "plugged_every_night": ("yes", "no"),
    "nights_off_grid": (0, 2, 9),
    "adults": (1, 4),
}


@st.composite
def builds(draw: st.DrawFn) -> list[Option]:
    """One answer or none of each question with a part in these sums; extras at most once."""
    found: list[Option] = []
    for group in dict.fromkeys(o.group for o in TAKING_PART):
        members = [o for o in TAKING_PART if o.group == group]
        if SHIPPED.groups[group].pick is Pick.ONE:
            found += [o for o in [draw(st.sampled_from([None, *members]))] if o is not None]
        else:
            found += draw(st.lists(st.sampled_from(members), max_size=2, unique_by=lambda o: o.id))
    return found


@pytest.mark.parametrize("id_", LIVING)
@settings(max_examples=80, deadline=None)
@given(options=builds(), data=st.data())
def test_a_limit_is_kept_by_the_builds_that_keep_it(id_: str, options: list[Option], data: st.DataObject) -> None:
    """The limit as a search holds it, against the plain sum of one build."""
    answers = {key: data.draw(st.sampled_from(values)) for key, values in ANSWERS.items()}
    van = data.draw(st.sampled_from(SHIPPED.vans))
    assert van.van is not None
    now = situation(SHIPPED, van=van, facts_=facts(answers))
    tally = next(c for c in CALCULATIONS if c.id == id_)
    assert isinstance(tally, Tally)
    value, bound = PLAIN[id_](Build(van.van, [Piece(o) for o in options], {**KNOWN, **answers}))
    keeps = value is None or bound is None or value >= bound - 1e-9
    kept = []
    for shape in shapes_of(tally, WithinBound(ledger=tally.id, within=False), now, Asked(now.facts)):
        if shape.vans != (None,) and van.id not in shape.vans:
            continue
        joints = [shape.states[o.id] for o in options if o.id in shape.states]
        total = sum(shape.amounts.get(o.id, 0) for o in options)
        at = None if shape.vans == (None,) else van.id
        rooms = [shape.room(at, shape.folding.together((start, *joints))) for start in shape.starts]
        kept.append(any(total <= room + 1e-9 for room in rooms))
    assert len(kept) == 1
    assert all(kept) == keeps
