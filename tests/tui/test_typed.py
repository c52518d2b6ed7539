from __future__ import annotations

import pytest

from specbuilder.model.brief import Answer, BriefLine
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import AnswerType
from specbuilder.wording.typed import answer, date, days_after, number, one_digit, pence, typed_answer, whole

KEY = BriefKey("key")
SUM = BriefLine(key=KEY, ask="", type=AnswerType.WHOLE, least=0, most=20_000_000, unit="pence")
COUNT = BriefLine(key=KEY, ask="", type=AnswerType.WHOLE, least=1, most=6)
HOURS = BriefLine(key=KEY, ask="", type=AnswerType.DECIMAL, least=0, most=6)
GAS = BriefLine(key=KEY, ask="", type=AnswerType.ONE_OF, values=("yes", "no", "any"))
LOADS = BriefLine(key=KEY, ask="", type=AnswerType.LIST, values=("none", "kettle", "hob", "laptop"))
AGES = BriefLine(key=KEY, ask="", type=AnswerType.AGES, least=0, most=17)


@pytest.mark.parametrize(
    ("line", "text", "value"),
    [
        (SUM, "18000", 1_800_000),
        (SUM, "18,000", 1_800_000),
        (SUM, "300000", None),
        (COUNT, "2", 2),
        (COUNT, "7", None),
        (COUNT, "two", None),
        (COUNT, "2.5", None),
        (HOURS, "1.5", 1.5),
        (HOURS, "-1", None),
        (GAS, "3", "any"),
        (GAS, "4", None),
        (GAS, "0", None),
        (LOADS, "2 4", ("kettle", "laptop")),
        (LOADS, "24", ("kettle", "laptop")),
        (LOADS, "22", ("kettle",)),
        (LOADS, "9", None),
        (LOADS, "", None),
        (AGES, "9 6", (9, 6)),
        (AGES, "9, 6", (9, 6)),
        (AGES, "9 six", None),
        (AGES, "40", None),
        (COUNT, "\u0662", None),
        (COUNT, "9" * 400, None),
    ],
)
def test_what_is_typed_is_an_answer_or_nothing(line: BriefLine, text: str, value: Answer | None) -> None:
    assert answer(line, text) == value


@pytest.mark.parametrize(
    ("line", "value"), [(SUM, 1_800_000), (GAS, "no"), (LOADS, ("kettle", "hob")), (AGES, (9, 6)), (HOURS, 1.5)]
)
def test_an_answer_typed_again_is_the_same(line: BriefLine, value: Answer) -> None:
    assert answer(line, typed_answer(line, value)) == value


def test_one_digit_is_enough_for_small_numbers_and_short_lists_of_words() -> None:
    assert one_digit(COUNT)
    assert one_digit(GAS)
    assert not one_digit(SUM)
    assert not one_digit(AGES)
    assert not one_digit(LOADS)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("2,5", 2.5),
        ("2.5", 2.5),
        ("-2,5", -2.5),
        ("0,500", 0.5),
        (",5", 0.5),
        ("1500,500", 1500.5),
        ("1.500,5", 1500.5),
        ("1 500,5", 1500.5),
        ("1,500", 1500),
        ("1,500.5", 1500.5),
        ("1.500.000", 1_500_000),
        ("1.500", 1.5),
        ("1,50,000", None),
        ("1 2", None),
        ("1.2.3", None),
        ("1,5,", None),
        ("1e3", None),
        ("1_000", None),
        ("nan", None),
    ],
)
def test_a_decimal_comma_is_as_good_as_a_point_unless_it_could_part_thousands(text: str, value: float | None) -> None:
    """The program writes 1,500 for fifteen hundred, and so it reads it."""
    assert number(text) == value


def test_money_goes_to_the_penny_and_no_further() -> None:
    assert [pence(text) for text in ("2430", "2430,50", "2,430.5", "1.000,25")] == [243000, 243050, 243050, 100025]
    assert [pence(text) for text in ("2430,505", "24.305", "", "£5")] == [None] * 4


def test_numbers_and_dates() -> None:
    assert whole("1,250") == 1250
    assert whole("-1") is None
    assert number(".") is None
    assert number("1.2.3") is None
    assert date("2031-02-29") is None
    assert date("2032-02-29") == "2032-02-29"
    assert days_after("2031-04-28 10:02", 7) == "2031-05-05"


@pytest.mark.parametrize(
    ("text", "moment", "told"),
    [
        ("2031-06-03", "", "2031-06-03"),
        ("0306", "", None),
        ("0306", "2031-04-14 10:00", "2031-06-03"),
        ("0306", "2031-06-03 10:00", "2031-06-03"),
        ("0306", "2031-06-04 10:00", "2032-06-03"),
        ("2902", "2031-04-14 10:00", "2032-02-29"),
        ("2902", "2096-03-01 10:00", "2104-02-29"),
        ("3104", "2031-04-14 10:00", None),
        ("0013", "2031-04-14 10:00", None),
        ("306", "2031-04-14 10:00", None),
        ("", "2031-04-14 10:00", None),
    ],
)
def test_day_and_month_are_the_next_such_day(text: str, moment: str, told: str | None) -> None:
    assert date(text, moment) == told
