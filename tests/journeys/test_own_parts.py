"""U9: the customer brings a fridge and a battery from a show. What nobody has read is asked, and never guessed."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.documents.formats import text_lines
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Level, Owner, Verdict
from specbuilder.model.own_parts import blanks_of
from specbuilder.tui.counter import Counter
from specbuilder.tui.items import Field, OnField, OnOption, OnQuestion
from specbuilder.tui.keys import Where
from specbuilder.tui.screens.why import WhyPage
from specbuilder.wording.dates import written_day_short

from .bench import counter_on, edits, lines, press, spec, to_jobs
from .hand_made import at_once
from .stage import WINDOWS, Stage, on_stage

FRIDGE, BATTERY = OptionId("fridge-own"), OptionId("battery-own")


def blanks(stage: Stage) -> set[str]:
    """What is still blank on the sheets, as the questions name it."""
    options = stage.app.counter.catalogue.options
    return {
        f"{choice.option} {line.value}"
        for choice in stage.spec().choices
        if choice.owner is Owner.CUSTOMER
        for line in blanks_of(options[choice.option], choice.own_part)
    }


@WINDOWS
async def test_u9_their_own_fridge_and_battery(demo: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter")
        stage.presses = 0
        screen = await stage.press("/", "'fri'", "enter", "y")
        assert "Your own fridge" in screen
        assert "not known yet" in screen
        screen = await stage.press("'16'", "enter", "'45'", "enter", "enter", "'0306'", "enter")
        assert "3 Jun" in screen, "the date is read back in words"
        await stage.press("/", "'bat'", "enter", "y", "enter", "enter", "'0306'", "enter")
        assert stage.presses <= 36
        (fridge,), (battery,) = stage.spec().chosen(FRIDGE), stage.spec().chosen(BATTERY)
        assert fridge.own_part is not None
        assert battery.own_part is not None
        assert (fridge.own_part.mass_kg, fridge.own_part.watts_w) == (16, 45)
        assert fridge.own_part.arrives.endswith("-06-03")
        assert battery.own_part.continuous_a is None
        assert (fridge.owner, battery.owner) == (Owner.CUSTOMER, Owner.CUSTOMER)
        asked = {question.part: question for question in stage.spec().questions}
        assert set(asked) == blanks(stage)
        assert all(question.owned and question.owner == "customer" for question in asked.values())
        amps = stage.report().readings[LedgerId("battery-current")]
        assert amps.verdict is Verdict.CANNOT_TELL
        assert [lack.group for lack in amps.lacks] == ["battery"]
        screen = await stage.press("escape", "l")
        row = next(line for line in screen.splitlines() if "Battery amps" in line)
        assert "cannot tell: battery" in row
        await stage.press("escape")
        for option in (FRIDGE, BATTERY):
            stage.app.counter.go_to(OnOption(option))
            assert "Whose part: theirs" in await stage.press("d")
            await stage.press("escape")
        copy, pack = paper(stage, "customer"), paper(stage, "workshop")
        assert "we do not warrant it" in copy
        assert "the amps it gives for good, from its label" in copy
        assert "do not warrant it" in pack
        assert "gives for good NOT KNOWN" in pack
        for question in asked.values():
            assert question.text.split(": ")[1] in pack
            assert written_day_short(question.due) in pack


def up_to(counter: Counter, field: Field) -> None:
    """The cursor on a line of the battery's sheet, from below it."""
    for _ in range(20):
        if counter.top.at == OnField(field, BATTERY):
            return
        press(counter, "up")
    raise AssertionError(f"{field} is not on the page")


def paper(stage: Stage, name: str) -> str:
    """The words of a paper as it would be printed now; the columns of a table run into one another."""
    deeds = stage.app.counter.deeds
    sheet = next(sheet for sheet in deeds.sheets if sheet.name == name)
    return " ".join(" ".join(text_lines(sheet.make(deeds.case(deeds.desk.stand, deeds.paper_day)), 200)).split())


@pytest.mark.parametrize("keys", [("u",), ("escape", "u")])
def test_taking_it_back_is_one_step_with_all_its_questions(demo: Path, keys: tuple[str, ...]) -> None:
    counter = counter_on(demo)
    press(counter, "enter")
    before = spec(counter)
    press(counter, "/", *"fri", "enter", "y")
    assert len(spec(counter).questions) == 5
    assert edits(counter) == 1
    press(counter, *keys)
    assert spec(counter) == before


def test_a_line_that_is_filled_in_closes_its_question_as_the_same_step(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"fri", "enter", "y")
    count = edits(counter)
    press(counter, *"16", "enter")
    assert edits(counter) == count + 1
    assert len(spec(counter).questions) == 4
    press(counter, "u")
    assert len(spec(counter).questions) == 5


def test_the_kind_of_a_battery_is_a_number_and_another_kind_is_left_blank(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"bat", "enter", "y", "end")
    up_to(counter, Field.PART_KIND)
    press(counter, "2")
    assert "other rules" in counter.message
    press(counter, "1")
    (battery,) = spec(counter).chosen(BATTERY)
    assert battery.own_part is not None
    assert battery.own_part.chemistry == "LFP"


def test_minus_empties_a_line_and_enter_empties_none(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"bat", "enter", "y", "down", "down", "down", *"100", "enter", *"90", "enter", "1")
    press(counter, "up", "enter")
    up_to(counter, Field.PART_CAPACITY)
    press(counter, "enter", "enter")
    sheet = spec(counter).chosen(BATTERY)[0].own_part
    assert sheet is not None
    assert (sheet.continuous_a, sheet.capacity_ah, sheet.chemistry) == (100, 90, "LFP")
    up_to(counter, Field.PART_CAPACITY)
    press(counter, "-")
    (battery,) = spec(counter).chosen(BATTERY)
    assert battery.own_part is not None
    assert (battery.own_part.capacity_ah, battery.own_part.continuous_a) == (None, 100)
    assert "battery-own capacity_ah" in {question.part for question in spec(counter).questions}


@pytest.mark.parametrize("typed", ["99999999", "0"])
def test_amps_that_no_battery_gives_are_not_taken(demo: Path, typed: str) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"bat", "enter", "y", "down", "down", "down")
    assert counter.top.at == OnField(Field.PART_AMPS, BATTERY)
    press(counter, *typed, "enter")
    assert "Amps are needed here" in counter.message
    assert spec(counter).chosen(BATTERY)[0].own_part.continuous_a is None  # type: ignore[union-attr]


def test_y_on_a_part_with_no_row_of_its_own_marks_it_and_says_whose_price_stands(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"bench two", "enter", "y")
    assert counter.top.where is Where.DETAILS
    assert "the price is still that of ours" in counter.message
    press(counter, "escape", "y")
    (bench,) = spec(counter).chosen(OptionId("bench-two"))
    assert bench.owner is Owner.HOUSE
    assert not spec(counter).questions


def test_a_part_only_the_customer_can_bring_stays_theirs(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"fri", "enter", "y", "escape", "y")
    assert counter.top.where is Where.DETAILS, "y leads to its sheet again"
    press(counter, "y")
    assert "We have none of this one" in counter.message
    assert spec(counter).chosen(FRIDGE)[0].owner is Owner.CUSTOMER


def test_a_blank_sheet_cannot_be_signed_and_comes_back_from_the_file(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"fri", "enter", "y", *"16", "enter")
    was = spec(counter)
    assert "own-part-sheet-complete" in {f.rule for f in counter.report.broken(Level.STOP)}
    to_jobs(counter)
    again = counter_on(demo)
    press(again, "enter")
    assert spec(again).questions == was.questions
    assert spec(again).chosen(FRIDGE) == was.chosen(FRIDGE)


def test_a_question_about_a_blank_can_be_given_to_somebody_else(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *"fri", "enter", "y", "escape", "o")
    while not isinstance(counter.top.at, OnQuestion):
        press(counter, "down")
    press(counter, "enter", "2", "enter")
    changed = next(question for question in spec(counter).questions if question.owner == "counter")
    assert changed.part, "it still closes with its blank"


def test_the_finding_of_a_blank_sheet_names_the_key_of_the_sheet(demo: Path) -> None:
    counter = counter_on(demo, runner=at_once)
    press(counter, "enter", "/", *"fri", "enter", "y", "escape")
    assert spec(counter).chosen(FRIDGE)[0].owner is Owner.CUSTOMER
    found = next(f for f in counter.report.findings if f.rule == "own-part-sheet-complete")
    counter.show(WhyPage(counter, found))
    counter.lay()
    told = " ".join(" ".join(row.text for row in lines(counter, 78)).split())
    assert "d on the row of their part opens its sheet: filled in, it clears this." in told
