"""The sheet of a part the customer brings, in words: what is asked, what was said, what is still blank."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from types import MappingProxyType
from typing import assert_never

from specbuilder.model.catalogue import Option
from specbuilder.model.own_parts import SheetLine, is_brought
from specbuilder.model.plain_text import one_line
from specbuilder.model.spec import OwnPart

from .dates import written_day_short
from .quantities import quantity
from .states import NOT_KNOWN

KINDS = MappingProxyType(
    {"LFP": "lithium iron phosphate", "AGM": "lead, AGM", "gel": "lead, gel", "wet lead": "lead, wet"}
)
"""Kinds of battery as people call them."""
_NAMES = MappingProxyType(
    {
        SheetLine.MASS: "mass",
        SheetLine.WATTS: "watts",
        SheetLine.CUT_OUT: "cut-out",
        SheetLine.ARRIVES: "day it arrives",
        SheetLine.DOOR: "length of its door",
        SheetLine.DAY: "watt-hours of a day",
        SheetLine.AMPS: "amps it gives for good",
        SheetLine.CAPACITY: "amp-hours",
        SheetLine.KIND: "kind of battery",
    }
)
_ASKED = MappingProxyType(
    {
        SheetLine.MASS: "what it weighs",
        SheetLine.WATTS: "how many watts it draws",
        SheetLine.CUT_OUT: "the size of its hole, from its paper",
        SheetLine.ARRIVES: "the day you bring it",
        SheetLine.DOOR: "how long its door is",
        SheetLine.DAY: "what it takes in a day, from its paper",
        SheetLine.AMPS: "the amps it gives for good, from its label",
        SheetLine.CAPACITY: "its amp-hours, from its label",
        SheetLine.KIND: "what kind of battery it is, from its label",
    }
)
_BEYOND = (SheetLine.DOOR, SheetLine.DAY, SheetLine.AMPS, SheetLine.CAPACITY, SheetLine.KIND)


def line_name(line: SheetLine) -> str:
    """``amp-hours``."""
    return _NAMES[line]


def asked_of_customer(line: SheetLine) -> str:
    """What is still needed, to the customer: ``what it weighs``."""
    return _ASKED[line]


def blank_question(option: Option, line: SheetLine) -> str:
    """The open question about a blank: ``Your own fridge, fitted by us: mass?``"""
    return f"{option.name}: {_NAMES[line]}?"


def brought_words(option: Option, due: str) -> str:
    """Said when a part becomes the customer's; a part of the house that is none now keeps its price."""
    price = "" if is_brought(option) else "the price is still that of ours, agree on fitting; "
    return f"Theirs: {price}blanks are due {written_day_short(due)}: {option.name}"


def said_words(option: Option, line: SheetLine, sheet: OwnPart) -> str:
    """Said when a line of the sheet is filled in or emptied: ``Your own fridge, fitted by us: watts 45 W``."""
    return f"{option.name}: {_NAMES[line]} {value_words(line, sheet) or NOT_KNOWN}"


def line_words(line: SheetLine, sheet: OwnPart) -> str:
    """What stands beside a line of the sheet; a blank says what it means."""
    return value_words(line, sheet) or ("reckoned from its watts" if line is SheetLine.DAY else NOT_KNOWN)


def only_theirs() -> str:
    """Said when a part that only the customer can bring should be ours."""
    return "We have none of this one: take another answer of its group for ours"


def kinds_hint(kinds: Sequence[str]) -> str:
    """The numbered kinds of battery: ``1 lithium iron phosphate. Another kind has other rules: leave it blank.``"""
    told = "  ".join(f"{number} {KINDS.get(kind, kind)}" for number, kind in enumerate(kinds, 1))
    return f"{told}   Of another kind: leave it blank and take another answer for it."


def kinds_needed() -> str:
    """Said when something else was pressed."""
    return "The number of a kind is needed here. Another kind of battery has other rules and cannot stand in its place."


def said_beyond(sheet: OwnPart) -> Iterator[str]:
    """What was said beside mass, watts, cut-out and arrival: ``amps it gives for good 100 A``."""
    for line in _BEYOND:
        if value := value_words(line, sheet):
            yield f"{_NAMES[line]} {value}"


def value_words(line: SheetLine, sheet: OwnPart) -> str:
    """What was said, with its unit; empty where it is blank."""
    match line:
        case SheetLine.MASS:
            return _told(sheet.mass_kg, "kg")
        case SheetLine.WATTS:
            return _told(sheet.watts_w, "W")
        case SheetLine.CUT_OUT:
            cut = one_line(sheet.cut_out_mm).strip()
            return f"{cut} mm" if cut[-1:].isdigit() else cut
        case SheetLine.ARRIVES:
            return written_day_short(one_line(sheet.arrives))
        case SheetLine.DOOR:
            return _told(sheet.door_mm, "mm")
        case SheetLine.DAY:
            return _told(sheet.day_wh, "Wh")
        case SheetLine.AMPS:
            return _told(sheet.continuous_a, "A")
        case SheetLine.CAPACITY:
            return _told(sheet.capacity_ah, "Ah")
        case SheetLine.KIND:
            return KINDS.get(sheet.chemistry, one_line(sheet.chemistry))
        case _:
            assert_never(line)


def _told(value: float | None, unit: str) -> str:
    return "" if value is None else quantity(value, unit, "")
