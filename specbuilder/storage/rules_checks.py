"""What the annotations of the records cannot say: how the tables of a catalogue hold together.

Each check is one function over one kind of record; ``check`` is the list of them all.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from graphlib import CycleError, TopologicalSorter

from specbuilder.model.brief import BriefLine
from specbuilder.model.catalogue import Firm, Group, Option, Table, WorkStep
from specbuilder.model.ids import BASE_VAN_GROUP, GroupId, OptionId
from specbuilder.model.kinds import AnswerType, RuleKind
from specbuilder.model.rules import AnyOf, Atom, BriefIs, GroupAnswered, Not, Rule, WithinBound, ZonesFree

from .converters import known
from .faults import FaultList, Spot, quotable
from .rules_answers import answer_fault
from .rules_draft import Draft, Found
from .vocabulary import Vocabulary

_DAY_H = 24
_FIRM = (
    ("vat_percent", 0, 100),
    ("deposit_percent", 0, 100),
    ("quote_valid_days", 1, 3650),
    ("undo_rate_net_pence_per_h", 0, 10_000_000),
    ("undo_h_per_hole", 0, 1000),
)
"""Figures of the firm, from the least to the most they can be at all."""


def check(draft: Draft, words: Vocabulary, faults: FaultList) -> None:
    """Notes everything in which the records disagree."""
    _check_base_vans(draft, words, faults)
    for line in draft.brief:
        _check_line(line.record, line.spot, words)
    group_of = {option.record.id: option.record.group for option in draft.options}
    for group in draft.groups:
        _check_group(group.record, group.spot, group_of)
    for option in draft.options:
        _check_option(option.record, option.spot, words)
    for rule in draft.rules:
        _check_rule(rule.record, rule.spot)
    for table in draft.tables:
        _check_table(table.record, table.spot)
    _check_circle(draft.work, ((step.record.id, step.record.predecessors) for step in draft.work), "predecessors")
    for when in ("asked_when", "assumed_unless"):
        rests_on = ((line.record.key, tuple(_keys_in(getattr(line.record, when)))) for line in draft.brief)
        _check_circle(draft.brief, rests_on, when)


def check_firm(firm: Firm, spot: Spot) -> Firm | None:
    """The firm, when its figures make prices and dates; None after a fault."""
    sound = True
    for key, least, most in _FIRM:
        value: float = getattr(firm, key)
        if not least <= value <= most:
            spot.at(key).fault(f"{value:g} is not from {least:,} to {most:,}: check it.")
            sound = False
    if not firm.work_days:
        spot.at("work_days").fault('is empty, and dates of work need a day: name one, such as "mon".')
    if not 0 < firm.hours_per_day <= _DAY_H:
        spot.at("hours_per_day").fault(
            f"a working day of {firm.hours_per_day:g} hours makes no dates: write hours above 0, at most {_DAY_H}."
        )
    return firm if sound and firm.work_days and 0 < firm.hours_per_day <= _DAY_H else None


def _check_base_vans(draft: Draft, words: Vocabulary, faults: FaultList) -> None:
    if not words.complete:
        return
    if not words.vans.words:
        faults.add("vans", "there is no base van: add a file with a table [van.ID] in it.")
    elif BASE_VAN_GROUP not in words.groups.words:
        faults.add("options", f"nothing asks for the base van: add the table [group.{BASE_VAN_GROUP}].")
    for option in draft.options:
        if option.record.group == BASE_VAN_GROUP and option.record.van is None:
            option.spot.at("group").fault("base vans are written as [van.ID]: choose another group or move it there.")


def _check_line(line: BriefLine, spot: Spot, words: Vocabulary) -> None:
    if line.question is not None:
        known(str(line.question), words.questions, spot.at("question"))
    if line.question is None and spot.path[0] == "brief":
        spot.at("question").fault("is missing: add the number of the question this line belongs to.")
    if line.type in (AnswerType.ONE_OF, AnswerType.LIST):
        if not line.values:
            spot.at("values").fault(
                f'a line of type "{line.type.value}" needs the words to choose from: add values = [ ].'
            )
    elif line.values:
        spot.at("values").fault(f'a line of type "{line.type.value}" has no words to choose from: take this out.')
    if line.least > line.most:
        spot.at("least").fault(f"least {line.least:g} is above most {line.most:g}: turn them round.")
    if not line.asked_when.terms:
        spot.at("asked_when").fault("is empty and would never be true: take the key out or say when.")
    for key, answer in (("assumed", line.assumed), ("closed", line.closed), ("unnamed", line.unnamed)):
        nothing = key == "closed" and answer == 0  # nobody sleeps, so nobody is tall: below every least
        wrong = None if answer is None or nothing else answer_fault(line, answer)
        if wrong is not None:
            spot.at(key).fault(wrong)


def _check_group(group: Group, spot: Spot, group_of: Mapping[OptionId, GroupId]) -> None:
    for number, usual in enumerate(group.usual):
        other = group_of.get(usual, group.id)
        if other != group.id:
            spot.at("usual", number).fault(f'"{usual}" belongs to group {other}: name an option of this group.')


def _check_option(option: Option, spot: Spot, words: Vocabulary) -> None:
    if not option.group:
        spot.at("group").fault("is empty: name the group this option is an answer of.")
    for number, zone in enumerate(option.frees_zones):
        if not zone.endswith("@side"):
            known(zone, words.zones, spot.at("frees_zones", number))
    for key, placed in (("gives", option.gives), ("zones", option.zones), ("frees_zones", option.frees_zones)):
        for number, word in enumerate(placed):
            if word.endswith("@side") and not option.places:
                spot.at(key, number).fault(f'"{word}" needs a side, but the option has no places: add places = [ ].')


def _check_rule(rule: Rule, spot: Spot) -> None:
    for key, text, what in (
        ("because", rule.because, "the sentence the customer hears"),
        ("source", rule.source, "where the rule comes from"),
    ):
        if not text.strip():
            spot.at(key).fault(f"is empty: write {what}.")
    if not rule.when.terms:
        spot.at("when").fault('is empty and would never be true: say when, or write "always".')
    elif any(_is_limit(atom) for atom in _atoms(rule.when)):
        spot.at("when").fault("a limit can stand in then only: move it there.")
    wrong = _then_fault(rule)
    if wrong is not None:
        spot.at("then").fault(wrong)


def _then_fault(rule: Rule) -> str | None:
    """What is wrong with the second half of a rule of this kind; None when nothing is."""
    atoms = tuple(_atoms(rule.then))
    is_one = len(rule.then.terms) == len(atoms) == 1
    if not atoms:
        return None if rule.kind is RuleKind.ADVICE else "is empty: only advice can do without it; say what must hold."
    if rule.kind is RuleKind.LIMIT:
        if is_one and _is_limit(atoms[0]) and not isinstance(rule.then.terms[0].atoms[0], Not):
            return None
        return 'a limit is one comparison, such as "total-mass <= bound": write that and nothing beside it.'
    if any(_is_limit(atom) for atom in atoms):
        return f'a rule of kind "{rule.kind.value}" holds no comparison with a bound: make it kind = "limit".'
    if rule.kind is RuleKind.EXACTLY_ONE and not (is_one and isinstance(rule.then.terms[0].atoms[0], GroupAnswered)):
        return 'exactly one of what? Write "group:ID" and nothing beside it.'
    return None


def _check_table(table: Table, spot: Spot) -> None:
    for row_number, row in enumerate(table.rows):
        here = spot.at("rows", row_number)
        if len(row) != len(table.columns):
            here.fault(
                f"the row has {len(row)} values, but the table has {len(table.columns)} columns: make them agree."
            )
            continue
        for number, (column, value) in enumerate(zip(table.columns, row, strict=True)):
            if not isinstance(value, str):
                low = column.least is not None and value < column.least
                high = column.most is not None and value > column.most
                if low or high:
                    bound = f"below {column.least:g}" if low else f"above {column.most:g}"
                    here.at(number).fault(
                        f"{value:g} is {bound}, the bound of column {quotable(column.key)}: check it."
                    )


def _check_circle(
    founds: Iterable[Found[WorkStep] | Found[BriefLine]], edges: Iterable[tuple[str, tuple[str, ...]]], key: str
) -> None:
    """Notes one circle, at the first record of the files that lies on it."""
    try:
        TopologicalSorter(dict(edges)).prepare()
    except CycleError as circle:
        names: list[str] = circle.args[1]
        for found in founds:
            name = str(found.spot.path[1])
            if name in names:
                at = names.index(name)
                told = " before ".join((*names[at:-1], *names[:at], name))
                found.spot.at(key).fault(f"this runs in a circle, {told}: break it at one of these.")
                return


def _is_limit(atom: Atom) -> bool:
    return isinstance(atom, (WithinBound, ZonesFree))


def _atoms(expression: AnyOf) -> Iterator[Atom]:
    """All atoms, each without its ``!``."""
    for term in expression.terms:
        for atom in term.atoms:
            yield atom.atom if isinstance(atom, Not) else atom


def _keys_in(expression: AnyOf) -> Iterator[str]:
    for atom in _atoms(expression):
        if isinstance(atom, BriefIs):
            yield atom.key
