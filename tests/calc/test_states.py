"""Folding many open choices: exact while that is cheap, and never too narrow after that."""

from __future__ import annotations

from itertools import product
from math import inf

from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.measuring import states
from specbuilder.calc.measuring.states import Chain, Fold, Folding, Joint, Slot, States

FOLDS = (Fold.SUM, Fold.LEAST, Fold.MOST)
NEUTRAL: Joint = (0, inf, -inf)
FOLDING = Folding(FOLDS, NEUTRAL)
NUMBERS = st.integers(-3, 5)
SLOTS = st.lists(
    st.dictionaries(st.tuples(NUMBERS, NUMBERS, NUMBERS), st.tuples(NUMBERS), min_size=1, max_size=3), max_size=4
)


def _slots(drawn: list[dict[Joint, tuple[int]]]) -> list[Slot]:
    return [Slot(str(i), {joint: (a, a) for joint, (a,) in each.items()}) for i, each in enumerate(drawn)]


def _by_hand(slots: list[Slot]) -> States:
    found: States = {}
    for ways in product(*(slot.states.items() for slot in slots)):
        joints = [joint for joint, _ in ways]
        total = sum(ends[0] for _, ends in ways)
        joint = (
            sum(j[0] for j in joints),
            min((j[1] for j in joints), default=inf),
            max((j[2] for j in joints), default=-inf),
        )
        low, high = found.get(joint, (total, total))
        found[joint] = min(low, total), max(high, total)
    return found


@given(SLOTS)
def test_a_chain_is_every_way_through_its_slots(drawn: list[dict[Joint, tuple[int]]]) -> None:
    slots = _slots(drawn)
    chain = Chain(FOLDING, 0, NEUTRAL, slots)
    assert chain.all == _by_hand(slots)
    for slot in slots:
        assert chain.without(slot.key) == _by_hand([s for s in slots if s.key != slot.key])
    assert chain.without("nothing of the kind") == chain.all


def test_above_the_cap_the_box_around_them_holds_every_way() -> None:
    wide: States = {(float(i), float(200 - i), float(i * i)): (float(i), float(i)) for i in range(200)}
    merged = FOLDING.merge(wide, wide)
    assert len(wide) ** 2 > states.MOST_STATES
    assert len(merged) < 300
    for column in range(3):
        numbers = [joint[column] for joint in merged]
        exact = [FOLDING.combine(a, b)[column] for a in wide for b in wide]
        assert min(numbers) <= min(exact)
        assert max(numbers) >= max(exact)
    assert all(ends == (0, 398) for ends in merged.values())
