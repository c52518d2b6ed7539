"""Parts by step of the build: what is fetched, by when it must be there, and what the customer brings."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table, Weight
from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Basis, JobState
from specbuilder.model.own_parts import is_theirs
from specbuilder.model.plain_text import one_line
from specbuilder.model.plan import Arrival
from specbuilder.model.record import Record, RecordKind
from specbuilder.wording.dates import day_short, day_words, written_day_short
from specbuilder.wording.names import listed, part_name
from specbuilder.wording.plain import lowered
from specbuilder.wording.workshop import ESTIMATE_FOOT, kg
from specbuilder.wording.workshop_changes import gone_line
from specbuilder.wording.workshop_own_parts import arrival_words, sheet_words
from specbuilder.workshop.view import Chosen

from .material import Material, item_number

_COLUMNS = (
    Column(head="Item", share=0.5, right=True),
    Column(head="Part", share=2.6),
    Column(head="What it is", share=3.6),
    Column(head="No.", share=0.45, right=True),
    Column(head="kg each", share=0.8, right=True),
    Column(head="Store", share=2.2),
    Column(head="Serial no.", share=1.2),
)
_SERIAL = 6


def parts(material: Material) -> tuple[Block, ...]:
    """A table for every step that needs something, then the customer's own parts."""
    blocks: list[Block] = [
        Heading(text="Parts, by the step that needs them"),
        Paragraph(
            text="Item is the number of the part for life: write it on the box and on the shelf. It stays over every "
            "change order and is never given to another part. What is no part stands here as well, so that nothing "
            "that was chosen is missing."
        ),
    ]
    for step in (*(step.id for step in material.steps), ""):
        chosen = material.parts_of(step)
        if chosen:
            blocks += (Heading(text=_step_head(material, step), level=3), _table(material, chosen))
    blocks.append(Paragraph(text=ESTIMATE_FOOT, weight=Weight.SMALL))
    blocks += _gone(material)
    blocks.append(Heading(text="The customer's own parts", level=3))
    blocks += _own_parts(material)
    return tuple(blocks)


def _step_head(material: Material, step: str) -> str:
    """The step with the day its parts must be there."""
    if not step:
        return "Of no step: ask before anything is done about it"
    planned = material.planned(step)
    name = material.view.work_name(step)
    if planned is None:
        return name
    if planned.passed:
        return f"{name}. Passed {written_day_short(planned.passed)}"
    return f"{name}. Parts here by {day_short(planned.needed_by)}" if planned.arrivals else name


def _table(material: Material, chosen: tuple[Chosen, ...]) -> Table:
    return Table(columns=_COLUMNS, rows=tuple(_row(material, one) for one in chosen), blank=frozenset({_SERIAL}))


def _row(material: Material, one: Chosen) -> tuple[str, ...]:
    option, choice = one.option, one.choice
    note = one_line(choice.note).strip()
    what = option.description if option is not None else ""
    return (
        item_number(one),
        part_name(material.catalogue, choice.option, choice.place),
        f"{what} Note: {note}" if note else what,
        f"{choice.count}",
        _mass(one, option),
        _store(material, one, option),
        material.as_built(choice.option) if option is not None and _is_part(option) else "-",
    )


def _is_part(option: Option) -> bool:
    """What weighs nothing is work or a decision; a van is no part of the store."""
    return option.mass_kg > 0 and option.van is None


def _mass(one: Chosen, option: Option | None) -> str:
    own = one.choice.own_part
    if is_theirs(option, one.choice):
        return kg(own.mass_kg if own else None)
    if option is None or option.van is not None or not option.mass_kg:
        return "-"
    return kg(option.mass_kg, estimate=option.basis is Basis.ESTIMATE)


def _store(material: Material, one: Chosen, option: Option | None) -> str:
    """Where the part is: recorded, the customer's, or to be ordered; of what is no part, why."""
    if option is None:
        return "no longer in the catalogue"
    record = _supply(material, option)
    if record is not None:
        due = f", expected {written_day_short(one_line(record.due))}" if record.due else ""
        return f"{one_line(record.words).strip().lower()} {written_day_short(one_line(record.day))}{due}"
    if is_theirs(option, one.choice):
        return f"the customer's: {arrival_words(one.choice.own_part)}"
    if option.van is not None:
        return "the van"
    if option.carried:
        return "the customer's, brought along"
    if not _is_part(option):
        return _no_part(option.zero_note)
    if material.spec.state is JobState.AS_BUILT:
        return "fitted"
    return f"to be ordered{_expected(material, option)}"


def _no_part(note: str) -> str:
    """Why there is nothing to fetch."""
    if not note:
        return "work, no part"
    return lowered(note) if "no part" in note else f"no part: {lowered(note)}"


def _supply(material: Material, option: Option) -> Record | None:
    """What was last recorded of a part."""
    found = (r for r in reversed(material.spec.recorded(RecordKind.SUPPLY)) if r.about == option.id)
    return next(found, None)


def _expected(material: Material, option: Option) -> str:
    """When it would be here after the house's usual wait, and that this is too late where it is."""
    arrival = _arrival(material, option)
    if arrival is None or arrival.on is None or arrival.here:
        return ""
    if arrival.on < material.case.today:
        return f": the usual wait is over since {day_words(arrival.on)}"
    waiting = listed(step.step for step in material.case.plan.steps if step.waits_for == option.id)
    holds_up = f": {waiting} waits for it" if waiting else ""
    return f", here about {day_words(arrival.on)}{holds_up}"


def _arrival(material: Material, option: Option) -> Arrival | None:
    arrivals = (arrival for step in material.case.plan.steps for arrival in step.arrivals)
    return next((arrival for arrival in arrivals if arrival.option == option.id), None)


def _gone(material: Material) -> Iterator[Block]:
    """Numbers that stand on boxes and in no table above."""
    options = material.catalogue.options
    boxed = [one for one in material.gone if (o := options.get(one.choice.option)) is None or _is_part(o)]
    if boxed:
        yield Heading(text="Numbers that are gone: take their boxes off the shelf", level=3)
        yield Items(rows=tuple(gone_line(material.catalogue, one) for one in boxed), boxes=True)


def _own_parts(material: Material) -> Iterator[Block]:
    """What the sheet says, with room for what the store sees."""
    columns = (
        Column(head="Item", share=0.5, right=True),
        Column(head="Part", share=2.2),
        Column(head="As its sheet says", share=2.6),
        Column(head="Received on", share=1.2),
        Column(head="Inspected by", share=1.2),
        Column(head="Box label", share=1.2),
    )
    own = [(one, option) for one, option in material.known if is_theirs(option, one.choice)]
    rows = tuple(
        (
            item_number(one),
            part_name(material.catalogue, option.id, one.choice.place, one.choice.count),
            sheet_words(option, one.choice.own_part),
            "",
            "",
            "",
        )
        for one, option in own
    )
    yield Table(columns=columns, rows=rows, blank=frozenset({3, 4, 5}))
    if own:
        yield Paragraph(
            text="We fit what the customer brings and do not warrant it. Hold every figure against the type plate "
            "before a hole is cut or a cable run for it.",
            weight=Weight.SMALL,
        )
