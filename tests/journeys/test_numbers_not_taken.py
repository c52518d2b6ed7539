"""What becomes of a number that was typed and not taken, and of one in another unit."""

from __future__ import annotations

from pathlib import Path

from specbuilder.model.ids import BriefKey
from specbuilder.tui.items import OnAnswer

from .bench import press, spec
from .test_typing import begun, hint_line, stand_on


def test_a_half_typed_number_is_kept_and_enter_goes_on_with_it(tmp_path: Path) -> None:
    counter = begun(tmp_path)
    stand_on(counter, "ceiling")
    press(counter, *"18", "escape")
    assert counter.drafts == {OnAnswer("ceiling_gross_pence"): "18"}
    assert "0-9 type anew" in hint_line(counter)
    assert "Enter go on with it" in hint_line(counter)
    press(counter, "enter", *"000", "enter")
    assert spec(counter).answers.get("ceiling_gross_pence") == 1_800_000


def test_figures_typed_or_pasted_on_a_number_that_was_not_taken_are_not_glued_to_it(tmp_path: Path) -> None:
    counter = begun(tmp_path)
    stand_on(counter, "ceiling")
    press(counter, *"2.1", "escape", *"2100", "escape")
    assert counter.drafts == {OnAnswer("ceiling_gross_pence"): "2100"}
    counter.paste("3000")
    press(counter, "enter")
    assert spec(counter).answers.get("ceiling_gross_pence") == 300_000


def test_minus_on_what_was_not_taken_says_that_it_is_gone(tmp_path: Path) -> None:
    counter = begun(tmp_path)
    stand_on(counter, "ceiling")
    press(counter, *"18", "escape", "-")
    assert not counter.drafts
    assert counter.message.startswith("What was typed is gone")


def test_a_sleeper_of_195_mm_is_refused_with_the_figure_in_mm(tmp_path: Path) -> None:
    counter = begun(tmp_path, "2", "0")
    stand_on(counter, "'sleepers'")
    press(counter, "2")
    counter.go_to(OnAnswer(BriefKey("tallest_sleeper_mm")))
    counter.lay()
    press(counter, *"195", "enter")
    assert counter.message == "A whole number from 500 to 2,100 is needed here, in mm: 1950 for 195 cm."
    assert spec(counter).answers.get("tallest_sleeper_mm") is None
