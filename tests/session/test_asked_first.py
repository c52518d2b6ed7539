"""What was asked for stands first among the edits that let it in, and they lead to the same choices."""

from __future__ import annotations

from pathlib import Path

from specbuilder.model.edits import Edit, LeaveOut, Take, Together
from specbuilder.model.ids import OptionId
from specbuilder.model.spec import Spec
from specbuilder.session.apply import apply
from specbuilder.session.asked_first import asked_first
from specbuilder.storage.spec_files import read_spec_file
from tests.journeys.bench import catalogue

ROOF, BUZZER, CAP = OptionId("roof-as-it-is"), OptionId("roof-open-buzzer"), OptionId("high-cap-short")


def saturday() -> Spec:
    example = Path(__file__).parents[2] / "examples" / "saturday-family.toml"
    return read_spec_file(example, catalogue()).spec


def choices(*edits: Edit) -> set[OptionId]:
    spec = apply(catalogue(), saturday(), Together(edits=edits)).spec
    return {choice.option for choice in spec.choices}


def test_a_roof_that_was_asked_for_goes_before_the_buzzer_left_out_for_it() -> None:
    found: tuple[Edit, ...] = (LeaveOut(option=BUZZER), Take(option=ROOF))
    asked = asked_first(catalogue(), saturday(), found, ROOF)
    assert asked == (Take(option=ROOF), LeaveOut(option=BUZZER))
    assert choices(*asked) == choices(*found)


def test_where_the_order_decides_what_stands_in_the_end_it_stays() -> None:
    last_counts: tuple[Edit, ...] = (Take(option=ROOF), Take(option=CAP))
    assert asked_first(catalogue(), saturday(), last_counts, CAP) == last_counts
