"""The circuits: what is run at the first fix, what is fused and connected at the second, and what protects 230 V."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table, Weight
from specbuilder.model.circuits import CircuitLine
from specbuilder.model.ids import Tag
from specbuilder.wording import mains
from specbuilder.wording.circuits import (
    CAUTION,
    amount,
    cable_words,
    drop_words,
    drum_words,
    fuse_words,
    problem_sentences,
    sides,
)
from specbuilder.wording.plain import ended, raised
from specbuilder.wording.wiring import MEASURE_FIRST, METRES_FOOT, PAIRS_FOOT, SHUNT_RULE, before_switch
from specbuilder.wording.workshop import ESTIMATE_FOOT, NOT_KNOWN, counted, estimated
from specbuilder.workshop.metres import metres
from specbuilder.workshop.wiring import FUSE_BLOCK, SHUNT, wiring

from .declared import power_declared
from .diagrams import diagrams, sources
from .material import Material, item_number

_BURNER = Tag("burner")
_RUNS = (
    Column(head="Label, both ends", share=1.8),
    Column(head="Circuit (item)", share=1.5),
    Column(head="From, to", share=1.8),
    Column(head="Cable, one way", share=1.2),
    Column(head="Fed by", share=1.2),
    Column(head="What the part's data say", share=2.2),
    Column(head="Measured, labelled", share=0.9),
)
_METRES = (
    Column(head="Cable, insulation bears", share=1.8),
    Column(head="Each run is", share=2.2),
    Column(head="Runs", share=0.6, right=True),
    Column(head="One way, together", share=1.4, right=True),
    Column(head="To draw off the drum", share=1.5, right=True),
    Column(head="Measured", share=1.2),
)
_FUSES = (
    Column(head="Label", share=1.7),
    Column(head="Load", share=0.7, right=True),
    Column(head="Fuse", share=1.5),
    Column(head="Where it stands", share=1.8),
    Column(head="Drop", share=1.5, right=True),
    Column(head="At most", share=0.7, right=True),
    Column(head="Fuse as built", share=0.9),
    Column(head="Reading", share=0.8),
)


def electrics(material: Material) -> tuple[Block, ...]:
    """Cautions, cable list, fuse list, protection, diagrams, and the parts' own figures."""
    lines, points = material.view.report.circuits, material.view.report.mains
    blocks: list[Block] = [Heading(text="Circuits, fuses and labels")]
    if not lines:
        return (*blocks, Paragraph(text="None: no cable is run by what is chosen."), *power_declared(material))
    blocks.append(Paragraph(text=CAUTION, weight=Weight.CAUTION))
    blocks += _side(material, "12 V", sides(lines)[0])
    blocks += _side(material, "230 V", sides(lines)[1])
    blocks += _problems(lines)
    if points:
        blocks.append(Heading(text=mains.TITLE, level=3))
        blocks.append(Paragraph(text=mains.CAUTION, weight=Weight.CAUTION))
        blocks.append(Items(rows=tuple(mains.mains_line(material.catalogue, point) for point in points), boxes=True))
    blocks += diagrams(material)
    blocks += power_declared(material)
    return tuple(blocks)


def _side(material: Material, name: str, lines: tuple[CircuitLine, ...]) -> Iterator[Block]:
    """Of one voltage: what is run, then what is fused."""
    if not lines:
        yield Heading(text=f"{name}: none", level=3)
        yield Paragraph(text=f"No cable of {name} is run by what is chosen.")
        return
    fed = sources(wiring(material.catalogue, material.view.report))
    runs = counted(len(lines), "run", "runs")
    yield Heading(text=f"{name}, cables at the first fix: {runs}", level=3)
    yield from (Paragraph(text=rule, weight=Weight.CAUTION) for rule in _rules(material, lines))
    yield Paragraph(text=MEASURE_FIRST)
    yield Table(
        columns=_RUNS, rows=tuple(_run(material, line, fed[line.label]) for line in lines), blank=frozenset({6})
    )
    yield Heading(text=f"{name}, metres of cable by section", level=3)
    yield _metres(material, lines)
    foot = (METRES_FOOT, "" if lines[0].is_mains else PAIRS_FOOT, ESTIMATE_FOOT)
    yield Paragraph(text=" ".join(filter(None, foot)), weight=Weight.SMALL)
    yield Heading(text=f"{name}, fuses and labels at the second fix", level=3)
    yield Table(columns=_FUSES, rows=tuple(_fuse(material, line) for line in lines), blank=frozenset({6, 7}))
    yield Paragraph(text=ESTIMATE_FOOT, weight=Weight.SMALL)


def _run(material: Material, line: CircuitLine, fed_by: str) -> tuple[str, ...]:
    return (
        line.label,
        f"{raised(line.circuit)} ({_items(material, line)})",
        f"{line.from_point} to {line.to_point}",
        f"{amount(line.run_one_way_m, 'm')} of {_estimated(line, cable_words(line))}",
        fed_by,
        _protection(material, line),
        "",
    )


def _protection(material: Material, line: CircuitLine) -> str:
    """What the data of its part say of fuse, place and rule; it goes before the proposal."""
    circuits = (circuit for one in material.chosen for circuit in one.circuits)
    return next((circuit.protection for circuit in circuits if circuit.id == line.id), "") or "-"


def _rules(material: Material, lines: tuple[CircuitLine, ...]) -> Iterator[str]:
    """What is true of several runs together and is easily built wrong."""
    block = tuple(line for line in lines if FUSE_BLOCK in (line.from_point, line.to_point))
    burners = {option.id for _, option in material.known if _BURNER in option.gives}
    if block:
        yield before_switch(block, burner=any(line.option in burners for line in block))
    if any(line.from_point == SHUNT for line in lines):
        yield SHUNT_RULE


def _items(material: Material, line: CircuitLine) -> str:
    """The numbers of the parts it may be for: the same one may stand at two places."""
    return ", ".join(item_number(one) for one, option in material.known if option.id == line.option)


def _fuse(material: Material, line: CircuitLine) -> tuple[str, ...]:
    return (
        line.label,
        amount(line.load_a, "A", 1),
        _estimated(line, fuse_words(line)) if line.fuse_a is not None else fuse_words(line),
        line.fuse_place or "-",
        _estimated(line, drop_words(line)) if line.drop_v is not None else drop_words(line),
        amount(line.drop_limit_pct, "%") if line.drop_v is not None else "-",
        material.as_built(line.label, line.id),
        "",
    )


def _metres(material: Material, lines: tuple[CircuitLine, ...]) -> Table:
    """What is drawn off the drum."""
    rows = tuple(
        (
            drum_words(one.like),
            one.cores.value,
            f"{one.runs}",
            estimated(amount(one.one_way_m, "m", 1)),
            estimated(amount(one.drawn_m, "m", 1)),
            "",
        )
        for one in metres(material.catalogue, lines)
    )
    return Table(columns=_METRES, rows=rows, blank=frozenset({5}))


def _estimated(line: CircuitLine, words: str) -> str:
    return estimated(words) if line.estimate and words != NOT_KNOWN else words


def _problems(lines: tuple[CircuitLine, ...]) -> Iterator[Block]:
    """What must be settled before a cable is cut, and what is to be minded; each sentence once."""
    for head, serious in (("To settle before any cable is cut", True), ("To mind", False)):
        rows = tuple(ended(sentence) for sentence in problem_sentences(lines, serious=serious))
        yield Heading(text=head, level=3)
        yield Items(rows=rows, boxes=serious) if rows else Paragraph(text="None")
