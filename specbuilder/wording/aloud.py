"""Numbers for reading aloud: units as words, no signs."""

from __future__ import annotations

from specbuilder.model.report import Pence
from specbuilder.model.span import Span

from .quantities import number_text, whole_money


def money_spoken(pence: float, currency: str) -> str:
    """For reading aloud: ``936 pounds``."""
    number = whole_money(pence)
    one, many = {"£": ("pound", "pounds"), "€": ("euro", "euros"), "$": ("dollar", "dollars")}.get(
        currency, (currency, currency)
    )
    return f"{number} {one if number in ('1', '-1') else many}"


def money_range_spoken(pence: Pence, currency: str) -> str:
    """For reading aloud: ``0 to 1,968 pounds``."""
    most = money_spoken(pence.most, currency)
    least = whole_money(pence.least)
    return most if most.startswith(f"{least} ") else f"{least} to {most}"


def kilograms_range_spoken(mass_kg: Span) -> str:
    """For reading aloud: ``0 to 21 kilograms``."""
    least, most = number_text(mass_kg.least, "kg"), kilograms_spoken(mass_kg.most)
    return most if most.startswith(f"{least} ") else f"{least} to {most}"


def kilograms_spoken(mass_kg: float) -> str:
    """For reading aloud: ``21 kilograms``."""
    number = number_text(mass_kg, "kg")
    return f"{number} kilogram" if number in ("1", "-1") else f"{number} kilograms"
