"""The catalogue under one brief as a problem: rules, structure, places and ledger limits together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import TypeAlias

from specbuilder.calc import made
from specbuilder.calc.limits.shape import shapes_of
from specbuilder.calc.measuring.frame import Asked
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import CauseKind
from specbuilder.model.ids import CUSTOMER_PART, GroupId, LedgerId, OptionId, RuleId, Zone
from specbuilder.model.kinds import Level, Owner, Pick, RuleKind
from specbuilder.model.rules import BriefIs, FitsVan, NeedsMet, Rule, WithinBound, ZonesFree
from specbuilder.model.situation import Situation
from specbuilder.model.spec import Choice
from specbuilder.reasoning.problem import Problem
from specbuilder.rulegraph.clauses import Clauses, Placement, compile_clauses, condition_literals, placements_of
from specbuilder.rulegraph.standing import zones_at

from .limit_rows import Amounting, TooManyStates, add_rows, one_guard
from .spread_rows import Misfits, add_spread_rows

Source: TypeAlias = RuleId | GroupId | OptionId
"""What put a limit there: a rule, how many of a group may stand, or how many of an option."""


@dataclass(slots=True, eq=False)
class Compiled:
    """Filled while compiling, read-only afterwards."""

    catalogue: Catalogue
    clauses: Clauses
    levels: tuple[Level, ...]
    asked: Asked
    """The answers its limits rest on."""
    problem: Problem = field(default_factory=Problem)
    counts: dict[Placement, tuple[int, ...]] = field(default_factory=dict)
    """For each option at each place: at least one of it, at least two, ..."""
    selectors: dict[RuleId, int] = field(default_factory=dict)
    """Where rules can be switched: the literal that switches one on."""
    clause_at: list[int] = field(default_factory=list)
    """For each clause of the problem its clause of the catalogue; -1 for counts and states."""
    limit_of: dict[int, Source] = field(default_factory=dict)
    """What put each limit there."""
    unheard: list[RuleId] = field(default_factory=list)
    """Limits that are no part of the problem and are left to the full evaluation."""

    def held(self, choice: Choice) -> tuple[int, ...]:
        """The literals of a choice: that it stands there so many times and no more. Empty when nobody knows it."""
        option = self.catalogue.options.get(choice.option)
        if option is None:
            return ()
        counts = self.counts.get(Placement(option.id, choice.place)) or self.counts[placements_of(option)[0]]
        if choice.count == len(counts):
            return (counts[-1],)
        number = min(choice.count, len(counts))
        return (counts[number - 1],) if number == len(counts) else (counts[number - 1], -counts[number])

    def option(self, option: OptionId) -> int:
        """The literal *this option stands, wherever*."""
        return self.clauses.option[option] + 1

    def letting_go(self, rules: frozenset[RuleId]) -> Compiled:
        """The same without the limits of some rules; whatever else stands for them stays and binds nothing."""
        kept = [at for at in range(len(self.problem.limits)) if self.limit_of.get(at) not in rules]
        limits = [self.problem.limits[at] for at in kept]
        problem = Problem(self.problem.count, self.problem.clauses, self.problem.at_most_one, limits)
        limit_of = {new: self.limit_of[at] for new, at in enumerate(kept) if at in self.limit_of}
        return replace(self, problem=problem, limit_of=limit_of)

    def same(self, lit: int, other: Compiled) -> int | None:
        """The literal that says the same in another compilation; None for counts and states."""
        if abs(lit) > len(self.clauses.names):
            return None
        name, clauses = self.clauses.names[abs(lit) - 1], other.clauses
        match name:
            case Placement():
                variable = clauses.placement.get(name)
            case BriefIs():
                variable = clauses.atom.get(name)
            case _:
                variable = clauses.tag.get(name) if name in self.clauses.tag else clauses.option.get(OptionId(name))
        return None if variable is None else (variable + 1) * (1 if lit > 0 else -1)

    def literal(self, lit: int) -> int:
        """A literal of the catalogue's clauses as one of the problem."""
        return -((lit >> 1) + 1) if lit & 1 else (lit >> 1) + 1


def compile_problem(
    situation: Situation, levels: tuple[Level, ...], *, selectable: bool, without: frozenset[RuleId] = frozenset()
) -> Compiled:
    """Compile the catalogue of a situation under its brief; the choices of the situation play no part.

    Only the sheets of parts the customer brings are looked at: they weigh what they weigh.

    Args:
        situation: catalogue and facts.
        levels: the rules that take part.
        selectable: whether each rule can be switched by a literal of its own.
        without: rules that are left out.
    """
    compiled = Compiled(situation.catalogue, _clauses(situation.catalogue, levels), levels, Asked(situation.facts))
    compiled.problem.count = len(compiled.clauses.names)
    if selectable:
        for rule in situation.catalogue.rules.values():
            if rule.level in levels:
                compiled.selectors[rule.id] = compiled.problem.new()
    _add_clauses(compiled, without)
    _add_counts(compiled)
    amounting, misfits = Amounting(_literals(compiled)), _misfits(compiled, without)
    for rule in situation.catalogue.rules.values():
        if rule.level in levels and rule.kind is RuleKind.LIMIT and rule.id not in without:
            _add_limit_rule(compiled, situation, amounting, rule, misfits)
    return compiled


@lru_cache(maxsize=8)
def _clauses(catalogue: Catalogue, levels: tuple[Level, ...]) -> Clauses:
    return compile_clauses(catalogue, levels)


def _add_clauses(compiled: Compiled, without: frozenset[RuleId]) -> None:
    structure = {kind: rule.id for rule in compiled.catalogue.rules.values() for kind in _structure_of(rule)}
    for index, (lits, why) in enumerate(zip(compiled.clauses.lits, compiled.clauses.why, strict=True)):
        if why.kind is CauseKind.NOTHING_GIVES and why.tag == CUSTOMER_PART:
            continue  # whose part it is is no matter of options
        owner = why.rule or structure.get(why.kind, RuleId(""))
        if owner in without:
            continue
        selector = compiled.selectors.get(owner)
        switched = () if selector is None else (-selector,)
        if compiled.problem.add_clause((*switched, *map(compiled.literal, lits))) is not None:
            compiled.clause_at.append(index)


def _structure_of(rule: Rule) -> Iterator[CauseKind]:
    """The kinds of clauses a rule about the whole spec stands for."""
    for term in rule.then.terms:
        for atom in term.atoms:
            match atom:
                case NeedsMet():
                    yield CauseKind.NEEDS
                case FitsVan():
                    yield CauseKind.FITS
                case _:
                    pass


def _add_counts(compiled: Compiled) -> None:
    problem, catalogue = compiled.problem, compiled.catalogue
    for option in catalogue.options.values():
        for placement in placements_of(option):
            chain = [compiled.clauses.placement[placement] + 1]
            for _ in range(1, option.max_count):
                chain.append(problem.new())
                problem.add_clause((-chain[-1], chain[-2]))
                compiled.clause_at.append(-1)
            compiled.counts[placement] = tuple(chain)
    for group in catalogue.groups.values():
        members = catalogue.options_of(group.id)
        chains = {o.id: [lit for p in placements_of(o) for lit in compiled.counts[p]] for o in members}
        if group.pick is Pick.ONE:
            problem.add_at_most_one(compiled.counts[p][0] for o in members for p in placements_of(o))
            continue
        for option in members:
            if len(chains[option.id]) > option.max_count and len(placements_of(option)) > 1:
                _at_most(compiled, chains[option.id], option.max_count, option.id)
        every = [lit for chain in chains.values() for lit in chain]
        if len(every) > group.max_choices:
            _at_most(compiled, every, group.max_choices, group.id)


def _at_most(compiled: Compiled, lits: Sequence[int], most: int, source: Source) -> None:
    compiled.limit_of[compiled.problem.add_limit([(1, lit) for lit in lits], most)] = source


def _literals(compiled: Compiled) -> Mapping[OptionId, tuple[int, ...]]:
    options = compiled.catalogue.options.values()
    return {o.id: tuple(lit for p in placements_of(o) for lit in compiled.counts[p]) for o in options}


def _misfits(compiled: Compiled, without: frozenset[RuleId]) -> Misfits:
    """What can never stand beside each base van: nothing where the rule about it may be switched off or is left out."""
    catalogue = compiled.catalogue
    fits = [rule.id for rule in catalogue.rules.values() if CauseKind.FITS in _structure_of(rule)]
    if compiled.selectors or not without.isdisjoint(fits):
        return {}
    return {
        van.id: frozenset(o.id for o in catalogue.options.values() if o.fits_vans and van.id not in o.fits_vans)
        for van in catalogue.vans
    }


def _add_limit_rule(
    compiled: Compiled, situation: Situation, amounting: Amounting, rule: Rule, misfits: Misfits
) -> None:
    guards = _guards(compiled, rule)
    atoms = [atom for term in rule.then.terms for atom in term.atoms]
    if not guards or len(atoms) != 1:
        return
    tallies = {c.id: c for c in made(situation.catalogue)}
    match atoms[0]:
        case ZonesFree(zones):
            for zone in zones:
                _add_zone(compiled, amounting, rule, zone, guards)
        case WithinBound(ledger=ledger):
            tally = tallies.get(LedgerId(ledger))
            if isinstance(tally, Tally):
                _add_ledger(compiled, situation, amounting, rule, tally, atoms[0], guards, misfits)
            elif tally is not None:
                compiled.unheard.append(rule.id)
        case _:
            compiled.unheard.append(rule.id)
    compiled.clause_at += [-1] * (len(compiled.problem.clauses) - len(compiled.clause_at))


def _add_ledger(
    compiled: Compiled,
    situation: Situation,
    amounting: Amounting,
    rule: Rule,
    tally: Tally,
    atom: WithinBound,
    guards: list[tuple[int, ...]],
    misfits: Misfits,
) -> None:
    for shape in shapes_of(tally, atom, situation, compiled.asked):
        try:
            if shape.beside:
                rows = add_spread_rows(compiled.problem, compiled.catalogue, amounting, shape, guards, misfits)
            else:
                rows = add_rows(compiled.problem, compiled.catalogue, amounting, shape, guards)
        except TooManyStates:
            compiled.unheard.append(rule.id)
            return
        compiled.limit_of.update(dict.fromkeys(rows, rule.id))


def _guards(compiled: Compiled, rule: Rule) -> list[tuple[int, ...]]:
    """The and-lists of a rule's condition as literals; those that speak of sums are left out."""
    selector = compiled.selectors.get(rule.id)
    switched = () if selector is None else (selector,)
    found: list[tuple[int, ...]] = []
    for term in rule.when.terms:
        lits = condition_literals(compiled.clauses, term)
        if lits is not None:
            found.append((*switched, *map(compiled.literal, lits)))
    return found


def _add_zone(compiled: Compiled, amounting: Amounting, rule: Rule, zone: Zone, guards: list[tuple[int, ...]]) -> None:
    """No two things in one place; the base van's own claim counts beside a choice's, never by itself."""
    terms: list[tuple[int, int]] = []
    claimers: list[int] = []
    most = 0
    for option in compiled.catalogue.options.values():
        if option.van is not None and (taken := option.van.zones_taken.count(zone)):
            terms.append((taken, amounting.literals[option.id][0]))
            most = max(most, taken)
        for placement in placements_of(option):
            claims = zones_at(option.zones, placement.place.value if placement.place else None).count(zone)
            frees = option.frees_zones.count(zone)
            if claims:
                terms += [(claims, lit) for lit in compiled.counts[placement]]
                claimers.append(compiled.counts[placement][0])
            if frees:
                terms.append((-frees, compiled.counts[placement][0]))
    if not claimers or len(terms) < 2:
        return
    binding = list(one_guard(compiled.problem, guards))
    if most > 1:
        binding += one_guard(compiled.problem, [(lit,) for lit in claimers])
    every = sum(weight for weight, _ in terms if weight > 0)
    terms += [(every, lit) for lit in binding]
    compiled.limit_of[compiled.problem.add_limit(terms, 1 + every * len(binding))] = rule.id


def theirs(compiled: Compiled, choices: tuple[Choice, ...]) -> tuple[int, ...]:
    """That some part is the customer's, where a rule asks for it."""
    variable = compiled.clauses.tag.get(CUSTOMER_PART)
    if variable is None or all(c.owner is Owner.HOUSE for c in choices):
        return ()
    return (variable + 1,)
