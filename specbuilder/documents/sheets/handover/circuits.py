"""Every circuit with the fuse it should have and the one it has, and every mains socket on each of its sources."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specbuilder.documents.blocks import Block, Column, Heading, Paragraph, Table, Weight
from specbuilder.documents.sheets.workshop.material import Material
from specbuilder.model.catalogue import Option
from specbuilder.model.circuits import CircuitLine
from specbuilder.model.ids import Tag
from specbuilder.wording.circuits import CAUTION, cable_words, fuse_words, sides
from specbuilder.wording.names import option_name
from specbuilder.wording.plain import lowered
from specbuilder.workshop.view import Chosen

_KIT = Tag("hook-up")
"""Given by the plug kit, which has a socket of its own."""
_LIVE, _DEAD = "live", "dead"
_LOW_ONLY = "Proposals for these loads, runs and bundles (ESTIMATE). The part's own paper goes first."


@dataclass(frozen=True, slots=True, kw_only=True)
class _Source:
    """What may feed a mains socket."""

    words: str
    alone: str
    """What is off meanwhile, where the van has another: without a changeover each feeds its own whenever it is on."""
    brought_by: Tag
    feeds: Tag
    """Given by a socket that it feeds."""


_SOURCES = (
    _Source(words="On the campsite plug", alone="inverter off", brought_by=Tag("hook-up"), feeds=Tag("socket-hook-up")),
    _Source(words="On the inverter", alone="plug out", brought_by=Tag("inverter"), feeds=Tag("socket-off-grid")),
)
_COLUMNS = (
    Column(head="Mark on both ends", share=2.4),
    Column(head="Circuit", share=2.2),
    Column(head="Cable", share=1.2),
    Column(head="Fuse planned", share=1.5),
    Column(head="Fuse fitted", share=1.3),
    Column(head="Reading", share=1.3),
    Column(head="By", share=0.9),
)


def circuits(found: Material) -> Iterator[Block]:
    """12 V, 230 V, sockets; nothing where no cable is run."""
    low, high = sides(found.view.report.circuits)
    if not low and not high:
        return
    yield Heading(text="Circuits: fuses and readings")
    for name, lines in (("12 V", low), ("230 V", high)):
        if lines:
            yield Heading(text=name, level=3)
            yield Table(columns=_COLUMNS, rows=tuple(_row(found, line) for line in lines), blank=frozenset({4, 5, 6}))
    yield from _sockets(found)
    yield Paragraph(text=CAUTION if high else _LOW_ONLY, weight=Weight.SMALL)


def _row(found: Material, line: CircuitLine) -> tuple[str, ...]:
    fuse = fuse_words(line)
    read = found.as_built(*dict.fromkeys((line.label, line.id)))
    return line.label, line.circuit, cable_words(line), fuse, fuse if fuse == "-" else "", read, ""


def _sockets(found: Material) -> Iterator[Block]:
    """A line for each socket: live where it should be, dead where it should not."""
    fed = {source.feeds for source in _SOURCES}
    sockets = [(one, option) for one, option in found.known if not fed.isdisjoint(option.gives)]
    if not sockets:
        return
    yield Heading(text="Mains sockets, each tried on each source", level=3)
    given = found.view.positions.given()
    sources = [source for source in _SOURCES if source.brought_by in given]
    columns = [Column(head="Socket", share=3)]
    for source in sources:
        words = f"{source.words}, {source.alone}" if len(sources) > 1 else source.words
        columns += [Column(head=f"{words}: must be", share=1.5), Column(head="Found", share=1)]
    rows = tuple(
        (_name(found, one, option, number), *(cell for source in sources for cell in (_must(option, source), "")))
        for one, option in sockets
        for number in range(1, one.choice.count + 1)
    )
    yield Table(columns=tuple(columns), rows=rows, blank=frozenset(range(2, len(columns), 2)))


def _must(option: Option, source: _Source) -> str:
    return _LIVE if source.feeds in option.gives else _DEAD


def _name(found: Material, one: Chosen, option: Option, number: int) -> str:
    name = option_name(found.catalogue, option.id, one.choice.place)
    if _KIT in option.gives:
        return f"Socket of the {lowered(name)}"
    return f"{name}, no. {number}" if one.choice.count > 1 else name
