"""The sheet of a customer's part in words: each line has its question, and a blank never reads as a number."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.own_parts import SheetLine
from specbuilder.model.spec import OwnPart
from specbuilder.wording.own_parts import (
    KINDS,
    asked_of_customer,
    kinds_hint,
    line_name,
    line_words,
    said_beyond,
    value_words,
)

WHOLE = OwnPart(
    mass_kg=16.5,
    watts_w=45,
    cut_out_mm="480 x 500",
    arrives="2031-06-03",
    door_mm=400,
    day_wh=380,
    continuous_a=100,
    capacity_ah=90,
    chemistry="LFP",
)


def test_every_line_has_a_name_and_a_question_of_its_own() -> None:
    assert len({line_name(line) for line in SheetLine}) == len(SheetLine)
    assert len({asked_of_customer(line) for line in SheetLine}) == len(SheetLine)


@pytest.mark.parametrize("line", SheetLine)
def test_what_was_said_is_told_with_its_unit_and_a_blank_is_empty(line: SheetLine) -> None:
    assert value_words(line, WHOLE)
    assert value_words(line, OwnPart()) == ""
    assert not any(sign.isdigit() for sign in line_words(line, OwnPart()))


def test_the_kind_is_told_in_words() -> None:
    assert value_words(SheetLine.KIND, WHOLE) == KINDS["LFP"]
    assert value_words(SheetLine.KIND, replace(WHOLE, chemistry="AGM")) == "lead, AGM"
    assert kinds_hint(("LFP",)).startswith("1 lithium iron phosphate")


def test_what_goes_beyond_the_four_common_lines_is_told_only_where_it_was_said() -> None:
    assert list(said_beyond(OwnPart(mass_kg=3, watts_w=4))) == []
    assert "amps it gives for good 100 A" in list(said_beyond(WHOLE))
