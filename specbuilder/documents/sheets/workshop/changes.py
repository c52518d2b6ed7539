"""What changed since the revision it replaces: on the first page, since that is what the floor misses."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table, Weight
from specbuilder.model.comparison import Change, ChangeKind, Comparison
from specbuilder.model.plain_text import one_line
from specbuilder.wording.compare import answer_side, change_mark, figure_told, side_words, van_data_line
from specbuilder.wording.dates import written_day
from specbuilder.wording.names import key_name
from specbuilder.wording.plain import ended, raised
from specbuilder.wording.workshop_changes import ITEMS_STAY, NOTHING, items_cell, late_line, piece_change, undone_line
from specbuilder.workshop.items import thing_of

from .material import Material

_MONEY = "pence"
_PARTS = (
    Column(head="What"),
    Column(head="Item", share=1.2),
    Column(head="Was", share=3),
    Column(head="Is", share=3),
)
_ON_THE_FLOOR = frozenset({"mm", "kg"})
"""Units of figures that the floor measures."""
_OF_PRICES = frozenset({ChangeKind.REPRICED, ChangeKind.RETIMED})
"""Changes of the catalogue that alter nothing on the van."""


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
    if undone and not material.redos:
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
    why = f" Why: {ended(one_line(order.reason))}" if order is not None and order.reason.strip() else ""
    return f"{against}{signed}{by}.{why} What stands here goes before what anybody remembers."


def _tables(material: Material, found: Comparison) -> Iterator[Block]:
    yield Heading(text="Parts", level=3)
    rows = tuple(_part(material, change) for change in found.changes if change.kind not in _OF_PRICES)
    yield Table(columns=_PARTS, rows=rows)
    if rows:
        yield Paragraph(text=ITEMS_STAY, weight=Weight.SMALL)
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
    said = (*_answers(material, found), *_figures(material, found))
    if said:
        yield Heading(text="Figures and answers", level=3)
        columns = (Column(head="What", share=2), Column(head="Was", share=1.5), Column(head="Is", share=1.5))
        yield Table(columns=columns, rows=said)
    if found.van_data:
        yield Items(rows=tuple(one_line(van_data_line(change)) for change in found.van_data))


def _part(material: Material, change: Change) -> tuple[str, ...]:
    was, now = (_side(material, change, after=after) for after in (False, True))
    return raised(change_mark(change)), _items(material, change), one_line(was) or NOTHING, one_line(now) or NOTHING


def _side(material: Material, change: Change, *, after: bool) -> str:
    """What stands on one side; a side that is that of an exhaust says so."""
    words, choice = side_words(change, after=after), change.after if after else change.before
    option = material.catalogue.options.get(choice.option) if choice is not None else None
    if choice is None or choice.place is None or option is None or option.exhaust_outlet is None:
        return words
    return words.replace(f", {choice.place.value}", f", exhaust {choice.place.value}", 1)


def _items(material: Material, change: Change) -> str:
    """The number that is gone with what was, and the one of what is."""
    gone = {thing_of(one.choice): one.item for one in material.gone}
    here = {thing_of(one.choice): one.item for one in material.chosen}
    was = gone.get(thing_of(change.before)) if change.before is not None else None
    return items_cell(was, here.get(thing_of(change.after)) if change.after is not None else None)


def _answers(material: Material, found: Comparison) -> Iterator[tuple[str, str, str]]:
    """Lines of the brief; without money, which is no matter of the floor."""
    catalogue = material.catalogue
    old = material.case.before.catalogue if material.case.before is not None else catalogue
    for change in found.answers:
        line = catalogue.brief.get(change.key)
        if line is not None and line.unit != _MONEY:
            was, now = answer_side(old, change, after=False), answer_side(catalogue, change, after=True)
            yield raised(key_name(catalogue, change.key)), one_line(was), one_line(now)


def _figures(material: Material, found: Comparison) -> Iterator[tuple[str, str, str]]:
    """What reads otherwise in the figures that the floor measures."""
    before, after = material.case.before, material.case.stand
    for change in found.figures if before is not None else ():
        ledger = after.catalogue.ledgers.get(change.ledger)
        if before is not None and ledger is not None and ledger.unit in _ON_THE_FLOOR:
            was, now = figure_told(before, change), figure_told(after, change)
            if was != now:
                yield ledger.name, was, now


def _late(material: Material) -> Iterator[str]:
    order = material.case.change_order
    for point in order.freeze if order is not None else ():
        if point.late:
            yield one_line(late_line(point, material.view.work_name(point.step)))
