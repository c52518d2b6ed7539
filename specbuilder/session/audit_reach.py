"""What a catalogue can never do: contradictions, dead options, rules without effect. Each is proven over every build.

The brief is left open, so that *never* means under no answers at all; what nobody has said counts at its kindest.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice, product

from specbuilder.model.audit import Lint, LintCode
from specbuilder.model.brief import BriefLine
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.facts import Facts
from specbuilder.model.findings import CauseKind
from specbuilder.model.ids import RuleId
from specbuilder.model.kinds import Level, Pick
from specbuilder.model.origin import NOWHERE, Origin
from specbuilder.model.rules import Always, Rule
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span
from specbuilder.reasoning.budget import Budget, Spent
from specbuilder.reasoning.conflicts import minimal_conflicts
from specbuilder.reasoning.reasoner import Reasoner
from specbuilder.rulegraph.clauses import conditions

from .problem import Compiled, compile_problem
from .rulebooks import rulebook_of

SECONDS = 6.0
"""Time for the whole look; what is not settled by then is told as such."""
MOST_WAYS = 200
"""Ways for a condition not to be met that are tried."""


def reach_lints(catalogue: Catalogue, seconds: float = SECONDS) -> tuple[Lint, ...]:
    """What can never be built, and what no rule needs. Empty where the catalogue holds no question at all."""
    if not any(catalogue.options_of(group) for group in catalogue.groups):
        return tuple(_empty_groups(catalogue))
    look = _Look(catalogue, Budget(seconds=seconds))
    try:
        return (*_empty_groups(catalogue), *look.lints())
    except Spent:
        return (*_empty_groups(catalogue), *look.found, _lint(LintCode.UNSETTLED, "catalogue", NOWHERE))


class _Look:
    """One look over one catalogue. ``found`` keeps what is known when the time runs out."""

    def __init__(self, catalogue: Catalogue, budget: Budget) -> None:
        self._catalogue, self._budget = catalogue, budget
        self.found: list[Lint] = []
        situation = Situation(
            catalogue=catalogue, facts=_nothing_said(catalogue), van=None, placed=(), undecided={}, free=()
        )
        self._compiled: Compiled = compile_problem(situation, tuple(Level), selectable=True)
        self._reasoner = Reasoner(self._compiled.problem)
        self._stops = {
            lit: rule for rule, lit in self._compiled.selectors.items() if catalogue.rules[rule].level is Level.STOP
        }

    def lints(self) -> tuple[Lint, ...]:
        """Everything, in the order it is looked for."""
        self.found += self._contradictions()
        held = list(self._stops)
        if isinstance(self._reasoner.consistent(held, self._budget), frozenset):
            return tuple(self.found)  # of a catalogue without a build nothing more can be said
        self.found += self._dead(held)
        self.found += self._loops()
        self.found += self._idle_rules(held)
        self.found += self._redundant(held)
        return tuple(self.found)

    def _contradictions(self) -> Iterator[Lint]:
        """Rules that cannot stand together, each conflict once."""
        found = minimal_conflicts(self._reasoner, list(self._stops), 5, self._budget)
        for conflict in found.found:
            rules = [self._stops[lit] for lit in conflict]
            if not rules:
                yield _lint(LintCode.CONTRADICTION, "catalogue", NOWHERE)
            for rule in rules:
                others = tuple(other for other in rules if other != rule)
                yield _lint(LintCode.CONTRADICTION, rule, self._catalogue.rules[rule].origin, others)

    def _dead(self, held: Sequence[int]) -> Iterator[Lint]:
        """Options no build holds, and refused ones that some build holds."""
        options = self._catalogue.options.values()
        asked = [self._compiled.option(option.id) for option in options]
        states = self._reasoner.states(held, asked, self._budget)
        assert not isinstance(states, frozenset), "only asked where some build stands"
        for option in options:
            lit = self._compiled.option(option.id)
            can = states.can_be(lit)
            if can is None:
                yield _lint(LintCode.UNSETTLED, option.id, option.origin)
            elif option.refused and can:
                yield _lint(LintCode.REFUSED_LIVES, option.id, option.origin)
            elif not can and not option.refused:
                yield self._dead_option(option, lit, held)

    def _dead_option(self, option: Option, lit: int, held: Sequence[int]) -> Lint:
        found = minimal_conflicts(self._reasoner, held, 1, self._budget, given=(lit,)).found
        rules = tuple(self._stops[x] for x in found[0]) if found else ()
        code = LintCode.VAN_WITHOUT_BUILD if option.van is not None else LintCode.DEAD_OPTION
        return _lint(code, option.id, option.origin, rules)

    def _loops(self) -> Iterator[Lint]:
        for loop in rulebook_of(self._catalogue).graph.needs_loops():
            yield _lint(LintCode.NEEDS_LOOP, loop[0], self._catalogue.options[loop[0]].origin, tuple(loop[1:]))

    def _idle_rules(self, held: Sequence[int]) -> Iterator[Lint]:
        """Rules whose condition is met in no build, or in every one."""
        for rule in self._catalogue.rules.values():
            terms = self._condition(rule)
            if terms is None:
                continue
            others = [lit for lit in held if self._stops[lit] != rule.id]
            if not any(self._stands([*others, *term]) for term in terms):
                if not rule.refused:
                    yield _lint(LintCode.NEVER_FIRES, rule.id, rule.origin)
            elif all(term for term in terms) and not self._can_fail(others, terms):
                yield _lint(LintCode.ALWAYS_FIRES, rule.id, rule.origin)

    def _condition(self, rule: Rule) -> list[list[int]] | None:
        """The condition as and-lists of literals; None where it speaks of sums or is always met on purpose."""
        if any(isinstance(atom, Always) for term in rule.when.terms for atom in term.atoms):
            return None
        found: list[list[int]] = []
        for lits in conditions(self._compiled.clauses, rule):
            if not lits:
                return None
            found.append([self._compiled.literal(lit) for lit in lits])
        return found

    def _can_fail(self, held: Sequence[int], terms: Sequence[Sequence[int]]) -> bool:
        """Whether some build meets none of the and-lists; taken for granted where there are too many ways to try."""
        ways = list(islice(product(*terms), MOST_WAYS + 1))
        return len(ways) > MOST_WAYS or any(self._stands([*held, *(-lit for lit in way)]) for way in ways)

    def _redundant(self, held: Sequence[int]) -> Iterator[Lint]:
        """Rules at STOP that other rules and the structure imply already."""
        clauses: dict[RuleId, list[list[int]]] = {}
        for lits, why in zip(self._compiled.clauses.lits, self._compiled.clauses.why, strict=True):
            if why.kind is CauseKind.RULE and why.rule is not None:
                clauses.setdefault(why.rule, []).append([self._compiled.literal(lit) for lit in lits])
        for lit, rule in self._stops.items():
            mine = clauses.get(rule, [])
            others = [other for other in held if other != lit]
            if mine and not any(self._stands([*others, *(-x for x in clause)]) for clause in mine):
                yield _lint(LintCode.REDUNDANT, rule, self._catalogue.rules[rule].origin, self._implying(others, mine))

    def _implying(self, others: Sequence[int], clauses: Sequence[Sequence[int]]) -> tuple[RuleId, ...]:
        """Rules that imply all of these clauses; none: the structure alone does."""
        needed: dict[RuleId, None] = {}
        for clause in clauses:
            found = minimal_conflicts(self._reasoner, others, 1, self._budget, given=[-lit for lit in clause]).found
            needed.update(dict.fromkeys(self._stops[lit] for lit in (found[0] if found else ())))
        return tuple(needed)

    def _stands(self, lits: Sequence[int]) -> bool:
        return not isinstance(self._reasoner.consistent(lits, self._budget), frozenset)


def _nothing_said(catalogue: Catalogue) -> Facts:
    ranges = {key: _range(line) for key, line in catalogue.brief.items()}
    return Facts(values={}, assumed=frozenset(), ranges=ranges)


def _range(line: BriefLine) -> Span:
    return Span(line.least, line.most)


def _empty_groups(catalogue: Catalogue) -> Iterator[Lint]:
    """Questions of one answer without any."""
    for group in catalogue.groups.values():
        if group.pick is Pick.ONE and not catalogue.options_of(group.id):
            yield _lint(LintCode.EMPTY_GROUP, group.id, group.origin)


def _lint(code: LintCode, subject: str, origin: Origin, others: tuple[str, ...] = ()) -> Lint:
    return Lint(code=code, subject=subject, origin=origin, others=others)
