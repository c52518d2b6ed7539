"""A limit as a search holds it says of every build what the sum says of it."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.calc.limits.shape import shapes_of
from specbuilder.calc.measuring.frame import Asked
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.brief import Answer
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Pick
from specbuilder.model.rules import WithinBound
from tests.calc.plain_power import PLAIN
from tests.calc.power_scene import BRIEF, RULES, SUMS, build

LIMITS = (
    ("battery-current", 1.0),
    ("battery-current", 0.8),
    ("inverter-largest-load", 1.0),
    ("solar-voltage", 1.0),
    ("alternator-input", 1.0),
    ("charge-rate", 1.0),
    ("lead-draw", 1.0),
    ("hook-up-watts", 1.0),
)
GROUPS = ("battery", "inverter", "engine-charging", "mains-charger", "cooking", "hook-up")
EXTRAS = [o for o in RULES.options.values() if o.group in ("solar", "appliances")]


@st.composite
def builds(draw: st.DrawFn) -> Mapping[str, int]:
    """One answer or none from each group, and any extras, with their counts."""
    found: dict[str, int] = {}
    for group in GROUPS:
        assert RULES.groups[next(g for g in RULES.groups if g == group)].pick is Pick.ONE
        members = [o.id for o in RULES.options.values() if o.group == group]
        if (chosen := draw(st.sampled_from([None, *members]))) is not None:
            found[chosen] = 1
    for at in draw(st.lists(st.integers(0, len(EXTRAS) - 1), max_size=5, unique=True)):
        found[EXTRAS[at].id] = draw(st.integers(1, EXTRAS[at].max_count))
    return found


@pytest.mark.parametrize(("ledger", "factor"), LIMITS)
@settings(max_examples=150, deadline=None)
@given(choices=builds(), data=st.data())
def test_a_limit_is_kept_by_the_builds_that_keep_it(
    ledger: str, factor: float, choices: Mapping[str, int], data: st.DataObject
) -> None:
    answers: Mapping[str, Answer] = {key: data.draw(st.sampled_from(values)) for key, values in BRIEF.items()}
    tally = SUMS[LedgerId(ledger)]
    assert isinstance(tally, Tally)
    now = build(answers=answers)
    van_id = data.draw(st.sampled_from([van.id for van in RULES.vans]))
    van = RULES.options[van_id].van
    assert van is not None
    pieces = [(RULES.options[OptionId(o)], n) for o, n in choices.items()]
    value, bound = PLAIN[ledger](van, pieces, answers)
    keeps = value is None or bound is None or value <= factor * bound + 1e-9
    within = []
    for shape in shapes_of(tally, WithinBound(LedgerId(ledger), True, factor, 0), now, Asked(now.facts)):
        if shape.vans != (None,) and van_id not in shape.vans:
            continue
        joints = [shape.folding.times(shape.states[o.id], n) for o, n in pieces if o.id in shape.states]
        total = sum(shape.amounts.get(o.id, 0) * n for o, n in pieces)
        at = None if shape.vans == (None,) else van_id
        within.append(
            any(total <= shape.room(at, shape.folding.together((start, *joints))) + 1e-9 for start in shape.starts)
        )
    assert all(within) == keeps
