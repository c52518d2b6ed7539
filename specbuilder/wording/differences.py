"""What a set of edits does to price, mass, hours and weeks: as columns, in short, and for reading aloud."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ways import Difference

from . import aloud, quantities
from .names import listed

_WIDTHS = (9, 7, 8, 8)
COLUMNS_WIDTH = sum(_WIDTHS)
"""So many cells the four columns take."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DifferenceCells:
    """The four cells: signed, ``0`` where nothing changes."""

    price: str
    """Whole units of money, VAT in: ``-624``."""
    mass: str
    """Kilograms: ``+4``."""
    hours: str
    weeks: str
    """Change of the longest wait for parts."""

    @property
    def columns(self) -> str:
        """All four, each at the right of its column."""
        cells = (self.price, self.mass, self.hours, self.weeks)
        return "".join(f"{cell:>{width}}" for cell, width in zip(cells, _WIDTHS, strict=True))


def difference_heads() -> str:
    """What stands over the columns."""
    return DifferenceCells(price="price", mass="kg", hours="hours", weeks="weeks").columns


def difference_cells(difference: Difference) -> DifferenceCells:
    """The cells of one difference."""
    return DifferenceCells(
        price=_signed(quantities.whole_money(difference.gross_pence)),
        mass=_signed(quantities.number_text(difference.mass_kg, "kg")),
        hours=_signed(quantities.number_text(difference.hours, "hours")),
        weeks=_signed(quantities.number_text(difference.weeks, "weeks")),
    )


def difference_short(catalogue: Catalogue, difference: Difference) -> str:
    """``+£396, +13 kg, +2 hours, +2 weeks``; hours and weeks only where they change."""
    parts = [
        quantities.delta(difference.gross_pence, quantities.PENCE, catalogue.firm.currency),
        quantities.kilograms_delta(difference.mass_kg),
    ]
    parts += (
        quantities.delta(value, unit, "")
        for value, unit in ((difference.hours, "hours"), (difference.weeks, "weeks"))
        if _told(value, unit)
    )
    return ", ".join(parts)


def difference_spoken(catalogue: Catalogue, difference: Difference) -> str:
    """``adds 468 pounds and 4 kilograms, takes off 3 hours; parts take 2 weeks longer``."""
    changes = amounts_spoken(catalogue, difference) or "changes neither price nor mass nor hours"
    return f"{changes}; {_wait(difference.weeks)}"


def amounts_spoken(catalogue: Catalogue, difference: Difference) -> str:
    """The same without the wait for parts; empty where nothing changes."""
    more, less = list(_amounts(catalogue, difference, 1)), list(_amounts(catalogue, difference, -1))
    told = [f"adds {listed(more)}"] if more else []
    told += [f"takes off {listed(less)}"] if less else []
    return ", ".join(told)


def _amounts(catalogue: Catalogue, difference: Difference, sign: int) -> Iterator[str]:
    """What changes in this direction, without sign."""
    if quantities.whole_money(difference.gross_pence) != "0" and difference.gross_pence * sign > 0:
        yield aloud.money_spoken(abs(difference.gross_pence), catalogue.firm.currency)
    if _told(difference.mass_kg, "kg") and difference.mass_kg * sign > 0:
        yield aloud.kilograms_spoken(abs(difference.mass_kg))
    if _told(difference.hours, "hours") and difference.hours * sign > 0:
        yield quantities.hours(abs(difference.hours))


def _wait(weeks: float) -> str:
    if not _told(weeks, "weeks"):
        return "parts take as long as before"
    return f"parts take {quantities.weeks(abs(weeks))} {'longer' if weeks > 0 else 'less'}"


def _told(value: float, unit: str) -> bool:
    """False for what would be written as nought."""
    return quantities.number_text(value, unit) != "0"


def _signed(number: str) -> str:
    return f"+{number}" if number[0].isdigit() and number != "0" else number
