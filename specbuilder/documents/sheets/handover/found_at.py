"""Where gas, battery and main switch are, in words for whoever calls the emergency services."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Facts, Heading
from specbuilder.documents.sheets.workshop.material import Material
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import GroupId, Tag
from specbuilder.wording.names import listed, option_name
from specbuilder.wording.plain import lowered
from specbuilder.wording.quantities import metres
from specbuilder.workshop.positions import Spot
from specbuilder.workshop.stations import spot_of
from specbuilder.workshop.view import Chosen

_GAS, _BATTERY, _PLUG = Tag("gas-store"), Tag("battery"), Tag("hook-up")
_BATTERY_PLACE = GroupId("battery-place")
_MIDDLE_MM = 150
"""Nearer to the middle of the van than this is on neither side."""


def found_at(found: Material) -> Iterator[Block]:
    """A line for each thing that helpers ask for; nothing where the van has none of them."""
    rows = tuple(_rows(found))
    if rows:
        yield Heading(text="Where to find them", level=3)
        yield Facts(rows=rows)


def _rows(found: Material) -> Iterator[tuple[str, str]]:
    """What no list says where it sits is written in by the workshop."""
    for name, tag in (("Gas", _GAS), ("Leisure battery", _BATTERY)):
        if there := listed(_place(found, one, option) for one, option in found.known if tag in option.gives):
            yield name, there
    given = found.view.positions.given()
    if _BATTERY in given:
        yield "Main switch of the living space (written in by the workshop)", ""
    if _PLUG in given:
        yield "Main switch of the 230 V side (written in by the workshop)", ""


def _place(found: Material, one: Chosen, option: Option) -> str:
    """``right side, about 1.25 m behind the front door (gas kit)``; of a battery what it stands in as well."""
    name = lowered(option_name(found.catalogue, option.id))
    stands_in = [lowered(other.name) for _, other in found.known if other.group == _BATTERY_PLACE]
    inside = f"; {listed(stands_in)}" if _BATTERY in option.gives and stands_in else ""
    spot = spot_of(found.view, one)
    return f"{_spot_words(spot) if spot is not None else 'where it was agreed on the van'} ({name}{inside})"


def _spot_words(spot: Spot) -> str:
    """Side, how far back, and whether below the floor."""
    words = ["in the middle" if abs(spot.y_mm) < _MIDDLE_MM else f"{'left' if spot.y_mm > 0 else 'right'} side"]
    if spot.x_mm is not None:
        way = "behind" if spot.x_mm >= 0 else "forward of"
        words.append(f"about {metres(abs(spot.x_mm))} {way} the rear edge of the front door")
    return ", ".join([*words, "under the floor"] if spot.z_mm < 0 else words)
