"""What stays in the van: openings that are never covered, what works where, a sleeping battery, frost, the roof."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table, Weight
from specbuilder.documents.sheets.customer.living import what_works_where
from specbuilder.documents.sheets.workshop.material import Material
from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import CollectionSubject
from specbuilder.model.own_parts import is_theirs, with_sheet
from specbuilder.model.parts import LITHIUM, Hole
from specbuilder.wording.names import option_name
from specbuilder.wording.plain import lowered, raised
from specbuilder.wording.workshop import hole_size, spot_text
from specbuilder.workshop.passing import collection_notes
from specbuilder.workshop.view import Chosen

from .found_at import found_at

_FURNITURE = ("worktop", "furniture")
"""Cuts in these lead nowhere outside."""
_NEVER_COVERED = (
    "Never cover, tape or close these openings, in no season, and keep bedding, bags and snow off them. Look through "
    "each of them today, and again before every trip on which something burns or somebody sleeps in the van."
)
_ALARM_FIRST = (
    "People first, the van last. The emergency services and the leaflets of the alarms go before everything here."
)
_BATTERY_FIRST = "Go through these in order. The battery's own paper goes before everything here."
_FROST_FIRST = "Once before the first frost, in this order; the papers of the parts go first."


def keeping(found: Material) -> Iterator[Block]:
    """For the glove box; nothing where nothing is fitted."""
    blocks = tuple(_blocks(found))
    if blocks:
        yield Heading(text="Keep this in the van", level=1, new_page=True)
        yield from blocks


def _blocks(found: Material) -> Iterator[Block]:
    yield from _told(
        "If an alarm sounds, if it burns, if it smells", _ALARM_FIRST, _notes(found, CollectionSubject.ALARM)
    )
    yield from found_at(found)
    yield from _vents(found)
    yield from what_works_where(found.case)
    if any(_may_sleep(one, option) for one, option in found.known):
        asleep = _notes(found, CollectionSubject.SLEEPING_BATTERY)
        yield from _told("If the battery has gone to sleep", _BATTERY_FIRST, asleep, numbered=True)
    frost = _notes(found, CollectionSubject.FROST, *_boilers(found))
    yield from _told("Before the first frost", _FROST_FIRST, frost, boxes=True)
    yield from _told("Care of the lifting roof", "", _notes(found, CollectionSubject.LIFTING_ROOF))


def _may_sleep(one: Chosen, option: Option) -> bool:
    """A lithium battery with a protection that switches it off; of the customer's own what its sheet says."""
    power = (with_sheet(option, one.choice.own_part) if is_theirs(option, one.choice) else option).power
    return power.chemistry in LITHIUM and power.bms_continuous_a is not None


def _notes(found: Material, about: CollectionSubject, *more: str) -> tuple[str, ...]:
    return (*more, *(note.text for note in collection_notes(found.view, about)))


def _told(
    title: str, first: str, rows: tuple[str, ...], *, boxes: bool = False, numbered: bool = False
) -> Iterator[Block]:
    if not rows:
        return
    yield Heading(text=title)
    if first:
        yield Paragraph(text=first)
    yield Items(rows=rows, boxes=boxes, numbered=numbered)


def _boilers(found: Material) -> list[str]:
    """What keeps water warm bursts first, and each has its own way of being drained."""
    names = [option_name(found.catalogue, option.id) for _, option in found.known if option.water.boiler_l]
    return [f"Let it cool, then drain the {lowered(name)} as its own paper says." for name in names]


def _vents(found: Material) -> Iterator[Block]:
    openings = tuple(_openings(found))
    if not openings:
        return
    yield Heading(text="Openings that are never covered")
    yield Paragraph(text=_NEVER_COVERED, weight=Weight.CAUTION)
    columns = (
        Column(head="Opening", share=3),
        Column(head="Where", share=2),
        Column(head="Size, mm", share=1.4),
        Column(head="Shown", share=0.7),
    )
    yield Table(columns=columns, rows=openings, blank=frozenset({3}))
    yield Paragraph(
        text="X: mm back from the rear face of the left door pillar; Y: mm from the middle of the van; "
        "Z: mm up from the bare floor.",
        weight=Weight.SMALL,
    )


def _openings(found: Material) -> Iterator[tuple[str, ...]]:
    for one, option, hole in found.holes():
        if _is_vented(option) and hole.surface not in _FURNITURE:
            yield raised(hole.what), _where(found, one, option, hole), hole_size(hole), ""


def _is_vented(option: Option) -> bool:
    heat = option.heat
    return bool(heat.vent_high_mm2 or heat.vent_low_mm2 or heat.battery_vent_cm2 or heat.gas_locker_vent_mm2)


def _where(found: Material, one: Chosen, option: Option, hole: Hole) -> str:
    spot = found.view.positions.of_cut(hole, one.choice, option)
    place = "where it was agreed on the van" if spot is None else spot_text(spot)
    return f"{raised(hole.surface)}, {place}"
