"""What is said of a spec's file that cannot be used: whole sentences, all of them at once."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.spec import Choice, Customer, Spec, VanData
from specbuilder.storage.spec_files import SpecFaultsError, read_spec
from tests.storage.scene import CATALOGUE, written

WHOLE = Path(__file__).with_name("spec_0147.toml").read_text(encoding="utf-8")


def faults(text: str) -> list[str]:
    with pytest.raises(SpecFaultsError) as caught:
        read_spec(text, "0147-r1.toml", CATALOGUE)
    assert str(caught.value).splitlines() == [str(fault) for fault in caught.value.faults]
    return [str(fault) for fault in caught.value.faults]


def test_a_text_that_is_no_toml_names_its_line() -> None:
    assert faults("format = 1\n[job\n") == [
        "0147-r1.toml:2: this line is not written as TOML at column 5 (Expected ']' at the end of a table "
        "declaration): mend it."
    ]
    assert faults("format = ") == ["0147-r1.toml:1: this line is not written as TOML (Invalid value): mend it."]


def test_a_text_that_is_no_spec_says_so() -> None:
    assert faults("") == ["0147-r1.toml:1: format: is missing: add it (a whole number)."]
    assert faults("format = 0") == [
        "0147-r1.toml:1: format: needs the number 1: no spec was ever written with another."
    ]


def test_a_later_format_is_one_sentence_whatever_else_is_wrong() -> None:
    assert faults("\nformat = 2\nnonsense = 3\n[job]\nrevision = 'x'") == [
        "0147-r1.toml:2: format: this is format 2 and this program reads format 1: open it with a newer program."
    ]


def test_all_faults_at_once_with_line_path_and_the_nearest_word() -> None:
    text = """format = 1
[job]
revison = 2
state = "drafft"
[vehicle]
year = "2031"
front_as_received_kg = inf
[brief]
adult = 2
adults = 9
ages = [9, 40]
signing = "no"
steering = "middle"
must_run = ["kettel", 3]
drive_h_per_day = true
[job_state]
signing = "maybe"
[[choice]]
opton = "side-galley"
place = "nearside"
count = 0
[[choice]]
option = "gas\\u001bbundle"
[choice.own_part]
mass_kg = "heavy"
[[accepted]]
rule = 5
[[open]]
text = ["a"]
[choise]
"""
    assert faults(text) == [
        '0147-r1.toml:3: job.revison: there is no such key here; did you mean "revision"?',
        '0147-r1.toml:4: job.state: "drafft" is no word for this; did you mean "draft"?',
        '0147-r1.toml:6: vehicle.year: needs a whole number, but this is the text "2031": write it without quotes.',
        "0147-r1.toml:7: vehicle.front_as_received_kg: needs a finite number: inf and nan stand for nothing that can "
        "be measured.",
        '0147-r1.toml:9: brief.adult: there is no such key here; did you mean "adults"?',
        "0147-r1.toml:10: brief.adults: 9 does not lie between 1 and 6: correct it, or take the line out and it is "
        "not known yet.",
        "0147-r1.toml:11: brief.ages[2]: 40 does not lie between 0 and 17: correct it, or take the line out and it is "
        "not known yet.",
        "0147-r1.toml:12: brief.signing: belongs into [job_state]: move it there.",
        '0147-r1.toml:13: brief.steering: "middle" is no answer here; use one of right, left.',
        '0147-r1.toml:14: brief.must_run[1]: "kettel" is no answer here; did you mean "kettle"?',
        "0147-r1.toml:14: brief.must_run[2]: needs a text, but this is the number 3: put it in quotes.",
        "0147-r1.toml:15: brief.drive_h_per_day: needs a number, but this is true: write a plain figure.",
        '0147-r1.toml:17: job_state.signing: "maybe" is no answer here; use one of yes, no.',
        "0147-r1.toml:18: choice[1].option: is missing: add it (a text).",
        '0147-r1.toml:19: choice[1].opton: there is no such key here; did you mean "option"?',
        '0147-r1.toml:20: choice[1].place: "nearside" is no word for this; use one of left, right, rear.',
        "0147-r1.toml:21: choice[1].count: needs 1 or more: correct the number.",
        "0147-r1.toml:23: choice[2].option: the text holds the hidden character U+001B at place 4: take it out.",
        '0147-r1.toml:25: choice[2].own_part.mass_kg: needs a number, but this is the text "heavy": write it without '
        "quotes.",
        "0147-r1.toml:27: accepted[1].rule: needs a text, but this is the number 5: put it in quotes.",
        "0147-r1.toml:29: open[1].text: needs a text, but this is a list: put it in quotes.",
        '0147-r1.toml:30: choise: there is no such key here; did you mean "choice"?',
    ]


def test_an_answer_given_twice_is_a_fault() -> None:
    text = 'format = 1\n[brief]\nadults = 2\n[job_state]\nadults = 3\nsigning = "no"\n'
    assert faults(text) == ["0147-r1.toml:5: job_state.adults: stands in [brief] as well: take one of the two out."]


def test_text_in_several_lines_is_refused_where_one_line_is_needed() -> None:
    text = 'format = 1\n[customer]\nname = "a\\nb"\ncontact = "a\\nb"\n'
    assert faults(text) == ["0147-r1.toml:3: customer.name: the text holds a line break at place 2: take it out."]


def choices(*tables: str) -> str:
    return "format = 1\n" + "".join(f"[[choice]]\n{table}\n" for table in tables)


def test_more_of_an_option_than_may_stand_is_a_fault() -> None:
    assert faults(choices('option = "fenwain-short"\ncount = 1000000000', 'option = "fridge-drawer"\ncount = 3')) == [
        "0147-r1.toml:4: choice[1].count: 1000000000, and fenwain-short may stand once: write 1.",
        "0147-r1.toml:7: choice[2].count: 3, and fridge-drawer may stand twice: write 2 or less.",
    ]
    window = 'option = "window-fixed"\nplace = '
    assert faults(choices(f'{window}"left"', f'{window}"right"\ncount = 2')) == [
        "0147-r1.toml:5: choice[2]: with this it is 3, and window-fixed may stand twice in one van: take 1 out."
    ]


def test_one_option_twice_at_one_place_is_a_fault() -> None:
    window = 'option = "window-fixed"\nplace = "left"'
    assert faults(choices(window, window)) == [
        "0147-r1.toml:7: choice[2].place: window-fixed stands on the left already: take one of the two out."
    ]
    assert faults(choices('option = "gas-bundle"', 'option = "gas-bundle"')) == [
        "0147-r1.toml:4: choice[2]: gas-bundle stands at the same place already: take one of the two out."
    ]


def test_more_than_a_group_may_hold_is_a_fault_but_not_what_came_along() -> None:
    windows = replace(CATALOGUE.groups[GroupId("windows")], max_choices=1)
    catalogue = replace(CATALOGUE, groups=MappingProxyType({**CATALOGUE.groups, windows.id: windows}))
    text = choices('option = "window-fixed"\ncount = 2')
    with pytest.raises(SpecFaultsError) as caught:
        read_spec(text, "a.toml", catalogue)
    assert str(caught.value) == "a.toml:2: choice[1]: with this windows holds 2, and it may hold 1: take 1 out."
    came = text + 'came_with = ["gas-bundle"]\n'
    assert read_spec(came, "a.toml", catalogue).spec.choices[0].count == 2


def test_what_left_the_catalogue_has_no_count_to_be_held_against() -> None:
    text = choices('option = "old-stove"\ncount = 7', 'option = "old-stove"')
    assert [choice.count for choice in read_spec(text, "a.toml", CATALOGUE).spec.choices] == [7, 1]


def test_tables_of_the_wrong_kind() -> None:
    assert faults('format = 1\njob = 3\nbrief = []\nchoice = "x"\n') == [
        "0147-r1.toml:2: job: needs a table, but this is the number 3: write key = value pairs under a head of its "
        "own.",
        "0147-r1.toml:3: brief: needs a table, but this is a list: write key = value pairs under a head of its own.",
        '0147-r1.toml:4: choice: needs a list, but this is the text "x": put it in [ ].',
    ]


def test_deep_nesting_is_a_fault_and_no_crash() -> None:
    assert faults("format = 1\nchoice = " + "[" * 5000) == [
        "0147-r1.toml: lists or tables stand too deep inside each other: write it flatter."
    ]


def test_a_number_too_long_to_be_one_is_a_fault_and_no_crash() -> None:
    assert faults("format = 1\nchoice = " + "9" * 5000) == [
        "0147-r1.toml:2: a number on this line has more digits than anything counted here: check it."
    ]


def test_a_text_that_is_too_long_is_a_fault_with_its_limit() -> None:
    customer = f'name = "{"x" * 121}"\ncontact = "{"x" * 301}"'
    vehicle = f'vin_tail = "{"1" * 18}"\ndamage = "{"x" * 501}"'
    text = f'format = 1\n[job]\nnote = "{"x" * 2001}"\n[customer]\n{customer}\n[vehicle]\n{vehicle}\n'
    assert faults(text) == [
        "0147-r1.toml:3: job.note: the text has 2,001 characters, and 2,000 is the most: shorten it.",
        "0147-r1.toml:5: customer.name: the text has 121 characters, and 120 is the most: shorten it.",
        "0147-r1.toml:6: customer.contact: the text has 301 characters, and 300 is the most: shorten it.",
        "0147-r1.toml:8: vehicle.vin_tail: the text has 18 characters, and 17 is the most: shorten it.",
        "0147-r1.toml:9: vehicle.damage: the text has 501 characters, and 500 is the most: shorten it.",
    ]


def test_a_text_that_is_too_long_all_the_same_never_makes_an_unreadable_file() -> None:
    long = "x" * 3000
    van = VanData(vin_tail=long, registration=long, paint_code=long, damage=long)
    choice = Choice(option=OptionId("side-galley"), note=long)
    spec = Spec(customer=Customer(name=long, contact=long), van_data=van, choices=(choice,), note=long)
    read = read_spec(written(spec), "a.toml", CATALOGUE).spec
    assert read.customer.name == "x" * 117 + "..."
    assert read.van_data.vin_tail == "x" * 14 + "..."


@given(st.data())
@settings(max_examples=200, deadline=None)
def test_a_mangled_file_is_read_or_refused_and_nothing_else(data: st.DataObject) -> None:
    """Slices of a good file are cut out, doubled or replaced by what a file may hold elsewhere."""
    text = WHOLE
    for _ in range(data.draw(st.integers(1, 3))):
        at = data.draw(st.integers(0, len(text)))
        end = at + data.draw(st.integers(0, 40))
        new = data.draw(
            st.sampled_from(("", '"', "[", "]", "=", "\n", "[[choice]]\n", "1", "true", "x = 1\n", text[at:end] * 2))
        )
        text = text[:at] + new + text[end:]
    for catalogue in (CATALOGUE, None):
        with suppress(SpecFaultsError):
            spec = read_spec(text, "a.toml", catalogue).spec
            assert read_spec(written(spec), "a.toml", None).spec == spec


def test_the_least_that_can_be_read_is_a_format() -> None:
    assert read_spec("format = 1", "a.toml", CATALOGUE).spec == Spec()


def test_choices_without_an_order_keep_that_of_the_file_after_those_with_one() -> None:
    text = 'format = 1\n[[choice]]\noption = "a"\n[[choice]]\noption = "b"\ntaken = 1\n[[choice]]\noption = "c"\n'
    assert [choice.option for choice in read_spec(text, "a.toml", None).spec.choices] == ["b", "a", "c"]
