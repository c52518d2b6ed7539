"""What the parts declare of power, gas, fuel, air and water, each with room for what is read."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Paragraph, Table, Weight
from specbuilder.model.catalogue import Option
from specbuilder.model.ledger import LedgerSpec, Reading
from specbuilder.wording.names import part_name
from specbuilder.wording.readings import is_estimate
from specbuilder.wording.workshop import ESTIMATE_FOOT, must_be, told
from specbuilder.wording.workshop_declared import gas_words, power_words, water_words
from specbuilder.workshop.cuts import nearest_to
from specbuilder.workshop.placing import other_body
from specbuilder.workshop.view import Chosen
from specbuilder.workshop.water import travel_fill

from .material import Material, item_number

_COLUMNS = (
    Column(head="Item", share=0.4, right=True),
    Column(head="Part", share=2.2),
    Column(head="As the part declares it", share=4.4),
    Column(head="As built, reading", share=1.8),
)
_OPENINGS = frozenset({"mm2", "cm2"})
"""Units of openings."""


def power_declared(material: Material) -> tuple[Block, ...]:
    """Batteries, inverter, chargers, panels: settings are read off the parts' own papers."""
    said = _table(material, lambda one, option: power_words(material.as_brought(one, option)))
    note = "Charger settings, the inverter's idle mode, route, grommets and earth points: of the parts' own papers and "
    text = f"{note}the electrician's schedule. Write down what was set."
    return (
        Heading(text="Battery, inverter, chargers and panels", level=3),
        said,
        Paragraph(text=text, weight=Weight.SMALL),
    )


def gas_and_water(material: Material) -> tuple[Block, ...]:
    """Gas, fuel, exhaust and openings; then water."""
    gas = _table(material, lambda one, option: _gas(material, one, option))
    water = _table(material, lambda one, option: _water(material, one, option))
    return (
        Heading(text="Gas, fuel, exhaust and air"),
        gas,
        Paragraph(
            text="Pipe sizes and routes, regulator, shut-offs, pump angle and exhaust length: of the registered gas "
            "engineer and the heater's own papers. Test figures stand with hold point H8.",
            weight=Weight.SMALL,
        ),
        Heading(text="Openings that never close", level=3),
        _openings(material),
        Paragraph(text=ESTIMATE_FOOT, weight=Weight.SMALL),
        Heading(text="Water"),
        water,
        Paragraph(
            text="Drain points: mark them on the van and write them down. The pump's fuse stands with its circuit.",
            weight=Weight.SMALL,
        ),
    )


def _gas(material: Material, one: Chosen, option: Option) -> str:
    outlet = material.view.positions.of_outlet(one.choice, option)
    return gas_words(option, outlet, nearest_to(material.view, outlet))


def _water(material: Material, one: Chosen, option: Option) -> str:
    spot = material.view.positions.of_choice(one.choice, option)
    other = other_body(material.view, option, spot) if spot is not None else ()
    return water_words(option, travel_fill(material.view), spot, other)


def _table(material: Material, words: Callable[[Chosen, Option], str]) -> Table:
    rows = tuple(
        (
            item_number(one),
            part_name(material.catalogue, option.id, one.choice.place, one.choice.count),
            said,
            material.as_built(option.id),
        )
        for one, option in material.known
        if (said := words(one, option))
    )
    return Table(columns=_COLUMNS, rows=rows, blank=frozenset({3}))


def _openings(material: Material) -> Table:
    """Areas that are worked out for this build, beside what they must be."""
    columns = (
        Column(head="What", share=3),
        Column(head="Planned", share=1.3, right=True),
        Column(head="Must be", share=1.5, right=True),
        Column(head="As built", share=1.3),
    )
    rows = tuple(_opening(material, ledger, reading) for ledger, reading in _areas(material))
    return Table(columns=columns, rows=rows, blank=frozenset({3}))


def _areas(material: Material) -> Iterator[tuple[LedgerSpec, Reading]]:
    ledgers = material.catalogue.ledgers
    every = (*material.view.report.readings.values(), *material.case.beside)
    for reading in every:
        ledger = ledgers.get(reading.id)
        if ledger is not None and ledger.unit in _OPENINGS and reading.applies and reading.bound is not None:
            yield ledger, reading


def _opening(material: Material, ledger: LedgerSpec, reading: Reading) -> tuple[str, ...]:
    value = told(reading.value, ledger.unit, estimate=is_estimate(material.catalogue, reading))
    return ledger.name, value, must_be(reading, ledger.unit), ""
