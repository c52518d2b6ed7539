"""The sheet of a part the customer brings, in words: what is asked, what was said, what is still blank."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.catalogue import Option
from specbuilder.model.own_parts import SheetLine, blanks_of, lines_of
from specbuilder.model.plain_text import one_line
from specbuilder.model.spec import OwnPart

from .dates import written_day_short
from .quantities import quantity

KINDS = {"LFP": "lithium iron phosphate", "AGM": "lead, AGM", "gel": "lead, gel", "wet lead": "lead, wet"}
"""Kinds of battery as people call them."""
_NAMES = {
    SheetLine.MASS: "mass",
    SheetLine.WATTS: "watts",
    SheetLine.CUT_OUT: "cut-out",
    SheetLine.ARRIVES: "arrival",
    SheetLine.DOOR: "length of its door",
    SheetLine.DAY: "watt-hours of a day",
    SheetLine.AMPS: "continuous amps",
    SheetLine.CAPACITY: "amp-hours",
    SheetLine.KIND: "kind of battery",
}
_ASKED = {
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
_UNITS = {
    SheetLine.MASS: "kg",
    SheetLine.WATTS: "W",
    SheetLine.DOOR: "mm",
    SheetLine.DAY: "Wh",
    SheetLine.AMPS: "A",
    SheetLine.CAPACITY: "Ah",
}
_BEFORE = {SheetLine.DOOR: "door ", SheetLine.DAY: "a day ", SheetLine.AMPS: "gives for good "}
_UNKNOWN = "NOT KNOWN"


def line_name(line: SheetLine) -> str:
    """``continuous amps``."""
    return _NAMES[line]


def asked_of_customer(line: SheetLine) -> str:
    """Behind *still needed from you*: ``what it weighs``."""
    return _ASKED[line]


def blank_question(option: Option, line: SheetLine) -> str:
    """The open question about a blank: ``Your own fridge, fitted by us: mass?``"""
    return f"{option.name}: {_NAMES[line]}?"


def sheet_words(option: Option, sheet: OwnPart | None) -> tuple[str, ...]:
    """Every line of the sheet for the workshop; what nobody has said stands as not known."""
    if sheet is None:
        return "its sheet is NOT FILLED IN", f"arrival {_UNKNOWN}"
    blank = blanks_of(option, sheet)
    return tuple(_worded(sheet, line, blank=line in blank) for line in lines_of(option) if _is_told(sheet, line))


def said_beyond(sheet: OwnPart) -> Iterator[str]:
    """What was said beside mass, watts, cut-out and arrival."""
    for line in (SheetLine.DOOR, SheetLine.DAY, SheetLine.AMPS, SheetLine.CAPACITY, SheetLine.KIND):
        if getattr(sheet, line.value) not in (None, ""):
            yield _worded(sheet, line, blank=False)


def _is_told(sheet: OwnPart, line: SheetLine) -> bool:
    return line is not SheetLine.DAY or sheet.day_wh is not None


def _worded(sheet: OwnPart, line: SheetLine, *, blank: bool) -> str:
    if blank:
        return f"{_NAMES[line]} {_UNKNOWN}"
    match line:
        case SheetLine.CUT_OUT:
            return f"cut-out {one_line(sheet.cut_out_mm).strip()} mm"
        case SheetLine.ARRIVES:
            return f"arrives {written_day_short(one_line(sheet.arrives))}"
        case SheetLine.KIND:
            return KINDS.get(sheet.chemistry, one_line(sheet.chemistry))
        case SheetLine.DOOR if sheet.door_mm == 0:
            return "no door to the front"
        case _:
            value: float = getattr(sheet, line.value)
            return f"{_BEFORE.get(line, '')}{quantity(value, _UNITS[line], '')}"
