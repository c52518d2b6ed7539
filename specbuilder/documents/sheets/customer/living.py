"""What the finished van does: what works where, who travels and sleeps, weight, height and nights."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Facts, Heading, Paragraph, Table, Weight
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import JobState
from specbuilder.model.papers import Case
from specbuilder.model.span import Span
from specbuilder.wording import customer as words
from specbuilder.wording.brief import line_words
from specbuilder.wording.quantities import quantity, span
from specbuilder.wording.works_where import (
    Supplies,
    Works,
    WorksWhere,
    battery_sentence,
    inverter_sentence,
    pitch_sentence,
    supplies,
    works_where,
)

from . import figures
from .days import expected


def what_works_where(case: Case) -> Iterator[Block]:
    """A grid of sockets and appliances; nothing where the build has none."""
    fed, lines = works_of(case)
    if not lines:
        return
    yield Heading(text="What works where")
    told = (battery_sentence(fed), inverter_sentence(fed), pitch_sentence(fed))
    yield Paragraph(text=" ".join(sentence for sentence in told if sentence))
    yield _grid(lines, plug=fed.plug is not Works.NO)


def works_of(case: Case) -> tuple[Supplies, tuple[WorksWhere, ...]]:
    """What feeds the sockets and appliances, and where each of them works."""
    catalogue, report = case.stand.catalogue, case.stand.report
    fed = supplies(
        catalogue,
        report,
        pitch_w=figures.bound(case, figures.PITCH),
        carried_w=figures.value(case, figures.CARRIED),
    )
    return fed, works_where(catalogue, report, fed)


def _grid(lines: tuple[WorksWhere, ...], *, plug: bool) -> Table:
    """The column of the campsite plug is left out where the van has none."""
    names = [f"{'; '.join(line.names)} ({line.mind})" if line.mind else "; ".join(line.names) for line in lines]
    columns = [(Column(head="", share=6), names), (Column(head="Driving"), [line.driving.value for line in lines])]
    if plug:
        columns.append((Column(head="On a campsite plug", share=1.3), [line.plugged.value for line in lines]))
    columns.append((Column(head="Away from a plug", share=1.3), [line.away.value for line in lines]))
    return Table(
        columns=tuple(column for column, _ in columns),
        rows=tuple(zip(*(cells for _, cells in columns), strict=True)),
    )


def living(case: Case) -> Iterator[Block]:
    """Who may travel and sleep in it, what it may still carry, how high it is, how long it lasts, when it is ready."""
    yield Heading(text="What you can expect of it")
    rows = [*_people(case), *weight(case), *height(case), *_nights(case), *expected(case)]
    yield Facts(rows=tuple(rows))
    if more := _more_beds(case):
        yield Paragraph(text=more, weight=Weight.STRONG)


def _people(case: Case) -> Iterator[tuple[str, str]]:
    belts, berths = figures.value(case, figures.BELTS), figures.value(case, figures.BERTHS)
    if belts is not None:
        yield "May travel", f"{words.people(belts)}, the driver counted, each on a seat with a belt"
    if berths is None:
        return
    told = "nobody: there is no bed in it" if berths.most <= 0 else words.people(berths)
    rated = _roof_bed_kg(case)
    bed = f"; the roof bed carries at most {span(rated, 'kg', '')} in all, and only while parked" if rated else ""
    yield "May sleep", f"{told}{bed}"


def _roof_bed_kg(case: Case) -> Span | None:
    """What the bed upstairs carries; None where there is none."""
    catalogue, spec = case.stand.catalogue, case.stand.spec
    spaces = [catalogue.options[c.option].space for c in spec.choices if c.option in catalogue.options]
    if not any(space.berths_up for space in spaces):
        return None
    bound = figures.bound(case, figures.ROOF_BED)
    rated = [space.roof_bed_rating_kg for space in spaces if space.roof_bed_rating_kg is not None]
    return bound or (Span(min(rated), min(rated)) if rated else None)


def _more_beds(case: Case) -> str:
    """Said here and once more among what we told you: beds are not seats."""
    belts, berths = figures.value(case, figures.BELTS), figures.value(case, figures.BERTHS)
    if belts is None or berths is None or berths.least <= belts.most:
        return ""
    return (
        f"{words.people(berths)} may sleep in it, only {words.people(belts)} may travel: the others come another way."
    )


def weight(case: Case) -> Iterator[tuple[str, str]]:
    """What may still be put in, beside what is counted already."""
    reading = figures.reading(case, figures.WEIGHT)
    room = reading.room if reading else None
    told = words.weight_left(room)
    if room is not None and room.least >= 0:
        told = f"{told} ({words.about_people(room.least, figures.grown_up_kg(case))})"
    aboard = f" with all who travel, {_luggage(case)}, water and fuel aboard" if room is not None else ""
    yield "You may still load", f"{told}{aboard}"


def _luggage(case: Case) -> str:
    """How much luggage is counted, so that nobody takes it for all of theirs."""
    mass_kg = figures.luggage_kg(case)
    return "some luggage" if mass_kg is None else f"{span(mass_kg, 'kg', '')} of luggage"


def height(case: Case) -> Iterator[tuple[str, str]]:
    """With everything down, and what is left under the barrier."""
    high = figures.closed_height_mm(case)
    if high is not None:
        barrier = case.stand.report.facts.get(figures.BARRIER)
        later = "" if case.stand.spec.state is JobState.AS_BUILT else "; measured when finished"
        yield "Height, all closed", f"{words.height(high)}; {_barrier(barrier, high)}{later}"


def _barrier(barrier: object, high: Span) -> str:
    if not isinstance(barrier, int | float):
        return "your lowest barrier is not known yet"
    if barrier <= 0:
        return "you named no barrier"
    room_mm, named = barrier - high.most, words.barrier(barrier)
    if room_mm < 0:
        return f"it does NOT go under your barrier of {named}"
    return f"{span(Span(room_mm, room_mm), 'mm', '')} to spare under your barrier of {named}"


def _nights(case: Case) -> Iterator[tuple[str, str]]:
    reading = figures.reading(case, figures.NIGHTS)
    if reading is None:
        return
    asked = case.stand.report.facts.get(figures.NIGHTS_ASKED)
    wish = f"; you asked for {quantity(asked, 'nights', '')}" if isinstance(asked, int) and asked > 0 else ""
    counted = f"({_line(case, figures.SEASON)}; sun counted, and driving a day: {_line(case, figures.DRIVE)})"
    yield "Away from a plug", f"{words.nights(reading.value)} {counted}{wish}"


def _line(case: Case, key: BriefKey) -> str:
    return line_words(case.stand.catalogue, case.stand.report, key)
