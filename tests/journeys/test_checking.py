"""A state that could not be settled in the time is told as such, and nothing else changes in the look of rows."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from specbuilder.model.ids import OptionId

from .bench import counter_on, press


def test_only_what_is_not_settled_says_checking(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"light solar", "enter")
    assert counter.opening is not None
    before = [row.text for row in counter.main.shown]
    assert not any("checking" in row for row in before)
    report = counter.report
    counter.opening.desk.report = replace(report, unsettled=frozenset({OptionId("solar-light-120")}))
    counter.lay()
    after = [row.text for row in counter.main.shown]
    changed = [row for row, was in zip(after, before, strict=True) if row != was]
    assert len(changed) == 1
    assert changed[0].startswith(" ? checking")
    assert "Light solar panel" in changed[0]
