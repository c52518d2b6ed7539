"""What changed since the revision it replaces: on the first page, since that is what the floor misses."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table
from specbuilder.model.comparison import AnswerChange, Comparison
from specbuilder.model.plain_text import one_line
from specbuilder.model.span import Span
from specbuilder.wording.brief import line_words
from specbuilder.wording.dates import written_day
from specbuilder.wording.names import key_name
from specbuilder.wording.plain import raised
from specbuilder.wording.workshop import told
from specbuilder.wording.workshop_changes import NOTHING, late_line, part_change, piece_change, undone_line

from .material import Material

_ON_THE_FLOOR = frozenset({"mm", "kg"})
"""Units of figures that the floor measures."""


def changes(material: Material) -> tuple[Block, ...]:
    """Added, removed, moved and re-sized: parts, holes, circuits, and what of it is done already."""
    found = material.case.changes
    blocks: list[Block] = [Heading(text="What changed"), Paragraph(text=_said(material, found))]
    if found is not None and not found.empty:
        blocks += _tables(material, found)
    late = list(_late(material))
    if late:
        blocks += [Heading(text="Changed after its freeze point", level=3), Items(rows=tuple(late))]
    undone = tuple(one_line(undone_line(work)) for work in material.spec.undone)
    if undone:
        blocks += [Heading(text="To undo first", level=3), Items(rows=undone, boxes=True)]
    return tuple(blocks)


def _said(material: Material, found: Comparison | None) -> str:
    old, order = material.spec.replaces, material.case.change_order
    if found is None:
        if old is None:
            return "Nothing: first revision."
        return f"Revision {old} is not at hand, so nothing can be listed here: lay both side by side."
    against = f"Against revision {old}" if old is not None else "Against the revision before"
    signed = f", signed {written_day(order.signed_on)}" if order is not None else ""
    by = f", by change order {order.number}" if order is not None else ""
    if found.empty:
        return f"{against}{signed}: nothing that is built differs."
    return f"{against}{signed}{by}. What stands here goes before what anybody remembers."


def _tables(material: Material, found: Comparison) -> Iterator[Block]:
    parts = tuple(_cleaned(row) for change in found.changes if (row := part_change(change)) is not None)
    yield Heading(text="Parts", level=3)
    yield Table(columns=(Column(head="What"), Column(head="Was", share=3), Column(head="Is", share=3)), rows=parts)
    yield Heading(text="Holes and circuits", level=3)
    yield Table(
        columns=(
            Column(head="What", share=1.4),
            Column(head="Label", share=1.8),
            Column(head="Was", share=3),
            Column(head="Is", share=3),
        ),
        rows=tuple(piece_change(piece) for piece in found.pieces),
    )
    said = (*_answers(material, found.answers), *_figures(material, found))
    if said:
        yield Heading(text="Figures and answers", level=3)
        columns = (Column(head="What", share=2), Column(head="Was", share=1.5), Column(head="Is", share=1.5))
        yield Table(columns=columns, rows=said)


def _cleaned(row: tuple[str, ...]) -> tuple[str, ...]:
    """What somebody typed may be in it."""
    return tuple(one_line(cell) for cell in row)


def _answers(material: Material, found: tuple[AnswerChange, ...]) -> Iterator[tuple[str, str, str]]:
    """Lines of the brief; without money, which is no matter of the floor."""
    before, after = material.case.before, material.case.stand
    for change in found:
        line = material.catalogue.brief.get(change.key)
        if line is None or before is None or line.unit == "pence":
            continue
        was, now = (line_words(side.catalogue, side.report, change.key) for side in (before, after))
        yield raised(key_name(material.catalogue, change.key)), one_line(was), one_line(now)


def _figures(material: Material, found: Comparison) -> Iterator[tuple[str, str, str]]:
    for change in found.figures:
        ledger = material.catalogue.ledgers.get(change.ledger)
        if ledger is not None and ledger.unit in _ON_THE_FLOOR:
            was, now = (_figure(side, ledger.unit, ledger.estimate) for side in (change.before, change.after))
            if was != now:
                yield ledger.name, was, now


def _figure(value: Span | None, unit: str, estimate: bool) -> str:
    return NOTHING if value is None else told(value, unit, estimate=estimate)


def _late(material: Material) -> Iterator[str]:
    order = material.case.change_order
    for point in order.freeze if order is not None else ():
        if point.late:
            yield one_line(late_line(point, material.view.work_name(point.step)))
