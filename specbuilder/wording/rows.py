"""One row of the walk in words: name, money, mass, a short note; and the whole sentences below the list."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import assert_never

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Basis, Level, OptionState, Owner, Pick
from specbuilder.model.own_parts import blanks_of
from specbuilder.model.report import OptionStatus, Report

from . import quantities, reasons
from .names import choice_name, group_name, listed, option_name, short_name
from .plain import ended, fitted, lowered, raised
from .states import THEIRS, USUAL, state_word

NOTE_WIDTH = 23
"""The note of a row is never wider at 80 columns."""
_EVERYWHERE, _EVERYWHERE_SHORT = "in every finished build", "in every build"
SLOW_WEEKS = 5
"""From this many weeks on a row says how long its parts take."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowWords:
    """The cells of one option row."""

    state: str
    name: str
    money: str
    """``£2,808`` of a choice, ``+936`` of what may come, ``-`` of what is blocked."""
    mass: str
    note: str
    """At most 23 characters."""


def row_words(catalogue: Catalogue, report: Report, option: OptionId, note_width: int = NOTE_WIDTH) -> RowWords:
    """The cells of this option's row; the note takes at most so many characters."""
    status = report.options[option]
    taken = report.spec.chosen(option)
    money, mass = _cells(catalogue, report, status, taken=bool(taken))
    name = ", ".join(choice_name(catalogue, c) for c in taken) or option_name(catalogue, option)
    return RowWords(
        state=state_word(status.state),
        name=name,
        money=money,
        mass=mass,
        note=row_note(catalogue, report, option, note_width),
    )


def row_note(catalogue: Catalogue, report: Report, option: OptionId, width: int = NOTE_WIDTH) -> str:
    """At most 23 characters: the one or two things worth knowing about this row."""
    note = ""
    for part in _notes(catalogue, report, option, width):
        longer = f"{note}; {part}" if note else part
        if len(longer) <= width:
            note = longer
        elif not note:
            note = fitted(part, width)
    return note


def is_usual(catalogue: Catalogue, report: Report, option: OptionId) -> bool:
    """Whether the house would take this now: of a pick-one group only the first of its usual answers that may stand."""
    group = catalogue.groups[catalogue.options[option].group]
    if group.pick is Pick.ANY:
        return option in group.usual
    may = (o for o in group.usual if o in report.options and report.options[o].state is not OptionState.BLOCKED)
    return next(may, None) == option


def row_sentence(catalogue: Catalogue, report: Report, option: OptionId, *, keys: bool = True) -> str:
    """What stands below the list for the row under the cursor, in whole sentences.

    With ``keys`` it says what Enter shows, and names the clashes; without, for line commands, whoever prints it lets
    the findings follow.
    """
    status, known = report.options[option], catalogue.options[option]
    parts = [*_state_sentences(catalogue, report, status, keys=keys)]
    if known.description:
        parts.append(ended(known.description))
    parts += _consequences(catalogue, known, status)
    parts += (ended(f"Caution: {catalogue.cautions[c].text}") for c in known.cautions if c in catalogue.cautions)
    if known.basis is Basis.ESTIMATE and not known.is_none:
        parts.append("ESTIMATE: price, mass and weeks.")
    return " ".join(parts)


def _cells(catalogue: Catalogue, report: Report, status: OptionStatus, *, taken: bool) -> tuple[str, str]:
    effect = status.effect
    match status.state:
        case OptionState.BLOCKED if not taken:
            return "-", "-"
        case OptionState.OPEN:
            effect = report.taking(status.option)
            return quantities.money_delta(effect.gross_pence), quantities.kilograms_delta(effect.mass_kg)
        case OptionState.CHOSEN | OptionState.FOLLOWS | OptionState.BLOCKED:
            return quantities.money(effect.gross_pence, catalogue.firm.currency), quantities.kilograms(effect.mass_kg)
        case _:
            assert_never(status.state)


def _notes(catalogue: Catalogue, report: Report, option: OptionId, width: int) -> Iterator[str]:
    """What could be said, the weightiest first."""
    status, known = report.options[option], catalogue.options[option]
    if status.clashes:
        yield f"clash: {_about(catalogue, report, status.clashes[0], option, width - len('clash: '))}"
    match status.state:
        case OptionState.BLOCKED:
            cause = status.cause
            yield reasons.culprit(catalogue, cause, option, width) if cause else "no way to finish"
        case OptionState.FOLLOWS:
            yield _from(catalogue, status, width)
        case OptionState.CHOSEN:
            yield from _chosen_notes(catalogue, report, option, width)
        case OptionState.OPEN:
            yield from _open_notes(catalogue, known, status, width, usual=is_usual(catalogue, report, option))
        case _:
            assert_never(status.state)


def _chosen_notes(catalogue: Catalogue, report: Report, option: OptionId, width: int) -> Iterator[str]:
    for choice in report.spec.chosen(option):
        if choice.owner is Owner.CUSTOMER:
            whole = not blanks_of(catalogue.options[option], choice.own_part)
            yield THEIRS if whole else f"{THEIRS}, sheet not known"
        if choice.came_with:
            yield f"from {short_name(catalogue, choice.came_with[0], width - len('from '))}"
        elif choice.at:
            yield f"taken {choice.at[-5:]}"


def _open_notes(catalogue: Catalogue, known: Option, status: OptionStatus, width: int, *, usual: bool) -> Iterator[str]:
    if status.would_clear:
        yield "would clear the clash"
    if usual:
        yield USUAL
    if status.brings:
        yield _brings(catalogue, status.brings, width)
    if status.asks:
        others = [group for group in status.asks if group != known.group]
        asked = lowered(group_name(catalogue, others[0])) if others else MORE_OF_THESE
        yield f"asks for {asked}" if len(f"asks for {asked}") <= width else f"asks: {asked}"
    if known.lead_weeks >= SLOW_WEEKS:
        yield f"parts take {quantities.weeks(known.lead_weeks)}"


MORE_OF_THESE = "another"
"""What an option asks for that needs a second one of its own group, as a panel its controller."""


def _brings(catalogue: Catalogue, brings: tuple[OptionId, ...], width: int) -> str:
    if len(brings) == 1:
        return f"brings {short_name(catalogue, brings[0], width - len('brings '))}"
    return f"brings {len(brings)} parts"


def _from(catalogue: Catalogue, status: OptionStatus, width: int = 200) -> str:
    if status.cause is None:
        return _everywhere(width)
    source = reasons.source_of(catalogue, status.cause, status.option, width - len("from "))
    return f"from {source}" if source else _everywhere(width)


def _everywhere(width: int) -> str:
    return _EVERYWHERE if len(_EVERYWHERE) <= width else _EVERYWHERE_SHORT


def _about(catalogue: Catalogue, report: Report, rule: RuleId, option: OptionId, room: int) -> str:
    """What a clash is about: its ledger, else the other choice, else the brief."""
    finding = next((f for f in report.findings if f.rule == rule), None)
    if finding is None:
        return "see below"
    if finding.reading is not None:
        return lowered(catalogue.ledgers[finding.reading].short)
    other = next((o for o in finding.subjects if o != option), None)
    if other is not None:
        return short_name(catalogue, other, room)
    return "brief" if finding.keys else "needs another part"


def _state_sentences(catalogue: Catalogue, report: Report, status: OptionStatus, *, keys: bool) -> Iterator[str]:
    for rule in status.clashes if keys else ():
        known = catalogue.rules[rule]
        yield f"{known.level.value}: {ended(known.because)}"
    if status.clashes and keys:
        yield "Enter shows why and what we can do."
    match status.state:
        case OptionState.BLOCKED:
            why = reasons.reason_head(catalogue, report, status.cause) if status.cause else ""
            culprit = reasons.culprit(catalogue, status.cause, status.option) if status.cause else ""
            yield ended(f"Blocked: {why or culprit or 'no way to finish this build has it'}")
            if keys:
                yield "Enter shows why."
        case OptionState.FOLLOWS if not any(c.came_with for c in report.spec.chosen(status.option)):
            yield ended(f"Follows: {_from(catalogue, status)}")
        case OptionState.CHOSEN | OptionState.FOLLOWS:
            yield from _chosen_sentences(catalogue, report, status.option)
        case OptionState.OPEN if status.would_clear:
            levels = [catalogue.rules[rule].level for rule in status.would_clear]
            worst = min(levels, key=list(Level).index)
            yield f"Would clear {'a clash' if len(levels) == 1 else f'{len(levels)} clashes'} ({worst.value})."
        case OptionState.OPEN:
            pass
        case _:
            assert_never(status.state)


def _chosen_sentences(catalogue: Catalogue, report: Report, option: OptionId) -> Iterator[str]:
    for choice in report.spec.chosen(option):
        if choice.came_with:
            source = listed(option_name(catalogue, o) for o in choice.came_with)
            yield f"Came with {source} and leaves with it."
        if choice.owner is Owner.CUSTOMER:
            yield "The customer's own part: we fit it, we do not warrant it."


def _consequences(catalogue: Catalogue, known: Option, status: OptionStatus) -> Iterator[str]:
    if status.state is not OptionState.OPEN:
        return
    if status.brings:
        yield f"Brings {listed(option_name(catalogue, o) for o in status.brings)}."
    if status.asks:
        asked = listed(lowered(group_name(catalogue, group)) for group in status.asks)
        yield raised(f"then {asked} must be decided.")
    if known.lead_weeks >= 1:
        yield f"Parts take {quantities.weeks(known.lead_weeks)}."


def row_count_words(catalogue: Catalogue, report: Report, option: OptionId) -> str:
    """``2 of 4`` where an option of a pick-any group may stand more than once, else empty."""
    known = catalogue.options[option]
    if known.max_count <= 1 or catalogue.groups[known.group].pick is Pick.ONE:
        return ""
    return f"{sum(choice.count for choice in report.spec.chosen(option))} of {known.max_count}"
