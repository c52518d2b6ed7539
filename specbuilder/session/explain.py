"""Why something is as it is, for one spec: minimal reasons as trees of values."""

from __future__ import annotations

from collections.abc import Sequence

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause, CauseKind, Finding, Reasons
from specbuilder.model.ids import BriefKey, OptionId, RuleId
from specbuilder.model.kinds import Level, OptionState, Pick, RuleKind
from specbuilder.model.report import OptionStatus
from specbuilder.model.rules import BriefIs, WithinBound
from specbuilder.model.spec import Choice, Spec
from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.conflicts import minimal_conflicts
from specbuilder.reasoning.reasons import NotForbiddenError, minimal_reason, minimal_reasons
from specbuilder.rulegraph import explain as chains
from specbuilder.rulegraph.clauses import no, yes
from specbuilder.rulegraph.runs import choice_cause, run
from specbuilder.rulegraph.states import stands

from .evaluate import evaluate
from .machine import Machine, machine_of
from .rulebooks import rulebook_of
from .situate import Laid, lay

SECONDS = 0.5
"""Time to look for further reasons."""


def reasons(catalogue: Catalogue, spec: Spec, option: OptionId, most: int = 3) -> Reasons | None:
    """Why an option is blocked, follows, clashes or must stay: minimal reasons, that with the fewest choices first.

    None where there is nothing to tell: it is open, nobody knows it, or it stands and nothing else asks for it.
    """
    if option not in catalogue.options or most < 1:
        return None
    status = evaluate(catalogue, spec).options[option]
    search = _Why(catalogue, spec, option, status)
    with search.machine.lock:
        found = search.reasons(most)
    return found if found.causes else None


def why_option(catalogue: Catalogue, spec: Spec, option: OptionId) -> Cause | None:
    """The first reason why an option is blocked or follows; None when it is open, chosen or not in the catalogue."""
    status = evaluate(catalogue, spec).options.get(option)
    if status is None or status.state not in (OptionState.BLOCKED, OptionState.FOLLOWS):
        return None
    found = reasons(catalogue, spec, option, 1)
    return found.causes[0] if found else status.cause


def why_finding(catalogue: Catalogue, spec: Spec, finding: Finding) -> Cause:
    """What a finding rests on."""
    return chains.why_finding(lay(catalogue, spec).run, finding, spec.choices)


class _Why:
    """One question about one option."""

    def __init__(self, catalogue: Catalogue, spec: Spec, option: OptionId, status: OptionStatus) -> None:
        self._catalogue, self._spec, self._option, self._status = catalogue, spec, option, status
        self._laid: Laid = lay(catalogue, spec)
        self.machine: Machine = machine_of(catalogue, self._laid.facts, spec.choices)
        self._keys = self.machine.answers(self._laid.facts)
        self._choices = self.machine.choices(self._held())

    def _held(self) -> tuple[Choice, ...]:
        """The choices that are held: those in no conflict, the earliest first; all of them for a clash."""
        by_taking = {id(c): at for at, c in enumerate(self._spec.choices)}
        kept = self._laid.run.choices
        if self._status.clashes:
            kept = tuple(c for c in self._spec.choices if not c.came_with or c in kept)
        return tuple(sorted(kept, key=lambda c: by_taking.get(id(c), 0)))

    def reasons(self, most: int) -> Reasons:
        """Minimal reasons for the state of the option."""
        budget = Budget(seconds=SECONDS)
        variable = self.machine.compiled.option(self._option)
        firm = [*self.machine.theirs(self._spec.choices)]
        held = [*firm, *self._keys, *self._in_order()]
        if self._status.clashes:
            return self._conflicts(held, most, budget)
        lit = variable if self._status.state is OptionState.BLOCKED else -variable
        others = [x for x in held if x not in self._beside()]
        try:
            first = minimal_reason(self.machine.reasoner, others, lit)
        except NotForbiddenError:
            return Reasons(causes=(), complete=True)
        more = minimal_reasons(self.machine.reasoner, others, lit, most, budget) if most > 1 else None
        found = [first, *(other for other in more.found if set(other) != set(first))] if more else [first]
        causes = [self._tree(reason, (lit,)) for reason in found[:most]]
        causes.sort(key=_choices_in)
        return Reasons(causes=tuple(causes), complete=more.is_complete if more else False)

    def _in_order(self) -> list[int]:
        order = {id(c): at for at, c in enumerate(self._held())}
        return sorted(self._choices, key=lambda lit: order.get(id(self._choices[lit]), 0))

    def _beside(self) -> set[int]:
        """The literals of the choice whose place the option would take, or of the option itself."""
        options = self._catalogue.options
        mine = options[self._option]
        one = self._catalogue.groups[mine.group].pick is Pick.ONE
        return {
            lit
            for lit, choice in self._choices.items()
            if choice.option == mine.id or (one and options[choice.option].group == mine.group)
        }

    def _conflicts(self, held: Sequence[int], most: int, budget: Budget) -> Reasons:
        """The minimal conflicts the choice takes part in; what brief and base van break alone is none of them."""
        reasoner = self.machine.reasoner
        mine = [lit for lit, choice in self._choices.items() if choice.option == self._option]
        rest = [lit for lit in held if lit not in mine]
        ground = [lit for lit in rest if lit not in self._choices or self._is_van(lit)]
        if isinstance(reasoner.consistent(ground), frozenset):
            ground = []
        others = [lit for lit in rest if lit not in ground]
        found = minimal_conflicts(reasoner, others, most, budget, given=[*ground, *mine])
        own = [c for c in found.found if not isinstance(reasoner.consistent([*ground, *c]), frozenset)]
        whole = [minimal_conflicts(reasoner, [*c, *ground], 1, budget, given=mine).found for c in own]
        causes = sorted((self._tree(some[0], tuple(mine)) for some in whole if some), key=_choices_in)
        return Reasons(causes=tuple(causes), complete=found.is_complete)

    def _is_van(self, lit: int) -> bool:
        return self._catalogue.options[self._choices[lit].option].van is not None

    def _tree(self, reason: Sequence[int], about: tuple[int, ...]) -> Cause:
        """The chain of one reason: by propagation over its own choices where that suffices, else the rules at work."""
        choices = tuple(dict.fromkeys(self._choices[lit] for lit in reason if lit in self._choices))
        chain = self._chain(reason, choices) if not self._status.clashes else None
        return chain or self._together(reason, about, choices)

    def _chain(self, reason: Sequence[int], choices: tuple[Choice, ...]) -> Cause | None:
        """Over the choices and answers of the reason alone, so that the chain names no others."""
        rulebook = rulebook_of(self._catalogue)
        answers = tuple(self._answer(lit) for lit in reason if lit in self._keys)
        run_ = run(rulebook, tuple(c for c in choices if self._knows(c)), answers)
        stand = stands(run_, choices)[self._option]
        if stand.state is not self._status.state:
            return None
        chain = chains.why_option(run_, self._option, stand)
        keys = {self._keys[lit] for lit in reason if lit in self._keys}
        is_whole = chain is not None and set(_named(chain)) == {c.option for c in choices} and _keys(chain) == keys
        return chain if is_whole else None

    def _answer(self, lit: int) -> int:
        """A settled atom of the brief as a literal of the rulebook."""
        clauses = self.machine.compiled.clauses
        atom = clauses.names[abs(lit) - 1]
        assert isinstance(atom, BriefIs), "an answer stands for an atom of the brief"
        variable = rulebook_of(self._catalogue).clauses.atom[atom]
        return yes(variable) if lit > 0 else no(variable)

    def _knows(self, choice: Choice) -> bool:
        return choice.option in self._catalogue.options

    def _together(self, reason: Sequence[int], about: tuple[int, ...], choices: tuple[Choice, ...]) -> Cause:
        """The rules without which the reason would be none, above its choices and answers."""
        below = (
            *(choice_cause(self._catalogue, c) for c in choices if self._knows(c)),
            *(Cause(kind=CauseKind.ANSWER, key=self._keys[lit]) for lit in reason if lit in self._keys),
        )
        rules = self._rules_at_work([*reason, *about])
        nodes = tuple(_rule_node(self._catalogue, rule, self._option, below) for rule in rules)
        if len(nodes) == 1:
            return nodes[0]
        bare = tuple(_rule_node(self._catalogue, rule, self._option, ()) for rule in rules)
        return Cause(kind=CauseKind.TOGETHER, option=self._option, because=(*below, *bare))

    def _rules_at_work(self, lits: Sequence[int]) -> tuple[RuleId, ...]:
        """A minimal set of rules that forbid these literals together."""
        machine = machine_of(self._catalogue, self._laid.facts, self._spec.choices, selectable=True)
        selectors = {
            lit: rule
            for rule, lit in machine.compiled.selectors.items()
            if self._catalogue.rules[rule].level is Level.STOP and rule not in self.machine.dropped
        }
        known = [same for lit in lits if (same := self.machine.compiled.same(lit, machine.compiled)) is not None]
        found = minimal_conflicts(machine.reasoner, list(selectors), 1, Budget(seconds=SECONDS), given=known)
        return tuple(selectors[lit] for lit in found.found[0]) if found.found else ()


def _rule_node(catalogue: Catalogue, rule: RuleId, option: OptionId, below: tuple[Cause, ...]) -> Cause:
    """A rule over what it connects; one about a ledger names the ledger."""
    found = catalogue.rules[rule]
    atoms = [atom for term in found.then.terms for atom in term.atoms]
    if found.kind is RuleKind.LIMIT and len(atoms) == 1 and isinstance(atoms[0], WithinBound):
        return Cause(kind=CauseKind.LEDGER, ledger=atoms[0].ledger, rule=rule, option=option, because=below)
    return Cause(kind=CauseKind.RULE, rule=rule, option=option, because=below)


def _choices_in(cause: Cause) -> int:
    """How many different choices a reason rests on."""
    return len(set(_named(cause)))


def _keys(cause: Cause) -> set[BriefKey]:
    """The lines of the brief a reason rests on."""
    own = {cause.key} if cause.kind is CauseKind.ANSWER and cause.key is not None else set()
    return own.union(*map(_keys, cause.because))


def _named(cause: Cause) -> list[OptionId]:
    own = [cause.option] if cause.kind in (CauseKind.CHOICE, CauseKind.VAN) and cause.option else []
    return [*own, *(option for below in cause.because for option in _named(below))]
