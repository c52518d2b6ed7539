"""On which side of the centre line a choice sits: + is left."""

from __future__ import annotations

from .catalogue import Catalogue, Option
from .ids import GroupId
from .kinds import Place


def leader_of(catalogue: Catalogue, option: Option) -> GroupId | None:
    """The group whose side decides the side of this option; None when nothing turns it."""
    return None if option.body_stays else catalogue.groups[option.group].turns_with


def moves_with_its_place(option: Option) -> bool:
    """Whether the choice of a place moves its body; of a heater it only moves the end of the exhaust."""
    return bool(option.places) and option.exhaust_outlet is None


def y_on_side_mm(y_mm: float, option: Option, place: Place | None, leader: Place | None) -> float:
    """y of a choice, mm: by its own place, or by the place of what it turns with.

    Args:
        y_mm: as the catalogue has it, for the usual side.
        option: whose it is.
        place: the place that was chosen for it.
        leader: the place of the choice it turns with.
    """
    match place if moves_with_its_place(option) else None:
        case Place.LEFT:
            return abs(y_mm)
        case Place.RIGHT:
            return -abs(y_mm)
        case Place.REAR:
            return y_mm
        case None:
            return -y_mm if leader is Place.LEFT else y_mm
