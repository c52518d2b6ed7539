"""The chain of reasons behind one option or finding, as a tree of values."""

from __future__ import annotations

from dataclasses import replace

from specbuilder.model.findings import Cause, CauseKind, Finding
from specbuilder.model.ids import OptionId
from specbuilder.model.rules import BriefIs
from specbuilder.model.spec import Choice

from .clauses import Placement
from .propagate import BY_ANSWER, BY_CHOICE, BY_GROUP, UNSET
from .runs import Run, choice_cause
from .states import Stand, node

DEEPEST = 6
"""Longer chains are cut: nobody follows them at a counter."""
MANY = 2
"""With more possible givers out than this, the choices behind them are named instead of each giver."""


def why_option(run: Run, option: OptionId, stand: Stand) -> Cause | None:
    """Why an option is blocked or follows; None when it is neither."""
    if stand.cause is None:
        return None
    variable = run.rulebook.clauses.option[option]
    if stand.cause.kind in (CauseKind.ZONE, CauseKind.LEDGER) or run.trail.reason[variable] < 0:
        return _blocked_beside(run, option, stand)
    return _settled(run, variable, DEEPEST)


def why_finding(run: Run, finding: Finding, choices: tuple[Choice, ...]) -> Cause:
    """What a finding rests on: the choices and answers that take part, and the ledger with its value."""
    by_option = {c.option: c for c in choices if c.option in run.rulebook.catalogue.options}
    parts = [
        *(choice_cause(run.rulebook.catalogue, by_option[o]) for o in finding.subjects if o in by_option),
        *(Cause(kind=CauseKind.ANSWER, key=key) for key in finding.keys),
    ]
    if finding.reading is not None:
        parts.append(Cause(kind=CauseKind.LEDGER, ledger=finding.reading))
    parts += (Cause(kind=CauseKind.NOTHING_GIVES, tag=tag) for tag in finding.wanted)
    return Cause(kind=CauseKind.RULE, rule=finding.rule, because=tuple(parts))


def _blocked_beside(run: Run, option: OptionId, stand: Stand) -> Cause | None:
    """An option beside the choice of its group: the clause that is false without that choice, opened up."""
    clauses, trail = run.rulebook.clauses, run.trail
    group = run.rulebook.catalogue.options[option].group
    swapped = sum(1 << i for i, c in enumerate(run.choices) if run.rulebook.catalogue.options[c.option].group == group)
    for seat in run.rulebook.rows[option].seats:
        if seat.place is not stand.place:
            continue
        for residual in seat.residuals:
            if all(trail.is_false(lit) and not trail.mask[lit >> 1] & swapped for lit in residual.lits):
                why = clauses.why[residual.clause]
                below = tuple(_settled(run, lit >> 1, DEEPEST - 1) for lit in residual.lits)
                return replace(node(why, below), option=why.option or option)
    return stand.cause


def _settled(run: Run, variable: int, depth: int) -> Cause:
    clauses, trail = run.rulebook.clauses, run.trail
    reason, name = trail.reason[variable], clauses.names[variable]
    if trail.value[variable] != UNSET:
        if reason == BY_ANSWER and isinstance(name, BriefIs):
            return Cause(kind=CauseKind.ANSWER, key=name.key)
        if reason == BY_CHOICE:
            return _choice(run, name)
        if reason == BY_GROUP:
            return _beside(run, variable)
    why = clauses.why[reason]
    others = [lit >> 1 for lit in clauses.lits[reason] if lit >> 1 != variable]
    if depth == 0 or (why.kind is CauseKind.NOTHING_GIVES and len(others) > MANY):
        below = tuple(choice_cause(run.rulebook.catalogue, c) for c in run.culprits(trail.mask[variable]))
    else:
        below = tuple(_settled(run, other, depth - 1) for other in others)
    return node(why, below)


def _choice(run: Run, name: object) -> Cause:
    option = name.option if isinstance(name, Placement) else None
    found: Choice | None = next((c for c in run.choices if c.option == option), None)
    return choice_cause(run.rulebook.catalogue, found) if found else Cause(kind=CauseKind.CHOICE, option=option)


def _beside(run: Run, variable: int) -> Cause:
    """Out because its group has its one answer already."""
    chosen = run.culprits(run.trail.mask[variable])
    return Cause(
        kind=CauseKind.ONE_ANSWER,
        group=run.rulebook.clauses.group_of.get(variable),
        because=tuple(choice_cause(run.rulebook.catalogue, c) for c in chosen),
    )
