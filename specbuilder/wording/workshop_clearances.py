"""What comes close when it moves, in the words of the floor."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.workshop.boxes import Meeting, Motion
from specbuilder.workshop.view import Chosen

from .names import option_name
from .quantities import quantity
from .workshop import NOT_KNOWN, estimated

_TURNED = "turned round"
MOVE_IT = (
    "What turns, opens or is pulled out is reckoned along the van from the figures above, as if the mass lay in the "
    "middle of the part; the seat itself is wider than its base. The drawings do not tell whether it goes past: turn, "
    "open or pull it before the unit is screwed down, write down what touches, and stop where anything does."
)


def meeting_words(catalogue: Catalogue, found: Meeting) -> str:
    """``Driver's seat turns, turned round, to Side galley``."""
    one, other = _name(catalogue, found.one), _name(catalogue, found.other)
    does = {Motion.SEAT: _TURNED, Motion.DOOR: "door open", Motion.DRAWER: "pulled out"}[found.motion]
    return f"{one}, {does}, to {other}{f', {_TURNED}' if found.other_turned else ''}"


def gap_words(found: Meeting) -> str:
    """``10 mm e``; where they stand in one another by these figures, by how much."""
    if found.gap_mm is None:
        return NOT_KNOWN
    figure = estimated(quantity(abs(found.gap_mm), "mm", ""))
    return f"overlap of {figure}" if found.gap_mm < 0 else figure


def _name(catalogue: Catalogue, one: Chosen) -> str:
    """Without what only tells it apart."""
    return option_name(catalogue, one.choice.option).partition(",")[0]
