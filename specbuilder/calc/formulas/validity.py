"""What a formula does outside its validity: it names the number and what it must be, and answers nothing."""

from __future__ import annotations

from math import isnan, nan
from typing import Never


class OutsideValidity(ValueError):  # noqa: N818  # an answer about a number, as much as a fault
    """A number for which an equation says nothing.

    Attributes:
        quantity: what it is, with its unit (``wheelbase mm``).
        value: the number itself.
        needs: what it would have to be (``above 0``).
    """

    def __init__(self, quantity: str, value: float, needs: str) -> None:
        super().__init__(f"{quantity} is {value:g}, but must be {needs}")
        self.quantity, self.value, self.needs = quantity, value, needs


def above(quantity: str, value: float, least: float = 0) -> float:
    """The value when it is above ``least``.

    Raises:
        OutsideValidity: otherwise, also for what is no number.
    """
    if isnan(value) or value <= least:
        raise OutsideValidity(quantity, value, f"above {least:g}")
    return value


def at_least(quantity: str, value: float, least: float = 0) -> float:
    """The value when it is not below ``least``.

    Raises:
        OutsideValidity: otherwise, also for what is no number.
    """
    if isnan(value) or value < least:
        raise OutsideValidity(quantity, value, f"{least:g} or more")
    return value


def within(quantity: str, value: float, least: float, most: float) -> float:
    """The value when it lies from ``least`` to ``most``.

    Raises:
        OutsideValidity: otherwise, also for what is no number.
    """
    if isnan(value) or not least <= value <= most:
        raise OutsideValidity(quantity, value, f"from {least:g} to {most:g}")
    return value


def missing(what: str) -> Never:
    """Say that a choice has no such figure.

    Raises:
        OutsideValidity: always.
    """
    raise OutsideValidity(what, nan, "given")
