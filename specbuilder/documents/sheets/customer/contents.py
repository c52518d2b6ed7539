"""What the customer gets, in sentences by area, and what is not included."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Facts, Heading, Items, Paragraph
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BASE_VAN_GROUP, VAN_SUPPLY_GROUP
from specbuilder.model.kinds import JobState, Step
from specbuilder.model.papers import Case
from specbuilder.model.spec import Choice
from specbuilder.model.stand import Stand
from specbuilder.wording.customer import NOT_LISTED, part_sentence, part_short
from specbuilder.wording.customer_changes import change_line, is_told
from specbuilder.wording.names import group_name, listed, option_name
from specbuilder.wording.plain import ended, lowered, raised
from specbuilder.wording.states import step_name

_ELSEWHERE = (BASE_VAN_GROUP, VAN_SUPPLY_GROUP)
"""Told with the van."""
_GREAT_NET_PENCE = 40_000
"""From this price on a part gets a sentence; whatever is smaller is told by its name."""


def contents(case: Case) -> Iterator[Block]:
    """An area for each step of the walk that has something in it."""
    built = case.stand.spec.state is JobState.AS_BUILT
    yield Heading(text="What you have" if built else "What you get")
    areas = [(raised(step_name(step)), text) for step in Step if (text := _area(case, step))]
    if brought := listed(_brought(case)):
        areas.append(("Yours", f"Brought along by you, and not in the price: {brought}."))
    if case.stand.report.strangers:
        areas.append(("Besides", raised(ended(NOT_LISTED))))
    yield Facts(rows=tuple(areas)) if areas else Paragraph(text="Nothing is chosen yet.")


def what_is_different(case: Case) -> Iterator[Block]:
    """What this revision has other than the one before; nothing for a first one."""
    changes, before = case.changes, case.before
    told = [change for change in changes.changes if is_told(change)] if changes is not None else []
    if before is None or not told:
        return
    currency = case.stand.catalogue.firm.currency
    yield Heading(text=f"What is different from {_revision(before)}")
    yield Items(rows=tuple(change_line(change, currency) for change in told))


def not_included(case: Case) -> Iterator[Block]:
    """What a customer might think is in the price and is not."""
    lines = case.stand.catalogue.firm.not_included
    if lines:
        yield Heading(text="What is not included")
        yield Paragraph(text=ended("; ".join(line.rstrip(".") for line in lines)))


def _revision(stand: Stand) -> str:
    return f"revision {stand.spec.revision}"


def _area(case: Case, step: Step) -> str:
    """What matters in sentences, the rest by name, then what is left out and what is still open."""
    catalogue, report = case.stand.catalogue, case.stand.report
    taken = [pair for pair in _taken(case) if _is_in(case, pair[1], step)]
    great = [part_sentence(option, choice) for choice, option in taken if _is_great(choice, option)]
    small = [
        part_short(option, choice, catalogue.groups[option.group])
        for choice, option in taken
        if not _is_great(choice, option) and not option.is_none
    ]
    without = [
        ended(part_short(option, choice, catalogue.groups[option.group])) for choice, option in taken if option.is_none
    ]
    open_groups = [
        lowered(group_name(catalogue, group))
        for group in report.undecided
        if catalogue.groups[group].step is step and group not in _ELSEWHERE
    ]
    told = [*great, ended(f"{'Also: ' if great else ''}{'; '.join(small)}") if small else "", *without]
    told.append(f"Still to be chosen: {listed(open_groups)}." if open_groups else "")
    return " ".join(part for part in told if part)


def _is_great(choice: Choice, option: Option) -> bool:
    """Told in a sentence, not by name alone."""
    return option.price_net_pence * choice.count >= _GREAT_NET_PENCE and not option.is_none


def _taken(case: Case) -> Iterator[tuple[Choice, Option]]:
    """What the customer gets; what is only brought along is counted, and nobody gets it from us."""
    yield from (pair for pair in _chosen(case) if not pair[1].carried)


def _brought(case: Case) -> Iterator[str]:
    """What is counted in weight and power, and sold by nobody."""
    for choice, option in _chosen(case):
        if option.carried:
            yield lowered(option_name(case.stand.catalogue, option.id, count=choice.count))


def _chosen(case: Case) -> Iterator[tuple[Choice, Option]]:
    """The choices in the order of the catalogue."""
    options = case.stand.catalogue.options
    order = {option: number for number, option in enumerate(options)}
    known = [choice for choice in case.stand.spec.choices if choice.option in options]
    for choice in sorted(known, key=lambda choice: order[choice.option]):
        yield choice, options[choice.option]


def _is_in(case: Case, option: Option, step: Step) -> bool:
    return case.stand.catalogue.groups[option.group].step is step and option.group not in _ELSEWHERE
