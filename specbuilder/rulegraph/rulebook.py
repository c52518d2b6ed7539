"""Everything about one catalogue that does not depend on a spec: compiled once, then only read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.findings import CauseKind
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import Pick, Place

from .clauses import Clauses, compile_clauses, no, placements_of, yes
from .graph import RuleGraph, build_graph
from .judge import Hearing, hearing


@dataclass(frozen=True, slots=True)
class Residual:
    """What is left of a clause once an option is taken: one of these literals must hold."""

    clause: int
    lits: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Seat:
    """An option at one place, with its variable and what taking it there would demand."""

    place: Place | None
    variable: int
    residuals: tuple[Residual, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """An option, ready to be judged."""

    option: Option
    variable: int
    pick_one: bool
    seats: tuple[Seat, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Rulebook:
    """Everything about one catalogue that does not depend on a spec."""

    catalogue: Catalogue
    graph: RuleGraph
    clauses: Clauses
    rows: Mapping[OptionId, Row]
    givers: Mapping[str, tuple[OptionId, ...]]
    """Who can give each capability."""
    members: Mapping[GroupId, tuple[Option, ...]]
    hearings: tuple[Hearing, ...]
    """The rules, ready to be judged."""


def make_rulebook(catalogue: Catalogue) -> Rulebook:
    """Compile a catalogue."""
    clauses = compile_clauses(catalogue)
    graph = build_graph(catalogue)
    return Rulebook(
        catalogue,
        graph,
        clauses,
        {option.id: _row(catalogue, clauses, option) for option in catalogue.options.values()},
        {tag: graph.givers(tag) for tag in clauses.tag},
        {group: catalogue.options_of(group) for group in catalogue.groups},
        tuple(hearing(rule) for rule in catalogue.rules.values()),
    )


def _row(catalogue: Catalogue, clauses: Clauses, option: Option) -> Row:
    seats = tuple(
        Seat(p.place, clauses.placement[p], _residuals(clauses, clauses.placement[p])) for p in placements_of(option)
    )
    return Row(option, clauses.option[option.id], catalogue.groups[option.group].pick is Pick.ONE, seats)


def _residuals(clauses: Clauses, variable: int) -> tuple[Residual, ...]:
    taken = {yes(variable)}
    for index in clauses.watching[no(variable)]:
        lits = clauses.lits[index]
        if len(lits) == 2 and clauses.why[index].kind is CauseKind.GIVES:
            taken |= {lit for lit in lits if lit != no(variable)}
    found: dict[int, Residual] = {}
    for lit in taken:
        for index in clauses.watching[lit ^ 1]:
            if taken.isdisjoint(clauses.lits[index]):
                rest = tuple(other for other in clauses.lits[index] if other ^ 1 not in taken)
                found[index] = Residual(index, rest)
    return tuple(found.values())
