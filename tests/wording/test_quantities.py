"""Numbers as text: whole texts for what is shown, laws for what can be fed in."""

from __future__ import annotations

import math
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.report import Pence
from specbuilder.model.span import Span
from specbuilder.wording import aloud, lengths
from specbuilder.wording import quantities as q

UNITS = (
    "kg",
    "mm",
    "mm2",
    "W",
    "kW",
    "A",
    "V",
    "L",
    "weeks",
    "hours",
    "nights",
    "places",
    "share",
    "%",
    "",
    "furlongs",
)


def test_money_is_whole_and_grouped() -> None:
    assert q.money(1_753_200, "£") == "£17,532"
    assert q.money(1_753_249, "£") == "£17,532"
    assert q.money(1_753_250, "£") == "£17,533"
    assert q.money(-20_000, "£") == "-£200"
    assert q.money(-20, "£") == "£0"
    assert q.money_exact(1_753_240, "£") == "£17,532.40"
    assert q.money_exact(-5, "£") == "-£0.05"


def test_money_ranges() -> None:
    assert q.money_range(Pence(least=1_753_200, most=2_402_400), "£") == "£17,532 to £24,024"
    assert q.money_range(Pence(least=1_753_200, most=1_753_210), "£") == "£17,532"
    assert q.money_range_tight(Pence(least=1_753_200, most=2_402_400), "£") == "£17,532-24,024"
    assert q.money_range_tight(Pence(least=-10_000, most=20_000), "£") == "-£100 to £200"
    assert q.between(Span(1_753_200, 2_402_400), "pence", "£") == "between £17,532 and £24,024"


def test_deltas_carry_their_sign() -> None:
    assert q.money_delta(93_600) == "+936"
    assert q.money_delta(-139_200) == "-1,392"
    assert q.money_delta(0) == "+0"
    assert q.money_delta(-30) == "+0"
    assert q.kilograms_delta(21) == "+21 kg"
    assert q.kilograms_delta(-51.2) == "-51 kg"
    assert q.kilograms_delta(-0.01) == "+0 kg"
    assert q.delta(39_600, "pence", "£") == "+£396"
    assert q.delta(-39_600, "pence", "£") == "-£396"


def test_quantities_with_their_units() -> None:
    assert q.kilograms(92) == "92 kg"
    assert q.kilograms(2.54) == "2.5 kg"
    assert q.kilograms(9.96) == "10 kg"
    assert q.millimetres(1960) == "1,960 mm"
    assert q.quantity(4000, "mm2", "£") == "4,000 mm²"
    assert q.quantity(1.15, "kW", "£") == "1.15 kW"
    assert q.quantity(8.66, "A", "£") == "8.7 A"
    assert q.quantity(185.2, "A", "£") == "185 A"
    assert q.quantity(10, "A", "£") == "10 A"
    assert q.weeks(1) == "1 week"
    assert q.weeks(5) == "5 weeks"
    assert q.hours(0.5) == "0.5 hours"
    assert q.quantity(4, "places", "£") == "4 places"
    assert q.quantity(0.5, "share", "£") == "0.5"
    assert q.quantity(3, "furlongs", "£") == "3 furlongs"


def test_ranges() -> None:
    assert q.span(Span(218, 294), "kg", "£") == "218 to 294 kg"
    assert q.span(Span(218, 218.2), "kg", "£") == "218 kg"
    assert q.span_tight(Span(1374, 1432), "kg", "£") == "1,374-1,432 kg"
    assert q.span_tight(Span(-3, 4), "kg", "£") == "-3 to 4 kg"
    assert q.span(Span(0.5, 6.8), "nights", "£") == "0.5 to 6.8 nights"
    assert q.between(Span(0.5, 6.8), "nights", "£") == "between 0.5 and 6.8 nights"
    assert q.span(Span(1.4, math.inf), "nights", "£") == "1.4 nights to no end"


def test_lengths_for_customers() -> None:
    assert q.metres(1960) == "1.96 m"
    assert q.metres(2000) == "2.00 m"
    assert lengths.feet_and_inches(304.8 * 2) == lengths.feet_and_inches_below(304.8 * 2) == "2 ft 0 in"


def test_a_height_is_never_told_lower_and_a_limit_never_higher_than_it_is() -> None:
    assert lengths.feet_and_inches(2035) == "6 ft 9 in"
    assert lengths.feet_and_inches_below(2035) == "6 ft 8 in"
    assert (lengths.metres_up(2031), lengths.metres_below(2039)) == ("2.04 m", "2.03 m")
    assert (lengths.metres_up(2030), lengths.metres_below(2030)) == ("2.03 m", "2.03 m")
    for length_mm in range(1900, 2900):
        up, down = (_mm(told(length_mm)) for told in (lengths.feet_and_inches, lengths.feet_and_inches_below))
        assert down <= length_mm + 1e-6
        assert length_mm - 1e-6 <= up < length_mm + 25.4


def _mm(feet: str) -> float:
    """``6 ft 9 in`` in mm."""
    whole, _, inches, _ = feet.split()
    return (int(whole) * 12 + int(inches)) * 25.4


def test_spoken() -> None:
    assert aloud.money_spoken(93_600, "£") == "936 pounds"
    assert aloud.money_spoken(100, "£") == "1 pound"
    assert aloud.kilograms_spoken(21) == "21 kilograms"
    assert aloud.kilograms_spoken(1) == "1 kilogram"


def test_what_is_no_number_says_so() -> None:
    assert q.quantity(math.nan, "kg", "£") == "cannot tell"
    assert q.quantity(math.inf, "nights", "£") == "no end"


def test_different_numbers_read_differently() -> None:
    assert q.tell_apart(13, 8, "kg") == ("13", "8")
    assert q.tell_apart(8.04, 8, "kg") == ("8.04", "8")
    assert q.tell_apart(2100.4, 2100, "mm") == ("2,100.4", "2,100")
    assert q.tell_apart(2_100_040, 2_100_000, "pence") == ("21,000.40", "21,000.00")


numbers = st.floats(allow_nan=True, allow_infinity=True)
units = st.sampled_from([*UNITS, "pence"])


def _clean(text: str) -> bool:
    return bool(text) and text == text.strip() and all(unicodedata.category(c)[0] != "C" for c in text)


@given(numbers, units)
def test_any_number_has_a_text(value: float, unit: str) -> None:
    for text in (q.quantity(value, unit, "£"), q.delta(value, unit, "£"), q.number_text(value, unit)):
        assert _clean(text)
        assert not f"{text} ".startswith(("-0 ", "+-", "-+"))
    for text in (
        lengths.feet_and_inches(value),
        q.metres(value),
        aloud.money_spoken(value, "£"),
        aloud.kilograms_spoken(value),
    ):
        assert _clean(text)


@given(st.lists(st.floats(allow_nan=False), min_size=2, max_size=2).map(sorted), units)
def test_any_range_has_a_text(ends: list[float], unit: str) -> None:
    value = Span(*ends)
    for text in (q.span(value, unit, "£"), q.span_tight(value, unit, "£"), q.between(value, unit, "£")):
        assert _clean(text)


@given(st.floats(-1e9, 1e9), st.floats(-1e9, 1e9), st.sampled_from(UNITS))
def test_a_larger_number_never_reads_smaller(one: float, other: float, unit: str) -> None:
    least, most = sorted((one, other))
    assert _read(q.number_text(least, unit)) <= _read(q.number_text(most, unit))


@given(st.floats(-1e9, 1e9), st.sampled_from(UNITS))
def test_reading_is_near_what_was_written(value: float, unit: str) -> None:
    assert _read(q.number_text(value, unit)) == pytest.approx(value, abs=0.5 + 1e-9)


def _read(text: str) -> float:
    return float(text.replace(",", ""))
