"""The spec line by line for reading aloud and for plain terminals: one fact a line, no columns, no bars, no signs."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import assert_never

from specbuilder.model.catalogue import Catalogue, Group
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import OptionState, Owner, Pick, Step
from specbuilder.model.own_parts import blanks_of
from specbuilder.model.plain_text import one_line
from specbuilder.model.report import Effect, OptionStatus, Report
from specbuilder.model.spec import Choice

from . import aloud, reasons
from .brief import open_question
from .glance import glance, price_words, state_words, van_words, weight_words
from .names import choice_name, listed, option_name
from .plain import ended
from .rows import is_usual, row_count_words
from .states import THEIRS, UNDECIDED, clash_count, place_explained, state_word, step_title

_WIDEST = 400
"""Of the glance line: nothing of it is shortened."""


def head_lines(catalogue: Catalogue, report: Report) -> tuple[str, ...]:
    """Which job, for whom, in which van, at what price and weight: a line each."""
    spec = report.spec
    lines = [f"Job {spec.number or 'without a number yet'}, revision {spec.revision}, {state_words(spec.state)}."]
    if spec.replaces is not None:
        lines.append(f"Replaces revision {spec.replaces}.")
    if spec.reason:
        lines.append(ended(f"Reason of this revision: {one_line(spec.reason)}"))
    lines += (
        f"Customer: {spec.customer.name or 'no name yet'}.",
        f"Van: {van_words(catalogue, report)}.",
        f"Price: {price_words(catalogue, report.price)}.",
        f"Weight: {weight_words(catalogue, report).removeprefix('weight: ')}.",
    )
    return tuple(lines)


def standing_line(catalogue: Catalogue, report: Report) -> str:
    """Where the spec stands, as the glance line of the screens has it, in one sentence."""
    parts = re.sub(r"\s{3,}", "; ", glance(catalogue, report, _WIDEST))
    return ended(" ".join(parts.split()))


def spec_lines(catalogue: Catalogue, report: Report) -> tuple[str, ...]:
    """Everything that is chosen, step by step, and what is undecided."""
    lines = list(head_lines(catalogue, report))
    for step in Step:
        told = [line for group in catalogue.groups_of(step) for line in _group_short(catalogue, report, group)]
        if told:
            lines += (f"{step_title(step)}", *told)
    lines += _handed(catalogue, report)
    lines += (f"Accepted in writing: {ended(a.words)} {_who_when(a.by, a.at)}" for a in report.spec.accepted)
    lines += (f"Open question: {ended(open_question(question))}" for question in report.spec.questions)
    return tuple(lines)


def step_lines(catalogue: Catalogue, report: Report, step: Step) -> tuple[str, ...]:
    """Every group of a step with all its options."""
    groups = catalogue.groups_of(step)
    return (step_title(step), *(line for group in groups for line in group_lines(catalogue, report, group.id)))


def group_lines(catalogue: Catalogue, report: Report, group: GroupId) -> tuple[str, ...]:
    """``Cooking: undecided, 4 answers.`` and a line for each: ``1 Gas bundle, open, adds 936 pounds, 21 kilograms``."""
    options = catalogue.options_of(group)
    head = f"{catalogue.groups[group].name}: {_group_words(catalogue, report, group)}."
    lines = (
        f"{number} {ended(option_words(catalogue, report, option.id))}" for number, option in enumerate(options, 1)
    )
    return (head, *lines)


def option_words(catalogue: Catalogue, report: Report, option: OptionId) -> str:
    """``Gas bundle, open, adds 936 pounds, 21 kilograms, usual``."""
    status = report.options[option]
    taken = report.spec.chosen(option)
    parts = [listed(choice_name(catalogue, choice) for choice in taken) or option_name(catalogue, option)]
    parts.append(state_word(status.state))
    parts += _effect_words(catalogue, report, status, taken)
    if taken and (count := row_count_words(catalogue, report, option)):
        parts.append(count)
    if any(choice.owner is Owner.CUSTOMER for choice in taken):
        parts.append(THEIRS)
    if is_usual(catalogue, report, option):
        parts.append("usual")
    if status.cause is not None and status.state is OptionState.BLOCKED:
        why = reasons.reason_head(catalogue, report, status.cause)
        parts.append(f'because "{why}"' if why else reasons.culprit(catalogue, status.cause, option))
    if status.cause is not None and status.state is OptionState.FOLLOWS:
        source = reasons.source_of(catalogue, status.cause, option)
        parts.append(f"from {source}" if source else "in every finished build")
    if status.brings and status.state is OptionState.OPEN:
        parts.append(f"brings {listed(option_name(catalogue, o) for o in status.brings)}")
    if status.clashes:
        parts.append(clash_count(len(status.clashes)))
    return ", ".join(parts)


def _effect_words(
    catalogue: Catalogue, report: Report, status: OptionStatus, taken: tuple[Choice, ...]
) -> Iterator[str]:
    currency, effect = catalogue.firm.currency, status.effect
    match status.state:
        case OptionState.OPEN:
            yield from _changes(report.taking(status.option), currency)
        case OptionState.BLOCKED if not taken:
            pass
        case OptionState.BLOCKED | OptionState.CHOSEN | OptionState.FOLLOWS:
            yield aloud.money_spoken(effect.gross_pence, currency)
            yield aloud.kilograms_spoken(effect.mass_kg)
        case _:
            assert_never(status.state)


def _changes(effect: Effect, currency: str) -> Iterator[str]:
    """``adds 936 pounds, 21 kilograms``; what gets less is told with ``takes off``."""
    price = aloud.money_spoken(abs(effect.gross_pence), currency)
    mass = aloud.kilograms_spoken(abs(effect.mass_kg))
    if effect.gross_pence >= 0 and effect.mass_kg >= 0:
        yield f"adds {price}"
        yield mass
    elif effect.gross_pence < 0 and effect.mass_kg < 0:
        yield f"takes off {price}"
        yield mass
    else:
        yield f"{'adds' if effect.gross_pence >= 0 else 'takes off'} {price}"
        yield f"{'adds' if effect.mass_kg >= 0 else 'takes off'} {mass}"


def _group_words(catalogue: Catalogue, report: Report, group: GroupId) -> str:
    status, known = report.groups[group], catalogue.groups[group]
    answers = len(catalogue.options_of(group))
    if not status.decided:
        return f"{UNDECIDED}, {answers} answers"
    if known.pick is Pick.ANY:
        taken = sum(choice.count for choice in status.choices)
        words = f"{taken or 'none'} chosen, {answers} answers, up to {known.max_choices}"
    else:
        words = f"decided, {answers} answers"
    return f"{words}, {clash_count(len(status.clashes))}" if status.clashes else words


def _group_short(catalogue: Catalogue, report: Report, group: Group) -> Iterator[str]:
    """What is chosen in a group, a line each; undecided says so; an empty pick-any group says nothing."""
    status = report.groups[group.id]
    if not status.decided:
        added = aloud.money_range_spoken(status.gross_added, catalogue.firm.currency)
        mass = aloud.kilograms_range_spoken(status.mass_added_kg)
        yield f"{group.name}: {UNDECIDED}, adds {added} and {mass}."
    for choice in status.choices:
        yield f"{group.name}: {ended(choice_words(catalogue, choice))}"


def choice_words(catalogue: Catalogue, choice: Choice) -> str:
    """``Side galley, right, theirs, came with Pod galley, note: ...``."""
    parts = [choice_name(catalogue, choice)]
    if choice.owner is Owner.CUSTOMER:
        option = catalogue.options.get(choice.option)
        whole = option is not None and not blanks_of(option, choice.own_part)
        parts.append(THEIRS if whole else f"{THEIRS}, its sheet is not known yet")
    if choice.came_with:
        parts.append(f"came with {listed(option_name(catalogue, option) for option in choice.came_with)}")
    if choice.note:
        parts.append(f"note: {choice.note}")
    return ", ".join(parts)


def _handed(catalogue: Catalogue, report: Report) -> Iterator[str]:
    """Each choice that has a side, with that side told in full."""
    van = catalogue.options[report.van].van if report.van in catalogue.options and report.van else None
    doors = van.sliding_doors if van else ()
    country = report.facts.get("country")
    for choice in report.spec.choices:
        option = catalogue.options.get(choice.option)
        if choice.place is not None and option is not None and len(option.places) > 1:
            side = place_explained(choice.place, country if isinstance(country, str) else None, doors)
            yield f"Handed: {option_name(catalogue, choice.option)}, {side}."


def _who_when(by: str, at: str) -> str:
    return f"By {by or 'nobody named'}, {at or 'no date'}."
