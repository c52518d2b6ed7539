"""Answers, hints, open things and questions."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.brief import Answer
from specbuilder.model.ids import BriefKey, GroupId, RuleId
from specbuilder.model.kinds import Step
from specbuilder.model.spec import OpenQuestion, VanData
from specbuilder.wording.brief import (
    answer_words,
    hint,
    line_words,
    not_an_answer,
    nothing_open,
    open_question,
    open_thing,
    question_words,
    telling,
)
from specbuilder.wording.typed import answer
from tests.wording.scene import CATALOGUE, choice, group_status, report, spec


@pytest.mark.parametrize(
    ("key", "value", "words"),
    [
        ("adults", 1, "1 grown-up"),
        ("adults", 2, "2 grown-ups"),
        ("children", 0, "no children"),
        ("child_ages", (9, 6), "aged 9 and 6"),
        ("child_ages", (6, 6), "aged 6 (2 of them)"),
        ("child_ages", (), "no ages"),
        ("parking_limit_mm", 2100, "2,100 mm"),
        ("parking_limit_mm", 0, "no barrier"),
        ("site_amps", "10", "10 A"),
        ("gas", "any", "do not mind"),
        ("must_run", ("kettle", "hair-dryer"), "kettle and hair dryer"),
        ("must_run", ("none",), "nothing special"),
        ("ceiling_gross_pence", 2_100_000, "£21,000"),
        ("ceiling_gross_pence", 0, "no ceiling named"),
        ("drive_h_per_day", 1.5, "1.5 h"),
        ("adults", None, "not known yet"),
    ],
)
def test_answers(key: str, value: Answer | None, words: str) -> None:
    assert answer_words(CATALOGUE, CATALOGUE.brief[BriefKey(key)], value) == words


@pytest.mark.parametrize(
    ("key", "how", "needed"),
    [
        ("adults", "people, from 1 to 6", "A whole number from 1 to 6 is needed here."),
        ("child_ages", "age of each in years, a space between",
         "Ages in whole years from 0 to 17 are needed here, a space between them."),
        ("parking_limit_mm", "mm, from 0 to 3,500, no barrier: 0",
         "A whole number from 0 to 3,500 is needed here, in mm."),
        ("site_amps", "1 6 A  2 10 A  3 16 A", "One of these is needed here: 6 A, 10 A or 16 A."),
        ("gas", "1 yes  2 no  3 do not mind", "One of these is needed here: yes, no or do not mind."),
        ("must_run", "1 nothing special  2 kettle  3 hair dryer  4 laptop",
         "Some of these are needed here: nothing special, kettle, hair dryer and laptop."),
        ("ceiling_gross_pence", "£, from £0 to £200,000, no ceiling named: 0",
         "A whole number from £0 to £200,000 is needed here."),
        ("drive_h_per_day", "h, from 0 to 6", "A number from 0 to 6 is needed here, in h."),
    ],
)  # fmt: skip
def test_how_to_answer(key: str, how: str, needed: str) -> None:
    line = CATALOGUE.brief[BriefKey(key)]
    assert hint(CATALOGUE, line) == how
    assert not_an_answer(CATALOGUE, line) == needed


@pytest.mark.parametrize(
    ("typed", "ends"),
    [
        ("2.1", "in mm: 2100 for 2.1 m."),
        ("1,8", "in mm: 1800 for 1.8 m."),
        ("3501", "in mm."),
        ("2.1234", "in mm."),
        ("x", "in mm."),
    ],
)
def test_metres_typed_where_millimetres_are_wanted_are_told_in_millimetres(typed: str, ends: str) -> None:
    line = CATALOGUE.brief[BriefKey("parking_limit_mm")]
    assert answer(line, typed) is None
    assert not_an_answer(CATALOGUE, line, typed).endswith(ends)


def test_centimetres_are_told_in_millimetres_where_they_are_below_the_least() -> None:
    line = replace(CATALOGUE.brief[BriefKey("parking_limit_mm")], least=500)
    assert answer(line, "195") is None
    assert not_an_answer(CATALOGUE, line, "195") == (
        "A whole number from 500 to 3,500 is needed here, in mm: 1950 for 195 cm."
    )


def test_questions_say_what_is_known_and_what_is_not() -> None:
    told = report(
        spec(choice("fenwain-short"), adults=2, children=2),
        unknown=(BriefKey("child_ages"), BriefKey("parking_limit_mm")),
        assumed={"site_amps": "10"},
        groups=(group_status("base-van", choice("fenwain-short")),),
    )
    said = {number: question_words(CATALOGUE, told, number) for number in CATALOGUE.questions}
    assert said == {
        1: "2 grown-ups, 2 children; not known yet: ages of the children",
        2: "not asked",
        3: "Fenwain Short",
        4: "not known yet",
        5: "not asked",
        6: "assumed: amps of the weakest pitch 10 A",
        7: "not asked",
        8: "not asked",
        9: "not asked",
    }
    assert line_words(CATALOGUE, told, BriefKey("site_amps")) == "assumed: 10 A"
    assert line_words(CATALOGUE, told, BriefKey("adults")) == "2 grown-ups"
    assert line_words(CATALOGUE, told, BriefKey("gas")) == "not known yet"
    assert line_words(CATALOGUE, told, BriefKey("no-such")) == "not known yet"


def test_open_things() -> None:
    question = OpenQuestion(text="Which cloth?", owner="customer", due="2031-04-28", stops="B6")
    told = report(replace(spec(), questions=(question,), van_data=VanData(year=2029)))

    def says(**thing: object) -> str:
        return open_thing(CATALOGUE, told, **{"step": Step.BRIEF, **thing})  # type: ignore[arg-type]

    assert says(key=BriefKey("parking_limit_mm")) == "Where it lives: barrier height, not known yet"
    assert says(group=GroupId("cooking")) == "Cooking, undecided"
    assert says(rule=RuleId("flame-needs-alarm")) == "STOP, broken: You cannot smell it."
    assert says(question="Which cloth?") == "Which cloth? customer finds out by 2031-04-28, stops B6"
    assert says(step=Step.BASE_VAN) == "Data of the real van, not known yet (end of the chassis number)"
    assert open_question(OpenQuestion(text="Fabric")) == "Fabric: nobody finds out yet, no date"
    assert nothing_open() == "Nothing is open: every question has its answer."


@pytest.mark.parametrize(
    ("key", "value", "words"),
    [
        ("adults", 2, "2 grown-ups"),
        ("adults", 1, "1 grown-up"),
        ("parking_limit_mm", 2100, "barrier height 2,100 mm"),
        ("parking_limit_mm", 0, "no barrier"),
        ("site_amps", "6", "amps of the weakest pitch 6 A"),
        ("gas", "no", "no gas"),
        ("must_run", ("kettle", "laptop"), "kettle and laptop away from the plug"),
        ("must_run", ("none",), "nothing special"),
        ("child_ages", (9,), "aged 9"),
    ],
)
def test_an_answer_that_stands_alone(key: str, value: Answer, words: str) -> None:
    assert telling(CATALOGUE, CATALOGUE.brief[BriefKey(key)], value) == words
