"""What to tell insurer and licensing body, and whose warranty is whose. No promise of what others decide."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table, Weight
from specbuilder.documents.sheets.workshop.material import Material
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import Tag
from specbuilder.model.kinds import CollectionSubject
from specbuilder.model.own_parts import is_theirs
from specbuilder.model.plain_text import one_line
from specbuilder.wording.names import part_name
from specbuilder.workshop.passing import collection_notes
from specbuilder.workshop.view import Chosen

_WARRANTY = (
    Column(head="Part", share=3),
    Column(head="Serial number", share=2),
    Column(head="Maker's warranty until", share=1.7),
    Column(head="Papers handed over", share=1.3),
)
_BOUGHT = frozenset(Tag(tag) for tag in ("swivel", "smoke-alarm", "co-alarm", "extinguisher", "pump", "tow-bar"))
"""Given by what a maker sells as a whole, though nothing is cut or wired for it."""
_OWN = "We fitted what you brought; we do not warrant it. Its warranty stays with whoever sold it to you."


def terms(found: Material) -> Iterator[Block]:
    """For the customer's own folder."""
    yield Heading(text="For your own folder", level=1)
    yield Heading(text="What to tell your insurer and the licensing body")
    yield Items(rows=_notes(found, CollectionSubject.INSURER), boxes=True)
    yield Heading(text="Warranties")
    yield from (Paragraph(text=text) for text in _notes(found, CollectionSubject.WARRANTY))
    ours = [one for one, option in found.known if not is_theirs(option, one.choice) and _has_maker(option)]
    if ours:
        rows = tuple((_name(found, one), _serial(found, one), "", "") for one in ours)
        yield Table(columns=_WARRANTY, rows=rows, blank=frozenset({1, 2, 3}))
    theirs = [one for one, option in found.known if is_theirs(option, one.choice)]
    if theirs:
        yield Heading(text="Your own parts", level=3)
        yield Paragraph(text=_OWN, weight=Weight.STRONG)
        yield Items(rows=tuple(_name(found, one) for one in theirs))


def _notes(found: Material, about: CollectionSubject) -> tuple[str, ...]:
    return tuple(note.text for note in collection_notes(found.view, about))


def _has_maker(option: Option) -> bool:
    """Bought and sold by us, with a paper of its own: what runs, stores or burns, seats, or is cut or wired in."""
    if option.price_net_pence <= 0 or option.lead_weeks <= 0:
        return False
    power, heat = option.power, option.heat
    electric = (power.watts_running, power.battery_ah, power.inverter_w, power.mains_charge_a, power.engine_charge_a)
    works = (*electric, power.solar_w, power.solar_controller_a, heat.heater_kw, heat.gas_kw_gross)
    built_in = option.holes or option.circuits
    return any((*works, option.space.belts, option.space.berths_up, built_in)) or not _BOUGHT.isdisjoint(option.gives)


def _serial(found: Material, one: Chosen) -> str:
    return one_line(found.as_built(one.choice.option))


def _name(found: Material, one: Chosen) -> str:
    choice = one.choice
    return part_name(found.catalogue, choice.option, choice.place, choice.count)
