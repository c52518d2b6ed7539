"""Numbers as text: the only place where a number becomes words.

Rounding is half up and happens once. Nothing is ever written as ``-0``. No function here fails on any float: what is
not a number is *cannot tell*, what has no end is *no end*.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Context, Decimal
from typing import TYPE_CHECKING

if TYPE_CHECKING:  # the first frame needs this module before any catalogue is there
    from specbuilder.model.report import Pence
    from specbuilder.model.span import Span

NO_NUMBER = "cannot tell"
NO_END = "no end"

PENCE = "pence"
"""The unit of money in the catalogue: always whole pence, shown in the firm's currency."""

_CONTEXT = Context(prec=400)


@dataclass(frozen=True, slots=True)
class _Unit:
    """How a unit is written: decimals (one more below ten when ``fine``), and its words for one and for many."""

    decimals: int
    one: str
    many: str
    fine: bool = False


def _same(decimals: int, sign: str, fine: bool = False) -> _Unit:
    return _Unit(decimals, sign, sign, fine)


_UNITS: dict[str, _Unit] = {
    "kg": _same(0, "kg", fine=True),
    "mm": _same(0, "mm"),
    "mm2": _same(0, "mm²"),
    "cm2": _same(0, "cm²"),
    "m": _same(2, "m"),
    "m2": _same(1, "m²"),
    "m3/h": _same(1, "m³/h"),
    "W": _same(0, "W"),
    "Wh": _same(0, "Wh"),
    "kW": _same(2, "kW"),
    "W/K": _same(1, "W/K"),
    "A": _same(0, "A", fine=True),
    "Ah": _same(0, "Ah"),
    "kA": _same(1, "kA"),
    "V": _same(1, "V"),
    "L": _same(0, "L", fine=True),
    "l": _same(0, "L", fine=True),
    "C": _same(1, "°C"),
    "%": _same(1, "%"),
    "% of total": _same(1, "%"),
    "share": _same(2, ""),
    "h": _same(1, "h"),
    "N": _same(0, "N"),
    "mph": _same(0, "mph"),
    "": _same(1, ""),
    "hours": _Unit(1, "hour", "hours"),
    "minutes": _Unit(1, "minute", "minutes"),
    "days": _Unit(1, "day", "days"),
    "years": _Unit(0, "year", "years"),
    "weeks": _Unit(1, "week", "weeks"),
    "nights": _Unit(0, "night", "nights", fine=True),
    "places": _Unit(0, "place", "places"),
    "people": _Unit(0, "person", "people"),
    "bottles": _Unit(0, "bottle", "bottles"),
    "lines": _Unit(0, "line", "lines"),
    "claims": _Unit(0, "claim", "claims"),
    "litres": _Unit(1, "litre", "litres"),
}


def is_unit(word: str) -> bool:
    """Whether a word is a unit that numbers are written with."""
    return word in _UNITS


def money(pence: float, currency: str) -> str:
    """Whole units of money: ``£17,532``, ``-£200``."""
    number = _digits(pence / 100, 0)
    if number.startswith("-"):
        return f"-{currency}{number[1:]}"
    return f"{currency}{number}" if number[0].isdigit() else number


def whole_money(pence: float) -> str:
    """The bare number in whole units of money: ``17,532``."""
    return _digits(pence / 100, 0)


def money_exact(pence: int, currency: str) -> str:
    """Money to the penny, for papers: ``£17,532.40``."""
    sign = "-" if pence < 0 else ""
    return f"{sign}{currency}{abs(pence) // 100:,}.{abs(pence) % 100:02}"


def money_range(pence: Pence, currency: str) -> str:
    """``£17,532 to £24,024``; one figure when both ends read the same."""
    return _joined(money(pence.least, currency), money(pence.most, currency), " to ")


def money_range_tight(pence: Pence, currency: str) -> str:
    """``£17,532-24,024``, for columns."""
    least, most = money(pence.least, currency), money(pence.most, currency)
    if pence.least < 0:
        return _joined(least, most, " to ")
    return _joined(least, most.removeprefix(currency), "-") if least != most else least


def money_delta(pence: float) -> str:
    """A change of money without currency: ``+936``, ``-1,392``, ``+0``."""
    return _signed(_digits(pence / 100, 0))


def kilograms(mass_kg: float) -> str:
    """``92 kg``; below ten one decimal where there is one: ``2.5 kg``."""
    return quantity(mass_kg, "kg", "")


def kilograms_delta(mass_kg: float) -> str:
    """``+21 kg``, ``-51 kg``, ``+0 kg``."""
    return delta(mass_kg, "kg", "")


def millimetres(length_mm: float) -> str:
    """``1,960 mm``."""
    return quantity(length_mm, "mm", "")


def metres(length_mm: float) -> str:
    """For customers, two decimals always: ``1.96 m``."""
    return f"{_digits(length_mm / 1000, 2, trimmed=False)} m"


def weeks(value: float) -> str:
    """``5 weeks``, ``1 week``."""
    return quantity(value, "weeks", "")


def hours(value: float) -> str:
    """``14 hours``, ``0.5 hours``."""
    return quantity(value, "hours", "")


def number_text(value: float, unit: str, extra_decimals: int = 0) -> str:
    """The bare number as its unit is written, without the unit: ``1,960``, ``2.5``. Pence come in whole money."""
    if unit == PENCE:
        return _digits(value / 100, 2 if extra_decimals else 0, trimmed=False)
    rule = _unit(unit)
    decimals = rule.decimals + extra_decimals
    if rule.fine and abs(value) < 10:
        decimals += 1
    return _digits(value, decimals)


def quantity(value: float, unit: str, currency: str) -> str:
    """A number with its unit as people write it; ``pence`` comes as money. An unknown unit is written as it stands."""
    if unit == PENCE:
        return money(value, currency)
    return _with_unit(number_text(value, unit), unit)


def delta(value: float, unit: str, currency: str) -> str:
    """A change with its sign: ``+21 kg``, ``+0 kg``; money with its currency: ``+£396``."""
    if unit == PENCE:
        text = money(value, currency)
        return text if text.startswith("-") else f"+{text}"
    return _with_unit(_signed(number_text(value, unit)), unit)


def span(value: Span, unit: str, currency: str) -> str:
    """``1,374 to 1,432 kg``, ``£17,532 to £24,024``; one figure when both ends read the same."""
    return _span(value, unit, currency, " to ")


def span_tight(value: Span, unit: str, currency: str) -> str:
    """``1,374-1,432 kg``, for columns; with ``to`` when an end is below nought."""
    if value.least < 0:
        return span(value, unit, currency)
    if unit == PENCE:
        least, most = money(value.least, currency), money(value.most, currency)
        return least if least == most else f"{least}-{most.removeprefix(currency)}"
    return _span(value, unit, currency, "-")


def between(value: Span, unit: str, currency: str) -> str:
    """``between £17,532 and £24,024``; just the figure when it is settled."""
    least, most = quantity(value.least, unit, currency), quantity(value.most, unit, currency)
    if least == most:
        return least
    if unit != PENCE and math.isfinite(value.least):
        least = number_text(value.least, unit)
    return f"between {least} and {most}"


def tell_apart(first: float, second: float, unit: str) -> tuple[str, str]:
    """Both numbers with as many decimals as it takes that different ones also read differently.

    8.04 against 8 kg is broken, and must not read ``8 of 8``. Gives up after four more decimals.
    """
    for extra in range(5):
        one, other = number_text(first, unit, extra), number_text(second, unit, extra)
        if one != other:
            break
    return one, other


def unit_text(unit: str, number: str = "2") -> str:
    """The unit beside that number: ``kg``, ``mm²``, ``night`` for 1 and ``nights`` else; empty where there is none."""
    rule = _unit(unit)
    return rule.one if number in ("1", "-1", "+1") else rule.many


def is_sign(unit: str) -> bool:
    """True of ``kg`` and ``mm``, which are the same beside every number; not of ``people``, which are counted."""
    rule = _unit(unit)
    return rule.one == rule.many


def as_written(value: float | None) -> str:
    """A number as it stands in a file, without commas: for people who go and look there."""
    return "nothing" if value is None else f"{value:g}"


def is_number(text: str) -> bool:
    """Whether the text is a plain whole number, as words of a list may be (``6``, ``10``, ``16`` amps)."""
    return text.isascii() and text.isdigit()


def span_number(value: Span, unit: str) -> str:
    """The bare numbers of a range, tight: ``1,374-1,432``; with ``to`` when an end is below nought or has no end."""
    least, most = number_text(value.least, unit), number_text(value.most, unit)
    return _joined(least, most, "-" if value.least >= 0 and math.isfinite(value.most) else " to ")


def smallest(unit: str) -> float:
    """The smallest amount that is not written as nought, in the unit itself."""
    rule = _unit(unit)
    return float(10.0 ** -(rule.decimals + (1 if rule.fine else 0)))


def _unit(unit: str) -> _Unit:
    return _UNITS.get(unit) or _same(1, unit)


def _with_unit(number: str, unit: str) -> str:
    word = unit_text(unit, number)
    if not word or not number.lstrip("+-")[0].isdigit():
        return number
    return f"{number} {word}"


def _span(value: Span, unit: str, currency: str, joint: str) -> str:
    least, most = quantity(value.least, unit, currency), quantity(value.most, unit, currency)
    if least == most:
        return least
    if unit != PENCE and math.isfinite(value.least) and math.isfinite(value.most):
        least = number_text(value.least, unit)
    return f"{least}{joint}{most}"


def _joined(least: str, most: str, joint: str) -> str:
    return least if least == most else f"{least}{joint}{most}"


def _signed(number: str) -> str:
    return number if number.startswith("-") or not number[0].isdigit() else f"+{number}"


def _digits(value: float, decimals: int, trimmed: bool = True) -> str:
    """The number with thousands commas, rounded half up at this decimal, without trailing noughts."""
    if math.isnan(value):
        return NO_NUMBER
    if math.isinf(value):
        return NO_END if value > 0 else f"below {NO_END}"
    exact = Decimal(repr(float(value)))
    rounded = exact.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_UP, context=_CONTEXT)
    if rounded == 0:
        rounded = abs(rounded)
    text = f"{rounded:,f}"
    return text.rstrip("0").rstrip(".") if trimmed and "." in text else text
