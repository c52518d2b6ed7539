"""What the program tells beside weights, roof and height, held against sums that share no line of code with it."""

from __future__ import annotations

import pytest

from tests.independent.build import build
from tests.independent.test_sums_agree import agree, each_build, said
from tests.independent.weights_beside import SUMS, on_axles, scales, seated


@each_build
@pytest.mark.parametrize("figure", SUMS)
def test_value_and_bound_agree_and_both_are_there_or_neither(name: str, figure: str) -> None:
    reading, (value, bound) = said(name, figure), SUMS[figure](build(name))
    assert reading["applies"] is (value is not None)
    if value is None:
        assert reading["least"] is None
        return
    assert reading["least"] == reading["most"], "nothing is open in an example, so a figure is one number"
    assert agree(value, reading["least"]), f"{value} here, {reading['least']} in the program"
    assert bound == reading["bound"] or agree(bound or 0, reading["bound"])


@each_build
def test_the_scales_agree(name: str) -> None:
    for figure, (least, most) in scales(build(name)).items():
        reading = said(name, figure)
        assert agree(least, reading["least"])
        assert agree(most, reading["most"])


def test_the_familys_seats_by_hand() -> None:
    """One passenger in front and two behind; the door pillar stands 1,330 mm behind the front axle."""
    b = build("saturday-family")
    in_front, behind = seated(b)[-2:]
    assert in_front[:2] == (75, 1330 - 180)
    assert behind[0] == 150
    total, front, rear = on_axles(b, seated)
    assert total == pytest.approx(front + rear)
