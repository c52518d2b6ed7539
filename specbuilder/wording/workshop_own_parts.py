"""The sheet of a part the customer brings, on the workshop's papers: every line it asks, and what is blank."""

from __future__ import annotations

from types import MappingProxyType
from typing import assert_never

from specbuilder.model.catalogue import Option
from specbuilder.model.own_parts import SheetLine, blanks_of, lines_of
from specbuilder.model.plain_text import one_line
from specbuilder.model.spec import OwnPart

from .dates import written_day_short
from .quantities import quantity

BLANK = "NOT KNOWN"
_WORDS = MappingProxyType(
    {
        SheetLine.MASS: "mass",
        SheetLine.WATTS: "draws",
        SheetLine.CUT_OUT: "cut-out",
        SheetLine.ARRIVES: "arrives",
        SheetLine.DOOR: "door swings",
        SheetLine.DAY: "takes in a day",
        SheetLine.AMPS: "gives for good",
        SheetLine.CAPACITY: "capacity",
        SheetLine.KIND: "kind",
    }
)


def sheet_words(option: Option, sheet: OwnPart | None) -> str:
    """``mass 18 kg; draws NOT KNOWN; ...``; what may stay blank is left out where it is."""
    blanks = blanks_of(option, sheet)
    told = ((line, _value(line, sheet or OwnPart())) for line in lines_of(option))
    return "; ".join(
        f"{_WORDS[line]} {BLANK if line in blanks else value}" for line, value in told if value or line in blanks
    )


def arrival_words(sheet: OwnPart | None) -> str:
    """``arrives Tue 20 May 2031``, ``arrives NOT KNOWN``."""
    return f"arrives {(written_day_short(one_line(sheet.arrives)) if sheet is not None else '') or BLANK}"


def _value(line: SheetLine, sheet: OwnPart) -> str:
    """With its unit; empty where it is blank."""
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
            return one_line(sheet.chemistry)
        case _:
            assert_never(line)


def _told(value: float | None, unit: str) -> str:
    return "" if value is None else quantity(value, unit, "")
