"""One-line diagrams of both sides, drawn from the circuit schedule."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from specbuilder.documents.blocks import Block, Diagram, Heading, Node
from specbuilder.model.circuits import CircuitLine
from specbuilder.wording.circuits import amount, cable_words, fuse_words
from specbuilder.wording.plain import raised
from specbuilder.wording.wiring import BLOCK_NOTE, IN_SERIES
from specbuilder.wording.workshop import counted
from specbuilder.workshop.wiring import FUSE_BLOCK, WirePoint, Wiring, wiring

from .material import Material


def diagrams(material: Material) -> Iterator[Block]:
    """12 V, then 230 V; a side without a cable has none."""
    both = wiring(material.catalogue, material.view.report)
    for name, trees in (("12 V", both.low), ("230 V", both.mains)):
        if trees:
            runs = sum(len(tuple(tree.lines())) for tree in trees)
            alt = f"One-line diagram of the {name} side: {counted(len(trees), 'source', 'sources')}, "
            yield Heading(text=f"One-line diagram, {name}", level=3)
            yield Diagram(roots=tuple(_node(tree) for tree in trees), alt=f"{alt}{counted(runs, 'run', 'runs')}.")


def sources(both: Wiring) -> Mapping[str, str]:
    """By label: what feeds a run, in words."""
    found: dict[str, str] = {}
    for tree in both.low:
        found |= dict.fromkeys((line.label for line in tree.lines()), _source(tree))
    for tree in both.mains:
        found |= dict.fromkeys((line.label for line in tree.lines()), _source(tree))
        for start in tree.below:
            if start.line is None:
                by = f"{_source(tree)}, by the {start.name}"
                found |= dict.fromkeys((line.label for line in start.lines()), by)
    return found


def _source(tree: WirePoint) -> str:
    """A source; one that is fed from the other side with the run that feeds it: there may be two of the name."""
    return tree.name if tree.fed_by is None else f"{tree.name}, fed by {tree.fed_by.label}"


def _node(point: WirePoint) -> Node:
    line = point.line
    below = tuple(_node(one) for one in point.below)
    if line is None:
        return Node(title=raised(point.name), note=_place_note(point), below=below)
    note = f"{_note(line)}; {IN_SERIES}" if point.in_series else _note(line)
    return Node(title=raised(point.name), note=note, wire=_wire(line), below=below)


def _place_note(point: WirePoint) -> str:
    """What is to be said of a place that is no end of a run here."""
    if point.drawn_at is not None:
        return f"joined there: drawn at the end of {point.drawn_at.label}"
    if point.name == FUSE_BLOCK:
        return BLOCK_NOTE
    return f"fed by {point.fed_by.label}" if point.fed_by is not None else ""


def _note(line: CircuitLine) -> str:
    """What the run is for, with its load."""
    return f"{line.circuit}, {amount(line.load_a, 'A', 1)}" if line.load_a else line.circuit


def _wire(line: CircuitLine) -> str:
    """Label, cable and fuse; ``no fuse`` where it has none of its own."""
    fuse = fuse_words(line) if line.fuse_a is not None else "no fuse of its own"
    return f"{line.label}: {cable_words(line)}, {fuse}"
