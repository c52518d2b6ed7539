"""Which options could be of any help in a search for ways out."""

from __future__ import annotations

from collections.abc import Container, Sequence
from functools import lru_cache

from specbuilder.calc import made
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import CauseKind
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Pick, RuleKind
from specbuilder.model.rules import Given, WithinBound
from specbuilder.rulegraph.clauses import placements_of, tags_at

from .machine import Machine
from .rulebooks import rulebook_of


def may_follow(catalogue: Catalogue, blocked: Container[OptionId]) -> frozenset[OptionId]:
    """Extras that could come along by themselves: what a part or a rule needs, and no other extra may give now."""
    return frozenset(
        giver
        for givers in _extras_needed(catalogue)
        for giver in givers
        if all(other == giver or other in blocked for other in givers)
    )


@lru_cache(maxsize=4)
def _extras_needed(catalogue: Catalogue) -> tuple[tuple[OptionId, ...], ...]:
    """For everything that a part or a rule needs the extras that give it."""
    givers = rulebook_of(catalogue).givers
    needed = {tag for option in catalogue.options.values() for need in option.needs for tag in need.any_of}
    for rule in catalogue.rules.values():
        if rule.kind is RuleKind.NEEDS_ANY:
            needed |= {atom.tag for term in rule.then.terms for atom in term.atoms if isinstance(atom, Given)}
    groups, options = catalogue.groups, catalogue.options
    return tuple(
        tuple(o for o in givers.get(tag, ()) if groups[options[o].group].pick is Pick.ANY) for tag in sorted(needed)
    )


def touching(catalogue: Catalogue, rules: Sequence[RuleId]) -> frozenset[OptionId]:
    """The options that change the figures these rules are about."""
    about = {
        a.ledger for r in rules for t in catalogue.rules[r].then.terms for a in t.atoms if isinstance(a, WithinBound)
    }
    figures = [c for c in made(catalogue) if c.id in about]
    return frozenset(o.id for o in catalogue.options.values() if any(c.touches(o) for c in figures))


@lru_cache(maxsize=4)
def helpful(machine: Machine) -> frozenset[OptionId]:
    """Extras whose standing could ever keep a clause or widen a limit; nothing is won by taking any other."""
    compiled = machine.compiled
    structure = (CauseKind.GIVES, CauseKind.NOTHING_GIVES, CauseKind.ONE_ANSWER)
    good: set[int] = set()
    for lits, why in zip(compiled.clauses.lits, compiled.clauses.why, strict=True):
        if why.kind not in structure:
            good.update(lit >> 1 for lit in lits if not lit & 1)
    for lits, at in zip(compiled.problem.clauses, compiled.clause_at, strict=True):
        if at < 0:  # what leads to another state of a limit may widen it
            good.update(lit - 1 for lit in lits if lit > 0)
    widening = {abs(lit) - 1 for limit in compiled.problem.limits for _, lit in limit.terms if lit < 0}
    found: set[OptionId] = set()
    for option in compiled.catalogue.options.values():
        if compiled.catalogue.groups[option.group].pick is not Pick.ANY or option.refused or option.found:
            continue
        own = {compiled.option(option.id) - 1, *(compiled.clauses.placement[p] for p in placements_of(option))}
        tags = {
            compiled.clauses.tag[t]
            for p in placements_of(option)
            for t in tags_at(option, p.place)
            if t in compiled.clauses.tag
        }
        counts = {lit - 1 for p in placements_of(option) for lit in compiled.counts[p]}
        if not good.isdisjoint(own | tags | counts) or not widening.isdisjoint(own | counts):
            found.add(option.id)
    return frozenset(found)
