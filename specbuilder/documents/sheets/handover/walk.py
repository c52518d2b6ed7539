"""The walk round on the day of collection: what to show, in the order one comes past it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from specbuilder.documents.blocks import Block, Heading, Items, Paragraph, Weight
from specbuilder.documents.sheets.workshop.flames import no_cloth
from specbuilder.documents.sheets.workshop.material import Material
from specbuilder.model.catalogue import Caution
from specbuilder.wording.names import listed, option_name
from specbuilder.wording.plain import ended, lowered
from specbuilder.workshop.cautions import cautions_of
from specbuilder.workshop.flames import flames
from specbuilder.workshop.stations import Station, station_of, walking_order
from specbuilder.workshop.view import Chosen

_NAMES: Mapping[Station, str] = {
    Station.LEFT: "Outside, along the left side to the rear",
    Station.REAR: "At the rear",
    Station.RIGHT: "Along the right side to the front",
    Station.FRONT: "At the front",
    Station.CAB: "In the cab",
    Station.INSIDE: "Inside, from the front to the rear",
    Station.OVERHEAD: "Overhead",
    Station.UNDERNEATH: "Underneath",
    Station.TABLE: "At the table",
}
_FOR_THE_CUSTOMER = ("hand-over", "customer")
"""Where the catalogue shows a caution that the customer is told."""
_HOW = (
    "Left and right as seen facing forward. Show each line, then let the customer do it once: a tick says that it was "
    "done, not that it was told. Say every caution aloud."
)


def walk(found: Material) -> Iterator[Block]:
    """A list for each stop, with the cautions of what stands there."""
    lines, cautions = _lines(found), _cautions(found)
    stops = [station for station in Station if station in lines or station in cautions]
    if not stops:
        return
    at_flame = min((station_of(found.view, one) for one in flames(found.view)), default=None)
    yield Heading(text="The walk round", level=1, new_page=True)
    yield Paragraph(text=_HOW)
    for number, station in enumerate(stops, 1):
        yield Heading(text=f"{number}. {_NAMES[station]}", level=3)
        if station in lines:
            yield Items(rows=tuple(lines[station]), boxes=True)
        yield from (Paragraph(text=text, weight=Weight.CAUTION) for text in cautions.get(station, ()))
        if station is at_flame:
            yield from (Paragraph(text=text, weight=Weight.STRONG) for text in no_cloth(found))


def _lines(found: Material) -> dict[Station, list[str]]:
    """Every sentence once, at the first stop where it belongs, with all it is about."""
    about: dict[str, list[Chosen]] = {}
    for one in sorted(found.chosen, key=lambda one: walking_order(found.view, one)):
        for sentence in one.option.handover if one.option else ():
            about.setdefault(sentence, []).append(one)
    lines: dict[Station, list[str]] = {}
    for sentence, parts in about.items():
        lines.setdefault(station_of(found.view, parts[0]), []).append(f"{_named(found, parts)}: {sentence}")
    return lines


def _named(found: Material, parts: list[Chosen]) -> str:
    """``Fixed window, left and right``: what is there at several places is named once."""
    places: dict[str, list[str]] = {}
    for one in parts:
        name = option_name(found.catalogue, one.choice.option)
        places.setdefault(name, []).extend(_side(one))
    named = [f"{name}, {listed(at)}" if at else name for name, at in places.items()]
    return "; ".join([*named[:1], *(lowered(name) for name in named[1:])])


def _side(one: Chosen) -> Iterator[str]:
    """Where it is; of a burner that may stand elsewhere, where its exhaust is."""
    exhaust = "exhaust " if one.option is not None and one.option.exhaust_outlet is not None else ""
    if one.choice.place is not None:
        yield f"{exhaust}{one.choice.place.value}"


def _cautions(found: Material) -> dict[Station, list[str]]:
    """Each once, at the first stop that has something it is about."""
    stops: dict[str, Station] = {}
    for one in found.chosen:
        if one.option is not None:
            stop = station_of(found.view, one)
            stops[one.option.id] = min(stop, stops.get(one.option.id, stop))
    told: dict[Station, list[str]] = {}
    for caution, options in cautions_of(found.view):
        if _is_told(caution):
            stop = min(stops[option] for option in options)
            told.setdefault(stop, []).append(f"{ended(caution.text)} ({found.view.names(options)})")
    return told


def _is_told(caution: Caution) -> bool:
    return any(word in caution.shown_where for word in _FOR_THE_CUSTOMER)
