"""The sheet of a part the customer brings, on the workshop's papers: every line it asks, and what is blank."""

from __future__ import annotations

from types import MappingProxyType

from specbuilder.model.catalogue import Option
from specbuilder.model.own_parts import SheetLine, blanks_of, lines_of
from specbuilder.model.plain_text import one_line
from specbuilder.model.spec import OwnPart

from .dates import written_day_short
from .own_parts import value_words

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
    told = ((line, value_words(line, sheet or OwnPart())) for line in lines_of(option))
    return "; ".join(
        f"{_WORDS[line]} {BLANK if line in blanks else value}" for line, value in told if value or line in blanks
    )


def arrival_words(sheet: OwnPart | None) -> str:
    """``arrives Tue 20 May 2031``, ``arrives NOT KNOWN``."""
    return f"arrives {(written_day_short(one_line(sheet.arrives)) if sheet is not None else '') or BLANK}"
