"""What is typed goes where it is meant: letters into texts, digits into the question they answer."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.ids import BriefKey, RuleId
from specbuilder.tui.counter import Counter
from specbuilder.tui.items import Field, OnAnswer, OnField
from specbuilder.tui.keys import Where
from specbuilder.tui.screens.heading import hints

from .bench import counter_on, edits, press, spec
from .stage import WINDOWS, on_stage


def begun(folder: Path, *keys: str) -> Counter:
    counter = counter_on(folder)
    press(counter, "n", *keys)
    return counter


def hint_line(counter: Counter) -> str:
    return hints(counter.top, 200).text


def stand_on(counter: Counter, name: str) -> None:
    press(counter, "home")
    for _ in range(80):
        if name in str(counter.top.at):
            return
        press(counter, "down")
    raise AssertionError(name)


def test_a_name_is_typed_without_asking_first_and_runs_no_command(tmp_path: Path) -> None:
    counter = begun(tmp_path, "2", "enter", "2")
    press(counter, "end", "up", "up")
    assert counter.top.at == OnField(Field.NAME)
    assert "A-Z type" in hint_line(counter)
    assert " u undo" not in hint_line(counter)
    assert "F4 undo" in hint_line(counter)
    press(counter, *"Julia n", "enter")
    assert spec(counter).customer.name == "Julia n"
    assert spec(counter).answers.given == {"adults": 2, "children": 2}
    assert counter.top.where is Where.BRIEF
    press(counter, "up", "enter", "enter")
    assert spec(counter).customer.name == "Julia n", "opening a field and leaving it by Enter wipes nothing"


def test_a_person_who_finds_out_is_typed_by_name(tmp_path: Path) -> None:
    counter = begun(tmp_path, "2", "o", "enter", *"Anna", "enter", "enter")
    (question,) = spec(counter).questions
    assert question.owner == "Anna"
    assert question.due


def test_opening_the_date_and_leaving_it_keeps_it(tmp_path: Path) -> None:
    counter = begun(tmp_path, "2", "o", "enter", "down", "enter", "enter")
    press(counter, "home", "1", "enter")
    assert spec(counter).questions[0].due


def test_enter_behind_an_answer_of_one_digit_is_harmless(tmp_path: Path) -> None:
    counter = begun(tmp_path, "2")
    at, said = counter.top.at, counter.message
    press(counter, "enter")
    assert (counter.top.at, counter.message) == (at, said)
    assert spec(counter).answers.given == {"adults": 2}


def test_digits_answer_one_question_after_another(tmp_path: Path) -> None:
    counter = begun(tmp_path)
    press(counter, *"22", *"9 6", "enter", "4")
    given = spec(counter).answers.given
    assert given == {"adults": 2, "children": 2, "child_ages": (9, 6), "child_seat": "strap"}


def test_a_sum_on_a_numbered_question_answers_that_one_and_waits_as_a_draft(tmp_path: Path) -> None:
    counter = begun(tmp_path)
    stand_on(counter, "season")
    press(counter, *"18000")
    assert len(spec(counter).answers.given) == 1
    assert counter.top.entry is not None
    assert counter.top.entry.text == "8000"


def test_one_enter_behind_an_answer_of_one_digit_belongs_to_it(tmp_path: Path) -> None:
    counter = begun(tmp_path)
    press(counter, "2", "enter", "2", "enter", *"9 6", "enter")
    assert spec(counter).answers.given == {"adults": 2, "children": 2, "child_ages": (9, 6)}


def test_the_hint_line_says_which_digits_answer_at_once(tmp_path: Path) -> None:
    counter = begun(tmp_path)
    stand_on(counter, "season")
    assert "1-3 answer" in hint_line(counter) or "1-4 answer" in hint_line(counter)
    assert "Enter" not in hint_line(counter)
    stand_on(counter, "ceiling")
    assert "0-9 type" in hint_line(counter)


def test_what_was_said_about_a_line_goes_with_the_cursor(tmp_path: Path) -> None:
    counter = begun(tmp_path)
    stand_on(counter, "season")
    press(counter, "9")
    assert "needed here" in counter.message
    press(counter, "down")
    assert counter.message == ""
    press(counter, "up", "1")
    assert counter.hint == "u takes it back"
    done = counter.message
    press(counter, "down")
    assert counter.message == done, "what was done stays"


def test_a_number_takes_no_letters_and_the_hints_are_those_of_typing(tmp_path: Path) -> None:
    counter = begun(tmp_path, "2")
    stand_on(counter, "ceiling")
    press(counter, *"2nwu4")
    assert counter.top.entry is not None
    assert counter.top.entry.text == "24"
    assert hint_line(counter).split("  ") == [" Enter take", "Esc keep as not taken", ""]
    assert counter.hint == ""
    counter.paste("000 pounds")
    press(counter, "enter")
    assert spec(counter).answers.get("ceiling_gross_pence") == 2_400_000


def test_end_goes_to_the_last_of_the_actions(tmp_path: Path) -> None:
    counter = begun(tmp_path, "2", "f9")
    first = counter.top.at
    press(counter, "end")
    assert counter.top.at != first
    assert counter.top.at == counter.top.items()[-1]
    press(counter, "home")
    assert counter.top.at == first


# --- below nought


def cold(folder: Path, *keys: str) -> Counter:
    """On the question that may lie below nought."""
    counter = begun(folder)
    counter.go_to(OnAnswer(BriefKey("design_temp_c")))
    counter.lay()
    press(counter, *keys)
    return counter


def coldest(counter: Counter) -> object:
    return spec(counter).answers.get(BriefKey("design_temp_c"))


def test_minus_begins_a_number_below_nought(tmp_path: Path) -> None:
    counter = cold(tmp_path, "-", "5", "enter")
    assert coldest(counter) == -5


def test_minus_is_part_of_what_stands_there_only_in_front(tmp_path: Path) -> None:
    counter = cold(tmp_path, "5", "-", "enter")
    assert coldest(counter) is None
    assert "needed here" in counter.message
    press(counter, "home", "-", "end", "backspace", "enter")
    assert coldest(counter) == -5


def test_a_minus_alone_makes_it_not_known_again(tmp_path: Path) -> None:
    counter = cold(tmp_path, "-", "5", "enter")
    stand_on(counter, "design_temp")
    assert "0-9 - type" in hint_line(counter)
    assert "- not known" not in hint_line(counter)
    press(counter, "-")
    assert "Enter not known yet" in hint_line(counter)
    press(counter, "enter")
    assert coldest(counter) is None
    assert counter.top.entry is None
    assert "assumed" in next(row.text for row in counter.top.shown if "coldest night" in row.text)


def test_a_minus_over_a_number_that_was_not_taken_begins_anew(tmp_path: Path) -> None:
    counter = cold(tmp_path, "5", "5", "enter", "escape", "-", "5", "enter")
    assert coldest(counter) == -5


def test_elsewhere_minus_still_makes_an_answer_not_known(tmp_path: Path) -> None:
    counter = begun(tmp_path)
    stand_on(counter, "ceiling")
    press(counter, *"24000", "enter")
    stand_on(counter, "ceiling")
    assert "- not known" in hint_line(counter)
    press(counter, "-")
    assert counter.top.entry is None
    assert spec(counter).answers.get(BriefKey("ceiling_gross_pence")) is None


@WINDOWS
async def test_minus_five_is_minus_five_and_the_heater_check_hears_it(
    demo: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(demo, size, plain=plain) as stage:
        await stage.press("enter", "home")
        while stage.app.counter.top.at != OnAnswer(BriefKey("design_temp_c")):
            await stage.press("down")
        screen = await stage.press("-")
        assert "- and Enter: not known yet" in " ".join(screen.split())
        await stage.press("5", "enter")
        assert stage.spec().answers.get(BriefKey("design_temp_c")) == -5
        assert "-5 °C" in stage.screen()
        assert RuleId("heat-enough") in stage.loud()
        assert "SIGN now broken: " in stage.screen().splitlines()[-2]


@pytest.mark.parametrize("field", [Field.VIN_TAIL, Field.REGISTRATION, Field.PAINT, Field.DAMAGE])
def test_every_sign_goes_into_a_field_for_text_and_is_no_command(demo: Path, field: Field) -> None:
    counter = counter_on(demo)
    press(counter, "enter", *["left"] * 8, "right")
    stand_on(counter, field.name)
    press(counter, *"n/u?+")
    assert counter.top.at == OnField(field)
    assert counter.top.entry is not None
    assert counter.top.entry.text == "n/u?+"


@pytest.mark.parametrize("field", [Field.YEAR, Field.MILEAGE, Field.WEIGHED_FRONT])
def test_a_letter_on_a_field_for_figures_is_no_command_and_is_said(demo: Path, field: Field) -> None:
    counter = counter_on(demo)
    press(counter, "enter", *["left"] * 8, "right")
    stand_on(counter, field.name)
    assert "0-9 type" in hint_line(counter)
    assert "F6 next" in hint_line(counter)
    before = edits(counter)
    press(counter, *"n/u")
    assert (counter.top.where, counter.top.at, counter.top.entry) == (Where.WALK, OnField(field), None)
    assert counter.message == "Only figures are typed here: the letter was left out."
    assert edits(counter) == before
    press(counter, *"n20n30")
    assert counter.top.entry is not None
    assert counter.top.entry.text == "2030"


@pytest.mark.parametrize("page", [Where.CHECK, Where.OPEN])
def test_letters_are_commands_where_the_data_of_the_van_are_only_listed(tmp_path: Path, page: Where) -> None:
    counter = begun(tmp_path, "2", *(["right"] * 8 if page is Where.CHECK else ["o"]))
    for key, leads_to in (("c", Where.CUSTOMER), ("/", Where.FIND), ("p", Where.PAPERS), ("enter", Where.WHO)):
        counter.top.at = OnField(Field.VIN_TAIL)
        counter.lay()
        assert (counter.top.where, counter.top.at) == (page, OnField(Field.VIN_TAIL)), "the row is there"
        assert "A-Z type" not in hint_line(counter)
        press(counter, key)
        assert counter.top.where is leads_to
        press(counter, "escape", *(["enter"] if leads_to is Where.CUSTOMER else []))
        assert not counter.drafts


@pytest.mark.parametrize("text", ["your own fri", "year", "weighed f", "tank 2", "ä-b"])
def test_find_takes_every_sign_whatever_its_first_hit_is(demo: Path, text: str) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "/", *text)
    assert counter.top.entry is not None
    assert counter.top.entry.text == text
    assert counter.message == ""
